import type { Source } from './source.ts'

/** A test body: what stands or lies in for somebody. Named by size, never by whom it stands for. */
export interface Body {
  readonly id: string
  readonly name: string
  readonly reflectance: number // 0 < rho <= 1, diffuse
  readonly postures: readonly Posture[] // never empty
  readonly source: Source
}

/** Upright box: a along x, b along y at yaw 0, c the height. A yaw range means every yaw in it; equal ends mean one. */
export interface BoxPosture {
  readonly shape: 'box'
  readonly name: string
  readonly a_mm: number
  readonly b_mm: number
  readonly c_mm: number
  readonly yawFrom_rad: number
  readonly yawTo_rad: number
}
/** Upright cylinder. */
export interface CylinderPosture {
  readonly shape: 'cylinder'
  readonly name: string
  readonly radius_mm: number
  readonly height_mm: number
}
export type Posture = BoxPosture | CylinderPosture
