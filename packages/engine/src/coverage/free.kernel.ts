// Whether a standing body overlaps an obstacle in space. Doorway frame, mm. Touching is not overlapping.
import { TOUCH_MM } from '../space/touch.ts'

/** KERNEL. In the plan, an upright box at (x, y) against an upright box at (qx, qy). */
export function boxesOverlap(
  x: number,
  y: number,
  halfA: number,
  halfB: number,
  cosYaw: number,
  sinYaw: number,
  qx: number,
  qy: number,
  halfC: number,
  halfD: number,
  cosOther: number,
  sinOther: number,
): boolean {
  const px = x - qx
  const py = y - qy
  // cosine and sine of the yaw between them
  const c = Math.abs(cosYaw * cosOther + sinYaw * sinOther)
  const s = Math.abs(sinYaw * cosOther - cosYaw * sinOther)
  return (
    Math.abs(px * cosYaw + py * sinYaw) < halfA + halfC * c + halfD * s - TOUCH_MM &&
    Math.abs(py * cosYaw - px * sinYaw) < halfB + halfC * s + halfD * c - TOUCH_MM &&
    Math.abs(px * cosOther + py * sinOther) < halfC + halfA * c + halfB * s - TOUCH_MM &&
    Math.abs(py * cosOther - px * sinOther) < halfD + halfA * s + halfB * c - TOUCH_MM
  )
}

/** KERNEL. In the plan, an upright box at (x, y) against a disc at (qx, qy). */
export function boxOverlapsDisc(
  x: number,
  y: number,
  halfA: number,
  halfB: number,
  cosYaw: number,
  sinYaw: number,
  qx: number,
  qy: number,
  radius: number,
): boolean {
  const px = qx - x
  const py = qy - y
  const u = Math.max(0, Math.abs(px * cosYaw + py * sinYaw) - halfA)
  const v = Math.max(0, Math.abs(py * cosYaw - px * sinYaw) - halfB)
  return u * u + v * v < (radius - TOUCH_MM) * (radius - TOUCH_MM)
}
