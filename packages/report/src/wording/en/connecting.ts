import { missingByHand, oftenByHand } from './by-hand.ts'

const faults = (count: number): string => (count === 1 ? 'One single fault hides' : `${count} single faults hide`)

/** What is said of connections that were searched, and of the search for a fault by a meter. */
export const connecting = {
  nothingWrong: 'nothing wrong',
  proposal: (number: number): string => `Connection ${number}`,
  asWired: 'As it is wired now',
  counts: (hidden: number, found: number, nuisance: number, unasked: number, cores: number): string =>
    [
      hidden === 0 ? 'No single fault hides a body unnoticed' : `${faults(hidden)} a body unnoticed`,
      found === 0 ? '' : `, ${found === 1 ? 'one does' : `${found} do`} until a test finds ${found === 1 ? 'it' : 'them'}`,
      nuisance === 0
        ? ''
        : `, and ${nuisance} only ${nuisance === 1 ? 'keeps the door from closing or stops' : 'keep the door from closing or stop'} it`,
      unasked === 0 ? '' : ` (${unasked} of these ${unasked === 1 ? 'opens' : 'open'} it unasked)`,
      `. It takes ${cores === 1 ? 'one core' : `${cores} cores`}.`,
    ].join(''),
  notInOrder: 'It does not work even with nothing wrong.',
  asGood: 'No connection that was found is better.',
  better: 'Connection 1 is better.',
  hidden: 'Stays hidden until somebody tests by hand; the time between two such tests is how long it may last:',
  hiddenFault: (fault: string): string => `- ${fault}`,
  more: (count: number): string => `- and ${count} more`,
  tested: 'The test of the control is used.',
  untested: 'The control tests nothing.',
  core: (name: string, from: string, to: string): string => `core ${name}: ${from} to ${to}`,
  link: (from: string, to: string): string => `link: ${from} to ${to}`,
  joint: (names: string): string => `Joints in the control: ${names}.`,
  second: (pairs: number, judged: number): string =>
    `Pairs of faults, the first unnoticed, that hide a body as the door is wired now: ${pairs} of ${judged}${pairs > 0 ? ':' : '.'}`,
  pair: (first: string, second: string): string => `- ${first}, then ${second}`,
  pairsLeft: (count: number): string => `${count} pairs were not tried; of these nothing is known.`,
  set: (what: string): string => `Set the other way round: ${what}.`,
  resistor: (name: string, ohm: string, from: string, to: string): string => `resistor ${name}, ${ohm} ohm: ${from} to ${to}`,
  byHand: (often: string): string => `Until then: ${often}.`,
  byHandMissing: (missing: string): string => `How often that has to be cannot be said without: ${missing}.`,
  missingByHand,
  oftenByHand,
  none: 'No way to connect these parts works.',
  searched: (tried: number, judged: number): string => `${tried} ways to connect were tried, ${judged} of them judged fault by fault.`,
  left: (count: number): string => `The search was cut short: ${count} ways were not tried, and a better one may be among them.`,
  explainsAll: (count: number): string => (count === 1 ? 'The reading is explained by:' : `All ${count} readings are explained by:`),
  explainsMost: (most: number, of: number): string => `No single fault explains all ${of} readings. ${most} of them are explained by:`,
  nobody: 'with nobody there',
  before: (sensors: string): string => `with somebody before ${sensors}`,
  asking: 'while the control asks its sensors',
  next: (plus: string, minus: string, standing: string, bits: string): string =>
    `Measure next from ${plus} to ${minus}, ${standing}: it tells ${bits} bits.`,
  noNext: 'No voltage tells these apart.',
}
