import type { Conductor, SensorState, WiredSensor, Wiring } from '../model/wiring.ts'
import { conductorOhm_per_km, STANDARD_AREAS, STANDARD_GAUGES } from '../values/conductors.ts'
import { type FaultyNetwork, heldNetwork, wiringNetwork, withFaults } from './network.ts'

/** Resistance of the copper as a multiple of that at 20 °C: when it is coldest, and when it is hottest. */
export interface CopperFactors {
  readonly coldest: number
  readonly hottest: number
}

/** What one device gets, V at its own terminals; and what cable would do. */
export interface SupplyAtDevice {
  readonly sensor: string
  /** Least source, hottest copper, every device at its largest current, the outputs in the states that load the supply most. */
  readonly lowest_V: number
  /** The same with the coldest copper. */
  readonly coldest_V: number
  /** Largest source, and no device draws anything: what one draws at least is not known. */
  readonly highest_V: number
  /** As lowest, at the moment when power comes to all at once; undefined where none of them says its inrush. */
  readonly inrush_V: number | undefined
  /** Cables that carry its current, in the order of the wiring. */
  readonly cables: readonly string[]
  /** Thinnest standard conductor of both kinds that holds its least voltage in all these cables; undefined where none does. */
  readonly smallest: { readonly area: Conductor | undefined; readonly gauge: Conductor | undefined }
  /** The cable that ends at the device, and how long it may be, all else as it is: Infinity beyond `LONGEST_MM`. Undefined where none ends there. */
  readonly cable: string | undefined
  readonly longest_mm: number | undefined
}

/** Current that the source gives, A: all devices at their largest current, and at the moment when power comes. */
export interface SupplyLoad {
  readonly largest_A: number
  readonly inrush_A: number
}

/** Longer cables are not looked for. */
export const LONGEST_MM = 1_000_000
/** A longest cable is found to so much, and never too long. */
const STEP_MM = 100
/** A core takes part in feeding a device from this share of its current on; the rest are leaks through inputs. */
const PART_OF_CURRENT = 0.01
/** Voltages that differ by less are equal. In V; errs toward "too low" where it is larger. */
const ROUNDING_V = 1e-9

/** Of every sensor, by the network itself: what several devices share, and what their outputs feed, is in it. */
export function supplyAtDevices(wiring: Wiring, copper: CopperFactors): readonly SupplyAtDevice[] {
  const { least_V, largest_V } = wiring.supply
  const hot = copperTimes(wiring, copper.hottest)
  const lowest = lowestVolts(hot, least_V)
  const coldest = lowestVolts(copperTimes(wiring, copper.coldest), least_V)
  const highest = highestVolts(
    drawing(wiring, () => 0),
    largest_V,
  )
  const saysInrush = wiring.sensors.some(({ power }) => power.inrush_A !== undefined)
  const inrush = saysInrush ? lowestVolts(drawing(hot, inrushOf), least_V) : undefined
  return wiring.sensors.map((sensor, i) => {
    const cables = cablesTo(wiring, sensor)
    const holds = (changed: Wiring) => (lowestVolts(changed, least_V)[i] as number) >= sensor.power.least_V - ROUNDING_V
    const first = (conductors: readonly Conductor[]) => conductors.find((each) => holds(recabled(wiring, cables, each, copper.hottest)))
    return {
      sensor: sensor.id,
      lowest_V: lowest[i] as number,
      coldest_V: coldest[i] as number,
      highest_V: highest[i] as number,
      inrush_V: inrush?.[i],
      cables,
      smallest: { area: first(STANDARD_AREAS), gauge: first(STANDARD_GAUGES) },
      ...longestCable(hot, sensor, cables, holds),
    }
  })
}

/** At the largest source and the coldest copper, at which what the outputs feed draws most. */
export function supplyLoad(wiring: Wiring, { coldest }: CopperFactors): SupplyLoad {
  const cold = copperTimes(wiring, coldest)
  const { inner_ohm, largest_V, plus, minus } = wiring.supply
  const given = (at: Wiring) => Math.max(...solutions(at, largest_V).map(({ between }) => (largest_V - between(plus, minus)) / inner_ohm))
  return { largest_A: given(cold), inrush_A: given(drawing(cold, inrushOf)) }
}

/** What a contact or transistor of a sensor really switches. */
export interface SwitchLoad {
  readonly sensor: string
  readonly name: string
  /** Across it while it is open, V, at most. */
  readonly open_V: number
  /** Through it while it is closed, A: at most, and at least. */
  readonly most_A: number
  readonly least_A: number
}

/** Of every contact: most at the largest source, the coldest copper and no current of the devices; least at the contrary of all three. */
export function switchLoads(wiring: Wiring, copper: CopperFactors): readonly SwitchLoad[] {
  const { least_V, largest_V } = wiring.supply
  const strong = solutions(
    drawing(copperTimes(wiring, copper.coldest), () => 0),
    largest_V,
  )
  const weak = solutions(copperTimes(wiring, copper.hottest), least_V)
  return wiring.sensors.flatMap((sensor, i) =>
    sensor.outputs.map(({ name, from, to, closedIn, on_ohm }) => {
      const closed = (of: readonly Solution[]) =>
        of.filter(({ states }) => closedIn.includes(states[i] as SensorState)).map(({ between }) => Math.abs(between(from, to)) / on_ohm)
      const open = strong.filter(({ states }) => !closedIn.includes(states[i] as SensorState))
      return {
        sensor: sensor.id,
        name,
        open_V: Math.max(0, ...open.map(({ between }) => Math.abs(between(from, to)))),
        most_A: Math.max(0, ...closed(strong)),
        least_A: Math.min(...closed(weak)),
      }
    }),
  )
}

function inrushOf({ power }: WiredSensor): number {
  return Math.max(power.largest_A, power.inrush_A ?? 0)
}

function copperTimes(wiring: Wiring, factor: number): Wiring {
  const cables = wiring.cables.map((cable) => ({ ...cable, cores: cable.cores.map((core) => ({ ...core, ohm: core.ohm * factor })) }))
  return { ...wiring, cables }
}

function drawing(wiring: Wiring, current: (sensor: WiredSensor) => number): Wiring {
  const sensors = wiring.sensors.map((sensor) => ({ ...sensor, power: { ...sensor.power, largest_A: current(sensor) } }))
  return { ...wiring, sensors }
}

function recabled(wiring: Wiring, ids: readonly string[], conductor: Conductor, factor: number): Wiring {
  const ohm_per_km = conductorOhm_per_km(conductor)
  const changed = wiring.cables.map((cable) => {
    const ohm = (cable.length_mm * ohm_per_km * factor) / 1e6
    return { ...cable, cores: cable.cores.map((core) => ({ ...core, ohm: ids.includes(cable.id) ? ohm : core.ohm * factor })) }
  })
  return { ...wiring, cables: changed }
}

interface Solution {
  readonly states: readonly SensorState[]
  readonly between: (plus: string, minus: string) => number
}

/** Every sensor is powered, whatever its voltage: all clear, one seeing, all seeing; the control asking and not. */
function solutions(wiring: Wiring, supply_V: number): readonly Solution[] {
  const network = withFaults(wiringNetwork(wiring), [])
  const all = (state: SensorState) => wiring.sensors.map(() => state)
  const single =
    wiring.sensors.length > 1
      ? wiring.sensors.map((_, i) => wiring.sensors.map((_each, j): SensorState => (j === i ? 'seen' : 'clear')))
      : []
  const asked = wiring.control.test ? [false, true] : [false]
  return [all('clear'), ...single, all('seen')].flatMap((states) => asked.map((asking) => solution(network, states, asking, supply_V)))
}

function solution(network: FaultyNetwork, states: readonly SensorState[], asking: boolean, supply_V: number): Solution {
  const held = heldNetwork(network, states, { asking, supply_V })
  // what nothing connects has no voltage
  const between = (plus: string, minus: string) => held(plus, minus) ?? 0
  return { states, between }
}

/** Where a device cannot draw its current at all, 0 V: below that the network is no picture of it. */
function lowestVolts(wiring: Wiring, supply_V: number): readonly number[] {
  const all = solutions(wiring, supply_V)
  return wiring.sensors.map(({ power }) => Math.max(0, Math.min(...all.map(({ between }) => between(power.plus, power.minus)))))
}

function highestVolts(wiring: Wiring, supply_V: number): readonly number[] {
  const all = solutions(wiring, supply_V)
  return wiring.sensors.map(({ power }) => Math.max(...all.map(({ between }) => between(power.plus, power.minus))))
}

/** The current of one device alone, without a source: cores in which it flows. */
function cablesTo(wiring: Wiring, { id, power }: WiredSensor): readonly string[] {
  const network = withFaults(wiringNetwork(drawing(wiring, (each) => (each.id === id ? power.largest_A : 0))), [])
  const { between } = solution(
    network,
    wiring.sensors.map(() => 'clear'),
    false,
    0,
  )
  const isPart = ({ from, to, ohm }: Wiring['cables'][number]['cores'][number]) =>
    Math.abs(between(from, to)) / ohm >= PART_OF_CURRENT * power.largest_A
  return wiring.cables.filter(({ cores }) => power.largest_A > 0 && cores.some(isPart)).map((cable) => cable.id)
}

function longestCable(
  hot: Wiring,
  { power }: WiredSensor,
  ids: readonly string[],
  holds: (changed: Wiring) => boolean,
): Pick<SupplyAtDevice, 'cable' | 'longest_mm'> {
  const touches = ({ from, to }: { readonly from: string; readonly to: string }) =>
    [from, to].some((end) => end === power.plus || end === power.minus)
  const cable = hot.cables.find(({ id, cores }) => ids.includes(id) && cores.some(touches))
  if (!cable || !(cable.length_mm > 0)) return { cable: cable?.id, longest_mm: undefined }
  const { id: name } = cable
  const holdsAt = (steps: number) => {
    const ratio = (steps * STEP_MM) / cable.length_mm
    const cores = cable.cores.map((core) => ({ ...core, ohm: core.ohm * ratio }))
    return holds({ ...hot, cables: hot.cables.map((each) => (each === cable ? { ...each, cores } : each)) })
  }
  let [short, long] = [1, LONGEST_MM / STEP_MM]
  if (!holdsAt(short)) return { cable: name, longest_mm: 0 }
  if (holdsAt(long)) return { cable: name, longest_mm: Infinity }
  while (long - short > 1) {
    const middle = Math.floor((short + long) / 2)
    if (holdsAt(middle)) short = middle
    else long = middle
  }
  return { cable: name, longest_mm: short * STEP_MM }
}
