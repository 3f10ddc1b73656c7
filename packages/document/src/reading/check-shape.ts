import type { z } from 'zod'
import type { Issue } from '../issue.ts'
import type { Remarks } from '../remarks.ts'
import { isObject, own } from '../schema/shape.ts'
import { pathOf, shown } from '../shown.ts'

/** Holds a value against a schema and reports each place that does not fit, with what it expected and what it got. */
export function checkShape(schema: z.ZodType, value: unknown, remarks: Remarks, under: readonly PropertyKey[] = []): boolean {
  const result = schema.safeParse(value)
  if (result.success) return true
  for (const issue of result.error.issues) report(issue, value, remarks, under, [])
  return false
}

type ZodIssue = z.core.$ZodIssue

function report(issue: ZodIssue, whole: unknown, remarks: Remarks, under: readonly PropertyKey[], above: readonly PropertyKey[]): void {
  const keys = [...above, ...issue.path]
  const nested = issue.code === 'invalid_union' ? bestAlternative(issue.errors) : undefined
  if (nested !== undefined) {
    for (const inner of nested) report(inner, whole, remarks, under, keys)
    return
  }
  remarks.issue(shapeIssue(issue, [...under, ...keys], valueAt(whole, keys)))
}

function shapeIssue(issue: ZodIssue, keys: readonly PropertyKey[], got: unknown): Issue {
  const path = pathOf(keys)
  const base = { code: codeOf(issue, got), path, expected: issue.message, got: shownLength(issue, got) }
  return got === undefined ? { ...base, repair: `add ${path}` } : base
}

/** Of a union the alternative that got farther than the first look: the object whose fields are wrong, not the word that it is not. */
function bestAlternative(errors: readonly (readonly ZodIssue[])[]): readonly ZodIssue[] | undefined {
  return errors.find((alternative) => alternative.every((inner) => inner.path.length > 0 || isRangeIssue(inner)))
}

function isRangeIssue({ code }: ZodIssue): boolean {
  return code === 'too_small' || code === 'too_big'
}

function codeOf(issue: ZodIssue, got: unknown): string {
  if (got === undefined) return 'missing'
  switch (issue.code) {
    case 'too_small':
    case 'too_big':
      return issue.origin === 'array' || issue.origin === 'string' ? 'wrong-length' : 'out-of-range'
    case 'invalid_value':
    case 'invalid_union':
      return 'unknown-choice'
    case 'invalid_format':
      return 'wrong-form'
    default:
      return 'wrong-type'
  }
}

function shownLength(issue: ZodIssue, got: unknown): string {
  const long = (issue.code === 'too_big' || issue.code === 'too_small') && typeof got === 'string'
  return long ? `${got.length} characters` : shown(got)
}

/** What stands at a place of parsed JSON; undefined if nothing does. */
export function valueAt(whole: unknown, keys: readonly PropertyKey[]): unknown {
  let value = whole
  for (const key of keys) {
    if (Array.isArray(value)) value = value[Number(key)]
    else if (isObject(value)) value = own(value, String(key))
    else return undefined
  }
  return value
}
