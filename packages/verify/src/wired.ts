import { DOOR_BOUNDS } from './door.ts'
import { idAt, type Json, listAt, numberAt, objectAt, oneOf, own, parseBounded, refuse, textAt, wholeAt } from './json.ts'

/** The door file's wiring as plain numbers (docs/evidence.md, Wiring): volts, ohms, amperes, siemens; terminals by name. */
export interface Wired {
  readonly supply: {
    readonly plus: string
    readonly minus: string
    readonly least: number
    readonly largest: number
    readonly earthed: 'plus' | 'minus' | 'none'
  }
  readonly sensors: readonly WiredSensor[]
  readonly inputs: readonly Input[]
  readonly test: Test | undefined
  readonly cables: readonly { readonly id: string; readonly cores: readonly Core[] }[]
  readonly resistors: readonly string[]
  /** Of all sensors and, last, the control's test output. */
  readonly switches: readonly Switch[]
  /** All but switches. */
  readonly joins: readonly Join[]
  /** Each once, earthed metal among them. */
  readonly terminals: readonly string[]
}

export const STATES = ['clear', 'seen', 'unpowered', 'warming-up', 'fault'] as const
export type State = (typeof STATES)[number]
export const EARTHED_METAL = '(earth)'

export interface Join {
  readonly part: string
  readonly a: string
  readonly b: string
  readonly siemens: number
}

export interface Switch {
  /** Which sensor; -1 for the control's test output. */
  readonly sensor: number
  readonly name: string
  readonly output: string
  readonly a: string
  readonly b: string
  readonly closedIn: readonly State[]
  readonly closed: number // siemens
  readonly open: number
  readonly pulsed: { readonly at: string; readonly against: string; readonly off: number } | undefined
}

export interface WiredSensor {
  readonly id: string
  readonly plus: string
  readonly minus: string
  readonly least: number
  readonly largest: number
  readonly draws: number
  readonly test: { readonly plus: string; readonly minus: string; readonly above: boolean; readonly limit: number } | undefined
  readonly ownFaults_s: number | undefined
  readonly acts: readonly ('presence' | 'opening')[]
}

export interface Input {
  readonly id: string
  readonly protects: boolean
  readonly opens: boolean
  readonly plus: string
  readonly minus: string
  readonly bands: readonly { readonly from: number; readonly to: number; readonly means: 'clear' | 'seen' | 'fault' }[]
  readonly pairedWith: string | undefined
}

interface Test {
  readonly closedWhileAsking: boolean
  readonly expects: readonly string[]
  readonly every_s: number
  readonly keepsFromClosing: boolean
}

interface Core {
  readonly id: string
  readonly from: string
  readonly to: string
  readonly ohm: number
}

const CLOSED_OHM = 0.1
const LEAKING_OHM = 100_000
const PARTED_OHM = 1e12
const AREAS = new Map([
  [0.5, 39],
  [0.75, 26],
  [1, 19.5],
  [1.5, 13.3],
  [2.5, 7.98],
])
const GAUGES = [
  [24, 84.213],
  [22, 52.962],
  [20, 33.308],
  [18, 20.948],
  [16, 13.174],
  [14, 8.2853],
  [12, 5.2107],
] as const

/** A name that this program does not know could change what the wiring does: then nothing is claimed. */
const KNOWN = {
  wiring: ['supply', 'sensors', 'control', 'cables', 'resistors', 'copper', 'joints', 'handTest', 'note'],
  supply: ['plus', 'minus', 'least_V', 'largest_V', 'inner_ohm', 'largest_A', 'earthed', 'limited', 'fuse_A', 'source'],
  sensor: ['sensor', 'power', 'outputs', 'test', 'ownFaults_s', 'source'],
  power: ['plus', 'minus', 'least_V', 'largest_V', 'largest_A', 'inrush_A'],
  contact: ['kind', 'name', 'acts', 'from', 'to', 'closedIn', 'on_ohm', 'rating', 'settable'],
  'change-over': ['kind', 'name', 'acts', 'common', 'energised', 'released', 'energisedIn', 'on_ohm', 'rating', 'settable'],
  transistor: ['kind', 'name', 'acts', 'at', 'onIn', 'on_ohm', 'off_ohm', 'pulsed', 'rating', 'settable'],
  testInput: ['plus', 'minus', 'ohm', 'asked', 'on_V', 'off_V', 'answers_s'],
  control: ['inputs', 'test', 'source'],
  input: ['id', 'acts', 'plus', 'minus', 'ohm', 'fedFrom', 'bands', 'endOfLine_ohm', 'settable', 'pairedWith'],
  test: ['from', 'to', 'on_ohm', 'off_ohm', 'closedWhile', 'expects', 'every_s', 'waits_s', 'whenFailed'],
  cable: ['id', 'length_mm', 'conductor', 'cores'],
  core: ['id', 'colour', 'from', 'to'],
  resistor: ['id', 'from', 'to', 'ohm'],
} as const

export function wiredOf(doorText: string): Wired {
  const file = objectAt(parseBounded(doorText, 'door', DOOR_BOUNDS), 'door')
  const wiring = knownAt(own(file, 'wiring'), 'wiring', KNOWN.wiring)
  const joins: Join[] = []
  const supply = supplyOf(own(wiring, 'supply'), joins)
  const cables = cablesOf(own(wiring, 'cables'), joins)
  const resistors = resistorsOf(own(wiring, 'resistors'), joins)
  const [switches, ids]: [Switch[], Set<string>] = [[], new Set()]
  const sensors = listAt(own(wiring, 'sensors'), 'wiring/sensors', { least: 1, most: 16 }).map((each, i) =>
    sensorOf(each, i, joins, switches, ids),
  )
  const control = knownAt(own(wiring, 'control'), 'wiring/control', KNOWN.control)
  const inputs = inputsOf(own(control, 'inputs'), joins)
  const test = testOf(own(control, 'test'), inputs, switches)
  const ends = [...joins, ...switches].flatMap(({ a, b }) => [a, b])
  const terminals = new Set([...ends, ...sensors.flatMap(({ plus, minus }) => [plus, minus]), EARTHED_METAL])
  return { supply, sensors, inputs, test, cables, resistors, switches, joins, terminals: [...terminals] }
}

function knownAt(value: unknown, path: string, known: readonly string[]): Json {
  const object = objectAt(value, path)
  const odd = Object.keys(object).find((name) => !known.includes(name))
  return odd === undefined ? object : refuse('cannot-show', `${path}/${odd}`, 'only names that this program knows', odd)
}

function ohmAt(object: Json, name: string, path: string, otherwise?: number): number {
  return numberAt(own(object, name) ?? otherwise, `${path}/${name}`, 1e-4, PARTED_OHM)
}

function terminalAt(object: Json, name: string, path: string): string {
  return textAt(own(object, name), `${path}/${name}`)
}

function supplyOf(value: unknown, joins: Join[]): Wired['supply'] {
  const path = 'wiring/supply'
  const given = knownAt(value, path, KNOWN.supply)
  const [plus, minus] = [terminalAt(given, 'plus', path), terminalAt(given, 'minus', path)]
  joins.push({ part: 'supply', a: minus, b: plus, siemens: 1 / ohmAt(given, 'inner_ohm', path) })
  const least = numberAt(own(given, 'least_V'), `${path}/least_V`, 0)
  return {
    plus,
    minus,
    least,
    largest: numberAt(own(given, 'largest_V'), `${path}/largest_V`, least),
    earthed: oneOf(own(given, 'earthed'), `${path}/earthed`, ['plus', 'minus', 'none']),
  }
}

function cablesOf(value: unknown, joins: Join[]): Wired['cables'] {
  const ids = new Set<string>()
  return listAt(value, 'wiring/cables', { most: 32 }).map((each, i) => {
    const path = `wiring/cables/${i}`
    const given = knownAt(each, path, KNOWN.cable)
    const id = idAt(own(given, 'id'), `${path}/id`, ids)
    const length = numberAt(own(given, 'length_mm'), `${path}/length_mm`, 0)
    const ohm = Math.max(1e-4, (length / 1e6) * ohmPerKm(objectAt(own(given, 'conductor'), `${path}/conductor`), `${path}/conductor`))
    const cores = listAt(own(given, 'cores'), `${path}/cores`, { least: 1, most: 40 })
    const names = new Set<string>()
    return {
      id,
      cores: cores.map((core, k) => {
        const at = `${path}/cores/${k}`
        const [one, name] = [knownAt(core, at, KNOWN.core), `${id}.`]
        const found = {
          id: name + idAt(own(one, 'id'), `${at}/id`, names),
          from: terminalAt(one, 'from', at),
          to: terminalAt(one, 'to', at),
          ohm,
        }
        joins.push({ part: `core ${found.id}`, a: found.from, b: found.to, siemens: 1 / ohm })
        return found
      }),
    }
  })
}

/** Largest resistance of a conductor at 20 °C. */
export function ohmPerKm(conductor: Json, path: string): number {
  const area = own(conductor, 'area_mm2')
  if (area !== undefined) {
    const area_mm2 = numberAt(area, `${path}/area_mm2`, 0.01)
    return AREAS.get(area_mm2) ?? 20 / area_mm2
  }
  const awg = wholeAt(own(conductor, 'awg'), `${path}/awg`, 0, 40)
  let [nearest, solid]: readonly [number, number] = GAUGES[0]
  for (const [gauge, ohm] of GAUGES) if (Math.abs(gauge - awg) < Math.abs(nearest - awg)) [nearest, solid] = [gauge, ohm]
  return solid * 1.2609856 ** (awg - nearest) * 1.03
}

function resistorsOf(value: unknown, joins: Join[]): readonly string[] {
  const ids = new Set<string>()
  return listAt(value ?? [], 'wiring/resistors', { most: 64 }).map((each, i) => {
    const path = `wiring/resistors/${i}`
    const given = knownAt(each, path, KNOWN.resistor)
    const id = idAt(own(given, 'id'), `${path}/id`, ids)
    const [a, b] = [terminalAt(given, 'from', path), terminalAt(given, 'to', path)]
    joins.push({ part: `resistor ${id}`, a, b, siemens: 1 / ohmAt(given, 'ohm', path) })
    return id
  })
}

function sensorOf(value: unknown, i: number, joins: Join[], switches: Switch[], ids: Set<string>): WiredSensor {
  const path = `wiring/sensors/${i}`
  const given = knownAt(value, path, KNOWN.sensor)
  const power = knownAt(own(given, 'power'), `${path}/power`, KNOWN.power)
  const [plus, minus] = [terminalAt(power, 'plus', `${path}/power`), terminalAt(power, 'minus', `${path}/power`)]
  const names = new Set<string>()
  const outputs = listAt(own(given, 'outputs'), `${path}/outputs`, { least: 1, most: 16 })
  const acts = outputs.map((each, k) => outputOf(each, `${path}/outputs/${k}`, { sensor: i, plus, minus, names }, switches))
  const own_s = own(given, 'ownFaults_s')
  return {
    id: idAt(own(given, 'sensor'), `${path}/sensor`, ids),
    plus,
    minus,
    least: numberAt(own(power, 'least_V'), `${path}/power/least_V`),
    largest: numberAt(own(power, 'largest_V'), `${path}/power/largest_V`),
    draws: numberAt(own(power, 'largest_A'), `${path}/power/largest_A`, 0),
    test: testInputOf(own(given, 'test'), `${path}/test`, joins),
    ownFaults_s: own_s === undefined ? undefined : numberAt(own_s, `${path}/ownFaults_s`, 0),
    acts,
  }
}

function testInputOf(value: unknown, path: string, joins: Join[]): WiredSensor['test'] {
  if (value === undefined) return undefined
  const given = knownAt(value, path, KNOWN.testInput)
  const [plus, minus] = [terminalAt(given, 'plus', path), terminalAt(given, 'minus', path)]
  joins.push({ part: 'test input', a: plus, b: minus, siemens: 1 / ohmAt(given, 'ohm', path) })
  const above = oneOf(own(given, 'asked'), `${path}/asked`, ['above', 'below']) === 'above'
  const limit = above ? numberAt(own(given, 'on_V'), `${path}/on_V`) : numberAt(own(given, 'off_V'), `${path}/off_V`)
  return { plus, minus, above, limit }
}

interface Inside {
  readonly sensor: number
  readonly plus: string
  readonly minus: string
  readonly names: Set<string>
}

function outputOf(value: unknown, path: string, { sensor, plus, minus, names }: Inside, switches: Switch[]): 'presence' | 'opening' {
  const object = objectAt(value, path)
  const kind = oneOf(own(object, 'kind'), `${path}/kind`, ['contact', 'change-over', 'sourcing', 'sinking'])
  const given = knownAt(value, path, KNOWN[kind === 'sourcing' || kind === 'sinking' ? 'transistor' : kind])
  const output = idAt(own(given, 'name'), `${path}/name`, names)
  const at = (name: string) => terminalAt(given, name, path)
  const common = { sensor, output, closed: 1 / ohmAt(given, 'on_ohm', path, CLOSED_OHM), open: 1 / PARTED_OHM, pulsed: undefined }
  if (kind === 'contact')
    switches.push({ ...common, name: output, a: at('from'), b: at('to'), closedIn: statesAt(given, 'closedIn', path) })
  else if (kind === 'change-over') {
    const closedIn = statesAt(given, 'energisedIn', path)
    switches.push({ ...common, name: `${output}/energised`, a: at('common'), b: at('energised'), closedIn })
    const others = STATES.filter((state) => !closedIn.includes(state))
    switches.push({ ...common, name: `${output}/released`, a: at('common'), b: at('released'), closedIn: others })
  } else {
    const [a, against] = kind === 'sourcing' ? [plus, minus] : [minus, plus]
    const pulses = own(given, 'pulsed')
    const off = pulses === undefined ? 0 : numberAt(own(objectAt(pulses, `${path}/pulsed`), 'off_V'), `${path}/pulsed/off_V`)
    const pulsed = pulses === undefined ? undefined : { at: at('at'), against, off }
    const open = 1 / numberAt(own(given, 'off_ohm') ?? LEAKING_OHM, `${path}/off_ohm`, 1e-9, PARTED_OHM)
    switches.push({ ...common, name: output, a, b: at('at'), closedIn: statesAt(given, 'onIn', path), open, pulsed })
  }
  return oneOf(own(given, 'acts'), `${path}/acts`, ['presence', 'opening'])
}

function statesAt(given: Json, name: string, path: string): readonly State[] {
  return listAt(own(given, name), `${path}/${name}`, { most: 5 }).map((each, i) => oneOf(each, `${path}/${name}/${i}`, STATES))
}

function inputsOf(value: unknown, joins: Join[]): readonly Input[] {
  const ids = new Set<string>()
  const inputs = listAt(value, 'wiring/control/inputs', { least: 1, most: 32 }).map((each, i): Input => {
    const path = `wiring/control/inputs/${i}`
    const given = knownAt(each, path, KNOWN.input)
    const [plus, minus] = [terminalAt(given, 'plus', path), terminalAt(given, 'minus', path)]
    joins.push({ part: 'input', a: plus, b: minus, siemens: 1 / ohmAt(given, 'ohm', path) })
    const fed = own(given, 'fedFrom')
    if (fed !== undefined) {
      const feed = knownAt(fed, `${path}/fedFrom`, ['terminal', 'ohm'])
      const siemens = 1 / ohmAt(feed, 'ohm', `${path}/fedFrom`)
      joins.push({ part: 'feed', a: terminalAt(feed, 'terminal', `${path}/fedFrom`), b: plus, siemens })
    }
    const acts = oneOf(own(given, 'acts'), `${path}/acts`, ['stop', 'reverse', 'open', 'hold'])
    const paired = own(given, 'pairedWith')
    return {
      id: idAt(own(given, 'id'), `${path}/id`, ids),
      protects: acts === 'stop' || acts === 'reverse',
      opens: acts === 'open',
      plus,
      minus,
      bands: listAt(own(given, 'bands'), `${path}/bands`, { least: 1, most: 8 }).map((band, k) => bandOf(band, `${path}/bands/${k}`)),
      pairedWith: paired === undefined ? undefined : textAt(own(objectAt(paired, path), 'id'), `${path}/pairedWith/id`),
    }
  })
  for (const { id, pairedWith } of inputs)
    if (pairedWith !== undefined && (pairedWith === id || !ids.has(pairedWith)))
      refuse('unknown', 'wiring/control/inputs', 'another input', pairedWith)
  return inputs
}

function bandOf(value: unknown, path: string): Input['bands'][number] {
  const given = knownAt(value, path, ['from_V', 'to_V', 'means'])
  const [from, to] = [numberAt(own(given, 'from_V'), `${path}/from_V`), numberAt(own(given, 'to_V'), `${path}/to_V`)]
  return { from, to, means: oneOf(own(given, 'means'), `${path}/means`, ['clear', 'seen', 'fault']) }
}

function testOf(value: unknown, inputs: readonly Input[], switches: Switch[]): Test | undefined {
  const path = 'wiring/control/test'
  if (value === undefined) return undefined
  const given = knownAt(value, path, KNOWN.test)
  const ends = { a: terminalAt(given, 'from', path), b: terminalAt(given, 'to', path) }
  const open = 1 / numberAt(own(given, 'off_ohm') ?? LEAKING_OHM, `${path}/off_ohm`, 1e-9, PARTED_OHM)
  const closed = 1 / ohmAt(given, 'on_ohm', path, CLOSED_OHM)
  switches.push({ ...ends, sensor: -1, name: 'test', output: 'test', closedIn: [], open, closed, pulsed: undefined })
  const ids = inputs.map(({ id }) => id)
  return {
    closedWhileAsking: oneOf(own(given, 'closedWhile'), `${path}/closedWhile`, ['asking', 'resting']) === 'asking',
    expects: listAt(own(given, 'expects'), `${path}/expects`, { most: 32 }).map((each, i) => oneOf(each, `${path}/expects/${i}`, ids)),
    every_s: numberAt(own(given, 'every_s'), `${path}/every_s`, 0),
    keepsFromClosing: oneOf(own(given, 'whenFailed'), `${path}/whenFailed`, ['does-not-close', 'nothing']) === 'does-not-close',
  }
}
