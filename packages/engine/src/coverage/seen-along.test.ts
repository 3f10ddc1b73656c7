import { describe, expect, it } from 'vitest'
import { bodyOf, box, cylinder, downward, fan, level, lightGrid, plainDoor, plainState, ranging } from '../../cases/plain-door.ts'
import { randomNumbers } from '../../cases/random-numbers.ts'
import type { Door } from '../model/door.ts'
import { looker } from './looking.ts'
import { countedFields, stancesOf } from './scene.ts'
import { seenAlong } from './seen-along.ts'

function along(changes: Partial<Door>, x_mm: number, reach_mm = 3000) {
  const door = plainDoor(changes)
  const [zone, state] = [door.zones[0], door.states[0]]
  if (!zone || !state) throw new Error('the plain door must have a zone and a state')
  const [counted] = countedFields(door, zone)
  const [stance] = stancesOf(door, zone).stances
  if (!counted || !stance) throw new Error('the plain door must have a field and a body')
  const { look } = looker(door, zone, state)
  return {
    stretches: seenAlong(door, state, counted)(stance)(x_mm, -reach_mm, reach_mm),
    sees: (y_mm: number) => look(stance, x_mm, y_mm).fields[0]?.sees === true,
  }
}

describe('seenAlong', () => {
  // Hand calculation: a beam straight down at y = 0 meets a body 100 deep while its middle is within 50 of it
  it('finds the stretch over which one beam meets a body, to a millimetre and never more', () => {
    const { stretches } = along({}, 500)
    expect(stretches).toHaveLength(1)
    expect(stretches[0]?.from_mm).toBeGreaterThan(-50)
    expect(stretches[0]?.from_mm).toBeLessThan(-49)
    expect(stretches[0]?.to_mm).toBeLessThan(50)
    expect(stretches[0]?.to_mm).toBeGreaterThan(49)
  })

  it('finds nothing beside the beam, and two stretches under two beams that stand apart', () => {
    expect(along({}, 600).stretches).toEqual([])
    const places = [-200, 300].map((y_mm) => ({ x_mm: 500, y_mm, z_mm: 2000 }))
    expect(along({ sensors: [downward(places)] }, 500).stretches).toHaveLength(2)
  })

  it('agrees with the predicate at places on slopes, behind clusters, for boxes, cylinders and light grids, but for a millimetre at each end', () => {
    const floor = level(10, [[-1000, 0], [-200, 0], [400, 60], [2000, 60]]) // biome-ignore format: a profile
    const scanner = ranging(
      [fan(-30, 60, 91)],
      { pose: { x_mm: 300, y_mm: 100, z_mm: 2400, yaw_rad: 0.3, tilt_rad: 0.4, roll_rad: 0 } },
      { clusterBeams: 2 },
    )
    const random = randomNumbers(3)
    for (const sensors of [[scanner], [lightGrid([300, 700], 120)]])
      for (const posture of [box(300, 200, 600, 20), cylinder(150, 900)]) {
        const { stretches, sees } = along({ sensors, bodies: [bodyOf([posture])], states: [plainState({ floor })] }, 700, 1500)
        expect(stretches.length).toBeGreaterThan(0)
        let inside = 0
        for (let n = 0; n < 300; n++) {
          const y = random.between(-1500, 1500)
          const proved = stretches.some(({ from_mm, to_mm }) => from_mm <= y && y <= to_mm)
          const close = stretches.some(({ from_mm, to_mm }) => Math.min(Math.abs(from_mm - y), Math.abs(to_mm - y)) < 1.1)
          if (proved) inside++
          if (proved || !close) expect({ y, sees: sees(y) }).toEqual({ y, sees: proved })
        }
        expect(inside).toBeGreaterThan(10)
      }
  })

  // Second method, ours: the predicate at single places
  it('claims no place that the predicate calls unseen, and for boxes leaves out none that it sees well (30 random scanners, seed 5)', () => {
    const random = randomNumbers(5)
    const wrong: string[] = []
    let seen = 0
    for (let n = 0; n < 30; n++) {
      const pose = {
        x_mm: random.between(0, 1000),
        y_mm: random.between(-200, 200),
        z_mm: random.between(1500, 3000),
        yaw_rad: random.between(-0.5, 0.5),
        tilt_rad: random.between(-0.6, 0.6),
        roll_rad: random.between(-0.5, 0.5),
      }
      const field = { clusterBeams: random.pick([1, 1, 3]), yMin_mm: random.between(-2000, 0), top_mm: random.between(400, 2500) }
      const sensors = [ranging([fan(-50, 50, random.whole(20, 200))], { pose, backgroundMargin_mm: random.between(0, 100) }, field)]
      const isBox = random.chance(0.6)
      const posture = isBox
        ? box(random.between(100, 500), random.between(100, 900), random.between(200, 1900), random.between(0, 90))
        : cylinder(random.between(80, 300), random.between(200, 1900))
      const { stretches, sees } = along({ sensors, bodies: [bodyOf([posture])] }, random.between(0, 1000))
      for (let k = 0; k < 60; k++) {
        const y = random.between(-3000, 3000)
        const proved = stretches.some(({ from_mm, to_mm }) => from_mm <= y && y <= to_mm)
        if (proved) seen++
        if (proved && !sees(y)) wrong.push(`${n}: ${y} is unseen`)
        if (isBox && !proved && [-3, 0, 3].every((off) => sees(y + off))) wrong.push(`${n}: ${y} is seen`)
      }
    }
    expect(wrong).toEqual([])
    expect(seen).toBeGreaterThan(100)
  })
})
