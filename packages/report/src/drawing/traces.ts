import { type BeamSpot, beamSpots, type Door, type DoorState, floorHeight, floorPieces, type ZoneCoverage } from '@sillsight/engine'
import type { PlaneTrace } from './scene.ts'

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
  const floor = floorPieces(state.floor) // once: there are thousands of beams, and it is drawn while something is dragged
  return beamSpots(door, state)
    .filter(({ sensor, plane }) => counted.has(`${sensor}/${plane}`))
    .map(({ sensor, beams }) => ({
      sensor,
      spots: beams.map((beam) => ({ from_mm: beam.from, to_mm: beam.to, onFloor: isOnFloor(floor, beam) })),
    }))
}

function isOnFloor(floor: ReturnType<typeof floorPieces>, { to: [x_mm, y_mm, z_mm], end }: BeamSpot): boolean {
  return end === 'spot' && Math.abs(z_mm - floorHeight(floor, x_mm, y_mm)) < ON_FLOOR_MM
}
