import { partsOf } from '../model/body.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { InputPath } from '../model/source.ts'
import type { Crossing } from '../model/traffic.ts'
import { shareThatOpens, trackSights } from '../passing/passers-by.ts'
import { stateFacts } from './coverage-drafts.ts'
import { orNoSubject, quantity, step, THE_DOOR } from './drafts.ts'
import { fieldsOfFunction } from './fields.ts'
import { bodyPath, crossingPath, fieldPath, SURROUNDINGS, sensorPath, VISIBILITY } from './paths.ts'
import type { Context, Draft, RestsOn, Rule } from './rule.ts'

/**
 * Passers-by who do not want through open the door no more often than somebody said is bearable. Measured is how often in a day, for the body that opens
 * it most. Spread evenly over the crossing's width and paces, whoever stays in the longest sight of their track for the response opens it. For each
 * crossing and state.
 *
 * Facts: `crossing`, `crossingName`, state facts, and where computed `share` (0 to 1), `perDay` (passers-by), `openings` (in a day), `tracks`, `seenTracks`.
 */
export const needlessOpenings: Rule = {
  id: 'needless-openings',
  source: {
    basis: 'our decision',
    document: 'docs/method.md',
    clause: 'Needless openings',
    note: 'passers-by spread evenly over the width and the paces of their way',
  },
  judge: (context) => orNoSubject(needlessDrafts(context)),
}

const answers = new WeakMap<Context, readonly Draft[]>()

/** Computed at most once in a judgement: the air that is lost asks the same. Empty without a crossing or a field that opens. */
export function needlessDrafts(context: Context): readonly Draft[] {
  const { door } = context
  const crossings = openingFields(door).length === 0 ? [] : (door.crossings ?? [])
  const answer = answers.get(context) ?? crossings.flatMap((crossing) => door.states.map((state) => draftOf(context, crossing, state)))
  answers.set(context, answer)
  return answer
}

function openingFields(door: Door) {
  return [...fieldsOfFunction(door, 'opening'), ...fieldsOfFunction(door, 'call')]
}

function draftOf({ door, values }: Context, crossing: Crossing, state: DoorState): Draft {
  const path = crossingPath(door, crossing)
  const bodies = door.bodies.filter(({ id }) => crossing.bodies.includes(id))
  const fields = openingFields(door)
  const restsOn: RestsOn = {
    inputs: [
      ...SURROUNDINGS,
      VISIBILITY,
      path,
      ...bodies.map((body) => bodyPath(door, body)),
      ...new Set(fields.map(({ sensor }) => sensorPath(door, sensor))),
    ],
    values: door.extinction_per_mm > 0 ? [values.koschmiederContrast] : [],
    bodies,
    sensors: [...new Set(fields.map(({ sensor }) => sensor))],
  }
  const facts = { crossing: crossing.id, crossingName: crossing.name, ...stateFacts(state) }
  const frame = { subject: THE_DOOR, key: crossing.id, state: state.id, facts, restsOn, steps: [] }
  const { slowest_mm_per_s, fastest_mm_per_s, perDay, mostPerDay } = crossing
  const needs: InputPath[] = []
  if (slowest_mm_per_s === undefined) needs.push(`${path}/slowest_m_per_s`)
  if (fastest_mm_per_s === undefined) needs.push(`${path}/fastest_m_per_s`)
  if (perDay === undefined) needs.push(`${path}/perDay`)
  for (const { sensor, field } of fields) if (field.response_s === undefined) needs.push(`${fieldPath(door, sensor, field)}/response_s`)
  if (needs.length > 0 || slowest_mm_per_s === undefined || fastest_mm_per_s === undefined || perDay === undefined)
    return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs }
  if (bodies.some(({ postures }) => postures.some((posture) => partsOf(posture) !== undefined)))
    return { ...frame, verdict: 'undetermined', reason: 'not-computable', needs: [] }
  const responses_s = fields.map(({ field }) => field.response_s ?? 0)
  const found = bodies.flatMap((body) =>
    body.postures.map((posture) => {
      const tracks = trackSights(door, state, crossing, { ...body, postures: [posture] }, fields)
      return { tracks, share: shareThatOpens(tracks, responses_s, { slowest_mm_per_s, fastest_mm_per_s }) }
    }),
  )
  const most = found.reduce((a, b) => (b.share > a.share ? b : a))
  const seenTracks = most.tracks.filter(({ longest_mm }) => longest_mm.some((length_mm) => length_mm > 0)).length
  const openings = most.share * perDay
  const measured = quantity(openings, '1')
  const computed = {
    ...frame,
    measured,
    facts: { ...facts, share: most.share, perDay, openings, tracks: most.tracks.length, seenTracks },
    steps: [
      step('tracks across the crossing', quantity(most.tracks.length, '1'), 'passing/passers-by', { inputs: [path] }),
      step('tracks on which passers-by are seen', quantity(seenTracks, '1'), 'passing/passers-by', { inputs: restsOn.inputs }),
      step(
        'part of passers-by who open the door',
        quantity(most.share * 100, 'percent'),
        'passing/passers-by',
        {
          steps: ['tracks across the crossing'],
          inputs: [path, ...fields.map(({ sensor, field }) => `${fieldPath(door, sensor, field)}/response_s`)],
        },
        'mean over tracks of the paces up to longest sight / response',
      ),
      step(
        'needless openings in a day',
        measured,
        'judge/needless-openings',
        { inputs: [`${path}/perDay`], steps: ['part of passers-by who open the door'] },
        'part * passers-by in a day',
      ),
    ],
  }
  if (mostPerDay === undefined) return { ...computed, verdict: 'undetermined', reason: 'missing-input', needs: [`${path}/mostPerDay`] }
  return { ...computed, limit: quantity(mostPerDay, '1'), verdict: openings <= mostPerDay ? 'pass' : 'fail' }
}
