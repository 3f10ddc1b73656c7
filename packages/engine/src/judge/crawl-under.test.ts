import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { downward, level, lightGrid, plainDoor, plainState } from '../../cases/plain-door.ts'
import type { Sensor } from '../model/sensor.ts'

const judged = (...sensors: readonly Sensor[]) => findingOf('crawl-under', plainDoor({ sensors }))
const cleared = (clearance_mm: number) => downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], {}, { clearance_mm })

// 200 mm: ISO 13855, 2024, clause 9, published (check value sep-06).
describe('crawl-under', () => {
  it('passes up to 200 mm, included', () => {
    expect(judged(cleared(200))).toMatchObject({
      verdict: 'pass',
      measured: { value: 200, unit: 'mm' },
      limit: { value: 200 },
      facts: { field: 'field' },
    })
    expect(judged(cleared(201)).verdict).toBe('fail')
    expect(findingOf('crawl-under', plainDoor({ assumed: ['zones'] }))).toMatchObject({ reason: 'rests-on-assumption', needs: ['zones'] })
  })

  it('is judged by the lowest beam of a light grid where the floor lies lowest, and by the best field of the zone', () => {
    expect(judged(lightGrid([300, 180])).verdict).toBe('pass')
    const sloping = plainState({ floor: { ...level(), slopeX: -0.02 } }) // 40 lower at the far post
    expect(findingOf('crawl-under', plainDoor({ sensors: [lightGrid([180])], states: [sloping] }))).toMatchObject({
      verdict: 'fail',
      measured: { value: 220 },
    })
    expect(judged(lightGrid([300]), cleared(50))).toMatchObject({ verdict: 'pass', measured: { value: 50 } })
  })

  it('says that the height is published and its use our decision', () => {
    expect(judged(cleared(50)).basis.map(({ id, source }) => [id, source.basis])).toEqual([
      ['crawl-under', 'our decision'],
      ['crawl-under-height', 'published'],
      ['sensor', 'measured'],
    ])
  })

  it('does not apply without a field that counts', () => {
    expect(judged().verdict).toBe('not-applicable')
  })
})
