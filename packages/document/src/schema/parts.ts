import { BOUNDS } from '../bounds.ts'
import {
  choicePart,
  eitherPart,
  fieldsPart,
  type Limits,
  listPart,
  numberPart,
  optional,
  type Schema,
  textPart,
  tuplePart,
  type Yields,
} from './schema.ts'

export { optional }

/**
 * The parts that every schema here is made of. The error text of each part is the *expectation* itself ("a number above 0"), so that an
 * issue can put it beside what it got; the same bounds reach JSON Schema and the documentation.
 */

/** A finite number. JSON has no NaN or infinity, but 1e999 reads as one. */
export function number(limits: Limits, means: string) {
  return numberPart(limits, expectedNumber('a number', limits), means)
}

export function wholeNumber(limits: { readonly from: number; readonly upTo: number }, means: string) {
  return numberPart({ whole: true, ...limits }, expectedNumber('a whole number', limits), means)
}

function expectedNumber(what: string, { above, from, below, upTo }: Limits): string {
  const low = above !== undefined ? `above ${above}` : from !== undefined ? `from ${from}` : ''
  // The bound on every length is far from any real one: naming it would only lengthen the sentence
  const high = below !== undefined ? `below ${below}` : upTo !== undefined && upTo !== BOUNDS.length_mm ? `up to ${upTo}` : ''
  return [what, low, high].filter((part) => part !== '').join(' ')
}

/** Above 0 mm. */
export const size_mm = (means: string) => number({ above: 0, upTo: BOUNDS.length_mm }, means)
/** 0 mm or more. */
export const distance_mm = (means: string) => number({ from: 0, upTo: BOUNDS.length_mm }, means)
/** A coordinate or an absolute height in the doorway frame. */
export const place_mm = (means: string) => {
  const expected = `a number between -${BOUNDS.length_mm} and ${BOUNDS.length_mm}`
  return numberPart({ from: -BOUNDS.length_mm, upTo: BOUNDS.length_mm }, expected, means)
}
export const angle_deg = (means: string, largest = 360) => {
  const expected = `an angle from -${largest} to ${largest} degrees`
  return numberPart({ from: -largest, upTo: largest }, expected, means)
}
/** Blacker than a thousandth is no surface; a figure below it is a slip of the point. */
export const reflectance = (means: string) => number({ from: 0.001, upTo: 1 }, means)

/** One line that names something for people. */
export const name = (means: string) => boundedText(BOUNDS.name, ONE_LINE, 'one line', means)
/** Any text, lines included. */
export const note = (means: string) => boundedText(BOUNDS.note, LINES, 'a text', means)
function boundedText(longest: number, form: RegExp, what: string, means: string) {
  return textPart({ longest, form }, `${what} of at most ${longest} characters that can be printed`, means)
}
// Texts end up in terminals and on paper: characters that steer one (escape sequences, turned writing direction) are refused.
const STEERING = String.raw`\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069`
const ONE_LINE = new RegExp(String.raw`^[^\u0000-\u001f${STEERING}]*$`)
const LINES = new RegExp(String.raw`^[^\u0000-\u0008\u000b\u000c\u000e-\u001f${STEERING}]*$`)

/** Names inside the file. No `/`, `:` and `@`: findings are called `<rule>:<zone>/<letter>@<state>`. */
export const id = (means: string) => {
  const expected = `a short name of at most ${BOUNDS.id} letters, digits, ".", "_" and "-"`
  return textPart({ longest: BOUNDS.id, form: /^[A-Za-z0-9][A-Za-z0-9._-]*$/ }, expected, means)
}

export function choice<const V extends readonly [string, ...string[]]>(values: V, means: string) {
  return choicePart(values, oneOf(values), means)
}
export const oneOf = (values: readonly string[]) => `${values.length > 1 ? 'one of ' : ''}${values.map((v) => `"${v}"`).join(', ')}`

export function list<S extends Schema>(item: S, { from = 0, upTo }: { readonly from?: number; readonly upTo: number }, means: string) {
  return listPart(item, { from, upTo }, from > 0 ? `a list of ${from} to ${upTo}` : `a list of at most ${upTo}`, means)
}

export function record<const S extends Readonly<Record<string, Schema>>>(fields: S, means: string) {
  return fieldsPart(fields, 'an object { ... }', means)
}

export const pair_mm = (means: string) => tuplePart([place_mm('first'), place_mm('second')], 'two numbers [ , ]', means)
export const point_mm = (means: string) => tuplePart([place_mm('x'), place_mm('y'), place_mm('z')], 'three numbers [x, y, z]', means)

/** Either a word or what the word stands in for, as `"none"` or the measures of a wall. */
export function wordOr<const W extends string, S extends Schema>(word: W, schema: S, otherwise: string, means: string) {
  const expected = `"${word}" or ${otherwise}`
  return eitherPart([choicePart([word], expected, ''), schema], expected, means)
}

/** What tells the alternatives of a union apart. */
export const tag = <const T extends string>(value: T) => choicePart([value], `"${value}"`, 'Tells which of the alternatives this is.')

/** What a schema yields, as plain data that nobody writes to. */
export type Plain<S extends Schema> = DeepReadonly<Yields<S>>
export type DeepReadonly<T> = T extends object ? { readonly [K in keyof T]: DeepReadonly<T[K]> } : T
