import {
  type ControlInput,
  SENSOR_STATES,
  type SensorState,
  type SensorSwitch,
  type Terminal,
  type TestInput,
  type WiredSensor,
  type Wiring,
} from '../src/model/wiring.ts'
import { type Join, type Plan, partsOf, planned, solved } from '../src/wiring/circuit.ts'
import { type Belief, EFFECTS, type FaultEffect, type JudgedEffect } from '../src/wiring/fault-effects.ts'
import { EARTH, type Fault, shortedBy, singleFaults } from '../src/wiring/faults.ts'

// The slow twin of `faultEffects`: every fault, supply and situation by itself, all of them in full, each solution planned and solved anew.

interface Situation {
  readonly seenBy: ReadonlySet<string>
  readonly asking: boolean
  readonly supply_V: number
}

/** A short, as a metal-to-metal touch. */
const SHORT_OHM = 0.01
/** What an ideal open contact leaks, so that its terminals have a voltage. */
const LEAK_OHM = 1e12
/** States that feed each other (a supply that gives way, an output that is watched) settle in a few rounds, or come round again. */
const MOST_ROUNDS = 64
const MOST_TOGETHER = 256

/** A wiring as a network of numbered nodes: what is joined is planned once, and a fault changes a few conductances of it. */
interface WiringNetwork {
  readonly wiring: Wiring
  readonly nodes: ReadonlyMap<Terminal, number>
  readonly plan: Plan
  /** With every switch open. */
  readonly siemens: Float64Array
  /** Which join a part is. */
  readonly joinOf: ReadonlyMap<Part, number>
  readonly sensors: readonly SensorNodes[]
}
/** What a join stands for: `core W1.3`, `switch scanner/presence`, `resistor R1`, `test`, `supply`. */
type Part = string

interface SensorNodes {
  readonly sensor: WiredSensor
  readonly plus: number
  readonly minus: number
  readonly switches: readonly { readonly each: SensorSwitch; readonly join: number; readonly at: number; readonly against: number }[]
  readonly test: { readonly input: TestInput; readonly plus: number; readonly minus: number } | undefined
}

/** The network of a wiring without a fault. */
function wiringNetwork(wiring: Wiring): WiringNetwork {
  const nodes = new Map<Terminal, number>()
  const node = (terminal: Terminal) => {
    const known = nodes.get(terminal) ?? nodes.size
    nodes.set(terminal, known)
    return known
  }
  const joins: Join[] = []
  const siemens: number[] = []
  const joinOf = new Map<Part, number>()
  const join = (a: Terminal, b: Terminal, ohm: number, part?: Part) => {
    if (part !== undefined) joinOf.set(part, joins.length)
    joins.push([node(a), node(b)])
    siemens.push(1 / ohm)
    return joins.length - 1
  }
  const { supply, sensors, control, cables, resistors } = wiring
  join(supply.minus, supply.plus, supply.inner_ohm, 'supply')
  for (const core of cables.flatMap(({ cores }) => cores)) join(core.from, core.to, core.ohm, `core ${core.id}`)
  for (const { id, from, to, ohm } of resistors) join(from, to, ohm, `resistor ${id}`)
  for (const { plus, minus, ohm, fedFrom } of control.inputs) {
    join(plus, minus, ohm)
    if (fedFrom) join(fedFrom.terminal, plus, fedFrom.ohm)
  }
  node(EARTH)
  const { test } = control
  if (test) join(test.from, test.to, openOhm(test), 'test')
  const sensorNodes = sensors.map((sensor): SensorNodes => {
    if (sensor.test) join(sensor.test.plus, sensor.test.minus, sensor.test.ohm)
    return {
      sensor,
      plus: node(sensor.power.plus),
      minus: node(sensor.power.minus),
      switches: sensor.outputs.map((each) => ({
        each,
        join: join(each.from, each.to, openOhm(each), `switch ${sensor.id}/${each.name}`),
        at: node(each.pulsed?.at ?? each.to),
        against: node(each.pulsed?.against ?? each.from),
      })),
      test: sensor.test && { input: sensor.test, plus: node(sensor.test.plus), minus: node(sensor.test.minus) },
    }
  })
  return { wiring, nodes, plan: planned(nodes.size, joins), siemens: Float64Array.from(siemens), joinOf, sensors: sensorNodes }
}

const openOhm = ({ off_ohm }: { readonly off_ohm: number }) => Math.min(off_ohm, LEAK_OHM)

/** A network with something wrong, or nothing. */
interface FaultyNetwork extends WiringNetwork {
  readonly faults: readonly Fault[]
  readonly partOf: Int32Array
}

/** @param faults at once; those of sensors and of what the supply gives are heeded when the network settles */
function withFaults(network: WiringNetwork, faults: readonly Fault[]): FaultyNetwork {
  const siemens = network.siemens.slice()
  const open = (part: Part) => {
    siemens[network.joinOf.get(part) ?? -1] = 0
  }
  for (const fault of faults) {
    if (fault.kind === 'core-open') open(`core ${fault.core}`)
    if (fault.kind === 'cable-off')
      for (const { id, cores } of network.wiring.cables) if (id === fault.cable) for (const core of cores) open(`core ${core.id}`)
    if (fault.kind === 'supply-lost') open('supply')
    if (fault.kind === 'resistor-open') open(`resistor ${fault.resistor}`)
    if (fault.kind === 'resistor-shorted') siemens[network.joinOf.get(`resistor ${fault.resistor}`) ?? -1] = 1 / SHORT_OHM
  }
  const shorts = faults.flatMap((fault): Join[] => {
    const [a, b] = shortedBy(network.wiring, fault) ?? []
    return a === undefined || b === undefined ? [] : [[network.nodes.get(a) ?? 0, network.nodes.get(b) ?? 0]]
  })
  if (shorts.length === 0) return { ...network, siemens, faults, partOf: partsOf(network.plan, siemens) }
  const plan = planned(network.plan.nodes, [...network.plan.joins, ...shorts])
  const all = Float64Array.of(...siemens, ...shorts.map(() => 1 / SHORT_OHM))
  return { ...network, plan, siemens: all, faults, partOf: partsOf(plan, all) }
}

interface Settled {
  /** Volts from one terminal to another, undefined where nothing connects them: several where the states chase each other. */
  readonly betweens: readonly ((plus: Terminal, minus: Terminal) => number | undefined)[]
}

/** Voltages, and what state each sensor is in: the states that a sensor is driven to by the voltages which they themselves give. */
function settledNetwork(network: FaultyNetwork, situation: Situation): Settled {
  const { nodes, partOf } = network
  const betweenAt = (volt: Float64Array) => (plus: Terminal, minus: Terminal) => {
    const [p, m] = [nodes.get(plus), nodes.get(minus)]
    return p === undefined || m === undefined || partOf[p] !== partOf[m] ? undefined : (volt[p] as number) - (volt[m] as number)
  }
  const next = (now: readonly SensorState[]) => {
    const volt = voltages(network, situation, now)
    return network.sensors.map((each, i) => {
      const state = stateOf(network, each, situation, volt, now[i] as SensorState)
      return state === 'clear' || state === 'seen' ? afterPulses(network, situation, now, i, state) : state
    })
  }
  // a question finds the sensors as they were: a line that holds itself up then goes on doing so
  let states = network.sensors.map(({ sensor }): SensorState => (situation.seenBy.has(sensor.id) ? 'seen' : 'clear'))
  const rounds: string[] = []
  while (!rounds.includes(states.join())) {
    if (rounds.length === MOST_ROUNDS) return { betweens: [() => undefined] }
    rounds.push(states.join())
    states = next(states)
  }
  const cycle = rounds.slice(rounds.indexOf(states.join())).map((round) => round.split(',') as SensorState[])
  if (cycle.length === 1) return { betweens: [betweenAt(voltages(network, situation, states))] }
  // everything that can be together, found one after the other until nothing is added
  const mayBe = new Set(cycle.flatMap((round) => round.map((state, i) => `${i} ${state}`)))
  const statesOf = (i: number) => SENSOR_STATES.filter((state) => mayBe.has(`${i} ${state}`))
  const together = () =>
    network.sensors.reduce<SensorState[][]>((all, _, i) => statesOf(i).flatMap((state) => all.map((each) => [...each, state])), [[]])
  for (let before = 0; before < mayBe.size; ) {
    before = mayBe.size
    for (const each of [...mayBe]) if (each.endsWith('unpowered')) mayBe.add(each.replace('unpowered', 'warming-up'))
    if (together().length > MOST_TOGETHER) return { betweens: [() => undefined] }
    for (const each of together()) for (const [i, state] of next(each).entries()) mayBe.add(`${i} ${state}`)
  }
  return { betweens: together().map((each) => betweenAt(voltages(network, situation, each))) }
}

/** @param interrupted a join that a test pulse opens for a moment */
function voltages(
  { wiring, plan, siemens: base, joinOf, sensors, faults }: FaultyNetwork,
  { asking, supply_V }: Situation,
  states: readonly SensorState[],
  interrupted?: number,
): Float64Array {
  const siemens = base.slice()
  const into = new Float64Array(plan.nodes)
  const flow = (node: number, ampere: number) => {
    into[node] = (into[node] as number) + ampere
  }
  for (const [i, { sensor, plus, minus, switches }] of sensors.entries()) {
    const state = states[i] as SensorState
    if (state !== 'unpowered') {
      flow(plus, -sensor.power.largest_A)
      flow(minus, sensor.power.largest_A)
    }
    for (const { each, join } of switches) {
      const isClosed = stuckAt(faults, sensor, each) ?? (each.closedIn.includes(state) && join !== interrupted)
      if (isClosed) siemens[join] = 1 / each.on_ohm
    }
  }
  const { test } = wiring.control
  const stuck = faults.find((fault) => fault.kind === 'test-stuck')
  const isClosed = test && (stuck ? stuck.at === 'closed' : (test.closedWhile === 'asking') === asking)
  if (isClosed) siemens[joinOf.get('test') ?? -1] = 1 / test.on_ohm
  const supply = joinOf.get('supply') ?? -1
  const [minus, plus] = plan.joins[supply] as Join
  const ampere = suppliedVolt(faults, supply_V) * (siemens[supply] as number)
  flow(plus, ampere)
  flow(minus, -ampere)
  return solved(plan, siemens, into)
}

function suppliedVolt(faults: readonly Fault[], supply_V: number): number {
  const low = faults.find((fault) => fault.kind === 'supply-low')
  const volt = low ? low.volt : supply_V
  return faults.some(({ kind }) => kind === 'supply-reversed') ? -volt : volt
}

/** Whether a contact is held closed or open by a fault; undefined where it does as it should. */
function stuckAt(faults: readonly Fault[], sensor: WiredSensor, each: SensorSwitch): boolean | undefined {
  for (const fault of faults) {
    if (fault.kind === 'switch-stuck' && fault.sensor === sensor.id && fault.switch === each.name) return fault.at === 'closed'
    if (fault.kind === 'output-stuck' && fault.sensor === sensor.id && fault.output === each.output) return each.closedIn.includes(fault.as)
  }
  return undefined
}

function difference({ partOf }: FaultyNetwork, volt: Float64Array, plus: number, minus: number): number | undefined {
  return partOf[plus] === partOf[minus] ? (volt[plus] as number) - (volt[minus] as number) : undefined
}

/** @param former what it was taken for when the voltages were computed */
function stateOf(
  network: FaultyNetwork,
  { sensor, plus, minus, test }: SensorNodes,
  { seenBy }: Situation,
  volt: Float64Array,
  former: SensorState,
): SensorState {
  const has_V = difference(network, volt, plus, minus)
  if (has_V === undefined || has_V < sensor.power.least_V || has_V > sensor.power.largest_V) return 'unpowered'
  for (const fault of network.faults) if (fault.kind === 'sensor-stuck' && fault.sensor === sensor.id) return fault.in
  if (former === 'fault') return 'fault'
  const isAsked = test !== undefined && asks(test.input, difference(network, volt, test.plus, test.minus) ?? 0)
  return seenBy.has(sensor.id) || isAsked ? 'seen' : 'clear'
}

/** Between its thresholds a test input is taken as not asked: then a test finds less, not more. */
function asks({ asked, on_V, off_V }: TestInput, volt: number): boolean {
  return asked === 'above' ? volt >= on_V : volt <= off_V
}

/** "fault" where one of its pulsed outputs stays at voltage in its own interruption, or while it is switched off. */
function afterPulses(
  network: FaultyNetwork,
  situation: Situation,
  states: readonly SensorState[],
  i: number,
  state: SensorState,
): SensorState {
  for (const { each, join, at, against } of network.sensors[i]?.switches ?? []) {
    if (!each.pulsed) continue
    const volt = voltages(network, situation, states, join)
    if (Math.abs(difference(network, volt, at, against) ?? 0) > each.pulsed.off_V) return 'fault'
  }
  return state
}

/** What the control takes an input to say; `either` where its voltage lies between two bands, or nothing settles. */
function believed({ plus, minus, bands }: ControlInput, { betweens }: Settled): Belief {
  const beliefs = betweens.map((between): Belief => {
    const volt = between(plus, minus)
    return volt === undefined ? 'either' : (bands.find(({ from_V, to_V }) => from_V <= volt && volt <= to_V)?.means ?? 'either')
  })
  return beliefs.every((belief) => belief === beliefs[0]) ? (beliefs[0] as Belief) : 'either'
}

/** What `faultEffects` answers, without anything that makes it fast. */
export function plainFaultEffects(wiring: Wiring, hidden: readonly Fault[] = []): readonly FaultEffect[] {
  const network = wiringNetwork(wiring)
  return singleFaults(wiring).map((fault) => ({ fault, ...effectIn(network, [...hidden, fault]) }))
}

/** At the least and the largest supply; the worse counts, for every sensor that goes unheeded at either. */
function effectIn(network: WiringNetwork, faults: readonly Fault[]): JudgedEffect {
  const faulty = withFaults(network, faults)
  const { supply, sensors } = network.wiring
  const isSagging = faults.some(({ kind }) => kind === 'supply-low')
  const effects = (isSagging ? [supply.least_V] : [supply.least_V, supply.largest_V]).map((supply_V) => effectAt(faulty, supply_V))
  const worst = effects.reduce((a, b) => (EFFECTS.indexOf(b.effect) < EFFECTS.indexOf(a.effect) ? b : a))
  const dangers: readonly string[] = EFFECTS.slice(0, 2)
  const alike = effects.filter(({ effect }) => (dangers.includes(worst.effect) ? dangers.includes(effect) : effect === worst.effect))
  const named = sensors.flatMap(({ id }) => (alike.some((each) => each.sensors.includes(id)) ? [id] : []))
  const longest_s = Math.max(...alike.map(({ within_s = 0 }) => within_s))
  return { ...worst, sensors: named, ...(worst.within_s === undefined ? {} : { within_s: longest_s }) }
}

/**
 * With a body before a sensor the door is safe where some protecting input says "seen" or "fault" for sure; what may be either counts as "clear"
 * there, and as "seen" where nobody stands.
 */
function effectAt(faulty: FaultyNetwork, supply_V: number): JudgedEffect {
  const { sensors, control } = faulty.wiring
  const says = (seenBy: readonly string[], asking = false): Says => {
    const settled = settledNetwork(faulty, { seenBy: new Set(seenBy), asking, supply_V })
    return new Map(control.inputs.map((input) => [input, believed(input, settled)]))
  }
  const ofAll = (use: 'presence' | 'opening', isWrong: (said: Says) => boolean) =>
    sensors.flatMap(({ id, outputs }) => (outputs.some(({ acts }) => acts === use) && isWrong(says([id])) ? [id] : []))
  const { test } = control
  const isMissed = test !== undefined && missed(says([], true), test.expects)
  const unheeded = ofAll('presence', (said) => !stops(said))
  if (unheeded.length > 0) {
    const [fault] = faulty.faults
    const stuck = fault?.kind === 'sensor-stuck' && faulty.faults.length === 1 ? fault.sensor : undefined
    const own_s = unheeded.includes(stuck ?? '') ? sensors.find(({ id }) => id === stuck)?.ownFaults_s : undefined
    if (own_s !== undefined && unheeded.length === 1)
      return { effect: 'found-by-test', sensors: unheeded, within_s: own_s, isHidden: false }
    return test?.whenFailed === 'does-not-close' && isMissed
      ? { effect: 'found-by-test', sensors: unheeded, within_s: Math.max(test.every_s, own_s ?? 0), isHidden: false }
      : { effect: 'hidden-and-dangerous', sensors: unheeded, isHidden: true }
  }
  const resting = says([])
  const nobody = { sensors: [], isHidden: false }
  if (disagrees(resting) || [...resting].some(([input, belief]) => protects(input) && belief === 'fault'))
    return { effect: 'stops-the-door', ...nobody }
  if ([...resting].some(([, belief]) => belief !== 'clear')) return { effect: 'keeps-from-closing', ...nobody }
  const opensNothing = ofAll('opening', (said) => ![...said].some(([input, belief]) => input.acts === 'open' && belief === 'seen'))
  if (opensNothing.length > 0 && control.inputs.some(({ acts }) => acts === 'open'))
    return { effect: 'fails-to-open', sensors: opensNothing, isHidden: false }
  if (test?.whenFailed === 'does-not-close' && isMissed) return { effect: 'keeps-from-closing', ...nobody }
  return { effect: 'no-effect', sensors: [], isHidden: !sensors.some(({ id }) => disagrees(says([id]))) }
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
