import type { judgingTerms as english } from './en-terms-judging.ts'
import type { Term } from './term.ts'

/** Wörter von Prüfkörpern, Abdeckung und Beurteilen. */
export const judgingTerms: Readonly<Record<keyof typeof english, Term>> = {
  // Körper und Abdeckung
  testBody: {
    word: 'Prüfkörper',
    forms: ['Prüfkörper', 'Prüfkörpers', 'Prüfkörpern'],
    says: 'Ein Quader oder Zylinder von genannter Größe, der für jemanden steht. Wo er ungesehen ist, kann jemand dieser Größe sein.',
  },
  referenceBody: {
    word: 'Bezugskörper',
    forms: ['Bezugskörper', 'Bezugskörpers', 'Referenzkörper', 'Referenzkörpers'],
    says: 'Der Prüfkörper, den eine Norm nennt: Anwesenheit am Blatt wird mit keinem größeren beurteilt.',
  },
  posture: {
    word: 'Haltung',
    forms: ['Haltung', 'Haltungen', 'Körperhaltung', 'Körperhaltungen'],
    says: 'Eine Art, wie ein Prüfkörper steht oder liegt.',
  },
  zone: {
    word: 'Zone',
    forms: ['Zone', 'Zonen'],
    says: 'Ein Rechteck auf dem Boden mit einem Zweck: dort müssen Körper gesehen werden oder dürfen es nicht.',
  },
  purpose: {
    word: 'Zweck',
    forms: ['Zweck', 'Zwecks', 'Zwecke'],
    says: 'Wofür eine Zone da ist: Anwesenheit am Blatt, Öffnen, Rufen, oder dass dort nichts gesehen wird.',
  },
  presence: {
    word: 'Anwesenheit am Blatt',
    forms: ['Anwesenheit am Blatt', 'Anwesenheit', 'Anwesenheitssensor', 'Anwesenheitssensoren', 'Anwesenheitserkennung'],
    says: 'Ein Körper im Weg des Blattes wird bemerkt, auch wenn er stillsteht, damit das Blatt nicht auf ihn schließt.',
  },
  longestStay: {
    word: 'längster Aufenthalt',
    forms: ['längster Aufenthalt', 'längste Aufenthalt', 'längsten Aufenthalt'],
    says: 'Wie lange sich jemand in einer Zone aufhalten kann.',
  },
  family: {
    word: 'Familie',
    forms: ['Familie', 'Familien'],
    says: 'Quader gleicher Gestalt in wachsenden Größen: gesucht wird der kleinste, der überall gesehen wird.',
  },
  placement: { word: 'Stelle', forms: ['Stelle', 'Stellen'], says: 'Ein Ort auf dem Boden für die Mitte eines Prüfkörpers.' },
  grid: {
    word: 'Raster',
    forms: ['Raster', 'Rasters'],
    says: 'Das Netz von Stellen, das zuerst probiert wird. Zwischen seinen Punkten ist noch nichts berechnet.',
  },
  unseen: {
    word: 'ungesehen',
    forms: ['ungesehen', 'ungesehene', 'ungesehenen', 'ungesehener', 'blind'],
    says: 'Kein Feld, das zählt, bemerkt den Körper in wenigstens einer seiner Haltungen. In der Zeichnung sind solche Stellen schraffiert.',
  },
  coverage: {
    word: 'abgedeckt',
    forms: ['abgedeckt', 'abgedeckte', 'Abdeckung'],
    says: 'Wo immer in der Zone ein Prüfkörper Platz findet, wird er gesehen.',
  },
  blindPocket: {
    word: 'blinde Tasche',
    forms: ['blinde Tasche', 'blinden Tasche', 'blinde Taschen', 'blinden Taschen', 'Tasche', 'Taschen'],
    says: 'Ein zusammenhängender Fleck Boden, auf dem ein Körper ungesehen bleibt. Jede hat einen Buchstaben in der Zeichnung.',
  },
  allowedPocket: {
    word: 'erlaubte Tasche',
    forms: ['erlaubte Tasche', 'erlaubten Tasche', 'größte blinde Tasche, die bleiben darf'],
    says: 'Die größte blinde Tasche, die in einer Zone bleiben darf.',
  },
  diameter: { word: 'Durchmesser', forms: ['Durchmesser', 'Durchmessers'], says: 'Der größte Abstand zweier Punkte einer Tasche.' },
  largestCircle: {
    word: 'größter Kreis',
    forms: ['größter Kreis', 'größte Kreis', 'größten Kreis'],
    says: 'Der größte Kreis, der in eine Tasche passt: er sagt, wie viel Platz dort ist.',
  },
  deadGround: {
    word: 'toter Grund',
    forms: ['toter Grund', 'toten Grund', 'tote Grund'],
    says: 'Boden nahe am Fuß eines Sensors, auf dem kein Körper in irgendeiner Haltung gesehen wird.',
  },
  reverseTest: {
    word: 'Gegenprobe',
    forms: ['Gegenprobe'],
    says: 'Ob nichts gesehen wird, wo nichts gesehen werden darf, etwa auf der Straße vor dem Tor.',
  },
  worstCase: {
    word: 'schlimmster Fall',
    forms: ['schlimmster Fall', 'schlimmste Fall', 'schlimmsten Fall'],
    says: 'Ein Körper, wo er liegt, der zeigt, warum etwas nicht besteht.',
  },
  smallestBody: {
    word: 'kleinster Körper',
    forms: ['kleinster Körper', 'kleinste Körper', 'kleinsten Körper'],
    says: 'Die kleinste Größe, ab der jeder probierte Körper überall in der Zone gesehen wird.',
  },
  // Beurteilen
  finding: {
    word: 'Befund',
    forms: ['Befund', 'Befunds', 'Befundes', 'Befunde', 'Befunden'],
    listed: true,
    says: 'Eine Frage an ein Ding dieses Tors, mit ihrer Antwort.',
  },
  inOrder: {
    word: 'in Ordnung',
    forms: ['in Ordnung'],
    listed: true,
    says: 'Der Wert hält seine Grenze ein, und beide beruhen auf etwas, das jemand eingetragen hat oder vorliegen hat.',
  },
  fails: {
    word: 'besteht nicht',
    forms: ['besteht nicht', 'bestehen nicht'],
    listed: true,
    says: 'Der Wert verfehlt seine Grenze. Was abhelfen würde, steht daneben.',
  },
  notSettled: {
    word: 'nicht entschieden',
    forms: ['nicht entschieden', 'ungeklärt', 'nicht geklärt'],
    says: 'Es fehlt etwas, das es entscheiden würde. Der Satz sagt, was.',
  },
  doesNotApply: {
    word: 'trifft nicht zu',
    forms: ['trifft nicht zu', 'treffen nicht zu', 'entfällt', 'entfallen'],
    says: 'Die Frage hat an diesem Tor keinen Sinn, oder das Schutzkonzept stellt sie nicht.',
  },
  provisional: {
    word: 'vorläufig',
    forms: ['vorläufig', 'vorläufige', 'vorläufigen'],
    says: 'Nur auf dem Raster berechnet, während die genaue Antwort unterwegs ist.',
  },
  tolerance: {
    word: 'Toleranz',
    forms: ['Toleranz', 'Toleranzen'],
    says: 'Wie weit das Gebaute vom Geschriebenen abweichen kann, nach jeder Seite. Die Antwort gilt dann für all das.',
  },
  basis: {
    word: 'Grundlage',
    forms: ['Grundlage', 'aus dem Gedächtnis', 'übliche Praxis', 'unsere Entscheidung'],
    says: 'Woher ein Wert bekannt ist: veröffentlicht, aus einem Datenblatt, gemessen, aus üblicher Praxis, aus dem Gedächtnis, von uns entschieden oder erfunden.',
  },
  outsideValue: {
    word: 'äußerer Wert',
    forms: ['äußerer Wert', 'äußere Wert', 'äußeren Wert', 'äußere Werte'],
    says: 'Eine Grenze oder Größe, die nicht von diesem Tor kommt, mit ihrer Quelle.',
  },
  edition: {
    word: 'Ausgabe',
    forms: ['Ausgabe', 'Ausgaben'],
    says: 'Der Stand der Grenzen und Größen nach Jahr und Monat, gegen den beurteilt wurde.',
  },
  confirmation: {
    word: 'Bestätigung',
    forms: ['Bestätigung', 'Bestätigungen'],
    says: 'Das Wort von jemandem, der die Norm vorliegen hat, dass ein erinnerter Wert dort genau so steht.',
  },
  assumed: {
    word: 'angenommen',
    forms: ['angenommen', 'angenommene', 'angenommenen'],
    says: 'Niemand hat es eingetragen: etwas Übliches steht dafür, bis es jemand tut. Damit besteht nichts.',
  },
  repair: {
    word: 'Abhilfe',
    forms: ['Abhilfe', 'Abhilfen'],
    listed: true,
    says: 'Schritte, die Hände tun können, nach denen ein Befund in Ordnung ist und kein anderer schlechter.',
  },
  beamGap: {
    word: 'Lücke zwischen Strahlen',
    forms: ['Lücke zwischen Strahlen', 'Strahllücke'],
    says: 'Der Raum zwischen benachbarten Strahlen, in dem ein Körper liegen und keinen treffen könnte.',
  },
  guardedHeight: {
    word: 'gesicherte Höhe',
    forms: ['gesicherte Höhe', 'gesicherten Höhe'],
    says: 'Wie weit hinauf die Schließkante überwacht werden muss.',
  },
  crawlUnder: {
    word: 'Unterkriechen',
    forms: ['Unterkriechen', 'unterkriecht'],
    says: 'Ob jemand unter dem untersten Strahl eines Feldes hindurchkäme.',
  },
  leafInField: {
    word: 'Blatt im Feld',
    forms: ['Blatt im Feld'],
    says: 'Das laufende Blatt trifft auf einen Strahl eines Feldes und löst es selbst aus.',
  },
}
