import { type SmallestBody, smallestBody } from '../coverage/smallest-body.ts'
import type { DoorState } from '../model/door.ts'
import type { Step } from '../model/finding.ts'
import type { SizeFamily, Zone } from '../model/zone.ts'
import { coverageInputs, mustSee, restsOnCoverage, zoneFacts } from './coverage-drafts.ts'
import { type Facts, orNoSubject, quantity, step } from './drafts.ts'
import { OBSTACLES, zonePath } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'

const BY = 'coverage/smallest-body'

/**
 * Of a family of similar boxes every size tried from the required one up is seen everywhere in the zone. Measured is the largest size tried at which
 * something goes unseen (0 if there is none): it must lie below the required size. One finding for each zone with a family, and state.
 *
 * Facts: `zoneFacts`, `tried` (number of sizes), `largest_mm`, `step_mm`; as far as they exist `smallest_mm` (from it up every size tried is seen everywhere)
 * with its sides `a_mm`, `b_mm`, `c_mm`, `unseen_mm` (the largest size that is not) and `required_mm`.
 */
export const smallestBodyRule: Rule = {
  id: 'smallest-body',
  source: { basis: 'our decision', document: 'docs/method.md', clause: '3', note: 'coverage, size by size' },
  judge: (context) => {
    const { zones, states } = context.door
    return orNoSubject(
      zones.flatMap((zone) => {
        const { family } = zone
        return family && mustSee(zone) ? states.map((state) => draftOf(context, zone, family, state)) : []
      }),
    )
  },
}

function draftOf(context: Context, zone: Zone, family: SizeFamily, state: DoorState): Draft {
  const { door } = context
  const path = `${zonePath(door, zone)}/family`
  const answer = smallestBody(door, zone, state, family)
  const measured = quantity(answer.unseen_mm ?? 0, 'mm')
  const frame = {
    subject: { kind: 'zone', id: zone.id } as const,
    state: state.id,
    provisional: 'grid' as const,
    steps: stepsOf(context, zone, path, answer),
    facts: { ...zoneFacts({ zone, state }), ...factsOf(family, answer) },
    restsOn: { ...restsOnCoverage(context, zone), bodies: [] },
  }
  if (!answer.anythingFree) return { ...frame, verdict: 'undetermined', reason: 'nothing-free', needs: [zonePath(door, zone), OBSTACLES] }
  if (family.required_mm === undefined)
    return { ...frame, measured, verdict: 'undetermined', reason: 'missing-input', needs: [`${path}/required_mm`] }
  return { ...frame, measured, limit: quantity(family.required_mm, 'mm'), verdict: measured.value < family.required_mm ? 'pass' : 'fail' }
}

function stepsOf({ door }: Context, zone: Zone, path: string, { tried_mm, unseen_mm, smallest_mm }: SmallestBody): readonly Step[] {
  const inputs = [...coverageInputs(door, zone), path]
  const tried = step(
    'sizes tried',
    quantity(tried_mm.length, '1'),
    BY,
    { inputs },
    'largest, largest - step, ... until one goes unseen; and the required size',
  )
  const unseen = step('largest unseen size', quantity(unseen_mm ?? 0, 'mm'), BY, { steps: ['sizes tried'] })
  if (smallest_mm === undefined) return [tried, unseen]
  return [
    tried,
    unseen,
    step(
      'seen from',
      quantity(smallest_mm, 'mm'),
      BY,
      { steps: ['sizes tried'] },
      'smallest size such that every larger one tried is seen everywhere',
    ),
  ]
}

function factsOf(
  { largest_mm, step_mm, required_mm, proportions: [a, b, c] }: SizeFamily,
  { tried_mm, smallest_mm, unseen_mm }: SmallestBody,
): Facts {
  return {
    tried: tried_mm.length,
    largest_mm,
    step_mm,
    ...(smallest_mm === undefined ? {} : { smallest_mm, a_mm: a * smallest_mm, b_mm: b * smallest_mm, c_mm: c * smallest_mm }),
    ...(unseen_mm === undefined ? {} : { unseen_mm }),
    ...(required_mm === undefined ? {} : { required_mm }),
  }
}
