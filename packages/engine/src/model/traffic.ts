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
  /** `none`: after the delay it coasts, and `coastDecel_mm_per_s2` stands in for `stopDecel_mm_per_s2`. Undefined: as if it had one. */
  readonly brake?: 'brakes' | 'none' | undefined
  /** How fast friction slows it; undefined if nobody measured. */
  readonly coastDecel_mm_per_s2?: number | undefined
  /** Measured instead of delay and braking; empty if nobody did. */
  readonly stoppingCurve: readonly { readonly at_s: number; readonly way_mm: number }[]
  readonly afterStop: 'reverse' | 'stay' | undefined
  readonly reverseDelay_s: number | undefined
  readonly openSpeed_mm_per_s: number | undefined
  readonly openAccel_mm_per_s2: number | undefined
  /** From the input of the control until a shut leaf begins to open, warning before it included; undefined if nobody said. */
  readonly openDelay_s?: number | undefined
  /** How long the leaf stays open before it closes; undefined if nobody said. */
  readonly holdOpen_s?: number | undefined
  /** Measured between the stop command at full speed and rest: then these bound the time, not delay and braking; undefined if nobody did. */
  readonly stopTimes?: StopTimes | undefined
  /** Clear ways from which a closing may begin, beside the full one. */
  readonly partialOpenings_mm: readonly number[]
  /** Of all that moves with the edge. */
  readonly movingMass_kg: number | undefined
  readonly cycle?: ControlCycle | undefined
}

/** What the control does around a closing: docs/method.md, "Around a closing". What nobody said is undefined, and then nothing is concluded from it. */
export interface ControlCycle {
  /** The hold-open time runs from the end of opening, or anew from each time that the last presence output lets go. */
  readonly holdOpenFrom: 'opened' | 'clear' | undefined
  /** No closing is commanded but by the end of the hold-open time, or of the pause between attempts. */
  readonly closesOnlyByTimer: boolean | undefined
  /** Light or sound between the command and the beginning of every closing. */
  readonly preWarning_s: number | undefined
  /** A presence output during the warning: the closing is off, or it is looked at when the warning ends. */
  readonly outputInWarning: 'cancels' | 'waits' | undefined
  /** How often the leaf closes again after a reversal. */
  readonly attempts: number | undefined
  /** In place of the hold-open time before each attempt; the hold-open time itself if undefined. */
  readonly attemptPause_s: number | undefined
  /** An attempt whose time has come while an output forbids closing. */
  readonly attemptWhileHeld: 'waits' | 'starts' | undefined
  /** After the last reversal it opens fully, or to the lowest partial opening. */
  readonly afterAttempts: 'stays-open' | 'partial' | undefined
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

/** A way past the door, along x, of people who do not want through: a stretch of y that their middles keep to. */
export interface Crossing {
  readonly id: string
  readonly name: string
  readonly yMin_mm: number
  readonly yMax_mm: number
  readonly slowest_mm_per_s: number | undefined
  readonly fastest_mm_per_s: number | undefined
  readonly bodies: readonly string[] // ids, never empty
  /** Passers-by in a day, both directions together; undefined if nobody counted. */
  readonly perDay: number | undefined
  /** Needless openings in a day that are bearable; undefined if nobody said. */
  readonly mostPerDay: number | undefined
}

/** The air on both sides, and how much of it may be lost in a day; undefined if nobody said. */
export interface Air {
  readonly sideA_degC: number
  readonly sideB_degC: number
  readonly mostPerDay_m3: number | undefined
}

/** What a stopping distance follows from. */
export interface Braking {
  readonly reaction_s: number
  readonly decel_mm_per_s2: number
  /** Fall of the way toward the leaf, as height per length; negative where it rises. */
  readonly fall: number
  readonly source: Source
}

/** Readings of one time, and what is asked of their bound: with this confidence, this share of all stops takes no longer. Undefined where nobody said. */
export interface StopTimes {
  readonly readings_s: readonly number[] // never empty
  readonly share: number | undefined // 0.5 < share < 1
  readonly confidence: number | undefined // 0 < confidence < 1
}
