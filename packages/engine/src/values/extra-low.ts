import type { OutsideValue } from '../model/source.ts'

export const extraLowVoltage = {
  id: 'extra-low-voltage',
  value: 120,
  unit: 'V',
  means: 'Largest direct voltage, free of ripple, of a circuit of extra-low voltage that is safely separated.',
  source: { basis: 'from memory', document: 'IEC 60364-4-41', edition: '2005', clause: '414' },
} as const satisfies OutsideValue

const classTwo = { basis: 'from memory', document: 'NEC (NFPA 70)', edition: 'not known', clause: 'chapter 9, table 11' } as const

export const classTwoVoltage = {
  id: 'class-2-voltage',
  value: 30,
  unit: 'V',
  means: 'Largest voltage of a source whose circuit is energy-limited of class 2.',
  source: classTwo,
} as const satisfies OutsideValue

export const classTwoPower = {
  id: 'class-2-power',
  value: 100,
  unit: 'VA',
  means: 'Largest power of such a source.',
  source: classTwo,
} as const satisfies OutsideValue
