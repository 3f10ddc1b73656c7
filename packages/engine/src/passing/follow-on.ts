import { offsetOf } from '../coverage/parts-along.ts'
import type { Stance } from '../coverage/scene.ts'
import { type BodyPart, type BoxPosture, partsOf } from '../model/body.ts'
import { halfAlong } from './leaf-plane.ts'

/**
 * A body with a second one close ahead of it or behind, so far from back to front: the second one is seen too, and shades the first. The stance is that of
 * the first, with parts about its own middle; the second never counts as met by the leaf.
 */
export function withAnother(self: Stance, other: Stance, gap_mm: number, isAhead: boolean): Stance {
  const apart_mm = halfAlong(self).y_mm + gap_mm + halfAlong(other).y_mm
  const away_mm = isAhead ? apart_mm : -apart_mm
  const parts = [
    ...ownParts(self),
    ...ownParts(other).map((part): BodyPart => ({ ...part, alongY_mm: part.alongY_mm + away_mm, shadesOnly: true })),
  ]
  const { name, ...box } = self.posture.shape === 'box' ? self.posture : { name: self.posture.name, c_mm: self.posture.height_mm }
  const [a_mm, b_mm] = [2 * halfAlong(self).x_mm, 2 * halfAlong(self).y_mm]
  const posture: BoxPosture = { shape: 'box', name, a_mm, b_mm, c_mm: box.c_mm, yawFrom_rad: 0, yawTo_rad: 0, parts }
  return { body: self.body, posture, index: self.index, yaw_rad: 0 }
}

/** Its parts, or the one that it is, turned as it is. */
function ownParts({ body, posture, yaw_rad }: Stance): readonly BodyPart[] {
  const whole = { name: '', alongX_mm: 0, alongY_mm: 0, from_mm: 0, reflectance: body.reflectance }
  if (posture.shape === 'cylinder') return [{ shape: 'cylinder', ...whole, radius_mm: posture.radius_mm, height_mm: posture.height_mm }]
  const { a_mm, b_mm, c_mm } = posture
  const parts = partsOf(posture) ?? [{ shape: 'box', ...whole, a_mm, b_mm, c_mm } as const]
  return parts.map((part): BodyPart => {
    const [alongX_mm, alongY_mm] = offsetOf(part, yaw_rad)
    return { ...part, alongX_mm, alongY_mm, turn_rad: (part.turn_rad ?? 0) + yaw_rad }
  })
}
