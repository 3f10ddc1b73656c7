import { type Closing, runOf } from '../motion/leaf-run.ts'
import { TOUCH_MM } from '../space/touch.ts'
import { meet } from './meeting.ts'
import type { Stretch } from './output.ts'
import type { TurningPassage } from './turning-passage.ts'
import { firstMeeting } from './turning-run.ts'
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

/** The way of a body is asked in strips of this, and where one is held exact runs are tried as far apart. */
const STRIP_MM = 10

/**
 * The same past a leaf that turns: no harm where nothing that the body covers anywhere on its way is met down to where the leaf comes to rest. Who stands where an output holds
 * is struck if an exact run says so, at places 10 mm apart; of others, and between, nothing is proved.
 */
export function foundTurningWhileHeld(closing: Closing, passage: TurningPassage, tally: Tally): void {
  const { swing, ratio, solid, from, enter_mm, leave_mm, reached, views, standing } = passage
  if (views.every(({ visible }) => visible.length === 0)) return
  const run = runOf(closing, 0)
  const strips = stripsOf(enter_mm, leave_mm)
  const highest = strips.reduce((most, { from_mm, to_mm }) => Math.max(most, reached(from_mm, to_mm)?.clear ?? -Infinity), -Infinity)
  tally.gapAtLeast = Math.min(tally.gapAtLeast, Math.max(0, run.restWay - highest))
  if (highest < run.restWay) return
  tally.unproved.walked++
  let isStruck = false
  for (const held of standing)
    for (const { from_mm: place_mm } of stripsOf(Math.max(enter_mm, held.from_mm), Math.min(leave_mm, held.to_mm))) {
      const onWay = { solid, from, enter_mm, leave_mm, enters_s: -Infinity, pace: 0, stopsAt_mm: place_mm }
      const meeting = firstMeeting(swing, ratio, run, onWay)
      if (meeting?.kind !== 'struck') continue
      isStruck = true
      const { relativeSpeed, leafSpeed, way, at_s } = meeting
      const stood = { bodySpeed: 0, enters_s: -Infinity, pace: 0, entersAt_mm: place_mm, place_mm, stands: true, seen_s: undefined }
      offer(tally, 'struck', { ...stood, relativeSpeed, leafSpeed, way, at_s, stop_s: 0, run, whileHeld: true })
    }
  if (!isStruck) tally.unproved.struck++
}

function stripsOf(from_mm: number, to_mm: number): readonly Stretch[] {
  const n = Math.max(0, Math.ceil((to_mm - from_mm) / STRIP_MM))
  return Array.from({ length: n }, (_, i) => ({ from_mm: from_mm + i * STRIP_MM, to_mm: Math.min(to_mm, from_mm + (i + 1) * STRIP_MM) }))
}
