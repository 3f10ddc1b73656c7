import { Decimal } from 'decimal.js'
import { describe, expect, it } from 'vitest'
import { acos, asin, atan2, cos, exp, hypot2, hypot3, log, PI, radians, sin } from './trigonometry.ts'

// The reference is decimal.js at 50 digits: another method (series in decimal arithmetic), by other people.
Decimal.set({ precision: 50 })
const PI_EXACT = Decimal.acos(-1)

/** Seeded numbers from 0 to 1 (Park and Miller's minimal standard generator). */
function numbersFrom(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
}

/** The step from |x| to the next double. */
function lastPlace(x: number): number {
  const word = new DataView(new ArrayBuffer(8))
  word.setFloat64(0, Math.abs(x))
  word.setBigUint64(0, word.getBigUint64(0) + 1n)
  return word.getFloat64(0) - Math.abs(x)
}

/** The exact value of a double; `new Decimal(x)` would take its shortest decimal spelling instead. */
function exactly(x: number): Decimal {
  let whole = x
  let halvings = 0
  for (; !Number.isInteger(whole); halvings++) whole *= 2
  return new Decimal(BigInt(whole).toString()).div(new Decimal(2).pow(halvings))
}

/** Largest error over the cases, in units of the last place of the result. */
function largestError<T>(cases: readonly T[], ours: (c: T) => number, exact: (c: T) => Decimal): { ulp: number; at: T | undefined } {
  let worst: { ulp: number; at: T | undefined } = { ulp: 0, at: undefined }
  for (const c of cases) {
    const result = ours(c)
    const ulp = exact(c).minus(exactly(result)).abs().div(lastPlace(result)).toNumber()
    if (!(ulp <= worst.ulp)) worst = { ulp, at: c }
  }
  return worst
}

const random = numbersFrom(20261)
const many = <T>(count: number, make: (i: number) => T) => Array.from({ length: count }, (_, i) => make(i))
const either = (size: number) => (random() * 2 - 1) * size
const angles = [
  ...many(300, () => either(1)),
  ...many(300, () => either(7)),
  ...many(200, () => either(1e5)),
  ...many(100, () => either(1e-4)),
  ...many(40, (i) => 10 ** -i),
  // nearest doubles to multiples of pi / 4, and their neighbours
  ...many(400, (i) => {
    const multiple = PI_EXACT.times(i < 200 ? i : Math.floor(random() * 127_000))
      .div(4)
      .toNumber()
    return multiple + (Math.floor(random() * 5) - 2) * lastPlace(multiple)
  }),
]

describe('sine and its kin against decimal.js (seed 20261)', () => {
  it.each([
    { name: 'sine', ours: sin, exact: (x: Decimal) => x.sin(), cases: angles, limit: 0.8 },
    { name: 'cosine', ours: cos, exact: (x: Decimal) => x.cos(), cases: angles, limit: 0.8 },
    { name: 'arc sine', ours: asin, exact: (x: Decimal) => x.asin(), cases: ratios(), limit: 1 },
    { name: 'arc cosine', ours: acos, exact: (x: Decimal) => x.acos(), cases: ratios(), limit: 1 },
    { name: 'exponential', ours: exp, exact: (x: Decimal) => x.exp(), cases: exponents(), limit: 1 },
    { name: 'logarithm', ours: log, exact: (x: Decimal) => x.ln(), cases: positives(), limit: 1 },
  ])('$name is within $limit ulp', ({ ours, exact, cases, limit }) => {
    const worst = largestError(cases, ours, (x: number) => exact(exactly(x)))
    expect(worst.ulp, `at ${worst.at}`).toBeLessThan(limit)
  })

  it('the direction of a point is within 1.6 ulp in all quarters', () => {
    const points = [
      ...many(600, () => [either(1), either(1)] as const),
      ...many(200, () => [either(1e-9), either(1)] as const),
      ...many(200, () => [either(5000), either(0.01)] as const),
    ]
    const worst = largestError(
      points,
      ([y, x]) => atan2(y, x),
      ([y, x]) => Decimal.atan2(exactly(y), exactly(x)),
    )
    expect(worst.ulp, `at ${worst.at}`).toBeLessThan(1.6)
  })

  it('degrees become radians with one rounding', () => {
    const cases = [...many(361, (i) => i), ...many(300, () => either(720)), 0.1, 110 / 300]
    const worst = largestError(cases, radians, (angle_deg) => PI_EXACT.times(exactly(angle_deg)).div(180))
    expect(worst.ulp, `at ${worst.at}`).toBeLessThan(0.5001)
  })
})

describe('exact values', () => {
  it('round angles in degrees are exact parts of PI', () => {
    expect([45, 90, 180, 360, -90].map(radians)).toEqual([PI / 4, PI / 2, PI, 2 * PI, -PI / 2])
    expect(radians(0)).toBe(0)
  })

  it('what is left of a right angle is its own rounding', () => {
    expect(cos(radians(90))).toBe(
      PI_EXACT.div(2)
        .minus(exactly(PI / 2))
        .toNumber(),
    )
    expect(sin(radians(180))).toBe(PI_EXACT.minus(exactly(PI)).toNumber())
    expect(sin(radians(90))).toBe(1)
    expect(cos(radians(180))).toBe(-1)
  })

  it('ends and zeros are exact', () => {
    expect([sin(0), cos(0), asin(0), acos(1), exp(0), log(1)]).toEqual([0, 1, 0, 0, 1, 0])
    expect([asin(1), asin(-1), acos(-1), acos(0)]).toEqual([PI / 2, -PI / 2, PI, PI / 2])
    expect([atan2(0, 1), atan2(1, 0), atan2(0, -1), atan2(-0, -1), atan2(-1, 0), atan2(0, 0)]).toEqual([0, PI / 2, PI, PI, -PI / 2, 0])
    expect([atan2(1, 1), atan2(-2, 2), atan2(3, -3)]).toEqual([PI / 4, -PI / 4, (3 * PI) / 4])
    expect([exp(-746), exp(-1e9), exp(-Infinity), exp(710), exp(Infinity)]).toEqual([0, 0, 0, Infinity, Infinity])
    expect([exp(-745), log(5e-324)]).toEqual([5e-324, Decimal.ln(exactly(5e-324)).toNumber()])
  })

  it('lengths are the root of the plain sum', () => {
    expect([hypot2(3, -4), hypot3(1, 2, -2), hypot3(2, 3, 6)]).toEqual([5, 3, 7])
  })
})

describe('identities', () => {
  it('sine is odd and cosine is even to the last bit', () => {
    for (const angle of angles) {
      expect(sin(-angle)).toBe(-sin(angle))
      expect(cos(-angle)).toBe(cos(angle))
    }
  })

  it('squares of sine and cosine add up to 1', () => {
    for (const angle of angles) expect(Math.abs(sin(angle) * sin(angle) + cos(angle) * cos(angle) - 1)).toBeLessThan(4e-16)
  })

  it('inverse functions lead back', () => {
    for (const ratio of ratios()) {
      expect(Math.abs(sin(asin(ratio)) - ratio)).toBeLessThan(3e-16)
      expect(Math.abs(cos(acos(ratio)) - ratio)).toBeLessThan(5e-16)
      expect(Math.abs(asin(ratio) + acos(ratio) - PI / 2)).toBeLessThan(5e-16)
    }
    for (const x of positives()) expect(Math.abs(exp(log(x)) / x - 1)).toBeLessThan(1e-13)
  })
})

describe('what the functions refuse', () => {
  it('an angle beyond 1e5 rad, or none', () => {
    expect(() => sin(100_001)).toThrow('angle_rad must be within 1e5 of 0, got 100001')
    expect(() => cos(Number.NaN)).toThrow('angle_rad must be within 1e5 of 0, got NaN')
    expect(() => sin(-Infinity)).toThrow('within 1e5')
  })

  it('a sine above 1, the logarithm of 0, the direction of infinity', () => {
    expect(() => asin(1.0000001)).toThrow('a sine or cosine must be from -1 to 1, got 1.0000001')
    expect(() => acos(Number.NaN)).toThrow('got NaN')
    expect(() => log(0)).toThrow('log needs a finite number above 0, got 0')
    expect(() => atan2(Infinity, 1)).toThrow('atan2 needs finite numbers, got y Infinity and x 1')
    expect(() => exp(Number.NaN)).toThrow('exp needs a number, got NaN')
  })
})

function ratios(): readonly number[] {
  return [...many(600, () => either(1)), ...many(100, () => either(1e-5)), ...many(100, (i) => 1 - 2 ** -(i % 53)), 0.5, -0.5, 0.975]
}

function exponents(): readonly number[] {
  return [...many(400, () => either(2)), ...many(300, () => either(700)), ...many(100, () => either(1e-6))]
}

function positives(): readonly number[] {
  return [...many(400, () => random() * 4), ...many(300, () => 10 ** either(300)), ...many(200, () => 1 + either(1e-3)), 5e-324, 1.7e308]
}
