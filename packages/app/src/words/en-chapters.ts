/** What is opened when somebody wants to say it: its title, and how far it is known. */
export const chapters = {
  known: (known: number, of: number): string => (known === of ? 'all is known' : `${known} of ${of} known`),
  listed: (count: number): string => (count === 0 ? 'nothing is listed yet' : count === 1 ? '1 is listed' : `${count} are listed`),
  isKnown: (known: boolean): string => (known ? 'known' : 'not known yet'),
  stops: 'How long it takes to stop',
  parked: 'Where the open leaf stands',
  lane: 'More about this lane',
  laneSaid: 'bodies, falls, how vehicles stop',
  sensor: 'More about this sensor',
  sensorSaid: 'source, limits, how people come to it',
  bodies: 'Bodies it is judged with',
  control: 'What the control does',
  dangers: 'Where else it can hurt',
  passingBy: 'Who passes by',
}
