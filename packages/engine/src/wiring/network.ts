import type { ControlInput, SensorState, SensorSwitch, Terminal, TestInput, WiredSensor, Wiring } from '../model/wiring.ts'
import { bySlot, type Join, type Plan, partsOf, planned, solvedTwice } from './circuit.ts'
import { EARTH, type Fault, shortedBy } from './faults.ts'

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
/** States that feed each other (a supply that gives way, an output that is watched) settle in a few rounds, or come round again. */
const MOST_ROUNDS = 64
/** Of states that chase each other so many are looked at together; of more, nothing is taken for sure. */
const MOST_TOGETHER = 256

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
  readonly inputs: readonly InputNodes[]
}

/** A control's input and its two nodes. */
export interface InputNodes {
  readonly input: ControlInput
  readonly plus: number
  readonly minus: number
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
  const inputs = control.inputs.map((input) => ({ input, plus: node(input.plus), minus: node(input.minus) }))
  return { wiring, nodes, plan: planned(nodes.size, joins), siemens: Float64Array.from(siemens), joinOf, sensors: sensorNodes, inputs }
}

const openOhm = ({ off_ohm }: { readonly off_ohm: number }) => Math.min(off_ohm, LEAK_OHM)

/** A network with something wrong, or nothing. */
export interface FaultyNetwork extends WiringNetwork {
  readonly faults: readonly Fault[]
  readonly partOf: Int32Array
  /** Conductance of each slot of the plan without what switches. */
  readonly fixed: Float64Array
  /** Of each sensor and each of its contacts: held closed or open by a fault. */
  readonly stuck: readonly (readonly (boolean | undefined)[])[]
  /** What was solved for already. Voltages are affine in what the supply gives, so that each setting of the switches is solved once. */
  readonly solutions: Solution[]
}

interface Solution {
  readonly states: readonly SensorState[]
  readonly isTestClosed: boolean
  readonly interrupted: number
  /** Of node i at 2 i: what each volt of the supply adds; at 2 i + 1: what the currents drawn add, V. */
  readonly volt: Float64Array
}

/**
 * @param faults at once; those of sensors and of what the supply gives are heeded when the network settles
 * @param bridged terminals that something else joins besides, such as a meter; one that the wiring does not have is left out
 */
export function withFaults(network: WiringNetwork, faults: readonly Fault[], bridged: readonly Bridge[] = []): FaultyNetwork {
  const changed = network.siemens.slice()
  const open = (part: Part) => {
    changed[network.joinOf.get(part) ?? -1] = 0
  }
  const extra = bridged.map(({ from, to, ohm }): readonly [Terminal, Terminal, number] => [from, to, ohm])
  for (const fault of faults) {
    if (fault.kind === 'core-open') open(`core ${fault.core}`)
    if (fault.kind === 'cable-off')
      for (const { id, cores } of network.wiring.cables) if (id === fault.cable) for (const core of cores) open(`core ${core.id}`)
    if (fault.kind === 'supply-lost') open('supply')
    if (fault.kind === 'resistor-open') open(`resistor ${fault.resistor}`)
    if (fault.kind === 'resistor-shorted') changed[network.joinOf.get(`resistor ${fault.resistor}`) ?? -1] = 1 / SHORT_OHM
    const short = shortedBy(network.wiring, fault)
    if (short) extra.push([...short, SHORT_OHM])
  }
  const joined = extra.flatMap(([from, to, ohm]) => {
    const [a, b] = [network.nodes.get(from), network.nodes.get(to)]
    return a === undefined || b === undefined || a === b ? [] : [{ join: [a, b] as const, siemens: 1 / ohm }]
  })
  const plan = joined.length === 0 ? network.plan : planned(network.plan.nodes, [...network.plan.joins, ...joined.map(({ join }) => join)])
  const siemens = new Float64Array(plan.joins.length)
  siemens.set(changed)
  for (const [i, each] of joined.entries()) siemens[changed.length + i] = each.siemens
  const partOf = partsOf(plan, siemens)
  const unswitched = siemens.slice()
  for (const join of switchingJoins(network)) unswitched[join] = 0
  const stuck = network.sensors.map(({ sensor, switches }) => switches.map(({ each }) => stuckAt(faults, sensor, each)))
  return { ...network, plan, siemens, faults, partOf, fixed: bySlot(plan, unswitched), stuck, solutions: [] }
}

export interface Bridge {
  readonly from: Terminal
  readonly to: Terminal
  readonly ohm: number
}

function switchingJoins({ sensors, joinOf }: WiringNetwork): readonly number[] {
  const test = joinOf.get('test')
  return [...sensors.flatMap(({ switches }) => switches.map(({ join }) => join)), ...(test === undefined ? [] : [test])]
}

/** Voltages with the sensors held in states that are given, whatever they get. */
export function heldNetwork(
  network: FaultyNetwork,
  states: readonly SensorState[],
  { asking, supply_V }: Omit<Situation, 'seenBy'>,
): (plus: Terminal, minus: Terminal) => number | undefined {
  const supplied_V = suppliedVolt(network.faults, supply_V)
  const held = { solution: solution(network, states, closesTest(network, asking)), supplied_V }
  const { nodes } = network
  return (plus, minus) => {
    const [p, m] = [nodes.get(plus), nodes.get(minus)]
    return p === undefined || m === undefined ? undefined : voltBetween(network, held, p, m)
  }
}

/** What a network settles to, by number: sensors and nodes in the network's order. */
export interface Settling {
  readonly states: readonly SensorState[]
  readonly isStable: boolean
  readonly solution: Solution
  readonly supplied_V: number
  /** Where it is not stable all that it may go through, whichever sensor answers first; empty where that is more than anybody looks at. */
  readonly chased: readonly Settling[]
}

export function settle(network: FaultyNetwork, situation: Situation): Settling {
  // a question finds the sensors as they were: a line that holds itself up then goes on doing so
  let now = inStates(
    network,
    situation,
    network.sensors.map(({ sensor }) => (situation.seenBy.has(sensor.id) ? 'seen' : 'clear')),
  )
  const rounds: Settling[] = []
  for (;;) {
    const states = nextStates(network, situation, now)
    if (areAlike(states, now.states)) return now
    rounds.push(now)
    now = inStates(network, situation, states)
    const again = rounds.findIndex((round) => areAlike(round.states, states))
    if (again >= 0) return { ...now, isStable: false, chased: chased(network, situation, rounds.slice(again)) }
    if (rounds.length === MOST_ROUNDS) return { ...now, isStable: false }
  }
}

const areAlike = (a: readonly SensorState[], b: readonly SensorState[]) => a.every((state, i) => state === b[i])

function inStates(network: FaultyNetwork, { asking, supply_V }: Situation, states: readonly SensorState[]): Settling {
  const supplied_V = suppliedVolt(network.faults, supply_V)
  return { states, isStable: true, solution: solution(network, states, closesTest(network, asking)), supplied_V, chased: [] }
}

function nextStates(network: FaultyNetwork, situation: Situation, now: Settling): readonly SensorState[] {
  return network.sensors.map((each, i) => {
    const state = stateOf(network, each, situation, now, now.states[i] as SensorState)
    return state === 'clear' || state === 'seen' ? afterPulses(network, now, i, state) : state
  })
}

/**
 * Of states that come round again: each sensor in any of those that it goes through, whatever the others are in, for they need not answer at once; one that
 * loses its power also warms up where it comes back; and what any of these together leads to belongs to them too.
 */
function chased(network: FaultyNetwork, situation: Situation, cycle: readonly Settling[]): readonly Settling[] {
  const mayBe = network.sensors.map((_, i) => new Set(cycle.map(({ states }) => states[i] as SensorState)))
  const size = () => mayBe.reduce((sum, states) => sum + states.size, 0)
  for (;;) {
    for (const states of mayBe) if (states.has('unpowered')) states.add('warming-up')
    if (mayBe.reduce((product, states) => product * states.size, 1) > MOST_TOGETHER) return []
    const before = size()
    const all = togetherOf(mayBe).map((states) => inStates(network, situation, states))
    for (const each of all) for (const [i, state] of nextStates(network, situation, each).entries()) mayBe[i]?.add(state)
    if (size() === before) return all
  }
}

function togetherOf(mayBe: readonly ReadonlySet<SensorState>[]): readonly (readonly SensorState[])[] {
  const from: readonly (readonly SensorState[])[] = [[]]
  return mayBe.reduce((together, states) => together.flatMap((first) => [...states].map((state) => [...first, state])), from)
}

/** Whether the control's test output is closed. */
function closesTest({ wiring, faults }: FaultyNetwork, asking: boolean): boolean {
  const { test } = wiring.control
  const stuck = faults.find((fault) => fault.kind === 'test-stuck')
  return test !== undefined && (stuck ? stuck.at === 'closed' : (test.closedWhile === 'asking') === asking)
}

/** Volts from one node to another; undefined where nothing connects them. */
export function voltBetween(
  { partOf }: FaultyNetwork,
  { solution: { volt }, supplied_V }: Pick<Settling, 'solution' | 'supplied_V'>,
  plus: number,
  minus: number,
): number | undefined {
  if (partOf[plus] !== partOf[minus]) return undefined
  const [p, m] = [2 * plus, 2 * minus]
  return supplied_V * ((volt[p] as number) - (volt[m] as number)) + ((volt[p + 1] as number) - (volt[m + 1] as number))
}

/** @param interrupted a join that a test pulse opens for a moment; -1 for none */
function solution(network: FaultyNetwork, states: readonly SensorState[], isTestClosed: boolean, interrupted = -1): Solution {
  const { wiring, plan, siemens, partOf, joinOf, sensors, fixed, solutions } = network
  for (const known of solutions)
    if (known.isTestClosed === isTestClosed && known.interrupted === interrupted && states.every((state, i) => known.states[i] === state))
      return known
  const between = fixed.slice()
  const flow = new Float64Array(2 * plan.nodes)
  const put = (at: number, ampere: number) => {
    flow[at] = (flow[at] as number) + ampere
  }
  const joined = (join: number, conductance: number) => {
    const slot = plan.slotOf[join] as number
    if (slot >= 0) between[slot] = (between[slot] as number) + conductance
  }
  for (let i = 0; i < sensors.length; i++) {
    const { sensor, plus, minus, switches } = sensors[i] as SensorNodes
    const state = states[i] as SensorState
    if (state !== 'unpowered' && partOf[plus] === partOf[minus]) {
      put(2 * plus + 1, -sensor.power.largest_A)
      put(2 * minus + 1, sensor.power.largest_A)
    }
    for (let k = 0; k < switches.length; k++) {
      const { each, join } = switches[k] as SensorNodes['switches'][number]
      joined(join, closes(network, i, k, state, interrupted) ? 1 / each.on_ohm : (siemens[join] as number))
    }
  }
  const { test } = wiring.control
  const testJoin = joinOf.get('test') ?? -1
  if (test) joined(testJoin, isTestClosed ? 1 / test.on_ohm : (siemens[testJoin] as number))
  const supply = joinOf.get('supply') ?? -1
  const [minus, plus] = plan.joins[supply] as Join
  put(2 * plus, siemens[supply] as number)
  put(2 * minus, -(siemens[supply] as number))
  const solvedNow = { states, isTestClosed, interrupted, volt: solvedTwice(plan, between, flow) }
  solutions.push(solvedNow)
  return solvedNow
}

/** Whether switch `k` of sensor `i` is closed while that is in a state. */
function closes({ sensors, stuck }: FaultyNetwork, i: number, k: number, state: SensorState, interrupted: number): boolean {
  const { each, join } = (sensors[i] as SensorNodes).switches[k] as SensorNodes['switches'][number]
  return stuck[i]?.[k] ?? (each.closedIn.includes(state) && join !== interrupted)
}

/** The setting that was solved for, of all switches and all sensors, as docs/evidence.md writes it: 1 for closed, and for what draws current. */
export function settingOf(network: FaultyNetwork, { states, isTestClosed, interrupted }: Solution) {
  const bit = (is: boolean) => (is ? '1' : '0')
  const own = network.sensors.flatMap(({ switches }, i) =>
    switches.map((_, k) => bit(closes(network, i, k, states[i] as SensorState, interrupted))),
  )
  const test = network.wiring.control.test ? [bit(isTestClosed)] : []
  return { closed: [...own, ...test].join(''), drawing: states.map((state) => bit(state !== 'unpowered')).join('') }
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

/** @param former what it was taken for when the voltages were computed */
function stateOf(
  network: FaultyNetwork,
  { sensor, plus, minus, test }: SensorNodes,
  { seenBy }: Situation,
  now: Settling,
  former: SensorState,
): SensorState {
  const has_V = voltBetween(network, now, plus, minus)
  if (has_V === undefined || has_V < sensor.power.least_V || has_V > sensor.power.largest_V) return 'unpowered'
  for (const fault of network.faults) if (fault.kind === 'sensor-stuck' && fault.sensor === sensor.id) return fault.in
  if (former === 'fault') return 'fault'
  const isAsked = test !== undefined && asks(test.input, voltBetween(network, now, test.plus, test.minus) ?? 0)
  return seenBy.has(sensor.id) || isAsked ? 'seen' : 'clear'
}

/** Between its thresholds a test input is taken as not asked: then a test finds less, not more. */
function asks({ asked, on_V, off_V }: TestInput, volt: number): boolean {
  return asked === 'above' ? volt >= on_V : volt <= off_V
}

/** "fault" where one of its pulsed outputs stays at voltage in its own interruption, or while it is switched off. */
function afterPulses(network: FaultyNetwork, now: Settling, i: number, state: SensorState): SensorState {
  for (const { each, join, at, against } of network.sensors[i]?.switches ?? []) {
    if (!each.pulsed) continue
    const interrupted = { ...now, solution: solution(network, now.states, now.solution.isTestClosed, join) }
    if (Math.abs(voltBetween(network, interrupted, at, against) ?? 0) > each.pulsed.off_V) return 'fault'
  }
  return state
}
