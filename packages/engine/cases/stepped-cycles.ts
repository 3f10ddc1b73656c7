import type { ControlCycle } from '../src/model/traffic.ts'
import { closingFrom, type LeafDrive } from '../src/motion/leaf-run.ts'
import { quietOf, startsWhileHeld } from '../src/passing/start-of-closing.ts'
import { foundWhileHeld } from '../src/passing/while-held.ts'
import { newTally, type Passage, type Tally, worstOfPassage } from '../src/passing/worst-passage.ts'
import { randomNumbers } from './random-numbers.ts'
import { steppedCase } from './stepped-cases.ts'
import { type SteppedCycle, stepControl } from './stepped-control.ts'
import { mayBegin, STEP_S, type SteppedCase, stepPass } from './stepped-leaf.ts'

/** A case of the stepper, closed by a control of its own; one in three drives has no brake and coasts. */
interface CycleCase {
  readonly given: SteppedCase
  readonly speed: number
  readonly stepped: SteppedCycle
  readonly cycle: ControlCycle
  readonly byTimer: boolean
}

export function cycleCase(seed: number): CycleCase {
  const { given: plain, speed } = steppedCase(seed)
  const random = randomNumbers(seed + 77_000)
  const steps = (least: number, most: number) => Math.round(random.between(least, most) / STEP_S)
  const coasts = random.chance(0.35)
  // in most cases the body is seen far out, lost, and seen again too late: what counts is when a closing may begin between
  const late_mm = plain.enter_mm - random.between(-20, 300)
  const lost_mm = late_mm - random.between(100, 1800)
  const lost = [
    [lost_mm - random.between(200, 2500), lost_mm],
    [late_mm, plain.leave_mm + random.between(0, 300)],
  ] as const
  const visible = random.chance(0.65) ? lost : plain.visible
  const given = { ...plain, visible, from: plain.way, ...(coasts ? { stoppingCurve: undefined, decel: random.between(150, 900) } : {}) }
  const byTimer = random.chance(0.7)
  const attempts = given.dwell_s === undefined ? 0 : random.whole(0, 3)
  const whileHeld = attempts > 0 && random.chance(0.25) ? 'starts' : 'waits'
  const hold = steps(0, 1.5)
  const pause = random.chance(0.5) ? hold : steps(0, 1.5)
  const warning = random.chance(0.2) ? 0 : steps(0, 1.5)
  const stepped: SteppedCycle = {
    hold,
    holdFrom: random.chance(0.7) ? 'clear' : 'opened',
    warning,
    inWarning: whileHeld === 'waits' && random.chance(0.5) ? 'cancels' : 'waits',
    attempts,
    pause,
    whileHeld,
    lastOpensTo: given.way * (given.dwell_s !== undefined && random.chance(0.25) ? random.between(0.4, 0.9) : 1),
  }
  const cycle: ControlCycle = {
    holdOpenFrom: stepped.holdFrom,
    closesOnlyByTimer: byTimer,
    preWarning_s: warning * STEP_S,
    outputInWarning: stepped.inWarning,
    attempts,
    attemptPause_s: pause * STEP_S,
    attemptWhileHeld: whileHeld,
    afterAttempts: stepped.lastOpensTo < given.way ? 'partial' : 'stays-open',
  }
  return { given, speed, stepped, cycle, byTimer }
}

/** Steps by which an instant of the stepper may lie off. */
const OFF_STEPS = 6

/** As the engine judges a lane: every opening, every reversal; with a hold-open time shorter by what steps may be off. */
function engineAnswer({ given, speed, stepped, cycle }: CycleCase, spare_s = 0): Tally {
  const standing = given.visible.map(([from_mm, to_mm]) => ({ from_mm, to_mm }))
  const drive: LeafDrive = {
    way: given.way,
    close: { speed: given.closeSpeed, accel: given.closeAccel, jerk: given.closeJerk },
    open: { speed: given.openSpeed, accel: given.openAccel },
    stopDelay_s: given.delay_s,
    stopDecel: given.decel,
    reverseDelay_s: given.dwell_s,
    stoppingCurve: given.stoppingCurve?.map(([at_s, way]) => ({ at_s, way })),
  }
  const quiet = quietOf({ cycle, holdOpen_s: stepped.hold * STEP_S })
  const spared = {
    ...quiet,
    warning_s: Math.max(0, quiet.warning_s - (quiet.cancels ? spare_s : 0)),
    ...(quiet.beforeCommand_s === undefined ? {} : { beforeCommand_s: Math.max(0, quiet.beforeCommand_s - spare_s) }),
  }
  const { enter_mm, leave_mm, clear, response_s, hold_s } = given
  const views = [{ visible: standing, response_s, hold_s }]
  const passage: Passage = { enter_mm, leave_mm, clear, views, standing, quiet: spared }
  const tally = newTally()
  const isPartial = stepped.lastOpensTo < given.way
  for (const from of isPartial ? [given.way, stepped.lastOpensTo] : [given.way])
    for (const reverseTo of isPartial ? [undefined, stepped.lastOpensTo] : [undefined]) {
      const closing = closingFrom({ ...drive, reverseTo }, from)
      worstOfPassage(closing, passage, [speed, speed], tally)
      if (startsWhileHeld(cycle)) foundWhileHeld(closing, passage, tally)
    }
  return tally
}

/**
 * What is wrong with the engine's answer, which knows single closings alone, by a control that closes, is reversed and tries again: empty if nothing. `tried`
 * counts attempts after a reversal, `again` contacts of the engine's that came about in the control as well, `tight` those that a step decides.
 */
export function againstControl(seed: number): {
  readonly faults: readonly string[]
  readonly tried: number
  readonly struckLater: number
  readonly again: number
  readonly tight: number
  readonly narrowed: boolean
} {
  const made = cycleCase(seed)
  const { given, speed, stepped, byTimer } = made
  const engine = engineAnswer(made)
  const looser = engineAnswer(made, OFF_STEPS * STEP_S)
  const free = engineAnswer({ ...made, cycle: { ...made.cycle, closesOnlyByTimer: false, preWarning_s: 0, outputInWarning: 'waits' } })
  const accel = Math.max(given.closeAccel, given.decel, given.openAccel)
  const off = 4 + OFF_STEPS * STEP_S * accel + 0.002 * speed
  const faults: string[] = []
  let tight = 0
  let tried = 0
  let struckLater = 0
  const { enter_mm, leave_mm } = given
  for (const stopsAt_mm of [undefined, enter_mm + 0.5, (enter_mm + leave_mm) / 2, leave_mm - 0.5]) {
    const pass = stepPass(given, { speed, stopsAt_mm })
    const arrives = Math.floor((enter_mm - pass.start_mm) / speed / STEP_S)
    const before = Math.ceil((given.way / given.closeSpeed + given.closeSpeed / given.closeAccel + 3.2) / STEP_S)
    for (let opened = -before; opened < Math.min(pass.steps, arrives + 30_000); opened += 331) {
      if (!byTimer && stepped.inWarning === 'cancels' && !mayBegin(pass, opened)) continue
      const course = stepControl(given, pass, stepped, opened, !byTimer)
      tried += Math.max(0, course.begins.length - 1)
      if (course.kind === 'clear') {
        if (course.gap < looser.gapAtLeast - 1.5 && looser.struck === undefined && looser.walked === undefined && !isUnproved(looser))
          faults.push(`${seed}: gap ${course.gap} in a control, at least ${looser.gapAtLeast}`)
        continue
      }
      const kind = course.kind === 'struck' ? 'struck' : 'walked'
      if (kind === 'struck' && course.begins.length > 1) struckLater++
      const { [kind]: known, [`${kind}AtMost` as const]: most } = looser
      if (looser.unproved[kind] > 0 || course.relativeSpeed <= Math.max(known?.relativeSpeed ?? -Infinity, known ? most : -Infinity) + off)
        continue
      if (known === undefined && looser.gap < 2) tight++
      else
        faults.push(`${seed}: ${kind} at ${course.relativeSpeed} in a control (closings ${course.begins}), known ${known?.relativeSpeed}`)
    }
  }
  // only a first closing by this timer is made again: not one that a shorter pause, or an attempt while an output holds, alone lets begin
  const again = stepped.whileHeld === 'starts' || stepped.pause < stepped.hold ? undefined : replayed(made, engine)
  if (again === 'never') faults.push(`${seed}: struck at ${engine.struck?.relativeSpeed}, but in no control`)
  if (again === 'tight') tight++
  const narrowed = free.struck !== undefined && (engine.struck === undefined || engine.struck.relativeSpeed < free.struck.relativeSpeed - 5)
  return { faults, tried, struckLater, again: again === 'again' ? 1 : 0, tight, narrowed }
}

function isUnproved({ unproved }: Tally): boolean {
  return unproved.struck + unproved.walked > 0
}

/** Whether the contact that the engine found comes about in a control that has opened so long before. */
function replayed({ given, speed, stepped, byTimer }: CycleCase, { struck }: Tally): 'again' | 'never' | 'tight' | undefined {
  if (struck === undefined || struck.whileHeld || struck.run.closing.from < given.way || !Number.isFinite(struck.enters_s)) return undefined
  const lead = byTimer ? stepped.hold + stepped.warning : stepped.warning
  for (const stopsAt_mm of struck.stands ? [given.leave_mm - 0.5, struck.place_mm] : [undefined]) {
    const pass = stepPass(given, { speed, stopsAt_mm })
    const begins = (given.enter_mm - pass.start_mm) / speed / STEP_S - struck.enters_s / STEP_S
    for (const near of [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5]) {
      const course = stepControl(given, pass, stepped, Math.round(begins) + near - lead, !byTimer)
      const off = 4 + OFF_STEPS * STEP_S * Math.max(given.closeAccel, given.decel) + 0.002 * speed
      if (course.kind === 'struck' && Math.abs(course.relativeSpeed - struck.relativeSpeed) <= off) return 'again'
    }
  }
  // where the last step decides whether there is a contact at all, or how fast it is
  const { run, way } = struck
  return way > given.clear - 2 || way < 2 || run.restWay < 2 || isOnEdge(given, struck.stop_s, stepped) ? 'tight' : 'never'
}

function isOnEdge({ response_s }: SteppedCase, stop_s: number | undefined, { warning }: SteppedCycle): boolean {
  return stop_s !== undefined && (stop_s < OFF_STEPS * STEP_S || Math.abs(stop_s - response_s) < OFF_STEPS * STEP_S || warning < OFF_STEPS)
}
