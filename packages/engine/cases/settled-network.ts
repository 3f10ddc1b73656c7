import type { SensorState, Terminal } from '../src/model/wiring.ts'
import { type FaultyNetwork, type Situation, settle, voltBetween } from '../src/wiring/network.ts'

/** What a network comes to, by the names of terminals and sensors. */
export function settledNetwork(network: FaultyNetwork, situation: Situation) {
  const settling = settle(network, situation)
  return {
    settling,
    isStable: settling.isStable,
    states: new Map(network.sensors.map(({ sensor }, i) => [sensor.id, settling.states[i] as SensorState])),
    /** Volts from one terminal to another; undefined where nothing connects them. */
    between: (plus: Terminal, minus: Terminal): number | undefined => {
      const [p, m] = [network.nodes.get(plus), network.nodes.get(minus)]
      return p === undefined || m === undefined ? undefined : voltBetween(network, settling, p, m)
    },
  }
}
