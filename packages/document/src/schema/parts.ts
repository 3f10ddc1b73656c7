import { z } from 'zod'
import { BOUNDS } from '../bounds.ts'

// Compiled checks would need `eval`, which a strict content security policy forbids.
z.config({ jitless: true })

/**
 * The parts that every schema here is made of. The error text of each part is the *expectation* itself ("a number above 0"), so that an
 * issue can put it beside what it got; the same bounds reach JSON Schema and the documentation.
 */
type Range = { readonly above?: number; readonly from?: number; readonly below?: number; readonly upTo?: number }

/** A finite number. JSON has no NaN or infinity, but 1e999 reads as one. */
export function number({ above, from, below, upTo }: Range, means: string) {
  const error = expectedNumber('a number', { above, from, below, upTo })
  let schema = z.number({ error })
  if (above !== undefined) schema = schema.gt(above, { error })
  if (from !== undefined) schema = schema.gte(from, { error })
  if (below !== undefined) schema = schema.lt(below, { error })
  if (upTo !== undefined) schema = schema.lte(upTo, { error })
  return schema.describe(means)
}

export function wholeNumber({ from, upTo }: { readonly from: number; readonly upTo: number }, means: string) {
  const error = expectedNumber('a whole number', { from, upTo })
  return z.int({ error }).gte(from, { error }).lte(upTo, { error }).describe(means)
}

function expectedNumber(what: string, { above, from, below, upTo }: { [K in keyof Range]: Range[K] | undefined }): string {
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
  const error = `a number between -${BOUNDS.length_mm} and ${BOUNDS.length_mm}`
  return z.number({ error }).gte(-BOUNDS.length_mm, { error }).lte(BOUNDS.length_mm, { error }).describe(means)
}
export const angle_deg = (means: string, largest = 360) => {
  const error = `an angle from -${largest} to ${largest} degrees`
  return z.number({ error }).gte(-largest, { error }).lte(largest, { error }).describe(means)
}
export const reflectance = (means: string) => number({ above: 0, upTo: 1 }, means)

/** One line that names something for people. */
export const name = (means: string) => boundedText(BOUNDS.name, ONE_LINE, 'one line', means)
/** Any text, lines included. */
export const note = (means: string) => boundedText(BOUNDS.note, LINES, 'a text', means)
function boundedText(longest: number, form: RegExp, what: string, means: string) {
  const error = `${what} of at most ${longest} characters that can be printed`
  return z.string({ error }).max(longest, { error }).regex(form, { error }).describe(means)
}
// Texts end up in terminals and on paper: characters that steer one (escape sequences, turned writing direction) are refused.
const STEERING = String.raw`\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069`
const ONE_LINE = new RegExp(String.raw`^[^\u0000-\u001f${STEERING}]*$`)
const LINES = new RegExp(String.raw`^[^\u0000-\u0008\u000b\u000c\u000e-\u001f${STEERING}]*$`)

/** Names inside the file. No `/`, `:` and `@`: findings are called `<rule>:<zone>/<letter>@<state>`. */
export const id = (means: string) => {
  const error = `a short name of at most ${BOUNDS.id} letters, digits, ".", "_" and "-"`
  return z
    .string({ error })
    .max(BOUNDS.id, { error })
    .regex(/^[A-Za-z0-9][A-Za-z0-9._-]*$/, { error })
    .describe(means)
}

export function choice<const T extends readonly [string, ...string[]]>(values: T, means: string) {
  return z.enum(values, { error: oneOf(values) }).describe(means)
}
export const oneOf = (values: readonly string[]) => `${values.length > 1 ? 'one of ' : ''}${values.map((v) => `"${v}"`).join(', ')}`

export function list<T extends z.ZodType>(item: T, { from = 0, upTo }: { readonly from?: number; readonly upTo: number }, means: string) {
  const error = from > 0 ? `a list of ${from} to ${upTo}` : `a list of at most ${upTo}`
  return z.array(item, { error }).min(from, { error }).max(upTo, { error }).describe(means)
}

export function record<T extends z.ZodRawShape>(shape: T, means: string) {
  return z.object(shape, { error: 'an object { ... }' }).describe(means)
}

export const pair_mm = (means: string) => z.tuple([place_mm('first'), place_mm('second')], { error: 'two numbers [ , ]' }).describe(means)
export const point_mm = (means: string) =>
  z.tuple([place_mm('x'), place_mm('y'), place_mm('z')], { error: 'three numbers [x, y, z]' }).describe(means)

/** Either a word or what the word stands in for, as `"none"` or the measures of a wall. */
export function wordOr<const W extends string, T extends z.ZodType>(word: W, schema: T, otherwise: string, means: string) {
  const error = `"${word}" or ${otherwise}`
  return z.union([z.literal(word, { error }), schema], { error }).describe(means)
}

/** What tells the alternatives of a union apart. */
export const tag = <const T extends string>(value: T) =>
  z.literal(value, { error: `"${value}"` }).describe('Tells which of the alternatives this is.')

export const optional = <T extends z.ZodType>(schema: T) => z.exactOptional(schema)

/** What a schema yields, as plain data that nobody writes to. */
export type Plain<T extends z.ZodType> = DeepReadonly<z.infer<T>>
export type DeepReadonly<T> = T extends object ? { readonly [K in keyof T]: DeepReadonly<T[K]> } : T
