import { describe, expect, it } from 'vitest'
import { calledBefore_mm, speedThatStopsWithin_mm_per_s, stoppingDistance_mm, timeToClear_s } from './call-distance.ts'
import type { WaySight } from './way-sights.ts'

const FOOT_MM = 304.8
const MILE_PER_H_MM_PER_S = 447.04

describe('stoppingDistance_mm', () => {
  // check value body-22: Highway Engineering Handbook, table 2.2 (published), reaction 2.5 s, 11.2 ft/s2 (body-23: TxDOT Roadway Design Manual), printed
  // rounded up to 5 ft; by body-22's note the formula gives 111.9, 151.9, 196.6 and 246.2 ft for the first four
  it('gives the design distances of a road handbook, rounded up as printed (published)', () => {
    const onRoad = { reaction_s: 2.5, decel_mm_per_s2: 11.2 * FOOT_MM, fall: 0 }
    for (const [speed, printed] of [[20, 115], [25, 155], [30, 200], [35, 250], [50, 425], [60, 570], [65, 645]] as const) // biome-ignore format: a table
      expect(Math.ceil(stoppingDistance_mm(speed * MILE_PER_H_MM_PER_S, onRoad) / FOOT_MM / 5) * 5).toBe(printed)
    for (const [speed, feet] of [[20, 111.9], [25, 151.9], [30, 196.6], [35, 246.2]] as const) // biome-ignore format: a table
      expect(Math.abs(stoppingDistance_mm(speed * MILE_PER_H_MM_PER_S, onRoad) / FOOT_MM - feet)).toBeLessThan(0.5) // factors 1.47, 1.075 are rounded
  })

  // check value body-21: AASHTO, from memory; reaction 2.5 s, 3.4 m/s2, the factor 0.039 is 0.0386, which makes 0.45 m at 60 km/h
  it('gives the metric table that is remembered (from memory)', () => {
    for (const [speed, metres] of [[20, 18.5], [30, 31.2], [40, 46.2], [50, 63.4], [60, 83]] as const) // biome-ignore format: a table
      expect(
        Math.abs(stoppingDistance_mm((speed * 1e6) / 3600, { reaction_s: 2.5, decel_mm_per_s2: 3400, fall: 0 }) / 1000 - metres),
      ).toBeLessThan(0.5)
  })

  // Hand calculation: 2 m/s, 1 s, 2 m/s2: 2 + 1 m; down 10 % there is 2 - 0.980665 left: 2 + 4 / 2.03867 = 3.96206 m; up 10 %: 2 + 4 / 5.96133
  it('grows on a way that falls, and shrinks on one that rises', () => {
    const braking = { reaction_s: 1, decel_mm_per_s2: 2000, fall: 0 }
    expect(stoppingDistance_mm(2000, braking)).toBe(3000)
    expect(stoppingDistance_mm(2000, { ...braking, fall: 0.1 })).toBeCloseTo(3962.06, 2)
    expect(stoppingDistance_mm(2000, { ...braking, fall: -0.1 })).toBeCloseTo(2670.99, 2)
    expect(() => stoppingDistance_mm(2000, { ...braking, fall: 0.3 })).toThrow('decel_mm_per_s2 must outdo the fall')
  })

  it('has an inverse', () => {
    const braking = { reaction_s: 1, decel_mm_per_s2: 2000, fall: 0.05 }
    for (const speed of [100, 900, 3100])
      expect(speedThatStopsWithin_mm_per_s(stoppingDistance_mm(speed, braking), 1, braking)).toBeCloseTo(speed, 6)
  })
})

describe('timeToClear_s', () => {
  // Hand calculation, and check value mo-01 (4 m at 1 m/s and 0.5 m/s2 take 6 s): 2 m of them are half way, after 3 s
  it('is the time of the opening profile, and without end for what is higher than the opening', () => {
    expect(timeToClear_s(4000, { speed: 1000, accel: 500 }, 4000)).toBeCloseTo(6, 9)
    expect(timeToClear_s(4000, { speed: 1000, accel: 500 }, 2000)).toBeCloseTo(3, 9)
    expect(timeToClear_s(4000, { speed: 1000, accel: 500 }, 4001)).toBe(Infinity)
  })
})

describe('calledBefore_mm', () => {
  const sight = (...visible: readonly (readonly [number, number])[]): WaySight => ({
    ...({} as Pick<WaySight, 'counted' | 'stance'>),
    x_mm: 0,
    from: 'a',
    reach_mm: 100,
    visible: visible.map(([from_mm, to_mm]) => ({ from_mm, to_mm })),
  })
  it('counts from the first sight that lasts for the answer, whatever comes after', () => {
    expect(calledBefore_mm(sight([-5000, -4900], [-4000, -3000]), 100)).toBe(4900)
    expect(calledBefore_mm(sight([-5000, -4900], [-4000, -3000]), 101)).toBe(3900)
    expect(calledBefore_mm(sight([-5000, -4900]), 101)).toBe(0)
    expect(calledBefore_mm(sight([-50, 900]), 101)).toBe(0)
  })
})
