import type { Searching } from './en-searching.ts'

export const deSearching: Searching = {
  connect: {
    lead: 'Jede Art, diese Sensoren an diese Steuerung anzuschließen, wird durchdacht, und jede, die geht, Fehler für Fehler beurteilt. Vorn steht, was am wenigsten verbirgt, dann, was am wenigsten stört, dann, was am wenigsten Adern braucht. Alle Teile bleiben eingestellt, wie sie sind.',
    resistors: (count) =>
      count === 1
        ? 'Mit Widerständen wird nicht gesucht: der eine, der jetzt da ist, fiele weg.'
        : `Mit Widerständen wird nicht gesucht: die ${count}, die jetzt da sind, fielen weg.`,
    search: 'Anschlüsse suchen',
    trying: (tried, judged) => `Bisher ${tried} Arten anzuschließen durchdacht, ${judged} davon Fehler für Fehler beurteilt.`,
    found: 'Gefundene Anschlüsse',
    show: 'in der Zeichnung zeigen',
    showFor: (name) => `in der Zeichnung zeigen: ${name}`,
    laid: (count) => (count === 1 ? 'Wie er liegt: 1 Leitung' : `Wie er liegt: ${count} Leitungen`),
    noBetter: 'Er ist nicht besser als das, was jetzt verdrahtet ist.',
    notHeld: 'Er lässt sich nicht ins Tor schreiben: die Datei hat keinen Platz dafür.',
    taken: (name) => `${name} steht jetzt im Tor, das neu beurteilt wird. Rückgängig nimmt es zurück.`,
    on: (name) => `In der Zeichnung: ${name}, nicht ins Tor geschrieben.`,
    back: 'So wie jetzt verdrahtet',
  },
}
