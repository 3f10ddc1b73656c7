import type { Words } from '../words/en.ts'

/** A question about a value outside of what such a thing usually measures (common practice, no source): asked in place, never refused. */
export function hardly(words: Words, [least, most]: readonly [number, number], show: (value: number) => string) {
  return (value: number): string | undefined =>
    value > most ? words.doubts.large(show(value)) : value < least ? words.doubts.small(show(value)) : undefined
}

/** What drives usually do, in the units of the door file (common practice, no source): only the question hangs on it. */
export const USUAL_IN_TIME = {
  closeSpeed_m_per_s: [0.05, 1.5],
  closeAccel_m_per_s2: [0.1, 5],
  closeJerk_m_per_s3: [0.5, 100],
  stopDelay_s: [0.01, 0.5],
  stopDecel_m_per_s2: [0.1, 10],
  reverseDelay_s: [0.02, 3],
  openSpeed_m_per_s: [0.05, 3],
  openAccel_m_per_s2: [0.1, 5],
  movingMass_kg: [3, 5000],
  pace_m_per_s: [0.05, 8],
  response_s: [0.005, 1],
  hold_s: [0, 5],
  openDelay_s: [0.02, 5],
  holdOpen_s: [0.5, 300],
  preWarning_s: [0.2, 10],
  stop_s: [0.03, 5],
  reaction_s: [0.3, 4],
  decel_m_per_s2: [0.5, 6],
  gradient_percent: [-12, 12],
  force_N: [5, 2000],
  forceTime_s: [0.02, 5],
} as const

/** Common practice, no source: only the question hangs on it. */
export const USUAL_MM = {
  openingWidth: [600, 12_000],
  openingHeight: [1800, 8000],
  leafThickness: [4, 120],
  leafBulge: [0, 300],
  mountingHeight: [1000, 8000],
  offset: [20, 1000],
  dangerGap: [2, 1500],
  forceGap: [20, 2500],
} as const
