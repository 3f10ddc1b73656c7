import { bodyOf, box, cylinder } from '../cases/plain-door.ts'
import { driven, laneOf } from '../cases/plain-traffic.ts'
import { struckByLeaf } from '../src/judge/struck-by-leaf.ts'
import type { Door } from '../src/model/door.ts'
import { EDITIONS } from '../src/values/editions.ts'
import { referenceJob } from './reference-job.ts'

/** The reference job with a scanner on either side, three lanes both ways at 0.2 to 3 m/s, and three bodies: 54 passages, all phases of each. */
export function trafficJob(): () => readonly { readonly verdict: string }[] {
  const job = referenceJob()
  const timed = job.sensors.map((sensor) =>
    sensor.kind === 'ranging' ? { ...sensor, fields: sensor.fields.map((field) => ({ ...field, response_s: 0.08, hold_s: 0.3 })) } : sensor,
  )
  const mirrored = timed.map((sensor) =>
    sensor.kind === 'ranging'
      ? { ...sensor, id: 'other', pose: { ...sensor.pose, y_mm: -sensor.pose.y_mm, tilt_rad: -sensor.pose.tilt_rad } }
      : sensor,
  )
  const bodies = [
    bodyOf([box(300, 200, 1500)], { id: 'child' }),
    bodyOf([cylinder(250, 1750)], { id: 'person' }),
    bodyOf([box(1200, 2500, 2200)], { id: 'truck' }),
  ]
  const names = bodies.map(({ id }) => id)
  const lane = (id: string, xMin_mm: number, xMax_mm: number) =>
    laneOf({ id, xMin_mm, xMax_mm, bodies: names, slowest_mm_per_s: 200, fastest_mm_per_s: 3000 })
  const door: Door = {
    ...job,
    sensors: [...timed, ...mirrored],
    bodies: [...job.bodies, ...bodies],
    drive: driven({ stopDelay_s: 0.05, stopDecel_mm_per_s2: 3000 }),
    lanes: [lane('left', 300, 1700), lane('middle', 1800, 3200), lane('right', 3300, 4700)],
  }
  const unasked = () => {
    throw new Error('a lane needs no coverage')
  }
  return () => struckByLeaf.judge({ door, values: EDITIONS[0].values, coverage: unasked, maps: unasked, sightOf: unasked })
}
