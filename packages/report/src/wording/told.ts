import type { Door, Finding, Quantity } from '@sillsight/engine'
import { postureOf, postureWords } from './bodies.ts'
import { causeMend, causeWords, isCause } from './causes.ts'
import { figure, figureAgainst, type Toward, tape } from './figures.ts'
import type { Reader } from './language.ts'
import { needWords, partName } from './needs.ts'
import { place } from './places.ts'
import { called, plain } from './plain.ts'

/** What the wording of a rule may speak of: one finding about one door, in the reader's units. */
export interface Told extends Reader {
  readonly door: Door
  readonly finding: Finding
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
  return value_mm === undefined ? undefined : tape(value_mm, told)
}

/** A length from the facts, rounded to its unfavourable side. */
export function lengthToward(told: Told, key: string, toward: Toward): string | undefined {
  const value_mm = number(told, key)
  return value_mm === undefined ? undefined : figure({ value: value_mm, unit: 'mm' }, told, toward)
}

/** The figure and its limit as they are shown, or undefined where the finding has none. */
export function against(told: Told, toward: Exclude<Toward, 'nearest'>): { readonly measured: string; readonly limit: string } | undefined {
  const { finding } = told
  if (finding.verdict === 'not-applicable' || !finding.measured || !finding.limit) return undefined
  return figureAgainst(finding.measured, finding.limit, told, toward)
}

export function limitOf({ finding }: Told): Quantity | undefined {
  return finding.verdict === 'not-applicable' ? undefined : finding.limit
}

/** A name from the facts, as the reader's language has it. */
export function nameIn(told: Told, ...keys: readonly string[]): string | undefined {
  for (const key of keys) {
    const name = word(told, key)
    if (name !== undefined) return called(name, told)
  }
  return undefined
}

/** "zone “at the leaf, yard”", by its name. */
export function zoneWords(told: Told): string {
  return told.language.things.zone(nameIn(told, 'zoneName', 'zone') ?? plain(told.finding.subject.id))
}

/** "sensor “front”", by its name. */
export function sensorWords(told: Told): string {
  const name = nameIn(told, 'sensorName', 'sensor')
  return name === undefined ? told.language.things.theSensor : told.language.things.sensor(name)
}

/** "field “front” of sensor “corner”", by their names. */
export function fieldWords(told: Told): string {
  const name = nameIn(told, 'fieldName', 'field')
  return name === undefined ? sensorWords(told) : told.language.things.field(name, sensorWords(told))
}

/** " (dock leveller down)" where the door has several states. */
export function inState(told: Told): string {
  const { door, finding } = told
  if (door.states.length < 2 || finding.state === undefined) return ''
  const state = door.states.find(({ id }) => id === finding.state)
  return ` (${called(state?.name ?? finding.state, told)})`
}

/** The body of the worst case by its size and posture, or undefined. */
export function worstBody(told: Told): string | undefined {
  const { door, finding } = told
  const worst = finding.verdict === 'not-applicable' ? undefined : finding.worstCase
  const posture = worst && postureOf(door, worst)
  return worst && posture ? postureWords(posture, told, worst.yaw_rad) : undefined
}

/** Where the middle of the worst case lies by tape, or undefined. */
export function worstPlace(told: Told): string | undefined {
  const { door, finding } = told
  const worst = finding.verdict === 'not-applicable' ? undefined : finding.worstCase
  return worst ? place(door, worst, told) : undefined
}

/** The first cause in words, from the facts `cause` and `obstacle`; undefined where none is named. */
export function causeOf(told: Told): string | undefined {
  const kind = word(told, 'cause')
  return isCause(kind, told) ? causeWords(told.door, { kind, obstacle: word(told, 'obstacle') }, told) : undefined
}

export function mendOfCause(told: Told): string | undefined {
  const kind = word(told, 'cause')
  return isCause(kind, told) ? causeMend(kind, told) : undefined
}

/** What an unsettled finding needs, in words. */
export function needsWords(told: Told): string {
  const { door, finding } = told
  if (finding.verdict !== 'undetermined' || finding.needs.length === 0) return ''
  const { sensor, lane } = finding.facts
  // the sentence says whose they are
  const named = [
    ...door.sensors.flatMap(({ id }, i) => (id === sensor ? [partName(door, `sensors/${i}`, told)] : [])),
    ...(door.lanes ?? []).flatMap(({ id }, i) => (id === lane ? [partName(door, `survey/lanes/${i}`, told)] : [])),
  ].flatMap((name) => name ?? [])
  return told.language.listed([...new Set(finding.needs.map((need) => needWords(door, need, told, named)))])
}
