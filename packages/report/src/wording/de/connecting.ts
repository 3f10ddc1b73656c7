import type { connecting as english } from '../en/connecting.ts'
import { missingByHand, oftenByHand } from './by-hand.ts'

const faults = (count: number): string => (count === 1 ? 'Ein einzelner Fehler verbirgt' : `${count} einzelne Fehler verbergen`)

export const connecting: typeof english = {
  nothingWrong: 'kein Fehler',
  proposal: (number) => `Anschluss ${number}`,
  asWired: 'So wie jetzt verdrahtet',
  counts: (hidden, found, nuisance, unasked, cores) =>
    [
      hidden === 0 ? 'Kein einzelner Fehler verbirgt unbemerkt jemanden' : `${faults(hidden)} unbemerkt jemanden`,
      found === 0 ? '' : `, ${found === 1 ? 'einer tut es, bis ein Test ihn' : `${found} tun es, bis ein Test sie`} findet`,
      nuisance === 0
        ? ''
        : `, und ${nuisance === 1 ? 'einer hindert' : `${nuisance} hindern`} das Tor nur am Schließen oder ${nuisance === 1 ? 'hält' : 'halten'} es an`,
      unasked === 0 ? '' : ` (${unasked === 1 ? 'einer davon öffnet' : `${unasked} davon öffnen`} es ungefragt)`,
      `. Gebraucht ${cores === 1 ? 'wird eine Ader' : `werden ${cores} Adern`}.`,
    ].join(''),
  notInOrder: 'Das geht schon ohne Fehler nicht.',
  asGood: 'Kein gefundener Anschluss ist besser.',
  better: 'Anschluss 1 ist besser.',
  hidden: 'Bleibt verborgen, bis jemand von Hand prüft; so lange wie zwischen zwei solchen Prüfungen kann es dauern:',
  hiddenFault: (fault) => `- ${fault}`,
  more: (count) => `- und ${count} weitere`,
  tested: 'Der Test der Steuerung wird genutzt.',
  untested: 'Die Steuerung testet nichts.',
  core: (name, from, to) => `Ader ${name}: ${from} nach ${to}`,
  link: (from, to) => `Brücke: ${from} nach ${to}`,
  joint: (names) => `Klemmen in der Steuerung: ${names}.`,
  second: (pairs, judged) =>
    `Paare von Fehlern, der erste unbemerkt, die in der jetzigen Verdrahtung einen Körper verbergen: ${pairs} von ${judged}${pairs > 0 ? ':' : '.'}`,
  pair: (first, second) => `- ${first}, dann ${second}`,
  pairsLeft: (count) => `${count} Paare wurden nicht versucht; von ihnen ist nichts bekannt.`,
  set: (what) => `Andersherum einstellen: ${what}.`,
  resistor: (name, ohm, from, to) => `Widerstand ${name}, ${ohm} Ohm: ${from} nach ${to}`,
  byHand: (often) => `Bis dahin: ${often}.`,
  byHandMissing: (missing) => `Wie oft das sein muss, lässt sich nicht sagen ohne: ${missing}.`,
  missingByHand,
  oftenByHand,
  none: 'Keine Art, diese Teile anzuschließen, geht.',
  searched: (tried, judged) => `${tried} Arten anzuschließen wurden versucht, ${judged} davon Fehler für Fehler beurteilt.`,
  left: (count) => `Die Suche wurde abgebrochen: ${count} Arten wurden nicht versucht, darunter vielleicht eine bessere.`,
  explainsAll: (count) => (count === 1 ? 'Den Messwert erklärt:' : `Alle ${count} Messwerte erklärt:`),
  explainsMost: (most, of) => `Kein einzelner Fehler erklärt alle ${of} Messwerte. ${most} davon erklärt:`,
  nobody: 'während niemand da ist',
  before: (sensors) => `während jemand vor ${sensors} steht`,
  asking: 'während die Steuerung ihre Sensoren fragt',
  next: (plus, minus, standing, bits) => `Als Nächstes von ${plus} nach ${minus} messen, ${standing}: das bringt ${bits} Bit.`,
  noNext: 'Keine Spannung unterscheidet diese.',
}
