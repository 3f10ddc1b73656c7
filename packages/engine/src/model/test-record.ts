/** A force that was measured at the door: contact force is never computed. docs/method.md, "Forces". */
export interface ForceRecord {
  readonly id: string
  /** Where, in words, as "middle of the bottom edge". */
  readonly place: string
  /** What was left between the leaf and whatever it would meet, when it touched the instrument. */
  readonly gap_mm: number
  readonly peak_N: number
  /** How long the force stayed above what may act for longer. */
  readonly time_s: number
  /** Mean of the force after that time. */
  readonly mean_N: number
  /** What was left of it 5 s after contact; undefined if nobody read it. */
  readonly after5s_N: number | undefined
  readonly instrument: string
  /** Last day of its calibration, as 2026-11-25. */
  readonly calibratedUntil: string | undefined
  /** The day, as 2026-11-25. */
  readonly on: string
  readonly by: string
}
