import { type Cable, conductorOhm_per_km, type SensorSwitch, type Wiring } from '@sillsight/engine'
import type { Remarks } from '../remarks.ts'
import type { FileWiring } from '../schema/wiring.ts'
import { shown, shownText } from '../shown.ts'
import { reportTwins } from './states.ts'

type FileSensor = FileWiring['sensors'][number]
type FileOutput = FileSensor['outputs'][number]

const ON_OHM = 0.1
/** Of a transistor or a test output; a contact leaks nothing. */
const OFF_OHM = 100_000
/** All cores together: every pair of a cable is a fault, so that the work grows with the square of it. */
const MOST_CORES = 200

/** The wiring as the engine knows it; contradictions among the remarks. */
export function wiringOf(file: FileWiring | undefined, sensors: readonly string[], remarks: Remarks): Wiring | undefined {
  if (file === undefined) return undefined
  checkNames(file, sensors, remarks)
  checkTerminals(file, remarks)
  checkFigures(file, remarks)
  const { supply, control } = file
  return {
    supply: { ...supply, largest_A: supply.largest_A },
    sensors: file.sensors.map(({ sensor, power, outputs, test, ownFaults_s, source }) => ({
      id: sensor,
      power: { ...power, inrush_A: power.inrush_A },
      outputs: outputs.flatMap((output) => switchesOf(output, power)),
      test: test && { ...test, answers_s: test.answers_s },
      ownFaults_s,
      source,
    })),
    control: {
      inputs: control.inputs.map(({ settable, ...input }) => ({
        ...input,
        fedFrom: input.fedFrom,
        pairedWith: input.pairedWith,
        turns: settable === 'either-way',
      })),
      test: control.test && {
        ...control.test,
        on_ohm: control.test.on_ohm ?? ON_OHM,
        off_ohm: control.test.off_ohm ?? OFF_OHM,
        waits_s: control.test.waits_s,
      },
      source: control.source,
    },
    cables: file.cables.map(cableOf),
    resistors: file.resistors ?? [],
    joints: file.joints ?? [],
    copper: file.copper,
    handTest: file.handTest,
  }
}

function switchesOf(output: FileOutput, { plus, minus }: FileSensor['power']): readonly SensorSwitch[] {
  const { name, acts, on_ohm = ON_OHM } = output
  const common = { output: name, acts, on_ohm, turns: output.settable === 'either-way', rating: ratingOf(output.rating) }
  switch (output.kind) {
    case 'contact': {
      const { from, to, closedIn } = output
      return [{ ...common, name, from, to, closedIn, off_ohm: Number.POSITIVE_INFINITY, pulsed: undefined }]
    }
    case 'change-over': {
      const { common: from, energised, released, energisedIn } = output
      const side = { ...common, from, off_ohm: Number.POSITIVE_INFINITY, pulsed: undefined }
      const others = (['clear', 'seen', 'unpowered', 'warming-up', 'fault'] as const).filter((state) => !energisedIn.includes(state))
      return [
        { ...side, name: `${name}/energised`, to: energised, closedIn: energisedIn },
        { ...side, name: `${name}/released`, to: released, closedIn: others },
      ]
    }
    default: {
      const { at, onIn, off_ohm = OFF_OHM, pulsed } = output
      const [from, against] = output.kind === 'sourcing' ? [plus, minus] : [minus, plus]
      return [{ ...common, name, from, to: at, closedIn: onIn, off_ohm, pulsed: pulsed && { ...pulsed, at, against } }]
    }
  }
}

function ratingOf(rating: Extract<FileOutput, { kind: 'contact' }>['rating']): SensorSwitch['rating'] {
  return rating && { largest_V: rating.largest_V, largest_A: rating.largest_A, least_A: rating.least_A }
}

function cableOf({ id, length_mm, conductor, cores }: FileWiring['cables'][number]): Cable {
  const ohm = Math.max(1e-4, (length_mm / 1e6) * conductorOhm_per_km(conductor))
  return {
    id,
    length_mm,
    conductor,
    cores: cores.map((core) => ({ id: `${id}.${core.id}`, colour: core.colour, from: core.from, to: core.to, ohm })),
  }
}

function checkNames(file: FileWiring, sensors: readonly string[], remarks: Remarks): void {
  const twins = (ids: readonly string[], path: (i: number) => string) => reportTwins(ids, path, remarks)
  const unknown = (path: string, known: readonly string[], say: (ids: string) => string, got: string) => {
    const expected = say(known.slice(0, 10).map(shownText).join(', '))
    remarks.issue({ code: 'unknown-id', path: `wiring/${path}`, expected, got: shownText(got) })
  }
  twins(
    file.sensors.map(({ sensor }) => sensor),
    (i) => `wiring/sensors/${i}/sensor`,
  )
  for (const [i, { sensor, outputs }] of file.sensors.entries()) {
    if (!sensors.includes(sensor)) unknown(`sensors/${i}/sensor`, sensors, (ids) => `a sensor of the door (${ids})`, sensor)
    twins(
      outputs.map(({ name }) => name),
      (k) => `wiring/sensors/${i}/outputs/${k}/name`,
    )
  }
  const inputs = file.control.inputs.map(({ id }) => id)
  twins(inputs, (i) => `wiring/control/inputs/${i}/id`)
  for (const [i, { id, pairedWith }] of file.control.inputs.entries()) {
    const others = inputs.filter((other) => other !== id)
    if (pairedWith && !others.includes(pairedWith.id))
      unknown(`control/inputs/${i}/pairedWith/id`, others, (ids) => `another input (${ids})`, pairedWith.id)
  }
  for (const [i, expected] of (file.control.test?.expects ?? []).entries())
    if (!inputs.includes(expected)) unknown(`control/test/expects/${i}`, inputs, (ids) => `an input (${ids})`, expected)
  twins(
    file.cables.map(({ id }) => id),
    (i) => `wiring/cables/${i}/id`,
  )
  for (const [i, { cores }] of file.cables.entries())
    twins(
      cores.map(({ id }) => id),
      (k) => `wiring/cables/${i}/cores/${k}/id`,
    )
  twins(
    (file.resistors ?? []).map(({ id }) => id),
    (i) => `wiring/resistors/${i}/id`,
  )
}

/** Where a core or a resistor may end: what some part has, or a joint. */
function terminalsOf({ supply, sensors, control, joints = [] }: FileWiring): ReadonlySet<string> {
  const ofOutput = (output: FileOutput) => {
    switch (output.kind) {
      case 'contact':
        return [output.from, output.to]
      case 'change-over':
        return [output.common, output.energised, output.released]
      default:
        return [output.at]
    }
  }
  return new Set([
    supply.plus,
    supply.minus,
    ...sensors.flatMap(({ power, outputs, test }) => [
      power.plus,
      power.minus,
      ...outputs.flatMap(ofOutput),
      ...(test ? [test.plus, test.minus] : []),
    ]),
    ...control.inputs.flatMap(({ plus, minus, fedFrom }) => [plus, minus, ...(fedFrom ? [fedFrom.terminal] : [])]),
    ...(control.test ? [control.test.from, control.test.to] : []),
    ...joints,
  ])
}

function checkTerminals(file: FileWiring, remarks: Remarks): void {
  const known = terminalsOf(file)
  const ends = [
    ...file.cables.flatMap(({ cores }, i) => cores.map((core, k) => ({ ...core, path: `wiring/cables/${i}/cores/${k}` }))),
    ...(file.resistors ?? []).map((each, i) => ({ ...each, path: `wiring/resistors/${i}` })),
  ]
  for (const { from, to, path } of ends) {
    for (const [end, terminal, other] of [
      ['from', from, to],
      ['to', to, from],
    ] as const)
      if (!known.has(terminal))
        remarks.issue({
          code: 'unknown-id',
          path: `${path}/${end}`,
          expected: `a terminal that some part has (${near(terminal, known)}); its other end is at ${shownText(other)}`,
          got: shownText(terminal),
        })
    if (from === to)
      remarks.issue({ code: 'contradiction', path: `${path}/to`, expected: 'another terminal than at its beginning', got: shownText(to) })
  }
}

/** Those of the same device first. */
function near(terminal: string, known: ReadonlySet<string>): string {
  const device = `${terminal.split('.')[0]}.`
  const all = [...known].sort((a, b) => Number(b.startsWith(device)) - Number(a.startsWith(device)))
  return all.slice(0, 10).map(shownText).join(', ')
}

function checkFigures(file: FileWiring, remarks: Remarks): void {
  const wrong = (path: string, expected: string, got: string) =>
    remarks.issue({ code: 'contradiction', path: `wiring/${path}`, expected, got })
  const { supply, sensors, control, cables } = file
  if (supply.plus === supply.minus) wrong('supply/minus', 'another terminal than plus', shownText(supply.minus))
  if (supply.largest_V < supply.least_V) wrong('supply/largest_V', `at least least_V (${supply.least_V})`, shown(supply.largest_V))
  const { coldest_degC = Number.NEGATIVE_INFINITY, hottest_degC = coldest_degC } = file.copper ?? {}
  if (hottest_degC < coldest_degC) wrong('copper/hottest_degC', `at least coldest_degC (${coldest_degC})`, shown(hottest_degC))
  for (const [i, { power, outputs, test }] of sensors.entries()) {
    if (power.largest_V < power.least_V)
      wrong(`sensors/${i}/power/largest_V`, `at least least_V (${power.least_V})`, shown(power.largest_V))
    if (test && test.on_V <= test.off_V) wrong(`sensors/${i}/test/on_V`, `above off_V (${test.off_V})`, shown(test.on_V))
    for (const [k, output] of outputs.entries()) {
      const [name, energised] =
        output.kind === 'contact' ? [] : output.kind === 'change-over' ? ['energisedIn', output.energisedIn] : ['onIn', output.onIn]
      if (energised?.includes('unpowered'))
        wrong(`sensors/${i}/outputs/${k}/${name}`, 'no "unpowered": nothing is energised without power', '"unpowered"')
    }
  }
  for (const [i, { bands }] of control.inputs.entries()) {
    const sorted = bands.map((band, k) => ({ ...band, k })).sort((a, b) => a.from_V - b.from_V)
    for (const [n, { from_V, to_V, k }] of sorted.entries()) {
      const before = sorted[n - 1]
      if (to_V <= from_V) wrong(`control/inputs/${i}/bands/${k}/to_V`, `above from_V (${from_V})`, shown(to_V))
      else if (before && from_V <= before.to_V)
        wrong(`control/inputs/${i}/bands/${k}/from_V`, `above the end of the range before (${before.to_V})`, shown(from_V))
    }
  }
  const cores = cables.reduce((sum, cable) => sum + cable.cores.length, 0)
  if (cores > MOST_CORES) wrong('cables', `at most ${MOST_CORES} cores together`, shown(cores))
}
