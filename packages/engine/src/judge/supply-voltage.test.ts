import { describe, expect, it } from 'vitest'
import { findingOf, findingsOf } from '../../cases/judged.ts'
import { fromMemory, plainDoor, zoneOnly } from '../../cases/plain-door.ts'
import { wiredDoor } from '../../cases/wired-door.ts'
import type { WiredSensor, Wiring } from '../model/wiring.ts'

const judged = (changes?: (wiring: Wiring) => Wiring) => findingOf('supply-voltage', wiredDoor(changes))
const power = (changes: Partial<WiredSensor['power']>) => (wiring: Wiring) => ({
  ...wiring,
  sensors: wiring.sensors.map((sensor) => ({ ...sensor, power: { ...sensor.power, ...changes } })),
})

describe('supply-voltage', () => {
  it('is in order where the device keeps its window, worked by hand: 22 V less 0.2 A through source, two cores at 30 °C, and what the inputs draw', () => {
    // 0.234 ohm at 20 °C have 0.243 ohm at 30 °C; the inputs take some 10 mA more through the inner 0.5 ohm of the source
    const found = judged()
    expect(found).toMatchObject({ verdict: 'pass', subject: { kind: 'sensor', id: 'scanner' }, limit: { value: 10, unit: 'V' } })
    const lowest = 'measured' in found ? (found.measured?.value ?? 0) : 0
    expect(lowest).toBeLessThan(22 - 0.2 * (0.5 + 2 * 0.243))
    expect(lowest).toBeGreaterThan(22 - 0.23 * (0.5 + 2 * 0.243))
    expect(found.facts).toMatchObject({ beyond: 'nothing', hottest_degC: 30, core_mm2: 0.5, awg: 24, cable: 'W1', length_mm: 6000 })
    expect(found.basis.map(({ id }) => id)).toEqual(expect.arrayContaining(['conductor-resistance', 'copper-factors']))
  })

  it('fails where the device needs more than is left, and where the source gives more than it stands', () => {
    expect(judged(power({ least_V: 21.9 }))).toMatchObject({ verdict: 'fail', facts: { beyond: 'low' }, limit: { value: 21.9 } })
    const high = judged(power({ largest_V: 26.5 }))
    expect(high).toMatchObject({ verdict: 'fail', facts: { beyond: 'high' }, limit: { value: 26.5 } })
    // 27 V less what the inputs alone lose
    expect('measured' in high && high.measured?.value).toBeCloseTo(27, 1)
  })

  it('asks how hot the copper gets, and makes no pass of what is only remembered: parts, and copper beyond the table', () => {
    expect(judged((wiring) => ({ ...wiring, copper: undefined }))).toMatchObject({
      verdict: 'undetermined',
      reason: 'missing-input',
      needs: ['wiring/copper'],
    })
    expect(judged((wiring) => ({ ...wiring, copper: { coldest_degC: 0, hottest_degC: 60 } }))).toMatchObject({
      verdict: 'undetermined',
      reason: 'limit-from-memory',
      needs: ['confirmations/copper-coefficient'],
    })
    expect(judged((wiring) => ({ ...wiring, copper: { coldest_degC: -30, hottest_degC: 40 } })).verdict).toBe('pass')
    expect(judged((wiring) => ({ ...wiring, supply: { ...wiring.supply, source: fromMemory } }))).toMatchObject({
      reason: 'limit-from-memory',
      needs: ['confirmations/wiring/supply'],
    })
  })

  it('tells the moment when power comes, and does not judge it', () => {
    expect(judged().facts['inrush_V']).toBeUndefined()
    const rushing = judged(power({ inrush_A: 15 }))
    expect(rushing.verdict).toBe('pass')
    expect(rushing.facts['inrush_V']).toBeLessThan(10)
  })

  it('asks for the wiring of a door with a sensor that protects, and has no subject without', () => {
    expect(findingsOf('supply-voltage', plainDoor())).toMatchObject([
      { verdict: 'undetermined', needs: ['wiring'], subject: { kind: 'door' } },
    ])
    expect(findingsOf('supply-voltage', plainDoor({ sensors: [zoneOnly()] }))).toMatchObject([{ verdict: 'not-applicable' }])
    expect(findingsOf('supply-voltage', plainDoor({ sensors: [] }))).toMatchObject([{ verdict: 'not-applicable' }])
  })
})
