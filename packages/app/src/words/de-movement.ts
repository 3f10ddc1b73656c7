import type {
  calls as englishCalls,
  hinged as englishHinged,
  parked as englishParked,
  states as englishStates,
  stops as englishStops,
} from './en-movement.ts'

export const calls: typeof englishCalls = {
  words: 'Wird er geschlossen gerufen, beginnt er nach {openDelay} zu öffnen; offen bleibt er {holdOpen}.',
  openDelay: 'vom Ruf, bis ein geschlossener Flügel zu öffnen beginnt',
  holdOpen: 'wie lange er offen bleibt',
  braking: 'Bleibt er zu, bremst ein Fahrzeug nach {reaction_s}, mit {decel_m_per_s2}; der Weg fällt zum Flügel hin um {gradient_percent}.',
  reaction_s: 'vom Erkennen, dass der Flügel zu bleibt, bis es bremst',
  decel_m_per_s2: 'wie stark ein Fahrzeug mit seiner schlimmsten Last bremst',
  gradient_percent: 'Gefälle des Weges zum Flügel hin, unter null bei Steigung',
  addBraking: 'Wie ein Fahrzeug anhält',
  falls: 'Wer durchgeht, {falls}.',
  whetherFalls: 'Ob jemand stürzen kann',
  fallNames: { never: 'stürzt nicht', anywhere: 'kann überall stürzen und liegen bleiben' },
  fallsUnknown: 'gilt als einer, der nicht stürzt',
  bodies: 'Beurteilt wird sie mit jedem Körper dieses Tores.',
  chosen: 'Beurteilt wird sie mit diesen:',
  addBody: 'Mit einem weiteren Körper beurteilen',
  removeBody: (body, lane) => `${body} weglassen, ${lane}`,
}

export const stops: typeof englishStops = {
  words: 'Gestoppt vom Befehl bei voller Geschwindigkeit, bis er ruhte: {readings}.',
  none: 'Noch wurde kein Halt gestoppt. Drei ergeben eine Schranke; mehr machen sie enger.',
  more: (count) => (count === 1 ? 'Noch einer fehlt, bevor sie zählen.' : `Noch ${count} fehlen, bevor sie zählen.`),
  bound: 'Die Schranke soll für {share} aller Halte gelten, mit {confidence} Vertrauen.',
  share: 'Anteil aller Halte, der nicht länger dauert als die Schranke',
  confidence: 'mit welchem Vertrauen',
  reading: (which) => `Halt ${which}`,
  add: 'Gestoppte Halte eingeben',
  next: 'Eingeben, und der nächste',
  done: 'Fertig',
}

export const parked: typeof englishParked = {
  unknown: 'Niemand hat gesagt, wo der offene Flügel steht.',
  none: 'Der offene Flügel steht nirgends im Blick.',
  words: 'Offen füllt der Flügel {along} mal {across}, von {from} bis {to}, die Mitte {x} entlang und {y} davor.',
  notThere: 'Er steht nirgends im Blick',
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
  floor:
    'Ist das Tor im Zustand {state}, steigt der Boden entlang der Öffnung um {slope} und darf {tolerance} höher stehen als aufgemessen.',
}

export const hinged: typeof englishHinged = {
  hung: 'Er hängt {hinge} und öffnet gegen {opensTo}.',
  hinge: 'Wo der Flügel hängt',
  hinges: { 'at-zero': 'links', 'at-width': 'rechts', both: 'zu zweit, links und rechts' },
  opensTo: 'Seite, zu der der Flügel öffnet',
  turns: 'Von der Drehachse an ist er {length_mm} lang, und er öffnet um {openAngle_deg}.',
  length: 'Länge von der Drehachse bis zur Kante; wo er faltet, des Teils an der Drehachse',
  openAngle: 'Winkel, wenn er ganz offen ist',
  folds: 'Wo er faltet, ist der zweite Teil {panel} lang.',
  panel: 'Länge des zweiten Teils',
  noPanel: 'nicht vorhanden',
}
