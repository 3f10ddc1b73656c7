import type { Course } from './course.ts'
import type { Confirmation, InputPath, Quantity, Source } from './source.ts'

export type Verdict = 'pass' | 'fail' | 'undetermined' | 'not-applicable'

export interface Subject {
  readonly kind: 'door' | 'zone' | 'pocket' | 'sensor' | 'field' | 'lane' | 'danger' | 'record' | 'control'
  /** Id in the door file; a pocket is `<zone>/<letter>`, a field `<sensor>/<field>`. */
  readonly id: string
}

/** One line of the arithmetic: what was computed, from which inputs, outside values and earlier steps, by which module. */
export interface Step {
  readonly name: string
  readonly quantity: Quantity
  readonly from: readonly StepInput[]
  /** Module below `src/`, as `coverage/beam-gaps`. */
  readonly by: string
  /** The formula with its symbols, if there is one to show. */
  readonly formula?: string
}
export type StepInput =
  | { readonly input: InputPath }
  | { readonly value: string } // id of an outside value
  | { readonly step: string } // name of an earlier step

interface FindingBase {
  /** Stable and unique in one judgement: `<rule>:<subject>` and `@<state>` where the door has several states. */
  readonly id: string
  readonly rule: string
  readonly subject: Subject
  /** Edition of the rule set that judged. */
  readonly edition: string
  /** Door state judged; absent where the rule does not depend on it. */
  readonly state?: string
  /** `grid`: placements between the grid points were not computed. */
  readonly provisional?: 'grid'
  readonly steps: readonly Step[]
  /** Outside values, bodies and sensors the verdict rests on, each with its source, and whether a user confirmed it. */
  readonly basis: readonly { readonly id: string; readonly source: Source; readonly confirmed?: Confirmation }[]
  /** One body and one closing, where a lane is judged in time: the fastest contact, or the nearest passage. */
  readonly course?: Course
  /** Words and numbers for the sentence: ids, names, figures. Keys are documented beside each rule. */
  readonly facts: Readonly<Record<string, string | number | boolean>>
}

export type Finding =
  | (FindingBase & {
      readonly verdict: 'pass' | 'fail'
      readonly measured: Quantity
      readonly limit: Quantity
      readonly worstCase?: WorstCase
    })
  | (FindingBase & {
      readonly verdict: 'undetermined'
      readonly reason: UndeterminedReason
      /** What would settle it: places in the door file that lack something. */
      readonly needs: readonly InputPath[]
      readonly measured?: Quantity
      readonly limit?: Quantity
      readonly worstCase?: WorstCase
    })
  | (FindingBase & { readonly verdict: 'not-applicable'; readonly reason: NotApplicableReason })

export type UndeterminedReason =
  | 'missing-input'
  | 'rests-on-assumption' // a default stands in for something nobody entered
  | 'limit-from-memory' // would pass, but a limit or body it rests on was never held against its page
  | 'two-values' // two people wrote one place apart, and nobody has chosen yet
  | 'nothing-free' // no placement is free, so there is nothing to judge
  | 'not-computable' // this kind of device or leaf is not computed; test on site
  | 'yaw-range-sampled' // only some yaws of a range were tried, so no pass follows
  | 'several-parts' // a body of several parts is judged where it passes, not in a zone: no pass follows for it
  | 'within-tolerance' // as written it would pass or fail, but not over all tolerances that the door file states
  | 'not-proved' // no blind placement was found, and a few tiles could not be shown to be seen

export type NotApplicableReason = 'no-subject' | 'not-required-by-concept'

/** A body where it lies: the concrete case that shows a fail. Doorway frame. */
export interface WorstCase {
  readonly body: string
  readonly posture: number
  readonly x_mm: number
  readonly y_mm: number
  readonly z_mm: number // its bottom
  readonly yaw_rad: number
  readonly state: string
}

/** A rule that threw. Stands beside the findings and is not one of them. */
export interface Crash {
  readonly rule: string
  readonly message: string
}

export interface Judgement {
  readonly door: string
  readonly edition: string
  readonly findings: readonly Finding[]
  readonly crashes: readonly Crash[]
  readonly coverages: readonly ZoneCoverage[]
}

/** The grid answer of one zone in one door state. Plain JSON: what drawings and pipelines need of it. */
export interface ZoneCoverage {
  readonly zone: string
  readonly state: string
  readonly grid: {
    readonly x0_mm: number
    readonly y0_mm: number
    readonly pitch_mm: number
    readonly columns: number
    readonly rows: number
  }
  /** All postures of all bodies of the zone in this order; a yaw range gives one entry for each yaw tried. */
  readonly postures: readonly { readonly body: string; readonly posture: number; readonly yaw_rad: number }[]
  readonly yawSampled: boolean
  readonly counts: { readonly seen: number; readonly blind: number; readonly notFree: number }
  /** Maximal runs of cells in row order: [row, first column, last column]. Cells in neither list are seen. */
  readonly blindRuns: readonly CellRun[]
  readonly notFreeRuns: readonly CellRun[]
  /** Largest first; letters A, B, ... Z, AA, ... */
  readonly pockets: readonly Pocket[]
  /** What the exact answer leaves open, as written and over all tolerances that the door file states; absent for must-not-see. */
  readonly exact?: {
    readonly asWritten: OpenRegion
    readonly overTolerances?: OpenRegion
    /** False where the bound on questions was met: what was not asked stayed open, and pockets are measured on the grid. */
    readonly isComplete: boolean
    /** The open region as written, of all postures together: tiles that share a part of an edge belong together, largest first. */
    readonly regions: readonly BlindRegion[]
    /** The same for each posture alone. */
    readonly postures: readonly BlindPosture[]
  }
  /** Sensors and fields that counted, as `<sensor>/<field>`. */
  readonly countedFields: readonly string[]
}
/** Placements not proved to be seen or taken: the blind region and no more than the smallest tiles around it. */
export interface OpenRegion {
  readonly area_mm2: number
  /** The largest distance between two points of one connected part. */
  readonly diameter_mm: number
  /** Tiles that touch, if only at a corner, are one part. */
  readonly parts: number
  readonly leaves: { readonly seen: number; readonly notFree: number; readonly open: number }
}
/** A piece of an open region: polygons whose edges run along the axes, doorway frame. */
export interface BlindOutline {
  readonly area_mm2: number
  /** The outline, counter-clockwise, then its holes, clockwise. */
  readonly rings: readonly (readonly PointMm[])[]
}
export interface BlindRegion extends BlindOutline {
  /** Inside of the region; no circle there is larger by more than 2 mm. */
  readonly circle: BlindCircle
}
export interface BlindCircle {
  readonly x_mm: number
  readonly y_mm: number
  readonly radius_mm: number
}
/** Where one posture at any of its yaws is not proved to be seen. */
export interface BlindPosture {
  readonly body: string
  readonly posture: number
  readonly regions: readonly BlindRegion[]
}
export type PointMm = readonly [x_mm: number, y_mm: number]
export type CellRun = readonly [row: number, first: number, last: number]

/**
 * A connected part of the open region with a blind placement of the grid in it. Without a complete exact answer, an 8-connected group of blind
 * cells: then area, extent and diameter are those of the cells, and there is no `exact`.
 */
export interface Pocket {
  readonly letter: string
  /** Blind cells of the grid in it. */
  readonly cells: number
  readonly area_mm2: number
  readonly extent: Extent
  /** Largest distance between two of its points: compared with the zone's allowed pocket. */
  readonly diameter_mm: number
  readonly exact?: {
    /** Indices of the exact answer's `regions`: several where these touch at corners only. */
    readonly regions: readonly number[]
    /** The largest of theirs. */
    readonly circle: BlindCircle
  }
  readonly runs: readonly CellRun[]
  /** Index into `postures`. */
  readonly worstPosture: number
  readonly worstCase: WorstCase
  /** By falling number of cells; `cells` of the pocket that lifting this alone would make seen. */
  readonly causes: readonly Cause[]
}
export interface Extent {
  readonly xMin_mm: number
  readonly xMax_mm: number
  readonly yMin_mm: number
  readonly yMax_mm: number
}
export interface Cause {
  readonly kind:
    | 'beyond-reach'
    | 'too-dark'
    | 'fog'
    | 'too-close-to-background'
    | 'outside-sides'
    | 'below-clearance'
    | 'above-top'
    | 'too-few-neighbours'
    | 'hidden-behind'
    | 'between-beams'
    | 'no-plane-here'
    | 'several-together'
  /** The obstacle, for `hidden-behind`. */
  readonly obstacle?: string
  readonly cells: number
}
