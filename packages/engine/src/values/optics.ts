import type { OutsideValue } from '../model/source.ts'

export const koschmiederContrast = {
  id: 'koschmieder-contrast',
  value: 0.02,
  unit: '1',
  means: 'Contrast at which a distant dark target is just told from the sky; extinction = -ln(0.02) / visibility = 3.912 / visibility.',
  source: {
    basis: 'published',
    document: 'Glossary of Meteorology (American Meteorological Society)',
    edition: 'web',
    clause: 'meteorological range',
  },
} as const satisfies OutsideValue
