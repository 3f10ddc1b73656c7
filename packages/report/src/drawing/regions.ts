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
  const steps = new Map<string, GridCorner>()
  for (const edge of boundaryEdges(runs)) steps.set(keyOf(edge.from, edge.toward), edge.to)
  const rings: GridCorner[][] = []
  for (const start of [...steps.keys()]) {
    if (steps.has(start)) rings.push(ringFrom(start, steps))
  }
  return rings
}

/** Right, down, left, up as directions 0 to 3, rows counted downward here: whichever way rows run, the ring is the same. */
type Toward = 0 | 1 | 2 | 3

interface Edge {
  readonly from: GridCorner
  readonly to: GridCorner
  readonly toward: Toward
}

/** Unit edges that have a cell on exactly one side, that cell always on the same hand. */
function boundaryEdges(runs: readonly CellRun[]): readonly Edge[] {
  const cells = new Set(runs.flatMap(([row, first, last]) => Array.from({ length: last - first + 1 }, (_, i) => `${row},${first + i}`)))
  const edges: Edge[] = []
  for (const [row, first, last] of runs) {
    for (let column = first; column <= last; column++) {
      if (!cells.has(`${row - 1},${column}`)) edges.push(edge(column, row, column + 1, row, 0))
      if (!cells.has(`${row},${column + 1}`)) edges.push(edge(column + 1, row, column + 1, row + 1, 1))
      if (!cells.has(`${row + 1},${column}`)) edges.push(edge(column + 1, row + 1, column, row + 1, 2))
      if (!cells.has(`${row},${column - 1}`)) edges.push(edge(column, row + 1, column, row, 3))
    }
  }
  return edges
}

function edge(fromColumn: number, fromRow: number, toColumn: number, toRow: number, toward: Toward): Edge {
  return { from: { column: fromColumn, row: fromRow }, to: { column: toColumn, row: toRow }, toward }
}

function keyOf({ column, row }: GridCorner, toward: number): string {
  return `${column},${row},${toward}`
}

/** Walks one ring, turning toward its own cell first, and takes its edges out of `steps`. Only places where it turns are kept. */
function ringFrom(start: string, steps: Map<string, GridCorner>): GridCorner[] {
  const ring: GridCorner[] = []
  const firstToward = Number(start.split(',')[2])
  let key: string | undefined = start
  let lastToward = -1
  while (key !== undefined) {
    const [column, row, toward] = key.split(',').map(Number) as [number, number, number]
    const next = steps.get(key) as GridCorner
    steps.delete(key)
    if (toward !== lastToward) ring.push({ column, row })
    lastToward = toward
    key = [1, 0, 3].map((turn) => keyOf(next, (toward + turn) % 4)).find((candidate) => steps.has(candidate))
  }
  return firstToward === lastToward ? ring.slice(1) : ring
}

/** A grid corner in the doorway frame. */
export function placeOfCorner(
  { x0_mm, y0_mm, pitch_mm }: ZoneCoverage['grid'],
  { column, row }: GridCorner,
): { readonly x_mm: number; readonly y_mm: number } {
  return { x_mm: x0_mm + column * pitch_mm, y_mm: y0_mm + row * pitch_mm }
}
