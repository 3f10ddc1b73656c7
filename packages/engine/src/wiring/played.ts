import type { SensorState, Terminal, Wiring } from '../model/wiring.ts'
import { type Belief, beliefsOf } from './fault-effects.ts'
import type { Fault } from './faults.ts'
import { settle, voltBetween, wiringNetwork, withFaults } from './network.ts'

/** How a wiring stands with some faults in one situation: what a meter would read, what each sensor is in, what the control takes each input to say. */
export interface Played {
  /** Against the minus of the supply, V; a terminal that nothing connects to it is left out. */
  readonly volts: ReadonlyMap<Terminal, number>
  readonly states: ReadonlyMap<string, SensorState>
  readonly beliefs: ReadonlyMap<string, Belief>
}

/** @param seenBy ids of the sensors before which a body stands */
export function played(
  wiring: Wiring,
  faults: readonly Fault[],
  situation: { readonly seenBy: readonly string[]; readonly asking: boolean },
): Played {
  const { supply, control } = wiring
  const network = withFaults(wiringNetwork(wiring), faults)
  const supply_V = (supply.least_V + supply.largest_V) / 2
  const settling = settle(network, { seenBy: new Set(situation.seenBy), asking: situation.asking, supply_V })
  const minus = network.nodes.get(supply.minus) ?? 0
  const volts = [...network.nodes].flatMap(([terminal, node]) => {
    const volt = voltBetween(network, settling, node, minus)
    return volt === undefined ? [] : [[terminal, volt] as const]
  })
  const beliefs = beliefsOf(network, settling)
  return {
    volts: new Map(volts),
    states: new Map(network.sensors.map(({ sensor }, i) => [sensor.id, settling.states[i] as SensorState])),
    beliefs: new Map(control.inputs.map((input, i) => [input.id, beliefs[i] ?? 'either'])),
  }
}
