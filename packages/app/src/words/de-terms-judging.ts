import type { judgingTerms as english } from './en-terms-judging.ts'
import type { Term } from './term.ts'

export const judgingTerms: Readonly<Record<keyof typeof english, Term>> = {
  // bodies and coverage
  testBody: {
    word: 'Prüfkörper',
    forms: ['Prüfkörper', 'Prüfkörpers', 'Prüfkörpern'],
    says: 'Ein Quader oder Zylinder von genannter Größe, der für jemanden steht. Wo er ungesehen ist, kann jemand dieser Größe sein.',
  },
  referenceBody: {
    word: 'Referenzkörper',
    forms: ['Referenzkörper', 'Referenzkörpers'],
    says: 'Der Prüfkörper, den eine Norm nennt: Anwesenheit am Flügel wird mit keinem größeren beurteilt.',
  },
  posture: {
    word: 'Lage',
    forms: ['Lage', 'Lagen'],
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
    says: 'Wofür eine Zone da ist: Anwesenheit am Flügel, Öffnen, Rufen, oder dass dort nichts gesehen wird.',
  },
  presence: {
    word: 'Anwesenheit am Flügel',
    forms: ['Anwesenheit am Flügel', 'Anwesenheit', 'Anwesenheitssensor', 'Anwesenheitszone', 'Anwesenheitserkennung'],
    says: 'Ein Körper im Weg des Flügels wird bemerkt, auch wenn er stillsteht, damit der Flügel nicht auf ihn schließt.',
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
  placement: {
    word: 'Platz',
    forms: ['Plätze', 'Plätzen'],
    says: 'Ein Ort auf dem Boden für die Mitte eines Prüfkörpers, an dem nichts im Weg steht.',
  },
  grid: {
    word: 'Raster',
    forms: ['Raster', 'Rasters', 'Rasterfelder', 'Rasterfeldern'],
    says: 'Das Netz von Plätzen, das zuerst probiert wird. Zwischen seinen Punkten ist noch nichts berechnet.',
  },
  unseen: {
    word: 'ungesehen',
    forms: ['ungesehen', 'ungesehene', 'ungesehenen', 'ungesehener', 'blind'],
    says: 'Kein Feld, das zählt, bemerkt den Körper in wenigstens einer seiner Lagen. In der Zeichnung sind solche Stellen schraffiert.',
  },
  coverage: {
    word: 'abgedeckt',
    forms: ['abgedeckt', 'abgedeckte', 'Abdeckung'],
    says: 'Wo immer in der Zone ein Prüfkörper Platz findet, wird er gesehen.',
  },
  blindPocket: {
    word: 'Blindstelle',
    forms: ['Blindstelle', 'Blindstellen'],
    says: 'Ein zusammenhängender Fleck Boden, auf dem ein Körper ungesehen bleibt. Jede hat einen Buchstaben in der Zeichnung.',
  },
  allowedPocket: {
    word: 'erlaubte Blindstelle',
    forms: ['erlaubte Blindstelle', 'erlaubten Blindstelle', 'größte Blindstelle, die bleiben darf'],
    says: 'Die größte Blindstelle, die in einer Zone bleiben darf.',
  },
  diameter: { word: 'Durchmesser', forms: ['Durchmesser', 'Durchmessers'], says: 'Der größte Abstand zweier Punkte einer Blindstelle.' },
  largestCircle: {
    word: 'größter Kreis',
    forms: ['größter Kreis', 'größte Kreis', 'größten Kreis'],
    says: 'Der größte Kreis, der in eine Blindstelle passt: Er sagt, wie viel Platz dort ist.',
  },
  deadGround: {
    word: 'Totbereich',
    forms: ['Totbereich', 'Totbereichs'],
    says: 'Boden nahe am Fuß eines Sensors, auf dem kein Körper in irgendeiner Lage gesehen wird.',
  },
  reverseTest: {
    word: 'Umkehrprüfung',
    forms: ['Umkehrprüfung'],
    says: 'Ob nichts gesehen wird, wo nichts gesehen werden darf, etwa auf der Straße vor dem Tor.',
  },
  worstCase: {
    word: 'ungünstigster Fall',
    forms: ['ungünstigster Fall', 'ungünstigste Fall', 'ungünstigsten Fall'],
    says: 'Ein Körper, wo er liegt, der zeigt, warum etwas ein Mangel ist.',
  },
  smallestBody: {
    word: 'kleinster Körper',
    forms: ['kleinster Körper', 'kleinsten Körper', 'kleinster gesehener Körper'],
    says: 'Die kleinste Größe, ab der jeder probierte Körper überall in der Zone gesehen wird.',
  },
  // judging
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
    word: 'Mangel',
    forms: ['Mangel', 'Mängel', 'Mängeln'],
    listed: true,
    says: 'Der Wert verfehlt seine Grenze. Was abhelfen würde, steht daneben.',
  },
  notSettled: {
    word: 'ungeklärt',
    forms: ['ungeklärt', 'nicht bekannt'],
    says: 'Es fehlt etwas, das es entscheiden würde. Der Satz sagt, was.',
  },
  doesNotApply: {
    word: 'entfällt',
    forms: ['entfällt', 'entfallen'],
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
    forms: ['Grundlage', 'aus dem Gedächtnis', 'üblich, ohne Quelle', 'unsere Festlegung'],
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
    says: 'Niemand hat es eingetragen: etwas Übliches steht dafür, bis es jemand tut. Damit ist nichts in Ordnung.',
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
    forms: ['gesicherte Höhe', 'Sicherungshöhe'],
    says: 'Wie weit hinauf die Schließkante überwacht werden muss.',
  },
  crawlUnder: {
    word: 'Unterkriechen',
    forms: ['Unterkriechen', 'durchkriechen', 'Unterkriechhöhe'],
    says: 'Ob jemand unter dem untersten Strahl eines Feldes hindurchkäme.',
  },
  struck: {
    word: 'Treffer',
    forms: ['Treffer', 'trifft ein', 'getroffen'],
    says: 'Der schließende Flügel bewegt sich noch, wenn er auf einen Körper stößt.',
  },
  walkedInto: {
    word: 'angelaufen',
    forms: ['angelaufen', 'läuft gegen', 'läuft auf'],
    says: 'Ein Körper stößt auf den Flügel, während dieser ruht oder öffnet: Er war nicht rechtzeitig aus dem Weg.',
  },
  leafInField: {
    word: 'Flügel im Feld',
    forms: ['Flügel im Feld'],
    says: 'Der laufende Flügel trifft auf einen Strahl eines Feldes und löst es selbst aus.',
  },
  performanceLevel: {
    word: 'Performance Level',
    forms: ['Performance Level', 'Performance Levels'],
    says: 'Wie zuverlässig ein Teil einer Schutzfunktion ist, von a, dem geringsten, bis e. Sein Hersteller gibt ihn an.',
  },
  meanTimeToFailure: {
    word: 'mittlere Zeit bis zum gefährlichen Ausfall',
    forms: ['mittlere Zeit bis zum gefährlichen Ausfall'],
    says: 'Jahre, im Mittel, bis ein Teil so ausfällt, dass niemand mehr geschützt ist.',
  },
  diagnosticCoverage: {
    word: 'Diagnosedeckungsgrad',
    forms: ['Diagnosedeckungsgrad'],
    says: 'Der Anteil der gefährlichen Ausfälle, den ein Gerät oder seine Steuerung selbst findet.',
  },
}
