import { mayBegin, placeAt, type SteppedCase, type SteppedPass, stepPhase } from './stepped-leaf.ts'

/**
 * The control around the closing leaf of `stepped-leaf.ts`, straight from docs/method.md, "Around a closing": hold-open time, warning, attempts. A leaf that
 * has just opened is followed until the body is gone. Shares no code with the engine.
 */
export interface SteppedCycle {
  readonly hold: number // steps
  readonly holdFrom: 'opened' | 'clear'
  readonly warning: number // steps
  readonly inWarning: 'cancels' | 'waits'
  readonly attempts: number
  readonly pause: number // steps
  readonly whileHeld: 'waits' | 'starts'
  /** Way to which the last reversal opens. */
  readonly lastOpensTo: number
}

export interface SteppedCourse {
  readonly kind: 'clear' | 'struck' | 'walked into'
  readonly relativeSpeed: number
  readonly gap: number
  /** Steps at which the leaf began to close. */
  readonly begins: readonly number[]
}

/** @param commanded the first closing by hand at `opened`, not by the timer; whether an output then forbids it is not asked */
export function stepControl(given: SteppedCase, pass: SteppedPass, cycle: SteppedCycle, opened: number, commanded: boolean): SteppedCourse {
  const begins: number[] = []
  let gap = Infinity
  let from = opened
  let done = 0
  for (;;) {
    const isFirst = done === 0
    const first = beginOf(
      pass,
      cycle,
      from,
      isFirst ? cycle.hold : cycle.pause,
      isFirst && commanded,
      !isFirst && cycle.whileHeld === 'starts',
    )
    const resting = restAt(given, pass, from, first ?? pass.steps, given.way)
    if (resting) return { ...resting, gap: Math.min(gap, resting.gap), begins }
    if (first === undefined) return { kind: 'clear', relativeSpeed: 0, gap, begins }
    begins.push(first)
    const isLast = done === cycle.attempts
    const phase = stepPhase({ ...given, way: isLast ? cycle.lastOpensTo : given.way }, pass, first)
    gap = Math.min(gap, phase.gap)
    if (phase.kind !== 'clear') return { kind: phase.kind, relativeSpeed: phase.relativeSpeed, gap, begins }
    if (phase.isShut || phase.endsAt >= pass.steps) return { kind: 'clear', relativeSpeed: 0, gap, begins }
    if (isLast) {
      const stays = restAt(given, pass, phase.endsAt, pass.steps, phase.endsWay)
      return stays ? { ...stays, gap: Math.min(gap, stays.gap), begins } : { kind: 'clear', relativeSpeed: 0, gap, begins }
    }
    from = phase.endsAt
    done++
  }
}

/** When the leaf begins to close next; undefined if not before the body is gone. */
function beginOf(
  pass: SteppedPass,
  { holdFrom, warning, inWarning }: SteppedCycle,
  opened: number,
  hold: number,
  byHand: boolean,
  whileHeld: boolean,
): number | undefined {
  const forbidden = (k: number) => k >= 0 && k < pass.forbids.length && pass.forbids[k] === 1
  let clearSince = opened
  let k = opened
  let hands = byHand ? opened : undefined
  while (k <= pass.steps) {
    // wait for a command
    if (hands === undefined) {
      if (forbidden(k) && holdFrom === 'clear' && !whileHeld) clearSince = k + 1
      const isDue = k - clearSince >= hold
      if (!isDue || !(whileHeld || mayBegin(pass, k))) {
        k++
        continue
      }
    }
    hands = undefined
    // warn
    const moves = k + warning
    let off = -1
    if (inWarning === 'cancels') for (let w = k; w < moves && off < 0; w++) if (forbidden(w)) off = w
    if (off < 0 && (whileHeld || mayBegin(pass, moves))) return moves
    k = off < 0 ? moves + 1 : off + 1
    if (holdFrom === 'clear') clearSince = k
  }
  return undefined
}

/** A leaf that rests while the body may walk into it. */
function restAt(given: SteppedCase, pass: SteppedPass, from: number, to: number, way: number) {
  if (way >= given.clear - 1e-6) return undefined
  for (let k = Math.max(1, from); k <= to; k++) {
    const place = placeAt(pass.start_mm, pass.body, k * pass.step_s)
    if (place > given.enter_mm && place < given.leave_mm) {
      const stands = place === pass.body.stopsAt_mm
      return { kind: 'walked into', relativeSpeed: stands ? 0 : pass.body.speed, gap: way - given.clear } as const
    }
  }
  return undefined
}
