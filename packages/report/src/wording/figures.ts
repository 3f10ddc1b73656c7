import type { Quantity, Unit } from '@sillsight/engine'
import type { Reader } from './language.ts'

/** Which way a figure gets worse, and so which way it is rounded. `nearest` is for places, where neither way is worse. */
export type Toward = 'larger-is-worse' | 'smaller-is-worse' | 'nearest'

/** What binary arithmetic leaves behind, in steps of rounding: 1100.0000000001 is not shown as 1100.1. Errs toward the round figure by 1e-6 steps. */
const NOISE = 1e-6

/**
 * A quantity in the words of the reader, rounded to its unfavourable side: 200.04 mm where larger is worse reads "200.1 mm".
 * Lengths to 0.1 mm or 1/16 in, areas to 0.01 m2 or 0.1 sq ft, angles to 0.1 degree, times to 0.01 s.
 */
export function figure({ value, unit }: Quantity, reader: Reader, toward: Toward = 'nearest'): string {
  if (!Number.isFinite(value)) return value > 0 ? reader.language.units.withoutEnd : reader.language.units.unknown
  return grainOf(unit, reader, value).show(value, toward, 0)
}

/**
 * A measured quantity and the limit it is held against. Both take more decimals until the shown figures stand in the order of the
 * true ones, and a measured figure beyond its limit never reads as if it were at the limit.
 */
export function figureAgainst(
  measured: Quantity,
  limit: Quantity,
  reader: Reader,
  toward: Exclude<Toward, 'nearest'>,
): { readonly measured: string; readonly limit: string } {
  if (measured.unit !== limit.unit || !Number.isFinite(measured.value) || !Number.isFinite(limit.value)) {
    return { measured: figure(measured, reader, toward), limit: figure(limit, reader) }
  }
  const grain = grainOf(measured.unit, reader, Math.max(Math.abs(measured.value), Math.abs(limit.value)))
  const differ = Math.abs(measured.value - limit.value) > 1e-9 * Math.max(1, Math.abs(limit.value))
  for (let finer = 0; finer <= 4; finer++) {
    const shown = { measured: grain.show(measured.value, toward, finer), limit: grain.show(limit.value, 'nearest', finer) }
    if (!differ || inOrder(measured, limit, grain.round(measured.value, toward, finer), grain.round(limit.value, 'nearest', finer)))
      return shown
  }
  const all = ({ value }: Quantity) => String(value).replace('.', reader.language.decimal)
  return { measured: all(measured), limit: all(limit) }
}

function inOrder(measured: Quantity, limit: Quantity, shownMeasured: number, shownLimit: number): boolean {
  return Math.sign(measured.value - limit.value) === Math.sign(shownMeasured - shownLimit)
}

/** A distance as it is read off a tape, to the nearest millimetre or sixteenth: "640 mm", "3.55 m", "2' 1 3/16\"". */
export function tape(value_mm: number, reader: Reader): string {
  if (!Number.isFinite(value_mm)) return figure({ value: value_mm, unit: 'mm' }, reader)
  if (reader.units === 'feet-inches') return feetAndInches(value_mm, 'nearest')
  const whole_mm = Math.round(value_mm)
  if (Math.abs(whole_mm) < 1000) return `${whole_mm} mm`
  return `${trimmed(whole_mm / 1000, 3, 2, reader)} m`
}

/** The figure beside a dimension line. Millimetres stand bare there, as on every drawing of the trade. */
export function dimensionFigure(value_mm: number, reader: Reader): string {
  return reader.units === 'feet-inches' ? feetAndInches(value_mm, 'nearest') : String(Math.round(value_mm))
}

/** The three sides of a body, along the leaf x across it x height: "700 x 300 x 200 mm" with a multiplication sign. */
export function size(sides_mm: readonly number[], reader: Reader): string {
  if (reader.units === 'feet-inches') return sides_mm.map((side_mm) => feetAndInches(side_mm, 'nearest')).join(' \u00d7 ')
  return `${sides_mm.map((side_mm) => trimmed(side_mm, 1, 0, reader)).join(' \u00d7 ')} mm`
}

/** A figure in the middle of its arithmetic: unrounded to 0.001 of its unit, so that the next step can be worked by hand. Lengths always in mm as well. */
export function worked({ value, unit }: Quantity, reader: Reader): string {
  if (unit === '1' && Number.isInteger(value)) return count(value)
  if (!Number.isFinite(value)) return figure({ value, unit }, reader)
  const metric = grainOf(unit, { ...reader, units: 'metric' }, value).show(value, 'nearest', 2)
  return reader.units === 'feet-inches' && unit === 'mm' ? `${figure({ value, unit }, reader)} (${metric})` : metric
}

/** A whole number in groups of three, as "24 000". Spaces, because commas and points mean different things to different readers. */
export function count(value: number): string {
  return String(Math.round(value)).replace(/\B(?=(\d{3})+(?!\d))/g, ' ')
}

interface Grain {
  /** The value as it will be shown, in the shown unit. `finer` asks for so many decimals more. */
  readonly round: (value: number, toward: Toward, finer: number) => number
  readonly show: (value: number, toward: Toward, finer: number) => string
}

function grainOf(unit: Unit, reader: Reader, sizeOfIt: number): Grain {
  const feet = reader.units === 'feet-inches'
  const decimals = (factor: number, places: number, suffix: string) => decimalGrain(factor, places, suffix, reader)
  if (unit === 'mm' || unit === 'm') return feet ? inches(unit === 'm' ? 1000 : 1) : decimals(unit === 'm' ? 1000 : 1, 1, ' mm')
  if (unit === 'mm2' || unit === 'm2') return areaGrain(unit === 'm2' ? 1 : 1e-6, sizeOfIt, reader)
  if (unit === 'm3') return feet ? decimals(1 / 0.028316846592, 0, ` ${reader.language.units.cubicFeet}`) : decimals(1, 1, ' m\u00b3') // 1 ft = 0.3048 m
  if (unit === 'rad') return decimals(180 / Math.PI, 1, '\u00b0')
  if (unit === 'deg') return decimals(1, 1, '\u00b0')
  if (unit === 's') return decimals(1, 2, ' s')
  if (unit === 'mm_per_s') return feet ? decimals(1 / 304.8, 2, ' ft/s') : decimals(1 / 1000, 3, ' m/s')
  if (unit === 'N') return decimals(1, 0, ' N')
  if (unit === 'J') return decimals(1, 1, ' J')
  if (unit === 'V') return decimals(1, 2, ' V')
  if (unit === 'A') return decimals(1, 3, ' A')
  if (unit === 'VA') return decimals(1, 0, ' VA')
  if (unit === 'ohm_per_km') return decimals(1, 2, ' ohm/km')
  if (unit === 'y') return decimals(1, 0, ` ${reader.language.units.years}`)
  if (unit === 'd') return decimals(1, 0, ` ${reader.language.units.days}`)
  if (unit === 'percent') return decimals(1, 1, ' %')
  if (unit === 'per_mm') return decimals(1000, 4, ` ${reader.language.units.perMetre}`)
  return decimals(1, 2, '')
}

function areaGrain(m2: number, sizeOfIt: number, reader: Reader): Grain {
  const feet = ` ${reader.language.units.squareFeet}`
  if (reader.units === 'feet-inches') return decimalGrain(m2 / 0.09290304, 1, feet, reader) // 1 ft = 0.3048 m by definition
  return sizeOfIt * m2 < 0.1 ? decimalGrain(m2 * 1e4, 0, ' cm\u00b2', reader) : decimalGrain(m2, 2, ' m\u00b2', reader)
}

function decimalGrain(factor: number, places: number, suffix: string, reader: Reader): Grain {
  const round = (value: number, toward: Toward, finer: number): number => rounded(value * factor, 10 ** -(places + finer), toward)
  return { round, show: (value, toward, finer) => trimmed(round(value, toward, finer), places + finer, 0, reader) + suffix }
}

function inches(factor: number): Grain {
  const round = (value: number, toward: Toward, finer: number): number => rounded((value * factor) / 25.4, 1 / (16 * 4 ** finer), toward)
  const show = (value: number, toward: Toward, finer: number): string => inchWords(round(value, toward, finer), 16 * 4 ** finer)
  return { round, show }
}

function feetAndInches(value_mm: number, toward: Toward): string {
  return inchWords(rounded(value_mm / 25.4, 1 / 16, toward), 16)
}

function inchWords(value: number, parts: number): string {
  const sign = value < 0 ? '-' : ''
  const units = Math.round(Math.abs(value) * parts)
  const feet = Math.floor(units / (12 * parts))
  const whole = Math.floor(units / parts) - feet * 12
  const rest = units % parts
  const inchPart = [whole > 0 || rest === 0 ? String(whole) : '', rest > 0 ? fraction(rest, parts) : ''].filter(Boolean).join(' ')
  if (feet === 0) return `${sign}${inchPart}"`
  return inchPart === '0' ? `${sign}${feet}'` : `${sign}${feet}' ${inchPart}"`
}

function fraction(numerator: number, denominator: number): string {
  return numerator % 2 === 0 ? fraction(numerator / 2, denominator / 2) : `${numerator}/${denominator}`
}

function rounded(value: number, step: number, toward: Toward): number {
  const steps = value / step
  const noise = NOISE * Math.max(1, Math.abs(steps) * 1e-6)
  if (toward === 'larger-is-worse') return Math.ceil(steps - noise) * step
  if (toward === 'smaller-is-worse') return Math.floor(steps + noise) * step
  return Math.round(steps) * step
}

function trimmed(value: number, most: number, least: number, { language }: Reader): string {
  const text = value.toFixed(most)
  const cut = most > least ? text.replace(new RegExp(`0{1,${most - least}}$`), '').replace(/\.$/, '') : text
  return cut === '-0' ? '0' : cut.replace('.', language.decimal)
}
