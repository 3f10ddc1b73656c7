import { describe, expect, it } from 'vitest'
import { block, bodyOf, box, downward, fan, plainDoor, plainState, plainZone } from '../../cases/plain-door.ts'
import type { Obstacle } from '../model/door.ts'
import type { RangingSensor } from '../model/sensor.ts'
import { radians } from '../space/trigonometry.ts'
import { deadGround } from './dead-ground.ts'

/** One beam that leans 45 degrees toward side A from 2000 above (500, 0): at y it is 2000 - y high. Cells of 100, two across and ten out. */
const leaning = downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], {}, {}, 45)
const zone = plainZone({ yMin_mm: 0, yMax_mm: 1000, pitch_mm: 100 })

function ground(height_mm: number, sensors: readonly RangingSensor[] = [leaning], obstacles: readonly Obstacle[] = []) {
  const state = plainState({ obstacles })
  const door = plainDoor({ sensors, states: [state], zones: [zone], bodies: [bodyOf([box(102, 100, height_mm)])] })
  const [sensor] = sensors
  if (!sensor) throw new Error('there must be a sensor')
  return deadGround(door, zone, state, sensor)
}

// All figures: hand calculation.
describe('dead ground', () => {
  it('is the whole zone where the body stays under the beam', () => {
    const all = ground(500)
    expect(all).toMatchObject({
      cells: 20,
      area_mm2: 200_000,
      depth_mm: 1000,
      extent: { xMin_mm: 400, xMax_mm: 600, yMin_mm: 0, yMax_mm: 1000 },
    })
    expect(all.diameter_mm).toBeCloseTo(Math.sqrt(200 * 200 + 1000 * 1000), 9)
    expect(all.left).toMatchObject({ cells: 20, worstCase: { body: 'body', posture: 0, z_mm: 0 } })
  })

  it('ends where the beam has come down to the body', () => {
    // 1500 high: the far side at y + 50 must reach under 2000 - (y + 50) < 1500, y > 450; the cell at 450 only touches it
    expect(ground(1500)).toMatchObject({ cells: 10, depth_mm: 500, area_mm2: 100_000 })
    expect(ground(1501)).toMatchObject({ cells: 8, depth_mm: 400 })
  })

  it('is none where the cell nearest to the foot is seen', () => {
    expect(ground(1960)).toMatchObject({
      cells: 0,
      area_mm2: 0,
      diameter_mm: 0,
      depth_mm: 0,
      extent: undefined,
      left: { cells: 0, diameter_mm: 0 },
    })
  })

  it('of which another sensor sees a part leaves the rest', () => {
    const helper = downward(
      [
        { x_mm: 500, y_mm: 50, z_mm: 2000 },
        { x_mm: 500, y_mm: 150, z_mm: 2000 },
      ],
      { id: 'helper' },
    )
    const { cells, left } = ground(1500, [leaning, helper])
    expect(cells).toBe(10)
    expect(left).toMatchObject({ cells: 6 }) // y = 50 and 150 are seen from above
    expect(left.diameter_mm).toBeCloseTo(Math.sqrt(200 * 200 + 300 * 300), 9)
  })

  it('skips cells at which nothing is free, and does not hold them', () => {
    const sill = block({ y_mm: 50, size_mm: [400, 100], to_mm: 100 }) // bodies at y = 50 overlap it, those at 150 overlap too: 100 .. 200 touches only
    expect(ground(1500, [leaning], [sill])).toMatchObject({ cells: 8, extent: { yMin_mm: 100, yMax_mm: 500 } })
  })

  it('begins at the cell first in row order where two are as near to the foot', () => {
    // rolled a little toward +x, the beam only enters bodies at x = 550; those at 450 touch it at its origin at most
    const rolled = { ...leaning, planes: [fan(0, 0, 1)], pose: { ...leaning.pose, tilt_rad: radians(45), roll_rad: radians(1) } }
    const state = plainState()
    const door = plainDoor({ sensors: [rolled], states: [state], zones: [zone], bodies: [bodyOf([box(100, 100, 1960)])] })
    expect(deadGround(door, zone, state, rolled)).toMatchObject({ cells: 10, extent: { xMin_mm: 400, xMax_mm: 500 } })
  })

  it('counts a place that any posture is seen in as seen', () => {
    const state = plainState()
    const door = plainDoor({
      sensors: [leaning],
      states: [state],
      zones: [zone],
      bodies: [bodyOf([box(102, 100, 500), box(102, 100, 1500)])],
    })
    expect(deadGround(door, zone, state, leaning)).toMatchObject({ cells: 10, depth_mm: 500 })
  })
})
