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
      ['class-2-power', 100, 'VA', 'from memory'], // el-19
      ['class-2-voltage', 30, 'V', 'from memory'], // el-19
      ['common-cause-score', 65, '1', 'from memory'], // fs-05
      ['conductor-resistance', [0.5, 39.0, 0.75, 26.0, 1.0, 19.5, 1.5, 13.3, 2.5, 7.98], 'ohm_per_km', 'published'], // el-r0.5 to el-r2.5
      ['copper-coefficient', 0.00393, '1', 'from memory'], // el-16
      ['copper-factors', [5, 1.064, 10, 1.042, 30, 0.962, 40, 0.926, 50, 0.893], '1', 'published'], // el-06
      ['coverage-bands', [60, 90, 99], 'percent', 'from memory'], // fs-01
      ['crawl-under-height', 200, 'mm', 'published'], // sep-06
      ['dangerous-share', 0.1, '1', 'from memory'], // fs-09, which computes with it
      ['doorway-discharge', [0.4, 0.0045], '1', 'published'], // no check value: read in a public library
      ['doorway-mean-height', [2, 9], '1', 'published'], // no check value: read in a public library
      ['extra-low-voltage', 120, 'V', 'from memory'], // el-18
      ['failure-bands', [3, 10, 30], 'y', 'from memory'], // fs-02
      [
        'gauge-resistance', // el-awg24 to el-awg12
        [
          [24, 0.20473, 84.213],
          [22, 0.32553, 52.962],
          [20, 0.51762, 33.308],
          [18, 0.82305, 20.948],
          [16, 1.3087, 13.174],
          [14, 2.0809, 8.2853],
          [12, 3.3088, 5.2107],
        ].flat(),
        'ohm_per_km',
        'published',
      ],
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
      ['required-level', [3, 2], '1', 'from memory'], // no check value
      ['rest-force', 25, 'N', 'from memory'], // door-13
      [
        'simplified-levels', // no check value
        [
          [0, 0, 1, 2, 0],
          [1, 0, 0, 0, 3],
          [2, 1, 1, 2, 3],
          [2, 2, 2, 3, 4],
          [3, 1, 2, 3, 4],
          [3, 2, 3, 4, 4],
          [4, 3, 0, 0, 5],
        ].flat(),
        '1',
        'from memory',
      ],
      ['stranded-resistivity', 20, '1', 'our decision'], // our own; el-r0.5 to el-r2.5
      ['stranding-allowance', 1.03, '1', 'our decision'], // our own; el-14 against el-awg12 to el-awg18
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
