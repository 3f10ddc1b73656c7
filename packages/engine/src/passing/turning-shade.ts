import { type LeafSolid, sightBehindLeaf, sightBehindSolids } from '../coverage/leaf-sight.ts'
import type { CountedField } from '../coverage/scene.ts'
import type { TolerantField } from '../coverage/tile-scene.ts'
import type { Door, DoorState, Leaf } from '../model/door.ts'
import { slabsAt, type TurningLeaf, turningLeaf } from '../motion/turning-leaf.ts'

/** The ways that a leaf runs over are cut into at most so many, each with the room that a panel needs for all of it. */
const MOST_PARTS = 32
const PART_MM = 60
const FAR_MM = 1e6

/**
 * What a field sees with the leaf where its edge has this way still to go, and wherever it has more. A leaf that goes down or along fills more the farther
 * it has come; one that turns comes out of where it was, and all that it runs over from there to fully open counts as leaf.
 */
export function sightWithLeaf(
  door: Door & { readonly leaf: Leaf },
  state: DoorState,
  counted: CountedField,
  way_mm: number,
): TolerantField {
  const turning = turningLeaf(door)
  if (turning === undefined) return sightBehindLeaf(door, state, counted, way_mm)
  const room = (beside_mm: number, before_mm: number) => roomOfTurning(turning, door, state, way_mm, beside_mm, before_mm)
  return sightBehindSolids(door, state, counted, room)
}

/** Each panel half-way through each part of the way, wider and longer all round by what any of its points moves in half of the part. */
function roomOfTurning(
  leaf: TurningLeaf,
  { opening }: Door,
  state: DoorState,
  way_mm: number,
  beside_mm: number,
  before_mm: number,
): readonly LeafSolid[] {
  const length_mm = leaf.way_mm - way_mm
  const parts = Math.min(MOST_PARTS, Math.max(1, Math.ceil(length_mm / PART_MM)))
  const moved_mm = (leaf.ratio * length_mm) / parts / 2
  const [low_mm, high_mm] = heightsOf(opening, state)
  return Array.from({ length: parts }, (_, i) => way_mm + ((i + 0.5) * length_mm) / parts).flatMap((at_mm) =>
    leaf.swings.flatMap((swing) =>
      slabsAt(swing, at_mm).map(({ half_mm, length_mm: panel_mm, ...frame }): LeafSolid => {
        const [besides_mm, beyond_mm] = [half_mm + moved_mm + beside_mm, moved_mm + Math.max(beside_mm, before_mm)]
        return { frame, x: [-beyond_mm, panel_mm + beyond_mm], y: [-besides_mm, besides_mm], z: [low_mm, high_mm] }
      }),
    ),
  )
}

/** A leaf that turns keeps its height: where the open one was measured, its underside is known. */
export function heightsOf({ height_mm }: Door['opening'], { obstacles }: DoorState): readonly [low_mm: number, high_mm: number] {
  const parked = obstacles.filter(({ implied, id }) => implied && id.startsWith('parked-leaf'))
  const low_mm = parked.length === 0 ? -FAR_MM : Math.min(...parked.map(({ from_mm }) => from_mm))
  return [low_mm, Math.max(height_mm, ...parked.map(({ to_mm }) => to_mm))]
}
