import { type Closing, type LeafRun, runOf } from '../motion/leaf-run.ts'
import { speedAt, timeOf } from '../motion/profile.ts'
import { TOUCH_MM } from '../space/touch.ts'
import { hypot2 } from '../space/trigonometry.ts'
import { problemsWithLeaf } from './leaf-problems.ts'
import { type Meeting, meet } from './meeting.ts'
import { type Span, type Stretch, spansOfAll, timeAt, turningPoints, type View } from './output.ts'
import { type Bounds, type Box, boundsOf, enters, latest, leaves, mayNotBegin, type Problem, possible, soonest } from './phase-bounds.ts'
import { NO_QUIET, type Quiet, type Start, startsAfter } from './start-of-closing.ts'

/** One body in one stance on one straight way through the doorway. Places along the way in mm, rising as it goes. */
export interface Passage {
  /** Where it enters the leaf's plane, and where it has left it. */
  readonly enter_mm: number
  readonly leave_mm: number
  /** It is met where the edge has less than this still to go. */
  readonly clear: number
  readonly views: readonly View[]
  /** Where it is held when it stands still; it may stop anywhere. */
  readonly standing: readonly Stretch[]
  /** What the control promises of the time before a closing; nothing if undefined. */
  readonly quiet?: Quiet | undefined
}

/** A contact with everything that makes it: speeds in mm/s, times since the closing began. */
export interface Contact {
  readonly relativeSpeed: number
  readonly bodySpeed: number
  readonly leafSpeed: number
  readonly way: number
  readonly at_s: number
  /** The body entered the leaf's plane, how fast it came, and where its middle then was along its way. */
  readonly enters_s: number
  readonly pace: number
  readonly entersAt_mm: number
  /** Middle of the body along its way, at contact. */
  readonly place_mm: number
  /** The body became visible, and the output changed; undefined where no output ever stops this closing. */
  readonly seen_s: number | undefined
  readonly stop_s: number | undefined
  readonly run: LeafRun
  readonly stands: boolean
  /** The closing begins though an output forbids it. */
  readonly whileHeld?: boolean
}

/** What is known so far, over every passage looked at. */
export interface Tally {
  struck: Contact | undefined
  walked: Contact | undefined
  /** No contact of this kind is faster. */
  struckAtMost: number
  walkedAtMost: number
  /** The least gap found, and what it is surely not below; that of the open leaf where nothing closes. */
  gap: number
  gapAtLeast: number
  /** Where the least gap was found; undefined where it is that of the open leaf. */
  nearest: Contact | undefined
  /** Boxes in which a contact was neither found nor excluded. */
  unproved: { struck: number; walked: number }
  /** Boxes that may still be asked, over all passages. */
  boxes: number
}

export function newTally(): Tally {
  const none = { struck: undefined, walked: undefined, nearest: undefined, struckAtMost: 0, walkedAtMost: 0 }
  return { ...none, gap: Infinity, gapAtLeast: Infinity, unproved: { struck: 0, walked: 0 }, boxes: 200_000 }
}

/** Boxes for one part of the speed range and one stretch of phases: a matter of counting, not of time, so that every machine stops at the same one. */
const MOST_BOXES = 4000
/** Sights that change more often over the speed range are left unproved. */
export const MOST_TURNS = 200
/** A fastest contact is searched for up to this. */
export const SPEED_STEP_MM_PER_S = 2
export const GAP_STEP = 0.25
/** Where all that a box can still move is less than this (mm, or as much of the way), it is not halved any more. */
export const FINEST = 0.02
const AFTER_S = 1e-3

/**
 * All phases of the closing, all speeds of the range, all places to stop: contacts and the least gap go to the tally. The speed range is cut where the
 * output's behaviour turns; in each part the phases between two spans of the output are one problem.
 *
 * @param speeds_mm_per_s slowest above 0 and fastest
 */
export function worstOfPassage(
  closing: Closing,
  passage: Passage,
  speeds_mm_per_s: readonly [slowest: number, fastest: number],
  tally: Tally,
): void {
  const [slowest, fastest] = speeds_mm_per_s
  foundStanding(closing, passage, tally)
  const idle = closing.from - passage.clear
  tally.gap = Math.min(tally.gap, idle)
  tally.gapAtLeast = Math.min(tally.gapAtLeast, idle)
  if (passage.clear > closing.from + TOUCH_MM) foundTooLow(closing, passage, fastest, tally)
  const points = turningPoints(passage.views, 1 / fastest, 1 / slowest)
  if (points.length > MOST_TURNS) {
    tally.unproved.struck++
    tally.unproved.walked++
    return
  }
  for (let i = 0; i === 0 || i < points.length - 1; i++) {
    const from = points[i] as number
    const to = points[i + 1] ?? from
    for (const problem of problemsOf(closing, passage, from, to)) for (const kind of KINDS) search(problem, kind, from, to, tally)
  }
}

export function problemsOf(closing: Closing, passage: Omit<Passage, 'standing'>, from: number, to: number): readonly Problem[] {
  const { enter_mm, leave_mm, clear, views, quiet = NO_QUIET } = passage
  const slowness = (from + to) / 2
  if (views.some(({ actsFrom_mm }) => actsFrom_mm !== undefined)) {
    const always = views.filter(({ actsFrom_mm }) => actsFrom_mm === undefined)
    const common = { closing, clear, enter_mm, leave_mm }
    const short = stoppedShort(common, { ...passage, views: always }, spansOfAll(views, slowness), slowness, (before) =>
      startsAfter(before, NO_QUIET, from, to),
    )
    return [...problemsWithLeaf(common, views, slowness), ...short]
  }
  const spans = spansOfAll(passage.views, slowness)
  const never: Span = { on: { place_mm: leave_mm, after_s: AFTER_S }, off: { place_mm: leave_mm, after_s: AFTER_S }, response_s: 0 }
  const common = { closing, clear, enter_mm, leave_mm }
  const after = (before: readonly Span[]) => startsAfter(before, quiet, from, to)
  const problems: Problem[] = spans.flatMap((next, i) =>
    after(spans.slice(0, i)).map((start) => ({ ...common, ...start, next, isLast: false, mayStand: next.on.place_mm < leave_mm })),
  )
  const last = spans[spans.length - 1]
  if (!last || timeAt(last.off, slowness) < timeAt(never.on, slowness))
    problems.push(...after(spans).map((start) => ({ ...common, ...start, next: never, isLast: true, mayStand: false })))
  return [...problems, ...stoppedShort(common, passage, spans, slowness, after)]
}

/** Whoever stops where a stretch is too short for the response at this speed is seen after all, once it has stood for so long. */
function stoppedShort(
  common: Pick<Problem, 'closing' | 'clear' | 'enter_mm' | 'leave_mm'>,
  { views }: Pick<Passage, 'views'>,
  spans: readonly Span[],
  slowness: number,
  after: (before: readonly Span[]) => readonly Start[],
): readonly Problem[] {
  return views.flatMap(({ visible, response_s, hold_s }) =>
    visible.flatMap(({ from_mm, to_mm }) => {
      if (to_mm <= common.enter_mm || from_mm >= common.leave_mm || (to_mm - from_mm) * slowness >= response_s) return []
      const on = { place_mm: from_mm, after_s: response_s }
      const at_s = timeAt(on, slowness)
      if (spans.some((span) => timeAt(span.on, slowness) <= at_s && at_s <= timeAt(span.off, slowness))) return []
      const before = spans.filter((span) => timeAt(span.off, slowness) < at_s)
      const next = { on, off: { place_mm: to_mm, after_s: hold_s }, response_s }
      const enter_mm = Math.max(common.enter_mm, from_mm)
      return after(before).map((start) => ({ ...common, ...start, enter_mm, next, isLast: false, mayStand: true, mustStand: true }))
    }),
  )
}

/** Standing where it is not held, a body is struck by a closing that begins later. */
export function foundStanding(closing: Closing, { enter_mm, leave_mm, clear, standing }: Passage, tally: Tally): void {
  let open_mm = enter_mm
  let place_mm: number | undefined
  for (const { from_mm, to_mm } of standing) {
    if (from_mm > open_mm + TOUCH_MM && open_mm < leave_mm) place_mm ??= (Math.max(open_mm, enter_mm) + Math.min(from_mm, leave_mm)) / 2
    open_mm = Math.max(open_mm, to_mm)
  }
  if (open_mm < leave_mm - TOUCH_MM) place_mm ??= (open_mm + leave_mm) / 2
  if (place_mm === undefined || clear <= TOUCH_MM || clear > closing.from + TOUCH_MM) return
  const at_s = timeOf(closing.profile, closing.from - clear)
  const leafSpeed = speedAt(closing.profile, at_s)
  const run = runOf(closing, Infinity)
  const none = { seen_s: undefined, stop_s: undefined }
  offer(tally, 'struck', {
    ...none,
    relativeSpeed: leafSpeed,
    bodySpeed: 0,
    leafSpeed,
    way: clear,
    at_s,
    enters_s: -Infinity,
    pace: 0,
    entersAt_mm: place_mm,
    place_mm,
    run,
    stands: true,
  })
}

/** The leaf is not opened as high as the body: whoever goes on walks into it while it rests. */
function foundTooLow(closing: Closing, { enter_mm }: Passage, fastest: number, tally: Tally): void {
  const run = runOf(closing, Infinity)
  const none = { seen_s: undefined, stop_s: undefined, leafSpeed: 0, run, stands: false }
  offer(tally, 'walked', {
    ...none,
    relativeSpeed: fastest,
    bodySpeed: fastest,
    way: closing.from,
    at_s: 0,
    enters_s: 0,
    pace: fastest,
    entersAt_mm: enter_mm,
    place_mm: enter_mm,
  })
}

export function offer(tally: Tally, kind: 'struck' | 'walked', contact: Contact): void {
  const best = tally[kind]
  if (best !== undefined && best.relativeSpeed >= contact.relativeSpeed) return
  tally[kind] = contact
  if (kind === 'struck') tally.struckAtMost = Math.max(tally.struckAtMost, contact.relativeSpeed)
  else tally.walkedAtMost = Math.max(tally.walkedAtMost, contact.relativeSpeed)
}

/** One kind of contact at a time, so that the search for the fastest of one does not use up what the proof about the other needs. */
function search(problem: Problem, kind: Kind, from: number, to: number, tally: Tally): void {
  const stack = firstBoxes(problem, from, to)
  let left = Math.min(MOST_BOXES, tally.boxes)
  tally.boxes -= left
  for (let asked = stack.pop(); asked !== undefined; asked = stack.pop()) {
    const box = mayNotBegin(problem, asked) ? undefined : possible(problem, asked)
    if (box === undefined) continue
    const bounds = boundsOf(problem, box)
    if (!isOpen(bounds, kind, tally)) {
      if (kind === 'gap') tally.gapAtLeast = Math.min(tally.gapAtLeast, bounds.gap)
      continue
    }
    look(problem, box, tally)
    if (!isOpen(bounds, kind, tally)) {
      if (kind === 'gap') tally.gapAtLeast = Math.min(tally.gapAtLeast, bounds.gap)
      continue
    }
    if (left-- <= 0 || bounds.late + bounds.slow < FINEST) giveUp(bounds, kind, tally)
    else stack.push(...halves(box, bounds))
  }
  tally.boxes += Math.max(0, left)
}

/** Cut where the motion changes its form: where slowing begins, and where the stop comes too late to do anything. */
export function firstBoxes(problem: Problem, from: number, to: number): Box[] {
  const { closing } = problem
  const { profile, drive } = closing
  const delay_s = drive.stoppingCurve ? 0 : drive.stopDelay_s
  const earliest_s = Math.min(enters(problem, from), enters(problem, to))
  const end = Math.max(profile.end_s, profile.end_s - earliest_s)
  const most = Math.min(end, longestOf(problem, from, to))
  if (most < 0) return []
  const cuts = [0, profile.slowing_s - delay_s, profile.end_s - delay_s, most]
    .map((cut) => Math.min(most, Math.max(0, cut)))
    .sort((a, b) => a - b)
  const boxes: Box[] = []
  for (const [i, late0] of cuts.entries()) {
    const late1 = cuts[i + 1]
    if (late1 !== undefined && (late1 > late0 || (i === cuts.length - 2 && boxes.length === 0)))
      boxes.push({ slow0: from, slow1: to, late0, late1 })
  }
  return boxes
}

/** No closing of these slownesses runs for longer before it is told to stop: of each limit the larger end, of these the least. */
function longestOf(problem: Problem, from: number, to: number): number {
  const alone = problem.notBefore.map((start) => ({ ...problem, notBefore: [start] }))
  return alone.reduce((least, each) => Math.min(least, Math.max(latest(each, from), latest(each, to))), Infinity)
}

/** The gap comes last, and only where nothing is met: it tells nothing else. */
const KINDS = ['struck', 'walked', 'gap'] as const
type Kind = (typeof KINDS)[number]

/** Whether a box may still hold something that is worse than what is known. */
function isOpen({ strike, walk, strikeSpeed, walkSpeed, gap }: Bounds, kind: Kind, { struck, walked, gap: known }: Tally): boolean {
  if (kind === 'struck') return strike && (struck === undefined || strikeSpeed > struck.relativeSpeed + SPEED_STEP_MM_PER_S)
  if (kind === 'walked') return walk && (walked === undefined || walkSpeed > walked.relativeSpeed + SPEED_STEP_MM_PER_S)
  return struck === undefined && walked === undefined && gap < known - GAP_STEP
}

function giveUp({ strike, walk, strikeSpeed, walkSpeed, gap }: Bounds, kind: Kind, tally: Tally): void {
  if (kind === 'struck' && strike) {
    tally.struckAtMost = Math.max(tally.struckAtMost, strikeSpeed)
    if (tally.struck === undefined) tally.unproved.struck++
  }
  if (kind === 'gap') tally.gapAtLeast = Math.min(tally.gapAtLeast, gap)
  if (kind === 'walked' && walk) {
    tally.walkedAtMost = Math.max(tally.walkedAtMost, walkSpeed)
    if (tally.walked === undefined) tally.unproved.walked++
  }
}

/** The side that moves the edge more is cut; fast bodies come first. */
export function halves({ slow0, slow1, late0, late1 }: Box, { late, slow }: Bounds): readonly Box[] {
  if (slow > late) {
    const middle = (slow0 + slow1) / 2
    return [
      { slow0: middle, slow1, late0, late1 },
      { slow0, slow1: middle, late0, late1 },
    ]
  }
  const middle = (late0 + late1) / 2
  return [
    { slow0, slow1, late0, late1: middle },
    { slow0, slow1, late0: middle, late1 },
  ]
}

/** Exact answers at a few points of the box. */
function look(problem: Problem, { slow0, slow1, late0, late1 }: Box, tally: Tally): void {
  lookAt(problem, (slow0 + slow1) / 2, (late0 + late1) / 2, tally)
  lookAt(problem, slow0, late0, tally)
  lookAt(problem, slow0, late1, tally)
}

function lookAt(problem: Problem, slowness: number, wanted_s: number, tally: Tally): void {
  const { closing, clear, isLast, mayStand, next, enter_mm } = problem
  const most_s = latest(problem, slowness)
  const least_s = soonest(problem, slowness)
  if (least_s > most_s) return
  const late_s = Math.max(least_s, Math.min(wanted_s, most_s))
  const run = runOf(closing, isLast ? Infinity : late_s)
  const enters_s = late_s + enters(problem, slowness)
  const leaves_s = late_s + leaves(problem, slowness)
  const meeting: Meeting = meet(run, clear, enters_s, mayStand ? Infinity : leaves_s)
  if (meeting.kind === 'clear' && meeting.gap >= tally.gap) return
  const stands = meeting.at_s >= leaves_s
  const bodySpeed = stands ? 0 : 1 / slowness
  const contact: Contact = {
    relativeSpeed: hypot2(bodySpeed, meeting.leafSpeed),
    bodySpeed,
    leafSpeed: meeting.leafSpeed,
    way: meeting.way,
    at_s: meeting.at_s,
    enters_s,
    pace: 1 / slowness,
    entersAt_mm: enter_mm,
    place_mm: stands ? problem.leave_mm : enter_mm + (meeting.at_s - enters_s) / slowness,
    seen_s: isLast ? undefined : late_s - next.response_s,
    stop_s: isLast ? undefined : late_s,
    run,
    stands,
  }
  if (meeting.gap < tally.gap) {
    tally.gap = meeting.gap
    tally.nearest = contact
  }
  if (meeting.kind !== 'clear') offer(tally, meeting.kind === 'struck' ? 'struck' : 'walked', contact)
}
