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
      ['presence-reference-body', [700, 300, 200], 'mm', 'from memory'], // door-14
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
