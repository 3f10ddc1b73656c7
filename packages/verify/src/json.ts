/** Reading of files that may be hostile: bounded before any work, without recursion, each piece asked for by what it has to be. */

export interface Issue {
  readonly code: string
  readonly path: string
  readonly expected: string
  readonly got: string
}

/** Ends the check of one piece. Thrown inside of this package only: `verifyEvidence` returns it as an issue. */
export class Refusal extends Error {
  readonly issue: Issue
  constructor(issue: Issue) {
    super(`${issue.path}: expected ${issue.expected}, got ${issue.got}`)
    this.issue = issue
  }
}

export function refuse(code: string, path: string, expected: string, got: unknown): never {
  throw new Refusal({ code, path, expected, got: shown(got) })
}

export type Json = Readonly<Record<string, unknown>>

/** Checks size and depth of the text before anything is built from it. */
export function parseBounded(text: string, path: string, bounds: { readonly length: number; readonly depth: number }): unknown {
  if (text.length > bounds.length) refuse('too-large', path, `at most ${bounds.length} characters`, text.length)
  const depth = deepest(text)
  if (depth > bounds.depth) refuse('too-deep', path, `objects and lists at most ${bounds.depth} deep`, depth)
  try {
    return JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text)
  } catch {
    return refuse('not-json', path, 'a whole JSON text', 'one that breaks off or is malformed')
  }
}

function deepest(text: string): number {
  let [depth, most, inText] = [0, 0, false]
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i)
    if (c === 0x22) inText = !inText
    else if (inText) i += c === 0x5c ? 1 : 0
    else if (c === 0x5b || c === 0x7b) most = Math.max(most, ++depth)
    else if (c === 0x5d || c === 0x7d) depth--
  }
  return most
}

export function objectAt(value: unknown, path: string): Json {
  if (typeof value === 'object' && value !== null && !Array.isArray(value)) return value as Json
  return refuse('wrong-type', path, 'an object { ... }', value)
}

export function listAt(
  value: unknown,
  path: string,
  { least = 0, most }: { readonly least?: number; readonly most: number },
): readonly unknown[] {
  if (!Array.isArray(value)) return refuse('wrong-type', path, 'a list [ ... ]', value)
  if (value.length < least) return refuse('too-few', path, `at least ${least} entries`, value.length)
  return value.length > most ? refuse('too-much', path, `at most ${most} entries`, value.length) : value
}

export function textAt(value: unknown, path: string, longest = 200): string {
  if (typeof value !== 'string') return refuse('wrong-type', path, 'a text', value)
  return value.length > longest ? refuse('too-large', path, `at most ${longest} characters`, value.length) : value
}

/** A name of the file that none of `taken` has; it joins them. */
export function idAt(value: unknown, path: string, taken: Set<string>): string {
  const id = textAt(value, path, 60)
  if (!/^[A-Za-z0-9][A-Za-z0-9._-]*$/.test(id)) refuse('wrong-type', path, 'letters, digits, ".", "_" and "-"', id)
  if (taken.has(id)) refuse('duplicate-id', path, 'an id that stands once', id)
  taken.add(id)
  return id
}

export function oneOf<T extends string>(value: unknown, path: string, known: readonly T[]): T {
  return known.find((each) => each === value) ?? refuse('unknown', path, known.map((each) => `"${each}"`).join(' or '), value)
}

/** A finite number between two limits, both included. */
export function numberAt(value: unknown, path: string, least = -1e9, most = 1e9): number {
  if (typeof value !== 'number' || !Number.isFinite(value)) return refuse('wrong-type', path, 'a number', value)
  return value < least || value > most ? refuse('out-of-range', path, `a number from ${least} to ${most}`, value) : value
}

/** A whole number from `least` up to `most`. */
export function wholeAt(value: unknown, path: string, least: number, most: number): number {
  const whole = numberAt(value, path, least, most)
  return Number.isInteger(whole) ? whole : refuse('wrong-type', path, 'a whole number', value)
}

export function numbersAt(value: unknown, path: string, count: number): readonly number[] {
  return listAt(value, path, { least: count, most: count }).map((each, i) => numberAt(each, `${path}/${i}`))
}

/** What stands under a name, an inherited one never; undefined if nothing does. */
export function own(object: Json, name: string): unknown {
  return Object.hasOwn(object, name) ? object[name] : undefined
}

function shown(value: unknown): string {
  if (typeof value === 'string') return value.length > 60 ? `${value.slice(0, 60)}...` : value
  if (Array.isArray(value)) return `a list of ${value.length}`
  return typeof value === 'object' && value !== null ? 'an object' : String(value)
}
