import type { CountedField } from '../coverage/scene.ts'
import type { Lane } from '../model/traffic.ts'
import { type Separation, separationAt } from '../passing/separation.ts'
import { foundBefore_mm, type WaySight } from '../passing/way-sights.ts'
import type { FieldSeparation } from './separation-of-field.ts'

/** A field with the standard's rule for it, and its times. */
export type TimedSeparation = Extract<FieldSeparation, { readonly kind: 'known' }> & {
  readonly counted: CountedField
  readonly response_s: number
  readonly hold_s: number
}

/** One body at one place of the lane, from one side, before the field that finds it best. */
export interface ApproachCase {
  readonly sight: WaySight
  readonly timed: TimedSeparation
  /** How far before the leaf it is found. */
  readonly there_mm: number
  /** S. */
  readonly needed_mm: number
  readonly left_mm: number
  readonly by: Separation
}

/** Every body, place and side, before the field that leaves most: any one field stops the leaf. */
export function approachCases(
  sights: readonly WaySight[],
  known: readonly TimedSeparation[],
  stop_s: number,
  { slowest_mm_per_s = 0 }: Lane,
): readonly ApproachCase[] {
  const best = new Map<string, ApproachCase>()
  for (const sight of sights) {
    const timed = known.find(({ counted }) => counted === sight.counted)
    if (!timed) continue
    // whoever walks slower than the lane's slowest stands: that is judged in time, not here
    const there_mm = foundBefore_mm(sight, timed.hold_s * slowest_mm_per_s)
    const { distance_mm, by } = separationAt(timed.rule, timed.response_s + stop_s)
    const found = { sight, timed, there_mm, needed_mm: distance_mm, left_mm: there_mm - distance_mm, by }
    const key = `${sight.stance.body.id} ${sight.stance.index} ${sight.stance.yaw_rad} ${sight.x_mm} ${sight.from}`
    const before = best.get(key)
    if (!before || found.left_mm > before.left_mm) best.set(key, found)
  }
  return [...best.values()]
}

/** The case that leaves least; the first of several. Undefined without any. */
export function worstApproach(...asked: Parameters<typeof approachCases>): ApproachCase | undefined {
  return approachCases(...asked).reduce<ApproachCase | undefined>(
    (worst, each) => (worst === undefined || each.left_mm < worst.left_mm ? each : worst),
    undefined,
  )
}
