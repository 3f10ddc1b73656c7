import { countedFields } from '../coverage/scene.ts'
import { totalLength_mm, without } from '../coverage/stretches.ts'
import type { Door } from '../model/door.ts'
import type { Zone } from '../model/zone.ts'
import { notApplicable, quantity, step, THE_DOOR } from './drafts.ts'
import { fieldsOfFunction } from './fields.ts'
import { CONCEPT, fieldPath, OPENING_WIDTH, SENSORS, ZONES, zonePath } from './paths.ts'
import type { Draft, RestsOn, Rule } from './rule.ts'

/**
 * A closing edge that is neither held to run nor limited in force needs presence detection on both sides of the leaf: zones of the purpose
 * presence at the leaf, with a presence field that counts, which together span the whole width of the opening on each side.
 *
 * Facts: `drive`, `closingEdge`, `sideA`, `sideB` (names), `unwatchedA_mm`, `unwatchedB_mm` (width of the opening without such a zone).
 */
export const presenceRequired: Rule = {
  id: 'presence-required',
  source: { basis: 'common practice' },
  judge: ({ door }) => {
    const { concept } = door
    if (!concept)
      return [
        {
          verdict: 'undetermined',
          reason: 'missing-input',
          needs: [CONCEPT],
          subject: THE_DOOR,
          steps: [],
          facts: sideNames(door),
          restsOn: restsOn(door),
        },
      ]
    const { drive, closingEdge } = concept
    if (drive === 'hold-to-run' || closingEdge === 'force-limited-edge')
      return [notApplicable('not-required-by-concept', { drive, closingEdge })]
    return [draftOf(door, { drive, closingEdge })]
  },
}

function draftOf(door: Door, concept: { readonly drive: string; readonly closingEdge: string }): Draft {
  const unwatchedA_mm = unwatched_mm(door, ({ yMax_mm }) => yMax_mm > 0)
  const unwatchedB_mm = unwatched_mm(door, ({ yMin_mm }) => yMin_mm < 0)
  const watched = (unwatchedA_mm === 0 ? 1 : 0) + (unwatchedB_mm === 0 ? 1 : 0)
  const inputs = [OPENING_WIDTH, ZONES, SENSORS]
  return {
    verdict: watched === 2 ? 'pass' : 'fail',
    subject: THE_DOOR,
    measured: quantity(watched, '1'),
    limit: quantity(2, '1'),
    steps: [
      step(
        'unwatched width on side A',
        quantity(unwatchedA_mm, 'mm'),
        'judge/presence-required',
        { inputs },
        'width - zones of presence at the leaf with y > 0',
      ),
      step(
        'unwatched width on side B',
        quantity(unwatchedB_mm, 'mm'),
        'judge/presence-required',
        { inputs },
        'width - zones of presence at the leaf with y < 0',
      ),
      step('sides watched', quantity(watched, '1'), 'judge/presence-required', {
        inputs: [CONCEPT],
        steps: ['unwatched width on side A', 'unwatched width on side B'],
      }),
    ],
    facts: { ...concept, ...sideNames(door), unwatchedA_mm, unwatchedB_mm },
    restsOn: restsOn(door),
  }
}

function unwatched_mm(door: Door, onThisSide: (zone: Zone) => boolean): number {
  const zones = door.zones.filter((zone) => zone.purpose === 'presence-at-leaf' && onThisSide(zone) && hasPresenceField(door, zone))
  const spans = zones.map(({ xMin_mm, xMax_mm }) => ({ from_mm: xMin_mm, to_mm: xMax_mm }))
  return totalLength_mm(without([{ from_mm: 0, to_mm: door.opening.width_mm }], spans))
}

function hasPresenceField(door: Door, zone: Zone): boolean {
  return countedFields(door, zone).some(({ field }) => field.function === 'presence')
}

function sideNames({ sides }: Door) {
  return { sideA: sides.a, sideB: sides.b }
}

/** Which field counts follows from its function alone; all else about a sensor is other rules' business. */
function restsOn(door: Door): RestsOn {
  const zones = door.zones.filter(({ purpose }) => purpose === 'presence-at-leaf')
  const functions = fieldsOfFunction(door, 'presence').map(({ sensor, field }) => `${fieldPath(door, sensor, field)}/function`)
  const inputs = [CONCEPT, OPENING_WIDTH, ...zones.map((zone) => zonePath(door, zone)), ...functions]
  return { inputs, values: [], bodies: [], sensors: [] }
}
