import { describe, expect, it } from 'vitest'
import { plainZone } from '../../cases/plain-door.ts'
import { randomNumbers } from '../../cases/random-numbers.ts'
import { type CellSet, countCells, emptySet, fullSet, type Grid, gridOf, hasCell, runsOf } from './grid.ts'

const seeds = Array.from({ length: 300 }, (_, i) => i + 1)

function gridWith(columns: number, rows: number): Grid {
  return gridOf(plainZone({ xMin_mm: 0, xMax_mm: columns, yMin_mm: 0, yMax_mm: rows, pitch_mm: 1 }))
}

/** A random set, and the same as one true or false per cell, row by row. */
function randomSet(seed: number): { readonly grid: Grid; readonly set: CellSet; readonly cells: readonly boolean[] } {
  const dice = randomNumbers(seed)
  const grid = gridWith(dice.pick([1, 2, 31, 32, 33, 63, 64, 65, 150]), dice.whole(1, 12))
  const share = dice.pick([0, 0.02, 0.5, 0.98, 1])
  const cells = Array.from({ length: grid.columns * grid.rows }, () => dice.chance(share))
  const set = emptySet(grid)
  for (const [cell, isIn] of cells.entries()) {
    const [row, column] = [Math.floor(cell / grid.columns), cell % grid.columns]
    if (isIn)
      set[row * grid.words + Math.floor(column / 32)] = (set[row * grid.words + Math.floor(column / 32)] as number) | (1 << (column % 32))
  }
  return { grid, set, cells }
}

describe('the grid of a zone', () => {
  it('H11: a zone of 450 x 400 on a pitch of 100 has 5 x 4 cells (hand calculation)', () => {
    const grid = gridOf(plainZone({ xMin_mm: 300, xMax_mm: 750, yMin_mm: -200, yMax_mm: 200, pitch_mm: 100 }))
    expect(grid).toEqual({ x0: 300, y0: -200, pitch: 100, columns: 5, rows: 4, words: 1 })
  })
  it('covers all of the zone, and by less than one cell too much, seeds 1 to 300', () => {
    for (const seed of seeds) {
      const dice = randomNumbers(seed)
      const zone = plainZone({ xMin_mm: dice.between(-1e5, 1e5), yMin_mm: dice.between(-1e5, 1e5), pitch_mm: dice.between(0.1, 500) })
      const [width, depth] = [dice.between(0.01, 20_000), dice.between(0.01, 20_000)]
      const { columns, rows, words } = gridOf({ ...zone, xMax_mm: zone.xMin_mm + width, yMax_mm: zone.yMin_mm + depth })
      for (const [cells, length] of [
        [columns, width],
        [rows, depth],
      ] as const) {
        expect(cells * zone.pitch_mm).toBeGreaterThan(length - 1e-6)
        expect((cells - 1) * zone.pitch_mm).toBeLessThan(length)
      }
      expect(words).toBe(Math.ceil(columns / 32))
    }
  })
  it('has one cell for a zone smaller than the pitch', () => {
    const { columns, rows, words } = gridOf(plainZone({ xMin_mm: 0, xMax_mm: 1, yMin_mm: 0, yMax_mm: 1, pitch_mm: 500 }))
    expect([columns, rows, words]).toEqual([1, 1, 1])
  })
})

describe('sets of cells', () => {
  it('full ones hold every cell and no bit past the last column', () => {
    for (const columns of [1, 2, 31, 32, 33, 63, 64, 65, 150]) {
      const grid = gridWith(columns, 3)
      const set = fullSet(grid)
      expect(countCells(set)).toBe(3 * columns)
      for (let row = 0; row < 3; row++)
        for (let column = 0; column < 32 * grid.words; column++) expect(hasCell(set, grid, row, column)).toBe(column < columns)
    }
  })
  it('are counted and asked cell by cell as they were made, seeds 1 to 300', () => {
    for (const seed of seeds) {
      const { grid, set, cells } = randomSet(seed)
      expect(countCells(set)).toBe(cells.filter(Boolean).length)
      expect(cells.map((_, cell) => hasCell(set, grid, Math.floor(cell / grid.columns), cell % grid.columns))).toEqual(cells)
    }
  })
  it('are told by runs that hold their cells, in row order, and end at others or at the edge, seeds 1 to 300', () => {
    for (const seed of seeds) {
      const { grid, set, cells } = randomSet(seed)
      const isIn = (row: number, column: number) => column >= 0 && column < grid.columns && cells[row * grid.columns + column] === true
      const told = cells.map(() => false)
      let end = -1
      for (const [row, first, last] of runsOf(set, grid)) {
        told.fill(true, row * grid.columns + first, row * grid.columns + last + 1)
        expect(first <= last && row * grid.columns + first > end).toBe(true)
        expect([isIn(row, first - 1), isIn(row, last + 1)]).toEqual([false, false])
        end = row * grid.columns + last
      }
      expect(told).toEqual(cells)
    }
  })
})
