import { describe, expect, it } from 'vitest'
import { closingOf, leastLeft, overAt, restsAfter } from './leaf-motion.ts'

/** 125 mm of speeding up in 0.5 s, 3.5 s at 500 mm/s, and from 4 s on 125 mm of slowing. */
const leaf = (decel: number, curve?: readonly (readonly [number, number])[]) =>
  closingOf(2000, { speed: 500, accel: 1000, jerk: undefined, delay: 0, decel, curve })

// Hand calculation throughout
describe('the least that a leaf has to go', () => {
  it('is that of the latest stop where braking is as hard as slowing', () => {
    expect(leastLeft(leaf(1000), 4.2, 4.2)).toBeCloseTo(45, 9) // 125 - 500 * 0.2 + 1000 * 0.2^2 / 2
    expect(restsAfter(leaf(1000), 4.2, 4.3)).toBeCloseTo(0.3, 9)
    expect(overAt(leaf(1000))).toBeCloseTo(4.5, 9)
  })

  it('is that of a stop at the beginning of slowing where braking is weaker', () => {
    expect(leastLeft(leaf(100), 4.2, 4.2)).toBeCloseTo(27, 9) // 125 - 500 * 0.2 + 100 * 0.2^2 / 2
    expect(leastLeft(leaf(100), 3, 3)).toBeCloseTo(625, 9) // still at full speed: nothing sooner is lower
    expect(restsAfter(leaf(100), 4.2, 4.3)).toBeCloseTo(5, 9)
    expect(overAt(leaf(100))).toBeCloseTo(9.5, 9)
  })

  it('is bounded over every earlier stop where a curve was measured', () => {
    const measured = leaf(Infinity, [[0.5, 100]])
    expect(leastLeft(measured, 0.1, 0.7)).toBeCloseTo(2000 - 5 - 100, 9) // all have come to rest, the last stopped lowest
    // stopped at once it has gone 200 mm/s * 0.3 s, stopped at 0.1 s only 5 + 40 mm
    expect(leastLeft(measured, 0.1, 0.3)).toBeGreaterThan(1939)
    expect(leastLeft(measured, 0.1, 0.3)).toBeLessThanOrEqual(1940)
    // at 500 mm/s the latest stop is the lowest: 125 + 2.5 * 500 mm gone, and 60
    expect(leastLeft(measured, 3, 3.3)).toBeGreaterThan(563)
    expect(leastLeft(measured, 3, 3.3)).toBeLessThanOrEqual(565)
    expect(restsAfter(measured, 0, 1)).toBe(0.5)
    expect(overAt(measured)).toBeCloseTo(5, 9)
  })
})
