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
}

export const STEP_S = 1e-4
const STANDS_S = 7

/** Body and output over time, stepped once for all phases. */
export interface SteppedPass {
  readonly body: SteppedBody
  readonly start_mm: number
  readonly steps: number
  readonly forbids: Uint8Array
}

export function stepPass(given: SteppedCase, body: SteppedBody): SteppedPass {
  const start_mm = Math.min(given.enter_mm, ...given.visible.map(([from]) => from)) - 10
  const through_s = (given.leave_mm + 1 - start_mm) / body.speed
  const steps = Math.ceil((body.stopsAt_mm === undefined ? through_s : through_s + STANDS_S) / STEP_S)
  const forbids = new Uint8Array(steps + 1)
  let seenFor = -1
  let heldUntil = -1
  let isOn = false
  const response = Math.round(given.response_s / STEP_S)
  const hold = Math.round(given.hold_s / STEP_S)
  for (let k = 0; k <= steps; k++) {
    const place = placeAt(start_mm, body, k)
    const isSeen = given.visible.some(([from, to]) => from <= place && place <= to)
    seenFor = isSeen ? seenFor + 1 : -1
    if (isSeen && (isOn || seenFor >= response)) {
      isOn = true
      heldUntil = k + hold
    } else if (k > heldUntil) isOn = false
    forbids[k] = isOn ? 1 : 0
  }
  return { body, start_mm, steps, forbids }
}

function placeAt(start_mm: number, { speed, stopsAt_mm = Infinity }: SteppedBody, k: number): number {
  return Math.min(stopsAt_mm, start_mm + speed * k * STEP_S)
}

/** The closing may begin at this step: the output does not forbid it, or begins to at this instant. Before step 0 nobody is seen. */
export function mayBegin({ forbids }: SteppedPass, k: number): boolean {
  return k < 0 || k >= forbids.length || forbids[k] === 0 || k === 0 || forbids[k - 1] === 0
}

/** One closing that begins at step `first`, which may lie before the body comes. */
export function stepPhase(given: SteppedCase, pass: SteppedPass, first: number): SteppedPhase {
  const { closeSpeed, closeAccel, openSpeed, openAccel, decel, clear, enter_mm, leave_mm } = given
  const delay = Math.round(given.delay_s / STEP_S)
  const dwell = given.dwell_s === undefined ? Infinity : Math.round(given.dwell_s / STEP_S)
  let way = given.from
  let speed = 0
  let phase: 'closing' | 'braking' | 'rest' | 'opening' = 'closing'
  let brakesAt = Infinity
  let opensAt = Infinity
  let gap = Infinity
  let isShut = false
  for (let k = first; k <= pass.steps; k++) {
    const place = placeAt(pass.start_mm, pass.body, k)
    if (k > 0 && place > enter_mm && place < leave_mm) {
      gap = Math.min(gap, way - clear)
      if (way < clear - 1e-6) {
        const isStanding = place === pass.body.stopsAt_mm
        const bodySpeed = isStanding ? 0 : pass.body.speed
        const kind = (phase === 'closing' || phase === 'braking') && speed > 0 ? 'struck' : 'walked into'
        return { kind, relativeSpeed: Math.sqrt(bodySpeed * bodySpeed + speed * speed), gap, isShut: false }
      }
    }
    if (brakesAt === Infinity && phase === 'closing' && k >= 0 && pass.forbids[k] === 1) brakesAt = k + delay
    if (phase === 'closing' && k >= brakesAt) phase = 'braking'
    if (phase === 'closing') {
      const slows = (speed * speed) / (2 * closeAccel) >= way
      const next = slows ? Math.max(0, speed - closeAccel * STEP_S) : Math.min(closeSpeed, speed + closeAccel * STEP_S)
      way -= ((speed + next) / 2) * STEP_S
      speed = next
      isShut = way <= 0 || (slows && speed <= 0)
      if (isShut) break
    } else if (phase === 'braking') {
      const next = Math.max(0, speed - decel * STEP_S)
      way -= ((speed + next) / 2) * STEP_S
      speed = next
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
      const next = slows ? Math.max(0, speed - openAccel * STEP_S) : Math.min(openSpeed, speed + openAccel * STEP_S)
      way += ((speed + next) / 2) * STEP_S
      speed = next
      if (way >= given.way || (slows && speed <= 0)) break // open
    }
  }
  return { kind: 'clear', relativeSpeed: 0, gap, isShut }
}
