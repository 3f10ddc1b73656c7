import type { Note } from '../issue.ts'
import type { Remarks } from '../remarks.ts'
import type { Part } from '../schema/schema.ts'
import { alternative, entryOf, fieldsOf, isObject, itemOf } from '../schema/shape.ts'
import { pathOf, shownText } from '../shown.ts'

/**
 * Notes each field that the schema does not know. It stays in the document, because a newer program or somebody's own may have put it
 * there; but nobody judges it, and a misspelt name must not go unnoticed.
 */
export function noteUnknownFields(schema: Part, value: unknown, remarks: Remarks, keys: readonly PropertyKey[] = []): void {
  const part = alternative(schema, value)
  if (Array.isArray(value)) {
    value.forEach((item, i) => {
      const itemSchema = itemOf(part, i)
      if (itemSchema !== undefined) noteUnknownFields(itemSchema, item, remarks, [...keys, i])
    })
  } else if (isObject(value)) {
    const known = fieldsOf(part)
    for (const [key, inner] of Object.entries(value)) {
      const innerSchema = known?.get(key) ?? entryOf(part)
      if (innerSchema !== undefined) noteUnknownFields(innerSchema, inner, remarks, [...keys, key])
      else if (known !== undefined) remarks.note(() => unknownField(key, [...known.keys()], keys))
    }
  }
}

function unknownField(key: string, known: readonly string[], keys: readonly PropertyKey[]): Note {
  const near = nearest(key, known)
  const question = near === undefined ? '' : `; did you mean ${shownText(near)}?`
  return { code: 'unknown-field', path: pathOf([...keys, key]), text: `unknown field, kept but not judged${question}` }
}

/** The known name that a typing slip or a forgotten unit turns into this one; undefined if none is near. */
export function nearest(key: string, known: readonly string[]): string | undefined {
  const withUnit = known.find((name) => name.replace(/_.*$/, '').toLowerCase() === key.replace(/_.*$/, '').toLowerCase())
  if (withUnit !== undefined) return withUnit
  const allowed = Math.min(2, Math.floor(key.length / 3))
  let best: { name: string; slips: number } | undefined
  for (const name of known) {
    if (Math.abs(name.length - key.length) > allowed) continue
    const slips = typingSlips(key, name)
    if (slips <= allowed && (best === undefined || slips < best.slips)) best = { name, slips }
  }
  return best?.name
}

/** Letters to add, drop, change or swap with their neighbour to get from one name to the other (optimal string alignment distance). */
function typingSlips(a: string, b: string): number {
  let beforeLast: number[] = []
  let last = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1
      let slips = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + same)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) slips = Math.min(slips, (beforeLast[j - 2] ?? 0) + 1)
      row.push(slips)
    }
    beforeLast = last
    last = row
  }
  return last[b.length] ?? 0
}
