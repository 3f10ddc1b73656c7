import type { Door, DoorState, Tolerances } from '../model/door.ts'
import type { Zone } from '../model/zone.ts'
import { blindOutlines } from './blind-outline.ts'
import { exactTrees, isProved, questionsOf } from './exact-trees.ts'
import { openArea } from './open-region.ts'

export type ToleranceName = keyof Tolerances
export const TOLERANCE_NAMES: readonly ToleranceName[] = [
  'length_mm',
  'position_mm',
  'tilt_rad',
  'roll_rad',
  'yaw_rad',
  'floor_mm',
  'range',
]

/** What one tolerance costs: the area that stays open with all of them, less the area with this one exact. */
export interface ToleranceCost {
  readonly name: ToleranceName
  readonly area_mm2: number
}

/** Which tolerance stands in the way of a pass, and how tight it must be, all others as stated; `all` where no single one is enough. */
export interface Binding {
  readonly name: ToleranceName | 'all'
  /** For `all` the share of every tolerance at which the proof succeeds; otherwise the value of the one. 0 if even nothing left is not proved. */
  readonly tightTo: number
}

const COARSE_MM = 12.5 // tiles for the costs, which are compared with each other only

/** The cost of every tolerance that is not 0, largest first. */
export function toleranceCosts(door: Door, zone: Zone, state: DoorState, stated: Tolerances): readonly ToleranceCost[] {
  const left = Math.floor(questionsOf(door) / 4)
  const open = (tolerances: Tolerances) => openArea(blindOutlines(exactTrees(door, zone, state, tolerances, COARSE_MM, { left })))
  const all = open(stated)
  const costs = TOLERANCE_NAMES.filter((name) => stated[name] > 0).map((name) => ({ name, area_mm2: all - open({ ...stated, [name]: 0 }) }))
  return costs.sort((a, b) => b.area_mm2 - a.area_mm2)
}

const HALVINGS = 5

/** @param costs in which order to ask, the dearest first */
export function bindingTolerance(door: Door, zone: Zone, state: DoorState, stated: Tolerances, costs: readonly ToleranceCost[]): Binding {
  const budget = { left: 2 * questionsOf(door) } // for all tries together
  const proved = (tolerances: Tolerances) => isProved(door, zone, state, tolerances, budget)
  for (const { name } of costs) {
    if (!proved({ ...stated, [name]: 0 })) continue
    return { name, tightTo: stated[name] * tightest((share) => proved({ ...stated, [name]: stated[name] * share })) }
  }
  return { name: 'all', tightTo: tightest((share) => proved(scaled(stated, share))) }
}

function scaled(stated: Tolerances, share: number): Tolerances {
  return Object.fromEntries(TOLERANCE_NAMES.map((name) => [name, stated[name] * share])) as unknown as Tolerances
}

/** The largest share found by halving at which `proved` holds; it need not hold above, and is tried at each share that is told. */
function tightest(proved: (share: number) => boolean): number {
  let good = 0
  let bad = 1
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (good + bad) / 2
    if (proved(middle)) good = middle
    else bad = middle
  }
  return good
}
