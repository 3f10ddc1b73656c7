import { z } from 'zod'

/**
 * Which schema describes a value: a union answers with the alternative that the value looks like, so that a walk over a file can go
 * beside a walk over its schema (for unknown fields, for the order of writing).
 */
export function alternative(schema: z.core.$ZodType, value: unknown): z.core.$ZodType {
  if (schema instanceof z.ZodExactOptional) return alternative(schema.def.innerType, value)
  if (!(schema instanceof z.ZodUnion)) return schema
  const options = schema.def.options.filter((option) => looksLike(option, value))
  return options[0] ?? schema
}

function looksLike(schema: z.core.$ZodType, value: unknown): boolean {
  if (schema instanceof z.ZodObject) return isObject(value) && literalsAgree(schema, value)
  if (schema instanceof z.ZodTuple || schema instanceof z.ZodArray) return Array.isArray(value)
  return !isObject(value) && !Array.isArray(value)
}

/** In a union told apart by a literal field (`"shape": "box"`) only the object with that literal fits. */
function literalsAgree(schema: z.ZodObject, value: Readonly<Record<string, unknown>>): boolean {
  return Object.entries(schema.def.shape).every(
    ([key, part]) => !(part instanceof z.ZodLiteral) || part.def.values.includes(own(value, key) as string),
  )
}

/** The known fields of an object in the order of the schema; undefined where the schema knows no fields. */
export function fieldsOf(schema: z.core.$ZodType): ReadonlyMap<string, z.core.$ZodType> | undefined {
  return schema instanceof z.ZodObject ? new Map(Object.entries(schema.def.shape)) : undefined
}

/** What describes item i of a list, or an entry of a record; undefined where nothing does. */
export function itemOf(schema: z.core.$ZodType, i: number): z.core.$ZodType | undefined {
  if (schema instanceof z.ZodArray) return schema.def.element
  if (schema instanceof z.ZodTuple) return schema.def.items[i]
  return undefined
}
export function entryOf(schema: z.core.$ZodType): z.core.$ZodType | undefined {
  return schema instanceof z.ZodRecord ? schema.def.valueType : undefined
}

export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** A field that the object itself has: "constructor" and its like are not fields of every file. */
export function own(value: Readonly<Record<string, unknown>>, key: string): unknown {
  return Object.hasOwn(value, key) ? value[key] : undefined
}
