import type { OutsideValue } from '../model/source.ts'

const source = {
  basis: 'from memory',
  document: 'ISO 13849-1',
  edition: '2015',
  clause: '4.5',
  note: 'the simplified procedure; no page of it was seen',
} as const

export const requiredLevel = {
  id: 'required-level',
  value: [3, 2],
  unit: '1',
  means: 'Least level (1 for a to 5 for e) and least category of a device whose presence detection protects at a powered door.',
  source: {
    basis: 'from memory',
    document: 'EN 12453',
    edition: '2017',
    clause: 'control systems',
    note: 'neither clause nor page was seen',
  },
} as const satisfies OutsideValue

export const coverageBands = {
  id: 'coverage-bands',
  value: [60, 90, 99],
  unit: 'percent',
  means: 'Where low, medium and high diagnostic coverage begin.',
  source: { ...source, clause: 'table 5' },
} as const satisfies OutsideValue

export const failureBands = {
  id: 'failure-bands',
  value: [3, 10, 30],
  unit: 'y',
  means: 'Where low, medium and high mean time to dangerous failure begin.',
  source: { ...source, clause: '4.5.2' },
} as const satisfies OutsideValue

export const commonCauseScore = {
  id: 'common-cause-score',
  value: 65,
  unit: '1',
  means: 'Least score, of 100 points, against failures of common cause; needed from category 2 on.',
  source: { ...source, clause: 'annex F' },
} as const satisfies OutsideValue

export const dangerousShare = {
  id: 'dangerous-share',
  value: 0.1,
  unit: '1',
  means:
    'Share of devices that have failed dangerously after B10d operations: the mean time to dangerous failure is B10d / (0.1 x operations in a year).',
  source: { ...source, clause: 'annex C' },
} as const satisfies OutsideValue

/** Rows of five: category (0 for B), least band of coverage (0 for none), level (0 for none) at low, medium and high mean time to dangerous failure. */
export const simplifiedLevels = {
  id: 'simplified-levels',
  value: [
    ...[0, 0, 1, 2, 0],
    ...[1, 0, 0, 0, 3],
    ...[2, 1, 1, 2, 3],
    ...[2, 2, 2, 3, 4],
    ...[3, 1, 2, 3, 4],
    ...[3, 2, 3, 4, 4],
    ...[4, 3, 0, 0, 5],
  ],
  unit: '1',
  means:
    'Performance level that the simplified procedure gives; fives of category, least coverage, and level at low, medium and high mean time to dangerous failure.',
  source: { ...source, clause: '4.5.4' },
} as const satisfies OutsideValue
