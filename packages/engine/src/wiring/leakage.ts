import type { Wiring } from '../model/wiring.ts'
import { type Belief, beliefsOf } from './fault-effects.ts'
import { type Situation, settle, wiringNetwork, withFaults } from './network.ts'

/** A switch that is off to this is off. */
const OFF_OHM = 1e12
const HALVINGS = 40

/** What a switch leaks while it is off, to those inputs that take it for something else than off. */
export interface Leak {
  /** Inputs that say otherwise than if it were off altogether. */
  readonly inputs: readonly string[]
  /** The least resistance of the open switch at which none does, to a part in a million; never too small. */
  readonly enough_ohm: number
}

/** Undefined where every input says, in every situation and at either supply, what it says with the switch perfectly off. */
export function leakOf(wiring: Wiring, sensor: string, name: string): Leak | undefined {
  const perfect = saidOf(withOff(wiring, sensor, name, OFF_OHM))
  const differing = (ohm: number) => {
    const said = saidOf(withOff(wiring, sensor, name, ohm))
    return wiring.control.inputs.filter((_, i) => said.some((each, k) => each[i] !== perfect[k]?.[i])).map(({ id }) => id)
  }
  const off_ohm = wiring.sensors.find(({ id }) => id === sensor)?.outputs.find((each) => each.name === name)?.off_ohm ?? OFF_OHM
  const inputs = differing(off_ohm)
  if (inputs.length === 0) return undefined
  let [least_ohm, enough_ohm] = [off_ohm, OFF_OHM]
  for (let i = 0; i < HALVINGS; i++) {
    const middle_ohm = Math.sqrt(least_ohm * enough_ohm)
    if (differing(middle_ohm).length === 0) enough_ohm = middle_ohm
    else least_ohm = middle_ohm
  }
  return { inputs, enough_ohm }
}

/** The same wiring with another resistance of one open switch. */
export function withOff(wiring: Wiring, sensor: string, name: string, off_ohm: number): Wiring {
  return {
    ...wiring,
    sensors: wiring.sensors.map((each) =>
      each.id === sensor
        ? { ...each, outputs: each.outputs.map((output) => (output.name === name ? { ...output, off_ohm } : output)) }
        : each,
    ),
  }
}

function saidOf(wiring: Wiring): readonly (readonly Belief[])[] {
  const { supply, sensors, control } = wiring
  const network = withFaults(wiringNetwork(wiring), [])
  const situations: Omit<Situation, 'supply_V'>[] = [
    { seenBy: new Set(), asking: false },
    ...sensors.map(({ id }) => ({ seenBy: new Set([id]), asking: false })),
    ...(control.test ? [{ seenBy: new Set<string>(), asking: true }] : []),
  ]
  return [supply.least_V, supply.largest_V].flatMap((supply_V) =>
    situations.map((situation) => beliefsOf(network, settle(network, { ...situation, supply_V }))),
  )
}
