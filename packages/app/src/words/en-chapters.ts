/** What is opened when somebody wants to say it: its title, and how far it is known. */
export const chapters = {
  missingMore: (count: number): string => `${count} more values are missing`,
  known: (known: number, of: number): string => (known === of ? 'all is known' : `${known} of ${of} known`),
  listed: (count: number): string => (count === 0 ? 'nothing is listed yet' : count === 1 ? '1 is listed' : `${count} are listed`),
  missing: (count: number): string => (count === 1 ? '1 value missing' : `${count} values missing`),
  /** A few are named, many counted. */
  named: (names: readonly string[]): string =>
    names.length === 0 ? 'nothing is listed yet' : names.length <= 3 ? names.join(', ') : `${names.length} are listed`,
  isKnown: (known: boolean): string => (known ? 'known' : 'not known yet'),
  isWritten: (written: boolean): string => (written ? 'written' : 'nothing is noted yet'),
  readings: 'Read at more places than one',
  states: 'How the doorway can stand',
  note: 'A note about this door',
  zone: 'More about this zone',
  zoneSaid: 'bodies, grid, the smallest one seen',
  stops: 'How long it takes to stop',
  parked: 'Where the open leaf stands',
  lane: 'More about this lane',
  laneSaid: 'bodies, falls, who follows, how vehicles stop',
  sensor: 'More about this sensor',
  sensorSaid: 'source, outputs, limits, what it leaves out',
  bodies: 'Bodies it is judged with',
  control: 'What the control does',
  dangers: 'Where else it can hurt',
  passingBy: 'Who passes by',
}
