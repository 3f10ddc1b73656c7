import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../cases/random-numbers.ts'
import type { CellRun } from '../model/finding.ts'
import { emptySet, hasCell, runsOf } from './grid.ts'
import { deepestCell, diameter, groupsOf, letterOf, setOfRuns } from './pockets.ts'
import { setBits } from './rows.kernel.ts'

const grid = { x0: 0, y0: 0, pitch: 10, columns: 70, rows: 40, words: 3 }

/** A random set of cells, from `seed`, about half of them in. */
function randomSet(seed: number) {
  const random = randomNumbers(seed)
  const set = emptySet(grid)
  const share = random.between(0.1, 0.7)
  for (let r = 0; r < grid.rows; r++)
    for (let c = 0; c < grid.columns; c++) if (random.between(0, 1) < share) setBits(set, r * grid.words, c, c)
  return set
}

function cellsOf(runs: readonly CellRun[]): [number, number][] {
  return runs.flatMap(([row, first, last]) => Array.from({ length: last - first + 1 }, (_, k): [number, number] => [row, first + k]))
}

describe('groups of cells', () => {
  it('are the sets that a flood over eight neighbours fills, on 60 random sets, seeds 1 to 60', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const set = randomSet(seed)
      const groupOf = new Map<string, number>()
      const groups = groupsOf(set, grid)
      for (const [i, group] of groups.entries()) for (const cell of cellsOf(group.runs)) groupOf.set(cell.join(), i)
      expect(groupOf.size).toBe(cellsOf(runsOf(set, grid)).length)
      expect(floodCount(set)).toBe(groups.length)
      for (const [row, column] of cellsOf(runsOf(set, grid)))
        for (const [r, c] of [
          [row, column + 1],
          [row + 1, column - 1],
          [row + 1, column],
          [row + 1, column + 1],
        ] as const)
          if (groupOf.has([r, c].join())) expect(groupOf.get([r, c].join())).toBe(groupOf.get([row, column].join()))
    }
  })
  it('come largest first and join at corners', () => {
    const set = setOfRuns(
      [
        [0, 0, 0],
        [1, 1, 1],
        [5, 10, 14],
      ],
      grid,
    )
    expect(groupsOf(set, grid)).toEqual([
      { runs: [[5, 10, 14]], cells: 5 },
      {
        runs: [
          [0, 0, 0],
          [1, 1, 1],
        ],
        cells: 2,
      },
    ])
  })
})

describe('the diameter', () => {
  it('of 3 by 4 cells of 10 mm is 50 mm (hand calculation: 3-4-5 triangle)', () => {
    expect(
      diameter(
        [
          [0, 0, 2],
          [1, 0, 2],
          [2, 0, 2],
          [3, 0, 2],
        ],
        grid,
      ),
    ).toBe(50)
  })
  it('is the largest distance between any two corners, on random sets, seeds 1 to 3', () => {
    for (let seed = 1; seed <= 3; seed++)
      for (const { runs } of groupsOf(randomSet(seed), grid).slice(0, 4)) {
        const corners = cellsOf(runs).flatMap(
          ([r, c]) =>
            [
              [c, r],
              [c + 1, r],
              [c, r + 1],
              [c + 1, r + 1],
            ] as const,
        )
        let most = 0
        for (const [x, y] of corners) for (const [u, v] of corners) most = Math.max(most, (x - u) * (x - u) + (y - v) * (y - v))
        expect(diameter(runs, grid)).toBeCloseTo(10 * Math.sqrt(most), 9)
      }
  })
})

describe('the deepest cell', () => {
  it('of a square of 5 by 5 cells is its middle', () => {
    expect(deepestCell([2, 3, 4, 5, 6].map((row): CellRun => [row, 10, 14]))).toEqual({ row: 4, column: 12 })
  })
  it('is in the set and no cell lies in the middle of a larger full square, seeds 1 to 20', () => {
    for (let seed = 1; seed <= 20; seed++)
      for (const { runs } of groupsOf(randomSet(seed), grid).slice(0, 4)) {
        const set = setOfRuns(runs, grid)
        const { row, column } = deepestCell(runs)
        const size = (r: number, c: number) => {
          let half = 0
          while (squareIn(set, r, c, half)) half++
          return half
        }
        expect(hasCell(set, grid, row, column)).toBe(true)
        expect(size(row, column)).toBe(Math.max(...cellsOf(runs).map(([r, c]) => size(r, c))))
      }
  })
})

describe('letters', () => {
  it('run from A to Z and on with AA', () => {
    expect([0, 1, 25, 26, 27, 51, 52, 701, 702].map(letterOf)).toEqual(['A', 'B', 'Z', 'AA', 'AB', 'AZ', 'BA', 'ZZ', 'AAA'])
  })
})

function squareIn(set: Int32Array, row: number, column: number, half: number): boolean {
  for (let r = row - half; r <= row + half; r++)
    for (let c = column - half; c <= column + half; c++)
      if (r < 0 || c < 0 || r >= grid.rows || c >= grid.columns || !hasCell(set, grid, r, c)) return false
  return true
}

function floodCount(set: Int32Array): number {
  const left = new Set(cellsOf(runsOf(set, grid)).map((cell) => cell.join()))
  let count = 0
  for (const start of left) {
    count++
    const stack = [start]
    left.delete(start)
    while (stack.length > 0) {
      const [row, column] = (stack.pop() as string).split(',').map(Number) as [number, number]
      for (const dr of [-1, 0, 1])
        for (const dc of [-1, 0, 1]) {
          const next = `${row + dr},${column + dc}`
          if (left.delete(next)) stack.push(next)
        }
    }
  }
  return count
}
