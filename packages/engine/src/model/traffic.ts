import type { Source } from './source.ts'

/** Motion of the leaf: docs/method.md, "Time". What nobody said is undefined; speeds and accelerations are those of the closing edge. */
export interface Drive {
  readonly closeSpeed_mm_per_s: number | undefined
  readonly closeAccel_mm_per_s2: number | undefined
  /** Undefined where the acceleration sets in at once. */
  readonly closeJerk_mm_per_s3: number | undefined
  /** From the input of the control to the beginning of braking. */
  readonly stopDelay_s: number | undefined
  readonly stopDecel_mm_per_s2: number | undefined
  /** Measured instead of delay and braking; empty if nobody did. */
  readonly stoppingCurve: readonly { readonly at_s: number; readonly way_mm: number }[]
  readonly afterStop: 'reverse' | 'stay' | undefined
  readonly reverseDelay_s: number | undefined
  readonly openSpeed_mm_per_s: number | undefined
  readonly openAccel_mm_per_s2: number | undefined
  /** From the input of the control until a shut leaf begins to open, warning before it included; undefined if nobody said. */
  readonly openDelay_s?: number | undefined
  /** Measured between the stop command at full speed and rest: then these bound the time, not delay and braking; undefined if nobody did. */
  readonly stopTimes?: StopTimes | undefined
  /** Clear ways from which a closing may begin, beside the full one. */
  readonly partialOpenings_mm: readonly number[]
  /** Of all that moves with the edge. */
  readonly movingMass_kg: number | undefined
}

/** Where people and vehicles pass: a stretch of x, along y. */
export interface Lane {
  readonly id: string
  readonly name: string
  readonly who: 'people' | 'vehicles' | 'both'
  readonly xMin_mm: number
  readonly xMax_mm: number
  /** Sides from which it is entered, never empty. */
  readonly from: readonly ('a' | 'b')[]
  readonly slowest_mm_per_s: number | undefined
  readonly fastest_mm_per_s: number | undefined
  readonly bodies: readonly string[] // ids, never empty
  /** Whoever passes may fall anywhere, into each posture of its own that lies. */
  readonly falls?: boolean
  /** Least distance at which one body follows another; undefined where each passes alone. */
  readonly followGap_mm?: number | undefined
  /** Longest time a body may stand in the doorway; undefined if nobody said. */
  readonly longestStay_s: number | undefined
  /** How a vehicle stops before a leaf that stays shut; undefined if nobody said. */
  readonly braking?: Braking | undefined
}

/** What a stopping distance follows from. */
export interface Braking {
  readonly reaction_s: number
  readonly decel_mm_per_s2: number
  /** Fall of the way toward the leaf, as height per length; negative where it rises. */
  readonly fall: number
  readonly source: Source
}

/** Several readings of one time, and what is asked of their bound: with this confidence, this share of all stops takes no longer. */
export interface StopTimes {
  readonly readings_s: readonly number[]
  readonly share: number // 0.5 < share < 1
  readonly confidence: number // 0 < confidence < 1
}
