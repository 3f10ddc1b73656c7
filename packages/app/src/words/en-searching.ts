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
    back: 'As it is wired now',
  },
}

export type Searching = typeof enSearching
