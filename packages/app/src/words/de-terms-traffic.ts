import type { trafficTerms as english } from './en-terms-traffic.ts'
import type { Term } from './term.ts'

/** Words of coming to the door in time, of calling it, and of passing by. */
export const trafficTerms: Readonly<Record<keyof typeof english, Term>> = {
  approachDistance: {
    word: 'Sicherheitsabstand',
    forms: ['Sicherheitsabstand', 'Sicherheitsabstands', 'Sicherheitsabstand der Annäherung'],
    says: 'Wie weit vor dem Flügel jemand gefunden werden muss, damit dieser steht, wenn er ankommt.',
  },
  stoppingTime: {
    word: 'Anhaltezeit',
    forms: ['Anhaltezeit', 'Anhaltezeiten'],
    says: 'Vom Haltbefehl, bis der Flügel steht. Bei mehreren Ablesungen die Grenze, die fast alle Halte einhalten.',
  },
  addend: {
    word: 'Zuschlag',
    forms: ['Zuschlag'],
    says: 'Was der Sicherheitsabstand neben dem Gehweg verlangt: wie weit jemand reicht, bevor er gefunden wird.',
  },
  capability: {
    word: 'Detektionsvermögen',
    forms: ['Detektionsvermögen'],
    says: 'Der kleinste Körper, den ein Feld laut Datenblatt sicher sieht.',
  },
  callDistance: {
    word: 'Anforderungsabstand',
    forms: ['Anforderungsabstand'],
    says: 'Wie weit vor dem Flügel ein Fahrzeug das Tor anfordern muss, damit es die Öffnung frei findet.',
  },
  openInTime: {
    word: 'offen bei der Ankunft',
    forms: ['offen bei der Ankunft'],
    says: 'Ein Fahrzeug, das das Tor angefordert hat, findet die Öffnung frei und braucht nicht zu bremsen.',
  },
  stopsIfShut: {
    word: 'hält, wenn der Flügel geschlossen bleibt',
    forms: ['hält, wenn der Flügel geschlossen bleibt'],
    says: 'Ein Fahrzeug, das das Tor angefordert hat, hält noch vor einem Flügel, der nicht öffnet.',
  },
  holdOpenTime: {
    word: 'Offenhaltezeit',
    forms: ['Offenhaltezeit'],
    says: 'Wie lange der Flügel offen bleibt, bevor seine Steuerung das Schließen befiehlt.',
  },
  preWarning: {
    word: 'Vorwarnung',
    forms: ['Vorwarnung', 'Vorwarnzeit', 'warnt er'],
    says: 'Licht oder Ton zwischen dem Befehl zu schließen und der ersten Bewegung des Flügels.',
  },
  attempt: {
    word: 'Schließversuch',
    forms: ['Schließversuch', 'Schließversuche'],
    says: 'Ein Schließen, das die Steuerung noch einmal versucht, nachdem der Flügel umgekehrt ist.',
  },
  coasting: {
    word: 'Auslaufen',
    forms: ['Auslaufen', 'läuft aus'],
    says: 'Wie ein Flügel ohne Bremse zum Stehen kommt: allein durch Reibung.',
  },
  crossing: {
    word: 'Querweg',
    forms: ['Querweg', 'Querwege'],
    says: 'Ein Weg am Tor vorbei, den Personen nehmen, die nicht hindurch wollen.',
  },
  needlessOpenings: {
    word: 'unnötiges Öffnen',
    forms: ['unnötiges Öffnen', 'unnötig'],
    says: 'Wie oft am Tag jemand das Tor öffnet, der nur vorübergeht.',
  },
  airLost: {
    word: 'entwichene Luft',
    forms: ['entwichene Luft'],
    says: 'Wie viel Luft am Tag hindurchgeht, weil das Tor unnötig öffnet.',
  },
}
