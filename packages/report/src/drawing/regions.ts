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
  const width = 2 + runs.reduce((most, [, , last]) => Math.max(most, last), 0)
  const steps = boundarySteps(runs, width)
  const rings: GridCorner[][] = []
  for (const start of steps.keys()) if (steps.has(start)) rings.push(ringFrom(start, steps, width))
  return rings
}

/**
 * Unit edges that have a cell on exactly one side, that cell always on the same hand: from a corner and a way to the next corner. Ways are
 * right, down, left, up as 0 to 3, rows counted downward here: whichever way rows run, the ring is the same. A corner is
 * row * width + column, a step starts at 4 * corner + way.
 */
function boundarySteps(runs: readonly CellRun[], width: number): Map<number, number> {
  const cells = new Set<number>()
  for (const [row, first, last] of runs) for (let column = first; column <= last; column++) cells.add(row * width + column)
  const steps = new Map<number, number>()
  for (const [row, first, last] of runs) {
    for (let column = first; column <= last; column++) {
      const corner = row * width + column
      if (!cells.has(corner - width)) steps.set(4 * corner, corner + 1)
      if (column === last) steps.set(4 * (corner + 1) + 1, corner + 1 + width)
      if (!cells.has(corner + width)) steps.set(4 * (corner + 1 + width) + 2, corner + width)
      if (column === first) steps.set(4 * (corner + width) + 3, corner)
    }
  }
  return steps
}

/** Walks one ring, turning toward its own cell first, and takes its edges out of `steps`. Only places where it turns are kept. */
function ringFrom(start: number, steps: Map<number, number>, width: number): GridCorner[] {
  const ring: GridCorner[] = []
  const firstWay = start & 3
  let step: number | undefined = start
  let lastWay = -1
  while (step !== undefined) {
    const way: number = step & 3
    const corner = (step - way) / 4
    const next = steps.get(step) as number
    steps.delete(step)
    if (way !== lastWay) ring.push({ column: corner % width, row: Math.floor(corner / width) })
    lastWay = way
    step = undefined
    for (const turn of [1, 0, 3]) {
      const candidate = 4 * next + ((way + turn) & 3)
      if (steps.has(candidate)) {
        step = candidate
        break
      }
    }
  }
  return firstWay === lastWay ? ring.slice(1) : ring
}

/** A grid corner in the doorway frame. */
export function placeOfCorner(
  { x0_mm, y0_mm, pitch_mm }: ZoneCoverage['grid'],
  { column, row }: GridCorner,
): { readonly x_mm: number; readonly y_mm: number } {
  return { x_mm: x0_mm + column * pitch_mm, y_mm: y0_mm + row * pitch_mm }
}
