import type { Sensor } from '../model/sensor.ts'
import type { Conductor, WiredSensor, Wiring } from '../model/wiring.ts'
import { type SupplyAtDevice, supplyAtDevices } from '../wiring/supply.ts'
import { type Facts, NOTHING, orNoSubject, quantity, step, THE_DOOR } from './drafts.ts'
import { protects } from './fields.ts'
import { WIRING } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'
import { COPPER, copperOf, groundsOf } from './wiring-grounds.ts'

/**
 * Each wired sensor stays within its window: at the least source, the hottest copper and the largest current of every device it has its least voltage
 * still, and at the largest source without any current not more than its largest. One finding for each sensor of the wiring; without wiring one, where a
 * sensor protects. Measured is the voltage
 * that is too high, else the lowest. What it has for a moment when power comes is told and not judged: how long it works without is nowhere said.
 *
 * Facts: `sensor`, `sensorName`, `beyond` (`nothing`, `low`, `high`), `lowest_V`, `highest_V`, `least_V`, `largest_V`, [`coldest_V`, `inrush_V`, `core_mm2`, `awg`
 * (thinnest that hold), `cable`, `length_mm`, `longest_mm` (absent where any length we look for works), `hottest_degC`, `coldest_degC`].
 */
export const supplyVoltage: Rule = {
  id: 'supply-voltage',
  source: { basis: 'our decision', document: 'docs/method.md', clause: 'Supply', note: 'the voltage at the device itself, at its worst' },
  judge: (context) => {
    const { sensors, wiring } = context.door
    if (wiring) return orNoSubject(drafts(context, wiring))
    if (!sensors.some(protects)) return orNoSubject([])
    const frame = { subject: THE_DOOR, facts: {}, steps: [], restsOn: { ...NOTHING, inputs: [WIRING] } } as const
    return [{ ...frame, verdict: 'undetermined', reason: 'missing-input', needs: [WIRING] }]
  },
}

function drafts({ door }: Context, wiring: Wiring): readonly Draft[] {
  const copper = copperOf(wiring)
  const found = supplyAtDevices(wiring, copper ?? { coldest: 1, hottest: 1 })
  return wiring.sensors.map((wired, i): Draft => {
    const at = found[i] as SupplyAtDevice
    const { least_V, largest_V } = wired.power
    const beyond = at.highest_V > largest_V ? 'high' : at.lowest_V < least_V ? 'low' : 'nothing'
    const [measured, limit] = beyond === 'high' ? [at.highest_V, largest_V] : [at.lowest_V, least_V]
    const frame = {
      subject: { kind: 'sensor', id: wired.id } as const,
      measured: quantity(measured, 'V'),
      limit: quantity(limit, 'V'),
      facts: {
        ...namesOf(door.sensors, wired),
        beyond,
        lowest_V: at.lowest_V,
        ...(wiring.copper?.coldest_degC === undefined ? {} : { coldest_V: at.coldest_V, coldest_degC: wiring.copper.coldest_degC }),
        highest_V: at.highest_V,
        least_V,
        largest_V,
        ...(at.inrush_V === undefined ? {} : { inrush_V: at.inrush_V }),
        ...(wiring.copper ? { hottest_degC: wiring.copper.hottest_degC } : {}),
        ...cableFacts(wiring, at),
      },
      steps: stepsOf(at, wired, wiring),
      restsOn: { ...NOTHING, inputs: [WIRING], values: groundsOf(wiring) },
    }
    if (beyond === 'high') return { ...frame, verdict: 'fail' }
    if (copper === undefined) return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs: [COPPER] }
    return { ...frame, verdict: beyond === 'low' ? 'fail' : 'pass' }
  })
}

export function namesOf(sensors: readonly Sensor[], { id }: WiredSensor): Facts {
  const sensor = sensors.find((each) => each.id === id)
  return { sensor: id, sensorName: sensor?.name ?? id }
}

function cableFacts({ cables }: Wiring, { smallest, longest_mm, cable: id }: SupplyAtDevice): Facts {
  const cable = cables.find((each) => each.id === id)
  return {
    ...sizeFact(smallest.area),
    ...sizeFact(smallest.gauge),
    ...(cable ? { cable: cable.id, length_mm: cable.length_mm } : {}),
    ...(longest_mm === undefined || longest_mm === Infinity ? {} : { longest_mm }),
  }
}

function sizeFact(conductor: Conductor | undefined): Facts {
  return conductor === undefined ? {} : 'area_mm2' in conductor ? { core_mm2: conductor.area_mm2 } : { awg: conductor.awg }
}

const BY = 'wiring/supply'

function stepsOf({ lowest_V, coldest_V, highest_V, inrush_V }: SupplyAtDevice, { power }: WiredSensor, wiring: Wiring): Draft['steps'] {
  const inputs = { inputs: [WIRING] }
  const copper = wiring.copper ? { inputs: [WIRING, COPPER] } : inputs
  return [
    step('largest voltage, with no current', quantity(highest_V, 'V'), BY, inputs),
    ...(wiring.copper?.coldest_degC === undefined
      ? []
      : [step('least voltage with the coldest copper', quantity(coldest_V, 'V'), BY, copper)]),
    step(
      'least voltage with the hottest copper',
      quantity(lowest_V, 'V'),
      BY,
      copper,
      'least source less what its current and what others share lose',
    ),
    ...(inrush_V === undefined ? [] : [step('voltage when power comes to all at once', quantity(inrush_V, 'V'), BY, copper)]),
    step('window from', quantity(power.least_V, 'V'), BY, inputs),
    step('window to', quantity(power.largest_V, 'V'), BY, inputs),
  ]
}
