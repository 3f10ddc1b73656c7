import { type Body, type Posture, partsOf } from '../model/body.ts'
import type { Door } from '../model/door.ts'
import type { Zone } from '../model/zone.ts'
import { bodiesOf } from './coverage-drafts.ts'
import { orNoSubject, quantity, step } from './drafts.ts'
import { bodyPath, zonePath } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'

/**
 * Presence at the leaf is judged with a body that is no larger than the reference body: one whose every posture would fit inside of it, however
 * that one lies. One finding for each zone of presence at the leaf.
 *
 * Facts: `zone`, `zoneName`, `fitting` (number of bodies that fit), `bodies` (number of the zone), `a_mm`, `b_mm`, `c_mm` (the reference body,
 * longest side first), and where one fits `body`, `bodyName`.
 */
export const referenceBody: Rule = {
  id: 'reference-body',
  source: { basis: 'common practice', note: 'presence detection is tested with a reference body; which one, the outside value says' },
  judge: (context) => {
    const zones = context.door.zones.filter(({ purpose }) => purpose === 'presence-at-leaf')
    return orNoSubject(zones.map((zone) => draftOf(context, zone)))
  },
}

function draftOf({ door, values }: Context, zone: Zone): Draft {
  const reference = values.presenceReferenceBody
  const [a_mm = 0, b_mm = 0, c_mm = 0] = sortedDown(reference.value)
  const bodies = bodiesOf(door, zone)
  const fitting = bodies.filter(({ postures }) => postures.every((posture) => fitsInside(posture, [a_mm, b_mm, c_mm])))
  const [first] = fitting
  const count = quantity(fitting.length, '1')
  const inputs = [`${zonePath(door, zone)}/bodies`, ...bodies.map((body) => bodyPath(door, body))]
  return {
    verdict: fitting.length > 0 ? 'pass' : 'fail',
    subject: { kind: 'zone', id: zone.id },
    measured: count,
    limit: quantity(1, '1'),
    steps: [
      step(
        'bodies that fit',
        count,
        'judge/reference-body',
        { inputs, values: [reference] },
        'sides in falling order, none longer than its counterpart',
      ),
    ],
    facts: {
      zone: zone.id,
      zoneName: zone.name,
      fitting: fitting.length,
      bodies: bodies.length,
      a_mm,
      b_mm,
      c_mm,
      ...(first ? { body: first.id, bodyName: first.name } : {}),
    },
    restsOn: { inputs: inputsOf(door, zone, fitting), values: [reference], bodies: [], sensors: [] },
  }
}

function inputsOf(door: Door, zone: Zone, bodies: readonly Body[]): readonly string[] {
  return [zonePath(door, zone), ...bodies.map((body) => bodyPath(door, body))]
}

/** A cylinder counts as the upright box around it. */
function fitsInside(posture: Posture, reference: readonly number[]): boolean {
  if (partsOf(posture)) return false
  const sides =
    posture.shape === 'box' ? [posture.a_mm, posture.b_mm, posture.c_mm] : [posture.radius_mm * 2, posture.radius_mm * 2, posture.height_mm]
  return sortedDown(sides).every((side, i) => side <= (reference[i] ?? 0))
}

function sortedDown(sides: readonly number[]): readonly number[] {
  return [...sides].sort((a, b) => b - a)
}
