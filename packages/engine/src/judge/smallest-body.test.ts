import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { block, downward, plainDoor, plainState, plainZone } from '../../cases/plain-door.ts'
import type { Obstacle } from '../model/door.ts'
import type { SizeFamily } from '../model/zone.ts'

const cubes: SizeFamily = { proportions: [1, 2, 1], reflectance: 0.1, largest_mm: 100, step_mm: 10, required_mm: undefined }

/** The beam ends 50 before the floor: boxes higher than 50 are seen (hand calculation, method case H4). */
function judged(required_mm: number | undefined, obstacles: readonly Obstacle[] = []) {
  const sensor = downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], { backgroundMargin_mm: 50 })
  const zone = plainZone({ family: { ...cubes, required_mm } })
  return findingOf('smallest-body', plainDoor({ sensors: [sensor], zones: [zone], states: [plainState({ obstacles })] }))
}

describe('smallest-body', () => {
  it('passes where every size tried from the required one up is seen', () => {
    expect(judged(55)).toMatchObject({
      id: 'smallest-body:zone',
      verdict: 'pass',
      measured: { value: 50, unit: 'mm' },
      limit: { value: 55, unit: 'mm' },
      facts: { tried: 7, smallest_mm: 55, a_mm: 55, b_mm: 110, c_mm: 55, unseen_mm: 50, required_mm: 55, step_mm: 10, largest_mm: 100 },
    })
  })

  it('fails where the required size, or a larger one, goes unseen', () => {
    expect(judged(50)).toMatchObject({ verdict: 'fail', measured: { value: 50 }, facts: { smallest_mm: 60 } })
    expect(judged(30)).toMatchObject({ verdict: 'fail', measured: { value: 50 } })
  })

  it('gives its figure where nobody says what is required', () => {
    expect(judged(undefined)).toMatchObject({
      verdict: 'undetermined',
      reason: 'missing-input',
      needs: ['zones/0/family/required_mm'],
      measured: { value: 50 },
    })
  })

  it('cannot tell where nothing is free', () => {
    expect(judged(60, [block({ size_mm: [600, 600] })])).toMatchObject({ verdict: 'undetermined', reason: 'nothing-free' })
  })

  it('does not apply without a family', () => {
    expect(findingOf('smallest-body', plainDoor())).toMatchObject({ verdict: 'not-applicable' })
  })
})
