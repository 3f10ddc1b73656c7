import type { OutsideValue } from '../model/source.ts'

export const minimumGap = {
  id: 'minimum-gap',
  value: [500, 300, 180, 120, 50, 120, 100, 25],
  unit: 'mm',
  means: 'Smallest gap that does not crush body, head, leg, foot, toes, arm, hand, finger (in this order).',
  source: { basis: 'from memory', document: 'ISO 13854', edition: '2017', clause: 'table 1', note: 'the table was not seen' },
} as const satisfies OutsideValue

/** Rows of four: widest opening, then the distance that is far enough behind a slot, a square, a round hole. */
export const reachThrough = {
  id: 'reach-through',
  value: [
    ...[4, 2, 2, 2],
    ...[6, 10, 5, 5],
    ...[8, 20, 15, 5],
    ...[10, 80, 25, 20],
    ...[12, 100, 80, 80],
    ...[20, 120, 120, 120],
    ...[30, 850, 120, 120],
    ...[40, 850, 200, 120],
    ...[120, 850, 850, 850],
  ],
  unit: 'mm',
  means:
    'How far somebody of 14 or older reaches through an opening; fours of its width and the distance behind a slot, a square, a round hole.',
  source: {
    basis: 'published',
    document: 'DGUV Information 208-022',
    edition: '2017',
    clause: '6, table 2',
    note: 'quotes ISO 13857, table 4; children reach farther, and their table was not seen',
  },
} as const satisfies OutsideValue
