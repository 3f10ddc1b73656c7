import type { DoorState } from '../model/door.ts'
import type { InputPath } from '../model/source.ts'
import type { Drive, Lane } from '../model/traffic.ts'
import { timeToClear_s } from '../passing/call-distance.ts'
import type { LeafApproach } from '../passing/leaf-approach.ts'
import { type Call, type Calls, callingLanes, callsOf } from './call-case.ts'
import { orNoSubject, quantity, step } from './drafts.ts'
import { fieldFacts } from './fields.ts'
import { laneFacts, laneRestsOn } from './lane-passing.ts'
import { DRIVE, fieldPath, lanePath } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'
import { stopTime } from './stop-time.ts'

/**
 * A vehicle at its fastest pace that a field has called the door for finds the opening clear when it arrives, without braking: clear of its own height
 * (or width), after the field's response, the control's delay and the leaf's way; a leaf that was just closing first stops, rests and turns. Measured is
 * how far before the leaf the call is on its way, the limit is how far the vehicle goes in that time. For each lane of vehicles and state.
 *
 * Facts: `laneFacts`; where judged `fieldFacts`, `from`, `lane_mm_per_s`, `response_s`, `open_s` (from the input of the control until clear), `wasClosing`,
 * `clear_mm`, `left_mm`, on a fail [`slower_mm_per_s` (pace that would do), `higher_mm` (the opening is lower than the body)].
 */
export const openingInTime: Rule = {
  id: 'opening-in-time',
  source: {
    basis: 'our decision',
    document: 'docs/method.md',
    clause: 'Call',
    note: 'a vehicle that called finds the opening clear without braking',
  },
  judge: (context) =>
    orNoSubject(callingLanes(context).flatMap((lane) => context.door.states.map((state) => draftOf(context, lane, state)))),
}

function draftOf(context: Context, lane: Lane, state: DoorState): Draft {
  const answer = callsOf(context, lane, state)
  const frame = {
    subject: { kind: 'lane', id: lane.id } as const,
    state: state.id,
    facts: laneFacts(lane, state),
    restsOn: laneRestsOn(context, lane, ['opening', 'call']),
    steps: [],
  }
  if (answer.kind === 'not-computable') return { ...frame, verdict: 'undetermined', reason: 'not-computable', needs: [] }
  const needs = answer.kind === 'missing' ? answer.needs : missingOfDrive(answer.drive)
  if (answer.kind === 'missing' || needs.length > 0) return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs }
  const wait = waiting(answer)
  if (wait.kind === 'missing') return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs: wait.needs }
  const worst = worstOf(answer, wait.wait_s)
  if (!worst) return { ...frame, verdict: 'undetermined', reason: 'not-computable', needs: [] }
  const { approach, speed_mm_per_s } = answer
  const isHigher = worst.clear_mm > approach.way_mm
  // the open leaf stands in the way of whoever passes there: what walks into it is another finding
  if (isHigher && context.door.leaf?.travel === 'turning') return { ...frame, verdict: 'undetermined', reason: 'not-computable', needs: [] }
  const found = {
    ...frame,
    measured: quantity(isHigher ? approach.way_mm : worst.call.called_mm, 'mm'),
    limit: quantity(isHigher ? worst.clear_mm : worst.needed_mm, 'mm'),
    steps: isHigher ? [] : stepsOf(context, lane, answer, worst, wait),
    facts: {
      ...frame.facts,
      ...fieldFacts(worst.call.sight.counted),
      from: worst.call.sight.from,
      lane_mm_per_s: speed_mm_per_s,
      response_s: worst.call.response_s,
      wasClosing: wait.wasClosing,
      clear_mm: worst.clear_mm,
      ...(isHigher
        ? { higher_mm: worst.clear_mm - approach.way_mm }
        : { open_s: worst.open_s, left_mm: worst.call.called_mm - worst.needed_mm, ...slowerPace(worst) }),
    },
  }
  if (isHigher || worst.call.called_mm < worst.needed_mm) return { ...found, verdict: 'fail' }
  return answer.yawSampled ? { ...found, verdict: 'undetermined', reason: 'yaw-range-sampled', needs: [] } : { ...found, verdict: 'pass' }
}

/** With what is there, the pace at which it would do; the same place sees a slower vehicle no later. Only told on a fail. */
function slowerPace({ call, open_s, needed_mm }: Worst) {
  return call.called_mm < needed_mm && call.called_mm > 0 ? { slower_mm_per_s: call.called_mm / (call.response_s + open_s) } : {}
}

function missingOfDrive({ openSpeed_mm_per_s, openAccel_mm_per_s2, afterStop, reverseDelay_s }: Drive): readonly InputPath[] {
  const needs: string[] = []
  if (openSpeed_mm_per_s === undefined) needs.push('openSpeed_m_per_s')
  if (openAccel_mm_per_s2 === undefined) needs.push('openAccel_m_per_s2')
  if (afterStop === undefined) needs.push('afterStop')
  if (afterStop === 'reverse' && reverseDelay_s === undefined) needs.push('reverseDelay_s')
  return needs.map((name) => `${DRIVE}/${name}`)
}

type Found = Extract<Calls, { readonly kind: 'found' }>
interface Worst {
  readonly call: Call
  readonly clear_mm: number
  readonly open_s: number
  readonly needed_mm: number
}

/** From the input of the control until a leaf begins to open at shut: its delay, or for one that was about to shut the stop, the rest and the turn. */
type Waiting =
  | { readonly kind: 'missing'; readonly needs: readonly InputPath[] }
  | { readonly kind: 'known'; readonly wait_s: number; readonly wasClosing: boolean }

function waiting({ drive, openDelay_s, approach }: Found): Waiting {
  if (drive.afterStop !== 'reverse') return { kind: 'known', wait_s: openDelay_s, wasClosing: false }
  const stop = stopTime(drive, approach.way_mm)
  if (stop.kind === 'missing') return stop
  const turn_s = stop.stop_s + (drive.reverseDelay_s ?? 0)
  return { kind: 'known', wait_s: Math.max(openDelay_s, turn_s), wasClosing: turn_s > openDelay_s }
}

function worstOf({ calls, approach, drive, speed_mm_per_s }: Found, wait_s: number): Worst | undefined {
  const open = { speed: drive.openSpeed_mm_per_s ?? 0, accel: drive.openAccel_mm_per_s2 ?? 0 }
  const all = calls.map((call) => {
    const clear_mm = clearOf(approach, call)
    const open_s = wait_s + timeToClear_s(approach.way_mm, open, clear_mm)
    return { call, clear_mm, open_s, needed_mm: speed_mm_per_s * (call.response_s + open_s) }
  })
  return all.reduce<Worst | undefined>((worst, each) => (worst === undefined || leftOf(each) < leftOf(worst) ? each : worst), undefined)
}

function leftOf({ call, needed_mm }: Worst): number {
  return call.called_mm - needed_mm
}

/** All its parts are taken to arrive with its front, which errs toward too late. */
function clearOf(approach: LeafApproach, { sight }: Call): number {
  return approach.clear_mm(sight.stance, sight.x_mm)
}

function stepsOf(
  { door }: Context,
  lane: Lane,
  { speed_mm_per_s, approach, openDelay_s }: Found,
  worst: Worst,
  wait: Waiting & { readonly kind: 'known' },
) {
  const { call, clear_mm, open_s, needed_mm } = worst
  const { sensor, field } = call.sight.counted
  const by = 'passing/call-distance'
  return [
    step('pace of the vehicle', quantity(speed_mm_per_s, 'mm_per_s'), by, { inputs: [`${lanePath(door, lane)}/fastest_m_per_s`] }),
    step('way of the leaf until clear', quantity(clear_mm, 'mm'), 'passing/leaf-approach', { inputs: [lanePath(door, lane)] }),
    step('way of the whole opening', quantity(approach.way_mm, 'mm'), 'passing/leaf-approach', {}),
    step('response of the output', quantity(call.response_s, 's'), by, { inputs: [`${fieldPath(door, sensor, field)}/response_s`] }),
    step('delay before a shut leaf opens', quantity(openDelay_s, 's'), by, { inputs: [`${DRIVE}/openDelay_s`] }),
    step(
      'wait until the leaf opens',
      quantity(wait.wait_s, 's'),
      'judge/opening-in-time',
      { inputs: [DRIVE] },
      'max(delay, stop + rest of a leaf about to shut)',
    ),
    step('from the control until clear', quantity(open_s, 's'), by, {
      inputs: [DRIVE],
      steps: ['wait until the leaf opens', 'way of the leaf until clear'],
    }),
    step(
      'call distance',
      quantity(needed_mm, 'mm'),
      'judge/opening-in-time',
      { steps: ['pace of the vehicle', 'response of the output', 'from the control until clear'] },
      'pace * (response + from the control until clear)',
    ),
    step('called before the leaf', quantity(call.called_mm, 'mm'), by, { inputs: [lanePath(door, lane), fieldPath(door, sensor, field)] }),
  ]
}
