import { beamSees, type Sight } from '../seeing/sees.ts'
import { isEmpty, type Shape } from '../seeing/shape.ts'
import type { Windows } from '../seeing/windows.ts'
import type { FloorPieces } from '../space/floor.ts'
import { drawCylinder } from './cylinder.kernel.ts'
import { type CellSet, emptySet, type Grid } from './grid.ts'
import { drawBox, newPencil, type Pencil, type Strip } from './hits.kernel.ts'
import { newOutline, type Pending } from './rows.kernel.ts'

/** One field whose output counts, ready to be drawn. */
export interface FieldSight {
  readonly sight: Sight
  readonly windows: Windows
  /** Neighbours: beams `first` up to (not with) `end`. */
  readonly planes: readonly { readonly first: number; readonly end: number }[]
  readonly clusterBeams: number
}

/** Buffers for drawing on one grid; made once, used for every map. */
export interface Easel {
  readonly grid: Grid
  readonly pencil: Pencil
  readonly pending: Pending
  readonly scratch: Float64Array
  /** Cells that the last 1, 2, ... beams of a plane all see, for clusters. */
  readonly streaks: CellSet[]
}

export function newEasel(grid: Grid): Easel {
  // Up to three outlines wait to be settled: one may be unsure in every cell, each may lie on the edge in two rows and at four ends of each row.
  const most = grid.columns * grid.rows + 6 * grid.columns + 12 * grid.rows
  const pending = { count: 0, touchedFirst: 0, touchedLast: -1, touchedWord: 0, touchedEnd: 0, cells: new Int32Array(most) }
  return { grid, pencil: newPencil(newOutline()), pending, scratch: new Float64Array(3), streaks: [] }
}

/**
 * Rows of the grid by the piece of floor their centres stand on.
 *
 * @param firstRow @param lastRow clip, to redraw a part only
 */
export function stripsOf(grid: Grid, floor: FloorPieces, firstRow = 0, lastRow = grid.rows - 1): Strip[] {
  const strips: Strip[] = []
  const centre = (r: number) => grid.y0 + (r + 0.5) * grid.pitch
  const xs = [grid.x0, grid.x0 + grid.columns * grid.pitch]
  let row = firstRow
  for (let piece = 0; piece < floor.count && row <= lastRow; piece++) {
    const next = floor.from[piece + 1] ?? Infinity
    const first = row
    while (row <= lastRow && centre(row) < next) row++
    if (row === first) continue
    const slopeY = floor.slope[piece] as number
    const z0 = (floor.z[piece] as number) - (floor.y[piece] as number) * slopeY
    const corners = xs.flatMap((x) => [first, row - 1].map((r) => z0 + floor.slopeX * x + slopeY * centre(r)))
    strips.push({
      firstRow: first,
      lastRow: row - 1,
      z0,
      slopeX: floor.slopeX,
      slopeY,
      lowest: Math.min(...corners),
      highest: Math.max(...corners),
    })
  }
  return strips
}

/** Adds to `seen` the placements at which one field sees the body (docs/method.md, sections 2 and 3). */
export function drawSeen(seen: CellSet, easel: Easel, strips: readonly Strip[], field: FieldSight, shape: Shape): void {
  if (isEmpty(shape)) return
  for (const { first, end } of field.planes) {
    if (field.clusterBeams === 1) for (let i = first; i < end; i++) drawBeam(seen, easel, strips, field, i, shape)
    else if (end - first >= field.clusterBeams) drawClusters(seen, easel, strips, field, first, end, shape)
  }
}

function drawBeam(bits: CellSet, easel: Easel, strips: readonly Strip[], { sight, windows }: FieldSight, i: number, shape: Shape): void {
  const { grid, pencil, pending } = easel
  const last = windows.first[i + 1] as number
  for (let w = windows.first[i] as number; w < last; w++) {
    const from = windows.from[w] as number
    const to = windows.to[w] as number
    for (let s = 0; s < strips.length; s++) {
      const strip = strips[s] as Strip
      if (shape.round) drawCylinder(bits, pending, grid, sight, i, shape, strip, from, to)
      else drawBox(bits, pending, pencil, grid, sight, i, shape, strip, from, to)
      if (pending.count > 0) settle(bits, easel, sight, i, shape)
    }
  }
}

/** Asks the predicate about the cells that hang on a tie. */
function settle(bits: CellSet, { grid, pending, scratch }: Easel, sight: Sight, i: number, shape: Shape): void {
  for (let k = 0; k < pending.count; k++) {
    const cell = pending.cells[k] as number
    const row = Math.floor(cell / grid.columns)
    const column = cell - row * grid.columns
    const word = row * grid.words + (column >> 5)
    const bit = 1 << (column & 31)
    if (((bits[word] as number) & bit) !== 0) continue
    if (beamSees(sight, i, shape, grid.x0 + (column + 0.5) * grid.pitch, grid.y0 + (row + 0.5) * grid.pitch, scratch))
      bits[word] = (bits[word] as number) | bit
  }
  pending.count = 0
}

/** Cells of a streak that may not be empty: rows first..last, words from..end. */
interface Touched {
  first: number
  last: number
  word: number
  end: number
}

/**
 * `clusterBeams` beams with consecutive indices must see the body. streaks[m] holds the cells that the last m + 1 beams all see; what lies
 * outside `touched[m]` is empty.
 */
function drawClusters(
  seen: CellSet,
  easel: Easel,
  strips: readonly Strip[],
  field: FieldSight,
  first: number,
  end: number,
  shape: Shape,
): void {
  const { grid, pending, streaks } = easel
  const needed = field.clusterBeams
  while (streaks.length <= needed) streaks.push(emptySet(grid))
  const touched: Touched[] = Array.from({ length: needed }, () => ({ first: 0, last: -1, word: 0, end: 0 }))
  for (let i = first; i < end; i++) {
    // streaks[needed] is free: draw this beam alone into it
    const alone = streaks[needed] as CellSet
    pending.touchedFirst = grid.rows
    pending.touchedLast = -1
    pending.touchedWord = grid.words
    pending.touchedEnd = 0
    drawBeam(alone, easel, strips, field, i, shape)
    addCommon(seen, alone, streaks[needed - 2] as CellSet, pending, grid)
    // the streaks grow by this beam, longest first
    for (let m = needed - 2; m >= 1; m--) {
      wipe(streaks[m] as CellSet, touched[m] as Touched, grid)
      addCommon(streaks[m] as CellSet, alone, streaks[m - 1] as CellSet, pending, grid)
      note(touched[m] as Touched, pending)
    }
    // this beam alone becomes the streak of one, and the old one is wiped for the next beam
    const old = streaks[0] as CellSet
    wipe(old, touched[0] as Touched, grid)
    streaks[0] = alone
    streaks[needed] = old
    note(touched[0] as Touched, pending)
  }
  for (let m = 0; m < needed; m++) wipe(streaks[m] as CellSet, touched[m] as Touched, grid)
}

/** out |= a and b, within what was touched. */
function addCommon(
  out: CellSet,
  a: CellSet,
  b: CellSet,
  { touchedFirst, touchedLast, touchedWord, touchedEnd }: Pending,
  { words }: Grid,
): void {
  for (let r = touchedFirst; r <= touchedLast; r++)
    for (let w = r * words + touchedWord; w < r * words + touchedEnd; w++)
      out[w] = (out[w] as number) | ((a[w] as number) & (b[w] as number))
}

function wipe(set: CellSet, { first, last, word, end }: Touched, { words }: Grid): void {
  for (let r = first; r <= last; r++) for (let w = r * words + word; w < r * words + end; w++) set[w] = 0
}

function note(touched: Touched, pending: Pending): void {
  touched.first = pending.touchedFirst
  touched.last = pending.touchedLast
  touched.word = pending.touchedWord
  touched.end = pending.touchedEnd
}
