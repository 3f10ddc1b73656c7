import type { Door, InputPath } from '@sillsight/engine'
import { figure } from './figures.ts'
import type { Reader } from './language.ts'
import { plain } from './plain.ts'

/** Parts of the door file whose place in the `Door` is not the same path. */
const ELSEWHERE: readonly (readonly [file: string, door: string])[] = [
  ['survey/opening/', 'opening/'],
  ['survey/leaf/', 'leaf/'],
  ['survey/floor/tolerance_mm', 'states/0/floor/tolerance_mm'],
]
const UNITS: readonly (readonly [ending: string, unit: 'mm' | 'mm2' | 's' | 'rad' | 'per_mm'])[] = [
  ['_mm2', 'mm2'],
  ['_per_mm', 'per_mm'],
  ['_mm', 'mm'],
  ['_s', 's'],
  ['_rad', 'rad'],
]

/** What stands at a place of the door file, as far as it is one figure or one word; undefined for whole parts and for what the door does not carry. */
export function inputValue(door: Door, path: InputPath, reader: Reader): string | undefined {
  const moved = ELSEWHERE.find(([file]) => path.startsWith(file))
  const place = moved ? moved[1] + path.slice(moved[0].length) : path
  const value = place.split('/').reduce<unknown>(inside, door)
  if (typeof value === 'string') return reader.language.quoted(plain(value))
  if (typeof value === 'boolean') return value ? reader.language.yes : reader.language.no
  if (typeof value !== 'number') return undefined
  const unit = UNITS.find(([ending]) => place.endsWith(ending))?.[1] ?? '1'
  return figure({ value, unit }, reader)
}

function inside(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? (value as Readonly<Record<string, unknown>>)[key]
    : undefined
}
