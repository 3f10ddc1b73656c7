import type { Core, SensorState, SensorSwitch, WiredSensor, Wiring } from '../src/model/wiring.ts'

const INVENTED = { basis: 'invented' } as const

/** Invented: sensors with a presence and an opening contact and a test input, a control with two inputs and a test output. */
export function twoRelayDoor({
  presence = ['clear'],
  isTested = true,
  sensors = 1,
}: {
  readonly presence?: readonly SensorState[]
  readonly isTested?: boolean
  readonly sensors?: number
} = {}): Wiring {
  const ids = Array.from({ length: sensors }, (_, i) => (sensors === 1 ? 'scanner' : `scanner${i + 1}`))
  const input = { ohm: 3000, minus: 'control.0V', fedFrom: undefined, pairedWith: undefined }
  const offIs = (means: 'clear' | 'seen') => [
    { from_V: -50, to_V: 5, means },
    { from_V: 11, to_V: 50, means: means === 'clear' ? ('seen' as const) : ('clear' as const) },
  ]
  return {
    supply: {
      plus: 'control.24V',
      minus: 'control.0V',
      least_V: 22,
      largest_V: 27,
      inner_ohm: 0.5,
      largest_A: 2,
      earthed: 'none',
      source: INVENTED,
    },
    sensors: ids.map((id) => twoRelaySensor(id, presence)),
    control: {
      inputs: ids.flatMap((id, i) => [
        {
          ...input,
          id: ids.length === 1 ? 'stop' : `stop-${id}`,
          acts: 'stop',
          plus: i === 0 ? 'control.stop' : `control.stop${i + 1}`,
          bands: offIs(presence.includes('clear') ? 'seen' : 'clear'),
        },
        {
          ...input,
          id: ids.length === 1 ? 'open' : `open-${id}`,
          acts: 'open',
          plus: i === 0 ? 'control.open' : `control.open${i + 1}`,
          bands: offIs('clear'),
        },
      ]),
      test: isTested
        ? {
            from: 'control.24V',
            to: 'control.test',
            on_ohm: 0.5,
            off_ohm: 1e6,
            closedWhile: 'resting',
            expects: ids.map((id) => (ids.length === 1 ? 'stop' : `stop-${id}`)),
            every_s: 3600,
            waits_s: 0.5,
            whenFailed: 'does-not-close',
          }
        : undefined,
      source: INVENTED,
    },
    cables: ids.map((id, i) => ({
      id: `W${i + 1}`,
      length_mm: 6000,
      conductor: { area_mm2: 0.5 },
      cores: coresOf(id, i, isTested),
    })),
    resistors: [],
    joints: [],
  }
}

function twoRelaySensor(id: string, presence: readonly SensorState[]): WiredSensor {
  const contact = (name: string, acts: SensorSwitch['acts'], letter: string, closedIn: readonly SensorState[]): SensorSwitch => ({
    name,
    output: name,
    acts,
    from: `${id}.${letter}1`,
    to: `${id}.${letter}2`,
    closedIn,
    on_ohm: 0.2,
    off_ohm: Infinity,
    pulsed: undefined,
    rating: { largest_V: 42, largest_A: 0.5, least_A: undefined },
  })
  return {
    id,
    power: { plus: `${id}.+`, minus: `${id}.-`, largest_A: 0.2, inrush_A: undefined, least_V: 10, largest_V: 35 },
    outputs: [contact('presence', 'presence', 'P', presence), contact('opening', 'opening', 'O', ['seen'])],
    test: { plus: `${id}.T`, minus: `${id}.-`, ohm: 5000, asked: 'below', on_V: 11, off_V: 5, answers_s: 0.1 },
    ownFaults_s: undefined,
    source: INVENTED,
  }
}

function coresOf(id: string, i: number, isTested: boolean): readonly Core[] {
  const ends = [
    ['control.24V', '+'],
    ['control.0V', '-'],
    ['control.24V', 'P1'],
    [i === 0 ? 'control.stop' : `control.stop${i + 1}`, 'P2'],
    ['control.24V', 'O1'],
    [i === 0 ? 'control.open' : `control.open${i + 1}`, 'O2'],
    [isTested ? 'control.test' : 'control.24V', 'T'],
  ] as const
  const name = (n: number) => (i === 0 ? `${n + 1}` : `${i + 1}.${n + 1}`)
  return ends.map(([from, to], n) => ({ id: name(n), colour: undefined, from, to: `${id}.${to}`, ohm: 0.234 }))
}
