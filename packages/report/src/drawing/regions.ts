import type { CellRun, ZoneCoverage } from '@sillsight/engine'

/** A corner of the grid of placements, in cells from its origin. */
export interface GridCorner {
  readonly column: number
  readonly row: number
}

/**
 * The outline of cells as closed rings around them, holes included: filled by the even-odd rule they give the cells back. Cells that
 * touch only at a corner get rings of their own.
 *
 * @param runs in row order, as a coverage gives them
 */
export function outlineOfRuns(runs: readonly CellRun[]): readonly (readonly GridCorner[])[] {
  const [firstRun] = runs
  if (!firstRun) return []
  const origin = {
    row: runs.reduce((least, [row]) => Math.min(least, row), firstRun[0]),
    column: runs.reduce((least, [, first]) => Math.min(least, first), firstRun[1]),
  }
  const height = 2 + runs.reduce((most, [row]) => Math.max(most, row), 0) - origin.row
  const width = 2 + runs.reduce((most, [, , last]) => Math.max(most, last), 0) - origin.column
  const { starts, next } = boundarySteps(runs, origin, width, height)
  const rings: GridCorner[][] = []
  for (const start of starts) if (next[start] !== NONE) rings.push(ringFrom(start, next, width, origin))
  return rings
}

const NONE = -1

/**
 * Unit edges that have a cell on exactly one side, that cell always on the same hand: from a corner and a way to the next corner. Ways are
 * right, down, left, up as 0 to 3, rows counted downward here: whichever way rows run, the ring is the same. A corner is
 * row * width + column from the origin, a step starts at 4 * corner + way.
 */
function boundarySteps(
  runs: readonly CellRun[],
  origin: GridCorner,
  width: number,
  height: number,
): { readonly starts: readonly number[]; readonly next: Int32Array } {
  const cells = new Uint8Array(width * height)
  for (const [row, first, last] of runs) {
    const start = (row - origin.row) * width - origin.column
    cells.fill(1, start + first, start + last + 1)
  }
  const starts: number[] = []
  const next = new Int32Array(4 * width * height).fill(NONE)
  const add = (step: number, corner: number) => {
    starts.push(step)
    next[step] = corner
  }
  for (const [row, first, last] of runs) {
    for (let column = first; column <= last; column++) {
      const corner = (row - origin.row) * width + column - origin.column
      if (!cells[corner - width]) add(4 * corner, corner + 1)
      if (column === last) add(4 * (corner + 1) + 1, corner + 1 + width)
      if (!cells[corner + width]) add(4 * (corner + 1 + width) + 2, corner + width)
      if (column === first) add(4 * (corner + width) + 3, corner)
    }
  }
  return { starts, next }
}

/** Walks one ring, turning toward its own cell first, and takes its edges out of `next`. Only places where it turns are kept. */
function ringFrom(start: number, next: Int32Array, width: number, origin: GridCorner): GridCorner[] {
  const ring: GridCorner[] = []
  const firstWay = start & 3
  let step: number | undefined = start
  let lastWay = NONE
  while (step !== undefined) {
    const way: number = step & 3
    const corner = (step - way) / 4
    const to = next[step] as number
    next[step] = NONE
    if (way !== lastWay) ring.push({ column: origin.column + (corner % width), row: origin.row + Math.floor(corner / width) })
    lastWay = way
    step = undefined
    for (const turn of TURNS) {
      const candidate = 4 * to + ((way + turn) & 3)
      if (next[candidate] !== NONE && next[candidate] !== undefined) {
        step = candidate
        break
      }
    }
  }
  return firstWay === lastWay ? ring.slice(1) : ring
}

/** Toward its own cell, straight on, away from it. */
const TURNS = [1, 0, 3] as const

/** A grid corner in the doorway frame. */
export function placeOfCorner(
  { x0_mm, y0_mm, pitch_mm }: ZoneCoverage['grid'],
  { column, row }: GridCorner,
): { readonly x_mm: number; readonly y_mm: number } {
  return { x_mm: x0_mm + column * pitch_mm, y_mm: y0_mm + row * pitch_mm }
}
