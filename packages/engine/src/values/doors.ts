import type { OutsideValue } from '../model/source.ts'

export const guardedHeight = {
  id: 'guarded-height',
  value: 2.5,
  unit: 'm',
  means: 'Height above the floor up to which places that crush or shear have to be guarded.',
  source: {
    basis: 'published',
    document: 'DGUV Information 208-022',
    edition: '2017',
    clause: '6(1)',
    note: 'with the workplace rule ASR A1.7',
  },
} as const satisfies OutsideValue

export const presenceReferenceBody = {
  id: 'presence-reference-body',
  value: [700, 300, 200],
  unit: 'mm',
  means: 'Sides of the reference body with which presence detection at a powered door is tested.',
  source: {
    basis: 'from memory',
    document: 'EN 12453',
    edition: '2017',
    clause: 'test of presence detection',
    note: 'the test stood in EN 12445:2000 before both were merged; neither page was seen',
  },
} as const satisfies OutsideValue
