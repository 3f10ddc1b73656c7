import type { OutsideValue } from '../model/source.ts'
import type { Conductor } from '../model/wiring.ts'

/** Pairs: cross-section in mm2, largest resistance at 20 °C of a plain class 5 conductor, as fine as cables at doors have. */
export const conductorResistance = {
  id: 'conductor-resistance',
  value: [0.5, 39.0, 0.75, 26.0, 1.0, 19.5, 1.5, 13.3, 2.5, 7.98],
  unit: 'ohm_per_km',
  means: 'Largest resistance of a flexible copper conductor (class 5, plain) at 20 °C; pairs of cross-section in mm2 and resistance.',
  source: {
    basis: 'published',
    document: 'IEC 60228',
    edition: '2004',
    clause: 'table 3',
    note: 'seen in a secondary table: mycableengineering.com/knowledge-base/iec-60228-dc-resistance',
  },
} as const satisfies OutsideValue

/** Threes: gauge, cross-section in mm2, resistance of a solid wire at 20 °C. */
export const gaugeResistance = {
  id: 'gauge-resistance',
  value: [
    ...[24, 0.20473, 84.213],
    ...[22, 0.32553, 52.962],
    ...[20, 0.51762, 33.308],
    ...[18, 0.82305, 20.948],
    ...[16, 1.3087, 13.174],
    ...[14, 2.0809, 8.2853],
    ...[12, 3.3088, 5.2107],
  ],
  unit: 'ohm_per_km',
  means: 'Resistance of a solid copper wire at 20 °C; threes of wire gauge, cross-section in mm2 and resistance.',
  source: {
    basis: 'published',
    document: 'ASTM B258',
    edition: 'as tabulated',
    clause: 'table',
    note: 'diameter 0.127 x 92^((36 - n) / 39) mm at 17.241 ohm mm2/km; agrees to 0.1 % with a public table: wp.1728.org/?p=4314',
  },
} as const satisfies OutsideValue

export const strandingAllowance = {
  id: 'stranding-allowance',
  value: 1.03,
  unit: '1',
  means: 'How much more than a solid wire of its gauge a stranded one is taken to have.',
  source: {
    basis: 'our decision',
    document: 'docs/method.md',
    clause: 'Supply',
    note: 'NEC Chapter 9, table 8 has 1.020 to 1.026 times the resistance of its solid conductors',
  },
} as const satisfies OutsideValue

export const strandedResistivity = {
  id: 'stranded-resistivity',
  value: 20,
  unit: '1',
  means: 'Resistance in ohm/km that 1 mm2 is taken to have where the table lacks a cross-section; it is in inverse proportion to that.',
  source: {
    basis: 'our decision',
    document: 'docs/method.md',
    clause: 'Supply',
    note: 'no entry of IEC 60228, table 3 from 0.5 to 2.5 mm2 has more than 19.95 ohm mm2/km',
  },
} as const satisfies OutsideValue

/** Pairs: temperature in °C, factor that turns a resistance at it into that at 20 °C. */
export const copperFactors = {
  id: 'copper-factors',
  value: [5, 1.064, 10, 1.042, 30, 0.962, 40, 0.926, 50, 0.893],
  unit: '1',
  means: 'What the resistance of copper at a temperature is multiplied by for that at 20 °C; pairs of temperature in °C and factor.',
  source: {
    basis: 'published',
    document: 'IEC 60228',
    edition: '2004',
    clause: 'annex A',
    note: 'rounded; seen in a copy: uecables.com/471-power-copper-conductors-according-to-iec-60228.html',
  },
} as const satisfies OutsideValue

export const copperCoefficient = {
  id: 'copper-coefficient',
  value: 0.00393,
  unit: '1',
  means: 'How much the resistance of copper grows for each kelvin, as a share of that at 20 °C; used where the table of factors ends.',
  source: { basis: 'from memory', document: 'IEC 60028', edition: '1925', clause: 'temperature coefficient' },
} as const satisfies OutsideValue

/** Cross-sections that can be bought, thinnest first: of both tables. */
export const STANDARD_AREAS: readonly Conductor[] = [...pairs(conductorResistance.value)].map(([area_mm2]) => ({ area_mm2 }))
export const STANDARD_GAUGES: readonly Conductor[] = threes(gaugeResistance.value).map(([awg]) => ({ awg }))

/** From one gauge to the next thicker one the area grows by 92^(2 / 39). */
const GAUGE_STEP = 1.2609856

/** At 20 °C, at most. A cross-section that the table lacks goes by the largest resistivity in it, a gauge that the table lacks by the step from gauge to gauge. */
export function conductorOhm_per_km(conductor: Conductor): number {
  if ('area_mm2' in conductor) {
    const { area_mm2 } = conductor
    return pairs(conductorResistance.value).find(([area]) => area === area_mm2)?.[1] ?? strandedResistivity.value / area_mm2
  }
  const table = threes(gaugeResistance.value)
  const nearest = table.reduce((a, b) => (Math.abs(b[0] - conductor.awg) < Math.abs(a[0] - conductor.awg) ? b : a))
  let solid = nearest[2]
  for (let awg = nearest[0]; awg < conductor.awg; awg++) solid *= GAUGE_STEP
  for (let awg = nearest[0]; awg > conductor.awg; awg--) solid /= GAUGE_STEP
  return solid * strandingAllowance.value
}

/** What that rests on. */
export function conductorValues(conductor: Conductor): readonly OutsideValue[] {
  if ('awg' in conductor) return [gaugeResistance, strandingAllowance]
  return pairs(conductorResistance.value).some(([area]) => area === conductor.area_mm2) ? [conductorResistance] : [strandedResistivity]
}

/**
 * Resistance of copper at a temperature as a multiple of that at 20 °C, and what that rests on: the table from 5 to 50 °C, straight between its entries,
 * and beyond it on from its ends by the coefficient.
 */
export function copperAt(temperature_degC: number): { readonly factor: number; readonly value: OutsideValue } {
  const table = [...pairs(copperFactors.value).map(([at_degC, factor]) => [at_degC, 1 / factor] as const), [20, 1] as const]
  const below = table.filter(([at_degC]) => at_degC <= temperature_degC).sort((a, b) => b[0] - a[0])[0]
  const above = table.filter(([at_degC]) => at_degC >= temperature_degC).sort((a, b) => a[0] - b[0])[0]
  const end = below ?? above
  if (!below || !above)
    return { factor: end ? end[1] + copperCoefficient.value * (temperature_degC - end[0]) : 1, value: copperCoefficient }
  const share = above[0] === below[0] ? 0 : (temperature_degC - below[0]) / (above[0] - below[0])
  return { factor: below[1] + share * (above[1] - below[1]), value: copperFactors }
}

function pairs(flat: readonly number[]): readonly (readonly [number, number])[] {
  return flat.flatMap((first, i) => (i % 2 === 0 ? [[first, flat[i + 1] as number] as const] : []))
}

function threes(flat: readonly number[]): readonly (readonly [number, number, number])[] {
  return flat.flatMap((first, i) => (i % 3 === 0 ? [[first, flat[i + 1] as number, flat[i + 2] as number] as const] : []))
}
