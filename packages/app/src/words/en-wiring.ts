/** What is connected to what. */
export const wiring = {
  title: 'Wiring',
  none: 'Nobody has said yet how the sensors are wired. Begin with a usual wiring and put right what is otherwise: every single fault of it is then tried.',
  begin: 'Begin with a usual wiring',
  beginToo: 'Wire the other sensors too, in the usual way',
  name: 'wiring',
  remembered: 'Its figures are remembered ones. Nothing passes on them until somebody has held them against the data sheets.',
  supply: {
    copper: 'The copper of the cables gets as cold as {coldest} and as hot as {hottest}.',
    coldest: 'how cold the copper gets',
    hottest: 'how hot the copper gets',
    source: 'The source {limited}; it can give {largest}, through a fuse of {fuse}.',
    limited: 'What the label of the source says',
    limitedNames: {
      'class-2': 'is energy-limited (class 2)',
      'extra-low': 'is separated and gives extra-low voltage',
      no: 'is neither energy-limited nor separated',
    },
    limitedUnknown: 'has a label that nobody read',
    largest: 'the current that the source can give',
    fuse: 'rating of the fuse',
    noFuse: 'a size nobody named',
    contact: 'Contact {name} of {sensor} may switch {volt} and {most}, and needs {least} to stay clean.',
    volt: (contact: string): string => `largest voltage of contact ${contact}`,
    most: (contact: string): string => `largest current of contact ${contact}`,
    least: (contact: string): string => `least current of contact ${contact}`,
  },
  cautions: [
    'Disconnect the door from its supply before you open the control or touch a terminal.',
    'Work on mains is for qualified electricians.',
  ],
}
