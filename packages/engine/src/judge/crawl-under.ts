import { fieldEdges } from '../coverage/field-edges.ts'
import { type CountedField, countedFields } from '../coverage/scene.ts'
import type { DoorState } from '../model/door.ts'
import type { Zone } from '../model/zone.ts'
import { in_mm } from '../values/in-mm.ts'
import { zoneFacts } from './coverage-drafts.ts'
import { orNoSubject, quantity, step } from './drafts.ts'
import { fieldFacts } from './fields.ts'
import { FLOOR, fieldPath, sensorPath, zonePath } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'

/**
 * Presence detection at the leaf begins low enough that nobody crawls under it. Judged by the field of the zone whose lower edge is lowest.
 * The height comes from a standard about machinery, where it is about detection zones that lie level; that it holds for the lower edge of
 * every presence field at a leaf is our decision. One finding for each zone of presence at the leaf that has a counting field, and state.
 *
 * Facts: `zoneFacts`, `fieldFacts` of that field.
 */
export const crawlUnder: Rule = {
  id: 'crawl-under',
  source: {
    basis: 'our decision',
    document: 'docs/rules.md',
    note: 'the published height, applied to the lower edge of every presence field at a leaf',
  },
  judge: (context) => {
    const { door } = context
    const zones = door.zones.filter(({ purpose }) => purpose === 'presence-at-leaf')
    return orNoSubject(zones.flatMap((zone) => door.states.flatMap((state) => draftsOf(context, zone, state))))
  },
}

function draftsOf({ door, values }: Context, zone: Zone, state: DoorState): readonly Draft[] {
  const best = lowest(countedFields(door, zone), state)
  if (!best) return []
  const { counted, lower_mm } = best
  const { sensor, field } = counted
  const measured = quantity(lower_mm, 'mm')
  const limit = quantity(in_mm(values.crawlUnderHeight), 'mm')
  const inputs = sensor.kind === 'ranging' ? [`${fieldPath(door, sensor, field)}/clearance_mm`] : [sensorPath(door, sensor), FLOOR]
  return [
    {
      verdict: measured.value <= limit.value ? 'pass' : 'fail',
      subject: { kind: 'zone', id: zone.id },
      state: state.id,
      measured,
      limit,
      steps: [
        step(
          'lower edge',
          measured,
          'coverage/field-edges',
          { inputs },
          'clearance of the field, or height of its lowest beam above the floor',
        ),
        step('crawl-under height', limit, 'judge/crawl-under', { values: [values.crawlUnderHeight] }),
      ],
      facts: { ...zoneFacts({ zone, state }), ...fieldFacts(counted) },
      restsOn: { inputs: [...inputs, zonePath(door, zone)], values: [values.crawlUnderHeight], bodies: [], sensors: [sensor] },
    },
  ]
}

/** The field whose lower edge is lowest; the first on a tie. A grid that has no beam in its field has no edge. */
function lowest(
  fields: readonly CountedField[],
  state: DoorState,
): { readonly counted: CountedField; readonly lower_mm: number } | undefined {
  let best: { readonly counted: CountedField; readonly lower_mm: number } | undefined
  for (const counted of fields) {
    const { lower_mm } = fieldEdges(counted, state)
    if (lower_mm < (best?.lower_mm ?? Infinity)) best = { counted, lower_mm }
  }
  return best
}
