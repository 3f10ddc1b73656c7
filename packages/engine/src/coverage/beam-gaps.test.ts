import { describe, expect, it } from 'vitest'
import { bodyOf, box, cylinder, downward, fan, lightGrid, plainDoor, plainZone, ranging } from '../../cases/plain-door.ts'
import { randomNumbers } from '../../cases/random-numbers.ts'
import type { Posture } from '../model/body.ts'
import type { RangingSensor, SegmentSensor } from '../model/sensor.ts'
import type { Zone } from '../model/zone.ts'
import { beamSees } from '../seeing/sees.ts'
import { shapeOf } from '../seeing/shape.ts'
import { radians } from '../space/trigonometry.ts'
import { beamGaps, type FaceGap } from './beam-gaps.ts'
import { fieldSight, stancesOf } from './scene.ts'

const everywhere: Partial<Zone> = { xMin_mm: -10_000, xMax_mm: 10_000, yMin_mm: -10_000, yMax_mm: 10_000 }

/** The gaps of the first field of a sensor for one posture. */
function gaps(
  sensor: RangingSensor | SegmentSensor,
  posture: Posture,
  zone: Partial<Zone> = everywhere,
  reflectance = 0.1,
): readonly FaceGap[] {
  const door = plainDoor({ sensors: [sensor], bodies: [bodyOf([posture], { reflectance })], zones: [plainZone(zone)] })
  const [onlyZone, state, field] = [door.zones[0], door.states[0], sensor.fields[0]]
  if (!onlyZone || !state || !field) throw new Error('the plain door must have a zone, a state and a field')
  return beamGaps(fieldSight(door, state, { sensor, field }), onlyZone, stancesOf(door, onlyZone).stances, sensor.spotRadius_mm)
}

const places = (xs: readonly number[], z_mm = 2000) => xs.map((x_mm) => ({ x_mm, y_mm: 0, z_mm }))

describe('the gap between neighbours met head-on is 2 R tan(a / 2) (common practice; figures computed elsewhere)', () => {
  it.each([
    { distance_mm: 4000, step_deg: 0.25, gap_mm: 17.45 },
    { distance_mm: 4000, step_deg: 0.36, gap_mm: 25.13 },
    { distance_mm: 5000, step_deg: 0.5, gap_mm: 43.63 },
  ])('on a top $distance_mm below the sensor at $step_deg degrees: $gap_mm', ({ distance_mm, step_deg, gap_mm }) => {
    const above = { pose: { x_mm: 0, y_mm: 0, z_mm: distance_mm + 200, yaw_rad: 0, tilt_rad: 0, roll_rad: 0 } }
    const [gap, ...more] = gaps(ranging([fan(-step_deg / 2, step_deg / 2, 2)], above), box(300, 300, 200))
    expect(more).toEqual([])
    expect(gap).toMatchObject({ face: 'top', across_mm: 300, plane: 'p0', beam: 0, z_mm: 200 })
    expect(Math.abs((gap?.gap_mm ?? 0) - gap_mm)).toBeLessThan(0.005)
  })

  it.each([
    { distance_mm: 4000, step_deg: 0.25, gap_mm: 17.45 },
    { distance_mm: 5000, step_deg: 0.5, gap_mm: 43.63 },
  ])('on a side at the far end of the zone, $distance_mm away at $step_deg degrees: $gap_mm', ({ distance_mm, step_deg, gap_mm }) => {
    const level = { pose: { x_mm: 0, y_mm: 0, z_mm: 100, yaw_rad: 0, tilt_rad: radians(90), roll_rad: 0 } }
    const [gap, ...more] = gaps(ranging([fan(-step_deg / 2, step_deg / 2, 2)], level), box(300, 400, 500), {
      ...everywhere,
      yMax_mm: distance_mm,
    })
    expect(more).toEqual([])
    expect(gap).toMatchObject({ face: 'side', across_mm: 300 })
    expect(Math.abs((gap?.gap_mm ?? 0) - gap_mm)).toBeLessThan(0.005)
  })
})

describe('the face that is met', () => {
  it('is the side for beams flatter than 45 degrees; there the gap is measured upright where the steeper beam meets the floor', () => {
    // Hand calculation: side at x = 2000 tan 60 = 3464.102, heights there differ by x (tan 30 - tan 29.5) = 3464.102 (0.577350 - 0.565773)
    const corner = { pose: { x_mm: 0, y_mm: 0, z_mm: 2000, yaw_rad: 0, tilt_rad: 0, roll_rad: 0 } }
    const [gap] = gaps(ranging([fan(60, 60.5, 2)], corner), box(300, 400, 200))
    expect(gap?.face).toBe('side')
    expect(gap?.across_mm).toBe(200)
    expect(Math.abs((gap?.x_mm ?? 0) - 3464.102)).toBeLessThan(0.01)
    expect(Math.abs((gap?.gap_mm ?? 0) - 40.1)).toBeLessThan(0.01)
  })

  it('is the top for steeper beams, however tall the body', () => {
    const corner = { pose: { x_mm: 0, y_mm: 0, z_mm: 2000, yaw_rad: 0, tilt_rad: 0, roll_rad: 0 } }
    // Hand calculation: 1500 mm below the sensor, x = 1500 tan 30 and 1500 tan 31: 866.025 and 901.291
    const [gap, ...more] = gaps(ranging([fan(30, 31, 2)], corner), box(300, 300, 500))
    expect(more).toEqual([])
    expect(Math.abs((gap?.gap_mm ?? 0) - 35.266)).toBeLessThan(0.001)
  })

  it('of a light grid is the side that looks at its beams; a wider gap above the body counts as far as one of both beams meets it', () => {
    const [gap] = gaps(lightGrid([100, 300, 600]), box(300, 400, 350), everywhere)
    expect(gap).toMatchObject({ gap_mm: 300, face: 'side', across_mm: 350, beam: 1 })
    expect(gaps(lightGrid([100, 300, 600]), box(300, 400, 250), everywhere)).toMatchObject([{ gap_mm: 200, beam: 0 }])
  })

  it('has a way across less twice the spot; of a disc it is the side of the square inside', () => {
    expect(gaps(downward(places([0, 100])), box(300, 200, 500))).toMatchObject([{ gap_mm: 100, across_mm: 200 }])
    expect(gaps(downward(places([0, 100]), { spotRadius_mm: 15 }), box(300, 200, 500))).toMatchObject([{ gap_mm: 100, across_mm: 170 }])
    const [round] = gaps(downward(places([0, 100])), cylinder(100, 500))
    expect(Math.abs((round?.across_mm ?? 0) - 141.421)).toBeLessThan(0.001)
  })
})

describe('what counts', () => {
  it('is the largest gap of all neighbours in one plane', () => {
    expect(gaps(downward(places([0, 50, 170, 200])), box(300, 300, 500))).toMatchObject([{ gap_mm: 120, beam: 1, x_mm: 110, z_mm: 500 }])
    expect(gaps(downward(places([0])), box(300, 300, 500))).toEqual([])
  })

  it('are beams that end in the zone, within the field, the reach on that face and before the background less the margin', () => {
    const two = places([0, 120])
    const body = box(300, 300, 500)
    expect(gaps(downward(two), body, { ...everywhere, xMin_mm: 10 })).toEqual([])
    expect(gaps(downward(two, {}, { xMax_mm: 110 }), body)).toEqual([])
    expect(gaps(downward(two, {}, { top_mm: 499 }), body)).toEqual([])
    expect(gaps(downward(two, { rangeRef_mm: 1499 }), body)).toEqual([])
    expect(gaps(downward(two, { rangeRef_mm: 1501 }), body, everywhere, 0.05)).toEqual([]) // 1501 sqrt(0.5) = 1061
    expect(gaps(downward(two, { backgroundMargin_mm: 500 }), body)).toEqual([])
    expect(gaps(downward(two, { backgroundMargin_mm: 499 }), body)).toHaveLength(1)
  })

  it('is nothing where the spot leaves nothing of the body', () => {
    expect(gaps(downward(places([0, 100]), { spotRadius_mm: 150 }), box(300, 300, 500))).toEqual([])
  })
})

describe('laws', () => {
  it('k gaps shorter than the way across leave at least k beams on the top wherever the row crosses it from side to side (seed 4711)', () => {
    const dice = randomNumbers(4711)
    let held = 0
    for (let n = 0; n < 400; n++) {
      const [a, b, yaw_deg] = [dice.between(60, 400), dice.between(60, 400), dice.between(0, 90)]
      const xs = Array.from({ length: 60 }, (_, i) => -1500 + i * 50 + dice.between(0, 20))
      const sensor = downward(places(xs))
      const [gap] = gaps(sensor, box(a, b, 500, yaw_deg))
      const k = dice.whole(1, 4)
      if (!gap || k * gap.gap_mm >= gap.across_mm) continue
      const x = dice.between(-800, 800)
      const y = dice.between(-1, 1) * Math.min(a, b)
      if (!crossesOpposite(a, b, radians(yaw_deg), y)) continue
      held++
      expect(beamsOn(sensor, box(a, b, 500, yaw_deg), x, y), `n ${n}`).toBeGreaterThanOrEqual(k)
    }
    expect(held).toBeGreaterThan(50)
  })

  it('mirrored sensors have mirrored gaps', () => {
    const pose = { x_mm: 300, y_mm: 0, z_mm: 2500, yaw_rad: 0, tilt_rad: 0, roll_rad: 0 }
    const here = gaps(ranging([fan(-20, 65, 40)], { pose }), box(300, 300, 400))
    const there = gaps(ranging([fan(-65, 20, 40)], { pose: { ...pose, x_mm: -300 } }), box(300, 300, 400))
    expect(here.length).toBeGreaterThan(1)
    const sizes = (found: readonly FaceGap[]) => found.map(({ gap_mm }) => Math.round(gap_mm * 1e6)).sort()
    expect(sizes(there)).toEqual(sizes(here))
  })
})

/** The line y = 0 crosses opposite sides of a rectangle a x b about (x, y): both corners of a side lie on one side of the line. */
function crossesOpposite(a: number, b: number, yaw: number, y: number): boolean {
  const [c, s] = [Math.cos(yaw), Math.sin(yaw)]
  const above = [
    [1, 1],
    [-1, 1],
    [-1, -1],
    [1, -1],
  ].map(([i = 0, j = 0]) => y + (i * a * s) / 2 + (j * b * c) / 2 > 0)
  return above.filter(Boolean).length === 2
}

function beamsOn(sensor: RangingSensor, posture: Posture, x_mm: number, y_mm: number): number {
  const door = plainDoor({ sensors: [sensor] })
  const [state, field] = [door.states[0], sensor.fields[0]]
  if (!state || !field) throw new Error('the plain door must have a state and a field')
  const { sight } = fieldSight(door, state, { sensor, field })
  const shape = shapeOf(posture, posture.shape === 'box' ? posture.yawFrom_rad : 0, 0.1, 0)
  const scratch = new Float64Array(3)
  return Array.from({ length: sight.beams.count }, (_, i) => beamSees(sight, i, shape, x_mm, y_mm, scratch)).filter(Boolean).length
}
