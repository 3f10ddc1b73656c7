import type { BlindOutline, BlindRegion, CellRun, Extent, Pocket } from '../model/finding.ts'
import type { Zone } from '../model/zone.ts'
import { connectedParts } from './blind-parts.ts'
import { type CellSet, countCells, emptySet, type Grid, runsOf } from './grid.ts'
import { diameter, groupsOf } from './pockets.ts'
import { setBits } from './rows.kernel.ts'

/** Where a pocket lies, and how large it is. */
export type PocketGround = Pick<Pocket, 'cells' | 'area_mm2' | 'extent' | 'diameter_mm' | 'exact' | 'runs'>

/** Within so much a cell's middle lies in a region, mm: on its rim it does. */
const RIM_MM = 1e-6

/**
 * The connected parts of the open region that hold a blind cell's middle, largest first. Parts without one are left out: no placement there is
 * known to be blind. Cells of a last strip with their middles beyond the zone are no placements of it and count nowhere. Should a blind middle lie
 * in no part all the same, its group is kept, measured by its cells: that errs toward blind.
 *
 * @param blind cells of the grid whose middles are blind in some posture
 */
export function exactGrounds(
  blind: CellSet,
  grid: Grid,
  zone: Pick<Zone, 'xMax_mm' | 'yMax_mm'>,
  regions: readonly BlindRegion[],
): readonly PocketGround[] {
  const left = insideOf(blind, grid, zone)
  const grounds = connectedParts(regions).flatMap(({ outlines, area_mm2, extent, diameter_mm }): PocketGround[] => {
    const own = outlines.map((i) => regions[i] as BlindRegion)
    const set = emptySet(grid)
    for (const outline of own) for (const inset_mm of [RIM_MM, -RIM_MM]) addCells(set, grid, outline, inset_mm)
    for (let w = 0; w < set.length; w++) {
      set[w] = (set[w] as number) & (left[w] as number)
      left[w] = (left[w] as number) & ~(set[w] as number)
    }
    const cells = countCells(set)
    if (cells === 0) return []
    const circle = own.reduce((best, one) => (one.circle.radius_mm > best.radius_mm ? one.circle : best), (own[0] as BlindRegion).circle)
    return [{ cells, area_mm2, extent, diameter_mm, exact: { regions: outlines, circle }, runs: runsOf(set, grid) }]
  })
  return [...grounds, ...gridGrounds(left, grid)].sort((a, b) => b.area_mm2 - a.area_mm2)
}

/** The cells whose middles lie in the zone. */
function insideOf(blind: CellSet, grid: Grid, { xMax_mm, yMax_mm }: Pick<Zone, 'xMax_mm' | 'yMax_mm'>): CellSet {
  const { x0, y0, pitch, columns, rows, words } = grid
  const lastOf = (from: number, to: number, count: number) => Math.min(count - 1, Math.floor((to + RIM_MM - from) / pitch - 0.5))
  const inside = emptySet(grid)
  for (let row = 0; row <= lastOf(y0, yMax_mm, rows); row++) setBits(inside, row * words, 0, lastOf(x0, xMax_mm, columns))
  for (let w = 0; w < inside.length; w++) inside[w] = (inside[w] as number) & (blind[w] as number)
  return inside
}

/** The 8-connected groups of blind cells, largest first. */
export function gridGrounds(blind: CellSet, grid: Grid): readonly PocketGround[] {
  return groupsOf(blind, grid).map(({ runs, cells }) => ({
    cells,
    area_mm2: cells * grid.pitch * grid.pitch,
    extent: extentOf(runs, grid),
    diameter_mm: diameter(runs, grid),
    runs,
  }))
}

/** Adds the cells whose middles, moved by `shift_mm` along y, lie in the outline: between the odd and the even upright edges of their row. */
function addCells(set: CellSet, { x0, y0, pitch, columns, rows, words }: Grid, { rings }: BlindOutline, shift_mm: number): void {
  const crossings: number[][] = Array.from({ length: rows }, () => [])
  for (const ring of rings)
    for (const [i, [x, y]] of ring.entries()) {
      const [nextX, nextY] = ring[(i + 1) % ring.length] as readonly [number, number]
      if (x !== nextX) continue
      const middleOf = (row: number) => y0 + (row + 0.5) * pitch + shift_mm
      const [low, high] = y < nextY ? [y, nextY] : [nextY, y]
      for (let row = Math.max(0, Math.floor((low - y0) / pitch - 0.5) - 1); row < rows && middleOf(row) < high; row++)
        if (middleOf(row) >= low) (crossings[row] as number[]).push(x)
    }
  for (const [row, edges] of crossings.entries()) {
    edges.sort((a, b) => a - b)
    for (let k = 0; k + 1 < edges.length; k += 2) {
      const first = Math.max(0, Math.ceil(((edges[k] as number) - RIM_MM - x0) / pitch - 0.5))
      const last = Math.min(columns - 1, Math.floor(((edges[k + 1] as number) + RIM_MM - x0) / pitch - 0.5))
      if (first <= last) setBits(set, row * words, first, last)
    }
  }
}

function extentOf(runs: readonly CellRun[], { x0, y0, pitch }: Grid): Extent {
  let left = Infinity
  let right = -Infinity
  let lowest = Infinity
  let highest = -Infinity
  for (const [row, first, last] of runs) {
    left = Math.min(left, first)
    right = Math.max(right, last)
    lowest = Math.min(lowest, row)
    highest = Math.max(highest, row)
  }
  return {
    xMin_mm: x0 + left * pitch,
    xMax_mm: x0 + (right + 1) * pitch,
    yMin_mm: y0 + lowest * pitch,
    yMax_mm: y0 + (highest + 1) * pitch,
  }
}
