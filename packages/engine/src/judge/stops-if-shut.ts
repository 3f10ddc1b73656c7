import type { DoorState } from '../model/door.ts'
import type { OutsideValue } from '../model/source.ts'
import type { Braking, Lane } from '../model/traffic.ts'
import { speedThatStopsWithin_mm_per_s, stoppingDistance_mm } from '../passing/call-distance.ts'
import { type Call, callingLanes, callsOf } from './call-case.ts'
import { orNoSubject, quantity, step } from './drafts.ts'
import { fieldFacts } from './fields.ts'
import { laneFacts, laneRestsOn } from './lane-passing.ts'
import { DRIVE, fieldPath, lanePath } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'

/**
 * If the door that was called stays shut, the vehicle still stops before it: the driver sees it when the leaf ought to have begun to open. Measured is how
 * far before the leaf the call is on its way, the limit is the way until then and the stopping distance. For each lane of vehicles and state.
 *
 * Facts: `laneFacts`; where judged `fieldFacts`, `from`, `lane_mm_per_s`, `wait_s` (response and delay), `reaction_s`, `stopping_mm`, `left_mm`, on a fail
 * `slower_mm_per_s` (pace that would do).
 */
export const stopsIfShut: Rule = {
  id: 'stops-if-shut',
  source: {
    basis: 'our decision',
    document: 'docs/method.md',
    clause: 'Call',
    note: 'the stopping distance of road handbooks, from where the leaf ought to have begun to open',
  },
  judge: (context) =>
    orNoSubject(callingLanes(context).flatMap((lane) => context.door.states.map((state) => draftOf(context, lane, state)))),
}

function draftOf(context: Context, lane: Lane, state: DoorState): Draft {
  const { door } = context
  const answer = callsOf(context, lane, state)
  const { braking } = lane
  const rests = laneRestsOn(context, lane, ['opening', 'call'])
  const frame = {
    subject: { kind: 'lane', id: lane.id } as const,
    state: state.id,
    facts: laneFacts(lane, state),
    restsOn: braking ? { ...rests, values: [...rests.values, decelerationOf(lane, braking)] } : rests,
    steps: [],
  }
  if (answer.kind === 'not-computable') return { ...frame, verdict: 'undetermined', reason: 'not-computable', needs: [] }
  const needs = [...(answer.kind === 'missing' ? answer.needs : []), ...(braking ? [] : [`${lanePath(door, lane)}/braking`])]
  if (answer.kind === 'missing' || !braking) return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs }
  const { speed_mm_per_s, openDelay_s } = answer
  const stopping_mm = stoppingDistance_mm(speed_mm_per_s, braking)
  const neededBy = ({ response_s }: Call) => speed_mm_per_s * (response_s + openDelay_s) + stopping_mm
  const left = (call: Call) => call.called_mm - neededBy(call)
  const worst = answer.calls.reduce<Call | undefined>(
    (least, each) => (least === undefined || left(each) < left(least) ? each : least),
    undefined,
  )
  if (!worst) return { ...frame, verdict: 'undetermined', reason: 'not-computable', needs: [] }
  const wait_s = worst.response_s + openDelay_s
  const passes = left(worst) >= 0
  const slower = speedThatStopsWithin_mm_per_s(worst.called_mm, wait_s + braking.reaction_s, braking)
  const found = {
    ...frame,
    measured: quantity(worst.called_mm, 'mm'),
    limit: quantity(neededBy(worst), 'mm'),
    steps: stepsOf(context, lane, worst, { speed_mm_per_s, openDelay_s, stopping_mm, needed_mm: neededBy(worst), braking }),
    facts: {
      ...frame.facts,
      ...fieldFacts(worst.sight.counted),
      from: worst.sight.from,
      lane_mm_per_s: speed_mm_per_s,
      wait_s,
      reaction_s: braking.reaction_s,
      stopping_mm,
      left_mm: left(worst),
      ...(passes || worst.called_mm === 0 ? {} : { slower_mm_per_s: slower }),
    },
  }
  if (!passes) return { ...found, verdict: 'fail' }
  return answer.yawSampled ? { ...found, verdict: 'undetermined', reason: 'yaw-range-sampled', needs: [] } : { ...found, verdict: 'pass' }
}

/** What somebody entered about braking, as an outside value: from memory it makes no pass. */
function decelerationOf({ id }: Lane, { decel_mm_per_s2, source }: Braking): OutsideValue {
  return {
    id: `braking-of-${id}`,
    value: decel_mm_per_s2 / 1000,
    unit: '1',
    means: 'Deceleration as entered for this lane, in m/s2.',
    source,
  }
}

interface Worked {
  readonly speed_mm_per_s: number
  readonly openDelay_s: number
  readonly stopping_mm: number
  readonly needed_mm: number
  readonly braking: Braking
}

function stepsOf({ door }: Context, lane: Lane, call: Call, { speed_mm_per_s, openDelay_s, stopping_mm, needed_mm, braking }: Worked) {
  const { sensor, field } = call.sight.counted
  const by = 'passing/call-distance'
  const path = lanePath(door, lane)
  return [
    step('pace of the vehicle', quantity(speed_mm_per_s, 'mm_per_s'), by, { inputs: [`${path}/fastest_m_per_s`] }),
    step('response of the output', quantity(call.response_s, 's'), by, { inputs: [`${fieldPath(door, sensor, field)}/response_s`] }),
    step('delay before a shut leaf opens', quantity(openDelay_s, 's'), by, { inputs: [`${DRIVE}/openDelay_s`] }),
    step('reaction time', quantity(braking.reaction_s, 's'), by, { inputs: [`${path}/braking/reaction_s`] }),
    step('deceleration on the level, in m/s2', quantity(braking.decel_mm_per_s2 / 1000, '1'), by, {
      inputs: [`${path}/braking/decel_m_per_s2`],
    }),
    step('fall of the way toward the leaf', quantity(braking.fall * 100, 'percent'), by, { inputs: [`${path}/braking/gradient_percent`] }),
    step(
      'stopping distance',
      quantity(stopping_mm, 'mm'),
      by,
      { steps: ['pace of the vehicle', 'reaction time', 'deceleration on the level, in m/s2', 'fall of the way toward the leaf'] },
      'v * reaction + v^2 / (2 (deceleration - g * fall))',
    ),
    step(
      'way until it stands',
      quantity(needed_mm, 'mm'),
      'judge/stops-if-shut',
      { steps: ['pace of the vehicle', 'response of the output', 'delay before a shut leaf opens', 'stopping distance'] },
      'v (response + delay) + stopping distance',
    ),
    step('called before the leaf', quantity(call.called_mm, 'mm'), by, { inputs: [path, fieldPath(door, sensor, field)] }),
  ]
}
