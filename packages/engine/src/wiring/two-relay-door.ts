import type { SensorState, Wiring } from '../model/wiring.ts'

/** Invented: a sensor with a presence and an opening contact and a test input, a control with two inputs and a test output. */
export function twoRelayDoor({
  presence = ['clear'],
  isTested = true,
}: {
  readonly presence?: readonly SensorState[]
  readonly isTested?: boolean
} = {}): Wiring {
  const input = { ohm: 3000, bands: [] }
  const offIs = (means: 'clear' | 'seen') => [
    { from_V: -50, to_V: 5, means },
    { from_V: 11, to_V: 50, means: means === 'clear' ? ('seen' as const) : ('clear' as const) },
  ]
  return {
    supply: { plus: 'control.24V', minus: 'control.0V', least_V: 22, largest_V: 27, inner_ohm: 0.5 },
    sensors: [
      {
        id: 'scanner',
        power: { plus: 'scanner.+', minus: 'scanner.-', largest_A: 0.2, least_V: 10, largest_V: 35 },
        outputs: [
          { name: 'presence', acts: 'presence', from: 'scanner.P1', to: 'scanner.P2', closedIn: presence, on_ohm: 0.2, off_ohm: Infinity },
          { name: 'opening', acts: 'opening', from: 'scanner.O1', to: 'scanner.O2', closedIn: ['seen'], on_ohm: 0.2, off_ohm: Infinity },
        ],
        test: { plus: 'scanner.T', minus: 'scanner.-', ohm: 5000, asked: 'below', on_V: 11, off_V: 5 },
      },
    ],
    control: {
      inputs: [
        {
          ...input,
          id: 'stop',
          acts: 'stop',
          plus: 'control.stop',
          minus: 'control.0V',
          bands: offIs(presence.includes('clear') ? 'seen' : 'clear'),
        },
        { ...input, id: 'open', acts: 'open', plus: 'control.open', minus: 'control.0V', bands: offIs('clear') },
      ],
      test: isTested
        ? { from: 'control.24V', to: 'control.test', on_ohm: 0.5, off_ohm: 1e6, closedWhile: 'resting', expects: ['stop'], every_s: 3600 }
        : undefined,
    },
    cables: [
      {
        id: 'W1',
        length_mm: 6000,
        cores: (
          [
            ['1', 'control.24V', 'scanner.+'],
            ['2', 'control.0V', 'scanner.-'],
            ['3', 'control.24V', 'scanner.P1'],
            ['4', 'control.stop', 'scanner.P2'],
            ['5', 'control.24V', 'scanner.O1'],
            ['6', 'control.open', 'scanner.O2'],
            ['7', isTested ? 'control.test' : 'control.24V', 'scanner.T'],
          ] as const
        ).map(([id, from, to]) => ({ id, from, to, ohm: 0.4 })),
      },
    ],
  }
}
