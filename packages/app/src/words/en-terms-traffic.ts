import type { Term } from './term.ts'

/** Words of coming to the door in time, of calling it, and of passing by. */
export const trafficTerms = {
  approachDistance: {
    word: 'approach distance',
    forms: ['approach distance', 'separation distance'],
    says: 'How far before the leaf somebody has to be found, so that it rests when they arrive.',
  },
  stoppingTime: {
    word: 'stopping time',
    forms: ['stopping time', 'stopping times'],
    says: 'From the stop command until the leaf rests. Of several readings the bound that nearly all stops keep.',
  },
  addend: {
    word: 'addend',
    forms: ['addend'],
    says: 'What the separation distance asks for besides the way walked: how far somebody reaches before being found.',
  },
  capability: {
    word: 'detection capability',
    forms: ['detection capability'],
    says: 'The smallest body that a field surely sees, as its data sheet says.',
  },
  callDistance: {
    word: 'call distance',
    forms: ['call distance'],
    says: 'How far before the leaf a vehicle has to call the door, so that it finds the opening clear.',
  },
  openInTime: {
    word: 'open when it arrives',
    forms: ['open when it arrives'],
    says: 'A vehicle that called the door finds the opening clear and need not brake.',
  },
  stopsIfShut: {
    word: 'stops if shut',
    forms: ['stops if shut', 'stops if the leaf stays shut'],
    says: 'A vehicle that called the door still stops before a leaf that does not open.',
  },
  holdOpenTime: {
    word: 'hold-open time',
    forms: ['hold-open time'],
    says: 'How long the leaf stays open before its control commands a closing.',
  },
  preWarning: {
    word: 'pre-warning',
    forms: ['pre-warning', 'it warns for'],
    says: 'Light or sound between the command to close and the first motion of the leaf.',
  },
  attempt: {
    word: 'attempt',
    forms: ['attempt', 'attempts'],
    says: 'A closing that the control tries again after the leaf turned round.',
  },
  coasting: {
    word: 'coasting',
    forms: ['coasting', 'coasts'],
    says: 'How a leaf without a brake comes to rest: slowed by friction alone.',
  },
  crossing: {
    word: 'crossing',
    forms: ['crossing', 'crossings'],
    says: 'A way past the door that people take who do not want through.',
  },
  needlessOpenings: {
    word: 'needless openings',
    forms: ['needless openings', 'needlessly'],
    says: 'How often in a day somebody who only passes by opens the door.',
  },
  airLost: {
    word: 'air lost',
    forms: ['air lost'],
    says: 'How much air goes through in a day because the door opens needlessly.',
  },
} as const satisfies Readonly<Record<string, Term>>
