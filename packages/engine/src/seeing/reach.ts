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
 * Solves R exp(sigma R) = clear by Newton's method on g(R) = log(R / clear) + sigma R, which rises and bends down. The start
 * log(1 + sigma clear) / sigma lies at or above the root; the first step from there lands at or below it, and every later one climbs.
 */
function dimmed(clear_mm: number, sigma: number): number {
  let r = log(1 + sigma * clear_mm) / sigma
  for (let i = 0; i < 60; i++) {
    const next = r - (log(r / clear_mm) + sigma * r) / (1 / r + sigma)
    if (!(next > 0)) return r
    if (Math.abs(next - r) <= 1e-13 * r) return next
    r = next
  }
  return r
}

/** `R exp(sigma R)` is at most `clear`: the same test as `R <= reach`, without solving for the reach. */
export function clearAirEquivalent(distance_mm: number, extinction_per_mm: number): number {
  return extinction_per_mm > 0 ? distance_mm * exp(extinction_per_mm * distance_mm) : distance_mm
}
