import type {
  calls as englishCalls,
  hinged as englishHinged,
  note as englishNote,
  parked as englishParked,
  readings as englishReadings,
  states as englishStates,
  stops as englishStops,
} from './en-movement.ts'

export const calls: typeof englishCalls = {
  words: 'Ruft jemand den geschlossenen Flügel, beginnt er nach {openDelay} zu öffnen; offen bleibt er {holdOpen}.',
  openDelay: 'vom Ruf, bis ein geschlossener Flügel zu öffnen beginnt',
  holdOpen: 'wie lange er offen bleibt',
  braking: 'Bleibt er zu, bremst ein Fahrzeug nach {reaction_s}, mit {decel_m_per_s2}; der Weg fällt zum Flügel hin um {gradient_percent}.',
  reaction_s: 'vom Erkennen, dass der Flügel zubleibt, bis es bremst',
  decel_m_per_s2: 'wie stark ein Fahrzeug mit seiner ungünstigsten Last bremst',
  gradient_percent: 'Gefälle des Weges zum Flügel hin, unter null bei Steigung',
  addBraking: 'Wie ein Fahrzeug anhält',
  falls: 'Wer durchgeht, {falls}.',
  whetherFalls: 'Ob jemand stürzen kann',
  fallNames: { never: 'stürzt nicht', anywhere: 'kann überall stürzen und liegen bleiben' },
  fallsUnknown: 'stürzt nicht, so wird angenommen',
  follow: 'Kleinster Abstand zum Nächsten dahinter: {gap}.',
  followGap: 'kleinster Abstand vom Rücken des einen zur Vorderseite des nächsten',
  followUnknown: 'beliebig klein',
  bodies: 'Beurteilt wird sie mit jedem Körper dieses Tores.',
  chosen: 'Beurteilt wird sie mit diesen:',
  addBody: 'Mit einem weiteren Körper beurteilen',
  removeBody: (body, lane) => `${body} weglassen, ${lane}`,
}

export const stops: typeof englishStops = {
  words: 'Gemessen vom Befehl bei voller Geschwindigkeit bis zum Stillstand: {readings}.',
  none: 'Noch wurde kein Halt gemessen. Drei ergeben eine obere Grenze; mehr machen sie enger.',
  more: (count) => (count === 1 ? 'Zu einer oberen Grenze fehlt noch einer.' : `Zu einer oberen Grenze fehlen noch ${count}.`),
  bound: 'Die obere Grenze soll für {share} aller Halte gelten, mit {confidence} Sicherheit.',
  share: 'Anteil aller Halte, der nicht länger dauert als die obere Grenze',
  confidence: 'mit welcher Sicherheit',
  reading: (which) => `Halt ${which}`,
  add: 'Gemessene Halte eingeben',
  next: 'Eingeben, und der nächste',
  done: 'Fertig',
}

export const parked: typeof englishParked = {
  unknown: 'Niemand hat gesagt, wo der offene Flügel steht.',
  none: 'Der offene Flügel steht nirgends im Sichtfeld.',
  words: 'Offen belegt der Flügel {along} mal {across}, von {from} bis {to}, die Mitte {x} längs und {y} davor.',
  turned: 'Offen belegt der Flügel {along} mal {across}, gedreht um {yaw}, von {from} bis {to}, die Mitte {x} längs und {y} davor.',
  yaw: 'Drehung des offenen Flügels im Grundriss',
  notThere: 'Er steht nirgends im Sichtfeld',
  figures: {
    along: 'Maß des offenen Flügels entlang der Öffnung',
    across: 'Maß des offenen Flügels quer',
    from: 'Unterkante des offenen Flügels',
    to: 'Oberkante des offenen Flügels',
    x: 'Mitte des offenen Flügels entlang der Öffnung',
    y: 'wie weit davor der offene Flügel steht, gegen Seite A positiv',
  },
  name: 'Offener Flügel',
}

export const states: typeof englishStates = {
  lead: 'Eine Öffnung kann in mehreren Zuständen sein, etwa mit der Überladebrücke oben oder unten. Jeder davon wird beurteilt.',
  usual: 'wie aufgemessen',
  made: 'anderer Zustand',
  add: 'Noch ein Zustand',
  floorAsSurveyed: 'Der Boden ist wie aufgemessen.',
  ownFloor: 'Der Boden ist ein anderer',
  floor: 'Der Boden steigt dann entlang der Öffnung um {slope} und kann {tolerance} höher liegen als aufgemessen.',
  allThere: 'Was ringsum steht, ist auch dann da.',
  gone: 'Dann nicht da:',
  onlyThere: 'Nur dann da:',
  addGone: 'Etwas ist nicht da',
  removeGone: (thing, state) => `Doch da: ${thing}, ${state}`,
}

export const hinged: typeof englishHinged = {
  name: 'wie der Flügel hängt',
  hung: 'Er hängt {hinge} und öffnet gegen {opensTo}.',
  hinge: 'Wo der Flügel hängt',
  hinges: { 'at-zero': 'links', 'at-width': 'rechts', both: 'zweiflügelig, links und rechts' },
  opensTo: 'Seite, zu der der Flügel öffnet',
  turns: 'Von der Drehachse an ist er {length_mm} lang, und er öffnet um {openAngle_deg}.',
  length: 'Länge von der Drehachse bis zur Kante; wo er faltet, des Teils an der Drehachse',
  openAngle: 'Winkel, wenn er ganz offen ist',
  folds: 'Zweiter Teil, wo er faltet: {panel}.',
  panel: 'Länge des zweiten Teils',
  noPanel: 'es gibt keinen',
}

export const readings: typeof englishReadings = {
  lead: 'Ein Maßband wird leicht falsch abgelesen: Mehrere Ablesungen decken das auf. Die kleinste zählt.',
  widths: {
    words: 'Auf {at_mm} Höhe misst die lichte Breite {reading}.',
    at: 'Höhe der Ablesung über dem Boden',
    name: 'dort abgelesene Breite',
    nth: (which) => `Breite, Ablesung ${which}`,
    add: 'Noch eine Breite',
  },
  heights: {
    words: 'Bei {at_mm} längs misst die lichte Höhe {reading}.',
    at: 'wo entlang des Flügels abgelesen wurde',
    name: 'dort abgelesene Höhe',
    nth: (which) => `Höhe, Ablesung ${which}`,
    add: 'Noch eine Höhe',
  },
}

export const note: typeof englishNote = { label: 'Was sonst über dieses Tor zu sagen ist' }
