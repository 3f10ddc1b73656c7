import { type Closing, runOf } from '../motion/leaf-run.ts'
import { TOUCH_MM } from '../space/touch.ts'
import { meet } from './meeting.ts'
import { offer, type Passage, type Tally } from './worst-passage.ts'

/**
 * Closings that begin while an output forbids them and are stopped in the same instant. Where the leaf then never gets as low as the body they do no harm;
 * else whoever stands where an output holds is struck, and of all others nothing is proved.
 */
export function foundWhileHeld(closing: Closing, { enter_mm, leave_mm, clear, views, standing }: Passage, tally: Tally): void {
  if (clear > closing.from + TOUCH_MM || views.every(({ visible }) => visible.length === 0)) return
  const run = runOf(closing, 0)
  const meeting = meet(run, clear, -1, Infinity)
  const { at_s, leafSpeed, way, gap } = meeting
  const held = standing.find(({ from_mm, to_mm }) => to_mm > enter_mm + TOUCH_MM && from_mm < leave_mm - TOUCH_MM)
  const place_mm = held ? (Math.max(enter_mm, held.from_mm) + Math.min(leave_mm, held.to_mm)) / 2 : leave_mm
  const stood = { bodySpeed: 0, enters_s: -Infinity, pace: 0, entersAt_mm: place_mm, place_mm, stands: true }
  const contact = { ...stood, relativeSpeed: leafSpeed, leafSpeed, way, at_s, seen_s: undefined, stop_s: 0, run, whileHeld: true }
  tally.gapAtLeast = Math.min(tally.gapAtLeast, gap)
  if (gap < tally.gap) {
    tally.gap = gap
    tally.nearest = contact
  }
  if (meeting.kind === 'clear') return
  tally.unproved.walked++
  if (held) offer(tally, 'struck', contact)
  else tally.unproved.struck++
}
