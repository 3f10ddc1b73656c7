import { describe, expect, it } from 'vitest'
import { findingOf, findingsOf } from '../../cases/judged.ts'
import { downward, plainDoor, plainZone } from '../../cases/plain-door.ts'
import type { Zone } from '../model/zone.ts'

function judged(presenceTime_s: number | undefined, longestStay_s: number | undefined, zone: Partial<Zone> = {}) {
  const sensor = downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], {}, { presenceTime_s, function: zone.function ?? 'presence' })
  return findingOf('presence-time', plainDoor({ sensors: [sensor], zones: [plainZone({ longestStay_s, ...zone })] }))
}

describe('presence-time', () => {
  it('passes where the field holds a body for the longest stay, equal times included', () => {
    expect(judged(60, 60)).toMatchObject({
      id: 'presence-time:zone/sensor/field',
      verdict: 'pass',
      measured: { value: 0, unit: 's' },
      facts: { presence_s: 60, stay_s: 60, heldForEver: false },
    })
  })

  it('fails by the time for which the body stands there after it was let go', () => {
    expect(judged(60, 90)).toMatchObject({ verdict: 'fail', measured: { value: 30, unit: 's' }, limit: { value: 0, unit: 's' } })
  })

  it('passes whatever the stay where the body is held for ever', () => {
    const finding = judged(Infinity, undefined)
    expect(finding).toMatchObject({ verdict: 'pass', facts: { heldForEver: true } })
    expect(finding.facts).not.toHaveProperty('presence_s')
  })

  it('asks for what nobody said', () => {
    expect(judged(undefined, 60)).toMatchObject({ reason: 'missing-input', needs: ['sensors/0/fields/0/presenceTime_s'] })
    expect(judged(60, undefined)).toMatchObject({ needs: ['zones/0/longestStay_s'] })
    expect(judged(undefined, undefined)).toMatchObject({ needs: ['sensors/0/fields/0/presenceTime_s', 'zones/0/longestStay_s'] })
  })

  it('is about zones of presence, and others that say how long a stay may be', () => {
    const call = { purpose: 'call', function: 'call' } as const
    expect(judged(1, undefined, call).verdict).toBe('not-applicable')
    expect(judged(1, 5, call)).toMatchObject({ verdict: 'fail', measured: { value: 4 } })
    expect(judged(1, 5, { purpose: 'must-not-see' }).verdict).toBe('not-applicable')
  })

  it('judges each field of the function', () => {
    const sensors = ['a', 'b'].map((id) => downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], { id }))
    expect(findingsOf('presence-time', plainDoor({ sensors })).map(({ id }) => id)).toEqual([
      'presence-time:zone/a/field',
      'presence-time:zone/b/field',
    ])
  })
})
