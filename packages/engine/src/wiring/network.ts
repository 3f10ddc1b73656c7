import type { SensorState, SensorSwitch, Terminal, TestInput, WiredSensor, Wiring } from '../model/wiring.ts'
import { type Join, type Plan, partsOf, planned, solved } from './circuit.ts'
import { type Fault, shortedBy } from './faults.ts'

/** How the world stands: who sees a body, whether the control asks its sensors, and what the supply gives. */
export interface Situation {
  readonly seenBy: ReadonlySet<string>
  readonly asking: boolean
  readonly supply_V: number
}

/** A short, as a metal-to-metal touch. */
const SHORT_OHM = 0.01
/** What an ideal open contact leaks, so that its terminals have a voltage. */
const LEAK_OHM = 1e12
/** States that feed each other (a supply that gives way, an output that is watched) settle in a few rounds, or do not. */
const MOST_ROUNDS = 8

/** A wiring as a network of numbered nodes: what is joined is planned once, and a fault changes a few conductances of it. */
export interface WiringNetwork {
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
export function wiringNetwork(wiring: Wiring): WiringNetwork {
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
export interface FaultyNetwork extends WiringNetwork {
  readonly faults: readonly Fault[]
  readonly partOf: Int32Array
}

/** @param faults at once; those of sensors and of what the supply gives are heeded when the network settles */
export function withFaults(network: WiringNetwork, faults: readonly Fault[]): FaultyNetwork {
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

export interface Settled {
  readonly states: ReadonlyMap<string, SensorState>
  /** Volts from one terminal to another; undefined where nothing connects them. */
  readonly between: (plus: Terminal, minus: Terminal) => number | undefined
  /** False where the states chase each other: then nothing is known. */
  readonly isStable: boolean
}

/** Voltages, and what state each sensor is in: the states that a sensor is driven to by the voltages which they themselves give. */
export function settledNetwork(network: FaultyNetwork, situation: Situation): Settled {
  // a question finds the sensors as they were: a line that holds itself up then goes on doing so
  let states = network.sensors.map(({ sensor }): SensorState => (situation.seenBy.has(sensor.id) ? 'seen' : 'clear'))
  let volt: Float64Array = new Float64Array(0)
  let isStable = false
  for (let round = 0; round < MOST_ROUNDS && !isStable; round++) {
    const now = states
    volt = voltages(network, situation, now)
    const next = network.sensors.map((each, i) => {
      const state = stateOf(network, each, situation, volt, now[i] as SensorState)
      return state === 'clear' || state === 'seen' ? afterPulses(network, situation, now, i, state) : state
    })
    isStable = next.every((state, i) => now[i] === state)
    states = next
  }
  const { nodes, partOf } = network
  const between = (plus: Terminal, minus: Terminal) => {
    const [p, m] = [nodes.get(plus), nodes.get(minus)]
    return p === undefined || m === undefined || partOf[p] !== partOf[m] ? undefined : (volt[p] as number) - (volt[m] as number)
  }
  return { states: new Map(network.sensors.map(({ sensor }, i) => [sensor.id, states[i] as SensorState])), between, isStable }
}

/**
 * Of all nodes, V, with the sensors in states that are given.
 *
 * @param interrupted a join that a test pulse opens for a moment
 */
export function voltages(
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
