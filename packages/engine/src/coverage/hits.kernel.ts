// Placements of a body that one beam sees, drawn as bit rows. Doorway frame, mm. The argument stands in docs/method.md, "How the maps are drawn".
import type { Sight } from '../seeing/sees.ts'
import type { Shape } from '../seeing/shape.ts'
import { clearAirEquivalent, reach } from '../seeing/reach.ts'
import type { Grid } from './grid.ts'
import { beginOutline, endOutline, fillOutline, keepHalfPlane, type Outline, type Pending } from './rows.kernel.ts'

/** Rows whose centres stand on one piece of the floor, and the floor there as z = z0 + slopeX x + slopeY y, with its extremes. */
export interface Strip {
  readonly firstRow: number
  readonly lastRow: number
  readonly z0: number
  readonly slopeX: number
  readonly slopeY: number
  readonly lowest: number
  readonly highest: number
}

/** Buffers of one drawing thread of work. Faces: entry (or exit) distance is A x + B y + C at the placement (x, y). */
export interface Pencil {
  readonly outline: Outline
  readonly enterA: Float64Array
  readonly enterB: Float64Array
  readonly enterC: Float64Array
  readonly enterCosine: Float64Array
  readonly exitA: Float64Array
  readonly exitB: Float64Array
  readonly exitC: Float64Array
  /** Axis (0 along, 1 across, 2 up) of each entered face; the exit of the same axis has the same index. */
  faces: number
  /** Faces that the beam runs along: placements with A x + B y < C only. */
  readonly sideA: Float64Array
  readonly sideB: Float64Array
  readonly sideC: Float64Array
  sides: number
}

export function newPencil(outline: Outline): Pencil {
  const three = () => new Float64Array(3)
  const six = () => new Float64Array(6)
  return {
    outline, enterA: three(), enterB: three(), enterC: three(), enterCosine: three(), exitA: three(), exitB: three(), exitC: three(),
    faces: 0, sideA: six(), sideB: six(), sideC: six(), sides: 0,
  }
}

const SPARE = 1e-6 // mm: closer than this to a limit, the predicate decides

/**
 * KERNEL. Draws the placements in `strip` where beam i of `sight` sees the box `shape`, its entry point within [from, to] along the beam.
 * Cells on an edge go to `pending`. `firstRow..lastRow` clips.
 */
export function drawBox(
  bits: Int32Array, pending: Pending, pencil: Pencil, grid: Grid, sight: Sight, i: number, shape: Shape, strip: Strip, from: number, to: number,
): void {
  const { beams } = sight
  const oz = beams.originZ[i]!
  const dz = beams.directionZ[i]!
  // no placement is entered before `earliest` or left after `latest`
  let earliest = -Infinity
  let latest = to
  if (dz < 0) {
    earliest = (shape.high + strip.highest - oz) / dz
    latest = Math.min(to, (shape.low + strip.lowest - oz) / dz)
  } else if (dz > 0) {
    earliest = (shape.low + strip.lowest - oz) / dz
    latest = Math.min(to, (shape.high + strip.highest - oz) / dz)
  } else if (oz < shape.low + strip.lowest - SPARE || oz > shape.high + strip.highest + SPARE) return
  const begin = Math.max(from, earliest)
  if (latest < begin - SPARE || latest < 0) return
  layFaces(pencil, beams.originX[i]!, beams.originY[i]!, oz, beams.directionX[i]!, beams.directionY[i]!, dz, shape, strip)
  // rows that the body can touch between `begin` and `latest`
  const oy = beams.originY[i]!
  const dy = beams.directionY[i]!
  const sizeSin = shape.sinYaw < 0 ? -shape.sinYaw : shape.sinYaw
  const sizeCos = shape.cosYaw < 0 ? -shape.cosYaw : shape.cosYaw
  const half = sizeSin * shape.halfA + sizeCos * shape.halfB + SPARE
  const yA = oy + (begin > 0 ? begin : 0) * dy
  const yB = oy + latest * dy
  const lowY = (yA < yB ? yA : yB) - half
  const highY = (yA < yB ? yB : yA) + half
  const firstRow = Math.max(strip.firstRow, Math.ceil((lowY - grid.y0) / grid.pitch - 0.5))
  const lastRow = Math.min(strip.lastRow, Math.floor((highY - grid.y0) / grid.pitch - 0.5))
  if (firstRow > lastRow) return
  if (firstRow < pending.touchedFirst) pending.touchedFirst = firstRow
  if (lastRow > pending.touchedLast) pending.touchedLast = lastRow
  if (sight.segments) return drawSegment(bits, pending, pencil, grid, to, firstRow, lastRow)
  let whole = earliest > from + SPARE
  if (whole) {
    const far = clearAirEquivalent(latest, sight.reach.extinction_per_mm) * (1 + 1e-9)
    const perBrightness = (sight.reach.rangeRef_mm * sight.reach.rangeRef_mm * shape.reflectance) / sight.reach.reflectanceRef
    for (let k = 0; k < pencil.faces; k++) if (perBrightness * pencil.enterCosine[k]! <= far * far) whole = false
  }
  if (whole) return drawWhole(bits, pending, pencil, grid, to, firstRow, lastRow)
  for (let k = 0; k < pencil.faces; k++) {
    const limit = Math.min(to, reach(shape.reflectance * pencil.enterCosine[k]!, sight.reach))
    if (limit >= begin - SPARE) drawFace(bits, pending, pencil, grid, k, from, limit, firstRow, lastRow)
  }
}

/** KERNEL. The faces of a box as functions of its placement. */
function layFaces(
  pencil: Pencil, ox: number, oy: number, oz: number, dx: number, dy: number, dz: number, shape: Shape, strip: Strip,
): void {
  const { halfA, halfB, low, high, cosYaw, sinYaw } = shape
  pencil.faces = 0
  pencil.sides = 0
  layAxis(pencil, ox * cosYaw + oy * sinYaw, dx * cosYaw + dy * sinYaw, cosYaw, sinYaw, 0, -halfA, halfA)
  layAxis(pencil, oy * cosYaw - ox * sinYaw, dy * cosYaw - dx * sinYaw, -sinYaw, cosYaw, 0, -halfB, halfB)
  layAxis(pencil, oz, dz, strip.slopeX, strip.slopeY, strip.z0, low, high)
}

/** KERNEL. One pair of faces: interior where low < (o + t d) - (a x + b y + c) < high. */
function layAxis(pencil: Pencil, o: number, d: number, a: number, b: number, c: number, low: number, high: number): void {
  if (d === 0) {
    let k = pencil.sides
    pencil.sideA[k] = a
    pencil.sideB[k] = b
    pencil.sideC[k++] = o - c - low
    pencil.sideA[k] = -a
    pencil.sideB[k] = -b
    pencil.sideC[k++] = high + c - o
    pencil.sides = k
    return
  }
  const k = pencil.faces++
  const enter = d > 0 ? low : high
  const leave = d > 0 ? high : low
  pencil.enterA[k] = a / d
  pencil.enterB[k] = b / d
  pencil.enterC[k] = (enter + c - o) / d
  pencil.enterCosine[k] = d > 0 ? d : -d
  pencil.exitA[k] = a / d
  pencil.exitB[k] = b / d
  pencil.exitC[k] = (leave + c - o) / d
}

/** KERNEL. Entered anywhere before `to`, all of it in reach: one convex set. */
function drawWhole(bits: Int32Array, pending: Pending, pencil: Pencil, grid: Grid, to: number, firstRow: number, lastRow: number): void {
  const { outline } = pencil
  const { x0, y0, pitch, columns } = grid
  beginOutline(outline, firstRow, lastRow, columns)
  keepCrossed(pencil, grid)
  for (let k = 0; k < pencil.faces; k++) keepHalfPlane(outline, x0, y0, pitch, columns, pencil.enterA[k]!, pencil.enterB[k]!, to - pencil.enterC[k]!)
  endOutline(outline)
  fillOutline(bits, grid.words, columns, outline, pending)
}

/** KERNEL. Entered by face k, between `from` and `limit`. */
function drawFace(
  bits: Int32Array, pending: Pending, pencil: Pencil, grid: Grid, k: number, from: number, limit: number, firstRow: number, lastRow: number,
): void {
  const { outline } = pencil
  const { x0, y0, pitch, columns } = grid
  const a = pencil.enterA[k]!
  const b = pencil.enterB[k]!
  const c = pencil.enterC[k]!
  beginOutline(outline, firstRow, lastRow, columns)
  for (let j = 0; j < pencil.faces; j++) {
    if (j === k) continue
    // the other faces are passed before, and left after
    keepHalfPlane(outline, x0, y0, pitch, columns, pencil.enterA[j]! - a, pencil.enterB[j]! - b, c - pencil.enterC[j]!)
    keepHalfPlane(outline, x0, y0, pitch, columns, a - pencil.exitA[j]!, b - pencil.exitB[j]!, pencil.exitC[j]! - c)
  }
  keepSides(pencil, grid)
  keepHalfPlane(outline, x0, y0, pitch, columns, a, b, limit - c)
  keepHalfPlane(outline, x0, y0, pitch, columns, -a, -b, c - from)
  endOutline(outline)
  fillOutline(bits, grid.words, columns, outline, pending)
}

/** KERNEL. A segment meets the interior: entered before its end, left after its start. */
function drawSegment(bits: Int32Array, pending: Pending, pencil: Pencil, grid: Grid, length: number, firstRow: number, lastRow: number): void {
  const { outline } = pencil
  const { x0, y0, pitch, columns } = grid
  beginOutline(outline, firstRow, lastRow, columns)
  keepCrossed(pencil, grid)
  for (let k = 0; k < pencil.faces; k++) {
    keepHalfPlane(outline, x0, y0, pitch, columns, pencil.enterA[k]!, pencil.enterB[k]!, length - pencil.enterC[k]!)
    keepHalfPlane(outline, x0, y0, pitch, columns, -pencil.exitA[k]!, -pencil.exitB[k]!, pencil.exitC[k]!)
  }
  endOutline(outline)
  fillOutline(bits, grid.words, columns, outline, pending)
}

/** KERNEL. The line meets the interior at all: every face is entered before any other is left. */
function keepCrossed(pencil: Pencil, grid: Grid): void {
  const { outline } = pencil
  const { x0, y0, pitch, columns } = grid
  for (let k = 0; k < pencil.faces; k++)
    for (let j = 0; j < pencil.faces; j++) {
      if (j === k) continue
      keepHalfPlane(
        outline, x0, y0, pitch, columns, pencil.enterA[k]! - pencil.exitA[j]!, pencil.enterB[k]! - pencil.exitB[j]!, pencil.exitC[j]! - pencil.enterC[k]!,
      )
    }
  keepSides(pencil, grid)
}

function keepSides(pencil: Pencil, grid: Grid): void {
  for (let k = 0; k < pencil.sides; k++)
    keepHalfPlane(pencil.outline, grid.x0, grid.y0, grid.pitch, grid.columns, pencil.sideA[k]!, pencil.sideB[k]!, pencil.sideC[k]!)
}
