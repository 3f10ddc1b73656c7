import type { DoorFile } from '@sillsight/document'

/** Things of a list of the door file, each with a name that others call it by: its id, the sensor that it wires, or the figure that it confirms. */
export type Named = readonly Readonly<Record<string, unknown>>[]

/**
 * Two devices may each add what has its name from elsewhere, or from what it is: the same body of the library, the wiring of the same sensor, the same
 * repair. Merged, both stand in the list, as twins. Those that say the same are one thing; of others somebody chooses one, and the first counts until then.
 *
 * @returns the places in the list, those of one name together, in the order in which the names come
 */
export function groupsIn(list: readonly unknown[]): readonly (readonly number[])[] {
  const isNames = list.every((each) => typeof each === 'string')
  const places = new Map<unknown, number[]>()
  for (const [i, entry] of list.entries()) {
    const name = isNames ? entry : (nameIn(entry) ?? i) // one without a name is nobody's twin
    places.set(name, [...(places.get(name) ?? []), i])
  }
  return [...places.values()]
}

/** The places of the twins in a list. */
export function twinsIn(list: readonly unknown[]): readonly (readonly number[])[] {
  return groupsIn(list).filter(({ length }) => length > 1)
}

/** The file as screens show it: of each twins the first alone. Itself where there are none. */
export function withoutTwins(file: DoorFile): DoorFile {
  return once(shown, file, () => without(file, '', false) as DoorFile)
}
const shown = new WeakMap<DoorFile, DoorFile>()

/** The file as it is judged and handed out: without twins, and without lists that were emptied and may not be empty. Itself where nothing goes. */
export function asHandedOut(file: DoorFile): DoorFile {
  return once(bare, file, () => without(file, '', true) as DoorFile)
}
const bare = new WeakMap<DoorFile, DoorFile>()

function once(known: WeakMap<DoorFile, DoorFile>, file: DoorFile, make: () => DoorFile): DoorFile {
  const made = known.get(file) ?? make()
  known.set(file, made)
  return made
}

/** Where a place of the file stands in the file without twins. */
export function placeShown(file: DoorFile, path: string): string {
  let here: unknown = file
  return path
    .split('/')
    .map((step) => {
      const at = Array.isArray(here) ? groupsIn(here).findIndex((places) => places.includes(Number(step))) : -1
      here = (here as Readonly<Record<string, unknown>> | undefined)?.[step]
      return at < 0 ? step : String(at)
    })
    .join('/')
}

/**
 * Lists that the door file has full or not at all. Where the last entry goes the list stays in the document, empty: what another device adds to it
 * at the same time would go with it.
 */
const FULL_OR_NONE = /^(survey\/states|survey\/(lanes|crossings)\/\d+\/bodies|bodies|zones|zones\/\d+\/bodies)$/

function without(value: unknown, path: string, emptied: boolean): unknown {
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) {
    const gone = new Set(twinsIn(value).flatMap((indices) => indices.slice(1)))
    const left = value.filter((_, i) => !gone.has(i))
    const made = left.map((each, i) => without(each, `${path}/${i}`, emptied))
    return gone.size === 0 && made.every((each, i) => each === left[i]) ? value : made
  }
  const entries = Object.entries(value)
  const made = entries
    .map(([key, each]) => [key, without(each, path === '' ? key : `${path}/${key}`, emptied)] as const)
    .filter(
      ([key, each]) => !(emptied && Array.isArray(each) && each.length === 0 && FULL_OR_NONE.test(path === '' ? key : `${path}/${key}`)),
    )
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
