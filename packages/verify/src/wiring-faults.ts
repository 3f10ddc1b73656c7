import { EARTHED_METAL, type Join, STATES, type Switch, type Wired } from './wired.ts'

/** One thing that is wrong, as the page names it, and what it changes in the network. */
export interface WiringFault {
  /** Its kind and parts as a text, in a fixed order. */
  readonly text: string
  /** Joins besides switches, whatever of them is left. */
  readonly joins: readonly Join[]
  /** Alike for faults that leave the same joins. */
  readonly joinsAs: string
  /** Held closed or open; undefined where the switch does as it should. */
  readonly stuck: (each: Switch) => boolean | undefined
  /** What the source gives, by what it should. */
  readonly supplies: readonly number[]
  /** Which sensor is for ever in one state. */
  readonly sensorStuck: { readonly id: string; readonly state: (typeof STATES)[number] } | undefined
}

const SHORT_SIEMENS = 1 / 0.01
const SAGS = [0.9, 0.7, 0.5, 0.3, 0.1]

/** A fault's text: its kind first, its parts by name. */
export function textOfFault(fault: Readonly<Record<string, unknown>>): string {
  return JSON.stringify(Object.entries(fault).sort(([a], [b]) => (a < b ? -1 : 1)))
}

/** Every single fault that the page names, by its text. */
export function faultsOf(wired: Wired): ReadonlyMap<string, WiringFault> {
  const { supply, sensors, cables, resistors, switches, test, joins } = wired
  const found = new Map<string, WiringFault>()
  const supplies = supply.least === supply.largest ? [supply.least] : [supply.least, supply.largest]
  const add = (fault: Readonly<Record<string, unknown>>, change: Partial<Omit<WiringFault, 'text'>>) => {
    const text = textOfFault(fault)
    found.set(text, { text, joins, joinsAs: 'all', stuck: () => undefined, supplies, sensorStuck: undefined, ...change })
  }
  const without = (parts: readonly string[], siemens = 0) => ({
    joinsAs: `${siemens} ${parts.join()}`,
    joins: joins.map((join) => (parts.includes(join.part) ? { ...join, siemens } : join)),
  })
  const short = (a: string, b: string) =>
    a === b ? {} : { joinsAs: JSON.stringify(a < b ? [a, b] : [b, a]), joins: [...joins, { part: 'short', a, b, siemens: SHORT_SIEMENS }] }
  const rails = { plus: supply.plus, minus: supply.minus, earth: supply.earthed === 'none' ? EARTHED_METAL : supply[supply.earthed] }
  for (const { id, cores } of cables) {
    for (const [i, core] of cores.entries()) {
      add({ kind: 'core-open', core: core.id }, without([`core ${core.id}`]))
      for (const other of cores.slice(i + 1)) add({ kind: 'cores-shorted', cores: [core.id, other.id] }, short(core.from, other.from))
      for (const rail of ['plus', 'minus', 'earth'] as const)
        add({ kind: 'core-to-rail', core: core.id, rail }, short(core.from, rails[rail]))
    }
    add({ kind: 'cable-off', cable: id }, without(cores.map((core) => `core ${core.id}`)))
  }
  add({ kind: 'supply-lost' }, without(['supply']))
  add({ kind: 'supply-reversed' }, { supplies: supplies.map((volt) => -volt) })
  for (const share of SAGS) add({ kind: 'supply-low', volt: share * supply.least }, { supplies: [share * supply.least] })
  for (const [i, { id: sensor }] of sensors.entries()) {
    const own = switches.filter((each) => each.sensor === i)
    for (const one of own)
      for (const at of ['open', 'closed'] as const)
        add({ kind: 'switch-stuck', sensor, switch: one.name, at }, { stuck: (each) => (each === one ? at === 'closed' : undefined) })
    const outputs = own.map(({ output }) => output)
    for (const output of outputs.filter((each, k) => outputs.indexOf(each) !== k))
      for (const as of ['clear', 'seen'] as const)
        add(
          { kind: 'output-stuck', sensor, output, as },
          { stuck: (each) => (each.sensor === i && each.output === output ? each.closedIn.includes(as) : undefined) },
        )
    for (const state of STATES) add({ kind: 'sensor-stuck', sensor, in: state }, { sensorStuck: { id: sensor, state } })
  }
  for (const resistor of resistors) {
    add({ kind: 'resistor-open', resistor }, without([`resistor ${resistor}`]))
    add({ kind: 'resistor-shorted', resistor }, without([`resistor ${resistor}`], SHORT_SIEMENS))
  }
  if (test)
    for (const at of ['open', 'closed'] as const)
      add({ kind: 'test-stuck', at }, { stuck: (each) => (each.sensor < 0 ? at === 'closed' : undefined) })
  return found
}
