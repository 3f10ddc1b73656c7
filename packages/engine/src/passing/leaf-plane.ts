import type { Stance } from '../coverage/scene.ts'
import type { Door, DoorState } from '../model/door.ts'
import { type FloorPieces, floorHeight, floorPieces } from '../space/floor.ts'
import { turnOf } from '../space/trigonometry.ts'

/** The slab in which a leaf runs that goes down or along x, and how far its edge goes. mm. */
export interface LeafPlane {
  /** Way to go when fully open. */
  readonly way_mm: number
  /** To either side of y = 0, bulge included. */
  readonly half_mm: number
  /** What a body must leave free: it is met where the edge has less than this still to go. */
  readonly clear: (stance: Stance, x_mm: number) => number
}

/** Undefined for a leaf that turns, which is not computed, and where nobody described it. */
export function leafPlane({ leaf, opening }: Door, state: DoorState): LeafPlane | undefined {
  if (leaf === undefined || leaf.travel === 'turning') return undefined
  const half_mm = leaf.thickness_mm / 2 + leaf.bulge_mm
  const { width_mm, height_mm } = opening
  const floor = floorPieces(state.floor)
  const middle_mm = width_mm / 2
  switch (leaf.travel) {
    case 'down': {
      const shut_mm = highest(floor, [0, width_mm], half_mm)
      const clear = (stance: Stance, x_mm: number) => {
        const { posture } = stance
        const top_mm = posture.shape === 'box' ? posture.c_mm : posture.height_mm
        return highest(floor, [x_mm], half_mm + halfAlong(stance).y_mm) + top_mm - shut_mm
      }
      return { way_mm: height_mm - shut_mm, half_mm, clear }
    }
    case 'toward-zero':
      return { way_mm: width_mm, half_mm, clear: (stance, x_mm) => x_mm + halfAlong(stance).x_mm }
    case 'toward-width':
      return { way_mm: width_mm, half_mm, clear: (stance, x_mm) => width_mm - x_mm + halfAlong(stance).x_mm }
    case 'both-inward':
      return { way_mm: middle_mm, half_mm, clear: (stance, x_mm) => Math.abs(x_mm - middle_mm) + halfAlong(stance).x_mm }
  }
}

/** Half of the body's extent along x and y at its yaw. */
export function halfAlong({ posture, yaw_rad }: Stance): { readonly x_mm: number; readonly y_mm: number } {
  if (posture.shape === 'cylinder') return { x_mm: posture.radius_mm, y_mm: posture.radius_mm }
  const [cosYaw, sinYaw] = turnOf(yaw_rad)
  const [c, s] = [Math.abs(cosYaw) / 2, Math.abs(sinYaw) / 2]
  return { x_mm: c * posture.a_mm + s * posture.b_mm, y_mm: s * posture.a_mm + c * posture.b_mm }
}

/** Straight between its bends, the floor is highest on one of them or at an end. */
function highest(floor: FloorPieces, xs_mm: readonly number[], half_mm: number): number {
  const bends = Array.from(floor.from).filter((y) => y > -half_mm && y < half_mm)
  return Math.max(...[-half_mm, ...bends, half_mm].flatMap((y) => xs_mm.map((x) => floorHeight(floor, x, y))))
}
