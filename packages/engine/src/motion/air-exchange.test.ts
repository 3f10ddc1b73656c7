import { describe, expect, it } from 'vitest'
import { type AirExchange, exchangeOfOpening_m3, exchangePerSecond_m3 } from './air-exchange.ts'

const air: AirExchange = { warmer_degC: 20, colder_degC: 0, discharge: [0.4, 0.0045], meanAt: [2, 9] }

describe('exchangePerSecond_m3', () => {
  // Hand calculation: Cd = 0.4 + 0.0045 * 20 = 0.49; 0.49 * 5 / 3 * sqrt(9.80665 * 2.5 * 20 / 283.15) = 0.816667 * sqrt(1.731706) = 1.074687
  it('is Cd A / 3 sqrt(g h dT / T), written with the mean at 2 h / 9', () => {
    expect(exchangePerSecond_m3(2000, 2500, air)).toBeCloseTo(1.074687, 5)
  })

  // Hand calculation, from first principles: half of the opening passes Cd w sqrt(2 g' z) at the height z above the middle; summed up numerically
  it('equals the flow summed over the height of either half', () => {
    const slices = 200_000
    const half_m = 1.25
    let sum = 0
    for (let i = 0; i < slices; i++) sum += Math.sqrt((2 * 9.80665 * 20 * ((i + 0.5) * half_m)) / slices / 283.15)
    expect(exchangePerSecond_m3(2000, 2500, air)).toBeCloseTo((0.49 * 2 * sum * half_m) / slices, 5)
  })

  it('grows with the height by its power 3/2, and is none without a difference', () => {
    expect(exchangePerSecond_m3(2000, 5000, air) / exchangePerSecond_m3(2000, 2500, air)).toBeCloseTo(2 * Math.SQRT2, 9)
    expect(exchangePerSecond_m3(2000, 2500, { ...air, warmer_degC: 0 })).toBe(0)
  })
})

describe('exchangeOfOpening_m3', () => {
  // Hand calculation: a sliding leaf of 2 m at 1 m/s and 1 m/s2 takes 3 s each way, on average half open (its profile is symmetrical); 4 s open:
  // as much as 7 s fully open
  it('is as much as the mean of the open width lets through, for a sliding leaf', () => {
    const limits = { speed: 1000, accel: 1000 }
    const cycle = { way_mm: 2000, open: limits, close: limits, holdOpen_s: 4, openAt: (way_mm: number) => [way_mm, 2500] as const }
    expect(exchangeOfOpening_m3(cycle, air)).toBeCloseTo(7 * 1.074687, 4)
  })

  // Hand calculation: for a leaf that goes up at an even speed (a ramp of 1 ms) the flow goes with (t / T)^(3/2): 2/5 of the time fully open
  it('counts the lower flow of a low opening, for a leaf that goes up', () => {
    const limits = { speed: 1000, accel: 1e6 }
    const cycle = { way_mm: 2500, open: limits, close: limits, holdOpen_s: 0, openAt: (way_mm: number) => [2000, way_mm] as const }
    expect(exchangeOfOpening_m3(cycle, air)).toBeCloseTo(2 * 0.4 * 2.5 * 1.074687, 2)
  })
})
