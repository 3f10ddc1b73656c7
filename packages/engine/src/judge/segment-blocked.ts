import { nearestThings } from '../coverage/nearest-things.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { SegmentSensor } from '../model/sensor.ts'
import { beamsOf } from '../seeing/beams.ts'
import { stateFacts } from './coverage-drafts.ts'
import { orNoSubject, quantity, step } from './drafts.ts'
import { SURROUNDINGS, SURVEY, sensorPath } from './paths.ts'
import type { Draft, Rule } from './rule.ts'

/**
 * Nothing that always stands there, and no floor, interrupts a beam of a light grid or photo-eye: it could never work. One finding for
 * each such sensor and state.
 *
 * Facts: `sensor`, `sensorName`, `stateFacts`, `blocked`, `beams` (numbers), and of the first blocked beam `plane`, `beam` (counted from 1 in its
 * plane), `at_mm` (along it) and `obstacle`, `obstacleName` (absent for the floor).
 */
export const segmentBlocked: Rule = {
  id: 'segment-blocked',
  source: { basis: 'our decision', document: 'docs/method.md', clause: '1', note: 'segments that a fixed obstacle meets' },
  judge: ({ door }) => {
    const sensors = door.sensors.filter((sensor) => sensor.kind === 'segment')
    return orNoSubject(sensors.flatMap((sensor) => door.states.map((state) => draftOf(door, sensor, state))))
  },
}

function draftOf(door: Door, sensor: SegmentSensor, state: DoorState): Draft {
  const beams = beamsOf(sensor)
  const { distances_mm, things } = nearestThings(beams, state)
  const blocked = [...distances_mm.keys()].filter((i) => (distances_mm[i] as number) < (beams.length[i] as number))
  const count = quantity(blocked.length, '1')
  const path = sensorPath(door, sensor)
  const [first] = blocked
  const thing = first === undefined ? undefined : things[first]
  const plane = beams.planes.find(({ end }) => first !== undefined && first < end)
  return {
    verdict: blocked.length > 0 ? 'fail' : 'pass',
    subject: { kind: 'sensor', id: sensor.id },
    state: state.id,
    measured: count,
    limit: quantity(0, '1'),
    steps: [
      step(
        'blocked beams',
        count,
        'coverage/nearest-things',
        { inputs: [SURVEY, path] },
        'beams that meet an obstacle or the floor before their end',
      ),
    ],
    facts: {
      sensor: sensor.id,
      sensorName: sensor.name,
      ...stateFacts(state),
      blocked: blocked.length,
      beams: beams.count,
      ...(first !== undefined && plane ? { plane: plane.id, beam: first - plane.first + 1, at_mm: distances_mm[first] as number } : {}),
      ...(thing && thing !== 'floor' ? { obstacle: thing.id, obstacleName: thing.name } : {}),
    },
    restsOn: { inputs: [...SURROUNDINGS, path], values: [], bodies: [], sensors: [sensor] },
  }
}
