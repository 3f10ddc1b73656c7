import { describe, expect, it } from 'vitest'
import { block, downward, level, lightGrid, plainDoor, plainState } from '../../cases/plain-door.ts'
import { randomNumbers } from '../../cases/random-numbers.ts'
import type { Floor } from '../model/door.ts'
import type { RangingSensor, SegmentSensor } from '../model/sensor.ts'
import { floorPieces } from '../space/floor.ts'
import { type LowestEntry, lowestEntry } from './floor-clearance.ts'
import { heightAt } from './heights-along.ts'
import { fieldSight } from './scene.ts'

function lowest(
  sensor: RangingSensor | SegmentSensor,
  floor: Floor = level(),
  obstacles = plainState().obstacles,
): LowestEntry | undefined {
  const state = plainState({ floor, obstacles })
  const [field] = sensor.fields
  if (!field) throw new Error('the sensor must have a field')
  return lowestEntry(fieldSight(plainDoor({ sensors: [sensor], states: [state] }), state, { sensor, field }))
}

const over = (tilt_deg: number, margin_mm: number, clearance_mm = 0, z_mm = 2000) =>
  downward([{ x_mm: 500, y_mm: 0, z_mm }], { backgroundMargin_mm: margin_mm }, { clearance_mm }, tilt_deg)

// All figures: hand calculation.
describe('the lowest point at which something is taken', () => {
  it('lies the margin above the floor under a beam that looks straight down, and less under a slanted one: margin times the sine of the angle to the floor', () => {
    expect(lowest(over(0, 50))?.height_mm).toBeCloseTo(50, 9)
    expect(lowest(over(60, 50))?.height_mm).toBeCloseTo(25, 9)
    expect(lowest(over(60, 50))?.y_mm).toBeCloseTo(3464.1016 - 50 * 0.8660254, 3)
  })

  it('lies at the clearance where that is higher', () => {
    expect(lowest(over(60, 50, 80))?.height_mm).toBeCloseTo(80, 9)
    expect(lowest(over(60, 50, 20))?.height_mm).toBeCloseTo(25, 9)
  })

  it('lies where the range or an obstacle ends the beam', () => {
    expect(lowest(downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], { maxRange_mm: 1500 }))?.height_mm).toBe(500)
    expect(lowest(over(0, 50), level(), [block({ to_mm: 700 })])?.height_mm).toBe(750)
  })

  it('lies over a bump for a flat beam', () => {
    const bump = level(10, [
      [-100, 0],
      [0, 30],
      [100, 0],
    ])
    expect(lowest(lightGrid([300, 500]), bump)).toMatchObject({ height_mm: 270, plane: 'p0', beam: 0 })
    const acrossTheBump = {
      ...lightGrid([]),
      planes: [{ id: 'p0', segments: [{ from_mm: [500, -400, 200], to_mm: [500, 400, 200] } as const] }],
    }
    expect(lowest(acrossTheBump, bump)).toMatchObject({ height_mm: 170, x_mm: 500, y_mm: 0 })
  })

  it('is that of the lowest beam, counted in its plane', () => {
    const row = downward(
      [2000, 2000, 2000].map((z_mm, i) => ({ x_mm: 500 + i, y_mm: 0, z_mm })),
      { backgroundMargin_mm: 30 },
    )
    expect(lowest(row, { ...level(), slopeX: -0.1 })?.beam).toBe(0) // on a tie the first
    expect(lowest(lightGrid([400, 200, 300]))).toMatchObject({ height_mm: 200, beam: 1 })
  })

  it('is below 0 where the floor of the state stands above the field, and none where no beam takes anything', () => {
    expect(lowest(lightGrid([300]), level(10, [[0, 320]]))).toBeUndefined() // the floor blocks it
    expect(lowest(over(0, 50, 3000))).toBeUndefined()
  })
})

describe('law', () => {
  it('no point of any stretch that counts lies lower (seed 77, sampled)', () => {
    const dice = randomNumbers(77)
    for (let n = 0; n < 60; n++) {
      const floor = level(10, [
        [-500, dice.between(-80, 80)],
        [0, 0],
        [400, dice.between(-80, 80)],
        [900, dice.between(-80, 80)],
      ])
      const sensor = over(dice.between(-80, 80), dice.between(0, 100), dice.between(0, 60))
      const state = plainState({ floor })
      const [field] = sensor.fields
      if (!field) throw new Error('the sensor must have a field')
      const sight = fieldSight(plainDoor({ sensors: [sensor], states: [state] }), state, { sensor, field })
      const found = lowestEntry(sight)?.height_mm ?? Infinity
      let sampled = Infinity
      for (let w = 0; w < (sight.windows.first[1] ?? 0); w++) {
        const [from, to] = [sight.windows.from[w] ?? 0, sight.windows.to[w] ?? 0]
        for (let k = 0; k <= 1000; k++)
          sampled = Math.min(sampled, heightAt(sight.sight.beams, 0, floorPieces(floor), from + ((to - from) * k) / 1000))
      }
      expect(found, `n ${n}`).toBeLessThanOrEqual(sampled + 1e-9)
      expect(sampled - found, `n ${n}`).toBeLessThan(5)
    }
  })
})
