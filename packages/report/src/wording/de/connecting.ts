import type { connecting as english } from '../en/connecting.ts'

export const connecting: typeof english = {
  nothingWrong: 'kein Fehler',
  proposal: (number) => `Anschluss ${number}`,
  asWired: 'So wie jetzt verdrahtet',
  counts: (hidden, found, nuisance, unasked, cores) =>
    `Fehlerarten, die unbemerkt jemanden verbergen: ${hidden}; bis ein Test sie findet: ${found}; die das Tor am Schließen hindern oder es anhalten: ${nuisance}, von denen ${unasked} es ungefragt öffnen. Adern: ${cores}.`,
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
