import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { bodyOf, box, cylinder, downward, plainDoor, plainState } from '../../cases/plain-door.ts'
import { driven, laneOf, wideGrid } from '../../cases/plain-traffic.ts'
import { randomNumbers } from '../../cases/random-numbers.ts'
import type { CountedField } from '../coverage/scene.ts'
import { seenAlong } from '../coverage/seen-along.ts'
import type { BoxObstacle, Door, DoorState, HingedLeaf, Leaf } from '../model/door.ts'
import type { Field } from '../model/sensor.ts'
import { leafCorners, turningLeaf } from '../motion/turning-leaf.ts'
import { sightWithLeaf } from './turning-shade.ts'

const leafOf = (changes: Partial<HingedLeaf> = {}): Leaf => ({
  travel: 'turning',
  thickness_mm: 40,
  bulge_mm: 5,
  hinged: { hinge: 'at-zero', opensTo: 'a', length_mm: 1900, secondPanel_mm: undefined, openAngle_rad: 1.5, ...changes },
})

/** Beams from y = -300 to 1800, within the sweep of 1900, that begin where the open leaf, which reaches to x = 160, does not interrupt them. */
function besideOpenLeaf(grid: ReturnType<typeof wideGrid>): ReturnType<typeof wideGrid> {
  return grid.map((sensor) => ({
    ...sensor,
    planes: sensor.planes.slice(14, 29).map((plane) => ({
      ...plane,
      segments: plane.segments.map(({ from_mm: [, y, z], to_mm }) => ({ from_mm: [400, y, z] as const, to_mm })),
    })),
  }))
}

/** The panels themselves, where they stand with so much way to go. */
function standingLeaf(door: Door, way_mm: number): readonly BoxObstacle[] {
  const turning = turningLeaf(door)
  if (!turning) throw new Error('the leaf must turn')
  return leafCorners(turning, way_mm).map(({ middle, length_mm, yaw_rad }, i) => ({
    id: `panel-${i}`,
    implied: true,
    name: 'leaf',
    shape: 'box',
    x_mm: middle[0],
    y_mm: middle[1],
    size_mm: [length_mm, 50],
    yaw_rad,
    from_mm: -100,
    to_mm: 2500,
  }))
}

describe('what a field sees past a leaf that turns', () => {
  it('is seen past the leaf at every way from there to open (20 random fields, leaves and bodies, seeds 1 to 20)', () => {
    const wrong: string[] = []
    let seenAtAll = 0
    for (let seed = 1; seed <= 20; seed++) {
      const random = randomNumbers(seed)
      const folds = random.chance(0.5)
      const changes = folds ? { length_mm: 900, secondPanel_mm: random.between(900, 1000), openAngle_rad: 1.4 } : {}
      const leaf = leafOf({ ...changes, opensTo: random.chance(0.5) ? 'a' : 'b' })
      const places = Array.from({ length: 12 }, () => ({ x_mm: random.between(0, 2000), y_mm: random.between(-2200, 2200), z_mm: 2400 }))
      const sensor = downward(places, {}, { yMin_mm: -3000, yMax_mm: 3000 }, random.between(-50, 50))
      const body = bodyOf([random.chance(0.5) ? cylinder(250, 1600) : box(400, 500, 1600)])
      const door = plainDoor({ leaf, sensors: [sensor], bodies: [body] })
      const [field] = sensor.fields
      const [posture] = body.postures
      const way_mm = (turningLeaf(door)?.way_mm ?? 0) * random.between(0, 0.95)
      if (!field || !posture) throw new Error('the door must have a field and a body')
      const stance = { body, posture, index: 0, yaw_rad: 0 }
      const counted: CountedField = { sensor, field }
      const state = plainState()
      const x_mm = random.between(200, 1800)
      const past = seenAlong(door, state, counted, sightWithLeaf({ ...door, leaf }, state, counted, way_mm))(stance)(x_mm, -3000, 3000)
      seenAtAll += past.length
      for (const share of [0, 0.3, 0.7, 1]) {
        const at_mm = way_mm + share * ((turningLeaf(door)?.way_mm ?? 0) - way_mm)
        const there: DoorState = { ...state, obstacles: [...state.obstacles, ...standingLeaf(door, at_mm)] }
        const exact = seenAlong(door, there, counted)(stance)(x_mm, -3000, 3000)
        // ends of sights are proved to a millimetre
        for (const { from_mm, to_mm } of past)
          if (to_mm - from_mm > 4 && !exact.some((each) => each.from_mm <= from_mm + 2 && each.to_mm >= to_mm - 2))
            wrong.push(`seed ${seed}: ${from_mm} to ${to_mm} with the leaf at ${at_mm}`)
      }
    }
    expect(wrong).toEqual([])
    expect(seenAtAll).toBeGreaterThan(10)
  })

  it('settles nothing where a leaf that hides the body might keep it from being seen, and passes by beams below the leaf', () => {
    const judged = (field: Partial<Field>, from_mm?: number) => {
      const parked: BoxObstacle = {
        id: 'parked-leaf',
        implied: true,
        name: 'parked leaf',
        shape: 'box',
        x_mm: 50,
        y_mm: 950,
        size_mm: [40, 1900],
        yaw_rad: 0,
        from_mm: from_mm ?? 0,
        to_mm: 2500,
      }
      const states = [{ ...plainState(), obstacles: from_mm === undefined ? [] : [parked] }]
      const lanes = [laneOf({ xMin_mm: 1300, xMax_mm: 1700, from: ['a'], slowest_mm_per_s: 250, fastest_mm_per_s: 300 })]
      const door = { leaf: leafOf(), lanes, states, zones: [], drive: driven(), bodies: [bodyOf([box(300, 200, 1500)])] }
      return findingOf('struck-by-leaf', plainDoor({ ...door, sensors: besideOpenLeaf(wideGrid({ hold_s: 5, ...field })) }))
    }
    expect(judged({}).verdict).toBe('pass')
    expect(judged({ leafHides: true })).toMatchObject({ verdict: 'undetermined', reason: 'not-proved', facts: { leafMatters: true } })
    expect(judged({ leafHides: true }, 400)).toMatchObject({ verdict: 'pass' })
    expect(judged({ leafHides: true, response_s: 30 }).verdict).toBe('fail')
  })
})
