import type { OutsideValue } from '../model/source.ts'

const crawlUnderHeight = {
  id: 'crawl-under-height',
  value: 200,
  unit: 'mm',
  means: 'Height of the lower edge of a detection zone above which somebody may crawl under it unseen.',
  source: {
    basis: 'published',
    document: 'ISO 13855',
    edition: '2024',
    clause: '9',
    note: 'seen in a published summary of the standard; the edition of 2010 had 300 mm (from memory)',
  },
} as const satisfies OutsideValue

const SUMMARY = 'seen in a published summary, not in the standard itself'

const approachSpeedWalking = {
  id: 'approach-speed-walking',
  value: 1600,
  unit: 'mm_per_s',
  means: 'Speed K at which people are taken to come toward a detection zone that lies along their way.',
  source: { basis: 'published', document: 'ISO 13855', edition: '2010', clause: '6.3', note: SUMMARY },
} as const satisfies OutsideValue

const parallelAddend = {
  id: 'approach-parallel-addend',
  value: [1200, 0.4, 850],
  unit: 'mm',
  means: 'Addend C of a lying detection zone at the height H: 1200 - 0.4 H, not below 850.',
  source: { basis: 'published', document: 'ISO 13855', edition: '2010', clause: '6.3', note: SUMMARY },
} as const satisfies OutsideValue

const parallelAddend2024 = {
  id: 'approach-parallel-addend-2024',
  value: 1200,
  unit: 'mm',
  means: 'Addend D_DS of a lying detection zone, whatever its height.',
  source: { basis: 'published', document: 'ISO 13855', edition: '2024', clause: '9', note: SUMMARY },
} as const satisfies OutsideValue

const parallelLowest = {
  id: 'approach-parallel-lowest',
  value: [15, 50],
  unit: 'mm',
  means: 'Lowest height H of a lying detection zone whose detection capability is d: 15 (d - 50), from 0 to 1000.',
  source: { basis: 'published', document: 'ISO 13855', edition: '2010 and 2024', clause: '6.3 / 9', note: SUMMARY },
} as const satisfies OutsideValue

const approachSpeedArm = {
  id: 'approach-speed-arm',
  value: [2000, 1600],
  unit: 'mm_per_s',
  means: 'Speeds K of an arm: the first, or where the distance then exceeds 500 mm the second.',
  source: { basis: 'from memory', document: 'ISO 13855', edition: '2010', clause: '6.2.3.1' },
} as const satisfies OutsideValue

const armLeast = {
  id: 'approach-arm-least',
  value: [100, 500],
  unit: 'mm',
  means: 'Least distance of a standing detection zone at the first and at the second speed of an arm.',
  source: { basis: 'from memory', document: 'ISO 13855', edition: '2010', clause: '6.2.3.1' },
} as const satisfies OutsideValue

const armAddend = {
  id: 'approach-arm-addend',
  value: [8, 14],
  unit: 'mm',
  means: 'Addend C of a standing detection zone whose detection capability d is at most 40 mm: 8 (d - 14), not below 0.',
  source: { basis: 'from memory', document: 'ISO 13855', edition: '2010', clause: '6.2.3.1' },
} as const satisfies OutsideValue

const coarseAddend = {
  id: 'approach-coarse-addend',
  value: 850,
  unit: 'mm',
  means: 'Addend C of a standing detection zone whose detection capability is above 40 and at most 70 mm.',
  source: { basis: 'from memory', document: 'ISO 13855', edition: '2010', clause: '6.2.3.2' },
} as const satisfies OutsideValue

const singleBeamAddend = {
  id: 'approach-single-beam-addend',
  value: 1200,
  unit: 'mm',
  means: 'Addend C of a single beam 750 mm above the floor.',
  source: { basis: 'from memory', document: 'ISO 13855', edition: '2010', clause: '6.2.5' },
} as const satisfies OutsideValue

/** All of this file, by the name that the rules use. */
export const separationValues = {
  crawlUnderHeight,
  approachSpeedWalking,
  parallelAddend,
  parallelAddend2024,
  parallelLowest,
  approachSpeedArm,
  armLeast,
  armAddend,
  coarseAddend,
  singleBeamAddend,
} as const
