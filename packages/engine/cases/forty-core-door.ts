import type { ControlInput, Core, SensorSwitch, WiredSensor, Wiring } from '../src/model/wiring.ts'
import { twoRelayDoor } from './two-relay-door.ts'

/** Invented: four tested sensors with two presence channels and an opening contact on ten cores each, in a cable each or all in one. */
export function fortyCoreDoor({ cables = 4 }: { readonly cables?: 1 | 4 } = {}): Wiring {
  const door = twoRelayDoor({ sensors: 4 })
  const cores = door.cables.map(({ cores: seven }, i) => [...seven, ...secondChannel(i)])
  return {
    ...door,
    sensors: door.sensors.map(withSecondChannel),
    control: {
      ...door.control,
      inputs: door.control.inputs.flatMap((input, i) => (i % 2 === 0 ? pairOf(input, i / 2) : [input])),
    },
    cables: door.cables.slice(0, cables).map((cable, i) => ({ ...cable, cores: cables === 4 ? (cores[i] ?? []) : cores.flat() })),
  }
}

function withSecondChannel(sensor: WiredSensor): WiredSensor {
  const [first, ...others] = sensor.outputs as readonly [SensorSwitch, ...SensorSwitch[]]
  const second = { ...first, name: 'presence-2', output: 'presence-2', from: `${sensor.id}.Q1`, to: `${sensor.id}.Q2` }
  return { ...sensor, outputs: [first, second, ...others], test: sensor.test && { ...sensor.test, minus: `${sensor.id}.T-` } }
}

function pairOf(input: ControlInput, i: number): readonly ControlInput[] {
  const id = `${input.id}-2`
  return [
    { ...input, pairedWith: { id, discrepancy_s: 0.5 } },
    { ...input, id, plus: `control.second${i + 1}`, pairedWith: { id: input.id, discrepancy_s: 0.5 } },
  ]
}

function secondChannel(i: number): readonly Core[] {
  const ends = [
    ['control.24V', 'Q1'],
    [`control.second${i + 1}`, 'Q2'],
    ['control.0V', 'T-'],
  ] as const
  const sensor = `scanner${i + 1}`
  return ends.map(([from, to], n) => ({ id: `${i + 1}.${n + 8}`, colour: undefined, from, to: `${sensor}.${to}`, ohm: 0.234 }))
}
