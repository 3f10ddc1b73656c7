import type { ControlInput, Wiring } from '../model/wiring.ts'
import { type Fault, singleFaults } from './faults.ts'
import { type Settled, settledNetwork } from './network.ts'

/** What a fault does, worst first. */
export const EFFECTS = ['hidden-and-dangerous', 'found-by-test', 'fails-to-open', 'keeps-from-closing', 'no-effect'] as const
export type Effect = (typeof EFFECTS)[number]

export interface FaultEffect {
  readonly fault: Fault
  readonly effect: Effect
  /** The sensor whose body goes unheeded, or that opens nothing. */
  readonly sensor?: string
  /** Until the test finds it, at the latest. */
  readonly within_s?: number
}

/** What the control takes an input to say; `either` where its voltage lies between two bands, or nothing settles. */
export type Belief = 'clear' | 'seen' | 'fault' | 'either'

export function believed(input: ControlInput, settled: Settled): Belief {
  const volt = settled.between(input.plus, input.minus)
  if (!settled.isStable || volt === undefined) return 'either'
  return input.bands.find(({ from_V, to_V }) => from_V <= volt && volt <= to_V)?.means ?? 'either'
}

/** The effect of every single fault: docs/method.md, Wiring. */
export function faultEffects(wiring: Wiring): readonly FaultEffect[] {
  return singleFaults(wiring).map((fault) => ({ fault, ...effectOf(wiring, fault) }))
}

/**
 * Judged at the least and the largest supply; the worse counts. With a body before a sensor the door is safe where some stop input says "seen" or
 * "fault" for sure; what may be either counts as "clear" there, and as "seen" where nobody stands.
 */
export function effectOf(wiring: Wiring, fault: Fault | undefined): Omit<FaultEffect, 'fault'> {
  const { supply, sensors, control } = wiring
  const effects = [supply.least_V, supply.largest_V].map((supply_V): Omit<FaultEffect, 'fault'> => {
    const says = (acts: ControlInput['acts'], seenBy: readonly string[], asking = false) => {
      const settled = settledNetwork(wiring, { seenBy: new Set(seenBy), asking, supply_V }, fault)
      return control.inputs.filter((input) => input.acts === acts).map((input) => ({ id: input.id, says: believed(input, settled) }))
    }
    const stops = (seen: ReturnType<typeof says>) => seen.some((each) => each.says === 'seen' || each.says === 'fault')
    const unheeded = sensors.find(({ id, outputs }) => outputs.some(({ acts }) => acts === 'presence') && !stops(says('stop', [id])))
    if (unheeded) {
      const { test } = control
      const asked = test && says('stop', [], true)
      const isFound = asked && test.expects.some((id) => asked.find((each) => each.id === id)?.says === 'clear')
      return isFound
        ? { effect: 'found-by-test', sensor: unheeded.id, within_s: test.every_s }
        : { effect: 'hidden-and-dangerous', sensor: unheeded.id }
    }
    const opensNothing = sensors.find(
      ({ id, outputs }) => outputs.some(({ acts }) => acts === 'opening') && says('open', [id]).every((each) => each.says !== 'seen'),
    )
    if (opensNothing && control.inputs.some(({ acts }) => acts === 'open')) return { effect: 'fails-to-open', sensor: opensNothing.id }
    if (says('stop', []).some((each) => each.says !== 'clear')) return { effect: 'keeps-from-closing' }
    return { effect: 'no-effect' }
  })
  return effects.reduce((a, b) => (EFFECTS.indexOf(b.effect) < EFFECTS.indexOf(a.effect) ? b : a))
}
