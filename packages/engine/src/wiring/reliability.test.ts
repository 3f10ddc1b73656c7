import { describe, expect, it } from 'vitest'
import { coverageBands, dangerousShare, failureBands, simplifiedLevels } from '../values/functional-safety.ts'
import { meanTimeOfCycles, simplifiedLevel } from './reliability.ts'

const procedure = { coverageBands: coverageBands.value, failureBands: failureBands.value, levels: simplifiedLevels.value }
const level = (category: number, mttfd_y: number, coverage_percent: number) =>
  ' abcde'[simplifiedLevel({ category, mttfd_y, coverage_percent }, procedure)]?.trim() ?? ''

describe('the mean time to dangerous failure of what wears out by operations', () => {
  it('is 237 years in the example of the standard: B10d 60 million, 220 days of 16 hours, one cycle in 5 s', () => {
    // fs-09 of the collection of check values: 2 534 400 operations in a year, 236.74 years
    const operations_per_y = (220 * 16 * 3600) / 5
    expect(operations_per_y).toBe(2_534_400)
    expect(meanTimeOfCycles({ b10d: 60e6, operations_per_y, share: dangerousShare.value })).toBeCloseTo(236.74, 2)
  })
})

describe('the performance level by the simplified procedure', () => {
  it('is that of the table, as remembered', () => {
    expect([level(0, 5, 0), level(0, 20, 0)]).toEqual(['a', 'b'])
    expect([level(1, 20, 0), level(1, 40, 0)]).toEqual(['', 'c'])
    expect([level(2, 5, 60), level(2, 20, 60), level(2, 40, 60)]).toEqual(['a', 'b', 'c'])
    expect([level(2, 5, 90), level(2, 20, 90), level(2, 40, 90)]).toEqual(['b', 'c', 'd'])
    expect([level(3, 5, 60), level(3, 20, 60), level(3, 40, 60)]).toEqual(['b', 'c', 'd'])
    expect([level(3, 5, 90), level(3, 20, 90), level(3, 40, 90)]).toEqual(['c', 'd', 'd'])
    expect([level(4, 20, 99), level(4, 40, 99)]).toEqual(['', 'e'])
  })
  it('is none below the bands: less than 3 years, or less coverage than the category asks for', () => {
    expect([level(3, 2.9, 90), level(2, 40, 59.9), level(4, 40, 98.9)]).toEqual(['', '', ''])
  })
  it('is in category B and 1 the level of the rate of dangerous failures, in the middle of each band of years', () => {
    // fs-03 and fs-06 of the collection of check values (ISO 13849-1:2015, tables 2 and 3, annex K, from memory): 1 / (8760 h x years), and the rates at which levels begin
    const rate_per_h = (years: number) => 1 / (8760 * years)
    expect([3, 10, 30, 100].map((years) => rate_per_h(years).toPrecision(3))).toEqual([
      '0.0000381',
      '0.0000114',
      '0.00000381',
      '0.00000114',
    ])
    const levelOfRate = (rate: number) => ['', 'a', 'b', 'c', 'd', 'e'][[1e-4, 1e-5, 3e-6, 1e-6, 1e-7].filter((from) => rate < from).length]
    for (const [category, from_y, to_y] of [
      [0, 3, 10],
      [0, 10, 30],
      [1, 30, 100],
    ] as const) {
      const middle_y = Math.sqrt(from_y * to_y)
      expect(level(category, middle_y, 0), `category ${category}, ${middle_y} years`).toBe(levelOfRate(rate_per_h(middle_y)))
    }
  })
  it('never falls when parts last longer or more faults are found', () => {
    for (const category of [0, 1, 2, 3, 4])
      for (const coverage_percent of [0, 60, 90, 99]) {
        const levels = [2, 3, 10, 30, 100].map((mttfd_y) => simplifiedLevel({ category, mttfd_y, coverage_percent }, procedure))
        expect(levels).toEqual([...levels].sort((a, b) => a - b))
        for (const mttfd_y of [2, 3, 10, 30, 100]) {
          const found = simplifiedLevel({ category, mttfd_y, coverage_percent }, procedure)
          expect(simplifiedLevel({ category, mttfd_y, coverage_percent: 99 }, procedure)).toBeGreaterThanOrEqual(found)
        }
      }
  })
})
