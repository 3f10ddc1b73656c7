import type { ControlInput, WiredSensor, Wiring } from '../model/wiring.ts'
import { type Fault, sameAs, singleFaults } from './faults.ts'
import { type FaultyNetwork, type Settling, settle, voltBetween, type WiringNetwork, wiringNetwork, withFaults } from './network.ts'

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
  /** Those whose body goes unheeded, or that open nothing, in the order of the wiring. */
  readonly sensors: readonly string[]
  /** Until a test finds it, at the latest. */
  readonly within_s?: number
  /** Nobody notices it: no effect, no test, and no disagreement of channels when somebody comes. Then a second fault meets it. */
  readonly isHidden: boolean
}
export type JudgedEffect = Omit<FaultEffect, 'fault'>

/** What the control takes an input to say; `either` where its voltage lies between two bands, or changes from one to another again and again. */
export type Belief = 'clear' | 'seen' | 'fault' | 'either'

/** Of every input of a control, in its order. */
export function beliefsOf(network: FaultyNetwork, settling: Settling): readonly Belief[] {
  const said = settling.isStable ? [settling] : settling.chased
  return network.inputs.map(({ input, plus, minus }) => {
    const beliefs = said.map((each) => meant(input, voltBetween(network, each, plus, minus)))
    return beliefs.every((belief) => belief === beliefs[0]) ? (beliefs[0] ?? 'either') : 'either'
  })
}

function meant({ bands }: ControlInput, volt: number | undefined): Belief {
  if (volt === undefined) return 'either'
  for (const { from_V, to_V, means } of bands) if (from_V <= volt && volt <= to_V) return means
  return 'either'
}

/** The effect of every single fault, or of every one on top of some that are there already. */
export function faultEffects(wiring: Wiring, hidden: readonly Fault[] = []): readonly FaultEffect[] {
  return effectsInTurn(wiringNetwork(wiring), singleFaults(wiring), hidden)
}

export function effectOf(wiring: Wiring, faults: readonly Fault[]): JudgedEffect {
  return effectIn(wiringNetwork(wiring), faults)
}

/** The effects of some faults, each on top of those that are there already, in their order. */
export function effectsInTurn(network: WiringNetwork, faults: readonly Fault[], hidden: readonly Fault[] = []): readonly FaultEffect[] {
  const judge = effectJudge(network, hidden)
  return faults.map((fault) => ({ fault, ...judge(fault) }))
}

/** Judges one fault after the other. Shorts that join the same two terminals are one: a cable has far more pairs of cores than of terminals. */
export function effectJudge(network: WiringNetwork, hidden: readonly Fault[] = []): (fault: Fault) => JudgedEffect {
  const known = new Map<string, JudgedEffect>()
  return (fault) => {
    const same = sameAs(network.wiring, fault)
    const judged = known.get(same) ?? effectIn(network, [...hidden, fault])
    known.set(same, judged)
    return judged
  }
}

/** Judged at the least and the largest supply; the worse counts, for every sensor that goes unheeded at either. */
export function effectIn(network: WiringNetwork, faults: readonly Fault[]): JudgedEffect {
  const faulty = withFaults(network, faults)
  const { least_V, largest_V } = network.wiring.supply
  const atLeast = effectAt(faulty, least_V)
  const isSagging = faults.some(({ kind }) => kind === 'supply-low')
  return isSagging || least_V === largest_V ? atLeast : worseOf(atLeast, effectAt(faulty, largest_V), network.wiring)
}

function worseOf(a: JudgedEffect, b: JudgedEffect, { sensors }: Wiring): JudgedEffect {
  const [worse, other] = EFFECTS.indexOf(b.effect) < EFFECTS.indexOf(a.effect) ? [b, a] : [a, b]
  const areAlike = worse.effect === other.effect || (isUnheeded(worse) && isUnheeded(other))
  if (!areAlike) return worse
  const named = sensors.map(({ id }) => id).filter((id) => worse.sensors.includes(id) || other.sensors.includes(id))
  const within_s = Math.max(worse.within_s ?? 0, other.within_s ?? 0)
  return { ...worse, sensors: named, ...(worse.within_s === undefined ? {} : { within_s }) }
}

const isUnheeded = ({ effect }: JudgedEffect) => effect === 'hidden-and-dangerous' || effect === 'found-by-test'

const NOBODY: ReadonlySet<string> = new Set()

/**
 * With a body before a sensor the door is safe where some protecting input says "seen" or "fault" for sure; what may be either counts as "clear"
 * there, and as "seen" where nobody stands.
 */
function effectAt(faulty: FaultyNetwork, supply_V: number): JudgedEffect {
  const { sensors, control } = faulty.wiring
  const { inputs, test } = control
  const says = (seenBy: ReadonlySet<string>, asking = false) => beliefsOf(faulty, settle(faulty, { seenBy, asking, supply_V }))
  const missesTest = () => test !== undefined && missed(inputs, says(NOBODY, true), test.expects)
  const whenSeen = sensors.map((sensor) => ({ sensor, said: lazily(() => says(new Set([sensor.id]))) }))
  const unheeded = whenSeen.flatMap(({ sensor, said }) => (has(sensor, 'presence') && !stops(inputs, said()) ? [sensor] : []))
  if (unheeded.length > 0) {
    const named = unheeded.map(({ id }) => id)
    const [fault, ...more] = faulty.faults
    const watched_s = unheeded.flatMap((sensor) => (more.length === 0 ? (ownWatch(sensor, fault) ?? []) : []))
    const [own_s = 0] = watched_s
    if (watched_s.length === unheeded.length) return { effect: 'found-by-test', sensors: named, within_s: own_s, isHidden: false }
    return test?.whenFailed === 'does-not-close' && missesTest()
      ? { effect: 'found-by-test', sensors: named, within_s: Math.max(test.every_s, own_s), isHidden: false }
      : { effect: 'hidden-and-dangerous', sensors: named, isHidden: true }
  }
  const resting = says(NOBODY)
  const rests = (mayBe: (input: ControlInput, belief: Belief | undefined) => boolean) => inputs.some((input, i) => mayBe(input, resting[i]))
  if (disagrees(inputs, resting) || rests((input, belief) => protects(input) && belief === 'fault'))
    return { effect: 'stops-the-door', sensors: [], isHidden: false }
  if (rests((_, belief) => belief !== 'clear')) return { effect: 'keeps-from-closing', sensors: [], isHidden: false }
  const opensNothing = whenSeen.filter(
    ({ sensor, said }) => has(sensor, 'opening') && !inputs.some(({ acts }, i) => acts === 'open' && said()[i] === 'seen'),
  )
  if (opensNothing.length > 0 && inputs.some(({ acts }) => acts === 'open'))
    return { effect: 'fails-to-open', sensors: opensNothing.map(({ sensor }) => sensor.id), isHidden: false }
  if (test?.whenFailed === 'does-not-close' && missesTest()) return { effect: 'keeps-from-closing', sensors: [], isHidden: false }
  return { effect: 'no-effect', sensors: [], isHidden: !whenSeen.some(({ said }) => disagrees(inputs, said())) }
}

function lazily<T>(compute: () => T): () => T {
  let known: { readonly value: T } | undefined
  return () => {
    known ??= { value: compute() }
    return known.value
  }
}

const has = ({ outputs }: WiredSensor, use: 'presence' | 'opening') => outputs.some(({ acts }) => acts === use)
const protects = ({ acts }: ControlInput) => acts === 'stop' || acts === 'reverse'

function stops(inputs: readonly ControlInput[], said: readonly Belief[]): boolean {
  return disagrees(inputs, said) || inputs.some((input, i) => protects(input) && (said[i] === 'seen' || said[i] === 'fault'))
}

/** Two channels that say different things for sure. */
function disagrees(inputs: readonly ControlInput[], said: readonly Belief[]): boolean {
  return inputs.some(({ pairedWith }, i) => {
    if (pairedWith === undefined) return false
    const other = said[inputs.findIndex(({ id }) => id === pairedWith.id)]
    return other !== undefined && said[i] !== 'either' && other !== 'either' && said[i] !== other
  })
}

/** An input that was to say "seen" says "clear", for sure: the control knows that the test failed. */
function missed(inputs: readonly ControlInput[], said: readonly Belief[], expects: readonly string[]): boolean {
  return inputs.some(({ id }, i) => said[i] === 'clear' && expects.includes(id))
}

/** In what time a sensor tells of a fault that is its own; undefined where it is another's, or nobody said. */
function ownWatch({ id, ownFaults_s }: WiredSensor, fault: Fault | undefined): number | undefined {
  return fault?.kind === 'sensor-stuck' && fault.sensor === id ? ownFaults_s : undefined
}
