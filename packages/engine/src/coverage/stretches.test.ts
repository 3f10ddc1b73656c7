import { describe, expect, it } from 'vitest'
import { joined, type Stretch, totalLength_mm, without } from './stretches.ts'

const s = (...pairs: readonly (readonly [number, number])[]): readonly Stretch[] => pairs.map(([from_mm, to_mm]) => ({ from_mm, to_mm }))

describe('stretches', () => {
  it('join where they overlap or touch, whatever their order', () => {
    expect(joined(s([300, 400], [0, 100], [50, 120], [120, 130]))).toEqual(s([0, 130], [300, 400]))
    expect(joined(s([0, 100], [20, 30]))).toEqual(s([0, 100]))
  })

  it('without length do not count', () => {
    expect(joined(s([5, 5], [9, 3]))).toEqual([])
    expect(totalLength_mm(s([5, 5]))).toBe(0)
  })

  it('are cut where others lie', () => {
    expect(without(s([0, 100]), s([20, 30], [90, 200]))).toEqual(s([0, 20], [30, 90]))
    expect(without(s([0, 100]), s([0, 100]))).toEqual([])
    expect(without(s([0, 100]), [])).toEqual(s([0, 100]))
    expect(without(s([0, 10], [20, 30]), s([5, 25]))).toEqual(s([0, 5], [25, 30]))
  })

  it('count overlaps once', () => {
    expect(totalLength_mm(s([0, 100], [50, 120], [200, 210]))).toBe(130)
  })
})
