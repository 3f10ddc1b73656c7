declare const yields: unique symbol

/**
 * What a value of a file has to be, as plain data: one description gives the check (`check.ts`), the types (`Yields`), JSON Schema and the
 * documentation. `expected` is what an issue says when something else stands there, `means` what the value is for.
 */
export type Schema<T = unknown> = Part & Typed<T>
/** The type of the values that fit; there for the compiler alone. */
interface Typed<T> {
  readonly [yields]?: T
}
export type Yields<S extends Schema> = S extends Typed<infer T> ? T : never

export type Part =
  | NumberPart
  | TextPart
  | ChoicePart
  | ListPart
  | TuplePart
  | FieldsPart
  | EntriesPart
  | EitherPart
  | AnythingPart
  | OptionalPart

interface Told {
  readonly expected: string
  readonly means: string
}
/** A finite number between its limits. */
export interface NumberPart extends Told {
  readonly kind: 'number'
  readonly whole: boolean
  readonly above?: number | undefined
  readonly from?: number | undefined
  readonly below?: number | undefined
  readonly upTo?: number | undefined
}
export interface TextPart extends Told {
  readonly kind: 'text'
  readonly longest?: number | undefined // UTF-16 code units
  readonly form?: RegExp | undefined
}
/** One of some words, or the one number that a version is. */
export interface ChoicePart extends Told {
  readonly kind: 'choice'
  readonly values: readonly (string | number)[]
}
export interface ListPart extends Told {
  readonly kind: 'list'
  readonly item: Part
  readonly from: number
  readonly upTo: number
}
/** A list whose length and meanings are fixed, as a point. */
export interface TuplePart extends Told {
  readonly kind: 'tuple'
  readonly items: readonly Part[]
}
/** An object with known fields. Others may stand beside them: they are kept and reported elsewhere. */
export interface FieldsPart extends Told {
  readonly kind: 'fields'
  readonly fields: Readonly<Record<string, Part>>
}
/** An object whose names are free and whose values are alike. */
export interface EntriesPart extends Told {
  readonly kind: 'entries'
  readonly entry: Part
}
/** Several alternatives; with a tag they are objects that this field tells apart. */
export interface EitherPart extends Told {
  readonly kind: 'either'
  readonly options: readonly Part[]
  readonly tag?: string | undefined
}
export interface AnythingPart {
  readonly kind: 'anything'
  readonly means: string
}
/** A field that may be absent; never null. */
export interface OptionalPart {
  readonly kind: 'optional'
  readonly inner: Part
}
export type Optional<T> = OptionalPart & Typed<T>

type Shape = Readonly<Record<string, Schema>>
type OptionalKeys<S extends Shape> = { [K in keyof S]: S[K] extends OptionalPart ? K : never }[keyof S]
type FieldsOf<S extends Shape> = { readonly [K in Exclude<keyof S, OptionalKeys<S>>]: Yields<S[K]> } & {
  readonly [K in OptionalKeys<S>]?: Yields<S[K]>
}
type ItemsOf<S extends readonly Schema[]> = { readonly [K in keyof S]: Yields<S[K]> }

export type Limits = { readonly [K in 'above' | 'from' | 'below' | 'upTo']?: number | undefined }

export function numberPart(limits: Limits & { readonly whole?: boolean }, expected: string, means: string): Schema<number> {
  return { kind: 'number', whole: false, ...limits, expected, means }
}

export function textPart(limits: { readonly longest?: number; readonly form?: RegExp }, expected: string, means: string): Schema<string> {
  return { kind: 'text', ...limits, expected, means }
}

export function choicePart<const V extends readonly (string | number)[]>(values: V, expected: string, means: string): Schema<V[number]> {
  return { kind: 'choice', values, expected, means }
}

export function listPart<S extends Schema>(
  item: S,
  { from, upTo }: { readonly from: number; readonly upTo: number },
  expected: string,
  means: string,
): Schema<readonly Yields<S>[]> {
  return { kind: 'list', item, from, upTo, expected, means }
}

export function tuplePart<const S extends readonly Schema[]>(items: S, expected: string, means: string): Schema<ItemsOf<S>> {
  return { kind: 'tuple', items, expected, means }
}

export function fieldsPart<const S extends Shape>(fields: S, expected: string, means: string): FieldsPart & Typed<FieldsOf<S>> {
  return { kind: 'fields', fields, expected, means }
}

export function entriesPart<S extends Schema>(entry: S, expected: string, means: string): Schema<Readonly<Record<string, Yields<S>>>> {
  return { kind: 'entries', entry, expected, means }
}

export function eitherPart<const S extends readonly Schema[]>(
  options: S,
  expected: string,
  means: string,
  tag?: string,
): Schema<Yields<S[number]>> {
  return { kind: 'either', options, tag, expected, means }
}

export function anythingPart(means: string): Schema {
  return { kind: 'anything', means }
}

export function optional<S extends Schema>(inner: S): Optional<Yields<S>> {
  return { kind: 'optional', inner }
}

/** The same schema where it means something more particular. */
export function saying<S extends Schema & Told>(schema: S, means: string): S {
  return { ...schema, means }
}
