import type { FloorPieces } from '../space/floor.ts'
import { floorHeight } from '../space/floor.ts'
import type { Beams } from './beams.ts'
import { enterBox, enterCylinder } from './entry.kernel.ts'
import { type ReachParameters, reach } from './reach.ts'
import type { Shape } from './shape.ts'
import type { FieldLimits } from './windows.ts'

/** Everything that decides whether a beam of one sensor sees a body in one field. */
export interface Sight {
  readonly beams: Beams
  readonly floor: FloorPieces
  readonly limits: FieldLimits
  /** Background less margin for a ranging beam (the entry point must come before it); the length for a segment. */
  readonly ends_mm: Float64Array
  readonly reach: ReachParameters
  /** A segment is interrupted wherever the body's interior meets it; nothing else counts. */
  readonly segments: boolean
}

/**
 * The one predicate: whether beam i sees a body of `shape` standing at (x, y) (docs/method.md, section 2). The fast maps settle
 * with it whatever lies close to a limit, so that they agree with it in every cell.
 *
 * @param scratch three numbers, overwritten: entry distance, cosine of incidence, exit distance
 */
export function beamSees(sight: Sight, i: number, shape: Shape, x_mm: number, y_mm: number, scratch: Float64Array): boolean {
  const { beams, floor, limits } = sight
  const ox = beams.originX[i] as number
  const oy = beams.originY[i] as number
  const oz = beams.originZ[i] as number
  const dx = beams.directionX[i] as number
  const dy = beams.directionY[i] as number
  const dz = beams.directionZ[i] as number
  const under = floorHeight(floor, x_mm, y_mm)
  const { halfA, halfB, low, high, cosYaw, sinYaw } = shape
  const hit = shape.round
    ? enterCylinder(scratch, ox, oy, oz, dx, dy, dz, x_mm, y_mm, under, halfA, low, high)
    : enterBox(scratch, ox, oy, oz, dx, dy, dz, x_mm, y_mm, under, halfA, halfB, low, high, cosYaw, sinYaw)
  if (!hit) return false
  const t = scratch[0] as number
  const end = sight.ends_mm[i] as number
  if (sight.segments) return t < end && (scratch[2] as number) > 0
  // A body around the origin has no entry point, and one behind it is not met.
  if (!(t > 0 && t < end)) return false
  if (t > reach(shape.reflectance * (scratch[1] as number), sight.reach)) return false
  // A point on a face that is square to an axis lies on it exactly, whatever rounding did to t: limits that are just met count.
  const square = !shape.round && sinYaw === 0 && cosYaw === 1
  const sideX = dx > 0 ? -halfA : halfA
  const sideY = dy > 0 ? -halfB : halfB
  const levelFace = dz > 0 ? low : high
  const px = square && (sideX - (ox - x_mm)) / dx === t ? x_mm + sideX : ox + t * dx
  const py = square && (sideY - (oy - y_mm)) / dy === t ? y_mm + sideY : oy + t * dy
  const pz = (levelFace - (oz - under)) / dz === t ? under + levelFace : oz + t * dz
  if (px < limits.xMin_mm || px > limits.xMax_mm || py < limits.yMin_mm || py > limits.yMax_mm) return false
  const height = pz - floorHeight(floor, px, py)
  return height >= limits.clearance_mm && height <= limits.top_mm
}
