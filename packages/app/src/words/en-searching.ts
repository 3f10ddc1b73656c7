/** What is said of searches through a wiring. Comes with what is opened for them. */
export const enSearching = {
  connect: {
    lead: 'Every way to connect these sensors to this control is thought through, and each that works is judged fault by fault. First comes what hides least, then what bothers least, then fewest cores. All parts stay as they are set.',
    resistors: (count: number): string =>
      count === 1
        ? 'A resistor is not searched with: the one that is there now would go.'
        : `Resistors are not searched with: the ${count} that are there now would go.`,
    search: 'Search for connections',
    trying: (tried: number, judged: number): string =>
      `${tried} ways to connect thought through so far, ${judged} of them judged fault by fault.`,
    found: 'Connections that were found',
    show: 'show on the drawing',
    showFor: (name: string): string => `show on the drawing: ${name}`,
    laid: (count: number): string => (count === 1 ? 'How it is laid: 1 line' : `How it is laid: ${count} lines`),
    noBetter: 'It is no better than what is wired now.',
    notHeld: 'It cannot be written into the door: the door file has no room for it.',
    taken: (name: string): string => `${name} is written into the door, which is judged anew. Undo takes it back.`,
    on: (name: string): string => `On the drawing: ${name}, not written into the door.`,
  },
  trace: {
    lead: 'Measure where it says, with the door as it says, and enter what the meter shows: what cannot be wrong drops out, and the next place is named. What fits is played on the drawing when it is touched. Readings stay on this device through a reload; they are not part of the door.',
    next: (plus: string, minus: string, standing: string): string => `Measure next from ${plus} to ${minus}, ${standing}.`,
    enough: 'No voltage tells apart what is left.',
    alone: 'That is the only one left.',
    enter: 'Enter what it shows',
    enterAt: (plus: string, minus: string): string => `Enter what it shows from ${plus} to ${minus}`,
    hint: (plus: string, minus: string, standing: string): string => `red lead at ${plus}, black lead at ${minus}, ${standing}`,
    show: 'show on the drawing',
    showFor: (plus: string, minus: string): string => `show on the drawing: ${plus} and ${minus}`,
    working: 'Working out what that tells.',
    suspects: 'What can be wrong',
    more: (count: number): string => (count === 1 ? '1 more' : `${count} more`),
    readings: 'What was measured and seen',
    noReadings: 'Nothing yet.',
    volt: 'From {plus} to {minus} the meter shows {volt}, {standing}.',
    sensor: 'Sensor {sensor} shows {shows}, {standing}.',
    input: 'At input {input} the control shows {shows}, {standing}.',
    plusOf: (number: number): string => `red lead of reading ${number}`,
    minusOf: (number: number): string => `black lead of reading ${number}`,
    voltOf: (number: number): string => `voltage of reading ${number}`,
    sensorOf: (number: number): string => `sensor of reading ${number}`,
    inputOf: (number: number): string => `input of reading ${number}`,
    showsOf: (number: number): string => `what reading ${number} shows`,
    standingOf: (number: number): string => `how it stood at reading ${number}`,
    name: (number: number): string => `reading ${number}`,
    gone: 'The wiring has that no longer: it does not count.',
    addVolt: 'Another voltage',
    addSensor: 'What a sensor shows',
    addInput: 'What the control shows',
    anew: 'Begin anew',
    meter: 'The meter may be off by {off}, and besides by {share} of what it shows.',
    off: 'how far the meter may be off',
    share: 'share of the reading by which the meter may be off',
  },
}

export type Searching = typeof enSearching
