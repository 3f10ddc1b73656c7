import type { Issue } from '../issue.ts'
import type { Remarks } from '../remarks.ts'
import { type Fault, faultsIn } from '../schema/check.ts'
import type { Part } from '../schema/schema.ts'
import { isObject, own } from '../schema/shape.ts'
import { pathOf, shown } from '../shown.ts'

/** Holds a value against a schema and reports each place that does not fit, with what it expected and what it got. */
export function checkShape(schema: Part, value: unknown, remarks: Remarks, under: readonly PropertyKey[] = []): boolean {
  const faults = faultsIn(schema, value)
  for (const fault of faults) remarks.issue(shapeIssue(fault, [...under, ...fault.keys], valueAt(value, fault.keys)))
  return faults.length === 0
}

function shapeIssue({ code, expected }: Fault, keys: readonly PropertyKey[], got: unknown): Issue {
  const path = pathOf(keys)
  const isLong = (code === 'out-of-range' || code === 'wrong-length') && typeof got === 'string'
  const base = { code, path, expected, got: isLong ? `${got.length} characters` : shown(got) }
  return code === 'missing' ? { ...base, repair: `add ${path}` } : base
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
