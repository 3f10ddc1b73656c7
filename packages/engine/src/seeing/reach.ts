import { exp, log } from '../space/trigonometry.ts'

/** What decides how far a ranging sensor sees a surface. `rangeRef` is its range on a target of `reflectanceRef` met head-on in clear air. */
export interface ReachParameters {
  readonly maxRange_mm: number
  readonly rangeRef_mm: number
  readonly reflectanceRef: number
  readonly extinction_per_mm: number
}

/**
 * Farthest distance at which a surface returns enough light (docs/method.md, section 2): the received power of a diffuse
 * target that fills the spot goes with rho cos(i) exp(-2 sigma R) / R^2, so R solves R exp(sigma R) = rangeRef sqrt(rho cos(i) / rhoRef),
 * and is capped by the range of the electronics.
 *
 * @param brightness rho cos(i), reflectance times the cosine of incidence
 * @returns mm, 0 for a surface that returns nothing
 */
export function reach(brightness: number, { maxRange_mm, rangeRef_mm, reflectanceRef, extinction_per_mm }: ReachParameters): number {
  if (!(brightness > 0)) return 0
  const clear_mm = rangeRef_mm * Math.sqrt(brightness / reflectanceRef)
  return Math.min(maxRange_mm, extinction_per_mm > 0 ? dimmed(clear_mm, extinction_per_mm) : clear_mm)
}

/**
 * Solves R exp(sigma R) = clear, that is w exp(w) = x with w = sigma R: Lambert's W. Fritsch's step (Fritsch, Shafer, Crowley,
 * Communications of the ACM 16, 1973) takes a start that is right to a few per cent to full precision in two rounds.
 */
function dimmed(clear_mm: number, sigma: number): number {
  const x = sigma * clear_mm
  if (x < 1e-8) return clear_mm * (1 - x) // the series of W; log(1 + x) below would keep too little of such an x, or nothing
  const start = log(1 + x)
  let w = start * (1 - log(1 + start) / (2 + start))
  for (let i = 0; i < 3; i++) {
    const z = log(x / w) - w
    const q = 2 * (1 + w) * (1 + w + (2 / 3) * z)
    const step = (z / (1 + w)) * ((q - z) / (q - 2 * z))
    w += w * step
    if (step < 1e-5 && step > -1e-5) break // the next one would be below 1e-20
  }
  return w / sigma
}

/** R exp(sigma R): as far in clear air as R is in this air. */
function clearAirEquivalent(distance_mm: number, extinction_per_mm: number): number {
  return extinction_per_mm > 0 ? distance_mm * exp(extinction_per_mm * distance_mm) : distance_mm
}

/**
 * The least cosine of incidence at which a surface is still seen at a distance, as `reach` has it, leaving out the cap of the range.
 * Cheaper than the reach in fog; near equality the two may differ in the last digits.
 */
export function cosineNeeded(
  distance_mm: number,
  reflectance: number,
  { rangeRef_mm, reflectanceRef, extinction_per_mm }: ReachParameters,
): number {
  const clear_mm = clearAirEquivalent(distance_mm, extinction_per_mm) / rangeRef_mm
  return (clear_mm * clear_mm * reflectanceRef) / reflectance
}
