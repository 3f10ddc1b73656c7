import { describe, expect, it } from 'vitest'
import { randomDoor } from '../../cases/random-doors.ts'
import type { BlindRegion, CellRun, PointMm } from '../model/finding.ts'
import { blindRegions } from './blind-outline.ts'
import { exactTrees } from './exact-trees.ts'
import { emptySet, fullSet, type Grid, runsOf } from './grid.ts'
import { coverageMaps } from './maps.ts'
import { exactGrounds, gridGrounds } from './pocket-grounds.ts'
import { setBits } from './rows.kernel.ts'

const grid: Grid = { x0: 0, y0: 0, pitch: 10, columns: 6, rows: 5, words: 1 }
const zone = { xMax_mm: 60, yMax_mm: 50 }
const rectangle = (xMin: number, yMin: number, xMax: number, yMax: number): BlindRegion => ({
  area_mm2: (xMax - xMin) * (yMax - yMin),
  rings: [
    [
      [xMin, yMin],
      [xMax, yMin],
      [xMax, yMax],
      [xMin, yMax],
    ],
  ],
  circle: { x_mm: (xMin + xMax) / 2, y_mm: (yMin + yMax) / 2, radius_mm: Math.min(xMax - xMin, yMax - yMin) / 2 },
})

describe('grounds of pockets', () => {
  it('have the figures of their part, and the cells whose middles lie in it, its rim included (hand calculation)', () => {
    const strip = rectangle(5, 12, 35, 25) // middles at 5, 15, 25, 35 in the rows of 15 and 25
    const small = { ...grid, rows: 3, columns: 4 }
    const [left, ground, ...none] = exactGrounds(fullSet(small), small, zone, [strip])
    expect(ground).toMatchObject({
      cells: 8,
      area_mm2: 390,
      extent: { xMin_mm: 5, xMax_mm: 35, yMin_mm: 12, yMax_mm: 25 },
      exact: { regions: [0], circle: { radius_mm: 6.5 } },
      runs: [
        [1, 0, 3],
        [2, 0, 3],
      ],
    })
    expect(ground?.diameter_mm).toBe(Math.sqrt(30 * 30 + 13 * 13))
    expect(none).toEqual([])
    expect(left).toMatchObject({ area_mm2: 400, runs: [[0, 0, 3]] }) // what lies in no part keeps the grid's figures
    expect(left).not.toHaveProperty('exact')
  })

  it('are one where pieces touch at a corner, with the larger circle, and none where no blind middle lies in the part', () => {
    const blind = emptySet(grid)
    setBits(blind, 0, 0, 0)
    setBits(blind, 1, 1, 2)
    const found = exactGrounds(blind, grid, zone, [rectangle(10, 10, 30, 20), rectangle(0, 0, 10, 10), rectangle(41, 31, 44, 49)])
    expect(found.map(({ exact, cells, area_mm2 }) => [exact, cells, area_mm2])).toEqual([
      [{ regions: [0, 1], circle: { x_mm: 20, y_mm: 15, radius_mm: 5 } }, 3, 300],
    ])
  })

  it('part groups of cells that the grid alone holds together', () => {
    const blind = emptySet(grid)
    setBits(blind, 0, 0, 1)
    expect(gridGrounds(blind, grid)).toHaveLength(1)
    expect(exactGrounds(blind, grid, zone, [rectangle(0, 0, 9, 10), rectangle(12, 0, 20, 10)]).map(({ cells }) => cells)).toEqual([1, 1])
  })

  it('leave out cells of the last strip with their middles beyond the zone', () => {
    const found = exactGrounds(fullSet(grid), grid, { xMax_mm: 54, yMax_mm: 45 }, [rectangle(0, 0, 54, 45)])
    expect(found.map(({ cells, area_mm2 }) => [cells, area_mm2])).toEqual([[25, 54 * 45]]) // a middle on the edge belongs to the zone
  })

  it('hold every blind cell of 60 random doors once that lies in the zone, each in the region that winding finds (seeds 1 to 60)', () => {
    let inRegions = 0
    for (let seed = 1; seed <= 60; seed++) {
      const door = randomDoor(seed)
      const [zone] = door.zones
      const [state] = door.states
      if (zone === undefined || state === undefined || zone.purpose === 'must-not-see') continue
      const regions = blindRegions(exactTrees(door, zone, state))
      const { blind, grid: own } = coverageMaps(door, zone, state)
      const grounds = exactGrounds(blind, own, zone, regions)
      const inZone = middles(runsOf(blind, own), own).filter(([x, y]) => x <= zone.xMax_mm + 1e-6 && y <= zone.yMax_mm + 1e-6)
      const held = grounds.flatMap(({ runs }) => middles(runs, own))
      expect(held.map(String).sort(), `door ${seed}`).toEqual(inZone.map(String).sort())
      for (const { runs, exact } of grounds)
        for (const [x, y] of middles(runs, own)) {
          const lies = regions.flatMap(({ rings }, i) => (isIn(rings, x, y) ? [i] : []))
          inRegions++
          expect(exact?.regions, `door ${seed} at ${x}, ${y}`).toEqual(expect.arrayContaining(lies))
          expect(lies.length, `door ${seed} at ${x}, ${y}`).toBeGreaterThan(0)
        }
    }
    expect(inRegions).toBeGreaterThan(1000)
  })
})

function middles(runs: readonly CellRun[], { x0, y0, pitch }: Grid): readonly PointMm[] {
  return runs.flatMap(([row, first, last]) =>
    Array.from({ length: last - first + 1 }, (_, k): PointMm => [x0 + (first + k + 0.5) * pitch, y0 + (row + 0.5) * pitch]),
  )
}

/** By the winding of the rings; on the rim too. */
function isIn(rings: readonly (readonly PointMm[])[], x: number, y: number): boolean {
  let winding = 0
  for (const ring of rings)
    for (const [i, [ax, ay]] of ring.entries()) {
      const [bx, by] = ring[(i + 1) % ring.length] as PointMm
      const away = Math.max(Math.min(ax, bx) - x, x - Math.max(ax, bx), Math.min(ay, by) - y, y - Math.max(ay, by))
      if (away <= 1e-6) return true
      winding += Math.atan2((ax - x) * (by - y) - (ay - y) * (bx - x), (ax - x) * (bx - x) + (ay - y) * (by - y))
    }
  return Math.abs(winding) > 1
}
