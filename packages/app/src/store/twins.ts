import type { DoorFile } from '@sillsight/document'

/** Things of a list of the door file, each with a name that others call it by: its id, the sensor that it wires, or the figure that it confirms. */
export type Named = readonly Readonly<Record<string, unknown>>[]

/**
 * Two devices may each add what has its name from elsewhere: the same body of the library, the wiring of the same sensor. Merged, both stand in the list,
 * as twins. Those that say the same are one thing; of others somebody chooses one, and the first counts until then.
 *
 * @returns the places in the list that have one name, for each name that several have
 */
export function twinsIn(list: readonly unknown[]): readonly (readonly number[])[] {
  if (!isNamed(list)) return []
  const places = new Map<string, number[]>()
  for (const [i, entry] of list.entries()) {
    const name = nameIn(entry) ?? ''
    places.set(name, [...(places.get(name) ?? []), i])
  }
  return [...places.values()].filter(({ length }) => length > 1)
}

/** The file as it is judged and handed out: of each twins the first alone, and no list that was emptied and may not be empty. Itself where nothing goes. */
export function asHandedOut(file: DoorFile): DoorFile {
  const known = bare.get(file)
  if (known) return known
  const made = without(file, '') as DoorFile
  bare.set(file, made)
  return made
}
const bare = new WeakMap<DoorFile, DoorFile>()

/**
 * Lists that the door file has full or not at all. Where the last entry goes the list stays in the document, empty: what another device adds to it
 * at the same time would go with it.
 */
const FULL_OR_NONE = /^(survey\/states|survey\/(lanes|crossings)\/\d+\/bodies|bodies|zones|zones\/\d+\/bodies)$/

function without(value: unknown, path: string): unknown {
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) {
    const gone = new Set(twinsIn(value).flatMap((indices) => indices.slice(1)))
    const left = value.filter((_, i) => !gone.has(i))
    const made = left.map((each, i) => without(each, `${path}/${i}`))
    return gone.size === 0 && made.every((each, i) => each === left[i]) ? value : made
  }
  const entries = Object.entries(value)
  const made = entries
    .map(([key, each]) => [key, without(each, path === '' ? key : `${path}/${key}`)] as const)
    .filter(([key, each]) => !(Array.isArray(each) && each.length === 0 && FULL_OR_NONE.test(path === '' ? key : `${path}/${key}`)))
  return made.length === entries.length && made.every(([, each], i) => each === entries[i]?.[1]) ? value : Object.fromEntries(made)
}

/** A list of things that all have a name; an empty one is none. */
export function isNamed(value: unknown): value is Named {
  return Array.isArray(value) && value.length > 0 && value.every((each) => nameIn(each) !== undefined)
}

export function nameIn(entry: unknown): string | undefined {
  if (typeof entry !== 'object' || entry === null) return undefined
  const { id, sensor, value, document } = entry as Readonly<Record<string, unknown>>
  if (typeof value === 'string' && typeof document === 'string') return value
  return typeof id === 'string' ? id : typeof sensor === 'string' ? sensor : undefined
}
