import type { OutsideValue } from '../model/source.ts'

const source = {
  basis: 'from memory',
  document: 'EN 12453',
  edition: '2000',
  clause: 'annex A, table A.1',
  note: 'neither this table nor that of a later edition was seen',
} as const

export const peakForce = {
  id: 'peak-force',
  value: [400, 400, 1400],
  unit: 'N',
  means:
    'Largest force on contact of a leaf that goes down, of one that goes along with 50 to 500 mm left, of one that goes along with more left (in this order).',
  source,
} as const satisfies OutsideValue

export const peakTime = {
  id: 'peak-time',
  value: 0.75,
  unit: 's',
  means: 'How long a contact force may stay above what may act for longer.',
  source,
} as const satisfies OutsideValue

export const lastingForce = {
  id: 'lasting-force',
  value: 150,
  unit: 'N',
  means: 'Force that may act after that time.',
  source,
} as const satisfies OutsideValue

export const restForce = {
  id: 'rest-force',
  value: 25,
  unit: 'N',
  means: 'Force that may be left 5 s after contact.',
  source,
} as const satisfies OutsideValue

export const lowEnergy = {
  id: 'low-energy',
  value: 1.69,
  unit: 'J',
  means: 'Largest kinetic energy of a leaf whose protection rests on low energy.',
  source: {
    basis: 'from memory',
    document: 'EN 16005',
    edition: '2012',
    clause: 'low energy',
    note: '1.25 lbf ft in ANSI/BHMA A156.19 (2013); for pedestrian doors only, neither page was seen',
  },
} as const satisfies OutsideValue
