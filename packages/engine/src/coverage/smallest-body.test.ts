import { describe, expect, it } from 'vitest'
import { block, downward, plainDoor, plainState, plainZone } from '../../cases/plain-door.ts'
import type { Obstacle } from '../model/door.ts'
import type { SizeFamily } from '../model/zone.ts'
import { sizesOf, smallestBody } from './smallest-body.ts'

const cubes: SizeFamily = { proportions: [1, 1, 1], reflectance: 0.1, largest_mm: 100, step_mm: 10, required_mm: undefined }

function smallest(family: SizeFamily, margin_mm = 50, obstacles: readonly Obstacle[] = []) {
  const sensor = downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], { backgroundMargin_mm: margin_mm })
  const [zone, state] = [plainZone({ family }), plainState({ obstacles })]
  return smallestBody(plainDoor({ sensors: [sensor], states: [state], zones: [zone] }), zone, state, family)
}

// Hand calculation: the beam ends 2000 below, so the top of a body must be less than 1950 away: higher than 50 (method case H4).
describe('the smallest body that is seen everywhere', () => {
  it('is the last size tried before one goes unseen', () => {
    expect(smallest(cubes)).toEqual({ tried_mm: [100, 90, 80, 70, 60, 50], smallest_mm: 60, unseen_mm: 50, anythingFree: true })
  })

  it('is none if the largest goes unseen, and the smallest tried if none does', () => {
    expect(smallest(cubes, 100)).toMatchObject({ tried_mm: [100], smallest_mm: undefined, unseen_mm: 100 })
    expect(smallest(cubes, 5)).toMatchObject({ smallest_mm: 10, unseen_mm: undefined })
  })

  it('is sized by proportions', () => {
    expect(smallest({ ...cubes, proportions: [1, 1, 0.6] })).toMatchObject({ smallest_mm: 90, unseen_mm: 80 }) // 54, then 48 high
  })

  it('is tried at the required size too', () => {
    expect(sizesOf({ ...cubes, required_mm: 55 })).toEqual([100, 90, 80, 70, 60, 55, 50, 40, 30, 20, 10])
    expect(smallest({ ...cubes, required_mm: 55 })).toMatchObject({ smallest_mm: 55, unseen_mm: 50 })
    expect(sizesOf({ ...cubes, required_mm: 60 })).toEqual([100, 90, 80, 70, 60, 50, 40, 30, 20, 10])
  })

  it('says that nothing was free where something stands all over the zone', () => {
    const pillar = block({ size_mm: [400, 400], to_mm: 1800 })
    expect(smallest(cubes, 50, [pillar])).toMatchObject({ smallest_mm: undefined, unseen_mm: undefined, anythingFree: false })
  })
})
