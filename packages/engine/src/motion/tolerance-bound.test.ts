import { describe, expect, it } from 'vitest'
import { normalBelow, toleranceBound, toleranceFactor } from './tolerance-bound.ts'

describe('toleranceFactor', () => {
  // check value st-12: exact one-sided factors from the noncentral t distribution, computed with scipy 1.17.1
  it('is the tabulated one for 95 % with a confidence of 95 % (outside: scipy 1.17.1)', () => {
    for (const [n, k, places] of [[5, 4.2027, 4], [10, 2.911, 3], [20, 2.396, 3], [30, 2.2198, 4], [50, 2.065, 3]] as const) // biome-ignore format: a table
      expect(toleranceFactor(n, 0.95, 0.95)).toBeCloseTo(k, places)
  })

  // Quantiles of scipy 1.17.1, stats.nct.ppf(confidence, n - 1, stats.norm.ppf(share) * sqrt(n)) / sqrt(n); few readings and extreme shares among them
  it('agrees with another library on few and many readings, shares and confidences', () => {
    for (const [n, share, confidence, k] of [
      [2, 0.95, 0.95, 26.25967398303447],
      [3, 0.9, 0.9, 4.258164936706422],
      [3, 0.99, 0.99, 23.89556334939276],
      [5, 0.95, 0.95, 4.202680741256176],
      [10, 0.99, 0.9, 3.5316587507606014],
      [30, 0.999, 0.95, 4.022198371283771],
      [100, 0.95, 0.95, 1.926538850512315],
    ] as const)
      expect(toleranceFactor(n, share, confidence) / k).toBeCloseTo(1, 6)
  })

  // check value st-11: NIST/SEMATECH e-Handbook 7.2.6.3 prints the approximation 1.8752; the exact factor is 1.87395
  it('is the exact one where a published example prints an approximation (published: NIST/SEMATECH e-Handbook)', () => {
    expect(toleranceFactor(43, 0.9, 0.99)).toBeCloseTo(1.87395, 5)
    expect(toleranceFactor(43, 0.9, 0.99)).toBeLessThan(1.8752)
  })

  it('falls with every further reading and grows with share and confidence', () => {
    for (let n = 2; n < 20; n += 3) expect(toleranceFactor(n + 1, 0.95, 0.95)).toBeLessThan(toleranceFactor(n, 0.95, 0.95))
    expect(toleranceFactor(8, 0.99, 0.95)).toBeGreaterThan(toleranceFactor(8, 0.95, 0.95))
    expect(toleranceFactor(8, 0.95, 0.99)).toBeGreaterThan(toleranceFactor(8, 0.95, 0.95))
  })
})

describe('toleranceBound', () => {
  // Hand calculation: mean 0.32, deviation sqrt((4 + 1 + 0 + 1 + 4) e-4 / 4) = 0.015811; the factor is st-12's
  it('is the mean and so many deviations', () => {
    const { mean, deviation, bound } = toleranceBound([0.3, 0.31, 0.32, 0.33, 0.34], 0.95, 0.95)
    expect(mean).toBeCloseTo(0.32, 12)
    expect(deviation).toBeCloseTo(0.015811, 6)
    expect(bound).toBeCloseTo(0.32 + 4.2027 * 0.015811, 5)
  })

  it('never lies below the largest reading, and is that of readings that are alike', () => {
    expect(toleranceBound([0.4, 0.4, 0.4], 0.95, 0.95).bound).toBeCloseTo(0.4, 12)
    const skewed = [...Array.from({ length: 60 }, () => 0.3), 0.9]
    expect(toleranceBound(skewed, 0.6, 0.6).bound).toBe(0.9)
  })

  it('asks for two readings', () => {
    expect(() => toleranceBound([0.3], 0.95, 0.95)).toThrow('readings must be at least 2, got 1')
  })
})

describe('normalBelow', () => {
  // Printed in any table of the standard normal distribution
  it('is the tabulated chance', () => {
    for (const [x, chance] of [[0, 0.5], [1, 0.841344746], [1.959963985, 0.975], [-1.644853627, 0.05], [3, 0.998650102]] as const) // biome-ignore format: a table
      expect(normalBelow(x)).toBeCloseTo(chance, 9)
  })
})
