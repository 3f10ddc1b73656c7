import { describe, expect, it } from 'vitest'
import { cosineOf, growthOf, sineOf } from './sine.ts'

/** The platform's own functions are the second method. */
describe('sine and cosine', () => {
  it('agree with the platform within 4e-15, over 100 turns either way', () => {
    expect(largestDifference(36_000, 0.37)).toBeLessThan(4e-15)
  })
  it('agree with the platform within 3e-16 up to an eighth of a turn', () => {
    expect(largestDifference(45, 0.0013)).toBeLessThan(3e-16)
  })
  it('are exact at quarter turns', () => {
    const quarters = [-720, -270, -180, -90, 0, 90, 180, 270, 360, 450]
    expect(quarters.map((deg) => sineOf(deg) + 0)).toEqual([0, 1, 0, -1, 0, 1, 0, -1, 0, 1])
    expect(quarters.map((deg) => cosineOf(deg) + 0)).toEqual([1, 0, -1, 0, 1, 0, -1, 0, 1, 0])
  })
})

describe('growth', () => {
  it('agrees with the exponential of the platform within 1e-12 of its size', () => {
    let largest = 0
    for (let x = 0; x < 700; x += 0.01) largest = Math.max(largest, Math.abs(growthOf(x) / Math.exp(x) - 1))
    expect(largest).toBeLessThan(1e-12)
  })
  it('is 1 at 0, and infinite where it is too large to hold', () => {
    expect([growthOf(0), growthOf(1e5)]).toEqual([1, Infinity])
  })
})

function largestDifference(most_deg: number, step_deg: number): number {
  let largest = 0
  for (let deg = -most_deg; deg <= most_deg; deg += step_deg) {
    const rad = ((deg % 360) * Math.PI) / 180
    largest = Math.max(largest, Math.abs(sineOf(deg) - Math.sin(rad)), Math.abs(cosineOf(deg) - Math.cos(rad)))
  }
  return largest
}
