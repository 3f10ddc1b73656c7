import { SENSOR_STATES, type SensorState, type Terminal, type Wiring } from '../model/wiring.ts'

/** One thing that is wrong. Where a short lies along a core is left out: a core's own resistance is next to nothing beside what it feeds. */
export type Fault =
  | { readonly kind: 'core-open'; readonly core: string }
  | { readonly kind: 'cable-off'; readonly cable: string }
  | { readonly kind: 'cores-shorted'; readonly cores: readonly [string, string] }
  | { readonly kind: 'core-to-rail'; readonly core: string; readonly rail: 'plus' | 'minus' | 'earth' }
  | { readonly kind: 'supply-lost' }
  | { readonly kind: 'supply-reversed' }
  | { readonly kind: 'supply-low'; readonly volt: number }
  | { readonly kind: 'switch-stuck'; readonly sensor: string; readonly switch: string; readonly at: 'open' | 'closed' }
  | { readonly kind: 'output-stuck'; readonly sensor: string; readonly output: string; readonly as: 'clear' | 'seen' }
  | { readonly kind: 'test-stuck'; readonly at: 'open' | 'closed' }
  | { readonly kind: 'resistor-open' | 'resistor-shorted'; readonly resistor: string }
  | { readonly kind: 'sensor-stuck'; readonly sensor: string; readonly in: SensorState }

/** How far the supply may sag, as shares of its least voltage. */
const SAGS = [0.9, 0.7, 0.5, 0.3, 0.1]

/** Every single fault that the model knows, each once, in an order that depends on the wiring alone. */
export function singleFaults({ supply, sensors, control, cables, resistors }: Wiring): readonly Fault[] {
  return [
    ...cables.flatMap(({ id, cores }): Fault[] => [
      ...cores.map((core): Fault => ({ kind: 'core-open', core: core.id })),
      ...cores.flatMap((a, i) => cores.slice(i + 1).map((b): Fault => ({ kind: 'cores-shorted', cores: [a.id, b.id] }))),
      ...cores.flatMap((core) =>
        (['plus', 'minus', 'earth'] as const).map((rail): Fault => ({ kind: 'core-to-rail', core: core.id, rail })),
      ),
      { kind: 'cable-off', cable: id },
    ]),
    { kind: 'supply-lost' },
    { kind: 'supply-reversed' },
    ...SAGS.map((share): Fault => ({ kind: 'supply-low', volt: share * supply.least_V })),
    ...sensors.flatMap((sensor): Fault[] => [
      ...sensor.outputs.flatMap(({ name }) =>
        (['open', 'closed'] as const).map((at): Fault => ({ kind: 'switch-stuck', sensor: sensor.id, switch: name, at })),
      ),
      ...severalContacts(sensor.outputs).flatMap((output) =>
        (['clear', 'seen'] as const).map((as): Fault => ({ kind: 'output-stuck', sensor: sensor.id, output, as })),
      ),
      ...SENSOR_STATES.map((state): Fault => ({ kind: 'sensor-stuck', sensor: sensor.id, in: state })),
    ]),
    ...resistors.flatMap(({ id }) => (['resistor-open', 'resistor-shorted'] as const).map((kind): Fault => ({ kind, resistor: id }))),
    ...(control.test ? (['open', 'closed'] as const).map((at): Fault => ({ kind: 'test-stuck', at })) : []),
  ]
}

/** Outputs that move several contacts: with one, the contact stuck and the output stuck are the same. */
function severalContacts(switches: Wiring['sensors'][number]['outputs']): readonly string[] {
  const outputs = switches.map(({ output }) => output)
  return [...new Set(outputs)].filter((output) => outputs.indexOf(output) !== outputs.lastIndexOf(output))
}

/** What earthed metal is, where no rail is bonded to it: one fault joins nothing there, two meet. */
export const EARTH: Terminal = '(earth)'

/** The two terminals that a short joins; undefined for other faults. */
export function shortedBy({ supply, cables }: Wiring, fault: Fault): readonly [Terminal, Terminal] | undefined {
  if (fault.kind !== 'cores-shorted' && fault.kind !== 'core-to-rail') return undefined
  const at = (id: string) => {
    for (const { cores } of cables) for (const core of cores) if (core.id === id) return core.from
    throw new Error(`fault of a core that the wiring has not: ${id}`)
  }
  if (fault.kind === 'cores-shorted') return [at(fault.cores[0]), at(fault.cores[1])]
  const rail = fault.rail === 'earth' ? supply.earthed : fault.rail
  return [at(fault.core), rail === 'none' ? EARTH : supply[rail]]
}

/** Faults with the same text are the same to the network: shorts that join the same two terminals, and all that join none. */
export function sameAs(wiring: Wiring, fault: Fault): string {
  const short = shortedBy(wiring, fault)
  if (!short) return JSON.stringify(fault)
  const [a, b] = short
  return a === b ? 'nothing' : JSON.stringify(a < b ? [a, b] : [b, a])
}
