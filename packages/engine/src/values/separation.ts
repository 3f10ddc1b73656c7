import type { OutsideValue } from '../model/source.ts'

export const crawlUnderHeight = {
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
