import { type Posture, partsOf } from '@sillsight/engine'

/** One upright solid of a body where it stands or lies. Doorway frame, mm. */
export type BodySolid = {
  readonly x_mm: number
  readonly y_mm: number
  readonly from_mm: number
  readonly to_mm: number
  readonly yaw_rad: number
} & (
  | { readonly shape: 'box'; readonly size_mm: readonly [along_mm: number, across_mm: number] }
  | { readonly shape: 'post'; readonly radius_mm: number }
)

/** Where a body is: the middle of its footprint on the floor. */
interface BodyPlace {
  readonly x_mm: number
  readonly y_mm: number
  readonly z_mm: number
  readonly yaw_rad: number
}

/** What a body is drawn as: each of its parts where it has several, never the box around them. For eyes alone. */
export function solidsOfBody(posture: Posture, { x_mm, y_mm, z_mm, yaw_rad }: BodyPlace): readonly BodySolid[] {
  const stands = { x_mm, y_mm, from_mm: z_mm, yaw_rad }
  if (posture.shape === 'cylinder') return [{ ...stands, shape: 'post', to_mm: z_mm + posture.height_mm, radius_mm: posture.radius_mm }]
  const parts = partsOf(posture)
  if (!parts) return [{ ...stands, shape: 'box', to_mm: z_mm + posture.c_mm, size_mm: [posture.a_mm, posture.b_mm] }]
  const [cos, sin] = [Math.cos(yaw_rad), Math.sin(yaw_rad)]
  return parts.map((part): BodySolid => {
    const from_mm = z_mm + part.from_mm
    const place = {
      x_mm: x_mm + part.alongX_mm * cos - part.alongY_mm * sin,
      y_mm: y_mm + part.alongX_mm * sin + part.alongY_mm * cos,
      from_mm,
      yaw_rad: yaw_rad + (part.turn_rad ?? 0),
    }
    return part.shape === 'box'
      ? { ...place, shape: 'box', to_mm: from_mm + part.c_mm, size_mm: [part.a_mm, part.b_mm] }
      : { ...place, shape: 'post', to_mm: from_mm + part.height_mm, radius_mm: part.radius_mm }
  })
}
