/**
 * The separation distance S = K T + C + Z: how far from the danger a body has to be found, so that the danger is at rest when it arrives. ISO 13855,
 * edition 2010 clause 5 (S = K T + C), edition 2024 clause 5 (S = K T + D_DS + Z).
 */
export interface Separation {
  /** K. */
  readonly speed_mm_per_s: number
  /** C, or D_DS. */
  readonly addend_mm: number
  /** Z; 0 in the edition of 2010, which has none. */
  readonly supplement_mm: number
  /** S is never less. */
  readonly least_mm: number
  /** For an arm: where the first speed asks for more than `least_mm` of this, this counts. */
  readonly beyond?: Separation
}

/** S at the time T from the body being found until the danger rests. */
export function separation_mm(rule: Separation, stop_s: number): number {
  return separationAt(rule, stop_s).distance_mm
}

/** S, and the speed and addend that made it. */
export function separationAt(rule: Separation, stop_s: number): { readonly distance_mm: number; readonly by: Separation } {
  const { speed_mm_per_s, addend_mm, supplement_mm, least_mm, beyond } = rule
  const distance_mm = Math.max(least_mm, speed_mm_per_s * stop_s + addend_mm + supplement_mm)
  return beyond && distance_mm > beyond.least_mm ? separationAt(beyond, stop_s) : { distance_mm, by: rule }
}

/** The longest T for which S is no more than what is there; negative where no time is short enough. The inverse of `separation_mm`, in closed form. */
export function longestStop_s(rule: Separation, there_mm: number): number {
  if (rule.beyond && there_mm >= rule.beyond.least_mm) return longestStop_s(rule.beyond, there_mm)
  const { speed_mm_per_s, addend_mm, supplement_mm, least_mm } = rule
  return there_mm < least_mm ? -Infinity : (there_mm - addend_mm - supplement_mm) / speed_mm_per_s
}

/**
 * The largest closing speed from which a leaf rests within a time: delay, then braking from that speed. Undefined where the delay alone is longer.
 */
export function speedThatStops_mm_per_s(within_s: number, delay_s: number, decel_mm_per_s2: number): number | undefined {
  const left_s = within_s - delay_s
  return left_s > 0 ? left_s * decel_mm_per_s2 : undefined
}
