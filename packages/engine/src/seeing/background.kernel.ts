// Doorway frame, mm. How far beams run until something ends them.
import type { FloorPieces } from '../space/floor.ts'
import { TOUCH_MM } from '../space/touch.ts'
import type { Beams } from './beams.ts'

/** KERNEL. Lowers `out[i]` to the distance at which beam i first goes under the floor; 0 where it starts below. */
export function meetFloor(out: Float64Array, beams: Beams, floor: FloorPieces): void {
  for (let i = 0; i < beams.count; i++) {
    const t = floorDistance(
      floor,
      beams.originX[i]!,
      beams.originY[i]!,
      beams.originZ[i]!,
      beams.directionX[i]!,
      beams.directionY[i]!,
      beams.directionZ[i]!,
    )
    if (t < out[i]!) out[i] = t
  }
}

/** KERNEL. Distance at which a line first dips below the floor; 0 if it starts below, Infinity if it never does. */
export function floorDistance(floor: FloorPieces, ox: number, oy: number, oz: number, dx: number, dy: number, dz: number): number {
  const { count, from, y, z, slope, slopeX } = floor
  let piece = count - 1
  while (piece > 0 && oy < from[piece]!) piece--
  // A beam that starts on a bend and runs toward lower y belongs to the piece before it.
  if (dy < 0 && piece > 0 && oy === from[piece]!) piece--
  const start = oz - (z[piece]! + (oy - y[piece]!) * slope[piece]! + slopeX * ox)
  if (start < -TOUCH_MM) return 0
  let near = 0
  for (;;) {
    // Height above this piece, extended without end, is height + rising * t.
    const height = oz - (z[piece]! + (oy - y[piece]!) * slope[piece]! + slopeX * ox)
    const rising = dz - dy * slope[piece]! - dx * slopeX
    let far = Infinity
    if (dy > 0 && piece + 1 < count) far = (from[piece + 1]! - oy) / dy
    else if (dy < 0 && piece > 0) far = (from[piece]! - oy) / dy
    if (rising < 0) {
      const t = height / -rising
      if (t < far) return t > near ? t : near
    }
    if (far === Infinity) return Infinity
    near = far
    piece += dy > 0 ? 1 : -1
  }
}

/**
 * KERNEL. Lowers `out[i]` to the distance at which beam i enters the interior of an upright box; 0 where it starts inside. A beam that stays
 * within `TOUCH_MM` of the box's skin touches it: it must pass [first, last], between faces that lie this much deeper.
 */
export function meetBox(
  out: Float64Array,
  beams: Beams,
  x: number,
  y: number,
  low: number,
  high: number,
  halfA: number,
  halfB: number,
  cosYaw: number,
  sinYaw: number,
): void {
  for (let i = 0; i < beams.count; i++) {
    const px = beams.originX[i]! - x
    const py = beams.originY[i]! - y
    const dx = beams.directionX[i]!
    const dy = beams.directionY[i]!
    let near = -Infinity
    let first = -Infinity
    let last = Infinity
    // along the box
    let o = px * cosYaw + py * sinYaw
    let d = dx * cosYaw + dy * sinYaw
    if (d !== 0) {
      const enter = ((d > 0 ? -halfA : halfA) - o) / d
      const leave = ((d > 0 ? halfA : -halfA) - o) / d
      const skin = TOUCH_MM / (d > 0 ? d : -d)
      near = enter
      first = enter + skin
      last = leave - skin
    } else if (o <= TOUCH_MM - halfA || o >= halfA - TOUCH_MM) continue
    // across it
    o = py * cosYaw - px * sinYaw
    d = dy * cosYaw - dx * sinYaw
    if (d !== 0) {
      const enter = ((d > 0 ? -halfB : halfB) - o) / d
      const leave = ((d > 0 ? halfB : -halfB) - o) / d
      const skin = TOUCH_MM / (d > 0 ? d : -d)
      near = Math.max(near, enter)
      first = Math.max(first, enter + skin)
      last = Math.min(last, leave - skin)
    } else if (o <= TOUCH_MM - halfB || o >= halfB - TOUCH_MM) continue
    // between its heights
    o = beams.originZ[i]!
    d = beams.directionZ[i]!
    if (d !== 0) {
      const enter = ((d > 0 ? low : high) - o) / d
      const leave = ((d > 0 ? high : low) - o) / d
      const skin = TOUCH_MM / (d > 0 ? d : -d)
      near = Math.max(near, enter)
      first = Math.max(first, enter + skin)
      last = Math.min(last, leave - skin)
    } else if (o <= low + TOUCH_MM || o >= high - TOUCH_MM) continue
    if (first < last && last > 0) {
      const t = near > 0 ? near : 0
      if (t < out[i]!) out[i] = t
    }
  }
}

/** KERNEL. As `meetBox`, for an upright cylinder. */
export function meetPost(out: Float64Array, beams: Beams, x: number, y: number, low: number, high: number, radius: number): void {
  const inner = radius > TOUCH_MM ? radius - TOUCH_MM : 0
  for (let i = 0; i < beams.count; i++) {
    const px = beams.originX[i]! - x
    const py = beams.originY[i]! - y
    const dx = beams.directionX[i]!
    const dy = beams.directionY[i]!
    let near = -Infinity
    let first = -Infinity
    let last = Infinity
    // the round side
    const a = dx * dx + dy * dy
    if (a > 0) {
      const speed = Math.sqrt(a)
      const offset = px * (dy / speed) - py * (dx / speed) // dx / speed is exactly 1 along an axis: a tangent there stays one
      const chord = inner * inner - offset * offset
      if (chord <= 0) continue
      const middle = -(px * dx + py * dy) / a
      const half = Math.sqrt(chord / a)
      near = middle - Math.sqrt((radius * radius - offset * offset) / a)
      first = middle - half
      last = middle + half
    } else if (px * px + py * py >= inner * inner) continue
    // between its heights
    const o = beams.originZ[i]!
    const d = beams.directionZ[i]!
    if (d !== 0) {
      const enter = ((d > 0 ? low : high) - o) / d
      const leave = ((d > 0 ? high : low) - o) / d
      const skin = TOUCH_MM / (d > 0 ? d : -d)
      near = Math.max(near, enter)
      first = Math.max(first, enter + skin)
      last = Math.min(last, leave - skin)
    } else if (o <= low + TOUCH_MM || o >= high - TOUCH_MM) continue
    if (first < last && last > 0) {
      const t = near > 0 ? near : 0
      if (t < out[i]!) out[i] = t
    }
  }
}
