import type { Quantity } from '../model/source.ts'
import type { SensorSwitch, WiredSensor, Wiring } from '../model/wiring.ts'
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
 * enough current to keep itself clean. One finding for each contact that switches anything. Measured is the first that is out of its rating, else the
 * largest current. Loads are taken as resistances: a coil behind an input needs a figure of its own.
 *
 * Facts: `sensor`, `sensorName`, `contact`, `open_V`, `most_A`, `least_A`, `exceeds` (`voltage`, `current`, `least`, `nothing`).
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
      if (contact.off_ohm !== Infinity || load === undefined || load.most_A < NOTHING_A) return []
      return [draftOf(context, wiring, `${WIRING}/sensors/${i}/outputs/${outputIndex(sensor, contact)}`, sensor, contact, load)]
    }),
  )
}

/** In the door file both contacts of a relay that changes over are one output. */
function outputIndex({ outputs }: WiredSensor, { output }: SensorSwitch): number {
  return [...new Set(outputs.map((each) => each.output))].indexOf(output)
}

interface Part {
  readonly what: 'voltage' | 'current' | 'least'
  readonly measured: Quantity
  readonly limit: Quantity
  readonly isBeyond: boolean
}

function draftOf(
  { door }: Context,
  wiring: Wiring,
  path: string,
  sensor: WiredSensor,
  { name, rating }: SensorSwitch,
  { open_V, most_A, least_A }: SwitchLoad,
): Draft {
  const part = (what: Part['what'], unit: 'V' | 'A', measured: number, limit: number | undefined, isBeyond: (limit: number) => boolean) =>
    limit === undefined ? [] : [{ what, measured: quantity(measured, unit), limit: quantity(limit, unit), isBeyond: isBeyond(limit) }]
  const parts: readonly Part[] = [
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
    facts: { ...namesOf(door.sensors, sensor), contact: name, open_V, most_A, least_A, exceeds: beyond?.what ?? 'nothing' },
    steps: [
      step('voltage across the open contact', quantity(open_V, 'V'), 'wiring/supply', inputs),
      step('largest current through the contact', quantity(most_A, 'A'), 'wiring/supply', inputs),
      step('least current through the contact', quantity(least_A, 'A'), 'wiring/supply', inputs),
    ],
    restsOn: { ...NOTHING, inputs: [WIRING], values: groundsOf(wiring) },
  }
  const missing = RATINGS.filter((name) => rating?.[name] === undefined).map((name) => `${path}/rating/${name}`)
  const needs = [...(rating === undefined ? [`${path}/rating`] : missing), ...(wiring.copper === undefined ? [COPPER] : [])]
  if (!shown) return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs, measured: quantity(most_A, 'A') }
  const judged = { ...frame, measured: shown.measured, limit: shown.limit }
  if (beyond) return { ...judged, verdict: 'fail' }
  if (needs.length > 0) return { ...judged, verdict: 'undetermined', reason: 'missing-input', needs }
  return { ...judged, verdict: 'pass' }
}

const RATINGS = ['largest_V', 'largest_A', 'least_A'] as const
