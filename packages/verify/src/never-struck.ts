import { type Budget, spend } from './budget.ts'
import { type Cycle, waitAfter } from './cycle.ts'
import { type Json, listAt, numberAt, objectAt, own, refuse, wholeAt } from './json.ts'
import { type Closing, leastLeft, overAt, restsAfter } from './leaf-motion.ts'

export type Stretch = readonly [from: number, to: number]

/** Where a body is seen along its way, rising and apart, by a field that switches after `response` and holds for `hold`. */
export interface View {
  readonly visible: readonly Stretch[]
  readonly response: number
  readonly hold: number
}

/** One body on one straight way past one closing leaf. Places along the way in mm, slowness in s per mm. */
export interface Way extends Timing {
  readonly enter: number
  readonly leave: number
  readonly views: readonly View[]
}
/** One that falls: `visible` is where it is seen upright. */
export interface FallWay extends Timing {
  readonly enter: number
  readonly leave: number
  readonly views: readonly (View & { readonly lying: readonly Stretch[] })[]
}
interface Timing {
  readonly closing: Closing
  readonly clear: number
  readonly cycle: Cycle
  /** The leaf turns: what is shown is one strip of the way. */
  readonly turns?: boolean
}
/** Of a leaf that turns: below what of the ways that it has to go it may meet the body between two places; `null` where it meets it nowhere. */
export type ClearOn = (entry: Json, from: number, to: number, path: string) => number | null

interface Change {
  readonly from: number
  readonly to: number
  readonly view: View
}
interface Window {
  readonly stop: Change | undefined
  readonly offs: readonly Change[]
  readonly enter: number
  readonly leave: number
}
interface Box {
  readonly slow: readonly [number, number]
  readonly ran: readonly [number, number]
}

const SPARE = 1e-6
const SPARE_S = 1e-9
const TOUCH = 1e-6
const DEEPEST = 60

/** Checks the parts of one way (docs/evidence.md, "Passages"), and refuses with the first box that is not shown. */
export function checkParts(way: Way, slow: readonly [number, number], given: unknown, budget: Budget, path: string): void {
  if (!(way.clear > way.closing.from + TOUCH) && !standsSeen(way))
    refuse('not-shown', path, 'a body that is seen wherever it stands in the way of the leaf', 'a place at which it is not')
  checkEach(way, slow, given, budget, path, (from, to, at) => windowsOf(way, from, to, budget, at))
}

/** The same past a leaf that turns, strip by strip of the way: each as if it were all of it (docs/evidence.md, "Leaves that turn"). */
export function checkStrips(
  way: Omit<Way, 'clear'>,
  slow: readonly [number, number],
  given: unknown,
  budget: Budget,
  path: string,
  clearOn: ClearOn,
): void {
  inStretches(way, given, path, (strip, from, to, at) => {
    const clear = clearOn(strip, from, to, at)
    if (clear !== null) checkParts({ ...way, turns: true, enter: from, leave: to, clear }, slow, own(strip, 'parts'), budget, `${at}/parts`)
  })
}

/** Checks the falls of one way (docs/evidence.md, "Falls"), stretch by stretch of the places at which it may fall. */
export function checkFalls(
  way: FallWay,
  slow: readonly [number, number],
  given: unknown,
  budget: Budget,
  path: string,
  clearOn: ClearOn = () => way.clear,
): void {
  const { closing, views } = way
  inStretches(way, given, path, (stretch, from, to, at) => {
    const clear = clearOn(stretch, from, to, at)
    if (clear === null) return
    if (clear > closing.from) refuse('cannot-show', path, 'a lying body that is lower than the leaf opens', clear)
    const view = views[wholeAt(own(stretch, 'field'), `${at}/field`, 0, views.length - 1)]
    const holds = (seen: readonly Stretch[]) => seen.find(([a, b]) => a <= from && to <= b)
    if (view === undefined || holds(view.lying) === undefined)
      return refuse('not-shown', at, 'a field that sees the body wherever it lies', `from ${from} to ${to}`)
    // seen lying from the fall on, at the latest of the stretch; or since it came upright
    const change: Change = { from: holds(view.visible)?.[0] ?? to, to: Infinity, view }
    checkEach({ ...way, clear }, slow, own(stretch, 'parts'), budget, `${at}/parts`, (s0) => fallWindows(views, change, from, s0))
  })
}

/** Stretches of the way that follow one another from where it enters, each up to its `to_mm`, the last one to where it has left. */
function inStretches(
  { enter, leave }: Pick<Way, 'enter' | 'leave'>,
  given: unknown,
  path: string,
  check: (entry: Json, from: number, to: number, at: string) => void,
): void {
  let from = enter
  for (const [i, each] of listAt(given, path, { least: 1, most: 10_000 }).entries()) {
    const at = `${path}/${i}`
    const entry = objectAt(each, at)
    const to = numberAt(own(entry, 'to_mm'), `${at}/to_mm`, from)
    check(entry, from, to, at)
    from = to
  }
  if (!(from >= leave)) refuse('missing-part', path, `stretches up to ${leave}`, from)
}

/** Of falls from a place on, every change before counts as cut off there. */
function fallWindows(views: readonly View[], change: Change, place: number, slowness: number): readonly Window[] {
  const before = views.flatMap((view) =>
    view.visible
      .filter(([start]) => start < place)
      .map(([start, end]) => [start, Math.min(end, place)] as const)
      .filter((cut) => lasts(cut, view, slowness))
      .map((cut) => changeOf(view, cut)),
  )
  const sooner = before.filter((each) => each.from < change.from && onAt(each, slowness) <= onAt(change, slowness))
  const sorted = sooner.sort((a, b) => onAt(a, slowness) - onAt(b, slowness))
  return [...sorted, change].map((stop, k) => ({ stop, offs: sorted.slice(0, k), enter: place, leave: Infinity }))
}

function checkEach(
  way: Timing,
  slow: readonly [number, number],
  given: unknown,
  budget: Budget,
  path: string,
  windowsIn: (from: number, to: number, path: string) => readonly Window[],
): void {
  let from = slow[0]
  const parts = listAt(given, path, { least: 1, most: 10_000 })
  for (const [i, each] of parts.entries()) {
    const at = `${path}/${i}`
    const part = objectAt(each, at)
    const to = numberAt(own(part, 'to'), `${at}/to`, from, slow[1])
    const windows = windowsIn(from, to, at)
    const trees = listAt(own(part, 'trees'), `${at}/trees`, { least: windows.length, most: windows.length })
    for (const [k, window] of windows.entries()) {
      const ends = [enters(window, from), enters(window, to)] as const
      const longest = Math.max(0, overAt(way.closing) - Math.min(...ends))
      const tree = listAt(trees[k], `${at}/trees/${k}`, { least: 1, most: 1_000_000 })
      checkTree(way, window, { slow: [from, to], ran: [0, longest] }, tree, budget, `${at}/trees/${k}`)
    }
    from = to
  }
  if (from !== slow[1]) refuse('missing-part', path, `parts up to ${slow[1]}`, from)
}

function standsSeen({ views, enter, leave }: Way): boolean {
  let to = enter
  for (const [start, end] of views.flatMap(({ visible }) => visible).sort((a, b) => a[0] - b[0])) if (start <= to) to = Math.max(to, end)
  return to >= leave
}

function windowsOf(
  { views, enter, leave, clear, closing }: Way,
  from: number,
  to: number,
  budget: Budget,
  path: string,
): readonly Window[] {
  const inOrder = (changes: readonly Change[]) => [...changes].sort((a, b) => onAt(a, from) - onAt(b, from))
  const going = inOrder(views.flatMap((view) => changesOf(view, from, to)))
  const windows: Window[] = [...going, undefined].map((stop, k) => ({ stop, offs: going.slice(0, k), enter, leave }))
  if (clear > closing.from + TOUCH) return windows
  const lasting = views.flatMap((view) => view.visible.filter((s) => lasts(s, view, from)).map((s) => changeOf(view, s)))
  for (const view of views)
    for (const stretch of view.visible) {
      if (!(stretch[0] < leave && stretch[1] > enter)) continue
      spend(budget, lasting.length, path)
      const own = changeOf(view, stretch)
      const before = inOrder(lasting.filter((each) => each.from <= own.from && !isSame(each, own) && onAt(each, from) <= onAt(own, from)))
      for (const [k, stop] of [...before, own].entries())
        windows.push({ stop, offs: before.slice(0, k), enter: Math.max(enter, own.from), leave: Infinity })
    }
  return windows
}

function isSame(a: Change, b: Change): boolean {
  return a.from === b.from && a.to === b.to && a.view.response === b.view.response && a.view.hold === b.view.hold
}

function changesOf(view: View, from: number, to: number): readonly Change[] {
  const changes: Change[] = []
  for (const stretch of view.visible) {
    const last = changes.at(-1)
    const gap = last === undefined ? Infinity : stretch[0] - last.to
    if (last !== undefined && gap * from <= view.hold && gap * to <= view.hold) changes[changes.length - 1] = { ...last, to: stretch[1] }
    else if (lasts(stretch, view, from)) changes.push(changeOf(view, stretch))
  }
  return changes
}

function lasts([start, end]: readonly [number, number], { response }: View, slowness: number): boolean {
  return (end - start) * slowness >= response
}

function changeOf(view: View, [from, to]: readonly [number, number]): Change {
  return { from, to, view }
}

function onAt({ from, view }: Change, slowness: number): number {
  return from * slowness + view.response
}

/** Times after the stop; where nothing stops the closing, after the body has left. */
function enters({ stop, enter, leave }: Window, slowness: number): number {
  return stop ? (enter - stop.from) * slowness - stop.view.response : (enter - leave) * slowness
}

function leaves({ stop, leave }: Window, slowness: number): number {
  if (stop === undefined) return 0
  return leave === Infinity ? Infinity : (leave - stop.from) * slowness - stop.view.response
}

function checkTree(way: Timing, window: Window, root: Box, tree: readonly unknown[], budget: Budget, path: string): void {
  const waiting: { readonly box: Box; readonly depth: number }[] = [{ box: root, depth: 0 }]
  for (const [at, code] of tree.entries()) {
    const next = waiting.pop()
    if (next === undefined) return refuse('tree-too-long', path, `a tree that ends after ${at} entries`, tree.length)
    spend(budget, 4 + window.offs.length, path)
    const { slow, ran } = next.box
    const kind = wholeAt(code, `${path}/${at}`, -2, 0)
    if (kind === 0) {
      if (!isShown(way, window, next.box))
        refuse(
          'not-shown',
          `${path}/${at}`,
          'a leaf that strikes nobody',
          `slowness ${slow.join(' to ')} s/mm, closing for ${ran.join(' to ')} s`,
        )
      continue
    }
    if (next.depth >= DEEPEST) refuse('too-deep', `${path}/${at}`, `at most ${DEEPEST} splits one within the other`, 'more')
    const [low, high] = kind === -1 ? slow : ran
    const middle = (low + high) / 2
    const half = (from: number, to: number): Box => (kind === -1 ? { slow: [from, to], ran } : { slow, ran: [from, to] })
    waiting.push({ box: half(middle, high), depth: next.depth + 1 }, { box: half(low, middle), depth: next.depth + 1 })
  }
  if (waiting.length > 0) refuse('tree-too-short', path, `a tree with ${waiting.length} more branches`, tree.length)
}

function isShown({ closing, clear, cycle, turns = false }: Timing, window: Window, { slow, ran }: Box): boolean {
  const { stop, offs, leave } = window
  const endOf = (off: Change, slowness: number) => off.to * slowness + off.view.hold
  const isOver = (off: Change) => {
    const lasted = Math.min(...slow.map((slowness) => endOf(off, slowness) - onAt(off, slowness)))
    const wait = waitAfter(cycle, lasted - SPARE_S)
    return slow.every((slowness) => (stop ? onAt(stop, slowness) : leave * slowness) - endOf(off, slowness) - wait < ran[0] - SPARE_S)
  }
  if (offs.some(isOver)) return true
  const entering = slow.map((slowness) => enters(window, slowness))
  const soonest = Math.min(...entering)
  if (ran[0] + soonest > overAt(closing) + SPARE_S) return true
  if (clear > closing.from + SPARE && ran[1] + Math.max(...entering) < -SPARE_S) return true
  if (stop && soonest > restsAfter(closing, ran[0], ran[1]) + SPARE_S) return true
  const last = Math.max(...slow.map((slowness) => leaves(window, slowness)))
  if (turns && ran[1] + last < -SPARE_S) return true
  return leastLeft(closing, stop ? ran[1] : Infinity, ran[1] + last) > clear + SPARE
}
