import { type DeadGround, deadGround } from '../coverage/dead-ground.ts'
import type { DoorState } from '../model/door.ts'
import type { Step } from '../model/finding.ts'
import type { RangingSensor } from '../model/sensor.ts'
import type { Zone } from '../model/zone.ts'
import { coverageInputs, restsOnCoverage, zoneFacts } from './coverage-drafts.ts'
import { type Facts, orNoSubject, quantity, step } from './drafts.ts'
import { countedSensors } from './fields.ts'
import { zonePath } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'

const BY = 'coverage/dead-ground'

/**
 * At the foot of a sensor that watches the leaf no place that no posture of any body is seen in is larger than the zone allows. What another sensor
 * of the zone sees there does not count against it. One finding for each zone of presence at the leaf, ranging sensor that counts for it, and state.
 *
 * Facts: `zoneFacts`, `sensor`, `sensorName`, `cells`, `area_mm2`, `diameter_mm`, `depth_mm` (from the mid-plane of the leaf) of the dead ground;
 * where there is some `xMin_mm`, `xMax_mm`, `yMin_mm`, `yMax_mm`; `leftCells`, `leftDiameter_mm` (what no other sensor sees either, its largest piece).
 */
export const deadGroundRule: Rule = {
  id: 'dead-ground',
  source: {
    basis: 'our decision',
    document: 'docs/method.md',
    clause: '3',
    note: 'the floor near a sensor where none of its beams sees a body',
  },
  judge: (context) => {
    const { door } = context
    const zones = door.zones.filter(({ purpose }) => purpose === 'presence-at-leaf')
    return orNoSubject(
      zones.flatMap((zone) =>
        rangingSensors(context, zone).flatMap((sensor) => door.states.map((state) => draftOf(context, zone, sensor, state))),
      ),
    )
  },
}

function rangingSensors({ door }: Context, zone: Zone): readonly RangingSensor[] {
  return countedSensors(door, zone).filter((sensor) => sensor.kind === 'ranging')
}

function draftOf(context: Context, zone: Zone, sensor: RangingSensor, state: DoorState): Draft {
  const ground = deadGround(context.door, zone, state, sensor, context.maps(zone, state), context.sightOf)
  const { diameter_mm, worstCase } = ground.left
  const tooLarge = diameter_mm > zone.allowedPocket_mm
  return {
    verdict: tooLarge ? 'fail' : 'pass',
    subject: { kind: 'sensor', id: sensor.id },
    key: `${zone.id}/${sensor.id}`,
    state: state.id,
    provisional: 'grid',
    measured: quantity(diameter_mm, 'mm'),
    limit: quantity(zone.allowedPocket_mm, 'mm'),
    steps: stepsOf(context, zone, sensor, ground),
    facts: { ...zoneFacts({ zone, state }), sensor: sensor.id, sensorName: sensor.name, ...groundFacts(ground) },
    restsOn: restsOnCoverage(context, zone),
    ...(tooLarge && worstCase ? { worstCase } : {}),
  }
}

function stepsOf({ door }: Context, zone: Zone, sensor: RangingSensor, { area_mm2, depth_mm, left }: DeadGround): readonly Step[] {
  const inputs = coverageInputs(door, zone, [sensor])
  return [
    step('dead ground', quantity(area_mm2, 'mm2'), BY, { inputs }, 'cells at the foot of the sensor where it sees no posture of any body'),
    step('depth', quantity(depth_mm, 'mm'), BY, { steps: ['dead ground'] }, 'largest |y| of its cells'),
    step(
      'left by other sensors',
      quantity(left.diameter_mm, 'mm'),
      BY,
      { inputs: coverageInputs(door, zone), steps: ['dead ground'] },
      'largest distance between two points of its cells',
    ),
    step('allowed pocket', quantity(zone.allowedPocket_mm, 'mm'), 'judge/dead-ground', {
      inputs: [`${zonePath(door, zone)}/allowedPocket_mm`],
    }),
  ]
}

function groundFacts({ cells, area_mm2, diameter_mm, depth_mm, extent, left }: DeadGround): Facts {
  return { cells, area_mm2, diameter_mm, depth_mm, ...extent, leftCells: left.cells, leftDiameter_mm: left.diameter_mm }
}
