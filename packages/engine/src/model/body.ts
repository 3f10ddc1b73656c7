import type { Source } from './source.ts'

/** A test body: what stands or lies in for somebody. Named by size, never by whom it stands for. */
export interface Body {
  readonly id: string
  readonly name: string
  readonly reflectance: number // 0 < rho <= 1, diffuse
  readonly postures: readonly Posture[] // never empty
  readonly source: Source
}

/** Upright box (one that `lies` comes about by a fall and does not pass by itself): a along x, b along y at yaw 0, c the height. A yaw range means every yaw in it; equal ends mean one. */
export interface BoxPosture {
  readonly shape: 'box'
  readonly name: string
  readonly a_mm: number
  readonly b_mm: number
  readonly c_mm: number
  readonly yawFrom_rad: number
  readonly yawTo_rad: number
  readonly lies?: boolean
  /** What fills the box, never empty where given: the sizes above are then those of the box around all parts. Absent where the whole box is the body. */
  readonly parts?: readonly BodyPart[] | undefined
}

/** One upright solid of a body of several parts. At yaw 0 the body goes toward +y; on its way from side A it is turned by half a turn. */
export type BodyPart = PartPlace & (PartBox | PartCylinder)
interface PartPlace {
  readonly name: string
  /** Middle of the part from the middle of the box around all parts, along x and along y at yaw 0. */
  readonly alongX_mm: number
  readonly alongY_mm: number
  /** Height of its underside above the floor under the body's middle. */
  readonly from_mm: number
  readonly reflectance: number
  /** Its own yaw, beside that of the whole; 0 if absent. */
  readonly turn_rad?: number
  /** It belongs to another body ahead or behind: it hides and is seen, and the leaf does not meet it. */
  readonly shadesOnly?: boolean
}
interface PartBox {
  readonly shape: 'box'
  readonly a_mm: number
  readonly b_mm: number
  readonly c_mm: number
}
interface PartCylinder {
  readonly shape: 'cylinder'
  readonly radius_mm: number
  readonly height_mm: number
}

/** Upright cylinder. */
export interface CylinderPosture {
  readonly shape: 'cylinder'
  readonly name: string
  readonly radius_mm: number
  readonly height_mm: number
  readonly lies?: boolean
}
export type Posture = BoxPosture | CylinderPosture

/** Has a posture of several parts. */
export function isOfParts({ postures }: Body): boolean {
  return postures.some((posture) => partsOf(posture) !== undefined)
}

/** The parts of a posture that has several; undefined for a plain box or cylinder. */
export function partsOf(posture: Posture): readonly BodyPart[] | undefined {
  return posture.shape === 'box' ? posture.parts : undefined
}
