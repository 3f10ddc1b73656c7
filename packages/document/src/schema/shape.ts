import type { FieldsPart, OptionalPart, Part } from './schema.ts'

/** What stands in a place that may be absent. */
export function bare(schema: Part): Exclude<Part, OptionalPart> {
  return schema.kind === 'optional' ? bare(schema.inner) : schema
}

/**
 * Which schema describes a value: a union answers with the alternative that the value looks like, so that a walk over a file can go
 * beside a walk over its schema (for unknown fields, for the order of writing).
 */
export function alternative(schema: Part, value: unknown): Part {
  const part = bare(schema)
  return part.kind === 'either' ? (part.options.find((option) => looksLike(option, value)) ?? part) : part
}

function looksLike(schema: Part, value: unknown): boolean {
  if (schema.kind === 'fields') return isObject(value) && wordsAgree(schema, value)
  if (schema.kind === 'tuple' || schema.kind === 'list') return Array.isArray(value)
  return !isObject(value) && !Array.isArray(value)
}

/** In a union told apart by a word (`"shape": "box"`) only the object with that word fits. */
function wordsAgree({ fields }: FieldsPart, value: Readonly<Record<string, unknown>>): boolean {
  return Object.entries(fields).every(([key, part]) => part.kind !== 'choice' || part.values.includes(own(value, key) as string))
}

/** The known fields of an object in the order of the schema; undefined where the schema knows no fields. */
export function fieldsOf(schema: Part): ReadonlyMap<string, Part> | undefined {
  return schema.kind === 'fields' ? new Map(Object.entries(schema.fields)) : undefined
}

/** What describes item i of a list, or an entry of a record; undefined where nothing does. */
export function itemOf(schema: Part, i: number): Part | undefined {
  if (schema.kind === 'list') return schema.item
  return schema.kind === 'tuple' ? schema.items[i] : undefined
}
export function entryOf(schema: Part): Part | undefined {
  return schema.kind === 'entries' ? schema.entry : undefined
}

export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** A field that the object itself has: "constructor" and its like are not fields of every file. */
export function own(value: Readonly<Record<string, unknown>>, key: string): unknown {
  return Object.hasOwn(value, key) ? value[key] : undefined
}
