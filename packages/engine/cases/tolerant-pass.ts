import { expect } from 'vitest'
import { coverageMaps } from '../src/coverage/maps.ts'
import { judge } from '../src/judge/judge.ts'
import type { Door, DoorState, Tolerances } from '../src/model/door.ts'
import type { Zone } from '../src/model/zone.ts'
import { radians } from '../src/space/trigonometry.ts'
import { alone, disturbed, firstCell } from './built-doors.ts'
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

/** Doors built at random within the tolerances, each with a body at a random place of the zone: those that do not see it. */
export function unseenInPoses(first: number, count: number): readonly string[] {
  const [zone, body] = [tolerantDoor.zones[0] as Zone, tolerantDoor.bodies[0]]
  const found: string[] = []
  for (let seed = first; seed < first + count; seed++) {
    const random = randomNumbers(seed)
    const built = disturbed(tolerantDoor, TOLERANCES, random)
    const posture = random.whole(0, 2)
    const [x, y] = [random.between(zone.xMin_mm, zone.xMax_mm), random.between(zone.yMin_mm, zone.yMax_mm)]
    const one = alone(built, zone, body?.id ?? '', posture, 0, x, y)
    const maps = coverageMaps(one.door, one.zone, built.states[0] as DoorState)
    if (firstCell(maps.seen) !== 1) found.push(`seed ${seed}: posture ${posture} at ${x}, ${y}`)
  }
  return found
}

export function expectPassForAll(): void {
  const covered = judge(tolerantDoor, { depth: 'exact' }).findings.find((f) => f.rule === 'zone-covered')
  expect(covered).toMatchObject({ verdict: 'pass', facts: { tolerantArea_mm2: 0 } })
}
