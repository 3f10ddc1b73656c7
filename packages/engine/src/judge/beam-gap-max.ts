import { beamGaps, type FaceGap } from '../coverage/beam-gaps.ts'
import { type CountedField, countedFields, fieldName, stancesOf } from '../coverage/scene.ts'
import type { DoorState } from '../model/door.ts'
import type { Step } from '../model/finding.ts'
import type { Zone } from '../model/zone.ts'
import { coverageInputs, mustSee, restsOnCoverage, zoneFacts } from './coverage-drafts.ts'
import { type Facts, orNoSubject, quantity, step } from './drafts.ts'
import { fieldFacts, fieldSubject } from './fields.ts'
import { fieldPath } from './paths.ts'
import { ROUNDING_MM } from './rounding.ts'
import type { Context, Draft, Rule } from './rule.ts'
import { turningBodies } from './zone-covered.ts'

/**
 * Neighbouring beams lie close enough together that none of the zone's bodies fits between them: the gap along the face that they meet, times the
 * number of neighbours that must agree, is less than the shortest way across that face. A trace of the beam plane that crosses the face from one
 * side to the opposite one is at least so long inside of it, and an open stretch longer than k gaps holds at least k beams. Equal is too much:
 * then both edges of the face can lie on beams, and a graze does not count. One finding for each zone, field that counts for it, and
 * state: the posture and face that leave least room.
 *
 * Facts: `zoneFacts`, `fieldFacts`, `cluster`, and where two neighbours meet a body `gap_mm`, `face` (top, side), `across_mm`, `plane`, `beam` (the first
 * of both, counted from 1), `x_mm`, `y_mm`, `z_mm` (half way between them), `body`, `bodyName`, `posture`, `postureName`, `yaw_rad`.
 */
export const beamGapMax: Rule = {
  id: 'beam-gap-max',
  source: { basis: 'our decision', document: 'docs/decisions/beam-gap-limit.md', note: 'plain geometry' },
  judge: (context) => {
    const { door } = context
    const triples = door.zones
      .filter(mustSee)
      .flatMap((zone) => countedFields(door, zone).flatMap((counted) => door.states.map((state) => ({ zone, counted, state }))))
    return orNoSubject(triples.map(({ zone, counted, state }) => draftOf(context, zone, counted, state)))
  },
}

function draftOf(context: Context, zone: Zone, counted: CountedField, state: DoorState): Draft {
  const { door } = context
  const { stances, yawSampled } = stancesOf(door, zone)
  const sight = context.sightOf(counted, state)
  const gaps = beamGaps(sight, zone, stances, counted.sensor.spotRadius_mm)
  const [tightest] = [...gaps].sort((a, b) => b.gap_mm / b.across_mm - a.gap_mm / a.across_mm)
  const cluster = counted.field.clusterBeams
  const frame = {
    subject: fieldSubject(counted),
    key: `${zone.id}/${fieldName(counted)}`,
    state: state.id,
    facts: { ...zoneFacts({ zone, state }), ...fieldFacts(counted), cluster, ...(tightest ? gapFacts(tightest) : {}) },
    restsOn: restsOnCoverage(context, zone, [counted.sensor]),
  }
  if (!tightest) return { ...frame, verdict: 'not-applicable', reason: 'no-subject', steps: [] }
  const measured = quantity(tightest.gap_mm, 'mm')
  const limit = quantity(tightest.across_mm / cluster, 'mm')
  const against = { ...frame, measured, limit, steps: stepsOf(context, zone, counted, tightest) }
  if (measured.value >= limit.value - ROUNDING_MM) return { ...against, verdict: 'fail' }
  if (yawSampled)
    return { ...against, verdict: 'undetermined', reason: 'yaw-range-sampled', needs: turningBodies(door, frame.restsOn.bodies) }
  return { ...against, verdict: 'pass' }
}

function stepsOf({ door }: Context, zone: Zone, { sensor, field }: CountedField, { gap_mm, face, across_mm }: FaceGap): readonly Step[] {
  const inputs = coverageInputs(door, zone, [sensor])
  const cluster = [`${fieldPath(door, sensor, field)}/clusterBeams`]
  const dimension = face === 'top' ? 'min(length, width)' : 'min(width of the side, height)'
  return [
    step(
      'gap',
      quantity(gap_mm, 'mm'),
      'coverage/beam-gaps',
      { inputs },
      'distance between neighbours along the face; head-on 2 R tan(a / 2)',
    ),
    step('way across', quantity(across_mm, 'mm'), 'coverage/beam-gaps', { inputs }, `${dimension} - 2 spot radius`),
    step(
      'limit',
      quantity(across_mm / field.clusterBeams, 'mm'),
      'judge/beam-gap-max',
      { inputs: cluster, steps: ['way across'] },
      'way across / cluster',
    ),
  ]
}

function gapFacts({ stance, gap_mm, face, across_mm, plane, beam, x_mm, y_mm, z_mm }: FaceGap): Facts {
  const { body, index, posture, yaw_rad } = stance
  const where = { plane, beam: beam + 1, x_mm, y_mm, z_mm }
  return { gap_mm, face, across_mm, ...where, body: body.id, bodyName: body.name, posture: index, postureName: posture.name, yaw_rad }
}
