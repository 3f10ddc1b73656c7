import { coverageMaps } from '../src/coverage/maps.ts'
import { judge } from '../src/judge/judge.ts'
import type { Body } from '../src/model/body.ts'
import type { Door, DoorState, Tolerances } from '../src/model/door.ts'
import type { Zone } from '../src/model/zone.ts'
import { radians } from '../src/space/trigonometry.ts'
import { alone, disturbed, firstCell } from './built-doors.ts'
import { withRanging } from './door-changes.ts'
import { bodyOf, box, plainDoor, plainState, plainZone, ranging } from './plain-door.ts'
import { randomNumbers } from './random-numbers.ts'

export const TOLERANCES: Tolerances = {
  length_mm: 5,
  position_mm: 5,
  tilt_rad: radians(0.3),
  roll_rad: radians(0.3),
  yaw_rad: radians(0.3),
  floor_mm: 5,
  range: 0.05,
}

const MIDDLE = 'p1'
const PLANES = [-3, 0, 3].map((offset_deg, k) => ({
  kind: 'fan' as const,
  id: `p${k}`,
  offset_rad: radians(offset_deg),
  fovMin_rad: radians(-50),
  fovMax_rad: radians(50),
  beamCount: 401,
}))

/** A zone of 1400 x 200 under a scanner of three planes at 2.4 m, with a post beside it: it passes over all tolerances. */
export const tolerantDoor: Door = plainDoor({
  bodies: [bodyOf([box(700, 300, 200), box(300, 700, 200), box(200, 300, 700)])],
  zones: [plainZone({ xMin_mm: 300, xMax_mm: 1700, yMin_mm: -100, yMax_mm: 100, pitch_mm: 50 })],
  states: [
    plainState({
      obstacles: [
        { id: 'post', name: 'post', implied: false, shape: 'post', x_mm: 100, y_mm: 300, radius_mm: 40, from_mm: 0, to_mm: 1200 },
      ],
    }),
  ],
  sensors: [
    ranging(
      PLANES,
      { pose: { x_mm: 1000, y_mm: 0, z_mm: 2400, yaw_rad: 0, tilt_rad: 0, roll_rad: 0 }, backgroundMargin_mm: 40 },
      { clearance_mm: 20 },
    ),
  ],
  tolerances: TOLERANCES,
})

/** Whether the zone passes over all tolerances. */
export function passesForAll(door: Door): boolean {
  const covered = judge(door).findings.find(({ rule }) => rule === 'zone-covered')
  return covered?.verdict === 'pass' && covered.facts['tolerantArea_mm2'] === 0
}

const GRAIN_MM = 2

/** What may only just do: the body's size along the opening, through it, or its height. */
export type Tight = 'x' | 'y' | 'z'

/**
 * One plane along a narrow zone, and the smallest body with which it passes: 2 mm less and it does not. So whatever the program leaves out of its
 * bounds lets through a body that some door within the tolerances does not see.
 */
export function tightestDoor(tight: Tight): Door {
  const turned = tight === 'x'
  const [along_mm, across_mm] = [500, 20] // half
  const [x_mm, y_mm] = turned ? [across_mm, along_mm] : [along_mm, across_mm]
  const onePlane = withRanging(tolerantDoor, (sensor) => ({
    ...sensor,
    pose: { ...sensor.pose, yaw_rad: turned ? radians(90) : 0 },
    planes: PLANES.filter(({ id }) => id === MIDDLE),
    fields: sensor.fields.map((field) => ({ ...field, planes: [MIDDLE] })),
  }))
  const door = (size_mm: number): Door => ({
    ...onePlane,
    bodies: [bodyOf([box(turned ? size_mm : 400, tight === 'y' ? size_mm : 400, tight === 'z' ? size_mm : 200)])],
    zones: [plainZone({ xMin_mm: 1000 - x_mm, xMax_mm: 1000 + x_mm, yMin_mm: -y_mm, yMax_mm: y_mm, pitch_mm: 10 })],
  })
  for (let size_mm = 20; size_mm < 300; size_mm += GRAIN_MM) if (passesForAll(door(size_mm))) return door(size_mm)
  throw new Error('some body must pass')
}

/** Doors built at random within the tolerances, each with a body at a random place of the zone, often on its edge: those that do not see it. */
export function unseenInPoses(door: Door, first: number, count: number): readonly string[] {
  const [zone, body] = [door.zones[0] as Zone, door.bodies[0] as Body]
  const found: string[] = []
  for (let seed = first; seed < first + count; seed++) {
    const random = randomNumbers(seed)
    const built = disturbed(door, TOLERANCES, random)
    const posture = random.whole(0, body.postures.length - 1)
    const place = (low: number, high: number) => (random.chance(0.5) ? random.pick([low, high]) : random.between(low, high))
    const [x, y] = [place(zone.xMin_mm, zone.xMax_mm), place(zone.yMin_mm, zone.yMax_mm)]
    const one = alone(built, zone, body.id, posture, 0, x, y)
    const maps = coverageMaps(one.door, one.zone, built.states[0] as DoorState)
    if (firstCell(maps.seen) !== 1) found.push(`seed ${seed}: posture ${posture} at ${x}, ${y}`)
  }
  return found
}
