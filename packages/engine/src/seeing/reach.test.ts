import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../cases/random-numbers.ts'
import { cosineNeeded, type ReachParameters, reach } from './reach.ts'

const seeds = Array.from({ length: 5000 }, (_, i) => i + 1)

function randomParameters(seed: number): ReachParameters & { readonly brightness: number } {
  const dice = randomNumbers(seed)
  return {
    brightness: 10 ** dice.between(-12, 0),
    maxRange_mm: Infinity,
    rangeRef_mm: 10 ** dice.between(1, 5),
    reflectanceRef: dice.between(0.01, 1),
    extinction_per_mm: dice.chance(0.2) ? 0 : 10 ** dice.between(-20, 0),
  }
}

/** R where R exp(sigma R) = clear, by halving; the left side rises with R. */
function byHalving(clear_mm: number, sigma: number): number {
  let [low, high] = [0, clear_mm]
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2
    if (middle * Math.exp(sigma * middle) <= clear_mm) low = middle
    else high = middle
  }
  return low
}

describe('the reach', () => {
  it('H7: at a visibility of 10 m, a range of 2000 mm shrinks to 1234 mm (hand calculation)', () => {
    const parameters = { maxRange_mm: 10_000, rangeRef_mm: 2000, reflectanceRef: 0.1, extinction_per_mm: 3.912 / 10_000 }
    expect(Math.round(reach(0.1, parameters))).toBe(1234)
  })
  it('solves R exp(sigma R) = rangeRef sqrt(brightness / rhoRef) to 1e-12 of R, as halving does, seeds 1 to 5000', () => {
    for (const seed of seeds) {
      const { brightness, ...parameters } = randomParameters(seed)
      const clear_mm = parameters.rangeRef_mm * Math.sqrt(brightness / parameters.reflectanceRef)
      const found = reach(brightness, parameters)
      const sigma = parameters.extinction_per_mm
      expect((found * Math.exp(sigma * found)) / clear_mm, `seed ${seed}`).toBeCloseTo(1, 11)
      expect(found / byHalving(clear_mm, sigma), `seed ${seed}`).toBeCloseTo(1, 12)
    }
  })
  it('rises with brightness and range, and falls with extinction and the reflectance it refers to, however small the step, seeds 1 to 5000', () => {
    for (const seed of seeds) {
      const { brightness, ...parameters } = randomParameters(seed)
      const more = 1 + 10 ** randomNumbers(seed + 10_000).between(-12, 1)
      const asIs = reach(brightness, parameters)
      const slack = 1 - 1e-14 // of rounding
      expect(reach(brightness * more, parameters)).toBeGreaterThanOrEqual(asIs * slack)
      expect(reach(brightness, { ...parameters, rangeRef_mm: parameters.rangeRef_mm * more })).toBeGreaterThanOrEqual(asIs * slack)
      expect(reach(brightness, { ...parameters, reflectanceRef: parameters.reflectanceRef * more }) * slack).toBeLessThanOrEqual(asIs)
      expect(
        reach(brightness, { ...parameters, extinction_per_mm: parameters.extinction_per_mm * more + 1e-30 }) * slack,
      ).toBeLessThanOrEqual(asIs)
      expect(reach(brightness, { ...parameters, maxRange_mm: asIs / more })).toBeLessThanOrEqual(asIs)
    }
  })
  it('is a number from 0 to the cap of the range, for any brightness, range and fog', () => {
    for (const brightness of [0, 1e-300, 1e-40, 1e-33, 1e-20, 1e-9, 0.5, 1])
      for (const extinction_per_mm of [0, 1e-300, 1e-25, 1e-17, 1e-16, 1e-9, 1e-3, 1, 1e3])
        for (const rangeRef_mm of [1e-3, 1, 1e4, 1e7]) {
          const found = reach(brightness, { maxRange_mm: 5000, rangeRef_mm, reflectanceRef: 0.1, extinction_per_mm })
          expect(found >= 0 && found <= 5000, `${brightness} ${extinction_per_mm} ${rangeRef_mm}: ${found}`).toBe(true)
          expect(found > 0, `${brightness} ${extinction_per_mm} ${rangeRef_mm}`).toBe(brightness > 0)
        }
  })
  it('is 0 where no light comes back, and where brightness is no number', () => {
    const parameters = { maxRange_mm: 5000, rangeRef_mm: 1000, reflectanceRef: 0.1, extinction_per_mm: 0.001 }
    expect([0, -0.1, Number.NaN].map((brightness) => reach(brightness, parameters))).toEqual([0, 0, 0])
  })
})

describe('the cosine that a distance needs', () => {
  it('is the one at which the reach is that distance, seeds 1 to 5000', () => {
    for (const seed of seeds) {
      const { brightness, ...parameters } = randomParameters(seed)
      const distance_mm = reach(brightness, parameters)
      expect(cosineNeeded(distance_mm, 0.25, parameters) / (brightness / 0.25), `seed ${seed}`).toBeCloseTo(1, 11)
    }
  })
})
