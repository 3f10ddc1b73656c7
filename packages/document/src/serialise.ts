import { type DoorFile, doorFileSchema } from './schema/door-file.ts'
import type { Part } from './schema/schema.ts'
import { alternative, entryOf, fieldsOf, isObject, itemOf } from './schema/shape.ts'

/**
 * The canonical text of a door file: equal content gives equal text. Known fields come in the order of the schema, all others behind them
 * by their names; lists of plain numbers and texts stay on one line; the last line ends in a line feed.
 */
export function serialise(document: DoorFile): string {
  return `${written(document, doorFileSchema, '')}\n`
}

function written(value: unknown, schema: Part | undefined, indent: string): string {
  const part = schema === undefined ? undefined : alternative(schema, value)
  const deeper = `${indent}  `
  if (Array.isArray(value)) {
    const items = value.map((item, i) => written(item, part && itemOf(part, i), deeper))
    return value.every(isShort) ? `[${items.join(', ')}]` : block('[', items, ']', indent)
  }
  if (isObject(value)) {
    const known = part && fieldsOf(part)
    const fields = inOrder(value, known).map((key) => {
      const inner = known?.get(key) ?? (part && entryOf(part))
      return `${JSON.stringify(key)}: ${written(value[key], inner, deeper)}`
    })
    return fields.length === 0 ? '{}' : block('{', fields, '}', indent)
  }
  return scalar(value)
}

function block(open: string, lines: readonly string[], close: string, indent: string): string {
  return `${open}\n${lines.map((line) => `${indent}  ${line}`).join(',\n')}\n${indent}${close}`
}

function inOrder(value: Readonly<Record<string, unknown>>, known: ReadonlyMap<string, unknown> | undefined): string[] {
  const own = Object.keys(value).filter((key) => value[key] !== undefined)
  const first = [...(known?.keys() ?? [])].filter((key) => Object.hasOwn(value, key) && value[key] !== undefined)
  return [...first, ...own.filter((key) => known?.has(key) !== true).sort()]
}

/** Numbers, texts and points stay on the line of their list. */
function isShort(item: unknown): boolean {
  if (Array.isArray(item)) return item.length <= 3 && item.every((inner) => typeof inner === 'number')
  return !isObject(item) && !(typeof item === 'string' && item.length > 40)
}

function scalar(value: unknown): string {
  const text = JSON.stringify(value)
  if (text === undefined || (typeof value === 'number' && !Number.isFinite(value)))
    throw new Error(`a door file holds JSON only, got ${String(value)}`)
  return text
}
