import { exp, log, PI } from '../space/trigonometry.ts'

/** What readings of one quantity bound: with the confidence, so large a share of all that would be read lies at or below the bound. */
export interface ToleranceBound {
  readonly mean: number
  /** With n - 1 in its denominator; 0 where all readings are alike. */
  readonly deviation: number
  readonly factor: number
  /** `mean + factor * deviation`, and never below the largest reading. */
  readonly bound: number
}

/**
 * Upper one-sided tolerance bound of readings that are taken to be normally distributed and independent.
 *
 * @param readings at least two, in any unit
 * @param share of all values that the bound covers, 0.5 < share < 1
 * @param confidence 0 < confidence < 1
 */
export function toleranceBound(readings: readonly number[], share: number, confidence: number): ToleranceBound {
  const n = readings.length
  if (n < 2) throw new Error(`readings must be at least 2, got ${n}`)
  const mean = readings.reduce((sum, reading) => sum + reading, 0) / n
  const squares = readings.reduce((sum, reading) => sum + (reading - mean) * (reading - mean), 0)
  const deviation = Math.sqrt(squares / (n - 1))
  const factor = toleranceFactor(n, share, confidence)
  return { mean, deviation, factor, bound: Math.max(mean + factor * deviation, ...readings) }
}

/**
 * The factor k of the bound `mean + k * deviation`: `sqrt(n) k` is the quantile at `confidence` of Student's t with n - 1 degrees of freedom that is
 * off its centre by `sqrt(n) z`, z the normal quantile of the share (docs/method.md, "Approach"). Bracketed; the upper end is returned, which errs
 * toward a longer time.
 */
export function toleranceFactor(n: number, share: number, confidence: number): number {
  const z = normalQuantile(share)
  let below = 0
  let above = 1
  while (above < LARGEST && confidenceOf(above, n, z) < confidence) above *= 2
  for (let i = 0; i < 40; i++) {
    const middle = (below + above) / 2
    if (confidenceOf(middle, n, z) < confidence) below = middle
    else above = middle
  }
  return above
}

/** No readings have a larger one: for two, a share of 0.999 and a confidence of 0.999 it is about 3000. */
const LARGEST = 1e6
const STEPS = 300
/** Farther out the density of the deviation is below 1e-16 of its peak. */
const TAIL = 9

/**
 * The chance that `mean + k deviation` lies at or above the share's quantile z: over all deviations s (of a variable of deviation 1), the chance that
 * a mean lies above z - k s, weighed by the density of s, `s^(f-1) exp(-f s^2 / 2)` with f = n - 1. By Simpson's rule; the density is made to sum to 1.
 */
function confidenceOf(k: number, n: number, z: number): number {
  const f = n - 1
  const spread = 1 / Math.sqrt(2 * f)
  const from = Math.max(0, 1 - TAIL * spread)
  const to = 1 + TAIL * spread
  const root = Math.sqrt(n)
  let weights = 0
  let sum = 0
  for (let i = 0; i <= STEPS; i++) {
    const u = i / STEPS // closer steps at small deviations, where few readings have much of their weight
    const s = from + (to - from) * u * u
    const simpson = (i === 0 || i === STEPS ? 1 : i % 2 === 1 ? 4 : 2) * u
    const power = f === 1 ? 0 : s === 0 ? -Infinity : (f - 1) * log(s)
    const weight = simpson * exp(power - (f * (s * s - 1)) / 2)
    weights += weight
    sum += weight * normalBelow(root * (k * s - z))
  }
  return sum / weights
}

/** The chance that a standard normal variable lies below x. Positive terms only: G. Marsaglia, Evaluating the normal distribution, 2004. */
export function normalBelow(x: number): number {
  if (x < -9) return 0
  if (x > 9) return 1
  if (x < 0) return 1 - normalBelow(-x)
  let term = x
  let sum = x
  for (let i = 3; term > 1e-17 * sum; i += 2) {
    term *= (x * x) / i
    sum += term
  }
  return 0.5 + sum * exp(-(x * x) / 2) * (1 / Math.sqrt(2 * PI))
}

/** Below which this share of a standard normal variable lies. */
function normalQuantile(share: number): number {
  let below = -9
  let above = 9
  for (let i = 0; i < 80; i++) {
    const middle = (below + above) / 2
    if (normalBelow(middle) < share) below = middle
    else above = middle
  }
  return above
}
