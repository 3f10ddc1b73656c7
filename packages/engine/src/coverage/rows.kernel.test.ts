import { describe, expect, it } from 'vitest'
import { type RandomNumbers, randomNumbers } from '../../cases/random-numbers.ts'
import { emptySet, type Grid, hasCell } from './grid.ts'
import { beginOutline, endOutline, fillOutline, fillSweep, keepHalfPlane, newOutline, type Pending, setBits } from './rows.kernel.ts'

/** What a kernel made of a grid: drawn for sure, or left to the predicate. */
interface Drawing {
  readonly grid: Grid
  readonly bits: Int32Array
  readonly pending: Pending
}

function blank(dice: RandomNumbers, { pitch, x0, y0 }: { readonly pitch: number; readonly x0: number; readonly y0: number }): Drawing {
  const columns = dice.pick([1, 2, 31, 32, 33, 63, 64, 65, 150, 500])
  const rows = dice.pick([1, 2, 5, 30])
  const grid = { x0, y0, pitch, columns, rows, words: (columns + 31) >> 5 }
  const cells = new Int32Array(10 * columns * rows + 1000)
  return { grid, bits: emptySet(grid), pending: { count: 0, touchedFirst: 0, touchedLast: -1, touchedWord: 0, touchedEnd: 0, cells } }
}

/** What is wrong: sure cells against `isIn`, bits past the last column, pending cells that do not exist, and how many were drawn and left. */
function check({ grid, bits, pending }: Drawing, isIn: (row: number, column: number) => boolean) {
  const left = new Set(pending.cells.subarray(0, pending.count))
  const wrong: string[] = []
  let drawn = 0
  for (const cell of left) if (!(cell >= 0 && cell < grid.columns * grid.rows)) wrong.push(`cell ${cell} is left to the predicate`)
  for (let row = 0; row < grid.rows; row++)
    for (let column = 0; column < 32 * grid.words; column++) {
      const has = hasCell(bits, grid, row, column)
      if (column >= grid.columns) {
        if (has) wrong.push(`row ${row} has a bit in the spare column ${column}`)
        continue
      }
      if (has) drawn++
      if (!left.has(row * grid.columns + column) && has !== isIn(row, column)) wrong.push(`row ${row} column ${column} is ${has}`)
    }
  return { wrong, drawn, left: left.size }
}

/** From 1e-9 to 1e9, of either sign, and the plain ones. */
function slant(dice: RandomNumbers): number {
  return dice.pick([0, 1, -1, 0.5, 10 ** dice.between(-9, 9), -(10 ** dice.between(-9, 9))])
}

interface HalfPlane {
  readonly a: number
  readonly b: number
  readonly c: number
}

/** Its bound goes through the centre of a cell in more than half of the cases, or next to it by a hair. */
function randomHalfPlane(dice: RandomNumbers, { columns, rows, x0, y0, pitch }: Grid): HalfPlane {
  const size = 10 ** dice.between(-6, 6) * dice.pick([1, -1])
  const [a, b] = dice.chance(0.02) ? [0, 0] : dice.chance(0.15) ? [0, size] : [size, size * slant(dice)]
  const column = dice.chance(0.6) ? dice.whole(-3, columns + 3) : dice.between(-5, columns + 5)
  const row = dice.chance(0.6) ? dice.whole(-3, rows + 3) : dice.between(-5, rows + 5)
  const through = a * (x0 + (column + 0.5) * pitch) + b * (y0 + (row + 0.5) * pitch)
  const aside = dice.chance(0.5) ? Math.abs(size) * pitch * dice.between(0, columns / 2) : 0
  const hair = dice.chance(0.1) ? size * dice.pick([1e-6, 1e-9, 1e-12]) : 0
  return { a, b, c: through + aside + hair }
}

describe('an outline of half planes', () => {
  it('is drawn where every one of them holds, ties and all columns past the last one left alone: 10,000 random outlines, seeds 1 to 10000', () => {
    const totals = { drawn: 0, left: 0 }
    const wrong: string[] = []
    for (let seed = 1; seed <= 10_000; seed++) {
      const dice = randomNumbers(seed)
      const round = dice.chance(0.5)
      const place = (far: number) => (round ? 25 * dice.whole(-20, 20) : dice.between(-far, far))
      const drawing = blank(dice, { pitch: round ? dice.pick([1, 10, 25]) : 10 ** dice.between(-2, 2), x0: place(1e5), y0: place(1e5) })
      const { grid, bits, pending } = drawing
      const { x0, y0, pitch, columns, rows, words } = grid
      const outline = newOutline()
      const firstRow = dice.whole(0, rows - 1)
      const lastRow = dice.whole(firstRow, rows - 1)
      const planes = Array.from({ length: dice.whole(0, 9) }, () => randomHalfPlane(dice, grid))
      beginOutline(outline, firstRow, lastRow)
      for (const { a, b, c } of planes) keepHalfPlane(outline, x0, y0, pitch, columns, a, b, c)
      endOutline(outline)
      fillOutline(bits, words, columns, outline, pending)
      const holds = (x: number, y: number) => planes.every(({ a, b, c }) => a * x + b * y < c)
      const found = check(drawing, (r, c) => r >= firstRow && r <= lastRow && holds(x0 + (c + 0.5) * pitch, y0 + (r + 0.5) * pitch))
      if (found.wrong.length > 0) wrong.push(`seed ${seed}: ${found.wrong[0]}`)
      totals.drawn += found.drawn
      totals.left += found.left
    }
    expect(wrong).toEqual([])
    expect(totals.drawn).toBeGreaterThan(300_000)
    expect(totals.left).toBeLessThan(totals.drawn / 5)
  })
})

interface Sweep {
  readonly xA: number
  readonly yA: number
  readonly xB: number
  readonly yB: number
  readonly below: number
  readonly above: number
  readonly left: number
  readonly right: number
}

/** Of all of a box, of its side square to x, or of that square to y. */
function randomSweep(dice: RandomNumbers, { columns, rows }: Grid): Sweep {
  const hair = () => (dice.chance(0.1) ? dice.pick([1e-7, -1e-7, 1e-9, -1e-9, 1e-13, -1e-13]) : 0)
  const near = (low: number, high: number) => (dice.chance(0.7) ? 0.5 * dice.whole(2 * low, 2 * high) : dice.between(low, high))
  const x = () => near(-10, columns + 10) + hair()
  const xA = x()
  const from = near(-5, rows + 5) + hair()
  const to = dice.chance(0.2) ? from : dice.chance(0.3) ? from + 10 ** dice.between(-12, 0) : near(-5, rows + 5)
  const [halfA, halfB] = [Math.max(0.1, near(0, 8)), Math.max(0.1, near(0, 8))]
  const side = dice.pick([1, -1])
  const stretch = { xA, yA: Math.min(from, to), xB: dice.chance(0.1) ? xA : x(), yB: Math.max(from, to) }
  return dice.pick([
    { ...stretch, below: halfB, above: halfB, left: -halfA, right: halfA },
    { ...stretch, below: halfB, above: halfB, left: side * halfA, right: side * halfA },
    { ...stretch, below: side * halfB, above: -side * halfB, left: -halfA, right: halfA },
  ])
}

/** Whether the stretch passes strictly within the rectangle about a cell, by the part of it at the cell's height. */
function isSwept({ xA, yA, xB, yB, below, above, left, right }: Sweep, row: number, column: number): boolean {
  const [low, high] = [row - below, row + above]
  if (yA === yB && !(low < yA && yA < high)) return false
  const share = (y: number) => (yA === yB ? (y === low ? 0 : 1) : Math.min(1, Math.max(0, (y - yA) / (yB - yA))))
  const [from, to] = [xA + share(low) * (xB - xA), xA + share(high) * (xB - xA)]
  if (low === high ? !(yA < low && low < yB) : !(share(low) < share(high))) return false
  return Math.min(from, to) + left < column && column < Math.max(from, to) + right
}

describe('what a rectangle sweeps', () => {
  it('is drawn where the stretch passes within it, whatever its slant: 20,000 random sweeps, seeds 1 to 20000', () => {
    const totals = { drawn: 0, left: 0 }
    const wrong: string[] = []
    for (let seed = 1; seed <= 20_000; seed++) {
      const dice = randomNumbers(seed)
      const drawing = blank(dice, { pitch: 1, x0: 0, y0: 0 })
      const { grid, bits, pending } = drawing
      const firstRow = dice.whole(0, grid.rows - 1)
      const lastRow = dice.whole(firstRow, grid.rows - 1)
      const sweep = randomSweep(dice, grid)
      const { xA, yA, xB, yB, below, above, left, right } = sweep
      fillSweep(bits, grid.words, grid.columns, pending, firstRow, lastRow, xA, yA, xB, yB, below, above, left, right)
      const found = check(drawing, (r, c) => r >= firstRow && r <= lastRow && isSwept(sweep, r, c))
      if (found.wrong.length > 0) wrong.push(`seed ${seed}: ${found.wrong[0]}`)
      totals.drawn += found.drawn
      totals.left += found.left
    }
    expect(wrong).toEqual([])
    expect(totals.drawn).toBeGreaterThan(300_000)
    expect(totals.left).toBeLessThan(totals.drawn / 5)
  })
  it('keeps every column of a stretch that all but runs along a row of 5000', () => {
    const columns = 5000
    const grid = { x0: 0, y0: 0, pitch: 1, columns, rows: 1, words: (columns + 31) >> 5 }
    const wrong: string[] = []
    for (const rise of [2.51e-7, 3e-7, 1e-6, 1e-5])
      for (const fraction of [0, 0.3, 0.5, 0.9]) {
        const cells = new Int32Array(4 * columns)
        const drawing = {
          grid,
          bits: emptySet(grid),
          pending: { count: 0, touchedFirst: 0, touchedLast: -1, touchedWord: 0, touchedEnd: 0, cells },
        }
        const sweep = { xA: 4163, yA: 0, xB: 753 + fraction, yB: rise, below: 5.5, above: 5.5, left: -0.1, right: 0.1 }
        fillSweep(drawing.bits, grid.words, columns, drawing.pending, 0, 0, 4163, 0, sweep.xB, rise, 5.5, 5.5, -0.1, 0.1)
        wrong.push(...check(drawing, (r, c) => isSwept(sweep, r, c)).wrong)
      }
    expect(wrong).toEqual([])
  })
  it('leaves a cell in the first column that its edge touches to the predicate, whichever side rounding puts the edge on', () => {
    const grid = { x0: 0, y0: 0, pitch: 1, columns: 40, rows: 3, words: 2 }
    for (const edge of [0, 1e-15, -1e-15, 1e-9, -1e-9]) {
      const bits = emptySet(grid)
      const pending = { count: 0, touchedFirst: 0, touchedLast: -1, touchedWord: 0, touchedEnd: 0, cells: new Int32Array(500) }
      fillSweep(bits, 2, 40, pending, 0, 2, edge + 5, 1, edge + 5, 1, 0.5, 0.5, -5, 5)
      expect(hasCell(bits, grid, 1, 0)).toBe(false)
      expect(pending.cells.subarray(0, pending.count)).toContain(40)
      expect(hasCell(bits, grid, 1, 1)).toBe(true)
    }
  })
})

describe('bits of a row', () => {
  it('are set from the first to the last, across words, and no other', () => {
    const grid = { x0: 0, y0: 0, pitch: 1, columns: 96, rows: 2, words: 3 }
    for (let first = 0; first < 96; first++)
      for (let last = first; last < 96; last++) {
        const set = emptySet(grid)
        setBits(set, 3, first, last)
        const inside = Array.from({ length: 96 }, (_, column) => hasCell(set, grid, 1, column))
        if (inside.some((has, column) => has !== (column >= first && column <= last)) || set.subarray(0, 3).some((word) => word !== 0))
          expect.fail(`${first} to ${last}`)
      }
  })
})
