import { describe, expect, it } from 'vitest'
import { leftOpen } from './open-tiles.ts'
import type { Tile } from './plain.ts'

describe('open tiles', () => {
  it('leave nothing open where there are none', () => {
    expect(leftOpen([])).toEqual({ area_mm2: 0, largest_mm: 0 })
  })
  it('that touch at an edge or a corner are one place, as wide as the box around them', () => {
    expect(leftOpen([tile(0, 0, 30, 40)])).toEqual({ area_mm2: 1200, largest_mm: 50 })
    expect(leftOpen([tile(0, 0, 3, 2), tile(3, 2, 6, 8)]).largest_mm).toBe(10)
    expect(leftOpen([tile(0, 0, 3, 4), tile(3.5, 0, 6.5, 4)]).largest_mm).toBe(5)
  })
  it('of several slices count once where they lie on each other', () => {
    expect(leftOpen([tile(0, 0, 8, 6), tile(0, 0, 4, 6), tile(4, 3, 8, 6), tile(0, 0, 8, 6)])).toEqual({ area_mm2: 48, largest_mm: 10 })
  })
  it('are grouped as if each were compared with each, and have the area of the smallest squares that they hold (200 random sets, seed 5)', () => {
    const random = randomOf(5)
    for (let round = 0; round < 200; round++) {
      const tiles = Array.from({ length: 3 }, () => openOf(tile(0, 0, 16, 16), random, 0.15 + 0.4 * random())).flat()
      const { area_mm2, largest_mm } = leftOpen(tiles)
      expect(area_mm2).toBe(areaBySquares(tiles))
      expect(largest_mm).toBeCloseTo(largestByPairs(tiles), 9)
    }
  })
})

function tile(xMin: number, yMin: number, xMax: number, yMax: number): Tile {
  return { xMin, xMax, yMin, yMax }
}

/** Linear congruence of Numerical Recipes: common practice. */
function randomOf(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 4294967296
  }
}

/** Leaves of a random tree, some of them open. */
function openOf(whole: Tile, random: () => number, open: number): readonly Tile[] {
  const { xMin, xMax, yMin, yMax } = whole
  if ((xMax - xMin === 1 && yMax - yMin === 1) || random() < 0.25) return random() < open ? [whole] : []
  const [x, y] = [(xMin + xMax) / 2, (yMin + yMax) / 2]
  const halves =
    xMax - xMin >= yMax - yMin
      ? [tile(xMin, yMin, x, yMax), tile(x, yMin, xMax, yMax)]
      : [tile(xMin, yMin, xMax, y), tile(xMin, y, xMax, yMax)]
  return halves.flatMap((half) => openOf(half, random, open))
}

function areaBySquares(tiles: readonly Tile[]): number {
  let area = 0
  for (let x = 0.5; x < 16; x++)
    for (let y = 0.5; y < 16; y++) if (tiles.some((each) => each.xMin < x && x < each.xMax && each.yMin < y && y < each.yMax)) area++
  return area
}

function largestByPairs(tiles: readonly Tile[]): number {
  const left = new Set(tiles)
  let largest = 0
  for (const first of tiles) {
    if (!left.delete(first)) continue
    const group = [first]
    for (const one of group)
      for (const other of left)
        if (one.xMin <= other.xMax && other.xMin <= one.xMax && one.yMin <= other.yMax && other.yMin <= one.yMax) {
          left.delete(other)
          group.push(other)
        }
    const wide = Math.max(...group.map(({ xMax }) => xMax)) - Math.min(...group.map(({ xMin }) => xMin))
    const deep = Math.max(...group.map(({ yMax }) => yMax)) - Math.min(...group.map(({ yMin }) => yMin))
    largest = Math.max(largest, Math.hypot(wide, deep))
  }
  return largest
}
