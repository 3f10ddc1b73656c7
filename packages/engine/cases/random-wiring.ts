import type { Core, SensorState, SensorSwitch, WiredSensor, Wiring } from '../src/model/wiring.ts'
import { fortyCoreDoor } from './forty-core-door.ts'
import { type RandomNumbers, randomNumbers } from './random-numbers.ts'
import { twoRelayDoor } from './two-relay-door.ts'

/** A wiring nobody would build: some door's with cores that go elsewhere, contacts that mean something else, leaks, pulses, resistors, sagging supply. */
export function randomWiring(seed: number): Wiring {
  const dice = randomNumbers(seed)
  const door = dice.chance(0.25)
    ? fortyCoreDoor()
    : twoRelayDoor({
        sensors: dice.whole(1, 2),
        isTested: dice.chance(0.6),
        presence: dice.pick<readonly SensorState[]>([['clear'], ['seen']]),
      })
  const few = door.sensors.length > 2
  const all = door.cables.flatMap(({ cores }) => cores.flatMap(({ from, to }) => [from, to]))
  const terminal = () => all[dice.whole(0, all.length - 1)] ?? ''
  const elsewhere = (core: Core): Core => (dice.chance(0.06) ? { ...core, [dice.pick(['from', 'to'])]: terminal() } : core)
  const resistors = Array.from({ length: dice.whole(0, 3) }, (_, i) => ({
    id: `R${i + 1}`,
    from: terminal(),
    to: terminal(),
    ohm: dice.pick([1, 1200, 1e6]),
  }))
  return {
    ...door,
    supply: { ...door.supply, inner_ohm: dice.pick([0.1, 0.5, 30]), earthed: dice.pick(['none', 'minus', 'plus']) },
    sensors: door.sensors.slice(0, few ? 2 : undefined).map((sensor) => changedSensor(sensor, dice)),
    control: {
      ...door.control,
      inputs: door.control.inputs.map((input) => ({
        ...input,
        fedFrom: dice.chance(0.15) ? { terminal: 'control.24V', ohm: 2000 } : input.fedFrom,
      })),
    },
    cables: door.cables
      .slice(0, few ? 2 : undefined)
      .map((cable) => ({ ...cable, cores: cable.cores.map(elsewhere).filter(() => !dice.chance(0.03)) })),
    resistors,
  }
}

function changedSensor(sensor: WiredSensor, dice: RandomNumbers): WiredSensor {
  const changed = (each: SensorSwitch): SensorSwitch => ({
    ...each,
    output: dice.chance(0.2) ? 'shared' : each.output,
    closedIn: dice.chance(0.2) ? dice.pick<readonly SensorState[]>([['clear', 'unpowered'], ['seen', 'fault'], []]) : each.closedIn,
    off_ohm: dice.chance(0.3) ? dice.pick([1e4, 1e6]) : each.off_ohm,
    pulsed: dice.chance(0.25) ? { at: each.to, against: sensor.power.minus, off_V: 5, within_s: 0.1 } : undefined,
  })
  return {
    ...sensor,
    outputs: sensor.outputs.map(changed),
    ownFaults_s: dice.chance(0.3) ? 2 : undefined,
    test: dice.chance(0.8) ? sensor.test : undefined,
  }
}
