import { type LeafMeeting, leafInField } from '../coverage/leaf-in-field.ts'
import type { CountedField } from '../coverage/scene.ts'
import { type Stretch, totalLength_mm, without } from '../coverage/stretches.ts'
import type { DoorState, Leaf } from '../model/door.ts'
import type { Step } from '../model/finding.ts'
import type { InputPath } from '../model/source.ts'
import { type TurningLeaf, turningLeaf } from '../motion/turning-leaf.ts'
import { isUnhung } from '../passing/leaf-approach.ts'
import { turningInField } from '../passing/turning-in-field.ts'
import { heightsOf } from '../passing/turning-shade.ts'
import { stateFacts } from './coverage-drafts.ts'
import { NOTHING, notApplicable, orNoSubject, quantity, step, THE_DOOR } from './drafts.ts'
import { allFields, fieldFacts, fieldSubject } from './fields.ts'
import { fieldPath, HINGED, LEAF, SURROUNDINGS, SURVEY, sensorPath } from './paths.ts'
import { ROUNDING_MM } from './rounding.ts'
import type { Context, Draft, Rule } from './rule.ts'

const BY = 'coverage/leaf-in-field'

/**
 * The leaf on its way does not set off a field: at no position of the closing edge does it meet a beam in the field, blanking windows aside. Measured
 * is the way over which it does. One finding for each field and state; one about the door where nobody described the leaf, or how one that
 * turns is hung. Of a leaf that turns the way is that of its edge along its arc; where it only may meet a beam, that is not settled.
 *
 * Facts: `fieldFacts`, `stateFacts`, `travel`, `travel_mm` (whole way), `met_mm` (way over which the leaf meets a beam, blanked or not), `blanked_mm` (of
 * it), and where any is left `stretches` (number), `from_mm`, `to_mm` (way still to go, at the ends of the longest).
 */
export const leafInFieldRule: Rule = {
  id: 'leaf-in-field',
  source: { basis: 'our decision', document: 'docs/method.md', clause: '4', note: 'the leaf as an obstacle at every position, with bulge' },
  judge: (context) => {
    const { door } = context
    const { leaf } = door
    if (allFields(door).length === 0) return [notApplicable('no-subject')]
    if (leaf === undefined) return [missing(LEAF)]
    if (isUnhung(leaf)) return [missing(HINGED)]
    const turning = turningLeaf(door)
    return orNoSubject(
      allFields(door).flatMap((counted) =>
        door.states.flatMap((state) =>
          turning ? turningDraft(context, turning, counted, state) : draftsOf(context, leaf, counted, state),
        ),
      ),
    )
  },
}

function missing(needed: InputPath): Draft {
  return { verdict: 'undetermined', reason: 'missing-input', needs: [needed], subject: THE_DOOR, steps: [], facts: {}, restsOn: NOTHING }
}

/** What is surely met fails, and what is surely met nowhere passes; stretches between both are not settled. */
function turningDraft({ door, sightOf }: Context, turning: TurningLeaf, counted: CountedField, state: DoorState): Draft {
  const { sensor, field } = counted
  const { travel_mm, mayMeet, meets } = turningInField(sightOf(counted, state), turning, heightsOf(door.opening, state))
  const open = (met: readonly Stretch[]) =>
    (field.leafBlanking ? [] : without(met, field.blanking)).filter(({ from_mm, to_mm }) => to_mm - from_mm > ROUNDING_MM)
  const surely = open(meets)
  const left = surely.length > 0 ? surely : open(mayMeet)
  const meeting = { travel_mm, met: surely.length > 0 ? meets : mayMeet }
  const left_mm = quantity(totalLength_mm(left), 'mm')
  const fieldInput = fieldPath(door, sensor, field)
  const found = {
    subject: fieldSubject(counted),
    state: state.id,
    measured: left_mm,
    limit: quantity(0, 'mm'),
    steps: stepsOf(
      meeting,
      left_mm.value,
      [SURVEY, LEAF, sensorPath(door, sensor)],
      [`${fieldInput}/blanking`, `${fieldInput}/leafBlanking`],
    ),
    facts: { ...fieldFacts(counted), ...stateFacts(state), travel: 'turning', ...wayFacts(meeting, left) },
    restsOn: { inputs: [...SURROUNDINGS, LEAF, sensorPath(door, sensor)], values: [], bodies: [], sensors: [sensor] },
  }
  if (surely.length > 0) return { ...found, verdict: 'fail' }
  return left.length === 0 ? { ...found, verdict: 'pass' } : { ...found, verdict: 'undetermined', reason: 'not-proved', needs: [] }
}

function draftsOf({ door, sightOf }: Context, leaf: Leaf, counted: CountedField, state: DoorState): readonly Draft[] {
  const meeting = leafInField(sightOf(counted, state), { leaf, opening: door.opening })
  if (!meeting) return []
  const { sensor, field } = counted
  const { leafBlanking } = field // it follows the leaf, so that all of the leaf lies in it, wherever it is
  const left = (leafBlanking ? [] : without(meeting.met, field.blanking)).filter(({ from_mm, to_mm }) => to_mm - from_mm > ROUNDING_MM)
  const left_mm = quantity(totalLength_mm(left), 'mm')
  const fieldInput = fieldPath(door, sensor, field)
  return [
    {
      verdict: left_mm.value > 0 ? 'fail' : 'pass',
      subject: fieldSubject(counted),
      state: state.id,
      measured: left_mm,
      limit: quantity(0, 'mm'),
      steps: stepsOf(
        meeting,
        left_mm.value,
        [SURVEY, LEAF, sensorPath(door, sensor)],
        [`${fieldInput}/blanking`, `${fieldInput}/leafBlanking`],
      ),
      facts: { ...fieldFacts(counted), ...stateFacts(state), travel: leaf.travel, ...wayFacts(meeting, left) },
      restsOn: { inputs: [...SURROUNDINGS, LEAF, sensorPath(door, sensor)], values: [], bodies: [], sensors: [sensor] },
    },
  ]
}

function stepsOf({ met }: LeafMeeting, left_mm: number, inputs: readonly string[], blanking: readonly string[]): readonly Step[] {
  return [
    step(
      'way in the field',
      quantity(totalLength_mm(met), 'mm'),
      BY,
      { inputs },
      'positions of the closing edge at which the leaf meets a beam in the field',
    ),
    step(
      'way left',
      quantity(left_mm, 'mm'),
      'judge/leaf-in-field',
      { inputs: blanking, steps: ['way in the field'] },
      'way in the field - blanking windows',
    ),
  ]
}

function wayFacts({ travel_mm, met }: LeafMeeting, left: readonly Stretch[]): Draft['facts'] {
  const met_mm = totalLength_mm(met)
  const [longest] = [...left].sort((a, b) => b.to_mm - b.from_mm - (a.to_mm - a.from_mm))
  const base = { travel_mm, met_mm, blanked_mm: met_mm - totalLength_mm(left) }
  return longest ? { ...base, stretches: left.length, from_mm: longest.from_mm, to_mm: longest.to_mm } : base
}
