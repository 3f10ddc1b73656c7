import { type Closing, runOf } from '../motion/leaf-run.ts'
import { type Swing, slabsAt } from '../motion/turning-leaf.ts'
import { TOUCH_MM } from '../space/touch.ts'
import { type Stretch, turningPoints, type View } from './output.ts'
import { type Bounds, type Box, boundsOf, enters, latest, leaves, type Problem } from './phase-bounds.ts'
import { apart_mm, isMet, type Outline, type Reached, type Solid } from './turning-contact.ts'
import { firstMeeting, type SolidOnWay, type TurningMeeting } from './turning-run.ts'
import {
  type Contact,
  FINEST,
  firstBoxes,
  GAP_STEP,
  halves,
  MOST_TURNS,
  offer,
  problemsOf,
  SPEED_STEP_MM_PER_S,
  type Tally,
} from './worst-passage.ts'

/** One solid of a body on one straight way past one leaf that turns. Places along the way in mm, rising as it goes. */
export interface TurningPassage {
  readonly swing: Swing
  readonly ratio: number
  readonly solid: Solid
  readonly from: 'a' | 'b'
  /** Outside of these the solid is nowhere that the leaf comes. */
  readonly enter_mm: number
  readonly leave_mm: number
  /** What the leaf meets while the body's middle is between two places, whatever the opening: from the whole way. */
  readonly reached: (from_mm: number, to_mm: number) => Reached | undefined
  /** What the solid covers meanwhile. */
  readonly swept: (from_mm: number, to_mm: number) => Outline
  readonly views: readonly View[]
  readonly standing: readonly Stretch[]
}

/** A stretch of the way; all of what the solid covers there is taken for the solid. */
interface Strip {
  readonly from_mm: number
  readonly to_mm: number
}

/** So much farther on than where an exact run first meets the resting leaf. */
const HELD_MM = 0.01
const FIRST_STRIP_MM = 100
/** What is not settled on a strip of this length is not settled at all. */
const LAST_STRIP_MM = 0.5
const LAST_STRIP_BESIDE_MM = 12
const GAP_STRIP_MM = 25
/** Boxes for one strip and one stretch of phases; on the last strips more. */
const MOST_BOXES = 150
const MOST_BOXES_LAST = 1500
const MOST_GAP_BOXES = 40
/** Once a contact is known only a faster one is searched for. */
const MOST_FASTER_BOXES = 48
/** Exact runs for one strip. */
const MOST_RUNS = 24

type Kind = 'struck' | 'walked'

/**
 * All phases of the closing, all speeds of the range, all places to stop, as `worstOfPassage` for a leaf that turns (docs/method.md, "Time"). The way is cut
 * into strips; on each the leaf meets the solid at ways between two bounds, so that it is a passage of the known kind that holds more than the strip does: what
 * is clear there is clear. Contacts are found by exact runs alone. A strip with neither is halved.
 */
export function worstOfTurning(closing: Closing, passage: TurningPassage, speeds: readonly [number, number], tally: Tally): void {
  const [slowest, fastest] = speeds
  const points = turningPoints(passage.views, 1 / fastest, 1 / slowest)
  const parked = parkedMeeting(closing, passage, fastest)
  if (parked) {
    const enters_s = (passage.enter_mm - parked.place_mm) / fastest
    offer(tally, 'walked', contactOf({ ...parked, at_s: 0 }, runOf(closing, Infinity), undefined, passage.enter_mm, enters_s, fastest))
  }
  if (points.length > MOST_TURNS) {
    tally.unproved.struck++
    tally.unproved.walked++
    return
  }
  const idle = closing.from - (passage.reached(passage.enter_mm, passage.leave_mm)?.clear ?? -Infinity)
  tally.gap = Math.min(tally.gap, idle)
  tally.gapAtLeast = Math.min(tally.gapAtLeast, idle)
  const parts =
    points.length < 2
      ? [[points[0] as number, points[0] as number] as const]
      : points.slice(1).map((to, i) => [points[i] as number, to] as const)
  const asked: Asked = { closing, passage, parts, tally, heldFrom_mm: parked ? parked.place_mm + HELD_MM : Infinity }
  for (const kind of ['struck', 'walked'] as const) settleAll(asked, kind)
  if (tally.struck === undefined && tally.walked === undefined) leastGap(asked)
}

interface Asked {
  readonly closing: Closing
  readonly passage: TurningPassage
  /** Ranges of slowness in which the outputs behave alike. */
  readonly parts: readonly (readonly [from: number, to: number])[]
  /** Where the leaf at rest before the closing begins to overlap the solid; Infinity where it never does. */
  readonly heldFrom_mm: number
  readonly tally: Tally
}

/** Cut where the resting leaf begins to overlap the body. */
function stripsOf({ passage: { enter_mm, leave_mm }, heldFrom_mm }: Asked, length_mm: number): Strip[] {
  const ends = [enter_mm, heldFrom_mm, leave_mm].filter((at_mm) => at_mm >= enter_mm && at_mm <= leave_mm)
  return ends.slice(1).flatMap((to_mm, k) => {
    const from_mm = ends[k] as number
    const n = Math.max(1, Math.ceil((to_mm - from_mm) / length_mm))
    const at = (i: number) => from_mm + ((to_mm - from_mm) * i) / n
    return Array.from({ length: n }, (_, i) => ({ from_mm: at(i), to_mm: i === n - 1 ? to_mm : at(i + 1) }))
  })
}

/** Coarse strips first, so that a contact is found before much is halved. */
function settleAll(asked: Asked, kind: Kind): void {
  const { tally } = asked
  const queue = stripsOf(asked, FIRST_STRIP_MM)
  // whoever is struck first has not walked into it: a strip by itself cannot tell
  const isLeft = kind === 'walked' && tally.struck !== undefined
  for (let i = 0; i < queue.length; i++) {
    const strip = queue[i] as Strip
    const isLast = strip.to_mm - strip.from_mm <= (isLeft ? LAST_STRIP_BESIDE_MM : LAST_STRIP_MM)
    const left = settle(asked, strip, kind, isLast)
    if (left === undefined) continue
    if (tally[kind] !== undefined || isLast || tally.boxes <= 0) {
      const atMost = kind === 'struck' ? 'struckAtMost' : 'walkedAtMost'
      tally[atMost] = Math.max(tally[atMost], left)
      if (tally[kind] === undefined) tally.unproved[kind]++
    } else {
      const middle_mm = (strip.from_mm + strip.to_mm) / 2
      queue.push({ from_mm: strip.from_mm, to_mm: middle_mm }, { from_mm: middle_mm, to_mm: strip.to_mm })
    }
  }
}

/** Undefined where nothing of this kind happens on the strip, or nothing faster than what is known; else what its contacts surely do not exceed. */
function settle(asked: Asked, strip: Strip, kind: Kind, isLast: boolean): number | undefined {
  const { closing, passage, parts, tally } = asked
  const met = problemOn(asked, strip, kind)
  if (met === undefined) return undefined
  const budget: Budget = { boxes: 0, runs: MOST_RUNS }
  let left: number | undefined
  const keep = (speed: number) => {
    left = Math.max(left ?? 0, speed)
  }
  if (kind === 'struck' && !standsClear(asked, strip)) keep(passage.ratio * closing.profile.peak)
  for (const [from, to] of parts)
    for (const problem of problemsFor(closing, passage, met, strip, from, to)) {
      budget.boxes = Math.min(tally.boxes, tally[kind] ? MOST_FASTER_BOXES : isLast ? MOST_BOXES_LAST : MOST_BOXES)
      const finest = Math.max(FINEST, (strip.to_mm - strip.from_mm) / 16)
      const stack = firstBoxes(problem, from, to)
      for (let box = stack.pop(); box !== undefined; box = stack.pop()) {
        const bounds = boundsOf(problem, box)
        if (!isOpen(bounds, kind, tally)) continue
        look(asked, problem, strip, box, kind, budget)
        if (!isOpen(bounds, kind, tally)) continue
        if (budget.boxes-- <= 0 || bounds.late + bounds.slow < finest) keep(kind === 'struck' ? bounds.strikeSpeed : bounds.walkSpeed)
        else {
          tally.boxes--
          stack.push(...halves(box, bounds))
        }
        if (left !== undefined && tally[kind] === undefined && !isLast && budget.runs <= 0) return left
      }
    }
  return left
}

interface Budget {
  boxes: number
  runs: number
}

interface Met extends Reached {
  /** Whoever comes to the strip has come by this place, where the leaf at rest before the closing overlaps it; undefined where it does not. */
  readonly heldFrom_mm: number | undefined
}

/** The ways at which the leaf meets the solid on a strip; undefined where it does not, or comes from below them. */
function problemOn({ closing, passage, heldFrom_mm }: Asked, { from_mm, to_mm }: Strip, kind: Kind): Met | undefined {
  const reached = passage.reached(from_mm, to_mm)
  if (reached === undefined) return undefined
  if (kind === 'walked') return { ...reached, heldFrom_mm: undefined }
  if (reached.passed >= closing.from) return undefined
  // a leaf that rests beside the body may strike it yet, unless whoever comes so far has met it before
  const isBeyond = from_mm >= heldFrom_mm
  return { passed: reached.passed, clear: Math.min(reached.clear, closing.from), heldFrom_mm: isBeyond ? heldFrom_mm : undefined }
}

function problemsFor(
  closing: Closing,
  passage: TurningPassage,
  met: Met,
  { from_mm, to_mm }: Strip,
  from: number,
  to: number,
): readonly Problem[] {
  // what the control promises of quiet before a closing is not counted on
  const asPassage = { enter_mm: from_mm, leave_mm: to_mm, clear: met.clear, views: passage.views }
  return problemsOf(closing, asPassage, from, to).map((problem) => ({
    ...problem,
    passed: met.passed,
    ratio: passage.ratio,
    ...(met.heldFrom_mm === undefined ? {} : { heldFrom_mm: met.heldFrom_mm }),
  }))
}

/** Whether a box may still hold something that is worse than what is known. */
function isOpen({ strike, walk, strikeSpeed, walkSpeed }: Bounds, kind: Kind, { struck, walked }: Tally): boolean {
  if (kind === 'struck') return strike && (struck === undefined || strikeSpeed > struck.relativeSpeed + SPEED_STEP_MM_PER_S)
  return walk && (walked === undefined || walkSpeed > walked.relativeSpeed + SPEED_STEP_MM_PER_S)
}

function yOf({ from }: TurningPassage, place_mm: number): number {
  return from === 'b' ? place_mm : -place_mm
}

function isMetAt(passage: TurningPassage, way: number, place_mm: number): boolean {
  return isMet(apart_mm(slabsAt(passage.swing, way), passage.solid.outline, yOf(passage, place_mm)))
}

/** Nobody stands on the strip where no output holds them, unless the resting leaf leaves no room; where somebody does, the tally knows a contact. */
function standsClear(asked: Asked, { from_mm, to_mm }: Strip): boolean {
  const { closing, passage, tally } = asked
  let isClear = true
  for (const open of unheld(passage.standing, from_mm, to_mm)) {
    if (isMetAt(passage, closing.from, open.from_mm) && isMetAt(passage, closing.from, open.to_mm)) continue
    isClear = false
    const run = runOf(closing, Infinity)
    for (const share of [0.5, 0.01, 0.99]) {
      const place_mm = open.from_mm + share * (open.to_mm - open.from_mm)
      const { swing, ratio, solid, from, enter_mm, leave_mm } = passage
      const onWay: SolidOnWay = { solid, from, enter_mm, leave_mm, enters_s: -Infinity, pace: 0, stopsAt_mm: place_mm }
      const meeting = firstMeeting(swing, ratio, run, onWay)
      if (meeting?.kind === 'struck') {
        offer(tally, 'struck', contactOf(meeting, run, undefined, place_mm, -Infinity, 0))
        break
      }
    }
  }
  // once a contact is known, a faster one of somebody who stands there is looked for no further
  return isClear
}

function unheld(standing: readonly Stretch[], from_mm: number, to_mm: number): readonly Stretch[] {
  const open: Stretch[] = []
  let at_mm = from_mm
  for (const held of standing) {
    if (held.from_mm > at_mm + TOUCH_MM && at_mm < to_mm) open.push({ from_mm: at_mm, to_mm: Math.min(held.from_mm, to_mm) })
    at_mm = Math.max(at_mm, held.to_mm)
  }
  if (at_mm < to_mm - TOUCH_MM) open.push({ from_mm: at_mm, to_mm })
  return open
}

/** Whoever goes through at the fastest meets the leaf where it rests before it closes. */
function parkedMeeting(closing: Closing, passage: TurningPassage, fastest: number): TurningMeeting | undefined {
  const { swing, ratio, solid, from, enter_mm, leave_mm } = passage
  const through_s = (leave_mm - enter_mm) / fastest
  const onWay = { solid, from, enter_mm, leave_mm, enters_s: -through_s - 1, pace: fastest, stopsAt_mm: Infinity }
  const meeting = firstMeeting(swing, ratio, runOf(closing, Infinity), onWay)
  return meeting && meeting.at_s <= 0 ? meeting : undefined
}

/** Exact runs at a few points of the box, where the strip itself does not exclude a contact. */
function look(asked: Asked, problem: Problem, strip: Strip, { slow0, slow1, late0, late1 }: Box, kind: Kind, budget: Budget): void {
  const points = [
    [(slow0 + slow1) / 2, (late0 + late1) / 2],
    [slow0, late0],
    [slow0, late1],
  ] as const
  for (const [slowness, wanted_s] of points) {
    if (budget.runs <= 0) return
    const late_s = Math.min(wanted_s, latest(problem, slowness))
    const bounds = boundsOf(problem, { slow0: slowness, slow1: slowness, late0: late_s, late1: late_s })
    if (isOpen(bounds, kind, asked.tally)) lookAt(asked, problem, strip, slowness, late_s, budget)
  }
}

function lookAt(
  { closing, passage, tally }: Asked,
  problem: Problem,
  strip: Strip,
  slowness: number,
  late_s: number,
  budget: Budget,
): void {
  const { swing, ratio, solid, from, enter_mm, leave_mm } = passage
  const run = runOf(closing, problem.isLast ? Infinity : late_s)
  const enters_s = late_s + enters(problem, slowness) - (problem.enter_mm - enter_mm) * slowness
  for (const stopsAt_mm of stopsOf(problem, strip)) {
    budget.runs--
    const pace = 1 / slowness
    const meeting = firstMeeting(swing, ratio, run, { solid, from, enter_mm, leave_mm, enters_s, pace, stopsAt_mm })
    if (meeting === undefined) continue
    const seen = problem.isLast ? undefined : { seen_s: late_s - problem.next.response_s, stop_s: late_s }
    offer(tally, meeting.kind === 'struck' ? 'struck' : 'walked', contactOf(meeting, run, seen, enter_mm, enters_s, pace))
  }
}

/** Where on the strip a body can stop that still brings about what the output does; Infinity for one that goes on. */
function stopsOf({ next, mayStand, mustStand = false }: Problem, { from_mm, to_mm }: Strip): readonly number[] {
  const goesOn = mustStand ? [] : [Infinity]
  if (!mayStand) return goesOn
  const first_mm = Math.max(from_mm, next.on.place_mm)
  const last_mm = mustStand ? Math.min(to_mm, next.off.place_mm) : to_mm
  return first_mm > last_mm ? goesOn : [...goesOn, first_mm, (first_mm + last_mm) / 2, last_mm]
}

function contactOf(
  meeting: TurningMeeting,
  run: Contact['run'],
  seen: { readonly seen_s: number; readonly stop_s: number } | undefined,
  entersAt_mm: number,
  enters_s: number,
  pace: number,
): Contact {
  const { relativeSpeed, bodySpeed, leafSpeed, way, at_s, place_mm, stands } = meeting
  const times = { at_s, enters_s, pace, entersAt_mm, place_mm, seen_s: seen?.seen_s, stop_s: seen?.stop_s }
  return { relativeSpeed, bodySpeed, leafSpeed, way, ...times, run, stands }
}

/** The least way that the edge has still to go to a contact, strip by strip; it errs toward less by what the solid covers on a strip. */
function leastGap(asked: Asked): void {
  const { closing, passage, parts, tally } = asked
  for (const strip of stripsOf(asked, GAP_STRIP_MM)) {
    const met = problemOn(asked, strip, 'struck')
    if (met === undefined) continue
    for (const [from, to] of parts)
      for (const problem of problemsFor(closing, passage, met, strip, from, to)) {
        let left = MOST_GAP_BOXES
        const stack = firstBoxes(problem, from, to)
        for (let box = stack.pop(); box !== undefined; box = stack.pop()) {
          const bounds = boundsOf(problem, box)
          const isDone = () => bounds.gap >= tally.gap - GAP_STEP
          if (!isDone()) nearer(asked, problem, box)
          if (isDone() || left-- <= 0) tally.gapAtLeast = Math.min(tally.gapAtLeast, Math.max(0, bounds.gap))
          else stack.push(...halves(box, bounds))
        }
      }
  }
}

function nearer({ closing, passage, tally }: Asked, problem: Problem, { slow0, slow1, late0, late1 }: Box): void {
  const slowness = (slow0 + slow1) / 2
  const late_s = Math.min((late0 + late1) / 2, latest(problem, slowness))
  const { gap } = boundsOf(problem, { slow0: slowness, slow1: slowness, late0: late_s, late1: late_s })
  if (gap >= tally.gap || gap < 0) return
  const run = runOf(closing, problem.isLast ? Infinity : late_s)
  const enters_s = late_s + enters(problem, slowness) - (problem.enter_mm - passage.enter_mm) * slowness
  const at_s = Math.max(0, Math.min(late_s + leaves(problem, slowness), run.rest_s))
  const place_mm = passage.enter_mm + Math.max(0, at_s - enters_s) / slowness
  tally.gap = gap
  tally.nearest = {
    relativeSpeed: 0,
    bodySpeed: 1 / slowness,
    leafSpeed: 0,
    way: problem.clear + gap,
    at_s,
    enters_s,
    pace: 1 / slowness,
    entersAt_mm: passage.enter_mm,
    place_mm: Math.min(place_mm, problem.leave_mm),
    seen_s: problem.isLast ? undefined : late_s - problem.next.response_s,
    stop_s: problem.isLast ? undefined : late_s,
    run,
    stands: false,
  }
}
