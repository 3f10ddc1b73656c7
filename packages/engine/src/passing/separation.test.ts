import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../cases/random-numbers.ts'
import { longestStop_s, type Separation, separation_mm, separationAt, speedThatStops_mm_per_s } from './separation.ts'

const flat = (speed_mm_per_s: number, addend_mm: number, least_mm = 0): Separation => ({
  speed_mm_per_s,
  addend_mm,
  supplement_mm: 0,
  least_mm,
})
const arm = (d_mm: number): Separation => {
  const addend_mm = Math.max(0, 8 * (d_mm - 14))
  return { ...flat(2000, addend_mm, 100), beyond: flat(1600, addend_mm, 500) }
}

describe('separation_mm', () => {
  // check values sep-12, sep-13, sep-14: arithmetic on a rule recalled from memory
  it('gives the three worked cases of an arm (arithmetic on a rule from memory)', () => {
    expect(separation_mm(arm(30), 0.15)).toBe(428)
    expect(separation_mm(arm(20), 0.3)).toBe(528)
    expect(separation_mm(arm(14), 0.28)).toBe(500)
  })

  // check value sep-16; the addends are published (sep-03, sep-04), the sum is arithmetic
  it('gives the worked case of a lying zone in both editions (published addends)', () => {
    expect(separation_mm(flat(1600, 1200 - 0.4 * 300), 1)).toBe(2680)
    expect(separation_mm({ ...flat(1600, 1200), supplement_mm: 0 }, 1)).toBe(2800)
    expect(separation_mm({ ...flat(1600, 1200), supplement_mm: 40 }, 1)).toBe(2840)
  })

  // check values sep-17, sep-18: OSHA safety distance chart, 63 inches per second, no addend, printed to half an inch; sep-19 is the row rounded down
  it('reproduces the published chart of another country, 63 inches for each second', () => {
    const chart = [[0.055, 3.5], [0.063, 4], [0.079, 5], [0.126, 8], [0.15, 9.5], [0.317, 20], [0.404, 25.5], [0.412, 26]] as const // biome-ignore format: a table
    for (const [time_s, inches] of chart)
      expect(Math.abs(separation_mm(flat(63 * 25.4, 0), time_s) / 25.4 - inches)).toBeLessThanOrEqual(0.25)
    expect(separation_mm(flat(63 * 25.4, 0), 0.072) / 25.4).toBeCloseTo(4.536, 9)
  })

  it('says which speed it took', () => {
    expect(separationAt(arm(30), 0.15).by.speed_mm_per_s).toBe(2000)
    expect(separationAt(arm(20), 0.3).by.speed_mm_per_s).toBe(1600)
  })
})

describe('longestStop_s', () => {
  it('is the longest time whose distance is still there, on 2000 random rules (seed 5)', () => {
    const random = randomNumbers(5)
    for (let n = 0; n < 2000; n++) {
      const rule = n % 2 === 0 ? arm(random.between(10, 40)) : flat(random.between(800, 2000), random.between(0, 1200))
      const there_mm = random.between(0, 4000)
      const longest_s = longestStop_s(rule, there_mm)
      if (longest_s >= 0) expect(separation_mm(rule, longest_s)).toBeLessThanOrEqual(there_mm + 1e-6)
      expect(separation_mm(rule, Math.max(0, longest_s + 1e-6))).toBeGreaterThan(longest_s < 0 ? there_mm - 1e-6 : there_mm)
    }
  })

  it('is negative where the least distance is not there', () => {
    expect(longestStop_s(arm(14), 99)).toBe(-Infinity)
    expect(longestStop_s(arm(14), 100)).toBeCloseTo(0.05, 12)
  })
})

describe('speedThatStops_mm_per_s', () => {
  // Hand calculation: 0.4 s less 0.1 s of delay, braking 1000 mm/s2: 300 mm/s
  it('is what braking sheds in the time left', () => {
    expect(speedThatStops_mm_per_s(0.4, 0.1, 1000)).toBeCloseTo(300, 9)
    expect(speedThatStops_mm_per_s(0.1, 0.1, 1000)).toBeUndefined()
  })
})
