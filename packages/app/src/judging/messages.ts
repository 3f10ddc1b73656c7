import type { DoorFile, FileEdit, Issue, Note, Offer } from '@sillsight/document'
import type { Depth, Diagnosis, Door, Judgement, Meter, Observation, Proposal, Repairs } from '@sillsight/engine'

/** What goes to the judging worker. Each message carries the revision of the door that it speaks of. */
export type ToWorker = {
  readonly kind: 'judge'
  readonly revision: number
  readonly file: DoorFile
  /** Places in the file that hold two values nobody has chosen between. */
  readonly disputed: readonly string[]
  /** `grid`: at once, provisional. `exact`: every placement, over all tolerances. */
  readonly depth: Depth
}

/** What a search is about: repairs of one finding, connections of the parts of its wiring, or the fault behind what was measured on site. */
export type ToSearching = Pick<ToWorker, 'file' | 'disputed'> &
  (
    | { readonly kind: 'mend'; readonly finding: string }
    | { readonly kind: 'connect' }
    | { readonly kind: 'trace'; readonly observations: readonly Observation[]; readonly meter: Meter }
  )

/** How far a search is, and what it found. */
export type FromSearching =
  | { readonly kind: 'trying'; readonly doors: number }
  | { readonly kind: 'mended'; readonly door: Door; readonly offers: readonly Offer[]; readonly repairs: Repairs }
  | { readonly kind: 'connecting'; readonly tried: number; readonly judged: number }
  | ({ readonly kind: 'connected' } & Connected)
  | { readonly kind: 'traced'; readonly diagnosis: Diagnosis; readonly readings: number }
  | { readonly kind: 'crashed'; readonly message: string }

/** Connections that were found, best first. */
export interface Connected {
  readonly found: readonly {
    readonly proposal: Proposal
    /** How it is written into the door file; undefined where that cannot hold it. */
    readonly edits: readonly FileEdit[] | undefined
    /** Than the wiring that there is. */
    readonly isBetter: boolean
  }[]
  /** The wiring that there is; undefined where it does not work even with nothing wrong. */
  readonly given: Pick<Proposal, 'score' | 'hidden'> | undefined
  readonly tried: number
  readonly judged: number
  readonly left: number
}

/** What comes back. `refused`: the file misbehaves; `crashed`: the program does. */
export type FromWorker =
  | { readonly kind: 'judged'; readonly revision: number; readonly depth: Depth; readonly answer: Judged }
  | { readonly kind: 'refused'; readonly revision: number; readonly issues: readonly Issue[] }
  | { readonly kind: 'crashed'; readonly revision: number; readonly message: string }
  | { readonly kind: 'progress'; readonly revision: number; readonly done: number; readonly of: number }

export interface Judged {
  readonly door: Door
  readonly judgement: Judgement
  readonly notes: readonly Note[]
}
