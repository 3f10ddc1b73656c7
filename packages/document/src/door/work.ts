import type { Door } from '@sillsight/engine'
import { BOUNDS } from '../bounds.ts'
import type { Remarks } from '../remarks.ts'

/** Refuses a door whose parts, each within its bound, together would keep the judge busy without end. */
export function checkWork(door: Door, remarks: Remarks): void {
  const beams = door.sensors.reduce((sum, sensor) => sum + beamsOf(sensor), 0)
  if (beams > BOUNDS.beams)
    remarks.issue({
      code: 'too-much',
      path: 'sensors',
      expected: `at most ${BOUNDS.beams} beams at one door`,
      got: `${beams}`,
      repair: 'leave out sensors or planes',
    })
}

function beamsOf(sensor: Door['sensors'][number]): number {
  if (sensor.kind === 'zone-only') return 0
  if (sensor.kind === 'segment') return sensor.planes.reduce((sum, plane) => sum + plane.segments.length, 0)
  return sensor.planes.reduce((sum, plane) => sum + (plane.kind === 'fan' ? plane.beamCount : plane.places.length), 0)
}
