import type { OutsideValue } from '../model/source.ts'

export const doorwayDischarge = {
  id: 'doorway-discharge',
  value: [0.4, 0.0045],
  unit: '1',
  means: 'Discharge coefficient of an open doorway with air going both ways: 0.40 + 0.0045 for each kelvin of difference.',
  source: {
    basis: 'published',
    document: 'ASHRAE Handbook of Fundamentals',
    edition: '2009',
    note: 'seen as the open library AixLib (RWTH Aachen) prints it, not in the handbook itself',
  },
} as const satisfies OutsideValue

export const doorwayMeanHeight = {
  id: 'doorway-mean-height',
  value: [2, 9],
  unit: '1',
  means: 'Part of the height from the middle of a doorway at which the flow of either way stands for its mean: 2 / 9.',
  source: {
    basis: 'published',
    document: 'NIST Technical Note 1887, CONTAM User Guide',
    edition: 'revision 1, 2020',
    note: 'seen as the open library IBPSA prints and computes it, not in the guide itself',
  },
} as const satisfies OutsideValue
