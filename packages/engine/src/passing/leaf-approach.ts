import type { Stance } from '../coverage/scene.ts'
import type { Door, DoorState, Leaf } from '../model/door.ts'
import { type TurningLeaf, turningLeaf } from '../motion/turning-leaf.ts'
import { halfAlong, leafPlane } from './leaf-plane.ts'
import type { TurningPassage } from './turning-passage.ts'
import { turningPassages } from './turning-ways.ts'

/** Where a leaf comes to whoever approaches it, and when it is out of the way again, however it runs. mm. */
export interface LeafApproach {
  /** Way to go when fully open. */
  readonly way_mm: number
  /** So far before y = 0 is the middle of a body when it comes to where the leaf ever is; undefined where it never does at this x. */
  readonly reach_mm: (stance: Stance, x_mm: number, from: 'a' | 'b') => number | undefined
  /** An opening leaf is clear of it from this way on, wherever on its way the body is; above `way_mm` where the open leaf is in its way as well. */
  readonly clear_mm: (stance: Stance, x_mm: number) => number
}

/** It turns, and nobody said how it is hung. */
export function isUnhung({ travel, hinged }: Leaf): boolean {
  return travel === 'turning' && hinged === undefined
}

/** Of a leaf that goes down or along, the reach is that of its slab. Undefined where nobody described the leaf. */
export function leafApproach(door: Door, state: DoorState): LeafApproach | undefined {
  const turning = turningLeaf(door)
  if (turning !== undefined) return approachOfTurning(turning)
  const plane = leafPlane(door, state)
  if (plane === undefined) return undefined
  const { way_mm, half_mm, met } = plane
  return {
    way_mm,
    reach_mm: (stance) => half_mm + halfAlong(stance).y_mm,
    clear_mm: (stance, x_mm) => Math.max(...met(stance, x_mm).map(({ clear }) => clear)),
  }
}

const NOT_SEEN = { views: [], standing: [] } as const

/** Where the leaf comes is looked for at this body and x alone: a hinge is passed nearer than the far end of the swing. */
function approachOfTurning(leaf: TurningLeaf): LeafApproach {
  const passages = (stance: Stance, x_mm: number, from: 'a' | 'b') => turningPassages(leaf, stance, x_mm, from, NOT_SEEN)
  return {
    way_mm: leaf.way_mm,
    reach_mm: (stance, x_mm, from) => {
      const reached = passages(stance, x_mm, from).map((each) => -firstReached_mm(each))
      return reached.length === 0 ? undefined : Math.max(...reached)
    },
    clear_mm: (stance, x_mm) => {
      const ways = passages(stance, x_mm, 'b').map(({ reached, enter_mm, leave_mm }) => reached(enter_mm, leave_mm)?.clear ?? 0)
      const most = Math.max(0, ...ways)
      return most < leaf.way_mm ? most : leaf.way_mm + OPEN_MM
    },
  }
}

/** The open leaf itself stands in the way: no opening is enough. */
const OPEN_MM = 1
const NEAR_MM = 0.5

/** The last place before which the leaf, wherever it is, does not come to the body, to half a millimetre toward too early. */
function firstReached_mm({ reached, enter_mm, leave_mm }: TurningPassage): number {
  let [before, after] = [enter_mm, leave_mm]
  while (after - before > NEAR_MM) {
    const middle = (before + after) / 2
    if (reached(enter_mm, middle) === undefined) before = middle
    else after = middle
  }
  return before
}
