import { fieldEdges } from '../coverage/field-edges.ts'
import { type CountedField, countedFields } from '../coverage/scene.ts'
import type { DoorState } from '../model/door.ts'
import type { Zone } from '../model/zone.ts'
import { guardedHeight as value } from '../values/doors.ts'
import { in_mm } from '../values/in-mm.ts'
import { zoneFacts } from './coverage-drafts.ts'
import { orNoSubject, quantity, step } from './drafts.ts'
import { fieldFacts } from './fields.ts'
import { FLOOR, fieldPath, OPENING_HEIGHT, sensorPath, zonePath } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'

/**
 * Presence detection at the leaf watches up to the height to which closing edges have to be guarded, or as far as the opening is high. Judged by
 * the field of the zone whose upper edge is highest: a body that is entered above the top of a field is not taken, however far down it reaches.
 * One finding for each zone of presence at the leaf that has a counting field, and state.
 *
 * Facts: `zoneFacts`, `fieldFacts` of that field, `topless` (true where the field has no top), `openingHeight_mm`.
 */
export const guardedHeight: Rule = {
  id: 'guarded-height',
  source: value.source,
  judge: (context) => {
    const { door } = context
    const zones = door.zones.filter(({ purpose }) => purpose === 'presence-at-leaf')
    return orNoSubject(zones.flatMap((zone) => door.states.flatMap((state) => draftsOf(context, zone, state))))
  },
}

function draftsOf(context: Context, zone: Zone, state: DoorState): readonly Draft[] {
  const { door, values } = context
  const best = highest(countedFields(door, zone), state)
  if (!best) return []
  const { counted, upper_mm } = best
  const { sensor, field } = counted
  const height_mm = door.opening.height_mm
  const measured = quantity(Math.min(upper_mm, height_mm), 'mm')
  const limit = quantity(Math.min(in_mm(values.guardedHeight), height_mm), 'mm')
  const fields = sensor.kind === 'ranging' ? [`${fieldPath(door, sensor, field)}/top_mm`] : [sensorPath(door, sensor), FLOOR]
  return [
    {
      verdict: measured.value >= limit.value ? 'pass' : 'fail',
      subject: { kind: 'zone', id: zone.id },
      state: state.id,
      measured,
      limit,
      steps: [
        step(
          'guarded up to',
          measured,
          'coverage/field-edges',
          { inputs: [...fields, OPENING_HEIGHT] },
          'min(upper edge of the field, clear height)',
        ),
        step(
          'to be guarded',
          limit,
          'judge/guarded-height',
          { inputs: [OPENING_HEIGHT], values: [values.guardedHeight] },
          'min(guarded height, clear height)',
        ),
      ],
      facts: { ...zoneFacts({ zone, state }), ...fieldFacts(counted), topless: upper_mm === Infinity, openingHeight_mm: height_mm },
      restsOn: { inputs: [...fields, OPENING_HEIGHT, zonePath(door, zone)], values: [values.guardedHeight], bodies: [], sensors: [sensor] },
    },
  ]
}

/** The field whose upper edge is highest; the first on a tie. */
function highest(
  fields: readonly CountedField[],
  state: DoorState,
): { readonly counted: CountedField; readonly upper_mm: number } | undefined {
  let best: { readonly counted: CountedField; readonly upper_mm: number } | undefined
  for (const counted of fields) {
    const { upper_mm } = fieldEdges(counted, state)
    if (best === undefined || upper_mm > best.upper_mm) best = { counted, upper_mm }
  }
  return best
}
