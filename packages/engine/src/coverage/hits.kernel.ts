// Placements of a body that one beam sees, drawn as bit rows. Doorway frame, mm. The argument stands in docs/method.md, "How the maps are drawn".

import { cosineNeeded, reach } from '../seeing/reach.ts'
import type { Sight } from '../seeing/sees.ts'
import type { Shape } from '../seeing/shape.ts'
import type { Grid } from './grid.ts'
import { beginOutline, endOutline, fillOutline, fillSweep, keepHalfPlane, type Outline, type Pending } from './rows.kernel.ts'

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
  /** How many of the exits can be what a beam leaves by: all, or all but the bottom, which comes last, where the beam ends before it. */
  exits: number
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
    outline,
    enterA: three(),
    enterB: three(),
    enterC: three(),
    enterCosine: three(),
    exitA: three(),
    exitB: three(),
    exitC: three(),
    faces: 0,
    exits: 0,
    sideA: six(),
    sideB: six(),
    sideC: six(),
    sides: 0,
  }
}

const SURE = 1 + 1e-9 // beyond this factor, the cosine alone says which side of the reach a face lies on
const SPARE = 1e-6 // mm: closer than this to a limit, the predicate decides

/**
 * KERNEL. Draws the placements in `strip` where beam i of `sight` sees the box `shape`, its entry point within [from, to] along the beam.
 * Cells on an edge go to `pending`. `firstRow..lastRow` clips.
 */
export function drawBox(
  bits: Int32Array,
  pending: Pending,
  pencil: Pencil,
  grid: Grid,
  sight: Sight,
  i: number,
  shape: Shape,
  strip: Strip,
  from: number,
  to: number,
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
  // the placements that the body can be met at between `begin` and `latest`
  const ox = beams.originX[i]!
  const oy = beams.originY[i]!
  const dx = beams.directionX[i]!
  const dy = beams.directionY[i]!
  const sizeSin = shape.sinYaw < 0 ? -shape.sinYaw : shape.sinYaw
  const sizeCos = shape.cosYaw < 0 ? -shape.cosYaw : shape.cosYaw
  const halfX = sizeCos * shape.halfA + sizeSin * shape.halfB + SPARE
  const halfY = sizeSin * shape.halfA + sizeCos * shape.halfB + SPARE
  const start = begin > 0 ? begin : 0
  const xA = ox + start * dx
  const xB = ox + latest * dx
  const yA = oy + start * dy
  const yB = oy + latest * dy
  const lowX = (xA < xB ? xA : xB) - halfX
  const highX = (xA < xB ? xB : xA) + halfX
  const lowY = (yA < yB ? yA : yB) - halfY
  const highY = (yA < yB ? yB : yA) + halfY
  const firstRow = Math.max(strip.firstRow, Math.ceil((lowY - grid.y0) / grid.pitch - 0.5))
  const lastRow = Math.min(strip.lastRow, Math.floor((highY - grid.y0) / grid.pitch - 0.5))
  if (firstRow > lastRow) return
  if (!touch(pending, grid, firstRow, lastRow, lowX, highX)) return
  const level = dz < 0 && strip.slopeX === 0 && strip.slopeY === 0 && !sight.segments
  if (level && shape.sinYaw === 0 && sweepBox(bits, pending, grid, sight, i, shape, firstRow, lastRow, from, earliest, latest)) return
  layFaces(pencil, level, ox, oy, oz, dx, dy, dz, shape, strip)
  if (sight.segments) return drawSegment(bits, pending, pencil, grid, to, firstRow, lastRow)
  if (level) return drawLevel(bits, pending, pencil, grid, sight, -dz, shape.reflectance, from, earliest, latest, firstRow, lastRow)
  const ahead = earliest > from + SPARE
  if (dz !== 0) {
    // the floor where this beam can meet a body at all: closer bounds than those of the whole strip
    const riseA = strip.slopeX * lowX
    const riseB = strip.slopeX * highX
    const nearY = strip.slopeY * lowY
    const farY = strip.slopeY * highY
    const lowest = strip.z0 + (riseA < riseB ? riseA : riseB) + (nearY < farY ? nearY : farY)
    const highest = strip.z0 + (riseA < riseB ? riseB : riseA) + (nearY < farY ? farY : nearY)
    earliest = ((dz < 0 ? shape.high + highest : shape.low + lowest) - oz) / dz
    const leaves = ((dz < 0 ? shape.low + highest : shape.high + lowest) - oz) / dz
    if (to < leaves - SPARE) pencil.exits--
    latest = Math.min(to, ((dz < 0 ? shape.low + lowest : shape.high + highest) - oz) / dz)
  }
  let whole = earliest > from + SPARE
  const enough = cosineNeeded(latest, shape.reflectance, sight.reach) * SURE
  for (let k = 0; k < pencil.faces; k++) if (pencil.enterCosine[k]! <= enough) whole = false
  if (whole) return drawWhole(bits, pending, pencil, grid, to, firstRow, lastRow, ahead ? -Infinity : lowX, ahead ? Infinity : highX)
  const least = cosineNeeded(begin, shape.reflectance, sight.reach) / SURE
  for (let k = 0; k < pencil.faces; k++) {
    const cosine = pencil.enterCosine[k]!
    if (cosine < least) continue
    const limit = cosine > enough ? to : Math.min(to, reach(shape.reflectance * cosine, sight.reach))
    if (limit >= begin - SPARE) drawFace(bits, pending, pencil, grid, k, from, limit, firstRow, lastRow)
  }
}

/** KERNEL. Notes the rows and words that are about to be drawn on; false where all of it lies beside the grid. */
export function touch(pending: Pending, grid: Grid, firstRow: number, lastRow: number, lowX: number, highX: number): boolean {
  const first = Math.floor((lowX - grid.x0) / grid.pitch - 0.5)
  const last = Math.ceil((highX - grid.x0) / grid.pitch - 0.5)
  if (last < 0 || first >= grid.columns) return false
  const firstWord = first > 0 ? first >> 5 : 0
  const lastWord = last < grid.columns ? last >> 5 : grid.words - 1
  if (firstRow < pending.touchedFirst) pending.touchedFirst = firstRow
  if (lastRow > pending.touchedLast) pending.touchedLast = lastRow
  if (firstWord < pending.touchedWord) pending.touchedWord = firstWord
  if (lastWord >= pending.touchedEnd) pending.touchedEnd = lastWord + 1
  return true
}

/**
 * KERNEL. `drawBox` for a box along the axes on a level floor and a beam that comes down: what is seen is swept by a rectangle, and the
 * beam comes onto the top at `top`, wherever it does. Returns false where a limit falls so close to the top that the predicate must decide.
 */
function sweepBox(
  bits: Int32Array,
  pending: Pending,
  grid: Grid,
  sight: Sight,
  i: number,
  shape: Shape,
  firstRow: number,
  lastRow: number,
  from: number,
  top: number,
  latest: number,
): boolean {
  if (top - from < SPARE && from - top < SPARE) return false
  if (latest - top < SPARE && top - latest < SPARE) return false
  const { beams } = sight
  const { reflectance } = shape
  const { words, columns } = grid
  const dx = beams.directionX[i]!
  const dy = beams.directionY[i]!
  const dz = beams.directionZ[i]!
  const cosineX = dx < 0 ? -dx : dx
  const cosineY = dy < 0 ? -dy : dy
  // cells: column c at c, row r at r
  const scale = 1 / grid.pitch
  const x0 = (beams.originX[i]! - grid.x0) * scale - 0.5
  const y0 = (beams.originY[i]! - grid.y0) * scale - 0.5
  const stepX = dx * scale
  const stepY = dy * scale
  const halfA = shape.halfA * scale
  const halfB = shape.halfB * scale
  const begin = top > from ? top : from
  const xBegin = x0 + begin * stepX
  const yBegin = y0 + begin * stepY
  const enough = cosineNeeded(latest, reflectance, sight.reach) * SURE
  const reachesX = cosineX > enough || cosineX === 0
  const reachesY = cosineY > enough || cosineY === 0
  const reachesTop = -dz > enough
  if (top > from && reachesX && reachesY && reachesTop) {
    // all three faces at once
    const xEnd = x0 + latest * stepX
    const yEnd = y0 + latest * stepY
    if (dy < 0) fillSweep(bits, words, columns, pending, firstRow, lastRow, xEnd, yEnd, xBegin, yBegin, halfB, halfB, -halfA, halfA)
    else fillSweep(bits, words, columns, pending, firstRow, lastRow, xBegin, yBegin, xEnd, yEnd, halfB, halfB, -halfA, halfA)
    return true
  }
  const least = cosineNeeded(begin, reflectance, sight.reach) / SURE
  if (top > from && -dz >= least) {
    const limit = reachesTop ? latest : reach(reflectance * -dz, sight.reach)
    if (limit - top < SPARE && top - limit < SPARE) return false
    if (top < limit)
      fillSweep(bits, words, columns, pending, firstRow, lastRow, xBegin, yBegin, xBegin, yBegin, halfB, halfB, -halfA, halfA)
  }
  if (dx !== 0 && cosineX >= least) {
    const limit = reachesX ? latest : Math.min(latest, reach(reflectance * cosineX, sight.reach))
    if (limit > begin - SPARE) {
      const side = dx > 0 ? halfA : -halfA
      const xLimit = x0 + limit * stepX
      const yLimit = y0 + limit * stepY
      if (dy < 0) fillSweep(bits, words, columns, pending, firstRow, lastRow, xLimit, yLimit, xBegin, yBegin, halfB, halfB, side, side)
      else fillSweep(bits, words, columns, pending, firstRow, lastRow, xBegin, yBegin, xLimit, yLimit, halfB, halfB, side, side)
    }
  }
  if (dy !== 0 && cosineY >= least) {
    const limit = reachesY ? latest : Math.min(latest, reach(reflectance * cosineY, sight.reach))
    if (limit > begin - SPARE) {
      const side = dy > 0 ? halfB : -halfB
      const xLimit = x0 + limit * stepX
      const yLimit = y0 + limit * stepY
      if (dy < 0) fillSweep(bits, words, columns, pending, firstRow, lastRow, xLimit, yLimit, xBegin, yBegin, side, -side, -halfA, halfA)
      else fillSweep(bits, words, columns, pending, firstRow, lastRow, xBegin, yBegin, xLimit, yLimit, side, -side, -halfA, halfA)
    }
  }
  return true
}

/** KERNEL. The faces of a box as functions of its placement; on a level floor only the upright ones, since top and bottom are the same for all. */
function layFaces(
  pencil: Pencil,
  level: boolean,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  shape: Shape,
  strip: Strip,
): void {
  const { halfA, halfB, low, high, cosYaw, sinYaw } = shape
  pencil.faces = 0
  pencil.sides = 0
  layAxis(pencil, ox * cosYaw + oy * sinYaw, dx * cosYaw + dy * sinYaw, cosYaw, sinYaw, 0, -halfA, halfA)
  layAxis(pencil, oy * cosYaw - ox * sinYaw, dy * cosYaw - dx * sinYaw, -sinYaw, cosYaw, 0, -halfB, halfB)
  if (!level) layAxis(pencil, oz, dz, strip.slopeX, strip.slopeY, strip.z0, low, high)
  pencil.exits = pencil.faces
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

/**
 * KERNEL. On a level floor a beam that comes down passes the height of the top at `top` and is stopped at `latest`, wherever the body stands.
 */
function drawLevel(
  bits: Int32Array,
  pending: Pending,
  pencil: Pencil,
  grid: Grid,
  sight: Sight,
  cosineTop: number,
  reflectance: number,
  from: number,
  top: number,
  latest: number,
  firstRow: number,
  lastRow: number,
): void {
  const { outline, faces } = pencil
  const { x0, y0, pitch, columns, words } = grid
  const begin = top > from ? top : from
  const enough = cosineNeeded(latest, reflectance, sight.reach) * SURE
  let whole = top > from + SPARE && cosineTop > enough
  for (let k = 0; k < faces; k++) if (pencil.enterCosine[k]! <= enough) whole = false
  if (whole) {
    beginOutline(outline, firstRow, lastRow)
    keepHalfPlane(outline, x0, y0, pitch, columns, 0, 0, latest - top)
    keepCrossed(pencil, grid)
    for (let k = 0; k < faces; k++) {
      keepHalfPlane(outline, x0, y0, pitch, columns, pencil.enterA[k]!, pencil.enterB[k]!, latest - pencil.enterC[k]!)
      keepHalfPlane(outline, x0, y0, pitch, columns, -pencil.exitA[k]!, -pencil.exitB[k]!, pencil.exitC[k]! - top)
    }
    endOutline(outline)
    fillOutline(bits, words, columns, outline, pending)
    return
  }
  const least = cosineNeeded(begin, reflectance, sight.reach) / SURE
  // the top
  const topLimit = cosineTop < least ? 0 : cosineTop > enough ? latest : Math.min(latest, reach(reflectance * cosineTop, sight.reach))
  if (topLimit > top - SPARE && top > from - SPARE) {
    beginOutline(outline, firstRow, lastRow)
    keepHalfPlane(outline, x0, y0, pitch, columns, 0, 0, topLimit - top)
    keepHalfPlane(outline, x0, y0, pitch, columns, 0, 0, top - from)
    keepSides(pencil, grid)
    for (let k = 0; k < faces; k++) {
      keepHalfPlane(outline, x0, y0, pitch, columns, pencil.enterA[k]!, pencil.enterB[k]!, top - pencil.enterC[k]!)
      keepHalfPlane(outline, x0, y0, pitch, columns, -pencil.exitA[k]!, -pencil.exitB[k]!, pencil.exitC[k]! - top)
    }
    endOutline(outline)
    fillOutline(bits, words, columns, outline, pending)
  }
  // the upright sides
  for (let k = 0; k < faces; k++) {
    const cosine = pencil.enterCosine[k]!
    if (cosine < least) continue
    const limit = cosine > enough ? latest : Math.min(latest, reach(reflectance * cosine, sight.reach))
    if (limit >= begin - SPARE) drawFace(bits, pending, pencil, grid, k, begin, limit, firstRow, lastRow)
  }
}

/**
 * KERNEL. Entered anywhere before `to`, all of it in reach: one convex set. Between `lowX` and `highX` nothing is entered too soon; on a sloping
 * floor that may hold there only, and farther back a body behind the origin would count.
 */
function drawWhole(
  bits: Int32Array,
  pending: Pending,
  pencil: Pencil,
  grid: Grid,
  to: number,
  firstRow: number,
  lastRow: number,
  lowX: number,
  highX: number,
): void {
  const { outline } = pencil
  const { x0, y0, pitch, columns } = grid
  beginOutline(outline, firstRow, lastRow)
  if (lowX > -Infinity) {
    keepHalfPlane(outline, x0, y0, pitch, columns, 1, 0, highX)
    keepHalfPlane(outline, x0, y0, pitch, columns, -1, 0, -lowX)
  }
  keepCrossed(pencil, grid)
  for (let k = 0; k < pencil.faces; k++)
    keepHalfPlane(outline, x0, y0, pitch, columns, pencil.enterA[k]!, pencil.enterB[k]!, to - pencil.enterC[k]!)
  endOutline(outline)
  fillOutline(bits, grid.words, columns, outline, pending)
}

/** KERNEL. Entered by face k, between `from` and `limit`. */
function drawFace(
  bits: Int32Array,
  pending: Pending,
  pencil: Pencil,
  grid: Grid,
  k: number,
  from: number,
  limit: number,
  firstRow: number,
  lastRow: number,
): void {
  const { outline } = pencil
  const { x0, y0, pitch, columns } = grid
  const a = pencil.enterA[k]!
  const b = pencil.enterB[k]!
  const c = pencil.enterC[k]!
  beginOutline(outline, firstRow, lastRow)
  for (let j = 0; j < pencil.faces; j++) {
    if (j === k) continue
    // the other faces are passed before, and left after
    keepHalfPlane(outline, x0, y0, pitch, columns, pencil.enterA[j]! - a, pencil.enterB[j]! - b, c - pencil.enterC[j]!)
    if (j < pencil.exits) keepHalfPlane(outline, x0, y0, pitch, columns, a - pencil.exitA[j]!, b - pencil.exitB[j]!, pencil.exitC[j]! - c)
  }
  keepSides(pencil, grid)
  keepHalfPlane(outline, x0, y0, pitch, columns, a, b, limit - c)
  keepHalfPlane(outline, x0, y0, pitch, columns, -a, -b, c - from)
  endOutline(outline)
  fillOutline(bits, grid.words, columns, outline, pending)
}

/** KERNEL. A segment meets the interior: entered before its end, left after its start. */
function drawSegment(
  bits: Int32Array,
  pending: Pending,
  pencil: Pencil,
  grid: Grid,
  length: number,
  firstRow: number,
  lastRow: number,
): void {
  const { outline } = pencil
  const { x0, y0, pitch, columns } = grid
  beginOutline(outline, firstRow, lastRow)
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
    for (let j = 0; j < pencil.exits; j++) {
      if (j === k) continue
      keepHalfPlane(
        outline,
        x0,
        y0,
        pitch,
        columns,
        pencil.enterA[k]! - pencil.exitA[j]!,
        pencil.enterB[k]! - pencil.exitB[j]!,
        pencil.exitC[j]! - pencil.enterC[k]!,
      )
    }
  keepSides(pencil, grid)
}

function keepSides(pencil: Pencil, grid: Grid): void {
  for (let k = 0; k < pencil.sides; k++)
    keepHalfPlane(pencil.outline, grid.x0, grid.y0, grid.pitch, grid.columns, pencil.sideA[k]!, pencil.sideB[k]!, pencil.sideC[k]!)
}
