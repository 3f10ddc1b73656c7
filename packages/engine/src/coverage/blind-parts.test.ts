import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../cases/random-numbers.ts'
import type { BlindOutline } from '../model/finding.ts'
import { connectedParts } from './blind-parts.ts'
import { farthestApart } from './pockets.ts'

const square = (x: number, y: number, side: number): BlindOutline => ({
  area_mm2: side * side,
  rings: [
    [
      [x, y],
      [x + side, y],
      [x + side, y + side],
      [x, y + side],
    ],
  ],
})

describe('connected parts of the open region', () => {
  it('hold together what touches at a corner, in a chain too, and keep apart what does not', () => {
    const parts = connectedParts([square(100, 100, 8), square(0, 0, 4), square(4, 4, 3), square(7, 7, 2), square(9.5, 9.5, 1)])
    expect(parts.map(({ outlines, area_mm2, extent }) => [outlines, area_mm2, extent.xMin_mm, extent.yMax_mm])).toEqual([
      [[0], 64, 100, 108],
      [[1, 2, 3], 29, 0, 9],
      [[4], 1, 9.5, 10.5],
    ])
    expect(parts.map(({ diameter_mm }) => diameter_mm)).toEqual([8, 9, 1].map((side) => Math.sqrt(2 * side * side)))
  })

  it('are none where nothing is open', () => {
    expect(connectedParts([])).toEqual([])
  })
})

describe('the largest distance between points', () => {
  it('is that of the farthest pair of all pairs, on 300 sets with many on one line (seeds 1 to 300)', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = randomNumbers(seed)
      const points = Array.from({ length: random.whole(1, 30) }, () => [random.whole(-9, 9), random.whole(-9, 9)] as const)
      const all = points.flatMap(([x, y]) => points.map(([u, v]) => Math.sqrt((x - u) * (x - u) + (y - v) * (y - v))))
      expect(farthestApart(points), `seed ${seed}`).toBe(Math.max(...all))
    }
  })
})
