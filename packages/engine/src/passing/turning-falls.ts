import { type Closing, runOf } from '../motion/leaf-run.ts'
import { slabsAt } from '../motion/turning-leaf.ts'
import { type FallView, lyingAt, pieces, viewsOfFall } from './falls.ts'
import { type Stretch, turningPoints } from './output.ts'
import { boundsOf } from './phase-bounds.ts'
import { apart_mm, isMet, type Reached, reachedWays } from './turning-contact.ts'
import type { TurningPassage } from './turning-passage.ts'
import { firstMeeting, type TurningMeeting } from './turning-run.ts'
import {
  type Contact,
  FINEST,
  firstBoxes,
  halves,
  MOST_TURNS,
  newTally,
  offer,
  type Passage,
  problemsOf,
  type Tally,
  worstOfPassage,
} from './worst-passage.ts'

const FIRST_STRIP_MM = 100
/** What is not settled on places to fall so close together is not settled at all. */
const LAST_STRIP_MM = 1
/** Boxes for one strip; on the last strips more. */
const MOST_BOXES = 200
const MOST_BOXES_LAST = 1500
/** Strips, halved ones among them, for one passage and closing. */
const MOST_STRIPS = 600

/** A lying body past one leaf that turns, in one closing. */
interface Asked {
  readonly closing: Closing
  readonly passage: TurningPassage
  readonly views: readonly FallView[]
  readonly speeds: readonly [slowest: number, fastest: number]
}

/**
 * Somebody who comes upright and falls anywhere within the sweep, as `worstOfFalls` for a leaf that turns (docs/method.md, "Time"). The places to fall are cut into strips; on each the leaf
 * meets the lying body at ways between two bounds, so that a fall at its beginning is the worst of it. Contacts are found by exact runs alone; a strip with neither is halved.
 *
 * @param passage of the lying body
 */
export function worstOfTurningFalls(
  closing: Closing,
  passage: TurningPassage,
  views: readonly FallView[],
  speeds: readonly [slowest: number, fastest: number],
  tally: Tally,
): void {
  const asked: Asked = { closing, passage, views, speeds }
  const { enter_mm, leave_mm } = passage
  const queue = pieces({ enter_mm, leave_mm, views })
    .flatMap((piece) => cutAt(piece, overlapEnds(asked, piece)))
    .flatMap(inStrips)
  for (let i = 0; i < queue.length; i++) {
    const strip = queue[i] as Stretch
    const length_mm = strip.to_mm - strip.from_mm
    const reached = reachedWays(passage.swing, passage.ratio, closing.from, passage.swept(strip.from_mm, strip.to_mm))
    if (reached === undefined || liesOnRestingLeaf(asked, strip)) continue
    const isLast = length_mm <= LAST_STRIP_MM || i > MOST_STRIPS
    if (isClear(asked, strip, reached, isLast ? MOST_BOXES_LAST : MOST_BOXES)) continue
    for (const place_mm of [strip.from_mm, (strip.from_mm + strip.to_mm) / 2]) lookAt(asked, place_mm, tally)
    if (tally.struck !== undefined) tally.struckAtMost = Math.max(tally.struckAtMost, passage.ratio * closing.profile.peak)
    else if (isLast) tally.unproved.struck++
    else {
      const middle_mm = (strip.from_mm + strip.to_mm) / 2
      queue.push({ from_mm: strip.from_mm, to_mm: middle_mm }, { from_mm: middle_mm, to_mm: strip.to_mm })
    }
  }
}

function inStrips({ from_mm, to_mm }: Stretch): readonly Stretch[] {
  const n = Math.max(1, Math.ceil((to_mm - from_mm) / FIRST_STRIP_MM))
  const at = (i: number) => from_mm + ((to_mm - from_mm) * i) / n
  return Array.from({ length: n }, (_, i) => ({ from_mm: at(i), to_mm: i === n - 1 ? to_mm : at(i + 1) }))
}

function cutAt({ from_mm, to_mm }: Stretch, cuts_mm: readonly number[]): readonly Stretch[] {
  const ends = [from_mm, ...cuts_mm.filter((cut) => cut > from_mm && cut < to_mm).sort((a, b) => a - b), to_mm]
  return ends.slice(1).map((end, i) => ({ from_mm: ends[i] as number, to_mm: end }))
}

/** Whether the lying body overlaps each panel of the leaf where it rests before the closing, at a place of its way. */
function overlaps({ closing, passage: { swing, solid, from } }: Asked, place_mm: number): readonly boolean[] {
  const y_mm = from === 'b' ? place_mm : -place_mm
  return slabsAt(swing, closing.from).map((slab) => isMet(apart_mm([slab], solid.outline, y_mm)))
}

/** Who falls onto a leaf at rest is not told. Places at which one panel is overlapped lie together, as both are convex. */
function liesOnRestingLeaf(asked: Asked, { from_mm, to_mm }: Stretch): boolean {
  const [first, last] = [overlaps(asked, from_mm), overlaps(asked, to_mm)]
  return first.some((isOn, panel) => isOn && last[panel] === true)
}

/** Where the overlap with a panel at rest begins or ends, looked for in steps that no panel fits between. */
function overlapEnds(asked: Asked, { from_mm, to_mm }: Stretch): readonly number[] {
  const step_mm = asked.passage.swing.half_mm
  const n = Math.max(1, Math.ceil((to_mm - from_mm) / step_mm))
  const at = (i: number) => from_mm + ((to_mm - from_mm) * i) / n
  const ends: number[] = []
  for (let i = 0; i < n; i++) {
    const [before, after] = [overlaps(asked, at(i)), overlaps(asked, at(i + 1))]
    before.forEach((isOn, panel) => {
      if (isOn !== after[panel]) ends.push(...bracket(asked, panel, at(i), at(i + 1), isOn))
    })
  }
  return ends
}

/** Both ends of a bracket around the change. */
function bracket(asked: Asked, panel: number, from_mm: number, to_mm: number, isOn: boolean): readonly number[] {
  let [low, high] = [from_mm, to_mm]
  for (let k = 0; k < 30; k++) {
    const middle = (low + high) / 2
    if (overlaps(asked, middle)[panel] === isOn) low = middle
    else high = middle
  }
  return [low, high]
}

/** No fall on the strip is struck, for every phase and pace. */
function isClear({ closing, passage, views, speeds }: Asked, strip: Stretch, { clear, passed }: Reached, boxes: number): boolean {
  const lying = lyingAt(views, (strip.from_mm + strip.to_mm) / 2)
  if (lying.length === 0) return false
  const seen_mm = lying.every(({ sawUpright }) => sawUpright) ? strip.from_mm : strip.to_mm
  const asViews = viewsOfFall(
    views,
    lying.map(({ view }) => view),
    strip.from_mm,
    seen_mm,
    speeds[1],
  )
  const [slowest, fastest] = speeds
  const points = turningPoints(asViews.views, 1 / fastest, 1 / slowest)
  if (points.length > MOST_TURNS) return false
  const flat = { enter_mm: strip.from_mm, leave_mm: asViews.stays_mm, clear: Math.min(clear, closing.from), views: asViews.views }
  let left = boxes
  for (let i = 0; i === 0 || i < points.length - 1; i++) {
    const from = points[i] as number
    const to = points[i + 1] ?? from
    for (const problem of problemsOf(closing, flat, from, to)) {
      const bounded = { ...problem, passed, ratio: passage.ratio }
      const stack = firstBoxes(bounded, from, to)
      for (let box = stack.pop(); box !== undefined; box = stack.pop()) {
        const bounds = boundsOf(bounded, box)
        if (!bounds.strike) continue
        if (left-- <= 0 || bounds.late + bounds.slow < FINEST) return false
        stack.push(...halves(box, bounds))
      }
    }
  }
  return true
}

/** An exact run of the worst that a fall at this one place could be, were the leaf met at one way: it may be past the body then, or not there yet. */
function lookAt({ closing, passage, views, speeds }: Asked, place_mm: number, tally: Tally): void {
  const { swing, ratio, solid, from } = passage
  const reached = reachedWays(swing, ratio, closing.from, passage.swept(place_mm, place_mm))
  if (reached === undefined) return
  const lying = lyingAt(views, place_mm)
  const stays = { solid, from, enter_mm: place_mm, leave_mm: Infinity, stopsAt_mm: place_mm }
  if (lying.length === 0) {
    const run = runOf(closing, Infinity)
    keep(firstMeeting(swing, ratio, run, { ...stays, enters_s: -Infinity, pace: 0 }), tally, {
      run,
      enters_s: -Infinity,
      pace: 0,
      seen_s: undefined,
      stop_s: undefined,
    })
    return
  }
  const { views: asViews, stays_mm } = viewsOfFall(
    views,
    lying.map(({ view }) => view),
    place_mm,
    place_mm,
    speeds[1],
  )
  const flat: Passage = {
    enter_mm: place_mm,
    leave_mm: stays_mm,
    clear: Math.min(reached.clear, closing.from),
    views: asViews,
    standing: [{ from_mm: place_mm, to_mm: stays_mm }],
  }
  const found = newTally()
  worstOfPassage(closing, flat, speeds, found)
  if (found.struck === undefined) return
  const { run, enters_s, pace, seen_s, stop_s } = found.struck
  keep(firstMeeting(swing, ratio, run, { ...stays, enters_s, pace }), tally, { run, enters_s, pace, seen_s, stop_s })
}

function keep(
  meeting: TurningMeeting | undefined,
  tally: Tally,
  { run, enters_s, pace, seen_s, stop_s }: Pick<Contact, 'run' | 'enters_s' | 'pace' | 'seen_s' | 'stop_s'>,
): void {
  if (meeting?.kind !== 'struck') return
  const { leafSpeed, way, at_s, place_mm } = meeting
  offer(tally, 'struck', {
    relativeSpeed: leafSpeed,
    bodySpeed: 0,
    leafSpeed,
    way,
    at_s,
    enters_s,
    pace,
    entersAt_mm: place_mm,
    place_mm,
    seen_s,
    stop_s,
    run,
    stands: true,
  })
}
