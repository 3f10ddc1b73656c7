/** What a field's output does at the door, and what a zone needs to be seen by. */
export type SensingFunction = 'presence' | 'opening' | 'call'

/** A rectangle on the floor in which bodies must be seen (or must not be). Doorway frame. */
export interface Zone {
  readonly id: string
  readonly name: string
  readonly purpose: 'presence-at-leaf' | 'opening' | 'call' | 'must-not-see'
  readonly function: SensingFunction
  readonly xMin_mm: number
  readonly xMax_mm: number
  readonly yMin_mm: number
  readonly yMax_mm: number
  readonly bodies: readonly string[] // ids, never empty
  /** Largest diameter of a blind pocket that may stay; 0 unless the door file gives a sourced value. */
  readonly allowedPocket_mm: number
  readonly pitch_mm: number // of the grid of placements
  /** Longest time a body may stay here; undefined if nobody said. */
  readonly longestStay_s: number | undefined
  /** A family of similar boxes to find the smallest size that is seen everywhere. */
  readonly family: SizeFamily | undefined
}

/** Bodies `proportions * size`, size from `step` to `largest`; reflectance as given. */
export interface SizeFamily {
  readonly proportions: readonly [number, number, number]
  readonly reflectance: number
  readonly largest_mm: number
  readonly step_mm: number
  readonly required_mm: number | undefined // the smallest that has to be seen, if the job says so
}
