/**
 * Sine and exponential of our own, so that nothing here rests on a platform or on the program that is checked. Angles are in degrees: taking
 * whole quarter turns off is exact then, so that a quarter turn has sines and cosines of exactly 0 and 1. Within 2 units of the last place.
 */

/** @param angle_deg up to 36,000 either way */
export function sineOf(angle_deg: number): number {
  const quarters = Math.round(angle_deg / 90)
  const rest_rad = ((angle_deg - 90 * quarters) * Math.PI) / 180 // at most an eighth of a turn
  const quadrant = ((quarters % 4) + 4) % 4
  const size = quadrant % 2 === 0 ? series(rest_rad, rest_rad, 2) : series(1, rest_rad, 1)
  return quadrant < 2 ? size : 0 - size
}

export function cosineOf(angle_deg: number): number {
  return sineOf(90 - Math.abs(angle_deg))
}

/** first - first x^2 / (n (n + 1)) + ...: the sine from x and n = 2, the cosine from 1 and n = 1. */
function series(first: number, x: number, n: number): number {
  let sum = 0
  const terms: number[] = []
  for (let term = first, i = n; terms.length < 12; i += 2) {
    terms.push(term)
    term *= -(x * x) / (i * (i + 1))
  }
  for (const term of terms.reverse()) sum += term // from the smallest up
  return sum
}

/** e to the power of x, for x from 0; Infinity where that is too large to hold. */
export function growthOf(x: number): number {
  let halvings = 0
  let part = x
  while (part > 0.5) {
    part /= 2
    halvings++
  }
  let power = 1
  for (let n = 18; n > 0; n--) power = 1 + (power * part) / n
  while (halvings-- > 0) power *= power
  return power
}
