import type { Source } from '../model/source.ts'
import type {
  Band,
  Cable,
  Conductor,
  ControlInput,
  ControlTest,
  Core,
  Resistor,
  SensorState,
  SensorSwitch,
  Supply,
  Terminal,
  TestInput,
  WiredSensor,
  Wiring,
} from '../model/wiring.ts'

/** What there is to connect, without cables. A part that can be set in several ways comes in each of them. */
export interface Parts {
  readonly supply: Supply
  readonly sensors: readonly (readonly WiredSensor[])[]
  readonly inputs: readonly (readonly ControlInput[])[]
  /** The control's test, and `undefined` where it may be left unused or there is none. */
  readonly tests: readonly (ControlTest | undefined)[]
  /** Of the control. */
  readonly source: Source
  /** Of each cable that a proposal lays. */
  readonly cable: { readonly length_mm: number; readonly conductor: Conductor; readonly ohm: number }
}

/** Where a contact gets its voltage: a core from the rail, a link from the sensor's own supply terminal, a core from the control's test output. */
export const FEEDS = ['core', 'link', 'test-output'] as const
export type Feed = (typeof FEEDS)[number]

/** Where a sensor's test input goes: to the control's test output, by a link to one of the sensor's own supply terminals, or nowhere. */
export const TEST_TIES = ['test-output', 'plus', 'minus', 'nothing'] as const
export type TestTie = (typeof TEST_TIES)[number]

export interface SensorChoice {
  readonly sensor: WiredSensor
  /** One for each channel of the input. */
  readonly presence: readonly SensorSwitch[]
  readonly presenceFeed: Feed
  readonly opening: SensorSwitch | undefined
  readonly openingFeed: Feed
  readonly testTie: TestTie
}

/** Where the resistor lies that an input wants at the end of its line: in series with the contact that is farthest from it, across it, or nowhere. */
export const ENDS = ['none', 'series', 'parallel'] as const
export type End = (typeof ENDS)[number]

/** The contacts on one input, in series or side by side; the first is the farthest. */
export interface Line {
  readonly input: ControlInput
  readonly members: readonly LineMember[]
  readonly laid: 'series' | 'parallel'
  readonly end: End
}

export interface LineMember {
  readonly sensor: WiredSensor
  readonly contact: SensorSwitch
  readonly feed: Feed
}

/**
 * Whether a line says "clear" where nobody stands and "seen" where one sensor sees, contacts being perfect: cheap, and no network that is in order
 * fails it.
 */
export function saysRight({ input, members, laid, end }: Line, supply: Supply): boolean {
  if (members.length === 0) return true
  const line_ohm = (seen: number) => {
    const ohms = members.map(({ contact }, i) => {
      const ohm = contact.closedIn.includes(i === seen ? 'seen' : 'clear') ? 0 : Infinity
      const end_ohm = i === 0 ? input.endOfLine_ohm : undefined
      if (end_ohm === undefined || end === 'none') return ohm
      return end === 'series' ? ohm + end_ohm : beside(ohm, end_ohm)
    })
    return ohms.reduce((a, b) => (laid === 'series' ? a + b : beside(a, b)))
  }
  const says = (seen: number) => meaningOfVolt(input, lineVolt(input, supply, line_ohm(seen)))
  return says(-1) === 'clear' && members.every((_, i) => says(i) === 'seen' || (protects(input) && says(i) === 'fault'))
}

/** Stops or reverses the leaf. */
export const protects = ({ acts }: ControlInput) => acts === 'stop' || acts === 'reverse'

/** Of two resistances side by side; either may be 0 or infinite. */
const beside = (a_ohm: number, b_ohm: number) => 1 / (1 / a_ohm + 1 / b_ohm)

/** @param line_ohm of the line between its rail and the input: 0 where it conducts, Infinity where it is open */
function lineVolt({ fedFrom, ohm }: ControlInput, { least_V }: Supply, line_ohm: number): number {
  if (fedFrom === undefined) return (least_V * ohm) / (ohm + line_ohm)
  const below = beside(ohm, line_ohm)
  return (least_V * below) / (below + fedFrom.ohm)
}

/** What a voltage on an input means, if it lies in a band. */
export function meaningOfVolt({ bands }: ControlInput, volt: number): Band['means'] | undefined {
  return bands.find(({ from_V, to_V }) => from_V <= volt && volt <= to_V)?.means
}

/** A cable for each sensor, links at terminals (cables without length), joints in the control. Undefined where a contact cannot be laid so. */
export function connected(
  parts: Parts,
  test: ControlTest | undefined,
  choices: readonly SensorChoice[],
  lines: readonly Line[],
): Wiring | undefined {
  const sheet: Sheet = { parts, test, coresOf: new Map(), links: [], joints: [], resistors: [] }
  for (const { sensor } of choices) {
    addCore(sheet, sensor, parts.supply.plus, sensor.power.plus)
    addCore(sheet, sensor, parts.supply.minus, sensor.power.minus)
  }
  const isLaid = lines.every((line) => layLine(sheet, line)) && choices.every(({ sensor, testTie }) => layTest(sheet, sensor, testTie))
  if (!isLaid) return undefined
  return {
    supply: parts.supply,
    sensors: choices.map(({ sensor }) => sensor),
    control: { inputs: lines.map(({ input }) => input), test, source: parts.source },
    cables: [...[...sheet.coresOf].map(([id, ends]) => cableOf(parts, id, ends)), ...sheet.links.map((link, i) => linkOf(link, i))],
    resistors: sheet.resistors,
    joints: sheet.joints,
  }
}

/**
 * What a wiring connects, to be connected anew: each part as it is set now and in each other way that its data allow, the control's test used or not, cables
 * as long as its longest.
 */
export function partsFrom({ supply, sensors, control, cables }: Wiring): Parts {
  const [longest] = [...cables].sort((a, b) => b.length_mm - a.length_mm)
  const { length_mm, conductor } = longest ?? { length_mm: 10_000, conductor: { area_mm2: 0.5 } }
  return {
    supply,
    sensors: sensors.map(settingsOf),
    inputs: control.inputs.map((input) => (input.turns ? [input, turnedInput(input)] : [input])),
    tests: control.test ? [control.test, undefined] : [undefined],
    source: control.source,
    cable: { length_mm, conductor, ohm: longest?.cores[0]?.ohm ?? 0.35 },
  }
}

/** So many outputs of one sensor are turned; what else it has stays as it is set. */
const MOST_TURNED = 6

/** As it is first, then with each choice of the outputs that can be turned. */
function settingsOf(sensor: WiredSensor): readonly WiredSensor[] {
  const turning = [...new Set(sensor.outputs.flatMap(({ output, turns }) => (turns ? [output] : [])))].slice(0, MOST_TURNED)
  return Array.from({ length: 1 << turning.length }, (_, choice) => ({
    ...sensor,
    outputs: sensor.outputs.map((each) =>
      choice & (1 << turning.indexOf(each.output)) && turning.includes(each.output) ? turnedSwitch(each) : each,
    ),
  }))
}

const TURNED = { clear: 'seen', seen: 'clear' } as const
const isTurned = (word: string): word is keyof typeof TURNED => word === 'clear' || word === 'seen'

function turnedSwitch(each: SensorSwitch): SensorSwitch {
  return { ...each, closedIn: each.closedIn.map((state): SensorState => (isTurned(state) ? TURNED[state] : state)) }
}

function turnedInput(input: ControlInput): ControlInput {
  return { ...input, bands: input.bands.map((band): Band => ({ ...band, means: isTurned(band.means) ? TURNED[band.means] : band.means })) }
}

/** Cores that go through cables; a link lies inside a housing, and counts as none. */
export function coresIn({ cables }: Wiring): number {
  return cables.reduce((sum, { length_mm, cores }) => sum + (length_mm > 0 ? cores.length : 0), 0)
}

type Ends = readonly [from: Terminal, to: Terminal]

interface Sheet {
  readonly parts: Parts
  readonly test: ControlTest | undefined
  readonly coresOf: Map<string, Ends[]>
  readonly links: Ends[]
  readonly joints: Terminal[]
  readonly resistors: Resistor[]
}

/** As good as none, but something that can break. */
const LINK_OHM = 0.01

function cableOf({ cable }: Parts, sensor: string, ends: readonly Ends[]): Cable {
  const cores = ends.map(([from, to], i): Core => ({ id: `${sensor}.${i + 1}`, colour: undefined, from, to, ohm: cable.ohm }))
  return { id: sensor, length_mm: cable.length_mm, conductor: cable.conductor, cores }
}

function linkOf([from, to]: Ends, i: number): Cable {
  const id = `link${i + 1}`
  return { id, length_mm: 0, conductor: { area_mm2: 0.5 }, cores: [{ id, colour: undefined, from, to, ohm: LINK_OHM }] }
}

function addCore({ coresOf }: Sheet, { id }: WiredSensor, from: Terminal, to: Terminal): void {
  const cores = coresOf.get(id) ?? []
  coresOf.set(id, cores)
  cores.push([from, to])
}

/** Between which terminals a line lies so that it moves the input: from a rail to the input, or from the input to minus. */
function lineEnds({ supply }: Parts, { plus, minus, fedFrom }: ControlInput): { readonly rail: 'plus' | 'minus'; readonly at: Terminal } {
  if (fedFrom !== undefined) return { rail: 'minus', at: plus }
  return plus === supply.plus ? { rail: 'minus', at: minus } : { rail: 'plus', at: plus }
}

function layLine(sheet: Sheet, { input, members, laid, end }: Line): boolean {
  const { parts, links, joints } = sheet
  const { rail, at } = lineEnds(parts, input)
  const { supply } = parts
  if (rail === 'plus' && input.minus !== supply.minus) links.push([supply.minus, input.minus])
  if (members.length === 0) {
    // an input that nobody needs rests at "clear": open, by its resistor, or linked
    const rests = (line_ohm: number) => meaningOfVolt(input, lineVolt(input, supply, line_ohm)) === 'clear'
    const { endOfLine_ohm } = input
    if (rests(Infinity)) return true
    if (endOfLine_ohm !== undefined && rests(endOfLine_ohm)) resist(sheet, supply[rail], at, endOfLine_ohm)
    else links.push([supply[rail], at])
    return true
  }
  const first = joints.length
  for (const [i, member] of members.entries()) {
    const [isFirst, isLast] = laid === 'series' ? [i === 0, i === members.length - 1] : [true, true]
    const near = isFirst ? undefined : `joint.${first + i}`
    if (!isLast) joints.push(`joint.${first + i + 1}`)
    const far = isLast ? at : `joint.${first + i + 1}`
    const ohm = i === 0 && end !== 'none' ? input.endOfLine_ohm : undefined
    if (!layContact(sheet, rail, member, { near, far, end: ohm === undefined ? undefined : { ohm, isAcross: end === 'parallel' } }))
      return false
  }
  return true
}

function resist({ resistors }: Sheet, from: Terminal, to: Terminal, ohm: number): void {
  resistors.push({ id: `R${resistors.length + 1}`, from, to, ohm })
}

interface Laying {
  /** The joint that it goes on from; undefined for the first of a line. */
  readonly near: Terminal | undefined
  readonly far: Terminal
  readonly end: { readonly ohm: number; readonly isAcross: boolean } | undefined
}

function layContact(sheet: Sheet, rail: 'plus' | 'minus', { sensor, contact, feed }: LineMember, { near, far, end }: Laying): boolean {
  const own = sensor.power[rail]
  const other = sensor.power[rail === 'plus' ? 'minus' : 'plus']
  const { from, to } = contact
  if (from === other || to === other) return false
  // a transistor hangs on a rail inside its sensor, and only the other end has a terminal
  const built = from === own ? to : to === own ? from : undefined
  if (built !== undefined) {
    if (near !== undefined || feed !== 'link') return false
  } else if (near !== undefined) addCore(sheet, sensor, near, from)
  else if (feed === 'link') sheet.links.push([own, from])
  else if (feed === 'core') addCore(sheet, sensor, sheet.parts.supply[rail], from)
  else {
    const out = testOutput(sheet)
    if (out === undefined) return false
    addCore(sheet, sensor, out, from)
  }
  addCore(sheet, sensor, far, exitOf(sheet, sensor, built ?? to, built === undefined ? from : own, end))
  return true
}

/** Where the core to the input begins: at the contact, or behind the resistor at the end of the line, in the sensor's housing. */
function exitOf(sheet: Sheet, { id }: WiredSensor, exit: Terminal, entry: Terminal, end: Laying['end']): Terminal {
  if (end === undefined) return exit
  if (end.isAcross) {
    resist(sheet, entry, exit, end.ohm)
    return exit
  }
  const behind = `${id}.end${sheet.resistors.length + 1}`
  sheet.joints.push(behind)
  resist(sheet, exit, behind, end.ohm)
  return behind
}

/** The end of the control's test switch that is no rail. */
function testOutput({ test, parts: { supply } }: Sheet): Terminal | undefined {
  return test && [test.to, test.from].find((end) => end !== supply.plus && end !== supply.minus)
}

function layTest(sheet: Sheet, sensor: WiredSensor, tie: TestTie): boolean {
  if (sensor.test === undefined) return tie === 'nothing'
  const free = freeEnd(sheet, sensor, sensor.test)
  if (tie === 'plus' || tie === 'minus') sheet.links.push([sensor.power[tie], free])
  if (tie !== 'test-output') return true
  const out = testOutput(sheet)
  if (out === undefined) return false
  addCore(sheet, sensor, out, free)
  return true
}

/** The end of a test input that is to be connected; the other is or gets linked to the sensor's supply. */
function freeEnd({ links }: Sheet, { power }: WiredSensor, { plus, minus }: TestInput): Terminal {
  if (plus === power.plus) return minus
  if (minus !== power.minus) links.push([power.minus, minus])
  return plus
}
