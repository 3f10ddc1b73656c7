import type { Closing } from '../motion/leaf-run.ts'
import type { FallView } from './falls.ts'
import type { Stretch, View } from './output.ts'
import { NO_QUIET, type Quiet, quietAfter_s } from './start-of-closing.ts'
import { leastWay, overAt_s, restsAfter_s } from './stop-bounds.ts'

/**
 * Proof trees that a body is never struck: docs/evidence.md, "Passages", says what each claims and by which formulas it is checked. Places along the
 * way in mm, slowness in s per mm, times in s.
 */
export interface Way extends Timing {
  readonly enter_mm: number
  readonly leave_mm: number
  /** Of fields that hold a body that stands; in the order of the evidence. */
  readonly views: readonly View[]
}
interface Timing {
  readonly closing: Closing
  readonly clear: number
  /** What the control promises of the time before a closing; nothing if undefined. */
  readonly quiet?: Quiet | undefined
  /** The leaf turns: what is shown is one strip of the way. */
  readonly turns?: boolean
}

/** Slownesses up to `to` (from the end of the part before), and a tree for each window of starting instants. */
export interface ProvedPart {
  readonly to: number
  readonly trees: readonly WindowTree[]
}

/** In preorder: SLOWER is followed by the halves of smaller and larger slowness, LATER by those of shorter and longer closings, SHOWN is a leaf. */
export type WindowTree = readonly number[]
export const SHOWN = 0
export const SLOWER = -1
export const LATER = -2

/** What every inequality holds by here; the page asks for half of it. */
const SPARE_MM = 2e-6
const SPARE_S = 2e-9
const MOST_LEAVES = 20_000
/** Of all trees of one way. */
export interface LeafBudget {
  left: number
}
/** Halves of halves: what is not shown by then is not so, or so by less than anybody measures. */
const DEEPEST = 50

/** Undefined where it is not so, or where a proof of this form was not found. */
export function neverStruck(
  way: Way,
  slownesses: readonly [from: number, to: number],
  budget: LeafBudget = { left: MOST_LEAVES },
): readonly ProvedPart[] | undefined {
  if (!standsSeen(way)) return undefined
  return partsFrom(way, cutsOf(way.views, slownesses[0], slownesses[1]), slownesses[0], budget, (from, to) => windowsOf(way, from, to))
}

function partsFrom(
  way: Timing,
  cuts: readonly number[],
  first: number,
  budget: LeafBudget,
  windows: (from: number, to: number) => readonly Window[],
): readonly ProvedPart[] | undefined {
  const parts: ProvedPart[] = []
  for (const [i, to] of cuts.entries()) {
    const from = i === 0 ? first : (cuts[i - 1] as number)
    const trees = windows(from, to).map((window) => {
      const tree: number[] = []
      return grow(way, window, { slow0: from, slow1: to, ran0: 0, ran1: longest(way, window, from, to) }, tree, budget, 0)
        ? tree
        : undefined
    })
    if (!trees.every((tree) => tree !== undefined)) return undefined
    parts.push({ to, trees })
  }
  return parts
}

/** Somebody who comes upright, falls at a place that brings the lying body into the leaf's plane, and stays. Places along the way, mm. */
export interface FallWay extends Timing {
  readonly enter_mm: number
  readonly leave_mm: number
  readonly views: readonly FallView[]
}

/** Falls at places up to `to_mm` (from the end of the stretch before) that one of the fields keeps seeing, or sees lying. */
export interface ProvedFall {
  readonly to_mm: number
  readonly field: number
  readonly parts: readonly ProvedPart[]
}

/** Falls that a field sees only as the body lies are shown in stretches of at most this. */
const FALLS_MM = 50

/** The same for falls. Nothing is shown of a body that is higher, lying, than the leaf opens. */
export function neverStruckLying(way: FallWay, slownesses: readonly [from: number, to: number]): readonly ProvedFall[] | undefined {
  const { enter_mm, leave_mm, clear, closing } = way
  if (clear > closing.from + SPARE_MM) return undefined
  const budget = { left: MOST_LEAVES }
  const proved: ProvedFall[] = []
  for (let at_mm = enter_mm; at_mm < leave_mm; ) {
    const next = stretchesFrom(way, at_mm).find(({ field, to_mm, own }) => {
      const parts = fallsProved(way, own, at_mm, slownesses, budget)
      if (parts) proved.push({ to_mm, field, parts })
      return parts !== undefined
    })
    if (next === undefined) return undefined
    at_mm = next.to_mm
  }
  return proved
}

/** Of falls from one place on, which `own` stops at the latest. */
export function fallsProved(
  way: FallWay,
  own: Change,
  at_mm: number,
  [fastest, slowest]: readonly [from: number, to: number],
  budget: LeafBudget,
): readonly ProvedPart[] | undefined {
  const visible = way.views.map(({ upright, ...times }) => ({ ...times, visible: uprightUntil(upright, at_mm) }))
  return partsFrom(way, cutsOf(visible, fastest, slowest), fastest, budget, (from) => windowsOfFall(way.views, own, at_mm, from))
}

/** What may show the falls from a place on: a field that sees whoever is upright there, and lying; or one that sees the lying body alone. */
function stretchesFrom({ leave_mm, views }: FallWay, at_mm: number) {
  const holding = (stretches: readonly Stretch[]) => stretches.find(({ from_mm, to_mm }) => from_mm <= at_mm && at_mm < to_mm)
  return views
    .flatMap(({ upright, lying, response_s, hold_s }, field) => {
      const [stands, lies] = [holding(upright), holding(lying)]
      if (!lies) return []
      const own = { response_s, to_mm: Infinity, hold_s }
      const to_mm = Math.min(lies.to_mm, leave_mm)
      const later_mm = Math.min(to_mm, at_mm + FALLS_MM)
      return [
        ...(stands ? [{ field, to_mm: Math.min(to_mm, stands.to_mm), own: { ...own, from_mm: stands.from_mm } }] : []),
        { field, to_mm: later_mm, own: { ...own, from_mm: later_mm } },
      ]
    })
    .sort((a, b) => b.to_mm - a.to_mm)
}

function uprightUntil(upright: readonly Stretch[], fall_mm: number): readonly Stretch[] {
  return upright.flatMap(({ from_mm, to_mm }) => (from_mm < fall_mm ? [{ from_mm, to_mm: Math.min(to_mm, fall_mm) }] : []))
}

/** Windows of falls from a place on, which `own` stops at the latest and for ever: docs/evidence.md, "Falls". */
function windowsOfFall(views: readonly FallView[], own: Change, enter_mm: number, from: number): readonly Window[] {
  const before = views
    .flatMap(({ upright, response_s, hold_s }) =>
      uprightUntil(upright, enter_mm)
        .filter((stretch) => lasts({ response_s }, stretch, from))
        .map((stretch) => changeOf({ response_s, hold_s }, stretch)),
    )
    .filter((each) => each.from_mm < own.from_mm && onAt(each, from) <= onAt(own, from))
    .sort((a, b) => onAt(a, from) - onAt(b, from))
  return [...before, own].map((stop, k) => ({ stop, offs: before.slice(0, k), enter_mm, leave_mm: Infinity }))
}

/** Whoever stands anywhere in the leaf's plane is seen, or has no room there at all. */
function standsSeen({ views, enter_mm, leave_mm, clear, closing }: Way): boolean {
  if (clear > closing.from + SPARE_MM) return true
  let seenTo = enter_mm
  for (const { from_mm, to_mm } of views.flatMap(({ visible }) => visible).sort((a, b) => a.from_mm - b.from_mm))
    if (from_mm <= seenTo) seenTo = Math.max(seenTo, to_mm)
  return seenTo >= leave_mm
}

/** Where a stretch begins to last for the response, or the hold to bridge a gap: a trace to both sides of it, so that each part knows. */
function cutsOf(views: readonly View[], from: number, to: number): readonly number[] {
  const cuts = [to]
  const keep = (time_s: number, way_mm: number) => {
    for (const cut of [(time_s / way_mm) * (1 - 1e-9), (time_s / way_mm) * (1 + 1e-9)]) if (cut > from && cut < to) cuts.push(cut)
  }
  for (const { visible, response_s, hold_s } of views)
    for (const [i, { from_mm, to_mm }] of visible.entries()) {
      keep(response_s, to_mm - from_mm)
      const next = visible[i + 1]
      if (next) keep(hold_s, next.from_mm - to_mm)
    }
  return [...new Set(cuts)].sort((a, b) => a - b)
}

/** The output changes at `place` after `response`, if it does at all, and forbids closing until `to` after `hold`. */
interface Change {
  readonly from_mm: number
  readonly response_s: number
  readonly to_mm: number
  readonly hold_s: number
}
/** Closings that begin after the `offs` and are told to stop at the change, for a body that is in the leaf's plane between two places (or stands). */
export interface Window {
  /** Undefined where nothing stops them: then times count from the instant the body has left. */
  readonly stop: Change | undefined
  readonly offs: readonly Change[]
  readonly enter_mm: number
  readonly leave_mm: number
}

/** Every window of a part, in the order of docs/evidence.md: those of a body that goes on, then those of one that stands, stretch by stretch. */
export function windowsOf({ views, enter_mm, leave_mm, clear, closing }: Way, from: number, to: number): readonly Window[] {
  const order = (changes: readonly Change[]) => [...changes].sort((a, b) => onAt(a, from) - onAt(b, from))
  const going = order(views.flatMap((view) => changesOf(view, from, to)))
  const windows: Window[] = going.map((stop, k) => ({ stop, offs: going.slice(0, k), enter_mm, leave_mm }))
  windows.push({ stop: undefined, offs: going, enter_mm, leave_mm })
  if (clear > closing.from + SPARE_MM) return windows
  const lasting = views.flatMap((view) => view.visible.filter((s) => lasts(view, s, from)).map((stretch) => changeOf(view, stretch)))
  for (const view of views)
    for (const stretch of view.visible) {
      if (!(stretch.from_mm < leave_mm && stretch.to_mm > enter_mm)) continue
      const own = changeOf(view, stretch)
      const before = order(
        lasting.filter((each) => each.from_mm <= own.from_mm && !isSame(each, own) && onAt(each, from) <= onAt(own, from)),
      )
      const place = Math.max(enter_mm, own.from_mm)
      for (const [k, stop] of [...before, own].entries())
        windows.push({ stop, offs: before.slice(0, k), enter_mm: place, leave_mm: Infinity })
    }
  return windows
}

function isSame(a: Change, b: Change): boolean {
  return a.from_mm === b.from_mm && a.to_mm === b.to_mm && a.response_s === b.response_s && a.hold_s === b.hold_s
}

function changesOf(view: View, from: number, to: number): readonly Change[] {
  const changes: Change[] = []
  for (const stretch of view.visible) {
    const last = changes[changes.length - 1]
    const gap_mm = last ? stretch.from_mm - last.to_mm : Infinity
    if (last && gap_mm * from <= view.hold_s && gap_mm * to <= view.hold_s) changes[changes.length - 1] = { ...last, to_mm: stretch.to_mm }
    else if (lasts(view, stretch, from)) changes.push(changeOf(view, stretch))
  }
  return changes
}

function lasts({ response_s }: Pick<View, 'response_s'>, { from_mm, to_mm }: Stretch, slowness: number): boolean {
  return (to_mm - from_mm) * slowness >= response_s
}

function changeOf({ response_s, hold_s }: Pick<View, 'response_s' | 'hold_s'>, { from_mm, to_mm }: Stretch): Change {
  return { from_mm, response_s, to_mm, hold_s }
}

function onAt({ from_mm, response_s }: Change, slowness: number): number {
  return from_mm * slowness + response_s
}

/** When the body enters the plane, after the stop; without a stop, after it has left. */
function enters({ stop, enter_mm, leave_mm }: Window, slowness: number): number {
  return stop ? (enter_mm - stop.from_mm) * slowness - stop.response_s : (enter_mm - leave_mm) * slowness
}
function leaves({ stop, leave_mm }: Window, slowness: number): number {
  if (!stop) return 0
  return leave_mm === Infinity ? Infinity : (leave_mm - stop.from_mm) * slowness - stop.response_s
}
/** How long before the stop the output let closings begin again, for one of those before; less what the control waits after it. */
function room({ stop, leave_mm }: Window, off: Change, slowness: number, quiet_s: number): number {
  const end_s = stop ? onAt(stop, slowness) : leave_mm * slowness
  return end_s - (off.to_mm * slowness + off.hold_s) - quiet_s
}

/** A change lasts the less of what it does at both ends of a box. */
function quietFor(quiet: Quiet, off: Change, { slow0, slow1 }: Box): number {
  const lasts_s = (slowness: number) => off.to_mm * slowness + off.hold_s - onAt(off, slowness)
  return quietAfter_s(quiet, Math.min(lasts_s(slow0), lasts_s(slow1)) - SPARE_S)
}

/** A closing that ran for longer is shut before the body comes. */
function longest({ closing }: Timing, window: Window, from: number, to: number): number {
  return Math.max(0, overAt_s(closing) - Math.min(enters(window, from), enters(window, to)))
}

interface Box {
  readonly slow0: number
  readonly slow1: number
  readonly ran0: number // how long a closing has run when it is told to stop
  readonly ran1: number
}

function grow(way: Timing, window: Window, box: Box, tree: number[], budget: LeafBudget, depth: number): boolean {
  if (isShown(way, window, box)) {
    tree.push(SHOWN)
    return true
  }
  if (--budget.left < 0 || depth >= DEEPEST) return false
  const { slow0, slow1, ran0, ran1 } = box
  const spread_s = Math.max(Math.abs(enters(window, slow1) - enters(window, slow0)), spreadOf(window, box))
  if (spread_s > ran1 - ran0) {
    tree.push(SLOWER)
    const middle = (slow0 + slow1) / 2
    return (
      grow(way, window, { ...box, slow1: middle }, tree, budget, depth + 1) &&
      grow(way, window, { ...box, slow0: middle }, tree, budget, depth + 1)
    )
  }
  tree.push(LATER)
  const middle = (ran0 + ran1) / 2
  return (
    grow(way, window, { ...box, ran1: middle }, tree, budget, depth + 1) &&
    grow(way, window, { ...box, ran0: middle }, tree, budget, depth + 1)
  )
}

function spreadOf(window: Window, { slow0, slow1 }: Box): number {
  return window.leave_mm === Infinity ? 0 : Math.abs(leaves(window, slow1) - leaves(window, slow0))
}

/** The reasons of docs/evidence.md. */
function isShown({ closing, clear, quiet = NO_QUIET, turns = false }: Timing, window: Window, box: Box): boolean {
  const { slow0, slow1, ran0, ran1 } = box
  const isShort = (off: Change) => {
    const quiet_s = quietFor(quiet, off, box)
    return room(window, off, slow0, quiet_s) < ran0 - SPARE_S && room(window, off, slow1, quiet_s) < ran0 - SPARE_S
  }
  if (window.offs.some(isShort)) return true
  const enters_s = Math.min(enters(window, slow0), enters(window, slow1))
  if (ran0 + enters_s > overAt_s(closing) + SPARE_S) return true
  if (clear > closing.from + SPARE_MM && ran1 + Math.max(enters(window, slow0), enters(window, slow1)) < -SPARE_S) return true
  if (window.stop && enters_s > restsAfter_s(closing, ran0, ran1) + SPARE_S) return true
  const leaves_s = Math.max(leaves(window, slow0), leaves(window, slow1))
  if (turns && ran1 + leaves_s < -SPARE_S) return true
  return leastWay(closing, window.stop ? ran1 : Infinity, ran1 + leaves_s) > clear + SPARE_MM
}
