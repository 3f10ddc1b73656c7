import { type CountedField, fieldName } from '../coverage/scene.ts'
import type { Door } from '../model/door.ts'
import type { InputPath } from '../model/source.ts'
import type { Zone } from '../model/zone.ts'
import { mustSee } from './coverage-drafts.ts'
import { orNoSubject, quantity, step } from './drafts.ts'
import { fieldFacts, fieldSubject, fieldsOfFunction } from './fields.ts'
import { fieldPath, zonePath } from './paths.ts'
import type { Draft, Rule } from './rule.ts'

/**
 * A field holds a standing body for as long as somebody may stay in the zone. One finding for each zone and field of its function, where
 * the zone asks for presence or says how long a stay may be. Measured is the time for which a body stands there after it was let go.
 *
 * Facts: `zone`, `zoneName`, `fieldFacts`, `heldForEver` (true, false), and as far as somebody said `presence_s` and `stay_s`.
 */
export const presenceTime: Rule = {
  id: 'presence-time',
  source: {
    basis: 'our decision',
    document: 'docs/method.md',
    clause: '2',
    note: 'a field that lets a standing body go counts as blind for longer stays',
  },
  judge: ({ door }) => {
    const zones = door.zones.filter((zone) => mustSee(zone) && (zone.function === 'presence' || zone.longestStay_s !== undefined))
    return orNoSubject(zones.flatMap((zone) => fieldsOfFunction(door, zone.function).map((counted) => draftOf(door, zone, counted))))
  },
}

function draftOf(door: Door, zone: Zone, counted: CountedField): Draft {
  const { sensor, field } = counted
  const held_s = field.presenceTime_s
  const stay_s = zone.longestStay_s
  const heldPath = `${fieldPath(door, sensor, field)}/presenceTime_s`
  const stayPath = `${zonePath(door, zone)}/longestStay_s`
  const frame = {
    subject: fieldSubject(counted),
    key: `${zone.id}/${fieldName(counted)}`,
    facts: {
      zone: zone.id,
      zoneName: zone.name,
      ...fieldFacts(counted),
      heldForEver: held_s === Infinity,
      ...(held_s !== undefined && held_s < Infinity ? { presence_s: held_s } : {}),
      ...(stay_s === undefined ? {} : { stay_s }),
    },
    restsOn: { inputs: [heldPath, stayPath], values: [], bodies: [], sensors: [sensor] },
  }
  const needs: InputPath[] = []
  if (held_s === undefined) needs.push(heldPath)
  if (stay_s === undefined && held_s !== Infinity) needs.push(stayPath)
  if (needs.length > 0) return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs, steps: [] }
  const unheld = quantity(held_s === Infinity ? 0 : Math.max(0, (stay_s ?? 0) - (held_s ?? 0)), 's')
  const inputs = held_s === Infinity ? [heldPath] : [heldPath, stayPath]
  return {
    ...frame,
    verdict: unheld.value > 0 ? 'fail' : 'pass',
    measured: unheld,
    limit: quantity(0, 's'),
    steps: [step('time unheld', unheld, 'judge/presence-time', { inputs }, 'max(0, longest stay - presence time)')],
  }
}
