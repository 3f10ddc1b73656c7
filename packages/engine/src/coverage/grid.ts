import type { CellRun } from '../model/finding.ts'
import type { Zone } from '../model/zone.ts'

/** Placements of a zone: cell (row, column) has its centre at x0 + (column + 1/2) pitch, y0 + (row + 1/2) pitch. Doorway frame, mm. */
export interface Grid {
  readonly x0: number
  readonly y0: number
  readonly pitch: number
  readonly columns: number
  readonly rows: number
  /** 32-bit words of one row of a `CellSet`. */
  readonly words: number
}

/** A set of cells, a bit each: column c of row r is bit c & 31 of word r * words + (c >> 5). */
export type CellSet = Int32Array

/** The last strip may reach past the zone; none of the zone stays unjudged (docs/method.md, section 3). */
export function gridOf({ xMin_mm, xMax_mm, yMin_mm, yMax_mm, pitch_mm }: Zone): Grid {
  const columns = Math.ceil((xMax_mm - xMin_mm) / pitch_mm)
  const rows = Math.ceil((yMax_mm - yMin_mm) / pitch_mm)
  return { x0: xMin_mm, y0: yMin_mm, pitch: pitch_mm, columns, rows, words: (columns + 31) >> 5 }
}

export function emptySet(grid: Grid): CellSet {
  return new Int32Array(grid.rows * grid.words)
}

/** Every cell of the grid; bits past the last column stay 0. */
export function fullSet(grid: Grid): CellSet {
  const set = emptySet(grid).fill(-1)
  const spare = grid.words * 32 - grid.columns
  if (spare > 0) for (let r = 0; r < grid.rows; r++) set[r * grid.words + grid.words - 1] = -1 >>> spare
  return set
}

export function hasCell(set: CellSet, grid: Grid, row: number, column: number): boolean {
  return (((set[row * grid.words + (column >> 5)] as number) >>> (column & 31)) & 1) === 1
}

export function countCells(set: CellSet): number {
  let count = 0
  for (let i = 0; i < set.length; i++) {
    let word = set[i] as number
    word -= (word >>> 1) & 0x55555555
    word = (word & 0x33333333) + ((word >>> 2) & 0x33333333)
    count += (((word + (word >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24
  }
  return count
}

/** Maximal runs of cells in row order. */
export function runsOf(set: CellSet, grid: Grid): CellRun[] {
  const runs: CellRun[] = []
  for (let row = 0; row < grid.rows; row++) {
    let column = 0
    while (column < grid.columns) {
      const word = (set[row * grid.words + (column >> 5)] as number) >>> (column & 31)
      if (word === 0) column = ((column >> 5) + 1) << 5
      else if ((word & 1) === 0) column++
      else {
        const first = column
        while (column < grid.columns && hasCell(set, grid, row, column)) column++
        runs.push([row, first, column - 1])
      }
    }
  }
  return runs
}
