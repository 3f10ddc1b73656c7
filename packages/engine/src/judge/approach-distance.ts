import { leafChanges } from '../coverage/leaf-sight.ts'
import type { CountedField } from '../coverage/scene.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { InputPath } from '../model/source.ts'
import type { Lane } from '../model/traffic.ts'
import { leafApproach } from '../passing/leaf-approach.ts'
import { waySights } from '../passing/way-sights.ts'
import { type ApproachCase, type TimedSeparation, worstApproach } from './approach-case.ts'
import { approachRepairs } from './approach-repairs.ts'
import { notApplicable, orNoSubject, quantity, step } from './drafts.ts'
import { fieldFacts, fieldsOfFunction } from './fields.ts'
import { laneFacts, laneRestsOn } from './lane-passing.ts'
import { CONCEPT, fieldPath, HINGED, LEAF, lanePath, SENSORS } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'
import { type SeparationEdition, separationOf } from './separation-of-field.ts'
import { type StopTime, stopTime } from './stop-time.ts'

/**
 * Where the concept promises that the closing leaf touches nobody, whoever walks toward it is found so far before it that it rests when he arrives, by
 * the separation-distance standard. Other concepts do not promise that: an edge limited in force may touch, a presence aid makes contact rarer, a door
 * held to run is watched. Measured is how far before the leaf the body is found, the limit is S. For each lane that people use, state, and edition of
 * the standard (both where the door names none).
 *
 * Facts: `laneFacts`, `separation` (edition), and where judged `fieldFacts` of the field that finds first, `from`, `way`, `total_s`, `response_s`,
 * `stop_s`, `approach_mm_per_s`, `addend_mm`, `supplement_mm`, `left_mm`; on a fail [`lowest_mm` (where the zone hangs too low), `slower_mm_per_s`,
 * `faster_s`, `wider_mm`]: each alone puts it in order.
 */
export const approachDistance: Rule = {
  id: 'approach-distance',
  source: {
    basis: 'published',
    document: 'ISO 13855',
    edition: '2010 and 2024',
    clause: '5',
    note: 'seen in a published summary; that it is asked where the concept is contact-free is our decision',
  },
  judge: (context) => {
    const { concept, separation, lanes = [], states } = context.door
    const lanesOfPeople = lanes.filter(({ who }) => who !== 'vehicles')
    if (lanesOfPeople.length === 0) return orNoSubject([])
    if (concept !== undefined && (concept.drive === 'hold-to-run' || concept.closingEdge !== 'contact-free'))
      return [notApplicable('not-required-by-concept', { drive: concept.drive, closingEdge: concept.closingEdge })]
    const editions: readonly SeparationEdition[] = separation ? [separation] : ['2010', '2024']
    return lanesOfPeople.flatMap((lane) =>
      states.flatMap((state) =>
        editions.map((edition) => (concept ? draftOf(context, lane, state, edition) : needing(context, lane, state, edition, [CONCEPT]))),
      ),
    )
  },
}

function frameOf(context: Context, lane: Lane, state: DoorState, edition: SeparationEdition) {
  return {
    subject: { kind: 'lane', id: lane.id } as const,
    key: `${lane.id}-${edition}`,
    state: state.id,
    facts: { ...laneFacts(lane, state), separation: edition },
    restsOn: laneRestsOn(context, lane),
  }
}

function needing(context: Context, lane: Lane, state: DoorState, edition: SeparationEdition, needs: readonly InputPath[]): Draft {
  return { ...frameOf(context, lane, state, edition), verdict: 'undetermined', reason: 'missing-input', needs, steps: [] }
}

function draftOf(context: Context, lane: Lane, state: DoorState, edition: SeparationEdition): Draft {
  const { door } = context
  const frame = frameOf(context, lane, state, edition)
  if (door.leaf === undefined) return needing(context, lane, state, edition, [LEAF])
  const approach = leafApproach(door, state)
  if (!approach) return needing(context, lane, state, edition, [HINGED])
  const stop = stopTime(door.drive, approach.way_mm)
  const fields = fieldsOfFunction(door, 'presence')
  const { known, needs } = timedFields(context, fields, edition)
  if (stop.kind === 'missing') return needing(context, lane, state, edition, [...stop.needs, ...needs])
  if (known.length === 0) return needing(context, lane, state, edition, fields.length === 0 ? [SENSORS] : needs)
  const judgedBy = (of: Door, among: readonly TimedSeparation[], stop_s: number) =>
    worstApproach(
      waySights(
        of,
        state,
        lane,
        approach,
        among.map(({ counted }) => counted),
      ).sights,
      among,
      stop_s,
      lane,
    )
  const { yawSampled } = waySights(door, state, lane, approach, [])
  const worst = judgedBy(door, known, stop.stop_s)
  if (worst === undefined) return { ...frame, verdict: 'undetermined', reason: 'not-computable', needs: [], steps: [] }
  const isLow = worst.timed.lowest_mm > (worst.timed.approach.height_mm ?? 0)
  const passes = !isLow && worst.left_mm >= 0
  // a field of which too little is known might find earlier
  if (!passes && needs.length > 0) return needing(context, lane, state, edition, needs)
  const { counted, approach: hung, values, lowest_mm } = worst.timed
  const measured = quantity(isLow ? (hung.height_mm ?? 0) : worst.there_mm, 'mm')
  const limit = quantity(isLow ? lowest_mm : worst.needed_mm, 'mm')
  const found = {
    ...frame,
    restsOn: { ...frame.restsOn, values: [...frame.restsOn.values, ...values], inputs: [...frame.restsOn.inputs, CONCEPT] },
    measured,
    limit,
    steps: stepsOf(door, lane, worst, stop),
    facts: {
      ...frame.facts,
      ...fieldFacts(counted),
      ...caseFacts(worst, stop.stop_s),
      ...(isLow ? { lowest_mm } : {}),
      ...(passes || isLow ? {} : approachRepairs({ door, lane, stop, worst, known, judgedBy })),
    },
  }
  if (!passes) return { ...found, verdict: 'fail' }
  return yawSampled ? { ...found, verdict: 'undetermined', reason: 'yaw-range-sampled', needs: [] } : { ...found, verdict: 'pass' }
}

/** The presence fields of which all is known that the standard asks, and what is missing of the others. Blanking windows make a field not count. */
function timedFields({ door, values }: Context, fields: readonly CountedField[], edition: SeparationEdition) {
  const known: TimedSeparation[] = []
  const needs: InputPath[] = []
  for (const counted of fields.filter(({ field }) => !leafChanges(field))) {
    const separation = separationOf(door, counted, edition, values)
    const { response_s, hold_s = 0 } = counted.field
    if (response_s === undefined) needs.push(`${fieldPath(door, counted.sensor, counted.field)}/response_s`)
    if (separation.kind === 'missing') needs.push(...separation.needs)
    else if (response_s !== undefined) known.push({ ...separation, counted, response_s, hold_s })
  }
  return { known, needs }
}

function caseFacts({ sight, timed, there_mm, needed_mm, by }: ApproachCase, stop_s: number) {
  return {
    from: sight.from,
    way: timed.approach.way,
    total_s: timed.response_s + stop_s,
    response_s: timed.response_s,
    stop_s,
    approach_mm_per_s: by.speed_mm_per_s,
    addend_mm: by.addend_mm,
    supplement_mm: by.supplement_mm,
    left_mm: there_mm - needed_mm,
  }
}

function stepsOf(door: Door, lane: Lane, { timed, there_mm, needed_mm, by }: ApproachCase, stop: StopTime & { readonly kind: 'known' }) {
  const { counted, values, response_s, lowest_mm } = timed
  const field = fieldPath(door, counted.sensor, counted.field)
  const formulas = 'judge/separation-of-field'
  return [
    ...stop.steps,
    step('response of the output', quantity(response_s, 's'), 'judge/approach-distance', { inputs: [`${field}/response_s`] }),
    step(
      'time until the leaf rests, T',
      quantity(response_s + stop.stop_s, 's'),
      'judge/approach-distance',
      { steps: ['response of the output', 'time from the stop command to rest'] },
      'response + stop',
    ),
    step('speed of approach, K', quantity(by.speed_mm_per_s, 'mm_per_s'), formulas, {
      values: values.filter(({ unit }) => unit === 'mm_per_s'),
    }),
    step('addend, C or D_DS', quantity(by.addend_mm, 'mm'), formulas, {
      inputs: [`${field}/approach`],
      values: values.filter(({ unit }) => unit === 'mm'),
    }),
    step('supplement, Z', quantity(by.supplement_mm, 'mm'), formulas, { inputs: [`${field}/approach`] }),
    step(
      'lowest height of a lying zone',
      quantity(lowest_mm, 'mm'),
      formulas,
      { inputs: [`${field}/approach`] },
      '15 (d - 50), from 0 to 1000',
    ),
    step(
      'separation distance, S',
      quantity(needed_mm, 'mm'),
      'passing/separation',
      { steps: ['speed of approach, K', 'time until the leaf rests, T', 'addend, C or D_DS', 'supplement, Z'] },
      'K T + addend + supplement',
    ),
    step('found before the leaf', quantity(there_mm, 'mm'), 'passing/way-sights', { inputs: [lanePath(door, lane), field] }),
    step(
      'distance left over',
      quantity(there_mm - needed_mm, 'mm'),
      'judge/approach-distance',
      { steps: ['found before the leaf', 'separation distance, S'] },
      'found - S',
    ),
  ]
}
