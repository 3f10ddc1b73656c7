import type { BodyPart, Posture } from '../model/body.ts'
import { turnOf } from '../space/trigonometry.ts'

/** A body in one posture at one yaw, shrunk all round by the radius of the spot, ready for loops. mm. */
export interface Shape {
  readonly round: boolean
  readonly halfA: number // the radius of a cylinder
  readonly halfB: number
  /** Interior between these heights above the floor under the centre. */
  readonly low: number
  readonly high: number
  readonly cosYaw: number
  readonly sinYaw: number
  readonly reflectance: number
}

/** @param spotRadius_mm a beam is a line; shrinking the body instead of widening the beam errs toward blind */
export function shapeOf(posture: Posture, yaw_rad: number, reflectance: number, spotRadius_mm: number): Shape {
  if (posture.shape === 'cylinder') {
    const radius = posture.radius_mm - spotRadius_mm
    return {
      round: true,
      halfA: radius,
      halfB: radius,
      low: spotRadius_mm,
      high: posture.height_mm - spotRadius_mm,
      cosYaw: 1,
      sinYaw: 0,
      reflectance,
    }
  }
  const [cosYaw, sinYaw] = turnOf(yaw_rad)
  return {
    round: false,
    halfA: posture.a_mm / 2 - spotRadius_mm,
    halfB: posture.b_mm / 2 - spotRadius_mm,
    low: spotRadius_mm,
    high: posture.c_mm - spotRadius_mm,
    cosYaw,
    sinYaw,
    reflectance,
  }
}

/** One part of a body of several, about its own middle; its heights are those above the floor under the body's middle. */
export function shapeOfPart(part: BodyPart, yaw_rad: number, spotRadius_mm: number): Shape {
  const { from_mm, reflectance } = part
  const posture: Posture = part.shape === 'box' ? { ...part, yawFrom_rad: 0, yawTo_rad: 0 } : part
  const shape = shapeOf(posture, yaw_rad + (part.turn_rad ?? 0), reflectance, spotRadius_mm)
  return { ...shape, low: from_mm + shape.low, high: from_mm + shape.high }
}

/** Nothing of the body is left inside the spot. */
export function isEmpty({ halfA, halfB, low, high }: Shape): boolean {
  return !(halfA > 0 && halfB > 0 && high > low)
}
