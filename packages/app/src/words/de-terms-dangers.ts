import type { dangerTerms as english } from './en-terms-dangers.ts'
import type { Term } from './term.ts'

/** Wörter zu Gefahrstellen, Kräften und Steuerung, und zu dem, was über der Zeit geschieht. */
export const dangerTerms: Readonly<Record<keyof typeof english, Term>> = {
  dangerPoint: {
    word: 'Gefahrstelle',
    forms: ['Gefahrstelle', 'Gefahrstellen'],
    says: 'Eine Stelle außer der Schließkante, an der der Flügel jemanden quetschen, scheren, einziehen oder mitnehmen kann, auch beim Öffnen.',
  },
  dangersLookedFor: {
    word: 'nach Gefahrstellen gesehen',
    forms: ['nach Gefahrstellen gesehen'],
    says: 'Jede Art von Gefahrstelle, die ein solcher Flügel haben kann, ist aufgeführt, berechnet oder als nicht vorhanden angegeben.',
  },
  tail: {
    word: 'Ende des Flügels',
    forms: ['Ende des Flügels'],
    says: 'Das hintere Ende eines Flügels, der über die Öffnung hinaus zurückläuft.',
  },
  sweep: {
    word: 'Schwenkbereich',
    forms: ['Schwenkbereich'],
    says: 'Worüber ein Flügel streicht, der sich dreht.',
  },
  guard: {
    word: 'Schutzmaßnahme',
    forms: ['Schutzmaßnahme', 'Schutzmaßnahmen'],
    says: 'Was außer Abstand gegen eine Gefahrstelle getan ist: Abdeckung, Sicherheitsleiste, Anwesenheitserkennung, nichts zum Festhalten.',
  },
  forceRecord: {
    word: 'Kraftmessung',
    forms: ['Kraftmessung', 'Kraftmessungen'],
    says: 'Eine Kraft bei Berührung, wie sie gemessen wurde: wo, bei welchem Spalt, wie hoch und wie lange, mit welchem Gerät, an welchem Tag.',
  },
  lowEnergy: {
    word: 'wenig Energie',
    forms: ['wenig Energie'],
    says: 'Eine Tür für Personen, die berühren darf, weil sie sich mit wenig Energie bewegt.',
  },
  controlFact: {
    word: 'Angabe zur Steuerung',
    forms: ['Angabe zur Steuerung', 'Angaben zur Steuerung'],
    says: 'Was die Steuerung bei einem Fehler, nach Stromausfall, bei Brand, zur Flucht oder mit einem Nachbartor tut, und woher man das weiß.',
  },
  controlJudged: {
    word: 'Steuerung beurteilt',
    forms: ['Steuerung beurteilt'],
    says: 'Was die Steuerung tut, gefährdet niemanden.',
  },
  forceOnContact: {
    word: 'Kraft bei Berührung',
    forms: ['Kraft bei Berührung'],
    says: 'Was dort gemessen wurde, wo die Kante jemanden berühren darf, bleibt innerhalb der Grenzwerte.',
  },
  energyOnContact: {
    word: 'Energie bei Berührung',
    forms: ['Energie bei Berührung'],
    says: 'Ein Flügel, der auf wenig Energie beruht, hat auch bei seiner größten Schließgeschwindigkeit nicht mehr davon.',
  },
  gapInSight: {
    word: 'Lücke in der Sicht',
    forms: ['Lücke in der Sicht', 'Lücken in der Sicht'],
    says: 'Wie lange kein Ausgang sieht, was durchfährt, während ein Teil davon noch in der Ebene des Flügels oder in seinem Schwenkbereich ist.',
  },
  follower: {
    word: 'Nachfolgender',
    forms: ['Nachfolgender', 'Nachfolgende'],
    says: 'Ein zweiter Körper dicht vor oder hinter dem ersten.',
  },
  fall: {
    word: 'Sturz einer Person',
    forms: ['Sturz einer Person'],
    says: 'Jemand, der hindurchgeht, legt sich in die Ebene des Flügels oder in seinen Schwenkbereich und bleibt liegen.',
  },
  course: {
    word: 'Verlauf',
    forms: ['Verlauf'],
    says: 'Ein Körper und ein Schließen über der Zeit: wo Kante und Körper sind, wann er gesehen wird, wann der Ausgang schaltet.',
  },
  timeline: {
    word: 'Zeitbild',
    forms: ['Zeitbild'],
    says: 'Die Zeichnung eines Körpers und eines Schließens über einer Zeitachse.',
  },
  slips: {
    word: 'Versehen in der Verdrahtung',
    forms: ['Versehen in der Verdrahtung', 'Versehen'],
    says: 'Etwas in der Verdrahtung, das nicht gemeint sein kann: ein Eingang in der Luft, zwei Transistoren an einer Leitung, ein Sensor ohne Versorgung, ein von Kupfer überbrückter Kontakt.',
  },
  singleFault: {
    word: 'einzelner Fehler',
    forms: ['einzelner Fehler', 'einzelne Fehler', 'einzelnen Fehlern', 'einzelnen Fehler', 'ein einzelner Fehler'],
    says: 'Ein Ding, das für sich allein versagt: eine Ader gebrochen, zwei Adern, die sich berühren, ein Kontakt, der klebt. Jeder wird der Reihe nach versucht, und was die Steuerung dann glaubt, entscheidet.',
  },
  testByHand: {
    word: 'Test von Hand',
    forms: ['Test von Hand', 'Tests von Hand', 'Prüfung von Hand', 'Prüfungen von Hand'],
    says: 'Jemand stellt sich vor jeden Sensor und sieht, ob der Flügel darauf hört. Das findet Fehler, die sonst nichts findet; bis dahin bestehen sie.',
  },
  endOfLine: {
    word: 'Abschlusswiderstand',
    forms: ['Abschlusswiderstand', 'Abschlusswiderstände', 'Endwiderstand'],
    says: 'Ein Widerstand am fernen Ende einer Leitung, an dem ein Eingang die heile Leitung von Kurzschluss und Bruch unterscheidet.',
  },
}
