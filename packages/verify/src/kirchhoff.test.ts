import { describe, expect, it } from 'vitest'
import { unbalanced } from './kirchhoff.ts'

const DIVIDER = [
  { a: 0, b: 1, siemens: 1 / 1000 },
  { a: 1, b: 2, siemens: 1 / 3000 },
]
/** 8 mA from terminal 0 to 2: 8 V and 24 V. */
const DRIVEN = [0.008, 0, -0.008]
const AMOUNTS = [0.008, 0, 0.008]

describe('currents that balance', () => {
  it('are those of a divider worked by hand, wherever its zero lies', () => {
    expect(unbalanced(DIVIDER, [32, 24, 0], DRIVEN, AMOUNTS)).toBe(-1)
    expect(unbalanced(DIVIDER, [8, 0, -24], DRIVEN, AMOUNTS)).toBe(-1)
  })
  it('are not those of a terminal that is off by a microvolt', () => {
    expect(unbalanced(DIVIDER, [32, 24.000001, 0], DRIVEN, AMOUNTS)).toBeGreaterThanOrEqual(0)
    expect(unbalanced(DIVIDER, [32, Number.NaN, 0], DRIVEN, AMOUNTS)).toBeGreaterThanOrEqual(0)
  })
  it('tell where two terminals on a short stand between leaks, which no terminal alone would', () => {
    const joins = [
      { a: 0, b: 1, siemens: 1e-12 },
      { a: 1, b: 2, siemens: 100 },
      { a: 2, b: 3, siemens: 1e-12 },
      { a: 0, b: 3, siemens: 1 },
    ]
    const driven = [24, 0, 0, -24]
    const amounts = [24, 0, 0, 24]
    expect(unbalanced(joins, [24, 12, 12, 0], driven, amounts)).toBe(-1)
    expect(unbalanced(joins, [24, 12.5, 12.5, 0], driven, amounts)).toBeGreaterThanOrEqual(0)
  })
})
