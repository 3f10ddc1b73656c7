import { closingSpeedAt, type LeafRun, wayAt } from '../motion/leaf-run.ts'
import { TOUCH_MM } from '../space/touch.ts'

/** What becomes of one body in one closing. Times since the closing began. */
export interface Meeting {
  readonly kind: 'clear' | 'struck' | 'walked into'
  /** The least way between edge and body while it is in the leaf's plane and the closing lasts; Infinity where that never is, not above 0 on contact. */
  readonly gap: number
  readonly at_s: number
  /** Of the edge at contact, toward shut. */
  readonly leafSpeed: number
  readonly way: number
}

/**
 * A body that is in the leaf's plane from `from_s` to `to_s` and is met where the edge has less than `clear` still to go. Touching is no contact, and
 * a leaf that is shut already is none. Struck: at the first instant of contact the leaf moves toward shut.
 */
export function meet(run: LeafRun, clear: number, from_s: number, to_s: number): Meeting {
  const met = clear - TOUCH_MM
  // before the closing the leaf rests, at an opening that may be lower than the body
  if (from_s <= 0 && run.closing.from < met)
    return { kind: 'walked into', gap: run.closing.from - clear, at_s: from_s, leafSpeed: 0, way: run.closing.from }
  if (from_s < run.rest_s) {
    const last_s = Math.min(to_s, run.rest_s)
    const lowest = wayAt(run, last_s)
    if (lowest >= met) return { kind: 'clear', gap: lowest - clear, at_s: last_s, leafSpeed: 0, way: lowest }
    const at_s = wayAt(run, from_s) < met ? from_s : crossing(run, met, from_s, last_s)
    const way = wayAt(run, at_s)
    return { kind: 'struck', gap: lowest - clear, at_s, leafSpeed: closingSpeedAt(run, at_s), way }
  }
  if (run.isShut || from_s >= run.end_s) return { kind: 'clear', gap: Infinity, at_s: from_s, leafSpeed: 0, way: Infinity }
  const way = wayAt(run, from_s)
  const kind = way < met ? 'walked into' : 'clear'
  return { kind, gap: way - clear, at_s: from_s, leafSpeed: closingSpeedAt(run, from_s), way }
}

/** The first instant below: the way falls from `above_s` to `below_s`. The bracket ends on its early side, where the leaf is not slower. */
function crossing(run: LeafRun, way: number, above_s: number, below_s: number): number {
  let above = Math.max(0, above_s)
  let below = below_s
  for (let k = 0; k < 50; k++) {
    const middle = (above + below) / 2
    if (wayAt(run, middle) < way) below = middle
    else above = middle
  }
  return above
}
