import type { Door } from '../model/door.ts'
import type { Field } from '../model/sensor.ts'
import type { Lane } from '../model/traffic.ts'
import { halfAlong } from '../passing/leaf-plane.ts'
import { longestStop_s, separation_mm, speedThatStops_mm_per_s } from '../passing/separation.ts'
import type { ApproachCase, TimedSeparation } from './approach-case.ts'
import type { StopTime } from './stop-time.ts'

/** What a repair is found from, and how it is judged again. */
export interface ApproachQuestion {
  readonly door: Door
  readonly lane: Lane
  readonly stop: Extract<StopTime, { readonly kind: 'known' }>
  readonly worst: ApproachCase
  readonly known: readonly TimedSeparation[]
  readonly judgedBy: (door: Door, known: readonly TimedSeparation[], stop_s: number) => ApproachCase | undefined
}

/** Less than a drive or an output could be set to; taken off what just suffices, so that judging again does not hang on the last bit. */
const SPARE_S = 1e-6
/** The ends of what a field sees are proved to a millimetre. */
const SPARE_MM = 2

/**
 * What alone would be enough, each solved for in closed form from the worst case and then judged again for every body, place and side: the closing speed
 * (`slower_mm_per_s`), the response of the field that finds first (`faster_s`), how far from the middle of the leaf that field has to reach
 * (`wider_mm`). One that judging again does not confirm is left out.
 */
export function approachRepairs(question: ApproachQuestion): Readonly<Record<string, number>> {
  const { door, known, stop, worst, judgedBy } = question
  const { timed, there_mm, sight } = worst
  const leaf_mm = sight.reach_mm - halfAlong(sight.stance).y_mm
  const suffices = (of: Door, among: readonly TimedSeparation[], stop_s: number) => (judgedBy(of, among, stop_s)?.left_mm ?? -1) >= 0
  const repairs: Record<string, number> = {}
  const within_s = longestStop_s(timed.rule, there_mm) - SPARE_S
  if (stop.model) {
    const { delay_s, decel_mm_per_s2 } = stop.model
    const slower = speedThatStops_mm_per_s(within_s - timed.response_s, delay_s, decel_mm_per_s2)
    if (slower !== undefined && suffices(door, known, delay_s + slower / decel_mm_per_s2)) repairs['slower_mm_per_s'] = slower
  }
  const faster_s = within_s - stop.stop_s
  if (faster_s >= 0) {
    const answering = known.map((each) => (each === timed ? { ...each, response_s: faster_s } : each))
    if (suffices(door, answering, stop.stop_s)) repairs['faster_s'] = faster_s
  }
  const wider_mm = widerThatSuffices_mm(question, separation_mm(timed.rule, timed.response_s + stop.stop_s) + leaf_mm)
  if (wider_mm !== undefined) repairs['wider_mm'] = wider_mm
  return repairs
}

/** Beams stand apart: what a wider field still lacks is added a few times. */
const TRIES = 5

/** A field that reaches `solved_mm` finds a front there if a beam is there. */
function widerThatSuffices_mm(question: ApproachQuestion, solved_mm: number): number | undefined {
  let reach_mm = Math.ceil(solved_mm + SPARE_MM)
  for (let n = 0; n < TRIES; n++) {
    const wide = withReach(question, reach_mm)
    const left_mm = wide && question.judgedBy(wide.door, wide.known, question.stop.stop_s)?.left_mm
    if (left_mm === undefined) return undefined
    if (left_mm >= 0) return reach_mm
    reach_mm = Math.ceil(reach_mm - left_mm)
  }
  return undefined
}

/** The door in which the field reaches so far out on the side from which the body comes; undefined where no limit of the field holds it back. */
function withReach({ door, known, worst }: ApproachQuestion, reach_mm: number) {
  const { sensor, field } = worst.timed.counted
  const isFromA = worst.sight.from === 'a'
  const limit_mm = isFromA ? field.yMax_mm : -field.yMin_mm
  if (sensor.kind === 'segment' || !(limit_mm < reach_mm)) return undefined
  const wide: Field = isFromA ? { ...field, yMax_mm: reach_mm } : { ...field, yMin_mm: -reach_mm }
  const changed = { ...sensor, fields: sensor.fields.map((each) => (each === field ? wide : each)) }
  return {
    door: { ...door, sensors: door.sensors.map((each) => (each === sensor ? changed : each)) },
    known: known.map((each) => (each === worst.timed ? { ...each, counted: { sensor: changed, field: wide } } : each)),
  }
}
