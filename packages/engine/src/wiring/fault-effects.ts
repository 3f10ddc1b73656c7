import type { ControlInput, Wiring } from '../model/wiring.ts'
import { type Fault, singleFaults } from './faults.ts'
import { type FaultyNetwork, type Settled, settledNetwork, type WiringNetwork, wiringNetwork, withFaults } from './network.ts'

/** What a fault does, worst first: docs/method.md, Wiring. */
export const EFFECTS = [
  'hidden-and-dangerous',
  'found-by-test',
  'stops-the-door',
  'keeps-from-closing',
  'fails-to-open',
  'no-effect',
] as const
export type Effect = (typeof EFFECTS)[number]

export interface FaultEffect {
  readonly fault: Fault
  readonly effect: Effect
  /** The sensor whose body goes unheeded, or that opens nothing. */
  readonly sensor?: string
  /** Until a test finds it, at the latest. */
  readonly within_s?: number
  /** Nobody notices it: no effect, no test, and no disagreement of channels when somebody comes. Then a second fault meets it. */
  readonly isHidden: boolean
}
type Judged = Omit<FaultEffect, 'fault'>

/** What the control takes an input to say; `either` where its voltage lies between two bands, or nothing settles. */
export type Belief = 'clear' | 'seen' | 'fault' | 'either'

export function believed(input: ControlInput, settled: Settled): Belief {
  const volt = settled.between(input.plus, input.minus)
  if (!settled.isStable || volt === undefined) return 'either'
  return input.bands.find(({ from_V, to_V }) => from_V <= volt && volt <= to_V)?.means ?? 'either'
}

/** The effect of every single fault, or of every one on top of some that are there already. */
export function faultEffects(wiring: Wiring, hidden: readonly Fault[] = []): readonly FaultEffect[] {
  const network = wiringNetwork(wiring)
  return singleFaults(wiring).map((fault) => ({ fault, ...effectIn(network, [...hidden, fault]) }))
}

export function effectOf(wiring: Wiring, faults: readonly Fault[]): Judged {
  return effectIn(wiringNetwork(wiring), faults)
}

/** Judged at the least and the largest supply; the worse counts. */
function effectIn(network: WiringNetwork, faults: readonly Fault[]): Judged {
  const faulty = withFaults(network, faults)
  const { least_V, largest_V } = network.wiring.supply
  const isSagging = faults.some(({ kind }) => kind === 'supply-low')
  const effects = (isSagging ? [least_V] : [least_V, largest_V]).map((supply_V) => effectAt(faulty, supply_V))
  return effects.reduce((a, b) => (EFFECTS.indexOf(b.effect) < EFFECTS.indexOf(a.effect) ? b : a))
}

/**
 * With a body before a sensor the door is safe where some protecting input says "seen" or "fault" for sure; what may be either counts as "clear"
 * there, and as "seen" where nobody stands.
 */
function effectAt(faulty: FaultyNetwork, supply_V: number): Judged {
  const { sensors, control } = faulty.wiring
  const says = (seenBy: readonly string[], asking = false): Says => {
    const settled = settledNetwork(faulty, { seenBy: new Set(seenBy), asking, supply_V })
    return new Map(control.inputs.map((input) => [input, believed(input, settled)]))
  }
  const resting = says([])
  const whenSeen = sensors.map((sensor) => ({ sensor, said: says([sensor.id]) }))
  const isNoticed = whenSeen.some(({ said }) => disagrees(said))
  const unheeded = whenSeen.find(({ sensor, said }) => sensor.outputs.some(({ acts }) => acts === 'presence') && !stops(said))
  if (unheeded) {
    const { id } = unheeded.sensor
    const own_s = faulty.faults.length === 1 ? ownWatch(unheeded.sensor.ownFaults_s, id, faulty.faults[0]) : undefined
    if (own_s !== undefined) return { effect: 'found-by-test', sensor: id, within_s: own_s, isHidden: false }
    const { test } = control
    const isFound = test?.whenFailed === 'does-not-close' && missed(says([], true), test.expects)
    return isFound
      ? { effect: 'found-by-test', sensor: id, within_s: test.every_s, isHidden: false }
      : { effect: 'hidden-and-dangerous', sensor: id, isHidden: true }
  }
  const protecting = [...resting].filter(([input]) => protects(input))
  if (disagrees(resting) || protecting.some(([, belief]) => belief === 'fault')) return { effect: 'stops-the-door', isHidden: false }
  if (protecting.some(([, belief]) => belief !== 'clear') || [...resting].some(([input, belief]) => !protects(input) && belief !== 'clear'))
    return { effect: 'keeps-from-closing', isHidden: false }
  const opens = control.inputs.some(({ acts }) => acts === 'open')
  const opensNothing = whenSeen.find(
    ({ sensor, said }) =>
      sensor.outputs.some(({ acts }) => acts === 'opening') &&
      ![...said].some(([input, belief]) => input.acts === 'open' && belief === 'seen'),
  )
  if (opens && opensNothing) return { effect: 'fails-to-open', sensor: opensNothing.sensor.id, isHidden: false }
  const { test } = control
  const isFound = test !== undefined && missed(says([], true), test.expects)
  return { effect: isFound ? 'keeps-from-closing' : 'no-effect', isHidden: !isFound && !isNoticed }
}

type Says = ReadonlyMap<ControlInput, Belief>

const protects = ({ acts }: ControlInput) => acts === 'stop' || acts === 'reverse'

function stops(said: Says): boolean {
  return disagrees(said) || [...said].some(([input, belief]) => protects(input) && (belief === 'seen' || belief === 'fault'))
}

/** Two channels that say different things for sure. */
function disagrees(said: Says): boolean {
  return [...said].some(([{ pairedWith }, belief]) => {
    const other = pairedWith && [...said].find(([{ id }]) => id === pairedWith.id)?.[1]
    return other !== undefined && belief !== 'either' && other !== 'either' && belief !== other
  })
}

/** An input that was to say "seen" says "clear", for sure: the control knows that the test failed. */
function missed(said: Says, expects: readonly string[]): boolean {
  return [...said].some(([{ id }, belief]) => expects.includes(id) && belief === 'clear')
}

function ownWatch(ownFaults_s: number | undefined, id: string, fault: Fault | undefined): number | undefined {
  return fault?.kind === 'sensor-stuck' && fault.sensor === id ? ownFaults_s : undefined
}
