import { type Limits, movedAt, restToRest } from './profile.ts'

/** Standard gravity, by definition, in m/s2. */
const GRAVITY_M_PER_S2 = 9.80665
const ZERO_DEGC_K = 273.15

/** What drives the air through an open doorway: two temperatures, and how much of the ideal exchange an opening lets through. */
export interface AirExchange {
  readonly warmer_degC: number
  readonly colder_degC: number
  /** Discharge coefficient: first + second * difference. */
  readonly discharge: readonly [number, number]
  /** The mean of either way is that at this part of the height from the middle: 2 / 9. */
  readonly meanAt: readonly [number, number]
}

/**
 * Air that goes each way through an opening of one temperature on each side, in m3/s: `Cd A / 2 sqrt(2 g (2 h / 9) dT / T)`, with the mean of both
 * absolute temperatures for T. No wind, no draught through other openings, nothing in the way.
 */
export function exchangePerSecond_m3(width_mm: number, height_mm: number, air: AirExchange): number {
  const difference = air.warmer_degC - air.colder_degC
  const mean = (air.warmer_degC + air.colder_degC) / 2 + ZERO_DEGC_K
  const coefficient = air.discharge[0] + air.discharge[1] * difference
  const area_m2 = (width_mm * height_mm) / 1e6
  const at_m = ((height_mm / 1000) * air.meanAt[0]) / air.meanAt[1]
  return ((coefficient * area_m2) / 2) * Math.sqrt((2 * GRAVITY_M_PER_S2 * at_m * difference) / mean)
}

/** One opening: up, open, shut again. */
export interface OpeningCycle {
  readonly way_mm: number
  readonly open: Limits
  readonly holdOpen_s: number
  readonly close: Limits
  /** Width and height that are open when the leaf has so much way to go. */
  readonly openAt: (way_mm: number) => readonly [width_mm: number, height_mm: number]
}

/** An even number of steps for each move of the leaf. */
const STEPS = 400

/** In one opening, each way: the flow at each instant, summed up by Simpson's rule while the leaf moves. */
export function exchangeOfOpening_m3({ way_mm, open, holdOpen_s, close, openAt }: OpeningCycle, air: AirExchange): number {
  const flow = (way: number) => exchangePerSecond_m3(...openAt(way), air)
  const during = (limits: Limits) => {
    const profile = restToRest(way_mm, limits)
    let sum = 0
    for (let i = 0; i <= STEPS; i++)
      sum += (i === 0 || i === STEPS ? 1 : i % 2 === 1 ? 4 : 2) * flow(movedAt(profile, (profile.end_s * i) / STEPS))
    return (sum * profile.end_s) / STEPS / 3
  }
  return during(open) + holdOpen_s * flow(way_mm) + during(close) // closing is the same in reverse: its profile is symmetrical
}
