// Placements of an upright cylinder that one beam sees, drawn as bit rows. Doorway frame, mm.
import { cosineNeeded, reach } from '../seeing/reach.ts'
import type { Sight } from '../seeing/sees.ts'
import type { Shape } from '../seeing/shape.ts'
import type { Grid } from './grid.ts'
import { type Strip, touch } from './hits.kernel.ts'
import { type Pending, pendRow, setBits } from './rows.kernel.ts'

const SPARE = 1e-5 // mm: closer than this to a limit, the predicate decides

/**
 * KERNEL. As `drawBox`, for a cylinder. In the plan the placements met between two points of the beam are those within one radius
 * of that stretch. Cells that surely are seen are drawn, cells that may be go to `pending`: near the ends of the stretch where
 * the floor rises along x, and near the rim, where the face turns away and the reach falls to nothing.
 */
export function drawCylinder(
  bits: Int32Array,
  pending: Pending,
  grid: Grid,
  sight: Sight,
  i: number,
  shape: Shape,
  strip: Strip,
  from: number,
  to: number,
): void {
  const { beams } = sight
  const { x0, y0, pitch, columns, words } = grid
  const ox = beams.originX[i]!
  const oy = beams.originY[i]!
  const oz = beams.originZ[i]!
  const dx = beams.directionX[i]!
  const dy = beams.directionY[i]!
  const dz = beams.directionZ[i]!
  const radius = shape.halfA
  const level = Math.sqrt(dx * dx + dy * dy)
  // rows that the body can touch
  let begin = sight.segments ? 0 : from
  let latest = to
  if (dz < 0) {
    begin = Math.max(begin, (shape.high + strip.highest - oz) / dz)
    latest = Math.min(latest, (shape.low + strip.lowest - oz) / dz)
  } else if (dz > 0) {
    begin = Math.max(begin, (shape.low + strip.lowest - oz) / dz)
    latest = Math.min(latest, (shape.high + strip.highest - oz) / dz)
  } else if (oz < shape.low + strip.lowest - SPARE || oz > shape.high + strip.highest + SPARE) return
  if (latest < begin - SPARE || latest < 0) return
  const yA = oy + begin * dy
  const yB = oy + latest * dy
  const firstRow = Math.max(strip.firstRow, Math.ceil(((yA < yB ? yA : yB) - radius - SPARE - y0) / pitch - 0.5))
  const lastRow = Math.min(strip.lastRow, Math.floor(((yA < yB ? yB : yA) + radius + SPARE - y0) / pitch - 0.5))
  if (firstRow > lastRow) return
  const xA = ox + begin * dx
  const xB = ox + latest * dx
  const leftX = (xA < xB ? xA : xB) - radius - SPARE
  const rightX = (xA < xB ? xB : xA) + radius + SPARE
  if (!touch(pending, grid, firstRow, lastRow, leftX, rightX)) return
  if (
    dz < 0 &&
    strip.slopeX === 0 &&
    strip.slopeY === 0 &&
    !sight.segments &&
    level > 0 &&
    begin > from + SPARE &&
    latest > begin + SPARE
  ) {
    sweepCylinder(bits, pending, grid, sight, i, shape, begin, latest, firstRow, lastRow)
    return
  }
  // how the floor under the body varies along x, over all placements that this beam can meet
  const riseA = strip.slopeX * leftX
  const riseB = strip.slopeX * rightX
  const { reflectance } = shape
  const topReach = sight.segments ? Infinity : reach(reflectance * (dz < 0 ? -dz : dz), sight.reach)
  for (let r = firstRow; r <= lastRow; r++) {
    const y = y0 + (r + 0.5) * pitch
    // the stretch of the beam between the body's top and bottom: [inFrom, inTo] for sure, [outFrom, outTo] at most
    const base = strip.z0 + strip.slopeY * y
    const lowFloor = base + (riseA < riseB ? riseA : riseB)
    const highFloor = base + (riseA < riseB ? riseB : riseA)
    let outFrom = -Infinity
    let inFrom = -Infinity
    let outTo = to
    let inTo = to
    if (dz < 0) {
      outFrom = (shape.high + highFloor - oz) / dz
      inFrom = (shape.high + lowFloor - oz) / dz
      outTo = Math.min(to, (shape.low + lowFloor - oz) / dz)
      inTo = Math.min(to, (shape.low + highFloor - oz) / dz)
    } else if (dz > 0) {
      outFrom = (shape.low + lowFloor - oz) / dz
      inFrom = (shape.low + highFloor - oz) / dz
      outTo = Math.min(to, (shape.high + highFloor - oz) / dz)
      inTo = Math.min(to, (shape.high + lowFloor - oz) / dz)
    } else if (!(oz > highFloor + shape.low + SPARE && oz < lowFloor + shape.high - SPARE)) inTo = -Infinity
    const lowerSure = sight.segments || outFrom > from + SPARE
    if (sight.segments) {
      outFrom = Math.max(outFrom, 0)
      inFrom = Math.max(inFrom, 0)
    } else if (!lowerSure) outFrom = Math.max(outFrom, from)
    if (!(outFrom <= outTo + SPARE)) continue
    const topLatest = inFrom
    // far enough along the beam, the entry point comes after `from` for sure
    if (!lowerSure && level > 0) inFrom = Math.max(inFrom, from + (2 * radius) / level + 2 * SPARE)
    // all that may be seen
    let radius2 = (radius + SPARE) * (radius + SPARE)
    let low = stretchLow(ox, oy, dx, dy, level, outFrom - SPARE, outTo + SPARE, y, radius + SPARE, radius2)
    let high = -stretchLow(-ox, oy, -dx, dy, level, outFrom - SPARE, outTo + SPARE, y, radius + SPARE, radius2)
    if (!(low <= high)) continue
    const outFirst = Math.max(0, Math.ceil((low - x0) / pitch - 0.5))
    const outLast = Math.min(columns - 1, Math.floor((high - x0) / pitch - 0.5))
    if (outFirst > outLast) continue
    // what surely is: entered by the top within reach, or by the side where its face still returns enough
    let sureFirst = 1
    let sureLast = 0
    let topFirst = 1
    let topLast = 0
    if ((lowerSure || level > 0) && inFrom < inTo - SPARE) {
      radius2 = (radius - SPARE) * (radius - SPARE)
      let narrow = radius - SPARE
      if (!sight.segments) {
        const share = level > 0 ? cosineNeeded(inTo > 0 ? inTo : 0, reflectance, sight.reach) / level : 2
        narrow = share < 1 ? radius * Math.sqrt(1 - share * share) - SPARE : -1
        // the top: a disc where the beam comes down onto it
        if (lowerSure && dz !== 0 && inFrom < topReach - SPARE && inFrom - outFrom < SPARE) {
          low = stretchLow(ox, oy, dx, dy, level, inFrom, inFrom, y, radius - SPARE, radius2)
          high = -stretchLow(-ox, oy, -dx, dy, level, inFrom, inFrom, y, radius - SPARE, radius2)
          topFirst = Math.max(0, Math.ceil((low - x0) / pitch - 0.5))
          topLast = Math.min(columns - 1, Math.floor((high - x0) / pitch - 0.5))
        }
      }
      if (narrow > 0 && (sight.segments || dz === 0 || topReach > topLatest + SPARE)) {
        // the stretch, within `narrow` of the beam's line
        low = stretchLow(ox, oy, dx, dy, level, inFrom + SPARE, inTo - SPARE, y, radius - SPARE, radius2)
        high = -stretchLow(-ox, oy, -dx, dy, level, inFrom + SPARE, inTo - SPARE, y, radius - SPARE, radius2)
        if (narrow < radius - 2 * SPARE && level > 0) {
          // |(x - ox) dy - (y - oy) dx| <= narrow * level
          const offset = (y - oy) * dx
          const size = narrow * level
          if (dy !== 0) {
            const a = ox + (offset - size) / dy
            const b = ox + (offset + size) / dy
            low = Math.max(low, a < b ? a : b)
            high = Math.min(high, a < b ? b : a)
          } else if (offset > size || offset < -size) high = low - 1
        }
        sureFirst = Math.max(0, Math.ceil((low - x0) / pitch - 0.5 + 1e-6))
        sureLast = Math.min(columns - 1, Math.floor((high - x0) / pitch - 0.5 - 1e-6))
      }
    }
    if (sureFirst <= sureLast) setBits(bits, r * words, sureFirst, sureLast)
    if (topFirst <= topLast) setBits(bits, r * words, topFirst, topLast)
    pendOutside(pending, r * columns, outFirst, outLast, sureFirst, sureLast, topFirst, topLast)
  }
}

/**
 * KERNEL. `drawCylinder` on a level floor, for a slanting beam that comes onto the top at `top` and is stopped at `latest`: the placements
 * are those within one radius of that stretch. Beside the disc at `top` the round side is entered; it is seen within `narrow` of the
 * beam's line, unseen beyond `wide`, and the predicate decides between.
 */
function sweepCylinder(
  bits: Int32Array,
  pending: Pending,
  grid: Grid,
  sight: Sight,
  i: number,
  shape: Shape,
  top: number,
  latest: number,
  firstRow: number,
  lastRow: number,
): void {
  const { beams } = sight
  const { columns, words } = grid
  const { reflectance } = shape
  const scale = 1 / grid.pitch
  const dx = beams.directionX[i]!
  const dy = beams.directionY[i]!
  const dz = beams.directionZ[i]!
  const level = Math.sqrt(dx * dx + dy * dy)
  const shareTop = cosineNeeded(top, reflectance, sight.reach)
  const shareEnd = cosineNeeded(latest, reflectance, sight.reach)
  const topSeen = -dz > shareTop * (1 + 1e-9)
  const topUnsure = !topSeen && -dz > shareTop * (1 - 1e-9)
  // in cells: column c at c, row r at r
  const radius = shape.halfA * scale
  const radius2 = radius * radius
  const narrow = shareEnd < level ? radius * Math.sqrt(1 - (shareEnd / level) * (shareEnd / level)) - 1e-6 : -1
  const wide = shareTop < level ? radius * Math.sqrt(1 - (shareTop / level) * (shareTop / level)) + 1e-6 : -1
  const xTop = (beams.originX[i]! + top * dx - grid.x0) * scale - 0.5
  const yTop = (beams.originY[i]! + top * dy - grid.y0) * scale - 0.5
  const xEnd = (beams.originX[i]! + latest * dx - grid.x0) * scale - 0.5
  const yEnd = (beams.originY[i]! + latest * dy - grid.y0) * scale - 0.5
  const alongX = dx / level
  const alongY = dy / level
  const sideY = alongY > 0 ? -alongX * radius : alongX * radius // the straight side at smaller x, from the line
  const sideX = alongY > 0 ? alongY * radius : -alongY * radius
  const slant = alongY !== 0 ? alongX / alongY : 0
  const yLow = yTop < yEnd ? yTop : yEnd
  const yHigh = yTop < yEnd ? yEnd : yTop
  for (let r = firstRow; r <= lastRow; r++) {
    const awayTop = r - yTop
    const awayEnd = r - yEnd
    const chordTop = radius2 - awayTop * awayTop
    const chordEnd = radius2 - awayEnd * awayEnd
    // near the first and last row of a disc its ends are steep: the predicate decides
    if (topUnsure || (chordTop < 1e-3 && chordTop > -1e-3) || (chordEnd < 1e-3 && chordEnd > -1e-3)) {
      drawBetween(bits, words, columns, pending, r, 1, 0, (xTop < xEnd ? xTop : xEnd) - radius, (xTop < xEnd ? xEnd : xTop) + radius)
      continue
    }
    let low = Infinity
    let high = -Infinity
    let topLow = 1
    let topHigh = 0
    if (chordTop > 0) {
      const half = Math.sqrt(chordTop)
      topLow = low = xTop - half
      topHigh = high = xTop + half
    }
    if (chordEnd > 0) {
      const half = Math.sqrt(chordEnd)
      if (xEnd - half < low) low = xEnd - half
      if (xEnd + half > high) high = xEnd + half
    }
    if (alongY !== 0) {
      // the straight sides run beside the stretch
      const yLeft = r + sideY
      if (yLeft > yLow && yLeft < yHigh) {
        const x = xTop + (yLeft - yTop) * slant - sideX
        if (x < low) low = x
      }
      const yRight = r - sideY
      if (yRight > yLow && yRight < yHigh) {
        const x = xTop + (yRight - yTop) * slant + sideX
        if (x > high) high = x
      }
    }
    if (!(low < high)) continue
    // the strips within `narrow` and `wide` of the line
    let sureLow = low
    let sureHigh = high
    let maybeLow = low
    let maybeHigh = high
    if (alongY !== 0) {
      const middle = xTop + (r - yTop) * slant
      const size = alongY < 0 ? -1 / alongY : 1 / alongY
      if (middle - narrow * size > sureLow) sureLow = middle - narrow * size
      if (middle + narrow * size < sureHigh) sureHigh = middle + narrow * size
      if (middle - wide * size > maybeLow) maybeLow = middle - wide * size
      if (middle + wide * size < maybeHigh) maybeHigh = middle + wide * size
      if (narrow < 0) sureHigh = sureLow - 1
      if (wide < 0) maybeHigh = maybeLow - 1
    } else {
      const away = awayTop < 0 ? -awayTop : awayTop
      if (away > narrow) sureHigh = sureLow - 1
      if (away > wide) maybeHigh = maybeLow - 1
    }
    if (topLow <= topHigh && topSeen) {
      drawBetween(bits, words, columns, pending, r, topLow, topHigh, topLow, topHigh)
      drawBetween(bits, words, columns, pending, r, sureLow, sureHigh, maybeLow, maybeHigh)
    } else if (topLow <= topHigh) {
      // the top is too far: only the side before it, on either side of the disc
      drawBetween(
        bits,
        words,
        columns,
        pending,
        r,
        sureLow,
        sureHigh < topLow ? sureHigh : topLow,
        maybeLow,
        maybeHigh < topLow ? maybeHigh : topLow,
      )
      drawBetween(
        bits,
        words,
        columns,
        pending,
        r,
        sureLow > topHigh ? sureLow : topHigh,
        sureHigh,
        maybeLow > topHigh ? maybeLow : topHigh,
        maybeHigh,
      )
    } else drawBetween(bits, words, columns, pending, r, sureLow, sureHigh, maybeLow, maybeHigh)
  }
}

const TIE = 1e-5 // columns

/** KERNEL. Draws the cells surely between sureLow and sureHigh, and lists those that may lie between maybeLow and maybeHigh. */
function drawBetween(
  bits: Int32Array,
  words: number,
  columns: number,
  pending: Pending,
  row: number,
  sureLow: number,
  sureHigh: number,
  maybeLow: number,
  maybeHigh: number,
): void {
  if (!(maybeLow <= maybeHigh + TIE)) return
  const first = Math.max(0, Math.ceil(maybeLow - TIE))
  const last = Math.min(columns - 1, Math.floor(maybeHigh + TIE))
  const sureFirst = Math.max(0, Math.ceil(sureLow + TIE))
  const sureLast = Math.min(columns - 1, Math.floor(sureHigh - TIE))
  if (sureFirst > sureLast) {
    pendRow(pending, row * columns, first, last)
    return
  }
  setBits(bits, row * words, sureFirst, sureLast)
  pendRow(pending, row * columns, first, sureFirst - 1)
  pendRow(pending, row * columns, sureLast + 1, last)
}

/** KERNEL. Least x at height y of the plan within `radius` of the stretch from..to of a line; Infinity where there is none. */
function stretchLow(
  ox: number,
  oy: number,
  dx: number,
  dy: number,
  level: number,
  from: number,
  to: number,
  y: number,
  radius: number,
  radius2: number,
): number {
  let low = Infinity
  const a = y - (oy + from * dy)
  if (a * a < radius2) low = ox + from * dx - Math.sqrt(radius2 - a * a)
  const b = y - (oy + to * dy)
  if (b * b < radius2) {
    const x = ox + to * dx - Math.sqrt(radius2 - b * b)
    if (x < low) low = x
  }
  if (dy !== 0 && level > 0) {
    // the straight side: points of the line moved by the radius to the left, where they lie beside the stretch
    const normalX = dy > 0 ? -dy / level : dy / level
    const normalY = dy > 0 ? dx / level : -dx / level
    const t = (y - radius * normalY - oy) / dy
    if (t >= from && t <= to) {
      const x = ox + t * dx + radius * normalX
      if (x < low) low = x
    }
  }
  return low
}

/** KERNEL. Lists the cells of outFirst..outLast in neither of two runs. */
function pendOutside(
  pending: Pending,
  base: number,
  outFirst: number,
  outLast: number,
  aFirst: number,
  aLast: number,
  bFirst: number,
  bLast: number,
): void {
  let c = outFirst
  while (c <= outLast) {
    if (c >= aFirst && c <= aLast) c = aLast + 1
    else if (c >= bFirst && c <= bLast) c = bLast + 1
    else {
      pendRow(pending, base, c, c)
      c++
    }
  }
}
