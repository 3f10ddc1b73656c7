import { offsetOf } from '../coverage/parts-along.ts'
import type { Stance } from '../coverage/scene.ts'
import { type BodyPart, type Posture, partsOf } from '../model/body.ts'
import type { Door, DoorState } from '../model/door.ts'
import { type FloorPieces, floorHeight, floorPieces } from '../space/floor.ts'
import { turnOf } from '../space/trigonometry.ts'

/** The slab in which a leaf runs that goes down or along x, and how far its edge goes. mm. */
export interface LeafPlane {
  /** Way to go when fully open. */
  readonly way_mm: number
  /** To either side of y = 0, bulge included. */
  readonly half_mm: number
  /** What of a body whose middle keeps one x the leaf can meet, each part for itself; never empty. */
  readonly met: (stance: Stance, x_mm: number) => readonly MetPart[]
}

/** A part of a body, or all of it, as the leaf meets it. */
export interface MetPart {
  /** Undefined where the body is of one part. */
  readonly name: string | undefined
  /** Among the parts of the body. */
  readonly index: number
  /** Its extent along y from the body's middle. */
  readonly from_mm: number
  readonly to_mm: number
  /** It is met where the edge has less than this still to go. */
  readonly clear: number
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
      const met = (stance: Stance, x_mm: number) => {
        const stands_mm = highest(floor, [x_mm], half_mm + halfAlong(stance).y_mm)
        return metParts(stance, ({ top_mm }) => stands_mm + top_mm - shut_mm)
      }
      return { way_mm: height_mm - shut_mm, half_mm, met }
    }
    case 'toward-zero':
      return { way_mm: width_mm, half_mm, met: (stance, x_mm) => metParts(stance, (solid) => x_mm + solid.x_mm + solid.halfX_mm) }
    case 'toward-width':
      return {
        way_mm: width_mm,
        half_mm,
        met: (stance, x_mm) => metParts(stance, (solid) => width_mm - x_mm - solid.x_mm + solid.halfX_mm),
      }
    case 'both-inward': {
      const clear = (x_mm: number, solid: Solid) => Math.abs(x_mm + solid.x_mm - middle_mm) + solid.halfX_mm
      return { way_mm: middle_mm, half_mm, met: (stance, x_mm) => metParts(stance, (solid) => clear(x_mm, solid)) }
    }
  }
}

/** A part about the body's middle, or all of it. mm, doorway frame. */
interface Solid {
  readonly name: string | undefined
  readonly x_mm: number
  readonly y_mm: number
  readonly halfX_mm: number
  readonly halfY_mm: number
  readonly top_mm: number
}

/** Parts that are met whenever another one is, and no sooner, are left out. */
function metParts(stance: Stance, clear: (solid: Solid) => number): readonly MetPart[] {
  const met = solidsOf(stance).map((solid, index) => {
    const { name, y_mm, halfY_mm } = solid
    return { name, index, from_mm: y_mm - halfY_mm, to_mm: y_mm + halfY_mm, clear: clear(solid) }
  })
  const covers = (a: MetPart, b: MetPart) => a.from_mm <= b.from_mm && a.to_mm >= b.to_mm && a.clear >= b.clear
  return met.filter((part, i) => !met.some((other, k) => k !== i && covers(other, part) && (k < i || !covers(part, other))))
}

function solidsOf(stance: Stance): readonly Solid[] {
  const { posture, yaw_rad } = stance
  const parts = partsOf(posture)
  if (parts === undefined) {
    const half = halfAlong(stance)
    const top_mm = posture.shape === 'box' ? posture.c_mm : posture.height_mm
    return [{ name: undefined, x_mm: 0, y_mm: 0, halfX_mm: half.x_mm, halfY_mm: half.y_mm, top_mm }]
  }
  const own = parts.filter(({ shadesOnly }) => shadesOnly !== true)
  return own.map((part) => {
    const [x_mm, y_mm] = offsetOf(part, yaw_rad)
    const half = halfOf(part, yaw_rad + (part.turn_rad ?? 0))
    const top_mm = part.from_mm + (part.shape === 'box' ? part.c_mm : part.height_mm)
    return { name: part.name, x_mm, y_mm, halfX_mm: half.x_mm, halfY_mm: half.y_mm, top_mm }
  })
}

/** Half of the body's extent along x and y at its yaw. */
export function halfAlong({ posture, yaw_rad }: Stance): { readonly x_mm: number; readonly y_mm: number } {
  return halfOf(posture, yaw_rad)
}

function halfOf(posture: Posture | BodyPart, yaw_rad: number): { readonly x_mm: number; readonly y_mm: number } {
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
