import type { Cable, Core, SensorState, SensorSwitch, Terminal, WiredSensor, Wiring } from '../model/wiring.ts'
import { type Conductance, type Solution, solved } from './circuit.ts'
import type { Fault } from './faults.ts'

/** How the world stands: who sees a body, whether the control asks its sensors, and what the supply gives. */
export interface Situation {
  readonly seenBy: ReadonlySet<string>
  readonly asking: boolean
  readonly supply_V: number
}

/** A short, as a metal-to-metal touch. */
const SHORT_OHM = 0.01
/** States that feed each other (an output that is watched, a supply that gives way) settle in a few rounds, or do not. */
const MOST_ROUNDS = 8

export interface Settled {
  readonly states: ReadonlyMap<string, SensorState>
  /** Volts from one terminal to another; undefined where nothing connects them. */
  readonly between: (plus: Terminal, minus: Terminal) => number | undefined
  /** False where the states chase each other: then nothing is known. */
  readonly isStable: boolean
}

/** The network in a situation, with a fault or without: voltages, and what state each sensor is in then. */
export function settledNetwork(wiring: Wiring, situation: Situation, fault: Fault | undefined): Settled {
  const names = new Map<Terminal, number>()
  const node = (terminal: Terminal) => {
    const known = names.get(terminal)
    if (known !== undefined) return known
    names.set(terminal, names.size)
    return names.size - 1
  }
  node(wiring.supply.minus)
  const fixed = fixedParts(wiring, fault, node)
  let states = new Map(wiring.sensors.map((sensor) => [sensor.id, stateOf(sensor, situation, fault, () => sensor.power.least_V)]))
  let isStable = false
  let between = (_plus: Terminal, _minus: Terminal): number | undefined => undefined
  for (let round = 0; round < MOST_ROUNDS && !isStable; round++) {
    const now = states
    const switches = [
      ...wiring.sensors.flatMap((sensor) => sensor.outputs.map((each) => switchOf(sensor, each, now, fault, node))),
      ...testSwitch(wiring, situation, fault, node),
    ]
    const draws = wiring.sensors.flatMap(({ id, power }) =>
      now.get(id) === 'unpowered' ? [] : [{ from: node(power.plus), to: node(power.minus), ampere: power.largest_A }],
    )
    for (const each of wiring.sensors) for (const at of [each.power.plus, each.power.minus]) node(at)
    const solution = solved({
      nodes: names.size,
      conductances: [...fixed, ...switches],
      sources: sourceOf(wiring, situation, fault, node),
      draws,
    })
    between = (plus, minus) => difference(solution, names.get(plus), names.get(minus))
    const measured = between
    const next = new Map(wiring.sensors.map((sensor) => [sensor.id, stateOf(sensor, situation, fault, measured, now.get(sensor.id))]))
    isStable = [...next].every(([id, state]) => now.get(id) === state)
    states = next
  }
  return { states, between, isStable }
}

function difference({ volt, partOf }: Solution, plus: number | undefined, minus: number | undefined): number | undefined {
  if (plus === undefined || minus === undefined || partOf[plus] !== partOf[minus]) return undefined
  return (volt[plus] as number) - (volt[minus] as number)
}

type Node = (terminal: Terminal) => number

function fixedParts(wiring: Wiring, fault: Fault | undefined, node: Node): readonly Conductance[] {
  const joined = (a: Terminal, b: Terminal, ohm: number): Conductance[] =>
    ohm === Infinity ? [] : [{ a: node(a), b: node(b), siemens: 1 / ohm }]
  const isOpen = (cable: Cable, core: Core) =>
    (fault?.kind === 'core-open' && fault.core === core.id) || (fault?.kind === 'cable-off' && fault.cable === cable.id)
  return [
    ...wiring.cables.flatMap((cable) => cable.cores.flatMap((core) => (isOpen(cable, core) ? [] : joined(core.from, core.to, core.ohm)))),
    ...wiring.control.inputs.flatMap(({ plus, minus, ohm, fedFrom }) => [
      ...joined(plus, minus, ohm),
      ...(fedFrom ? joined(fedFrom.terminal, plus, fedFrom.ohm) : []),
    ]),
    ...wiring.sensors.flatMap(({ test }) => (test ? joined(test.plus, test.minus, test.ohm) : [])),
    ...(fault?.kind === 'short' ? joined(fault.a, fault.b, SHORT_OHM) : []),
  ]
}

function sourceOf({ supply }: Wiring, { supply_V }: Situation, fault: Fault | undefined, node: Node) {
  if (fault?.kind === 'supply-lost') return []
  const volt = fault?.kind === 'supply-reversed' ? -supply_V : fault?.kind === 'supply-low' ? fault.volt : supply_V
  return [{ plus: node(supply.plus), minus: node(supply.minus), volt, ohm: supply.inner_ohm }]
}

function switchOf(
  sensor: WiredSensor,
  each: SensorSwitch,
  states: ReadonlyMap<string, SensorState>,
  fault: Fault | undefined,
  node: Node,
): Conductance {
  const stuck = fault?.kind === 'switch-stuck' && fault.sensor === sensor.id && fault.switch === each.name ? fault.at : undefined
  const isClosed = stuck === undefined ? each.closedIn.includes(states.get(sensor.id) ?? 'unpowered') : stuck === 'closed'
  // an ideal open contact still gets a place in the network, so that its terminals have a voltage: a teraohm
  return { a: node(each.from), b: node(each.to), siemens: 1 / (isClosed ? each.on_ohm : Math.min(each.off_ohm, 1e12)) }
}

function testSwitch({ control: { test } }: Wiring, { asking }: Situation, fault: Fault | undefined, node: Node): readonly Conductance[] {
  if (!test) return []
  const isClosed = fault?.kind === 'test-stuck' ? fault.at === 'closed' : (test.closedWhile === 'asking') === asking
  return [{ a: node(test.from), b: node(test.to), siemens: 1 / (isClosed ? test.on_ohm : Math.min(test.off_ohm, 1e12)) }]
}

/** @param former undefined at first, when it is taken to have its supply */
function stateOf(
  { id, power, outputs, test }: WiredSensor,
  { seenBy }: Situation,
  fault: Fault | undefined,
  between: Settled['between'],
  former?: SensorState,
): SensorState {
  const has_V = between(power.plus, power.minus)
  if (has_V === undefined || has_V < power.least_V || has_V > power.largest_V) return 'unpowered'
  if (fault?.kind === 'sensor-stuck' && fault.sensor === id) return fault.in
  if (former === undefined) return seenBy.has(id) ? 'seen' : 'clear'
  const isHeldUp = outputs.some(
    ({ watched, closedIn }) => watched && !closedIn.includes(former) && Math.abs(between(watched.at, watched.against) ?? 0) > watched.off_V,
  )
  if (former === 'fault' || isHeldUp) return 'fault'
  return seenBy.has(id) || (test && isAsked(test, between(test.plus, test.minus) ?? 0)) ? 'seen' : 'clear'
}

/** Between its thresholds a test input is taken as not asked: then a test finds less, not more. */
function isAsked({ asked, on_V, off_V }: NonNullable<WiredSensor['test']>, volt: number): boolean {
  return asked === 'above' ? volt >= on_V : volt <= off_V
}
