// Where along a beam the entry point may lie. Doorway frame, mm.
import type { FloorPieces } from '../space/floor.ts'
import type { Beams } from './beams.ts'

/**
 * KERNEL. Writes the stretches [from, to] of beam i, within [near, far], in which the height above the floor under the beam lies
 * between `clearance` and `top`, into `outFrom` and `outTo` from index `at` on; returns the index after the last. Stretches that touch are joined.
 */
export function heightWindows(
  outFrom: Float64Array,
  outTo: Float64Array,
  at: number,
  beams: Beams,
  i: number,
  floor: FloorPieces,
  near: number,
  far: number,
  clearance: number,
  top: number,
): number {
  const { count, from, y, z, slope, slopeX } = floor
  const ox = beams.originX[i]!
  const oy = beams.originY[i]!
  const oz = beams.originZ[i]!
  const dx = beams.directionX[i]!
  const dy = beams.directionY[i]!
  const dz = beams.directionZ[i]!
  let end = at
  // the piece under the start of the stretch
  const startY = oy + near * dy
  let piece = count - 1
  while (piece > 0 && startY < from[piece]!) piece--
  if (dy < 0 && piece > 0 && startY === from[piece]!) piece--
  let begin = near
  while (begin <= far) {
    let leave = far
    let last = true
    if (dy > 0 && piece + 1 < count) {
      const t = (from[piece + 1]! - oy) / dy
      if (t < far) {
        leave = t
        last = false
      }
    } else if (dy < 0 && piece > 0) {
      const t = (from[piece]! - oy) / dy
      if (t < far) {
        leave = t
        last = false
      }
    }
    // clearance <= height + rising * t <= top
    const height = oz - (z[piece]! + (oy - y[piece]!) * slope[piece]! + slopeX * ox)
    const rising = dz - dy * slope[piece]! - dx * slopeX
    let a = begin
    let b = leave
    if (rising > 0) {
      a = Math.max(a, (clearance - height) / rising)
      b = Math.min(b, (top - height) / rising)
    } else if (rising < 0) {
      a = Math.max(a, (top - height) / rising)
      b = Math.min(b, (clearance - height) / rising)
    } else if (height < clearance || height > top) b = -1
    if (a <= b) {
      if (end > at && outTo[end - 1]! >= a) outTo[end - 1] = b
      else {
        outFrom[end] = a
        outTo[end] = b
        end++
      }
    }
    if (last) break
    begin = leave
    piece += dy > 0 ? 1 : -1
  }
  return end
}
