import { useState } from 'react'
import { useDoor } from '../screens/at-door.ts'
import type { Begun, Deed, Draft } from '../store/contract.ts'
import { newId } from '../store/new-id.ts'
import { isPlainMm, type Kind } from './kinds.ts'
import { valueAt } from './places.ts'

/** Before the name of a thing of a list that has no place in the door file yet. */
const TAG = '+'
const NOTHING: Readonly<Record<string, Begun>> = {}

/**
 * What was entered so far of a thing that the door file holds only whole. It is kept like every other edit, beside the file, until the last of
 * it is entered.
 *
 * @param place where the thing will stand; one of a list, as `useBegunIn` names it
 */
export function useBegun(place: string) {
  const { door, snapshot } = useDoor()
  const thing = steady(snapshot.file, place)
  const values = snapshot.begun[thing] ?? NOTHING
  const is = (name: string) => values[name]?.value
  return {
    values,
    isAny: values !== NOTHING,
    number: (name: string) => numberOf(is(name)),
    text: (name: string) => textOf(is(name)),
    /** @param label what is entered, as history says it */
    say: (label: string, said: Readonly<Record<string, Begun | undefined>>) => {
      const [first] = Object.values(said)
      const typed = first && (first.typed ?? String(first.value))
      const deed: Deed = { deed: first ? 'set' : 'removed', path: place, name: label, ...(typed !== undefined && { typed }) }
      return door.edit(deed, () => undefined, {}, { thing, values: said })
    },
    /** Takes all of it away. */
    drop: (name: string) => door.edit({ deed: 'removed', path: place, name }, () => undefined, {}, { thing, values: undefined }),
    /** Puts the thing into the door file, whole, and is done with what was begun of it; what was typed of its figures stays beside them. */
    whole: (deed: Deed, put: (draft: Draft) => void, last: Readonly<Record<string, Begun>> = {}) => {
      const after = structuredClone(snapshot.file) as Draft
      put(after)
      const [list] = place.split(`/${TAG}`)
      const count = valueAt(after, `${list}/length`)
      const at = list === place ? place : `${list}/${Number(count) - 1}`
      const typed = Object.entries({ ...values, ...last }).flatMap(([name, { value, typed: text }]): [string, string][] =>
        text !== undefined && valueAt(after, `${at}/${name}`) === value ? [[`${at}/${name}`, text]] : [],
      )
      return door.edit(deed, put, Object.fromEntries(typed), { thing, values: undefined })
    },
  }
}

/** The things of a list that are not whole yet: what was begun of it, oldest first, and while one is asked for a place for it. */
export function useBegunIn(list: string) {
  const { snapshot } = useDoor()
  const [fresh, setFresh] = useState<string>()
  const of = `${steady(snapshot.file, list)}/${TAG}`
  const begun = Object.keys(snapshot.begun).flatMap((thing) => (thing.startsWith(of) ? [`${list}/${thing.slice(of.length - 1)}`] : []))
  return {
    places: [...begun, ...(fresh !== undefined && !begun.includes(fresh) ? [fresh] : [])].sort(),
    /** Asks for one more. Devices that both ask get two things, never one out of both. */
    ask: () => setFresh(`${list}/${TAG}${Date.now().toString(36)}-${newId().slice(0, 8)}`),
    /** It is whole, or was left. */
    done: () => setFresh(undefined),
  }
}

/** Whether a thing is asked for: somebody wants to enter it, or began to. */
export function useAsked(place: string) {
  const [asked, setAsked] = useState(false)
  const isBegun = useIsBegun([place])
  return { is: asked || isBegun, ask: () => setAsked(true), done: () => setAsked(false) }
}

/** What was typed is kept beside a length where it says more than the figure. */
export function asBegun(value: number, typed: string, kind: Kind): Begun {
  return kind === 'length' && !isPlainMm(typed) ? { value, typed } : { value }
}

/** A place whose steps into lists are ids where there are some: it stays with its thing when one before it goes. */
export function steady(file: unknown, place: string): string {
  let [holder, made] = [file, '']
  for (const step of place.split('/')) {
    const next = valueAt(holder, step)
    const id = Array.isArray(holder) ? valueAt(next, 'id') : undefined
    made += `${made === '' ? '' : '/'}${typeof id === 'string' ? encodeURIComponent(id) : step}`
    holder = next
  }
  return made
}

/** Whether anything is begun at one of these places or below. */
export function useIsBegun(places: readonly string[]): boolean {
  const { snapshot } = useDoor()
  const all = places.map((place) => steady(snapshot.file, place))
  return Object.keys(snapshot.begun).some((thing) => all.some((place) => thing === place || thing.startsWith(`${place}/`)))
}

function numberOf(value: unknown): number | undefined {
  return typeof value === 'number' ? value : undefined
}

function textOf(value: unknown): string | undefined {
  return typeof value === 'string' ? value : undefined
}
