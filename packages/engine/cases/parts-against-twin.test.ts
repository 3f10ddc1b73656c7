import { describe, expect, it } from 'vitest'
import { seenAlong } from '../src/coverage/seen-along.ts'
import type { BodyPart } from '../src/model/body.ts'
import { bodyOf, fan, level, lightGrid, ofParts, plainDoor, plainState, ranging } from './plain-door.ts'
import { type RandomNumbers, randomNumbers } from './random-numbers.ts'
import { twinSeesParts } from './slow-twin-parts.ts'

function randomPart(random: RandomNumbers): BodyPart {
  const place = {
    name: 'part',
    alongX_mm: random.between(-200, 200),
    alongY_mm: random.between(-600, 600),
    from_mm: random.chance(0.5) ? 0 : random.between(0, 1200),
    reflectance: random.chance(0.6) ? 0.001 : random.between(0.02, 0.6),
  }
  if (random.chance(0.3)) return { shape: 'cylinder', ...place, radius_mm: random.between(50, 300), height_mm: random.between(100, 1200) }
  const side = () => random.between(40, 700)
  return { shape: 'box', ...place, a_mm: side(), b_mm: side(), c_mm: side() }
}

function randomScene(seed: number) {
  const random = randomNumbers(seed)
  const parts = Array.from({ length: random.whole(2, 4) }, () => randomPart(random))
  const pose = { x_mm: 500, y_mm: random.between(-300, 300), z_mm: random.between(1800, 3000), yaw_rad: 0, roll_rad: 0.02 }
  const tilted = { ...pose, yaw_rad: random.between(-1, 1), tilt_rad: random.between(-0.6, 0.6) }
  const limits = random.chance(0.5) ? { top_mm: random.between(500, 1500), clearance_mm: random.between(0, 200) } : { yMax_mm: 700 }
  const scanner = ranging(
    [fan(-40, 40, 61)],
    { pose: tilted, maxRange_mm: 6000, rangeRef_mm: 6000, backgroundMargin_mm: 30, spotRadius_mm: random.chance(0.4) ? 12 : 0 },
    { clusterBeams: random.whole(1, 3), ...limits },
  )
  const sensor = random.chance(0.2) ? lightGrid([200, 700, 1100], random.between(-300, 300)) : scanner
  const floor = random.chance(0.5) ? level() : { ...level(10, [[-900, 0], [0, 40], [800, 0]]), slopeX: 0.01 } // biome-ignore format: a profile
  const yaw_rad = random.chance(0.5) ? 0 : random.between(-3, 3)
  const door = plainDoor({ sensors: [sensor], states: [plainState({ floor })], bodies: [bodyOf([ofParts(parts)])] })
  return { door, sensor, parts, yaw_rad, x_mm: random.between(200, 900), random }
}

// Second method, ours: the slow twin asks each beam which part it enters first, at single places
describe('a body of several parts, against the slow twin, seeds 1 to 40', () => {
  it('is seen wherever that is claimed, and where it is not claimed the twin hardly ever sees it', () => {
    const wrong: string[] = []
    let claimed = 0
    let unclaimed = 0
    let shaded = 0
    for (let seed = 1; seed <= 40; seed++) {
      const { door, sensor, parts, yaw_rad, x_mm, random } = randomScene(seed)
      const [state, body, field] = [door.states[0], door.bodies[0], sensor.fields[0]]
      const posture = body?.postures[0]
      if (!state || !body || !field || !posture) throw new Error('the scene must have a state, a body and a field')
      const stretches = seenAlong(door, state, { sensor, field })({ body, posture, index: 0, yaw_rad })(x_mm, -3000, 3000)
      const inside = stretches.flatMap(({ from_mm, to_mm }) => [from_mm, to_mm, random.between(from_mm, to_mm)])
      for (const y_mm of [...inside, ...Array.from({ length: 150 }, () => random.between(-1500, 1500))]) {
        const isClaimed = stretches.some(({ from_mm, to_mm }) => from_mm <= y_mm && y_mm <= to_mm)
        const isSeen = twinSeesParts(door, state, { sensor, field }, parts, yaw_rad, x_mm, y_mm)
        if (isClaimed) claimed++
        if (isClaimed && !isSeen) wrong.push(`seed ${seed}, y ${y_mm}`)
        const isNear = stretches.some(({ from_mm, to_mm }) => Math.min(Math.abs(y_mm - from_mm), Math.abs(y_mm - to_mm)) < 3)
        if (!isClaimed && isSeen && !isNear) unclaimed++
        if (!isSeen && parts.some((part) => twinSeesParts(door, state, { sensor, field }, [part], yaw_rad, x_mm, y_mm))) shaded++
      }
    }
    expect(wrong).toEqual([])
    expect(claimed).toBeGreaterThan(150)
    expect(shaded).toBeGreaterThan(15)
    expect(unclaimed).toBeLessThan(5)
  })
})
