import { faultWords } from './faults.ts'

/** How a wiring is drawn and told: its diagram, its terminals, its faults. */
export const wiring = {
  title: 'Wiring',
  fault: faultWords,
  /** What faults do, as a heading of those that do it. */
  effects: {
    'hidden-and-dangerous': 'Hidden and dangerous',
    'found-by-test': 'Found by a test',
    'stops-the-door': 'Stops the door',
    'keeps-from-closing': 'Keeps the door from closing',
    'fails-to-open': 'Fails to open',
    'no-effect': 'No effect',
  },
  states: { clear: 'clear', seen: 'somebody seen', unpowered: 'without power', 'warming-up': 'waking', fault: 'faulted' },
  beliefs: { clear: 'nobody there', seen: 'somebody there', fault: 'faulted', either: 'either' },
  rails: { plus: 'plus', minus: 'minus', earth: 'earth' },
  parts: {
    supply: 'supply',
    power: 'power',
    presence: 'presence',
    opening: 'opening',
    test: 'test',
    stop: 'stop',
    reverse: 'stop and reverse',
    open: 'open',
    hold: 'hold open',
  },
  closedWhen: (states: string): string => `closed: ${states}`,
  openWhen: (states: string): string => `open: ${states}`,
  never: 'never',
  control: 'control',
  drawnFor: 'Contacts are drawn as they are with power and nobody there.',
  columns: { from: 'From', core: 'Core', colour: 'Colour', to: 'To', function: 'Function' },
  faults: (count: number): string => `${count} single faults`,
  more: (count: number): string => `and ${count} more`,
  cable: (id: string, length: string, size: string): string => `${id}, ${length}, ${size}`,
}
