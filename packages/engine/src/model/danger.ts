import type { Leaf } from './door.ts'

/** Where a moving leaf may crush, shear, draw in or lift somebody, besides its closing edge: docs/method.md, "Danger points". */
export type DangerKind =
  | 'tail' // the far end of a leaf that runs back, and what stands there
  | 'sweep' // a leaf that swings open, and what stands around
  | 'hinge' // the gap at the hinge line
  | 'folding' // between parts of a leaf that folds
  | 'draw-in' // where the moving leaf goes into something: lintel, post, drum, rollers
  | 'lifting' // somebody rides up with the leaf
  | 'secondary-edge' // another edge that closes a gap
  | 'leaf-opening' // reaching through bars or mesh of the leaf

/** What a leaf of each travel can do to people besides striking them with its closing edge. */
export const EXPECTED_DANGERS: Readonly<Record<Leaf['travel'], readonly DangerKind[]>> = {
  down: ['draw-in', 'lifting'],
  'toward-zero': ['tail', 'draw-in', 'secondary-edge'],
  'toward-width': ['tail', 'draw-in', 'secondary-edge'],
  'both-inward': ['tail', 'draw-in', 'secondary-edge'],
  turning: ['sweep', 'hinge', 'secondary-edge'],
}

/** Largest part of a body that can get in; the order is that of the outside value `minimum-gap`. */
export const CAUGHT_PARTS = ['body', 'head', 'leg', 'foot', 'toes', 'arm', 'hand', 'finger'] as const
export type CaughtPart = (typeof CAUGHT_PARTS)[number]

export interface DangerPoint {
  readonly id: string
  readonly name: string
  readonly kind: DangerKind
  /** The obstacle against which it is, for `tail` and `sweep`: then the gap is computed, and `gap_mm` is ignored. */
  readonly obstacle: string | undefined
  /** Smallest gap over the whole travel as somebody measured it. */
  readonly gap_mm: number | undefined
  /** Undefined if nobody said: the whole body then. */
  readonly part: CaughtPart | undefined
  /** Height above the floor where it begins; undefined if nobody said: at the floor then. */
  readonly from_mm: number | undefined
  /** Where it is in the plan; only a presence zone needs it. */
  readonly place: { readonly x_mm: number; readonly y_mm: number } | undefined
  readonly guards: readonly Guard[]
}

export type Guard = CoverGuard | SensingGuard | OtherGuard
/** A fence, plate, mesh or grille before it (or as the leaf's own filling). */
export interface CoverGuard {
  readonly how: 'cover'
  readonly upTo_mm: number // above the floor
  /** 0 where nothing can be reached through. */
  readonly opening_mm: number
  readonly shape: 'slot' | 'square' | 'round'
  /** From the openings to the danger behind. */
  readonly distance_mm: number
}
/** A sensitive edge (its sensor), or presence detection (the zone that has to be covered). */
export interface SensingGuard {
  readonly how: 'edge' | 'presence'
  readonly id: string
  /** Whether its output stops the movement that is dangerous here, opening too; undefined if nobody said. */
  readonly stops: boolean | undefined
}
/** `nothing-to-hold`: no ledge, handle or bar on which to ride up. `load-stop`: the drive stops when it lifts more than it should. */
export interface OtherGuard {
  readonly how: 'nothing-to-hold' | 'load-stop'
}

export interface Dangers {
  readonly points: readonly DangerPoint[]
  /** Kinds that somebody looked for and did not find. */
  readonly none: readonly DangerKind[]
}
