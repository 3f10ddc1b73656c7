import type { Door, Finding, Quantity } from '@sillsight/engine'
import type { Units } from '../options.ts'
import { postureOf, postureWords } from './bodies.ts'
import { causeMend, causeWords, isCause } from './causes.ts'
import { figure, figureAgainst, type Toward, tape } from './figures.ts'
import { needWords } from './needs.ts'
import { place } from './places.ts'
import { listed, plain } from './plain.ts'

/** What the wording of a rule may speak of: one finding about one door, in the reader's units. */
export interface Told {
  readonly door: Door
  readonly finding: Finding
  readonly units: Units
}

/** A word from the facts, fit to be shown; undefined where the finding has none of this key. */
export function word({ finding }: Told, key: string): string | undefined {
  const value = finding.facts[key]
  return typeof value === 'string' && value !== '' ? plain(value) : undefined
}

export function number({ finding }: Told, key: string): number | undefined {
  const value = finding.facts[key]
  return typeof value === 'number' ? value : undefined
}

export function flag({ finding }: Told, key: string): boolean | undefined {
  const value = finding.facts[key]
  return typeof value === 'boolean' ? value : undefined
}

/** A length from the facts by tape, or undefined. */
export function length(told: Told, key: string): string | undefined {
  const value_mm = number(told, key)
  return value_mm === undefined ? undefined : tape(value_mm, told.units)
}

/** A length from the facts, rounded to its unfavourable side. */
export function lengthToward(told: Told, key: string, toward: Toward): string | undefined {
  const value_mm = number(told, key)
  return value_mm === undefined ? undefined : figure({ value: value_mm, unit: 'mm' }, told.units, toward)
}

/** The figure and its limit as they are shown, or undefined where the finding has none. */
export function against(
  { finding, units }: Told,
  toward: Exclude<Toward, 'nearest'>,
): { readonly measured: string; readonly limit: string } | undefined {
  if (finding.verdict === 'not-applicable' || !finding.measured || !finding.limit) return undefined
  return figureAgainst(finding.measured, finding.limit, units, toward)
}

export function limitOf({ finding }: Told): Quantity | undefined {
  return finding.verdict === 'not-applicable' ? undefined : finding.limit
}

/** "the zone at the leaf, yard", by its name. */
export function zoneWords(told: Told): string {
  const name = word(told, 'zoneName') ?? word(told, 'zone') ?? plain(told.finding.subject.id)
  return `zone \u201c${name}\u201d`
}

/** "sensor “front”", by its name. */
export function sensorWords(told: Told): string {
  const name = word(told, 'sensorName') ?? word(told, 'sensor')
  return name === undefined ? 'the sensor' : `sensor \u201c${name}\u201d`
}

/** "field “front” of sensor “corner”", by their names. */
export function fieldWords(told: Told): string {
  const name = word(told, 'fieldName') ?? word(told, 'field')
  return name === undefined ? sensorWords(told) : `field \u201c${name}\u201d of ${sensorWords(told)}`
}

/** " (dock leveller down)" where the door has several states. */
export function inState({ door, finding }: Told): string {
  if (door.states.length < 2 || finding.state === undefined) return ''
  const state = door.states.find(({ id }) => id === finding.state)
  return ` (${plain(state?.name ?? finding.state)})`
}

/** The body of the worst case by its size and posture, or undefined. */
export function worstBody({ door, finding, units }: Told): string | undefined {
  const worst = finding.verdict === 'not-applicable' ? undefined : finding.worstCase
  const posture = worst && postureOf(door, worst)
  return worst && posture ? postureWords(posture, units, worst.yaw_rad) : undefined
}

/** Where the middle of the worst case lies by tape, or undefined. */
export function worstPlace({ door, finding, units }: Told): string | undefined {
  const worst = finding.verdict === 'not-applicable' ? undefined : finding.worstCase
  return worst ? place(door, worst, units) : undefined
}

/** The first cause in words, from the facts `cause` and `obstacle`; undefined where none is named. */
export function causeOf(told: Told): string | undefined {
  const kind = word(told, 'cause')
  return isCause(kind) ? causeWords(told.door, { kind, obstacle: word(told, 'obstacle') }) : undefined
}

export function mendOfCause(told: Told): string | undefined {
  const kind = word(told, 'cause')
  return isCause(kind) ? causeMend(kind) : undefined
}

/** What an unsettled finding needs, in words. */
export function needsWords({ door, finding, units }: Told): string {
  if (finding.verdict !== 'undetermined' || finding.needs.length === 0) return ''
  return listed([...new Set(finding.needs.map((need) => needWords(door, need, units)))])
}
