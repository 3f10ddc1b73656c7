import type { DoorState } from '../model/door.ts'
import type { Lane } from '../model/traffic.ts'
import type { LaneGap } from '../passing/lane-verdict.ts'
import { floorHeight, floorPieces } from '../space/floor.ts'
import { orNoSubject, quantity, step } from './drafts.ts'
import { laneFacts, lanePassing, laneRestsOn, worstCaseOf } from './lane-passing.ts'
import { lanePath } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'

const BY = 'passing/sight-gap'
/** Two times that differ by less are the same: rounding of a place over a speed. */
const SAME_S = 1e-9

/**
 * A vehicle that passes is seen from its first part to its last while any of it is in the leaf's plane, or outputs hold for longer than the gap lasts at
 * the slowest speed: a thin drawbar between two bodies, say. Measured is the gap that the hold bridges worst. One finding for each lane and state.
 *
 * Facts: `laneFacts`, `slowest_mm_per_s`, and where there is a gap `from` (side), `gap_mm` (along the way), [`part`] (what is in the plane then).
 */
export const passageGap: Rule = {
  id: 'passage-gap',
  source: {
    basis: 'our decision',
    document: 'docs/method.md',
    clause: 'Time',
    note: 'seen from first part to last, or held for longer than the gap; counts for vehicles',
  },
  judge: (context) => {
    const { lanes = [], states } = context.door
    return orNoSubject(lanes.flatMap((lane) => states.map((state) => draftOf(context, lane, state))))
  },
}

function draftOf(context: Context, lane: Lane, state: DoorState): Draft {
  const { door } = context
  const frame = { subject: { kind: 'lane', id: lane.id } as const, state: state.id, restsOn: laneRestsOn(context, lane) }
  const facts = { ...laneFacts(lane, state), ...(lane.slowest_mm_per_s === undefined ? {} : { slowest_mm_per_s: lane.slowest_mm_per_s }) }
  if (lane.who === 'people') return { ...frame, facts, verdict: 'not-applicable', reason: 'not-required-by-concept', steps: [] }
  const answer = lanePassing(context, lane, state)
  if (answer.kind === 'missing')
    return { ...frame, facts, verdict: 'undetermined', reason: 'missing-input', needs: answer.needs, steps: [] }
  if (answer.kind === 'not-computable') return { ...frame, facts, verdict: 'undetermined', reason: 'not-computable', needs: [], steps: [] }
  const { sightGap, yawSampled } = answer.verdict
  if (sightGap === undefined) {
    const clear = { ...frame, facts, measured: quantity(0, 's'), limit: quantity(0, 's'), steps: [] }
    return yawSampled ? { ...clear, verdict: 'undetermined', reason: 'yaw-range-sampled', needs: [] } : { ...clear, verdict: 'pass' }
  }
  const floor = floorPieces(state.floor)
  const found = {
    ...frame,
    measured: quantity(sightGap.gap_s, 's'),
    limit: quantity(sightGap.held_s, 's'),
    worstCase: worstCaseOf({ ...sightGap, place_mm: (sightGap.from_mm + sightGap.to_mm) / 2 }, state, (x, y) => floorHeight(floor, x, y)),
    steps: stepsOf(lanePath(door, lane), sightGap),
    facts: { ...facts, from: sightGap.from, gap_mm: sightGap.to_mm - sightGap.from_mm, ...partFact(sightGap) },
  }
  if (sightGap.gap_s <= sightGap.held_s + SAME_S)
    return yawSampled ? { ...found, verdict: 'undetermined', reason: 'yaw-range-sampled', needs: [] } : { ...found, verdict: 'pass' }
  const sure = answer.atBest === undefined ? sightGap : answer.atBest.sightGap
  return sure && sure.gap_s > sure.held_s + SAME_S
    ? { ...found, verdict: 'fail' }
    : { ...found, verdict: 'undetermined', reason: 'not-proved', needs: [] }
}

function partFact({ part }: LaneGap): Draft['facts'] {
  return part === undefined ? {} : { part }
}

function stepsOf(lane: string, { from_mm, to_mm, gap_s, held_s }: LaneGap): Draft['steps'] {
  return [
    step('gap in sight', quantity(to_mm - from_mm, 'mm'), BY, { inputs: [lane] }, 'along the way, from the last sight to the next'),
    step('gap in time', quantity(gap_s, 's'), BY, { inputs: [`${lane}/slowest_m_per_s`], steps: ['gap in sight'] }, 'gap / slowest speed'),
    step('held for', quantity(held_s, 's'), BY, { inputs: ['sensors'] }, 'hold of the output that lets go last'),
  ]
}
