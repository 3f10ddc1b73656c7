import type { chapters as english } from './en-chapters.ts'

export const chapters: typeof english = {
  missingMore: (count) => `${count} weitere Werte fehlen`,
  known: (known, of) => (known === of ? 'alles ist bekannt' : `${known} von ${of} bekannt`),
  listed: (count) => (count === 0 ? 'noch nichts ist aufgeführt' : count === 1 ? '1 ist aufgeführt' : `${count} sind aufgeführt`),
  missing: (count) => (count === 1 ? '1 Wert fehlt' : `${count} Werte fehlen`),
  named: (names) =>
    names.length === 0 ? 'noch nichts ist aufgeführt' : names.length <= 3 ? names.join(', ') : `${names.length} sind aufgeführt`,
  isKnown: (known) => (known ? 'bekannt' : 'noch nicht bekannt'),
  isWritten: (written) => (written ? 'geschrieben' : 'noch nichts ist notiert'),
  readings: 'An mehreren Stellen abgelesen',
  states: 'Wie die Öffnung stehen kann',
  note: 'Notiz zu diesem Tor',
  zone: 'Mehr über diese Zone',
  zoneSaid: 'Körper, Raster, der kleinste gesehene',
  stops: 'Wie lange er zum Anhalten braucht',
  parked: 'Wo der offene Flügel steht',
  lane: 'Mehr über diese Spur',
  laneSaid: 'Körper, Stürze, wer folgt, wie Fahrzeuge anhalten',
  sensor: 'Mehr über diesen Sensor',
  sensorSaid: 'Herkunft, Ausgänge, Grenzen, was er auslässt',
  bodies: 'Körper, mit denen beurteilt wird',
  control: 'Was die Steuerung tut',
  dangers: 'Wo es sonst verletzen kann',
  passingBy: 'Wer vorübergeht',
}
