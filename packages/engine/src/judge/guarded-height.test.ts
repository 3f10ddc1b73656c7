import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { downward, lightGrid, plainDoor, plainZone } from '../../cases/plain-door.ts'
import type { Sensor } from '../model/sensor.ts'

function judged(height_mm: number, ...sensors: readonly Sensor[]) {
  return findingOf('guarded-height', plainDoor({ sensors, opening: { width_mm: 2000, height_mm } }))
}
const topped = (top_mm: number) => downward([{ x_mm: 500, y_mm: 0, z_mm: 4000 }], {}, { top_mm })

// 2.5 m: DGUV Information 208-022, 2017, 6(1), published (check value door-09).
describe('guarded-height', () => {
  it('passes for a field without a top', () => {
    expect(judged(4000, topped(Infinity))).toMatchObject({
      verdict: 'pass',
      measured: { value: 4000 },
      limit: { value: 2500, unit: 'mm' },
      facts: { topless: true },
    })
  })

  it('asks for 2.5 m, or the clear height where that is less', () => {
    expect(judged(4000, topped(2500)).verdict).toBe('pass')
    expect(judged(4000, topped(2499))).toMatchObject({ verdict: 'fail', measured: { value: 2499 }, limit: { value: 2500 } })
    expect(judged(2200, topped(2300))).toMatchObject({ verdict: 'pass', measured: { value: 2200 }, limit: { value: 2200 } })
  })

  it('is judged by the highest beam of a light grid, and by the best field of the zone', () => {
    expect(judged(4000, lightGrid([300, 1800]))).toMatchObject({ verdict: 'fail', measured: { value: 1800 }, facts: { sensor: 'grid' } })
    expect(judged(4000, lightGrid([300, 1800]), topped(2600))).toMatchObject({ verdict: 'pass', facts: { sensor: 'sensor' } })
  })

  it('takes back a pass for a zone that nobody entered', () => {
    expect(findingOf('guarded-height', plainDoor({ assumed: ['zones'] }))).toMatchObject({
      reason: 'rests-on-assumption',
      needs: ['zones'],
    })
  })

  it('does not apply without a field that counts, or presence at the leaf', () => {
    expect(judged(4000).verdict).toBe('not-applicable')
    expect(findingOf('guarded-height', plainDoor({ zones: [plainZone({ purpose: 'call' })] })).verdict).toBe('not-applicable')
  })
})
