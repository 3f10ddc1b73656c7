import { describe, expect, it } from 'vitest'
import { directionCases, directionPlane } from '../../cases/method-cases.ts'
import { lightGrid, ranging } from '../../cases/plain-door.ts'
import { type RandomNumbers, randomNumbers } from '../../cases/random-numbers.ts'
import type { FanPlane, Pose } from '../model/sensor.ts'
import { radians } from '../space/trigonometry.ts'
import { type Beams, beamsOf, beamsOfFans } from './beams.ts'

const seeds = Array.from({ length: 300 }, (_, i) => i + 1)

function randomPose(dice: RandomNumbers): Pose {
  const angle = () => dice.between(-Math.PI, Math.PI)
  const place = () => dice.between(-5000, 5000)
  return { x_mm: place(), y_mm: place(), z_mm: place(), yaw_rad: angle(), tilt_rad: angle(), roll_rad: angle() }
}

function randomFan(dice: RandomNumbers, id = 'p0'): FanPlane {
  const fovMin_rad = dice.between(-2, 0)
  return {
    kind: 'fan',
    id,
    offset_rad: dice.between(-1, 1),
    fovMin_rad,
    fovMax_rad: fovMin_rad + dice.between(0.1, 3),
    beamCount: dice.whole(2, 40),
  }
}

function direction(beams: Beams, i: number): readonly [number, number, number] {
  return [beams.directionX[i] as number, beams.directionY[i] as number, beams.directionZ[i] as number]
}

type Vector = readonly [number, number, number]
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const times = (rows: readonly [Vector, Vector, Vector], v: Vector): Vector => [dot(rows[0], v), dot(rows[1], v), dot(rows[2], v)]

/** Section 1 of the method as matrices, with the platform's sine. */
function byMatrices({ yaw_rad, tilt_rad, roll_rad }: Pose, offset_rad: number, theta_rad: number): Vector {
  const [c, s] = [Math.cos(tilt_rad + offset_rad), Math.sin(tilt_rad + offset_rad)]
  const [cz, sz] = [Math.cos(yaw_rad), Math.sin(yaw_rad)]
  const aboutX = [
    [1, 0, 0],
    [0, c, -s],
    [0, s, c],
  ] as const
  const aboutZ = [
    [cz, -sz, 0],
    [sz, cz, 0],
    [0, 0, 1],
  ] as const
  return times(aboutZ, times(aboutX, [Math.sin(theta_rad + roll_rad), 0, -Math.cos(theta_rad + roll_rad)]))
}

describe('the beams of a fan', () => {
  it.each(directionCases)('$id: with $setting a beam points along $direction (hand calculation)', ({ pose, direction: expected }) => {
    const found = direction(beamsOf(ranging([directionPlane], { pose })), 0)
    expected.forEach((component, axis) => {
      if (component === 0) expect(found[axis]).toBe(0)
      else expect(found[axis]).toBeCloseTo(component, 14)
    })
  })
  it('point where rotation matrices turn them, at even angles from the first to the last, seeds 1 to 300', () => {
    for (const seed of seeds) {
      const dice = randomNumbers(seed)
      const [pose, plane] = [randomPose(dice), randomFan(dice)]
      const beams = beamsOf(ranging([plane], { pose }))
      for (let j = 0; j < plane.beamCount; j++) {
        const theta = plane.fovMin_rad + (j / (plane.beamCount - 1)) * (plane.fovMax_rad - plane.fovMin_rad)
        const expected = byMatrices(pose, plane.offset_rad, theta)
        for (const axis of [0, 1, 2] as const) expect(direction(beams, j)[axis], `seed ${seed}`).toBeCloseTo(expected[axis], 13)
      }
    }
  })
  it('have unit length, start at the pose, and the angle between neighbours is the step of the fan, seeds 1 to 300', () => {
    for (const seed of seeds) {
      const dice = randomNumbers(seed)
      const [pose, plane] = [randomPose(dice), randomFan(dice)]
      const beams = beamsOf(ranging([plane], { pose }))
      const step = (plane.fovMax_rad - plane.fovMin_rad) / (plane.beamCount - 1)
      for (let j = 0; j < plane.beamCount; j++) {
        expect(dot(direction(beams, j), direction(beams, j))).toBeCloseTo(1, 14)
        expect([beams.originX[j], beams.originY[j], beams.originZ[j]]).toEqual([pose.x_mm, pose.y_mm, pose.z_mm])
        expect(beams.length[j]).toBe(Infinity)
        if (j > 0) expect(dot(direction(beams, j - 1), direction(beams, j))).toBeCloseTo(Math.cos(step), 13)
      }
    }
  })
  it('lie in one plane, whatever the pose, seeds 1 to 300', () => {
    for (const seed of seeds) {
      const dice = randomNumbers(seed)
      const [pose, plane] = [randomPose(dice), { ...randomFan(dice), beamCount: 12 }]
      const beams = beamsOf(ranging([plane], { pose }))
      const [a, b] = [direction(beams, 0), direction(beams, 5)]
      const normal: Vector = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
      for (let j = 0; j < beams.count; j++) expect(dot(normal, direction(beams, j)), `seed ${seed}`).toBeCloseTo(0, 13)
    }
  })
  it('are mirrored by a mirrored pose, to the last bit, seeds 1 to 300', () => {
    for (const seed of seeds) {
      const dice = randomNumbers(seed)
      const pose = randomPose(dice)
      const plane = { ...randomFan(dice), beamCount: 1 }
      const beams = beamsOf(ranging([plane], { pose }))
      const turned = { ...pose, yaw_rad: -pose.yaw_rad, roll_rad: -pose.roll_rad }
      const twin = beamsOf(ranging([{ ...plane, fovMin_rad: -plane.fovMin_rad }], { pose: turned }))
      const [x, y, z] = direction(beams, 0)
      expect(direction(twin, 0)).toEqual([-x, y, z])
    }
  })
  it('of one beam look along the first angle, not the middle', () => {
    const plane: FanPlane = { kind: 'fan', id: 'p0', offset_rad: 0, fovMin_rad: radians(-30), fovMax_rad: radians(60), beamCount: 1 }
    expect(direction(beamsOf(ranging([plane])), 0)[0]).toBeCloseTo(-0.5, 15)
  })
  it('are exactly level at a tilt of 90 degrees, and exactly alike from both sides of the door', () => {
    const pose = { x_mm: 0, y_mm: 0, z_mm: 200, yaw_rad: 0, tilt_rad: radians(90), roll_rad: 0 }
    const plane: FanPlane = { kind: 'fan', id: 'p0', offset_rad: 0, fovMin_rad: radians(-60), fovMax_rad: radians(60), beamCount: 13 }
    const level = beamsOf(ranging([plane], { pose }))
    for (let j = 0; j < level.count; j++) expect(level.directionZ[j]).toBe(0)
    expect(direction(level, 6)).toEqual([0, 1, 0])
    const facesB = beamsOf(ranging([{ ...plane, beamCount: 3 }], { pose: { ...pose, yaw_rad: radians(180), tilt_rad: radians(20) } }))
    expect(direction(facesB, 1)[0]).toBe(0)
  })
})

describe('planes', () => {
  it('follow each other in the order of the sensor, without gaps', () => {
    const [a, b] = [randomFan(randomNumbers(1), 'a'), randomFan(randomNumbers(2), 'b')]
    const row = { kind: 'row', id: 'r', places: [{ x_mm: 1, y_mm: 2, z_mm: 3 }], tilt_rad: 0 } as const
    const { planes, count } = beamsOf(ranging([a, row, b]))
    expect(planes).toEqual([
      { id: 'a', first: 0, end: a.beamCount },
      { id: 'r', first: a.beamCount, end: a.beamCount + 1 },
      { id: 'b', first: a.beamCount + 1, end: count },
    ])
    expect(count).toBe(a.beamCount + 1 + b.beamCount)
  })
  it('of other fans of a sensor have the beams that the sensor has with them, seeds 1 to 20', () => {
    for (const seed of seeds.slice(0, 20)) {
      const dice = randomNumbers(seed)
      const [pose, fans] = [randomPose(dice), [randomFan(dice, 'a'), randomFan(dice, 'b')]]
      expect(beamsOfFans(pose, fans)).toEqual(beamsOf(ranging(fans, { pose })))
    }
  })
})

describe('a row of beams', () => {
  it('starts at its places, leans toward side A by its tilt, and ignores the pose (hand calculation: sine of 30 degrees)', () => {
    const places = [
      { x_mm: 100, y_mm: 20, z_mm: 2300 },
      { x_mm: 150, y_mm: 30, z_mm: 2310 },
    ]
    const pose = randomPose(randomNumbers(3))
    const beams = beamsOf(ranging([{ kind: 'row', id: 'p0', places, tilt_rad: radians(30) }], { pose }))
    for (const [i, place] of places.entries()) {
      expect([beams.originX[i], beams.originY[i], beams.originZ[i]]).toEqual([place.x_mm, place.y_mm, place.z_mm])
      expect(beams.directionX[i]).toBe(0)
      expect(beams.directionY[i]).toBeCloseTo(0.5, 15)
      expect(beams.directionZ[i]).toBeCloseTo(-Math.sqrt(0.75), 15)
    }
  })
})

describe('segments', () => {
  it('run from one end to the other and are as long as the ends are apart, seeds 1 to 300', () => {
    for (const seed of seeds) {
      const dice = randomNumbers(seed)
      const point = (): Vector => [dice.between(-5000, 5000), dice.between(-5000, 5000), dice.between(-5000, 5000)]
      const [from_mm, to_mm] = [point(), point()]
      const beams = beamsOf(lightGrid([], 0, { planes: [{ id: 'p0', segments: [{ from_mm, to_mm }] }] }))
      const length = beams.length[0] as number
      for (const axis of [0, 1, 2] as const) expect(from_mm[axis] + length * direction(beams, 0)[axis]).toBeCloseTo(to_mm[axis], 9)
      expect(dot(direction(beams, 0), direction(beams, 0))).toBeCloseTo(1, 14)
    }
  })
  it('without length are refused', () => {
    const segments = [{ from_mm: [1, 2, 3], to_mm: [1, 2, 3] }] as const
    expect(() => beamsOf(lightGrid([], 0, { planes: [{ id: 'p0', segments }] }))).toThrow(
      'segment of grid must have two ends, got both at 1, 2, 3',
    )
  })
})
