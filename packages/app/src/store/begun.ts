import type { Begun } from './contract.ts'
import type { DoorDoc } from './door-document.ts'
import { LONGEST_TEXT, printable } from './printable.ts'

/**
 * What was entered of a thing that the door file holds only whole stands beside the file, each value in a place of its own in the root of the
 * document and in no container: one that two devices made apart would be two, of which a merge shows only one.
 */
export type BegunPlace = `begun ${string}`

/** What is read from elsewhere may hold more than anybody begins. */
const MOST_READ = 2000
const LONGEST_TYPED = 60
const PLACE = /^begun (\S{1,200}) (\S{1,60})$/

export function begunPlace(thing: string, name: string): BegunPlace {
  return `begun ${thing} ${name}`
}

export function isBegunPlace(place: string): place is BegunPlace {
  return PLACE.test(place)
}

/** A begun value's place as one reads it: as it would stand in the door file. */
export function plainPlace(place: string): string {
  return place.replace(PLACE, '$1/$2')
}

/** What is begun, by thing and by the name of the value. */
export function begunIn(doc: DoorDoc): Readonly<Record<string, Readonly<Record<string, Begun>>>> {
  const found: Record<string, Record<string, Begun>> = {}
  for (const place of Object.keys(doc).sort()) {
    const [, thing, name] = PLACE.exec(place) ?? []
    if (thing === undefined || name === undefined) continue
    const values = found[thing] ?? {}
    values[name] = doc[place as BegunPlace] as Begun
    found[thing] = values
  }
  return found
}

/** Puts values of one thing, or (undefined) takes them away; undefined in place of all takes the whole thing away. */
export function putBegun(draft: DoorDoc, thing: string, values: Readonly<Record<string, Begun | undefined>> | undefined): void {
  const root = draft as unknown as Record<string, Begun>
  const all = values ?? Object.fromEntries(Object.keys(begunIn(draft)[thing] ?? {}).map((name) => [name, undefined]))
  for (const [name, value] of Object.entries(all)) {
    const place = begunPlace(thing, name)
    // one value and not two: of two devices that enter it apart one is kept whole, never one's figure with the other's words
    if (value) root[place] = { ...value }
    else delete root[place]
  }
}

/** Whether what a document from elsewhere holds as begun is that. */
export function areBegun(doc: Readonly<Record<string, unknown>>): boolean {
  const found = Object.entries(doc).filter(([place]) => place.startsWith('begun '))
  return found.length <= MOST_READ && found.every(([place, value]) => isBegunPlace(place) && isBegun(value))
}

function isBegun(found: unknown): found is Begun {
  if (typeof found !== 'object' || found === null) return false
  const { value, typed } = found as Partial<Record<keyof Begun, unknown>>
  const isValue = typeof value === 'string' ? value.length <= LONGEST_TEXT && printable(value) === value.trim() : Number.isFinite(value)
  return isValue && (typed === undefined || (typeof typed === 'string' && typed.length <= LONGEST_TYPED))
}
