import type { DoorState } from '../model/door.ts'
import type { Lane } from '../model/traffic.ts'
import { courseOf } from '../passing/course.ts'
import { floorHeight, floorPieces } from '../space/floor.ts'
import { orNoSubject, quantity, step } from './drafts.ts'
import { contactFacts, contactSteps, laneFacts, lanePassing, laneRestsOn, leafFact, warningOf, worstCaseOf } from './lane-passing.ts'
import type { Context, Draft, Rule } from './rule.ts'

/**
 * Nothing that passes runs into a leaf that rests or opens: it is high enough, or far enough aside, at arrival. Of the same rank as being struck where
 * vehicles pass; for people it is told and not judged. One finding for each lane and state.
 *
 * Facts: as `struck-by-leaf`.
 */
export const walkedInto: Rule = {
  id: 'walked-into',
  source: {
    basis: 'our decision',
    document: 'docs/method.md',
    clause: 'Time',
    note: 'no contact with a leaf that rests or opens; counts for vehicles',
  },
  judge: (context) => {
    const { lanes = [], states } = context.door
    return orNoSubject(lanes.flatMap((lane) => states.map((state) => draftOf(context, lane, state))))
  },
}

function draftOf(context: Context, lane: Lane, state: DoorState): Draft {
  const { door } = context
  const frame = { subject: { kind: 'lane', id: lane.id } as const, state: state.id, restsOn: laneRestsOn(context, lane) }
  const facts = laneFacts(lane, state, door.drive)
  if (lane.who === 'people') return { ...frame, facts, verdict: 'not-applicable', reason: 'not-required-by-concept', steps: [] }
  const answer = lanePassing(context, lane, state)
  if (answer.kind === 'missing')
    return { ...frame, facts, verdict: 'undetermined', reason: 'missing-input', needs: answer.needs, steps: [] }
  if (answer.kind === 'not-computable') return { ...frame, facts, verdict: 'undetermined', reason: 'not-computable', needs: [], steps: [] }
  const { walked, tally, yawSampled, passages } = answer.verdict
  // more sight than was counted on may stop the leaf lower, in the way of whoever comes
  const isSure = answer.atBest === undefined || !answer.verdict.leafMatters || answer.atBest.walked !== undefined
  const floor = floorPieces(state.floor)
  if (walked) {
    const found = {
      ...frame,
      measured: quantity(walked.relativeSpeed, 'mm_per_s'),
      limit: quantity(0, 'mm_per_s'),
      worstCase: worstCaseOf(walked, state, (x, y) => floorHeight(floor, x, y)),
      course: courseOf(walked, true, warningOf(door)),
      steps: contactSteps(door, lane, walked),
      facts: { ...facts, passages, ...contactFacts(door, walked), atMost_mm_per_s: tally.walkedAtMost },
    }
    return isSure ? { ...found, verdict: 'fail' } : { ...found, verdict: 'undetermined', reason: 'not-proved', needs: [] }
  }
  if (tally.unproved.walked > 0) return { ...frame, facts, verdict: 'undetermined', reason: 'not-proved', needs: [], steps: [] }
  if (answer.atBest !== undefined && answer.verdict.leafMatters)
    return {
      ...frame,
      facts: { ...facts, passages, ...leafFact(answer) },
      verdict: 'undetermined',
      reason: 'not-proved',
      needs: [],
      steps: [],
    }
  const none = quantity(0, 'mm_per_s')
  const clear = {
    ...frame,
    measured: none,
    limit: none,
    steps: [step('fastest contact', none, 'passing/lane-verdict', { inputs: frame.restsOn.inputs })],
    facts: { ...facts, passages },
  }
  return yawSampled ? { ...clear, verdict: 'undetermined', reason: 'yaw-range-sampled', needs: [] } : { ...clear, verdict: 'pass' }
}
