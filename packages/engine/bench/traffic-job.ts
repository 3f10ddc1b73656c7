import { bodyOf, box, cylinder } from '../cases/plain-door.ts'
import { driven, laneOf } from '../cases/plain-traffic.ts'
import { struckByLeaf } from '../src/judge/struck-by-leaf.ts'
import { walkedInto } from '../src/judge/walked-into.ts'
import type { Door } from '../src/model/door.ts'
import type { RangingSensor } from '../src/model/sensor.ts'
import { radians } from '../src/space/trigonometry.ts'
import { EDITIONS } from '../src/values/editions.ts'
import { referenceJob } from './reference-job.ts'

/**
 * The reference job with a scanner on either side, three lanes both ways at 0.2 to 3 m/s, and three bodies: 54 passages, all phases of each. With the
 * steep planes of the reference job somebody is met; with as many beams spread out to 10 m, and a leaf that opens at 3 m/s, nobody is.
 */
export function trafficDoor(reaches: 'near' | 'far'): Door {
  const job = referenceJob()
  const [scanner] = job.sensors as readonly [RangingSensor]
  const near = { ...scanner, fields: scanner.fields.map((field) => ({ ...field, response_s: 0.08, hold_s: 0.3 })) }
  const wide = reaches === 'near' ? near : spreadOut(near)
  const other = { ...wide, id: 'other', pose: { ...wide.pose, y_mm: -wide.pose.y_mm, tilt_rad: -wide.pose.tilt_rad } }
  const bodies = [
    bodyOf([box(300, 200, 1500)], { id: 'child' }),
    bodyOf([cylinder(250, 1750)], { id: 'person' }),
    bodyOf([box(1200, 2500, 2200)], { id: 'truck' }),
  ]
  const names = bodies.map(({ id }) => id)
  const lane = (id: string, xMin_mm: number, xMax_mm: number) =>
    laneOf({ id, xMin_mm, xMax_mm, bodies: names, slowest_mm_per_s: 200, fastest_mm_per_s: 3000 })
  const quick = { openSpeed_mm_per_s: 3000, openAccel_mm_per_s2: 6000 }
  return {
    ...job,
    sensors: [wide, reaches === 'near' ? other : mirroredPlanes(other)],
    bodies: [...job.bodies, ...bodies],
    drive: driven({ stopDelay_s: 0.05, stopDecel_mm_per_s2: 3000, ...(reaches === 'near' ? {} : quick) }),
    lanes: [lane('left', 300, 1700), lane('middle', 1800, 3200), lane('right', 3300, 4700)],
  }
}

/** Ten planes of 151 beams in place of five of 301, the outermost at 58 degrees from straight down. */
function spreadOut(scanner: RangingSensor): RangingSensor {
  const planes = [-2, 2, 6, 11, 17, 24, 32, 41, 50, 58].map((lean, i) => ({
    kind: 'fan' as const,
    id: `p${i}`,
    offset_rad: radians(lean) - scanner.pose.tilt_rad,
    fovMin_rad: radians(-55),
    fovMax_rad: radians(55),
    beamCount: 151,
  }))
  return { ...scanner, planes, fields: scanner.fields.map((field) => ({ ...field, planes: planes.map(({ id }) => id) })) }
}

function mirroredPlanes(scanner: RangingSensor): RangingSensor {
  return { ...scanner, planes: scanner.planes.map((plane) => (plane.kind === 'fan' ? { ...plane, offset_rad: -plane.offset_rad } : plane)) }
}

/** Both rules about lanes, as one judgement asks them. */
export function bothRules(door: Door): readonly { readonly verdict: string }[] {
  const unasked = () => {
    throw new Error('a lane needs no coverage')
  }
  const context = { door, values: EDITIONS[0].values, coverage: unasked, maps: unasked, sightOf: unasked }
  return [...struckByLeaf.judge(context), ...walkedInto.judge(context)]
}
