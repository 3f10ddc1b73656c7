import { describe, expect, it } from 'vitest'
import { EDITIONS, editionOf, OUTSIDE_VALUES } from './editions.ts'
import { in_mm } from './in-mm.ts'

// The figures were typed a second time from the collection of outside check values, whose id stands beside each.
describe('outside values of the edition 2026-11', () => {
  it('are these, and no others', () => {
    expect(OUTSIDE_VALUES.map(({ id, value, unit, source: { basis } }) => [id, value, unit, basis])).toEqual([
      ['approach-arm-addend', [8, 14], 'mm', 'from memory'], // sep-09
      ['approach-arm-least', [100, 500], 'mm', 'from memory'], // sep-08
      ['approach-coarse-addend', 850, 'mm', 'from memory'], // sep-10
      ['approach-parallel-addend', [1200, 0.4, 850], 'mm', 'published'], // sep-03
      ['approach-parallel-addend-2024', 1200, 'mm', 'published'], // sep-04
      ['approach-parallel-lowest', [15, 50], 'mm', 'published'], // sep-05
      ['approach-single-beam-addend', 1200, 'mm', 'from memory'], // sep-11
      ['approach-speed-arm', [2000, 1600], 'mm_per_s', 'from memory'], // sep-08
      ['approach-speed-walking', 1600, 'mm_per_s', 'published'], // sep-03
      ['crawl-under-height', 200, 'mm', 'published'], // sep-06
      ['guarded-height', 2.5, 'm', 'published'], // door-09
      ['koschmieder-contrast', 0.02, '1', 'published'], // op-04
      ['lasting-force', 150, 'N', 'from memory'], // door-13
      ['low-energy', 1.69, 'J', 'from memory'], // door-16
      ['minimum-gap', [500, 300, 180, 120, 50, 120, 100, 25], 'mm', 'from memory'], // door-26
      ['peak-force', [400, 400, 1400], 'N', 'from memory'], // door-11, door-10 and its note
      ['peak-time', 0.75, 's', 'from memory'], // door-12
      ['presence-reference-body', [700, 300, 200], 'mm', 'from memory'], // door-14
      [
        'reach-through', // sep-22
        [
          [4, 2, 2, 2],
          [6, 10, 5, 5],
          [8, 20, 15, 5],
          [10, 80, 25, 20],
          [12, 100, 80, 80],
          [20, 120, 120, 120],
          [30, 850, 120, 120],
          [40, 850, 200, 120],
          [120, 850, 850, 850],
        ].flat(),
        'mm',
        'published',
      ],
      ['rest-force', 25, 'N', 'from memory'], // door-13
    ])
  })

  it('each name the document that they stand in', () => {
    for (const { source } of OUTSIDE_VALUES) expect(source.document).toMatch(/\S/)
  })
})

describe('editions', () => {
  it('come newest first and are called by year and month', () => {
    const ids = EDITIONS.map(({ id }) => id)
    expect(ids).toEqual([...ids].sort().reverse())
    for (const id of ids) expect(id).toMatch(/^\d{4}-\d{2}$/)
  })

  it('that are not known are judged by the newest, and say so', () => {
    expect(editionOf('1999-01')).toEqual({ edition: EDITIONS[0], known: false })
    expect(editionOf('2026-11')).toMatchObject({ edition: { id: '2026-11' }, known: true })
  })
})

describe('a printed length in mm', () => {
  const metres = (value: number) => ({ id: 'length', value, unit: 'm', means: '', source: { basis: 'published' } }) as const
  it('leaves out what binary arithmetic leaves behind', () => {
    expect(1.001 * 1000).not.toBe(1001)
    expect(in_mm(metres(1.001))).toBe(1001)
    expect(in_mm({ ...metres(200), unit: 'mm' })).toBe(200)
  })
  it('is refused for what is no length', () => {
    expect(() => in_mm({ ...metres(2), unit: 's' })).toThrow('length must be a length in m or mm, got s')
  })
})
