import type { inTime as englishInTime, repairs as englishRepairs, solid as englishSolid } from './en-judge.ts'

export const solid: typeof englishSolid = {
  label: 'Das Tor im Raum. Pfeiltasten drehen es, Plus und Minus holen es heran oder rücken es weg.',
  touch: 'Etwas berühren, um zu lesen, was es ist; ziehen, um zu drehen.',
  missing: 'Dieser Browser zeichnet hier nichts im Raum. Grundriss, Ansicht und Schnitt zeigen dasselbe.',
  from: (side) => `von ${side}`,
  fromWhere: { above: 'von oben', sensor: 'vom Sensor' },
  cut: 'Aufschneiden',
  cuts: { none: 'ganz', x: 'links, rechts', y: 'vorn, hinten', z: 'Höhe' },
  cutAt: (at) => `geschnitten bei ${at}`,
  list: 'Was zu sehen ist',
  names: {
    floor: () => 'Boden',
    grid: () => 'Linien auf dem Boden, jeden Meter',
    building: (name) => name,
    fitting: (name) => name,
    thing: (name) => name,
    leaf: () => 'wo der geschlossene Flügel steht',
    zone: (name) => `Zone „${name}“`,
    unseen: (letter) => (letter ? `Blindstelle ${letter}: die Mitte eines Prüfkörpers` : 'nicht bewiesen, dass es gesehen wird'),
    body: (letter) => `Prüfkörper im ungünstigsten Fall von ${letter}`,
    sensor: (name) => name,
    beams: (name) => `Strahlen von ${name}`,
    moving: (name) => (name === 'leaf' ? 'Flügel in diesem Augenblick' : 'Körper in diesem Augenblick'),
  },
}

export const repairs: typeof englishRepairs = {
  title: 'Abhilfe',
  search: 'Abhilfe suchen',
  searchFor: (rule) => `Abhilfe suchen: ${rule}`,
  trying: (doors) => `Einstellungen werden durchgespielt: bisher ${doors} beurteilt.`,
  stop: 'anhalten',
  none: (doors) => `Nichts gefunden, das diesen Mangel behebt und sonst nichts verschlechtert. ${doors} Einstellungen wurden beurteilt.`,
  apply: 'In das Tor schreiben',
  nearest: (left) => `Damit bleibt am wenigsten: ${left} % von dem, was jetzt fehlt.`,
  rejected: (count) => (count === 1 ? '1 Einstellung wird nicht angeboten' : `${count} Einstellungen werden nicht angeboten`),
  worsens: (rules) => `Verschlechtert: ${rules}.`,
  denied: 'Nach dem Raster ginge es, aber nicht an jedem Platz.',
  judged: (grid, exact) => `${grid} Einstellungen nach dem Raster beurteilt, ${exact} exakt, jedes Mal alle Befunde.`,
}

export const inTime: typeof englishInTime = {
  show: 'im Zeitverlauf',
  showFor: (rule) => `im Zeitverlauf: ${rule}`,
  title: 'Zeitverlauf',
  slider: 'Zeit, seit der Flügel zu schließen begann',
  play: 'Abspielen, verlangsamt',
  pause: 'Anhalten',
  back: 'Schritt zurück',
  forward: 'Schritt vor',
  now: (time, way) => `${time} nach Beginn des Schließens hat die Kante noch ${way} vor sich`,
  body: (out, side, inPlane) =>
    `die Mitte des Körpers liegt ${out} neben der Flügellinie, Richtung ${side}${inPlane ? ', der Körper im Weg des Flügels' : ''}`,
  seen: 'er wird gesehen',
  unseen: 'er wird nicht gesehen',
  forbids: 'ein Ausgang verbietet das Schließen',
  allows: 'kein Ausgang verbietet das Schließen',
}
