import { describe, expect, it } from 'vitest'
import { twoRelayDoor } from '../../cases/two-relay-door.ts'
import type { Fault } from './faults.ts'
import { handTest } from './hand-test.ts'

const figures = {
  mostHidden_percent: 0.1,
  cable_y: 1000,
  supply_y: 500,
  resistor_y: 2000,
  control_y: 400,
  source: { basis: 'invented' },
} as const
const { cables } = twoRelayDoor()
const stuck: Fault = { kind: 'sensor-stuck', sensor: 'scanner', in: 'clear' }
const touching: Fault = { kind: 'cores-shorted', cores: [cables[0]?.cores[2]?.id ?? '', cables[0]?.cores[3]?.id ?? ''] }

describe('how often somebody tests by hand', () => {
  it('is worked by hand for a sensor of 100 years: a share of 0.1 % is 2 x 0.001 x 100 years x 365 days = 73 days', () => {
    expect(handTest({ cables, handTest: figures }, [stuck], () => 100)).toMatchObject({
      mean_y: 100,
      longest_d: expect.closeTo(73, 9),
      missing: [],
    })
  })
  it('counts a part once, whatever of it fails, and adds the rates of parts: 1 / (1/100 + 1/1000) = 90.909 years, 66.36 days', () => {
    const welded: Fault = { kind: 'switch-stuck', sensor: 'scanner', switch: 'presence', at: 'closed' }
    const open: Fault = { kind: 'core-open', core: cables[0]?.cores[2]?.id ?? '' }
    const { parts, mean_y, longest_d } = handTest({ cables, handTest: figures }, [stuck, welded, touching, open], () => 100)
    expect(parts.map(({ kind, id }) => [kind, id])).toEqual([
      ['sensor', 'scanner'],
      ['cable', cables[0]?.id],
    ])
    expect([mean_y, longest_d]).toEqual([expect.closeTo(90.909, 3), expect.closeTo(66.364, 3)])
  })
  it('names what is missing, and says nothing then', () => {
    expect(handTest({ cables, handTest: undefined }, [stuck, touching, { kind: 'supply-lost' }], () => undefined)).toMatchObject({
      longest_d: undefined,
      mean_y: undefined,
      missing: ['sensor scanner', `cable ${cables[0]?.id}`, 'supply', 'share'],
    })
    const noShare = { ...figures, mostHidden_percent: undefined }
    expect(handTest({ cables, handTest: noShare }, [stuck], () => 100)).toMatchObject({
      mean_y: 100,
      longest_d: undefined,
      missing: ['share'],
    })
  })
  it('never leaves a fault for longer than the share allows, by the exact share of a constant rate', () => {
    for (const mean_y of [0.5, 3, 40, 1000])
      for (const mostHidden_percent of [0.01, 1, 20, 50]) {
        const { longest_d = 0 } = handTest({ cables, handTest: { ...figures, mostHidden_percent } }, [stuck], () => mean_y)
        const x = longest_d / 365 / mean_y
        expect(1 - (1 - Math.exp(-x)) / x, `${mean_y} years, ${mostHidden_percent} %`).toBeLessThanOrEqual(mostHidden_percent / 100)
      }
  })
})
