import type { FileWiring } from './schema/wiring.ts'

const REMEMBERED = { basis: 'from memory', note: 'starting figures of the program: hold each against the data sheet' } as const
const LOW_AND_HIGH = [
  { from_V: -50, to_V: 5, means: 'seen' },
  { from_V: 11, to_V: 50, means: 'clear' },
] as const

/** A sensor, its input and its cable, as they are usually wired. */
export interface FirstWired {
  readonly sensor: FileWiring['sensors'][number]
  readonly input: FileWiring['control']['inputs'][number]
  readonly cable: FileWiring['cables'][number]
}

/**
 * One sensor on a cable of its own: its presence output a change-over contact that is closed when clear, an input of the control for it, and the
 * test output that `firstWiring` has.
 *
 * @param n numbers the input and the cable: `1`, or `2kqt` for what may be added on two devices
 */
export function firstWired(id: string, n: string): FirstWired {
  const at = id.replaceAll('.', '_')
  return {
    sensor: {
      sensor: id,
      power: { plus: `${at}.plus`, minus: `${at}.minus`, least_V: 18, largest_V: 30, largest_A: 0.3 },
      outputs: [
        {
          kind: 'change-over',
          name: 'presence',
          acts: 'presence',
          common: `${at}.common`,
          energised: `${at}.closed-when-clear`,
          released: `${at}.closed-when-seen`,
          energisedIn: ['clear'],
        },
      ],
      test: { plus: `${at}.test`, minus: `${at}.minus`, ohm: 5000, asked: 'below', on_V: 11, off_V: 5 },
      source: REMEMBERED,
    },
    input: { id: `stop-${n}`, acts: 'reverse', plus: `control.stop-${n}`, minus: 'control.0V', ohm: 3000, bands: LOW_AND_HIGH },
    cable: {
      id: `W${n}`,
      length_mm: 5000,
      conductor: { area_mm2: 0.5 },
      cores: [
        { id: '1', colour: 'BN', from: 'control.24V', to: `${at}.plus` },
        { id: '2', colour: 'BU', from: 'control.0V', to: `${at}.minus` },
        { id: '3', colour: 'WH', from: 'control.24V', to: `${at}.common` },
        { id: '4', colour: 'GN', from: `control.stop-${n}`, to: `${at}.closed-when-clear` },
        { id: '5', colour: 'YE', from: 'control.test', to: `${at}.test` },
      ],
    },
  }
}

/**
 * A wiring to begin with, so that nobody faces an empty form. All its figures are "from memory", so that nothing passes on them.
 *
 * @param sensors ids of the sensors that are to stop the leaf
 */
export function firstWiring(sensors: readonly string[]): FileWiring {
  const wired = sensors.map((id, i) => firstWired(id, `${i + 1}`))
  return {
    supply: {
      plus: 'control.24V',
      minus: 'control.0V',
      least_V: 21.6,
      largest_V: 26.4,
      inner_ohm: 0.5,
      earthed: 'none',
      source: REMEMBERED,
    },
    sensors: wired.map(({ sensor }) => sensor),
    control: {
      inputs: wired.map(({ input }) => input),
      test: {
        from: 'control.24V',
        to: 'control.test',
        closedWhile: 'resting',
        expects: wired.map(({ input }) => input.id),
        every_s: 3600,
        whenFailed: 'does-not-close',
      },
      source: REMEMBERED,
    },
    cables: wired.map(({ cable }) => cable),
  }
}
