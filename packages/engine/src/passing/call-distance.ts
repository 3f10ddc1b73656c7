import type { Braking } from '../model/traffic.ts'
import { type Limits, restToRest, timeOf } from '../motion/profile.ts'
import type { WaySight } from './way-sights.ts'

/** Standard gravity, by definition, in mm/s2. */
const GRAVITY_MM_PER_S2 = 9806.65

/** How long a leaf that opens from rest at shut takes until it has so much way to go. Infinity where it never does. */
export function timeToClear_s(way_mm: number, open: Limits, clear_mm: number): number {
  return clear_mm > way_mm ? Infinity : timeOf(restToRest(way_mm, open), clear_mm)
}

/**
 * How far a vehicle goes from the sight of the leaf until it stands: v t + v^2 / (2 (a - g G)), with the reaction time t, the deceleration a on the level
 * and the fall G of its way. Without a fall, the stopping sight distance of road-design handbooks. Throws where braking does not outdo the fall.
 */
export function stoppingDistance_mm(speed_mm_per_s: number, { reaction_s, decel_mm_per_s2, fall }: Omit<Braking, 'source'>): number {
  const left_mm_per_s2 = decel_mm_per_s2 - GRAVITY_MM_PER_S2 * fall
  if (!(left_mm_per_s2 > 0)) throw new Error(`decel_mm_per_s2 must outdo the fall, got ${decel_mm_per_s2} at a fall of ${fall}`)
  return speed_mm_per_s * reaction_s + (speed_mm_per_s * speed_mm_per_s) / (2 * left_mm_per_s2)
}

/** The speed at which the way is so long that stands for it: the inverse of `way = v t + v^2 / (2 a)`, for t of reaction and waiting together. */
export function speedThatStopsWithin_mm_per_s(way_mm: number, time_s: number, { decel_mm_per_s2, fall }: Omit<Braking, 'source'>): number {
  const a = decel_mm_per_s2 - GRAVITY_MM_PER_S2 * fall
  return a * (Math.sqrt(time_s * time_s + (2 * way_mm) / a) - time_s)
}

/**
 * How far its front is from the leaf's slab when a body comes into the first sight that lasts long enough for the output to answer: from there on the
 * call is on its way. 0 where no sight lasts so long.
 */
export function calledBefore_mm({ visible, reach_mm }: WaySight, least_mm: number): number {
  const first = visible.find(({ from_mm, to_mm }) => to_mm - from_mm >= least_mm)
  return first === undefined ? 0 : Math.max(0, -reach_mm - first.from_mm)
}
