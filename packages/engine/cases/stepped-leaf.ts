import { goneOn, type SteppedCurve, type SteppedMotion, steppedMotion } from './stepped-motion.ts'

/**
 * The slow way to what `src/passing` answers: leaf, body and output are stepped through time by 0.1 ms, straight from docs/method.md, section 4, and
 * every phase is a run of its own. Shares no code with the engine.
 */
export interface SteppedCase {
  readonly way: number // fully open, mm
  readonly from: number // where the closing begins
  readonly closeSpeed: number
  readonly closeAccel: number
  readonly openSpeed: number
  readonly openAccel: number
  readonly delay_s: number
  readonly decel: number
  /** Undefined where the leaf stays after a stop. */
  readonly dwell_s: number | undefined
  readonly clear: number
  readonly enter_mm: number
  readonly leave_mm: number
  readonly visible: readonly (readonly [from_mm: number, to_mm: number])[]
  readonly response_s: number
  readonly hold_s: number
  /** How fast the acceleration of closing sets in; at once if undefined. */
  readonly closeJerk?: number | undefined
  readonly stoppingCurve?: SteppedCurve | undefined
}

export interface SteppedBody {
  readonly speed: number
  /** Where it stops and stands; undefined if it goes through. */
  readonly stopsAt_mm: number | undefined
}

export interface SteppedPhase {
  readonly kind: 'clear' | 'struck' | 'walked into'
  readonly relativeSpeed: number
  readonly gap: number
  readonly isShut: boolean
  /** Step at which it is met, shut or open again; the last one looked at where it comes to none of these. */
  readonly endsAt: number
  /** Way to go then. */
  readonly endsWay: number
}

export const STEP_S = 1e-4 // all times of a case are whole steps
const STANDS_S = 7

/** Body and output over time, stepped once for all phases. */
export interface SteppedPass {
  readonly step_s: number
  /** Where the jerk is limited: how far the leaf has come, and how fast it is, so many steps after it began to close. */
  readonly closing: SteppedMotion | undefined
  readonly body: SteppedBody
  readonly start_mm: number
  readonly steps: number
  readonly forbids: Uint8Array
  /** Where what stops a closing depends on its leaf, too: whether it is stopped at this step with this way to go. */
  readonly stops?: (k: number, way: number) => boolean
}

/** @param seen where the output sees the body, if not everywhere where it is visible */
export function stepPass(given: SteppedCase, body: SteppedBody, step_s = STEP_S, seen = given.visible): SteppedPass {
  const start_mm = Math.min(given.enter_mm, ...given.visible.map(([from]) => from)) - 10
  const through_s = (given.leave_mm + 1 - start_mm) / body.speed
  const steps = Math.ceil((body.stopsAt_mm === undefined ? through_s : through_s + STANDS_S) / step_s)
  const forbids = new Uint8Array(steps + 1)
  let seenFor = -1
  let heldUntil = -1
  let isOn = false
  const response = Math.round(given.response_s / step_s)
  const hold = Math.round(given.hold_s / step_s)
  for (let k = 0; k <= steps; k++) {
    const place = placeAt(start_mm, body, k * step_s)
    const isSeen = seen.some(([from, to]) => from <= place && place <= to)
    seenFor = isSeen ? seenFor + 1 : -1
    if (isSeen && (isOn || seenFor >= response)) {
      isOn = true
      heldUntil = k + hold
    } else if (k > heldUntil) isOn = false
    forbids[k] = isOn ? 1 : 0
  }
  const closing = given.closeJerk === undefined ? undefined : steppedMotion(given, given.closeJerk, step_s)
  return { step_s, closing, body, start_mm, steps, forbids }
}

export function placeAt(start_mm: number, { speed, stopsAt_mm = Infinity }: SteppedBody, t_s: number): number {
  return Math.min(stopsAt_mm, start_mm + speed * t_s)
}

/** The closing may begin at this step: the output does not forbid it, or begins to at this instant. Before step 0 nobody is seen. */
export function mayBegin({ forbids }: SteppedPass, k: number): boolean {
  return k < 0 || k >= forbids.length || forbids[k] === 0 || k === 0 || forbids[k - 1] === 0
}

function isStopped({ forbids, stops }: SteppedPass, k: number, way: number): boolean {
  return forbids[k] === 1 && (stops === undefined || stops(k, way))
}

/** One closing that begins at step `first`, which may lie before the body comes. */
export function stepPhase(given: SteppedCase, pass: SteppedPass, first: number): SteppedPhase {
  const { closeSpeed, closeAccel, openSpeed, openAccel, decel, clear, enter_mm, leave_mm, stoppingCurve } = given
  const { step_s, closing } = pass
  const delay = stoppingCurve ? 0 : Math.round(given.delay_s / step_s)
  const dwell = given.dwell_s === undefined ? Infinity : Math.round(given.dwell_s / step_s)
  let way = given.from
  let speed = 0
  let phase: 'closing' | 'braking' | 'rest' | 'opening' = 'closing'
  let brakesAt = Infinity
  let brakeWay = Infinity
  let opensAt = Infinity
  let gap = Infinity
  let isShut = false
  let wasIn = false
  let lastWay = way
  let k = first
  for (; k <= pass.steps; k++) {
    const place = placeAt(pass.start_mm, pass.body, k * step_s)
    if (k > 0 && place > enter_mm && place < leave_mm) {
      gap = Math.min(gap, way - clear)
      if (way < clear - 1e-6) {
        const isStanding = place === pass.body.stopsAt_mm
        const bodySpeed = isStanding ? 0 : pass.body.speed
        // whoever was in the plane a step ago was met by a leaf that moved, even if that step was its last
        const leafSpeed = wasIn ? Math.max(speed, (lastWay - way) / step_s) : speed
        const kind = (phase === 'closing' || phase === 'braking' || wasIn) && leafSpeed > 0 ? 'struck' : 'walked into'
        return {
          kind,
          relativeSpeed: Math.sqrt(bodySpeed * bodySpeed + leafSpeed * leafSpeed),
          gap,
          isShut: false,
          endsAt: k,
          endsWay: way,
        }
      }
      wasIn = true
    }
    lastWay = way
    if (brakesAt === Infinity && phase === 'closing' && k >= 0 && isStopped(pass, k, way)) brakesAt = k + delay
    if (phase === 'closing' && k >= brakesAt) {
      phase = 'braking'
      brakeWay = way
    }
    if (phase === 'closing' && closing) {
      const n = k + 1 - first
      way = given.from - (closing.moved[n] ?? given.from)
      isShut = n >= closing.moved.length - 1 || way <= 0 // whole steps of even speed end a hair above or below the floor
      if (isShut) break
      speed = closing.speeds[n] as number
    } else if (phase === 'closing') {
      const slows = (speed * speed) / (2 * closeAccel) >= way
      const next = slows ? Math.max(0, speed - closeAccel * step_s) : Math.min(closeSpeed, speed + closeAccel * step_s)
      way -= ((speed + next) / 2) * step_s
      speed = next
      isShut = way <= 0 || (slows && speed <= 0)
      if (isShut) break
    } else if (phase === 'braking') {
      const before = way
      if (stoppingCurve) {
        way = brakeWay - goneOn(stoppingCurve, (k + 1 - brakesAt) * step_s)
        speed = (before - way) / step_s
        const [rests_s] = stoppingCurve[stoppingCurve.length - 1] as readonly [number, number]
        if ((k + 1 - brakesAt) * step_s >= rests_s - step_s / 2) speed = 0
      } else {
        const next = Math.max(0, speed - decel * step_s)
        way -= ((speed + next) / 2) * step_s
        speed = next
      }
      isShut = way <= 1e-6
      if (isShut) break
      if (speed === 0) {
        phase = 'rest'
        opensAt = k + 1 + dwell
      }
    } else if (phase === 'rest') {
      if (k >= opensAt) phase = 'opening'
    } else {
      const left = given.way - way
      const slows = (speed * speed) / (2 * openAccel) >= left
      const next = slows ? Math.max(0, speed - openAccel * step_s) : Math.min(openSpeed, speed + openAccel * step_s)
      way += ((speed + next) / 2) * step_s
      speed = next
      if (way >= given.way || (slows && speed <= 0)) break // open
    }
  }
  return { kind: 'clear', relativeSpeed: 0, gap, isShut, endsAt: k, endsWay: way }
}
