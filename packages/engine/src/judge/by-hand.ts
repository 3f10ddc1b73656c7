import type { Door } from '../model/door.ts'
import type { OutsideValue } from '../model/source.ts'
import type { Wiring } from '../model/wiring.ts'
import { editionOf } from '../values/editions.ts'
import type { Fault } from '../wiring/faults.ts'
import { type HandTest, handTest } from '../wiring/hand-test.ts'
import { meanYears } from '../wiring/reliability.ts'
import { asValue } from './control-fact.ts'
import { type Facts, quantity, step } from './drafts.ts'
import { sensorPath, WIRING } from './paths.ts'

const HAND_TEST = `${WIRING}/handTest`
const BY = 'wiring/hand-test'
const MEAN = 'years until a part fails so that it hides'

export interface ByHand extends HandTest {
  /** Whether it rests on a figure that is only remembered. */
  readonly isRemembered: boolean
}

/**
 * How often the faults that hide in a wiring of these sensors have to be tested for by hand, by what the door file states.
 *
 * @param wiring that of the door, or a proposal for it
 */
export function handTestOf(door: Door, wiring: Wiring, hidden: readonly Fault[]): ByHand {
  const { test, values } = tested(door, wiring, hidden, editionOf(door.edition).edition.values.dangerousShare)
  return { ...test, isRemembered: isRemembered(values) }
}

type Share = OutsideValue & { readonly value: number }

const isRemembered = (values: readonly OutsideValue[]) => values.some(({ source }) => source.basis === 'from memory')

/** A proposed wiring has the cables; the figures stand in that of the door. */
function tested(door: Door, { cables }: Wiring, hidden: readonly Fault[], dangerousShare: Share) {
  const figures = door.wiring?.handTest
  const declared = (id: string) => door.sensors.find((each) => each.id === id)?.declares
  const test = handTest({ handTest: figures, cables }, hidden, (id) => meanYears(declared(id), dangerousShare.value))
  const devices = door.sensors.filter(({ id }) => test.parts.some((part) => part.kind === 'sensor' && part.id === id))
  const inputs = devices.flatMap((sensor) => (sensor.declares ? [`${sensorPath(door, sensor)}/declares`] : []))
  const sources = devices.flatMap(({ declares }) => declares?.source ?? [])
  const byCycles = devices.some(({ declares }) => declares?.mttfd_y === undefined && declares?.b10d !== undefined)
  const values = [
    ...(figures ? [asValue(HAND_TEST, figures.source)] : []),
    ...sources.map((source, i) => asValue(inputs[i] ?? '', source)),
    ...(byCycles ? [dangerousShare] : []),
  ]
  return { test, inputs: [HAND_TEST, ...inputs], values, byCycles }
}

/** The same for a finding: its facts, its arithmetic, and where the figures come from. */
export function byHand(door: Door, wiring: Wiring, hidden: readonly Fault[], dangerousShare: Share) {
  const { test, inputs, values, byCycles } = tested(door, wiring, hidden, dangerousShare)
  const { mean_y, longest_d, mostHidden_percent, missing } = test
  const mean =
    mean_y === undefined
      ? []
      : [step(MEAN, quantity(mean_y, 'y'), BY, { inputs, values: byCycles ? [dangerousShare] : [] }, '1 / sum of 1 / years of each part')]
  const longest =
    longest_d === undefined
      ? []
      : [
          step(
            'longest time between tests by hand',
            quantity(longest_d, 'd'),
            BY,
            { inputs: [HAND_TEST], steps: [MEAN] },
            '2 * share * years * 365',
          ),
        ]
  return {
    facts: {
      ...(mostHidden_percent === undefined ? {} : { mostHidden_percent }),
      ...(longest_d === undefined ? { handMissing: missing.join(', ') } : { longest_d, handRemembered: isRemembered(values) }),
    } satisfies Facts,
    values: mean_y === undefined ? [] : values,
    steps: [...mean, ...longest],
  }
}
