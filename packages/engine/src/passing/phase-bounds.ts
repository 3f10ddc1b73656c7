import { type Closing, curveAt, type LeafDrive, type LeafRun, runOf, wayAt } from '../motion/leaf-run.ts'
import { movedAt, restToRest, speedAt } from '../motion/profile.ts'
import { TOUCH_MM } from '../space/touch.ts'
import { hypot2 } from '../space/trigonometry.ts'
import { type Instant, type Span, timeAt } from './output.ts'
import type { Start } from './start-of-closing.ts'

/** The phases between two spans of the output, or after the last. */
export interface Problem extends Start {
  readonly closing: Closing
  readonly clear: number
  readonly enter_mm: number
  readonly leave_mm: number
  readonly next: Span
  /** Never reached before the body is through. */
  readonly isLast: boolean
  /** The body may stop in the leaf's plane and still bring about this span. */
  readonly mayStand: boolean
  /** It brings it about in no other way. */
  readonly mustStand?: boolean
  /** Of a leaf that turns: where its edge has no more than this to go it has passed the body, and is not met any more. */
  readonly passed?: number
  /** Of a leaf that turns: whoever comes to this place of the way before the closing begins has walked into the leaf that rests. */
  readonly heldFrom_mm?: number
  /** Of a leaf that turns: no point of it goes faster than so many times its edge. */
  readonly ratio?: number
  /** Told to stop after it has run for longer than this, the closing is not stopped: the output does not act any more. */
  readonly actsFor_s?: number | undefined
  /** It has run for at least each of these when it is told to stop, else it was told before, or could not begin. */
  readonly ranFor?: readonly Instant[] | undefined
}

/** Speeds of the body and phases of the closing that are settled together. */
export interface Box {
  readonly slow0: number // slowness, s per mm
  readonly slow1: number
  readonly late0: number // how long after its start the closing is told to stop
  readonly late1: number
}

/** When the body enters the leaf's plane, after the stop command. */
export function enters({ enter_mm, next }: Problem, slowness: number): number {
  return (enter_mm - next.on.place_mm) * slowness - next.on.after_s
}
export function leaves({ leave_mm, next }: Problem, slowness: number): number {
  return (leave_mm - next.on.place_mm) * slowness - next.on.after_s
}
/** The longest that a closing can have run when it is told to stop; below 0 where none may begin. */
export function latest({ notBefore, next, actsFor_s = Infinity }: Problem, slowness: number): number {
  return notBefore.reduce((least, start) => Math.min(least, roomAfter(start, next, slowness)), actsFor_s)
}
function roomAfter({ at, quiet_s }: Start['notBefore'][number], next: Span, slowness: number): number {
  return Math.max(0, timeAt(next.on, slowness) - timeAt(at, slowness)) - quiet_s
}
/** The shortest. */
export function soonest({ until, next, ranFor = [] }: Problem, slowness: number): number {
  const begun_s = until === undefined ? 0 : Math.max(0, timeAt(next.on, slowness) - timeAt(until, slowness))
  return ranFor.reduce((most, instant) => Math.max(most, timeAt(instant, slowness)), begun_s)
}
/** Whether no closing of a box may begin: one limit alone says so at both ends, and so between. */
export function mayNotBegin({ notBefore, until, next }: Problem, { slow0, slow1, late0, late1 }: Box): boolean {
  if (notBefore.some((start) => Math.max(roomAfter(start, next, slow0), roomAfter(start, next, slow1)) < late0)) return true
  const least = (slowness: number) => (until === undefined ? 0 : timeAt(next.on, slowness) - timeAt(until, slowness))
  return Math.min(least(slow0), least(slow1)) > late1
}
/** What of a box can be: none of its closings has run for less. Undefined where that leaves nothing of it. */
export function possible({ ranFor }: Problem, box: Box): Box | undefined {
  if (ranFor === undefined) return box
  const least = ranFor.reduce((most, instant) => Math.max(most, Math.min(timeAt(instant, box.slow0), timeAt(instant, box.slow1))), 0)
  return least > box.late1 ? undefined : { ...box, late0: Math.max(box.late0, least) }
}

/** How long before it enters the stretch a body has met the resting leaf, at the least. */
function heldFor({ enter_mm, heldFrom_mm = enter_mm }: Problem, slow0: number, slow1: number): number {
  return Math.max(0, (enter_mm - heldFrom_mm) * Math.min(slow0, slow1))
}

export interface Bounds {
  readonly strike: boolean
  readonly walk: boolean
  readonly strikeSpeed: number
  readonly walkSpeed: number
  readonly gap: number
  /** By how much the box may move the edge, by its phases and by its speeds. */
  readonly late: number
  readonly slow: number
}

/**
 * What holds for every phase and speed of a box. The window in which the body is in the plane is taken as wide as any speed of the box makes it. At a
 * fixed time after the stop command the edge moves with the phase no faster than `rate`: while braking from speed V with acceleration A before by
 * V + |A| t, t at most V / decel; the instant of rest shifts by |A| / decel. Where it rests falls with the phase by V (1 + a / decel); until the
 * profile eases off, that rises once at most, so that the phases at which the stop comes too late are one stretch.
 */
export function boundsOf(problem: Problem, { slow0, slow1, late0, late1 }: Box): Bounds {
  const { closing, clear, mayStand, passed = -Infinity, ratio } = problem
  const together = (leafSpeed: number) => (ratio === undefined ? hypot2(1 / slow0, leafSpeed) : 1 / slow0 + ratio * leafSpeed)
  const { profile, drive } = closing
  const { stoppingCurve, stopDecel } = drive
  const delay_s = stoppingCurve ? 0 : drive.stopDelay_s
  const [enterA, enterB] = [enters(problem, slow0), enters(problem, slow1)]
  const enter0 = Math.min(enterA, enterB)
  const enter1 = Math.max(enterA, enterB)
  const [leaveA, leaveB] = [leaves(problem, slow0), leaves(problem, slow1)]
  const leave1 = mayStand ? Infinity : Math.max(leaveA, leaveB)
  const middle = (late0 + late1) / 2
  const half = (late1 - late0) / 2
  const run = runOf(closing, middle)
  const speedMiddle = speedAt(profile, middle + delay_s)
  const isSteady = late1 + delay_s <= profile.slowing_s && late0 + delay_s >= steadyFrom(closing)
  const accel = isSteady ? 0 : drive.close.accel
  const fastest = Math.min(profile.peak, speedMiddle + accel * half)
  const restRate = stoppingCurve ? 0 : accel / stopDecel
  const rest = stoppingCurve ? (stoppingCurve[stoppingCurve.length - 1]?.at_s ?? 0) : delay_s + speedMiddle / stopDecel
  const isLate = late0 + delay_s >= profile.end_s
  const isAllShut =
    isLate || (run.isShut && late1 <= easesOff(closing) - delay_s && runOf(closing, late0).isShut && runOf(closing, late1).isShut)
  const moves1 = isLate ? profile.end_s - late0 : rest + restRate * half
  const rate = leave1 < delay_s ? profile.peak * (1 + restRate) : fastest * (1 + restRate)
  let gap = Infinity
  let strike = false
  let strikeSpeed = 0
  const isHeld = closing.from < clear - TOUCH_MM || problem.heldFrom_mm !== undefined
  const isMetBefore = isHeld && late1 + enter1 - heldFor(problem, slow0, slow1) <= 0
  // at the earliest entry the edge is nowhere higher, whatever the phase
  const highest = () =>
    wayAt(run, Math.min(middle + enter0, run.rest_s)) + Math.max(profile.peak, fastestOf(closing)) * (1 + restRate) * half
  // a leaf that turns may rest just above a body that has left before it begins to close
  const isAway = ratio !== undefined && late1 + leave1 <= 0
  if (!isMetBefore && !isAway && enter0 < moves1 && sunkTo(run, enter0 - delay_s) + rate * half > 0) {
    const lowest = wayAt(run, Math.min(middle + leave1, run.rest_s)) - rate * half
    const ahead = passed === -Infinity ? -Infinity : passed - highest()
    gap = Math.max(lowest - clear, ahead)
    strike = lowest < clear - TOUCH_MM && ahead < -TOUCH_MM
    const slowed = stoppingCurve || enter0 <= delay_s ? profile.peak : Math.max(0, fastest - stopDecel * (enter0 - delay_s))
    strikeSpeed = together(stoppingCurve ? fastestOf(closing) : Math.min(profile.peak, slowed))
  }
  let walk = false
  // one that has passed the body comes back to it: then it need not enter after the rest
  const last1 = passed === -Infinity ? enter1 : leave1
  if (!isAllShut && last1 >= rest - restRate * half) {
    const lowest = openedAt(drive, Math.max(0, run.restWay - rate * half), enter0 - rest - restRate * half)
    const ahead =
      passed === -Infinity
        ? -Infinity
        : passed - openedAt(drive, Math.min(drive.way, run.restWay + rate * half), last1 - rest + restRate * half)
    walk = lowest < clear - TOUCH_MM && ahead < -TOUCH_MM
    gap = Math.min(gap, Math.max(lowest - clear, ahead))
  }
  const quickest = Math.max(fastestOf(closing), drive.reverseDelay_s === undefined ? 0 : drive.open.speed)
  const spread = Math.max(enter1 - enter0, mayStand ? 0 : Math.abs(leaveA - leaveB))
  return {
    strike,
    walk,
    strikeSpeed,
    walkSpeed: together(openingSpeed(drive, last1 - rest + restRate * half)),
    gap,
    late: (rate + quickest * restRate) * half,
    slow: quickest * Math.min(spread, 2 * profile.end_s),
  }
}

/** From here on a rounded profile slows down less than braking would, so that a stop may be in time again. */
function easesOff({ profile, drive: { close, stopDecel, stoppingCurve } }: Closing): number {
  return stoppingCurve || close.jerk === undefined || stopDecel >= close.accel ? Infinity : profile.end_s - stopDecel / close.jerk
}

/** The way of a leaf that came to rest so long ago. One that rested lower or later is lower at any time until it is open. */
function openedAt({ way, open, reverseDelay_s = Infinity, reverseTo = way }: LeafDrive, restWay: number, rested_s: number): number {
  return rested_s > reverseDelay_s ? restWay + movedAt(restToRest(reverseTo - restWay, open), rested_s - reverseDelay_s) : restWay
}

/** Where braking would have brought the edge so long after it began, were there no floor; above it where braking has not begun. */
function sunkTo({ closing, brakeWay, brakeSpeed }: LeafRun, braked_s: number): number {
  const { stoppingCurve, stopDecel } = closing.drive
  if (braked_s <= 0 || brakeWay <= 0) return Infinity
  if (stoppingCurve) return brakeWay - curveAt(stoppingCurve, braked_s).way
  const t = Math.min(braked_s, brakeSpeed / stopDecel)
  return brakeWay - t * (brakeSpeed - (t * stopDecel) / 2)
}

/** What it has speeded up to, so long after it came to rest. */
function openingSpeed({ open, reverseDelay_s }: LeafDrive, rested_s: number): number {
  return reverseDelay_s === undefined ? 0 : Math.min(open.speed, open.accel * Math.max(0, rested_s - reverseDelay_s))
}

/** The stretch of even speed begins as long after the start as slowing takes at the end. */
function steadyFrom({ profile }: Closing): number {
  return profile.end_s - profile.slowing_s
}

/** A measured curve may begin faster than the profile. */
function fastestOf({ profile, drive: { stoppingCurve = [] } }: Closing): number {
  let most = profile.peak
  let before = { at_s: 0, way: 0 }
  for (const point of stoppingCurve) {
    most = Math.max(most, (point.way - before.way) / (point.at_s - before.at_s))
    before = point
  }
  return most
}
