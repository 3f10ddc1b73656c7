import type { CellRun } from '../model/finding.ts'
import { type CellSet, emptySet, type Grid, runsOf } from './grid.ts'
import { setBits } from './rows.kernel.ts'

/** An 8-connected group of cells. */
export interface CellGroup {
  readonly runs: readonly CellRun[]
  readonly cells: number
}

/** The 8-connected groups of a set, largest first; equal ones by their first cell in row order. */
export function groupsOf(set: CellSet, grid: Grid): CellGroup[] {
  const runs = runsOf(set, grid)
  const parent = Int32Array.from(runs.keys())
  joinTouching(runs, parent)
  const groups = new Map<number, CellRun[]>()
  for (const [i, run] of runs.entries()) {
    const root = find(parent, i)
    const group = groups.get(root)
    if (group) group.push(run)
    else groups.set(root, [run])
  }
  const sized = [...groups.values()].map((group) => ({
    runs: group,
    cells: group.reduce((sum, [, first, last]) => sum + last - first + 1, 0),
  }))
  return sized.sort((a, b) => b.cells - a.cells) // stable: runs, and so groups, come in row order
}

/** Joins runs of neighbouring rows that touch, corners included. */
function joinTouching(runs: readonly CellRun[], parent: Int32Array): void {
  let above = 0
  for (const [i, [row, first, last]] of runs.entries()) {
    while (above < i && isBefore(runs[above] as CellRun, row, first)) above++
    for (let j = above; j < i; j++) {
      const [otherRow, otherFirst, otherLast] = runs[j] as CellRun
      if (otherRow === row || otherFirst > last + 1) break
      if (otherRow === row - 1 && otherLast >= first - 1) unite(parent, i, j)
    }
  }
}

/** A run that can touch neither this run nor a later one. */
function isBefore([otherRow, , otherLast]: CellRun, row: number, first: number): boolean {
  return otherRow < row - 1 || (otherRow === row - 1 && otherLast < first - 1)
}

function find(parent: Int32Array, i: number): number {
  let root = i
  while (parent[root] !== root) root = parent[root] as number
  for (let k = i; k !== root; ) {
    const next = parent[k] as number
    parent[k] = root
    k = next
  }
  return root
}

function unite(parent: Int32Array, i: number, j: number): void {
  const a = find(parent, i)
  const b = find(parent, j)
  if (a < b) parent[b] = a
  else parent[a] = b
}

export function setOfRuns(runs: readonly CellRun[], grid: Grid): CellSet {
  const set = emptySet(grid)
  for (const [row, first, last] of runs) setBits(set, row * grid.words, first, last)
  return set
}

/**
 * A cell deep inside a set, given as its runs: one of those farthest (in steps to any of 8 neighbours) from a cell outside; of several
 * the one nearest to their middle, then the first in row order.
 */
export function deepestCell(runs: readonly CellRun[]): { readonly row: number; readonly column: number } {
  const { depth, firstRow, firstColumn, width } = depths(runs)
  let most = 0
  let count = 0
  let rowSum = 0
  let columnSum = 0
  for (const [row, first, last] of runs)
    for (let column = first; column <= last; column++) {
      const d = depth[(row - firstRow) * width + column - firstColumn] as number
      if (d < most) continue
      if (d > most) {
        most = d
        count = rowSum = columnSum = 0
      }
      count++
      rowSum += row
      columnSum += column
    }
  let nearest = Infinity
  let deepest = { row: -1, column: -1 }
  for (const [row, first, last] of runs)
    for (let column = first; column <= last; column++) {
      if (depth[(row - firstRow) * width + column - firstColumn] !== most) continue
      const downward = row - rowSum / count
      const sideward = column - columnSum / count
      const away = downward * downward + sideward * sideward
      if (away < nearest) {
        nearest = away
        deepest = { row, column }
      }
    }
  return deepest
}

interface Depths {
  /** Steps to the nearest cell outside, 0 outside, over the runs' rectangle with one cell around it. */
  readonly depth: Int32Array
  readonly firstRow: number
  readonly firstColumn: number
  readonly width: number
}

/** The rim of the grid is outside too. */
function depths(runs: readonly CellRun[]): Depths {
  let firstColumn = Infinity
  let lastColumn = 0
  for (const [, first, last] of runs) {
    firstColumn = Math.min(firstColumn, first)
    lastColumn = Math.max(lastColumn, last)
  }
  const firstRow = (runs[0] as CellRun)[0] - 1
  firstColumn -= 1
  const width = lastColumn - firstColumn + 2
  const depth = new Int32Array(((runs[runs.length - 1] as CellRun)[0] - firstRow + 2) * width)
  for (const [row, first, last] of runs)
    for (let i = (row - firstRow) * width + first - firstColumn; i <= (row - firstRow) * width + last - firstColumn; i++)
      depth[i] = 1 + least(depth, i - 1, i - width - 1, i - width, i - width + 1)
  for (let k = runs.length - 1; k >= 0; k--) {
    const [row, first, last] = runs[k] as CellRun
    for (let i = (row - firstRow) * width + last - firstColumn; i >= (row - firstRow) * width + first - firstColumn; i--)
      depth[i] = Math.min(depth[i] as number, 1 + least(depth, i + 1, i + width - 1, i + width, i + width + 1))
  }
  return { depth, firstRow, firstColumn, width }
}

function least(depth: Int32Array, a: number, b: number, c: number, d: number): number {
  return Math.min(depth[a] as number, depth[b] as number, depth[c] as number, depth[d] as number)
}

/** Largest distance between two points of the cells' squares, mm. */
export function diameter(runs: readonly CellRun[], grid: Pick<Grid, 'pitch'>): number {
  const corners = outermost(runs).flatMap(([row, first, last]): Corner[] => [
    [first, row],
    [first, row + 1],
    [last + 1, row],
    [last + 1, row + 1],
  ])
  return farthestApart(corners) * grid.pitch
}

/**
 * So far apart lie two placements of one group of neighbouring blind cells for sure, mm: those are blind, and at most the diagonal of a cell
 * closer together than the outer edges of their cells.
 */
export function surelyAcross(runs: readonly CellRun[], grid: Grid): number {
  const across = groupsOf(setOfRuns(runs, grid), grid).map((group) => diameter(group.runs, grid))
  return Math.max(0, ...across) - (across.length > 0 ? grid.pitch * Math.sqrt(2) : 0)
}

type Corner = readonly [x: number, y: number]

/** Largest distance between two of the points: between two corners of their convex hull. */
export function farthestApart(points: readonly Corner[]): number {
  const sorted = [...points].sort((a, b) => a[1] - b[1] || a[0] - b[0])
  const corners = [...hullSide(sorted, 1), ...hullSide(sorted, -1)]
  let most = 0
  for (const [i, [x, y]] of corners.entries())
    for (let j = i + 1; j < corners.length; j++) {
      const [u, v] = corners[j] as Corner
      const squared = (x - u) * (x - u) + (y - v) * (y - v)
      if (squared > most) most = squared
    }
  return Math.sqrt(most)
}

/** The corners, given by rising y and x, that the hull turns around on one of its two sides between the first and the last. */
function hullSide(corners: readonly Corner[], side: 1 | -1): Corner[] {
  const hull: Corner[] = []
  for (const corner of corners) {
    while (hull.length >= 2) {
      const [ax, ay] = hull[hull.length - 2] as Corner
      const [bx, by] = hull[hull.length - 1] as Corner
      // keep b only if it bulges outward from a to the new corner
      if (side * ((bx - ax) * (corner[1] - ay) - (by - ay) * (corner[0] - ax)) < 0) break
      hull.pop()
    }
    hull.push(corner)
  }
  return hull
}

/** One run per row from its first to its last cell: nothing between can lie farther out. */
function outermost(runs: readonly CellRun[]): CellRun[] {
  const rows = new Map<number, [number, number, number]>()
  for (const [row, first, last] of runs) {
    const known = rows.get(row)
    if (known) {
      known[1] = Math.min(known[1], first)
      known[2] = Math.max(known[2], last)
    } else rows.set(row, [row, first, last])
  }
  return [...rows.values()]
}

/** A, B, ... Z, AA, AB, ... */
export function letterOf(index: number): string {
  const rest = Math.floor(index / 26)
  return (rest > 0 ? letterOf(rest - 1) : '') + String.fromCharCode(65 + (index % 26))
}
