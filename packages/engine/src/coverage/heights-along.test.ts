import { describe, expect, it } from 'vitest'
import { downward, level } from '../../cases/plain-door.ts'
import { beamsOf } from '../seeing/beams.ts'
import { floorPieces } from '../space/floor.ts'
import { heightsAlong } from './heights-along.ts'

// All figures: hand calculation. A beam along +y at height 200 from y = -400.
const flat = beamsOf(downward([{ x_mm: 0, y_mm: -400, z_mm: 200 }], {}, {}, 90))
const bump = floorPieces(
  level(0, [
    [-100, 0],
    [0, 30],
    [100, -20],
  ]),
)

describe('heights along a beam', () => {
  it('are extreme over the bends of the floor', () => {
    const { lowest_mm, highest_mm, lowestAt_mm } = heightsAlong(flat, 0, bump, 0, 800)
    expect(lowest_mm).toBeCloseTo(170, 9)
    expect(lowestAt_mm).toBeCloseTo(400, 9)
    expect(highest_mm).toBeCloseTo(220, 9)
  })

  it('or at the ends of the stretch', () => {
    const { lowest_mm, highest_mm, lowestAt_mm } = heightsAlong(flat, 0, bump, 320, 350)
    expect(lowest_mm).toBeCloseTo(185, 9) // y = -50, floor 15
    expect(highest_mm).toBeCloseTo(194, 9) // y = -80, floor 6
    expect(lowestAt_mm).toBe(350)
  })
})
