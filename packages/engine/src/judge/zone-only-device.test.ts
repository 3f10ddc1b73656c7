import { describe, expect, it } from 'vitest'
import { findingOf, findingsOf } from '../../cases/judged.ts'
import { plainDoor, zoneOnly } from '../../cases/plain-door.ts'

describe('zone-only-device', () => {
  it('is never settled by computing, and repeats what sets the device off', () => {
    expect(findingOf('zone-only-device', plainDoor({ sensors: [zoneOnly()] }))).toMatchObject({
      id: 'zone-only-device:radar',
      verdict: 'undetermined',
      reason: 'not-computable',
      needs: [],
      facts: { sensorName: 'radar', function: 'opening', output: 'OUT2', needs: '0.1 m/s' },
    })
  })

  it('is about each such device', () => {
    expect(findingsOf('zone-only-device', plainDoor({ sensors: [zoneOnly(), zoneOnly({ id: 'loop' })] }))).toHaveLength(2)
    expect(findingOf('zone-only-device', plainDoor()).verdict).toBe('not-applicable')
  })
})
