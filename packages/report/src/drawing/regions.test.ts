import type { CellRun } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { seeded } from '../../test/doors.ts'
import { hatchLines } from './hatch.ts'
import { outlineOfRuns } from './regions.ts'

type Cells = readonly (readonly boolean[])[]

function randomCells(seed: number): Cells {
  const random = seeded(seed)
  const share = random()
  return Array.from({ length: 1 + Math.floor(random() * 9) }, () => Array.from({ length: 11 }, () => random() < share))
}

function runsOf(cells: Cells): readonly CellRun[] {
  const runs: [number, number, number][] = []
  for (const [r, row] of cells.entries()) {
    for (const [c, blind] of row.entries()) {
      const last = runs[runs.length - 1]
      if (blind && last?.[0] === r && last[2] === c - 1) last[2] = c
      else if (blind) runs.push([r, c, c])
    }
  }
  return runs
}

/** Even-odd by counting crossings to the right of a point that lies on no edge: the slow, obvious way. */
function isInside(rings: readonly (readonly { readonly column: number; readonly row: number }[])[], x: number, y: number): boolean {
  let crossings = 0
  for (const ring of rings) {
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length] ?? a
      if (a.column === b.column && a.column > x && Math.min(a.row, b.row) < y && Math.max(a.row, b.row) > y) crossings++
    })
  }
  return crossings % 2 === 1
}

describe('outlines of cells', () => {
  it('give the cells back by the even-odd rule, holes and corners included (seeds 1 to 200)', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const cells = randomCells(seed)
      const rings = outlineOfRuns(runsOf(cells))
      expect(cells.map((row, r) => row.map((_, c) => isInside(rings, c + 0.5, r + 0.5)))).toEqual(cells)
    }
  })

  it('turn at every corner and close', () => {
    for (let seed = 1; seed <= 50; seed++) {
      for (const ring of outlineOfRuns(runsOf(randomCells(seed)))) {
        ring.forEach((corner, i) => {
          const next = ring[(i + 1) % ring.length] ?? corner
          const after = ring[(i + 2) % ring.length] ?? corner
          expect(corner.column === next.column).not.toBe(corner.row === next.row)
          expect(corner.column === next.column).toBe(next.row === after.row)
        })
      }
    }
  })

  it('give cells that touch at a corner rings of their own', () => {
    expect(
      outlineOfRuns([
        [0, 0, 0],
        [1, 1, 1],
      ]),
    ).toHaveLength(2)
  })

  it('give a ring of cells an outer and an inner outline', () => {
    expect(
      outlineOfRuns([
        [0, 0, 2],
        [1, 0, 0],
        [1, 2, 2],
        [2, 0, 2],
      ]).map((ring) => ring.length),
    ).toEqual([4, 4])
  })
})

describe('hatch lines', () => {
  const onPaper = (cells: Cells): ReturnType<typeof outlineOfRuns>[number][] => [...outlineOfRuns(runsOf(cells))]
  const spots = (rings: readonly (readonly { readonly column: number; readonly row: number }[])[], size_mm: number) =>
    rings.map((ring) => ring.map(({ column, row }) => ({ x_mm: column * size_mm, y_mm: row * size_mm })))

  it('lie inside of the cells along their whole length and rise at 45 degrees (seeds 1 to 100)', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const cells = randomCells(seed)
      const size_mm = 0.7 + (seed % 5)
      for (const [from, to] of hatchLines(spots(onPaper(cells), size_mm))) {
        expect(to.x_mm - from.x_mm).toBeCloseTo(from.y_mm - to.y_mm, 9)
        for (const share of [0.01, 0.25, 0.5, 0.75, 0.99]) {
          const x = (from.x_mm + (to.x_mm - from.x_mm) * share) / size_mm
          const y = (from.y_mm + (to.y_mm - from.y_mm) * share) / size_mm
          const near = [-1e-6, 1e-6].flatMap((dx) => [-1e-6, 1e-6].map((dy) => cells[Math.floor(y + dy)]?.[Math.floor(x + dx)]))
          expect(near).toContain(true)
        }
      }
    }
  })

  it('cross every cell that is wide enough for the spacing', () => {
    for (const blind of [
      [[true]],
      [
        [true, false],
        [false, true],
      ],
    ]) {
      const lines = hatchLines(spots(onPaper(blind), 3))
      expect(lines.length).toBeGreaterThan(2 * blind.length)
    }
  })

  it('give the smallest pocket one line', () => {
    expect(hatchLines(spots(onPaper([[true]]), 0.05))).toHaveLength(1)
    expect(hatchLines([])).toEqual([])
  })
})
