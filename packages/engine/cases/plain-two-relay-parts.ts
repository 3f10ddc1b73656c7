import type { Band, ControlInput, SensorState, SensorSwitch, WiredSensor } from '../src/model/wiring.ts'
import type { Parts } from '../src/wiring/connecting.ts'
import { twoRelayDoor } from './two-relay-door.ts'

/**
 * Invented: sensors with two change-over relays, each of which can be set to be drawn in while clear or while something is seen, beside a control whose
 * stop inputs can be set either way.
 */
export function plainTwoRelayParts({
  isTested = true,
  sensors = 1,
  mayTurn = ['stop'],
}: {
  readonly isTested?: boolean
  readonly mayTurn?: readonly ControlInput['acts'][]
  readonly sensors?: number
} = {}): Parts {
  const { supply, control, sensors: plain } = twoRelayDoor({ isTested, sensors })
  return {
    supply,
    sensors: plain.map((sensor) =>
      (['clear', 'seen'] as const).flatMap((presence) =>
        (['clear', 'seen'] as const).map((opening) => withRelays(sensor, { presence, opening })),
      ),
    ),
    inputs: control.inputs.map((input) => (mayTurn.includes(input.acts) ? [input, turned(input)] : [input])),
    tests: control.test ? [control.test, undefined] : [undefined],
    source: control.source,
    cable: { length_mm: 6000, conductor: { area_mm2: 0.5 }, ohm: 0.234 },
  }
}

function turned(input: ControlInput): ControlInput {
  const means = { clear: 'seen', seen: 'clear', fault: 'fault' } as const
  return { ...input, bands: input.bands.map((band): Band => ({ ...band, means: means[band.means] })) }
}

/** A change-over contact: one side closes while the relay is drawn in, the other whenever it is not. */
function withRelays(sensor: WiredSensor, drawnIn: Readonly<Record<'presence' | 'opening', 'clear' | 'seen'>>): WiredSensor {
  const sides = (acts: 'presence' | 'opening', letter: string): readonly SensorSwitch[] => {
    const on = drawnIn[acts]
    const off: readonly SensorState[] = [on === 'clear' ? 'seen' : 'clear', 'unpowered', 'warming-up', 'fault']
    const side = (name: string, end: number, closedIn: readonly SensorState[]): SensorSwitch => ({
      ...{ name: `${acts}-${name}`, output: acts, acts, from: `${sensor.id}.${letter}0`, to: `${sensor.id}.${letter}${end}`, closedIn },
      ...{ on_ohm: 0.2, off_ohm: Infinity, pulsed: undefined, rating: undefined },
    })
    return [side('make', 1, [on]), side('break', 2, off)]
  }
  return { ...sensor, outputs: [...sides('presence', 'P'), ...sides('opening', 'O')] }
}
