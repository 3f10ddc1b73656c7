import type { chapters as english } from './en-chapters.ts'

export const chapters: typeof english = {
  known: (known, of) => (known === of ? 'alles ist bekannt' : `${known} von ${of} bekannt`),
  listed: (count) => (count === 0 ? 'noch nichts ist aufgeführt' : count === 1 ? '1 ist aufgeführt' : `${count} sind aufgeführt`),
  isKnown: (known) => (known ? 'bekannt' : 'noch nicht bekannt'),
  stops: 'Wie lange er zum Anhalten braucht',
  parked: 'Wo der offene Flügel steht',
  lane: 'Mehr über diese Spur',
  laneSaid: 'Körper, Stürze, wie Fahrzeuge anhalten',
  sensor: 'Mehr über diesen Sensor',
  sensorSaid: 'Herkunft, Grenzen, wie man zu ihm kommt',
  bodies: 'Körper, mit denen beurteilt wird',
  control: 'Was die Steuerung tut',
  dangers: 'Wo es sonst verletzen kann',
  passingBy: 'Wer vorübergeht',
}
