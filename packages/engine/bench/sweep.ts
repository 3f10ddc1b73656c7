import { mayBegin, type SteppedCase, stepPass, stepPhase } from '../cases/stepped-leaf.ts'
import type { Door } from '../src/model/door.ts'

const STEP_S = 1e-3
/** What the arrival may be off by, for the edge at its 0.5 m/s to be off by 1 mm. */
const ARRIVAL_S = 2e-3
const TIMED_PHASES = 100

/**
 * What a plain sweep of 1 ms would take for the bench's traffic to the same 1 mm: every phase 1 ms apart, every pace at which arrivals differ by 2 ms,
 * a body that goes through. It cannot be run whole: some phases of one passage at its middle pace are timed, and their time is multiplied by
 * the number of phases, paces and passages. Kinder than fair: where bodies are visible is given to it, and it looks for no places to stop.
 */
export function sweepOfAll(door: Door, passages: number): { readonly took_ms: number; readonly said: string } {
  const { lanes = [], drive } = door
  const { slowest_mm_per_s: slowest = 0, fastest_mm_per_s: fastest = 0 } = lanes[0] ?? {}
  const { closeSpeed_mm_per_s: closeSpeed = 0, closeAccel_mm_per_s2: closeAccel = 0 } = drive ?? {}
  const given: SteppedCase = {
    way: door.opening.height_mm,
    from: door.opening.height_mm,
    closeSpeed,
    closeAccel,
    openSpeed: drive?.openSpeed_mm_per_s ?? 0,
    openAccel: drive?.openAccel_mm_per_s2 ?? 0,
    delay_s: drive?.stopDelay_s ?? 0,
    decel: drive?.stopDecel_mm_per_s2 ?? 0,
    dwell_s: drive?.reverseDelay_s,
    clear: 1500,
    enter_mm: -142.5,
    leave_mm: 142.5,
    visible: [[-7000, 270]],
    response_s: 0.08,
    hold_s: 0.3,
  }
  const paces = ((7000 / slowest - 7000 / fastest) / ARRIVAL_S) | 0
  const middle = 2 / (1 / slowest + 1 / fastest)
  const start = performance.now()
  const pass = stepPass(given, { speed: middle, stopsAt_mm: undefined }, STEP_S)
  const lasts = Math.ceil((given.way / closeSpeed + closeSpeed / closeAccel) / STEP_S)
  const phases = pass.steps + lasts
  const every = Math.floor(phases / TIMED_PHASES)
  let stepped = 0
  for (let k = -lasts; k < pass.steps; k += every) {
    stepped++
    if (mayBegin(pass, k)) stepPhase(given, pass, k)
  }
  const took_ms = ((performance.now() - start) / stepped) * phases * paces * passages
  return { took_ms, said: `${stepped} of ${phases} phases timed, times ${paces} paces and ${passages} passages` }
}
