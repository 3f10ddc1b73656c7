import type { OpenRegion } from '../model/finding.ts'
import type { Zone } from '../model/zone.ts'
import type { ExactTrees } from './exact-trees.ts'
import { emptySet, type Grid, gridOf } from './grid.ts'
import { groupsOf } from './pockets.ts'
import { setBits } from './rows.kernel.ts'
import { OPEN, type Rectangle, SPLIT, type TileTree } from './tile-tree.ts'

/** Calls `visit` for every leaf of a tree, with its rectangle. Does not recurse deeper than the tree. */
export function eachLeaf(tree: TileTree, root: Rectangle, visit: (leaf: number, tile: Rectangle) => void): void {
  const waiting: Rectangle[] = [root]
  for (const token of tree) {
    const tile = waiting.pop()
    if (tile === undefined) throw new Error('a tile tree must end with its last leaf, got more')
    if (token !== SPLIT) {
      visit(token, tile)
      continue
    }
    const { xMin, xMax, yMin, yMax } = tile
    if (xMax - xMin >= yMax - yMin) {
      const middle = (xMin + xMax) / 2
      waiting.push({ ...tile, xMin: middle }, { ...tile, xMax: middle })
    } else {
      const middle = (yMin + yMax) / 2
      waiting.push({ ...tile, yMin: middle }, { ...tile, yMax: middle })
    }
  }
  if (waiting.length > 0) throw new Error(`a tile tree must cover its rectangle, got ${waiting.length} tiles without a leaf`)
}

/** The open tiles of all trees together: a placement is open if it is in one of them. */
export function openRegion({ roots, slices, smallest_mm }: ExactTrees, zone: Zone): OpenRegion {
  const leaves = { seen: 0, notFree: 0, open: 0 }
  const coarse = gridOf(zone)
  const touched = emptySet(coarse)
  let area_mm2 = 0
  for (const [r, root] of roots.entries()) {
    const lattice = latticeOf(root, smallest_mm)
    const open = emptySet(lattice.grid)
    for (const { trees } of slices)
      eachLeaf(trees[r] as TileTree, root, (leaf, tile) => {
        if (leaf >= 0) leaves.seen++
        else if (leaf !== OPEN) leaves.notFree++
        else {
          leaves.open++
          fillLattice(open, lattice, root, tile)
          fillCells(touched, coarse, tile)
        }
      })
    for (const word of open) for (let rest = word; rest !== 0; rest &= rest - 1) area_mm2 += lattice.cell_mm2
  }
  const parts = groupsOf(touched, coarse)
  const diameter_mm = Math.max(0, ...parts.map(({ runs }) => diagonal(runs, coarse)))
  return { area_mm2, diameter_mm, parts: parts.length, leaves }
}

interface Lattice {
  readonly grid: Grid
  readonly stepX: number
  readonly stepY: number
  readonly cell_mm2: number
}

/** Halving a rectangle never leads between the points of this lattice. */
function latticeOf({ xMin, xMax, yMin, yMax }: Rectangle, smallest_mm: number): Lattice {
  const cuts = (length: number) => {
    let n = 1
    while (length / n > smallest_mm) n *= 2
    return n
  }
  const columns = cuts(xMax - xMin)
  const rows = cuts(yMax - yMin)
  const stepX = (xMax - xMin) / columns
  const stepY = (yMax - yMin) / rows
  const grid = { x0: xMin, y0: yMin, pitch: stepX, columns, rows, words: (columns + 31) >> 5 }
  return { grid, stepX, stepY, cell_mm2: stepX * stepY }
}

function fillLattice(set: Int32Array, { grid, stepX, stepY }: Lattice, root: Rectangle, { xMin, xMax, yMin, yMax }: Rectangle): void {
  const first = Math.round((xMin - root.xMin) / stepX)
  const last = Math.round((xMax - root.xMin) / stepX) - 1
  const top = Math.round((yMax - root.yMin) / stepY)
  for (let row = Math.round((yMin - root.yMin) / stepY); row < top; row++) setBits(set, row * grid.words, first, last)
}

/** The cells of the zone's own grid that a tile reaches into. */
function fillCells(set: Int32Array, { x0, y0, pitch, columns, rows, words }: Grid, { xMin, xMax, yMin, yMax }: Rectangle): void {
  const first = Math.max(0, Math.floor((xMin - x0) / pitch))
  const last = Math.min(columns - 1, Math.ceil((xMax - x0) / pitch) - 1)
  const top = Math.min(rows - 1, Math.ceil((yMax - y0) / pitch) - 1)
  for (let row = Math.max(0, Math.floor((yMin - y0) / pitch)); row <= top; row++) setBits(set, row * words, first, last)
}

/** Of the rectangle around the cells: at least their diameter. */
function diagonal(runs: readonly (readonly [row: number, first: number, last: number])[], { pitch }: Grid): number {
  let left = Infinity
  let right = -Infinity
  let low = Infinity
  let high = -Infinity
  for (const [row, first, last] of runs) {
    left = Math.min(left, first)
    right = Math.max(right, last + 1)
    low = Math.min(low, row)
    high = Math.max(high, row + 1)
  }
  return pitch * Math.sqrt((right - left) * (right - left) + (high - low) * (high - low))
}
