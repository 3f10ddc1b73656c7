import type { Door, DoorState } from '../model/door.ts'
import type { Lane } from '../model/traffic.ts'
import { courseOf } from '../passing/course.ts'
import { floorHeight, floorPieces } from '../space/floor.ts'
import { orNoSubject, quantity, step } from './drafts.ts'
import {
  chainOf,
  contactFacts,
  contactSteps,
  laneFacts,
  lanePassing,
  laneRestsOn,
  leafFact,
  warningOf,
  worstCaseOf,
} from './lane-passing.ts'
import type { Context, Draft, Rule } from './rule.ts'

/**
 * No body in a lane is struck by the closing leaf: over every phase of the closing, speed, direction, place to stop, and at the middle and both edges
 * of the lane. Measured is the fastest contact, or where there is none the smallest gap. One finding for each lane and state.
 *
 * Facts: `laneFacts`, `passages`, [`asWritten`] (the gap is that of the figures as entered, no tolerance of the door file is taken off), `leafFact`; on a fail `contactFacts` and `atMost_mm_per_s` (no contact is faster).
 */
export const struckByLeaf: Rule = {
  id: 'struck-by-leaf',
  source: { basis: 'our decision', document: 'docs/method.md', clause: 'Time', note: 'no contact while the leaf moves toward closed' },
  judge: (context) => {
    const { lanes = [], states } = context.door
    return orNoSubject(lanes.flatMap((lane) => states.map((state) => draftOf(context, lane, state))))
  },
}

function draftOf(context: Context, lane: Lane, state: DoorState): Draft {
  const { door } = context
  const answer = lanePassing(context, lane, state)
  const frame = { subject: { kind: 'lane', id: lane.id } as const, state: state.id, restsOn: laneRestsOn(context, lane) }
  const facts = laneFacts(lane, state, door.drive)
  if (answer.kind === 'missing')
    return { ...frame, facts, verdict: 'undetermined', reason: 'missing-input', needs: answer.needs, steps: [] }
  if (answer.kind === 'not-computable') return { ...frame, facts, verdict: 'undetermined', reason: 'not-computable', needs: [], steps: [] }
  const { atBest } = answer
  const { tally, yawSampled, passages } = answer.verdict
  // a contact that more sight might prevent is told, and settles nothing
  const struck = answer.verdict.struck && (atBest?.struck ?? answer.verdict.struck)
  const floor = floorPieces(state.floor)
  if (struck) {
    const found = {
      ...frame,
      measured: quantity(struck.relativeSpeed, 'mm_per_s'),
      limit: quantity(0, 'mm_per_s'),
      worstCase: worstCaseOf(struck, state, (x, y) => floorHeight(floor, x, y)),
      course: courseOf(struck, true, warningOf(door)),
      steps: contactSteps(door, lane, struck),
      facts: { ...facts, passages, ...leafFact(answer), ...contactFacts(door, struck), atMost_mm_per_s: tally.struckAtMost },
    }
    const isSure = atBest === undefined || atBest.struck !== undefined
    return isSure ? { ...found, verdict: 'fail' } : { ...found, verdict: 'undetermined', reason: 'not-proved', needs: [] }
  }
  if (tally.unproved.struck > 0) return { ...frame, facts, verdict: 'undetermined', reason: 'not-proved', needs: [], steps: [] }
  const walked = answer.verdict.walked
  const nearest = walked ?? answer.verdict.nearest
  const gap = quantity(walked ? 0 : tally.gapAtLeast, 'mm')
  const clear = {
    ...frame,
    measured: gap,
    limit: quantity(0, 'mm'),
    steps: [
      ...(nearest ? chainOf(door, lane, nearest) : []),
      step('smallest gap', gap, 'passing/lane-verdict', { steps: nearest ? ['way still to go'] : [] }, gapFormula(door)),
    ],
    facts: { ...facts, passages, ...leafFact(answer), ...(door.tolerances ? { asWritten: true } : {}) },
    ...(nearest ? { course: courseOf(nearest, walked !== undefined, warningOf(door)) } : {}),
  }
  return yawSampled ? { ...clear, verdict: 'undetermined', reason: 'yaw-range-sampled', needs: [] } : { ...clear, verdict: 'pass' }
}

function gapFormula({ leaf }: Door): string {
  if (leaf?.travel === 'down') return 'way still to go - top of the body'
  return leaf?.travel === 'turning' ? 'way still to go - way at which the leaf meets the body' : 'way still to go - side of the body'
}
