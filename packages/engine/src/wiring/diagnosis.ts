import type { SensorState, Terminal, Wiring } from '../model/wiring.ts'
import { log } from '../space/trigonometry.ts'
import { type Belief, beliefsOf } from './fault-effects.ts'
import { type Fault, sameAs, singleFaults } from './faults.ts'
import { type FaultyNetwork, type Settling, settle, voltBetween, type WiringNetwork, wiringNetwork, withFaults } from './network.ts'

/** How things stand while somebody measures. */
export interface Standing {
  /** Ids of the sensors before which somebody stands. */
  readonly seenBy: readonly string[]
  readonly asking: boolean
}

export type Observation = Standing &
  (
    | { readonly kind: 'volt'; readonly plus: Terminal; readonly minus: Terminal; readonly volt: number }
    /** What the sensor shows of itself. */
    | { readonly kind: 'sensor'; readonly sensor: string; readonly shows: SensorState }
    /** What the control shows of an input. */
    | { readonly kind: 'input'; readonly input: string; readonly shows: Exclude<Belief, 'either'> }
  )

export interface Meter {
  /** It may be off by so much, and besides by such a share of what it shows. */
  readonly off_V: number
  readonly off_percent: number
  readonly ohm: number
}

export interface Suspect {
  /** `undefined` is a wiring in order. Shorts that join the same terminals are one; the first stands for all. */
  readonly fault: Fault | undefined
  /** How many of the observations it explains. */
  readonly explains: number
}

export interface NextMeasurement extends Standing {
  readonly plus: Terminal
  readonly minus: Terminal
  /** What it tells on average, in bits; one bit halves the suspects. */
  readonly bits: number
}

export interface Diagnosis {
  /** Those that explain most come first; among equals the order of the faults. */
  readonly suspects: readonly Suspect[]
  /** What tells most apart of those that explain everything; undefined where nothing does. */
  readonly next: NextMeasurement | undefined
}

/** What the supply may give is looked at in so many steps, its ends included; what lies between two of them counts as possible too. */
const SUPPLY_STEPS = 5

/**
 * Which single faults explain what was measured and shown, and what to measure next. Each observation may have had its own supply voltage between the
 * least and the largest: that keeps suspects rather than clearing them.
 *
 * @throws where an observation names what the wiring has not
 */
export function diagnosis(wiring: Wiring, observations: readonly Observation[], meter: Meter): Diagnosis {
  const network = wiringNetwork(wiring)
  const suspects = suspectsOf(wiring)
    .map((fault): Suspect => ({ fault, explains: observations.filter((seen) => explains(network, fault, seen, meter)).length }))
    .sort((a, b) => b.explains - a.explains)
  const left = suspects.filter((each) => each.explains === observations.length).map(({ fault }) => fault)
  return { suspects, next: nextMeasurement(network, left, meter) }
}

function suspectsOf(wiring: Wiring): readonly (Fault | undefined)[] {
  const known = new Set<string>()
  const faults = singleFaults(wiring).filter((fault) => {
    const same = sameAs(wiring, fault)
    if (same === 'nothing' || known.has(same)) return false
    known.add(same)
    return true
  })
  return [undefined, ...faults]
}

function explains(network: WiringNetwork, fault: Fault | undefined, seen: Observation, meter: Meter): boolean {
  if (seen.kind === 'volt') {
    const { least, most } = shownBy(network, fault, seen, meter)
    const off_V = tolerance(meter, seen.volt)
    return least - off_V <= seen.volt && seen.volt <= most + off_V
  }
  const faulty = withFaults(network, [...(fault ? [fault] : [])])
  const settled = settledAll(faulty, seen)
  if (seen.kind === 'sensor') {
    const sensor = mustBeThere(
      network.sensors.findIndex((each) => each.sensor.id === seen.sensor),
      seen.sensor,
    )
    return settled.some(({ isStable, states }) => !isStable || states[sensor] === seen.shows)
  }
  const input = mustBeThere(
    network.inputs.findIndex((each) => each.input.id === seen.input),
    seen.input,
  )
  return settled.some((each) => {
    const belief = beliefsOf(faulty, each)[input]
    return belief === seen.shows || belief === 'either'
  })
}

const tolerance = ({ off_V, off_percent }: Meter, volt: number) => off_V + (off_percent / 100) * Math.abs(volt)

interface Reading {
  readonly least: number
  readonly most: number
}

interface Probes extends Standing {
  readonly plus: Terminal
  readonly minus: Terminal
}

/** What a meter may show that is really there: between terminals that nothing else joins it shows nothing. */
function shownBy(network: WiringNetwork, fault: Fault | undefined, probes: Probes, { ohm }: Meter): Reading {
  const faulty = withFaults(network, fault ? [fault] : [], [{ from: probes.plus, to: probes.minus, ohm }])
  return readingOf(faulty, settledAll(faulty, probes), probes)
}

/** More than any network here has. */
const ANYTHING_V = 1e9

function readingOf(faulty: FaultyNetwork, settled: readonly Settling[], { plus, minus }: Pick<Probes, 'plus' | 'minus'>): Reading {
  const p = mustBeThere(faulty.nodes.get(plus) ?? -1, plus)
  const m = mustBeThere(faulty.nodes.get(minus) ?? -1, minus)
  // where more chase each other than anybody looks at, a meter may show anything
  if (settled.some(({ isStable, chased }) => !isStable && chased.length === 0)) return { least: -ANYTHING_V, most: ANYTHING_V }
  const volts = settled.flatMap((each) => (each.isStable ? [each] : each.chased)).map((each) => voltBetween(faulty, each, p, m) ?? 0)
  return { least: Math.min(...volts), most: Math.max(...volts) }
}

function settledAll(faulty: FaultyNetwork, { seenBy, asking }: Standing): readonly Settling[] {
  const { least_V, largest_V } = faulty.wiring.supply
  const seen = new Set(seenBy)
  return Array.from({ length: SUPPLY_STEPS }, (_, i) => {
    const supply_V = least_V + ((largest_V - least_V) * i) / (SUPPLY_STEPS - 1)
    return settle(faulty, { seenBy: seen, asking, supply_V })
  })
}

function mustBeThere(index: number, name: string): number {
  if (index < 0) throw new Error(`the wiring has no ${name}`)
  return index
}

/** Every pair that a person would take: each terminal against both rails, and the two ends of each part. In every standing that can be brought about. */
function nextMeasurement(network: WiringNetwork, left: readonly (Fault | undefined)[], meter: Meter): NextMeasurement | undefined {
  if (left.length < 2) return undefined
  const pairs = pairsOf(network.wiring)
  // first as if the meter drew nothing: then all pairs together cost one look at each suspect
  const roughly = standingsOf(network.wiring).flatMap((standing) => {
    const looks = left.map((fault) => {
      const faulty = withFaults(network, fault ? [fault] : [])
      return { faulty, settled: settledAll(faulty, standing) }
    })
    return pairs.map((pair) => {
      const shown = looks.map(({ faulty, settled }) => readingOf(faulty, settled, pair))
      return { ...standing, ...pair, bits: bitsOf(shown, meter) }
    })
  })
  const promising = roughly.sort((a, b) => b.bits - a.bits).slice(0, MOST_PROMISING)
  const [best] = promising
    .map((probes) => ({
      ...probes,
      bits: bitsOf(
        left.map((fault) => shownBy(network, fault, probes, meter)),
        meter,
      ),
    }))
    .sort((a, b) => b.bits - a.bits)
  return best && best.bits > 0 ? best : undefined
}

/** So many measurements are thought through with the meter in place. */
const MOST_PROMISING = 12

function standingsOf({ sensors, control }: Wiring): readonly Standing[] {
  const nobody = { seenBy: [], asking: false }
  return [nobody, ...sensors.map(({ id }) => ({ seenBy: [id], asking: false })), ...(control.test ? [{ seenBy: [], asking: true }] : [])]
}

function pairsOf({ supply, sensors, control, cables }: Wiring): readonly Pick<Probes, 'plus' | 'minus'>[] {
  const parts = [...cables.flatMap(({ cores }) => cores), ...sensors.flatMap(({ outputs }) => outputs)]
  const powers = sensors.map(({ power }) => power)
  const terminals = new Set(parts.flatMap(({ from, to }) => [from, to]))
  for (const { plus, minus } of [...control.inputs, ...powers]) terminals.add(plus).add(minus)
  const all = [
    ...[...terminals].flatMap((terminal) => [
      { plus: terminal, minus: supply.minus },
      { plus: supply.plus, minus: terminal },
    ]),
    ...parts.map(({ from, to }) => ({ plus: from, minus: to })),
    ...powers.map(({ plus, minus }) => ({ plus, minus })),
  ]
  const byName = new Map(all.map((pair) => [JSON.stringify([pair.plus, pair.minus]), pair]))
  return [...byName.values()].filter(({ plus, minus }) => plus !== minus)
}

/**
 * Entropy of what the meter will show, all suspects being as likely. Suspects whose readings lie within reach of each other fall together, in chains
 * where need be: a group is what the measurement does not part for sure.
 */
function bitsOf(shown: readonly Reading[], meter: Meter): number {
  const groups: number[] = []
  let reach = -Infinity
  for (const { least, most } of [...shown].sort((a, b) => a.least - b.least)) {
    if (least - tolerance(meter, least) > reach) groups.push(0)
    groups[groups.length - 1] = (groups[groups.length - 1] ?? 0) + 1
    reach = Math.max(reach, most + tolerance(meter, most))
  }
  return groups.reduce((bits, size) => bits + ((size / shown.length) * log(shown.length / size)) / log(2), 0)
}
