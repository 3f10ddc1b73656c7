import { type BeamSpot, beamSpots, type Door, type DoorState, type ZoneCoverage } from '@sillsight/engine'
import { floorAt, type PlaneTrace } from './scene.ts'

/** A spot so near to the floor lies on it: spots are computed in floating point from far away. */
const ON_FLOOR_MM = 0.5

/** Where the beams end that counted for an answer, plane by plane. Light grids draw themselves by their ends and are left out. */
export function tracesOf(door: Door, state: DoorState, coverage: ZoneCoverage | undefined): readonly PlaneTrace[] {
  const ranging = door.sensors.flatMap((sensor) => (sensor.kind === 'ranging' ? [sensor] : []))
  const counted = new Set(
    ranging.flatMap(({ id, fields }) =>
      fields
        .filter((field) => coverage === undefined || coverage.countedFields.includes(`${id}/${field.id}`))
        .flatMap(({ planes }) => planes.map((plane) => `${id}/${plane}`)),
    ),
  )
  return beamSpots(door, state)
    .filter(({ sensor, plane }) => counted.has(`${sensor}/${plane}`))
    .map(({ sensor, beams }) => ({
      sensor,
      spots: beams.map((beam) => ({ from_mm: beam.from, to_mm: beam.to, onFloor: isOnFloor(state, beam) })),
    }))
}

function isOnFloor({ floor }: DoorState, { to: [x_mm, y_mm, z_mm], end }: BeamSpot): boolean {
  return end === 'spot' && Math.abs(z_mm - floorAt(floor, x_mm, y_mm)) < ON_FLOOR_MM
}
