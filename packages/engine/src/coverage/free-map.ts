import type { Obstacle } from '../model/door.ts'
import type { Shape } from '../seeing/shape.ts'
import { type FloorPieces, floorHeight } from '../space/floor.ts'
import { TOUCH_MM } from '../space/touch.ts'
import { turnOf } from '../space/trigonometry.ts'
import { boxesOverlap, boxOverlapsDisc } from './free.kernel.ts'
import type { CellSet } from './grid.ts'
import type { Strip } from './hits.kernel.ts'
import { beginOutline, endOutline, fillOutline, keepHalfPlane, pendRow, setBits } from './rows.kernel.ts'
import type { Easel } from './seen-map.ts'

/** A box or disc in the plan between two heights: what a body must not overlap. */
export interface Footprint {
  readonly x: number
  readonly y: number
  readonly halfA: number
  readonly halfB: number
  readonly cosYaw: number
  readonly sinYaw: number
  readonly radius: number // of a disc; 0 for a box
  readonly from: number
  readonly to: number
}

export function footprint(obstacle: Obstacle): Footprint {
  const { x_mm: x, y_mm: y, from_mm: from, to_mm: to } = obstacle
  if (obstacle.shape === 'post') return { x, y, halfA: 0, halfB: 0, cosYaw: 1, sinYaw: 0, radius: obstacle.radius_mm, from, to }
  const [along, across] = obstacle.size_mm
  const [cosYaw, sinYaw] = turnOf(obstacle.yaw_rad)
  return { x, y, halfA: along / 2, halfB: across / 2, cosYaw, sinYaw, radius: 0, from, to }
}

/** One body against one obstacle on one strip of floor. */
interface Meeting {
  readonly taken: CellSet
  readonly easel: Easel
  readonly floor: FloorPieces
  readonly strip: Strip
  readonly body: Shape
  readonly foot: Footprint
  /** They overlap in height wherever the body stands on the strip. */
  readonly level: boolean
}

/**
 * Adds to `taken` the placements at which the body overlaps an obstacle in space (docs/method.md, section 3). The body is as it is,
 * not shrunk by a spot.
 */
export function drawTaken(
  taken: CellSet,
  easel: Easel,
  strips: readonly Strip[],
  floor: FloorPieces,
  obstacles: readonly Obstacle[],
  body: Shape,
): void {
  for (const obstacle of obstacles) {
    const foot = footprint(obstacle)
    for (const strip of strips) {
      if (strip.highest + body.high <= foot.from + TOUCH_MM || strip.lowest >= foot.to - TOUCH_MM) continue
      const level = strip.lowest + body.high > foot.from + TOUCH_MM && strip.highest < foot.to - TOUCH_MM
      const meeting = { taken, easel, floor, strip, body, foot, level }
      if (body.round || foot.radius > 0) drawRounded(meeting)
      else drawBoxes(meeting)
    }
  }
}

function drawBoxes(meeting: Meeting): void {
  const { body, foot } = meeting
  const c = Math.abs(body.cosYaw * foot.cosYaw + body.sinYaw * foot.sinYaw)
  const s = Math.abs(body.sinYaw * foot.cosYaw - body.cosYaw * foot.sinYaw)
  begin(meeting)
  keepBand(meeting, body.cosYaw, body.sinYaw, body.halfA + foot.halfA * c + foot.halfB * s)
  keepBand(meeting, -body.sinYaw, body.cosYaw, body.halfB + foot.halfA * s + foot.halfB * c)
  keepBand(meeting, foot.cosYaw, foot.sinYaw, foot.halfA + body.halfA * c + body.halfB * s)
  keepBand(meeting, -foot.sinYaw, foot.cosYaw, foot.halfB + body.halfA * s + body.halfB * c)
  finish(meeting)
}

/** One of the two is a disc: the placements are the other one (a point if that is a disc too), rounded by the sum of the radii. */
function drawRounded(meeting: Meeting): void {
  const { body, foot } = meeting
  const radius = (body.round ? body.halfA : 0) + foot.radius
  const point = { halfA: 0, halfB: 0, cosYaw: 1, sinYaw: 0 }
  const core = !body.round ? body : foot.radius > 0 ? point : foot
  if (core.halfA > 0 && core.halfB > 0) {
    begin(meeting)
    keepBand(meeting, core.cosYaw, core.sinYaw, core.halfA + radius)
    keepBand(meeting, -core.sinYaw, core.cosYaw, core.halfB)
    finish(meeting)
    begin(meeting)
    keepBand(meeting, core.cosYaw, core.sinYaw, core.halfA)
    keepBand(meeting, -core.sinYaw, core.cosYaw, core.halfB + radius)
    finish(meeting)
  }
  for (const a of core.halfA > 0 ? [-core.halfA, core.halfA] : [0])
    for (const b of core.halfB > 0 ? [-core.halfB, core.halfB] : [0])
      drawDisc(meeting, foot.x + a * core.cosYaw - b * core.sinYaw, foot.y + a * core.sinYaw + b * core.cosYaw, radius)
}

function begin({ easel, strip }: Meeting): void {
  beginOutline(easel.pencil.outline, strip.firstRow, strip.lastRow)
}

/** Keeps |n . (placement - foot)| < half. */
function keepBand({ easel: { pencil, grid }, foot }: Meeting, nx: number, ny: number, half: number): void {
  const middle = nx * foot.x + ny * foot.y
  keepHalfPlane(pencil.outline, grid.x0, grid.y0, grid.pitch, grid.columns, nx, ny, middle + half)
  keepHalfPlane(pencil.outline, grid.x0, grid.y0, grid.pitch, grid.columns, -nx, -ny, half - middle)
}

/** Where the floor decides whether the heights overlap, that is two more half planes; then the outline is drawn. */
function finish(meeting: Meeting): void {
  const { taken, easel, strip, level, body, foot } = meeting
  const { grid, pending } = easel
  const { outline } = easel.pencil
  if (!level) {
    keepHalfPlane(outline, grid.x0, grid.y0, grid.pitch, grid.columns, strip.slopeX, strip.slopeY, foot.to - strip.z0 - body.low)
    keepHalfPlane(outline, grid.x0, grid.y0, grid.pitch, grid.columns, -strip.slopeX, -strip.slopeY, strip.z0 + body.high - foot.from)
  }
  endOutline(outline)
  fillOutline(taken, grid.words, grid.columns, outline, pending)
  if (pending.count > 0) settleTaken(meeting)
}

const SPARE = 1e-5 // mm: closer than this to the rim, the predicate decides

function drawDisc(meeting: Meeting, x: number, y: number, radius: number): void {
  const { taken, easel, strip, level } = meeting
  const { pending } = easel
  const { x0, y0, pitch, columns, words } = easel.grid
  for (let r = strip.firstRow; r <= strip.lastRow; r++) {
    const away = y0 + (r + 0.5) * pitch - y
    const outer = (radius + SPARE) * (radius + SPARE) - away * away
    if (outer < 0) continue
    const half = Math.sqrt(outer)
    const outFirst = Math.max(0, Math.ceil((x - half - x0) / pitch - 0.5))
    const outLast = Math.min(columns - 1, Math.floor((x + half - x0) / pitch - 0.5))
    const inner = (radius - SPARE) * (radius - SPARE) - away * away
    const sure = level && inner >= 0 ? Math.sqrt(inner) : -1
    const sureFirst = Math.max(0, Math.ceil((x - sure - x0) / pitch - 0.5))
    const sureLast = Math.min(columns - 1, Math.floor((x + sure - x0) / pitch - 0.5))
    if (sureFirst > sureLast) pendRow(pending, r * columns, outFirst, outLast)
    else {
      setBits(taken, r * words, sureFirst, sureLast)
      pendRow(pending, r * columns, outFirst, sureFirst - 1)
      pendRow(pending, r * columns, sureLast + 1, outLast)
    }
  }
  if (pending.count > 0) settleTaken(meeting)
}

/** The predicate of overlap. */
function overlaps(shape: Shape, foot: Footprint, x: number, y: number, floor_mm: number): boolean {
  if (floor_mm + shape.high <= foot.from + TOUCH_MM || floor_mm + shape.low >= foot.to - TOUCH_MM) return false
  if (shape.round && foot.radius > 0) {
    const px = x - foot.x
    const py = y - foot.y
    const sum = shape.halfA + foot.radius - TOUCH_MM
    return px * px + py * py < sum * sum
  }
  if (shape.round) return boxOverlapsDisc(foot.x, foot.y, foot.halfA, foot.halfB, foot.cosYaw, foot.sinYaw, x, y, shape.halfA)
  if (foot.radius > 0) return boxOverlapsDisc(x, y, shape.halfA, shape.halfB, shape.cosYaw, shape.sinYaw, foot.x, foot.y, foot.radius)
  return boxesOverlap(
    x,
    y,
    shape.halfA,
    shape.halfB,
    shape.cosYaw,
    shape.sinYaw,
    foot.x,
    foot.y,
    foot.halfA,
    foot.halfB,
    foot.cosYaw,
    foot.sinYaw,
  )
}

function settleTaken({ taken, easel: { grid, pending }, floor, body, foot }: Meeting): void {
  for (let k = 0; k < pending.count; k++) {
    const cell = pending.cells[k] as number
    const row = Math.floor(cell / grid.columns)
    const column = cell - row * grid.columns
    const x = grid.x0 + (column + 0.5) * grid.pitch
    const y = grid.y0 + (row + 0.5) * grid.pitch
    if (overlaps(body, foot, x, y, floorHeight(floor, x, y))) setBits(taken, row * grid.words, column, column)
  }
  pending.count = 0
}

/** Whether a body standing at (x, y) overlaps one of the obstacles. The slow way, for one placement. */
export function isTaken(shape: Shape, obstacles: readonly Obstacle[], floor: FloorPieces, x_mm: number, y_mm: number): boolean {
  const under = floorHeight(floor, x_mm, y_mm)
  return obstacles.some((o) => overlaps(shape, footprint(o), x_mm, y_mm, under))
}
