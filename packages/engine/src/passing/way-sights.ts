import { leafChanges } from '../coverage/leaf-sight.ts'
import { type CountedField, type Stance, stancesOfBodies } from '../coverage/scene.ts'
import { type Along, seenAlong } from '../coverage/seen-along.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { Lane } from '../model/traffic.ts'
import { FARTHEST_MM, farthest } from './lane-verdict.ts'
import { allPassing, alongWay, placesAcross } from './lane-ways.ts'
import type { LeafApproach } from './leaf-approach.ts'
import { halfAlong } from './leaf-plane.ts'
import type { Stretch } from './output.ts'
import { sightWithLeaf } from './turning-shade.ts'

/** Where along its way one field sees one body of a lane: at one x, from one side. The way rises; the body's middle passes y = 0 at 0. */
export interface WaySight {
  readonly counted: CountedField
  readonly stance: Stance
  readonly x_mm: number
  readonly from: 'a' | 'b'
  /** The body's front is at the leaf's slab, or at where a leaf that turns ever comes, when its middle is so far before y = 0. */
  readonly reach_mm: number
  readonly visible: readonly Stretch[]
}

/**
 * Every body of a lane, from each side, at the middle and both edges, before each of these fields. Every place of a stretch is proved to be seen
 * (`coverage/seen-along.ts`).
 */
export function waySights(
  door: Door,
  state: DoorState,
  lane: Lane,
  leaf: LeafApproach,
  fields: readonly CountedField[],
): { readonly sights: readonly WaySight[]; readonly yawSampled: boolean } {
  const { stances, yawSampled } = stancesOfBodies(door, lane.bodies, `lane ${lane.id}`)
  const along = fields.map((counted) => ({ counted, seen: alongShut(door, state, counted) }))
  const farthest_mm = Math.min(FARTHEST_MM, farthest(fields.map((counted) => ({ counted }))))
  const ways = allPassing(stances, { ...lane, followGap_mm: undefined })
  const sights = ways.flatMap(({ stance, sides }) => {
    const half = halfAlong(stance)
    const far_mm = farthest_mm + Math.max(2000, half.y_mm)
    return along.flatMap(({ counted, seen }) => {
      const ask = seen(stance)
      return placesAcross(lane, half.x_mm).flatMap((x_mm) => {
        const alongY = ask(x_mm, -far_mm, far_mm)
        return sides.flatMap((from) => {
          const reach_mm = leaf.reach_mm(stance, x_mm, from)
          return reach_mm === undefined ? [] : [{ counted, stance, x_mm, from, reach_mm, visible: alongWay(alongY, from) }]
        })
      })
    })
  })
  return { sights, yawSampled }
}

/** A field whose sight the leaf changes is asked behind the shut leaf, where least is seen, or behind all that a leaf that turns runs over; in a window of the edge that holds it, it sees nothing. */
function alongShut(door: Door, state: DoorState, counted: CountedField): Along {
  const { leaf } = door
  if (!leaf || !leafChanges(counted.field)) return seenAlong(door, state, counted)
  if (counted.field.blanking.some(({ from_mm }) => from_mm <= 0)) return () => () => []
  return seenAlong(door, state, counted, sightWithLeaf({ ...door, leaf }, state, counted, 0))
}

/**
 * How far its front is from the leaf's slab when a body comes into a sight that then lasts until it is there: gaps of at most `bridged_mm` aside.
 * 0 where the sight does not last until then.
 */
export function foundBefore_mm({ visible, reach_mm }: WaySight, bridged_mm: number): number {
  let from_mm = Number.NaN
  let to_mm = -Infinity
  for (const stretch of visible) {
    if (stretch.from_mm > -reach_mm) break
    if (stretch.from_mm > to_mm + bridged_mm) from_mm = stretch.from_mm
    to_mm = stretch.to_mm
  }
  return to_mm + bridged_mm >= -reach_mm ? -reach_mm - from_mm : 0
}
