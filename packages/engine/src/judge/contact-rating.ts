import type { Quantity } from '../model/source.ts'
import type { SensorSwitch, WiredSensor, Wiring } from '../model/wiring.ts'
import { type Leak, leakOf, withOff } from '../wiring/leakage.ts'
import { type SwitchLoad, switchLoads } from '../wiring/supply.ts'
import { NOTHING, notApplicable, orNoSubject, quantity, step } from './drafts.ts'
import { WIRING } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'
import { namesOf } from './supply-voltage.ts'
import { COPPER, copperOf, groundsOf } from './wiring-grounds.ts'

/** Less is what an input or a transistor leaks: such a contact switches nothing. */
const NOTHING_A = 1e-6

/**
 * Each contact of a sensor switches what it may: the voltage across it while open and the current through it while closed, as the network has them, and
 * enough current to keep itself clean. One finding for each contact that switches anything, and for each transistor whose rating is stated, or whose leakage
 * makes an input say something else than if it were off altogether. Measured is the first that is out of its rating, else the largest current. Loads are
 * taken as resistances: a coil behind an input needs a figure of its own.
 *
 * Facts: `sensor`, `sensorName`, `contact`, `isTransistor`, `open_V`, `most_A`, `least_A`, `exceeds` (`leak`, `voltage`, `current`, `least`, `nothing`), of
 * a transistor `leak_A`, [`input` that takes its leakage for more].
 */
export const contactRating: Rule = {
  id: 'contact-rating',
  source: { basis: 'common practice', note: 'the rating of a contact holds for the load that it switches' },
  judge: (context) => {
    const { wiring } = context.door
    return wiring === undefined ? [notApplicable('no-subject')] : orNoSubject(drafts(context, wiring))
  },
}

function drafts(context: Context, wiring: Wiring): readonly Draft[] {
  const loads = switchLoads(wiring, copperOf(wiring) ?? { coldest: 1, hottest: 1 })
  return wiring.sensors.flatMap((sensor, i) =>
    sensor.outputs.flatMap((contact) => {
      const load = loads.find((each) => each.sensor === sensor.id && each.name === contact.name)
      if (load === undefined) return []
      const path = `${WIRING}/sensors/${i}/outputs/${outputIndex(sensor, contact)}`
      if (contact.off_ohm === Infinity) return load.most_A < NOTHING_A ? [] : [draftOf(context, wiring, path, sensor, contact, load)]
      const leak = leakOf(wiring, sensor.id, contact.name)
      if (contact.rating === undefined && leak === undefined) return []
      return [draftOf(context, wiring, path, sensor, contact, load, leak)]
    }),
  )
}

/** In the door file both contacts of a relay that changes over are one output. */
function outputIndex({ outputs }: WiredSensor, { output }: SensorSwitch): number {
  return [...new Set(outputs.map((each) => each.output))].indexOf(output)
}

interface Part {
  readonly what: 'leak' | 'voltage' | 'current' | 'least'
  readonly measured: Quantity
  readonly limit: Quantity
  readonly isBeyond: boolean
}

function draftOf(
  { door }: Context,
  wiring: Wiring,
  path: string,
  sensor: WiredSensor,
  { name, rating, off_ohm }: SensorSwitch,
  { open_V, most_A, least_A }: SwitchLoad,
  leak?: Leak,
): Draft {
  const isTransistor = off_ohm !== Infinity
  const leak_A = open_V / off_ohm
  const part = (what: Part['what'], unit: 'V' | 'A', measured: number, limit: number | undefined, isBeyond: (limit: number) => boolean) =>
    limit === undefined ? [] : [{ what, measured: quantity(measured, unit), limit: quantity(limit, unit), isBeyond: isBeyond(limit) }]
  const parts: readonly Part[] = [
    ...part('leak', 'A', leak_A, leak && leastLeak(wiring, sensor, name, leak), (limit) => leak_A > limit),
    ...part('voltage', 'V', open_V, rating?.largest_V, (limit) => open_V > limit),
    ...part('current', 'A', most_A, rating?.largest_A, (limit) => most_A > limit),
    ...part('least', 'A', least_A, rating?.least_A, (limit) => least_A < limit),
  ]
  const beyond = parts.find(({ isBeyond }) => isBeyond)
  const shown = beyond ?? parts.find(({ what }) => what === 'current')
  const inputs = { inputs: [WIRING] }
  const frame = {
    subject: { kind: 'sensor', id: sensor.id } as const,
    key: `${sensor.id}/${name}`,
    facts: {
      ...namesOf(door.sensors, sensor),
      contact: name,
      isTransistor,
      open_V,
      most_A,
      least_A,
      exceeds: beyond?.what ?? 'nothing',
      ...(isTransistor ? { leak_A } : {}),
      ...(leak ? { input: leak.inputs[0] ?? '' } : {}),
    },
    steps: [
      step('voltage across the open contact', quantity(open_V, 'V'), 'wiring/supply', inputs),
      step('largest current through the contact', quantity(most_A, 'A'), 'wiring/supply', inputs),
      step('least current through the contact', quantity(least_A, 'A'), 'wiring/supply', inputs),
      ...(isTransistor ? [step('current through the open transistor', quantity(leak_A, 'A'), 'wiring/leakage', inputs)] : []),
    ],
    restsOn: { ...NOTHING, inputs: [WIRING], values: groundsOf(wiring) },
  }
  // a transistor that needs no least current has none
  const wanted = RATINGS.filter((name) => !(isTransistor && name === 'least_A'))
  const missing = wanted.filter((name) => rating?.[name] === undefined).map((name) => `${path}/rating/${name}`)
  const needs = [...(rating === undefined ? [`${path}/rating`] : missing), ...(wiring.copper === undefined ? [COPPER] : [])]
  if (!shown) return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs, measured: quantity(most_A, 'A') }
  const judged = { ...frame, measured: shown.measured, limit: shown.limit }
  if (beyond) return { ...judged, verdict: 'fail' }
  if (needs.length > 0) return { ...judged, verdict: 'undetermined', reason: 'missing-input', needs }
  return { ...judged, verdict: 'pass' }
}

const RATINGS = ['largest_V', 'largest_A', 'least_A'] as const

/** What it may leak at the most, into what it switches. */
function leastLeak(wiring: Wiring, { id }: WiredSensor, name: string, { enough_ohm }: Leak): number {
  const copper = copperOf(wiring) ?? { coldest: 1, hottest: 1 }
  const load = switchLoads(withOff(wiring, id, name, enough_ohm), copper).find((each) => each.sensor === id && each.name === name)
  return (load?.open_V ?? 0) / enough_ohm
}
