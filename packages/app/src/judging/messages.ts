import type { DoorFile, Issue, Note, Offer } from '@sillsight/document'
import type { Depth, Door, Judgement, Repairs } from '@sillsight/engine'

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

/** Asks for repairs of one finding; answered by `trying` and at last `mended`. */
export type ToMending = Pick<ToWorker, 'file' | 'disputed'> & { readonly kind: 'mend'; readonly finding: string }

export type FromMending =
  | { readonly kind: 'trying'; readonly doors: number }
  | { readonly kind: 'mended'; readonly door: Door; readonly offers: readonly Offer[]; readonly repairs: Repairs }
  | { readonly kind: 'crashed'; readonly message: string }

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
