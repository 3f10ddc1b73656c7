import type { Proved } from './coverage.ts'
import { DOOR_BOUNDS } from './door.ts'
import { listAt, objectAt, own, parseBounded, textAt } from './json.ts'
import type { Door } from './plain.ts'

/** A part of the door of which the evidence shows nothing, neither for it nor against it. */
export type Silence =
  | { readonly kind: 'zone'; readonly zone: string; readonly state: string; readonly tolerances: boolean }
  | { readonly kind: 'lane'; readonly lane: string; readonly state: string }
  | { readonly kind: 'wiring' }

interface Shown {
  readonly proved: readonly Proved[]
  /** Passages and contacts alike. */
  readonly lanes: readonly { readonly lane: string; readonly state: string }[]
  readonly wiring: boolean
}

/** What the door file has that evidence could speak of, and that this one leaves out. Throws `Refusal` where lanes cannot be read. */
export function silencesOf(door: Door, doorText: string, { proved, lanes, wiring }: Shown): readonly Silence[] {
  const file = objectAt(parseBounded(doorText, 'door', DOOR_BOUNDS), 'door')
  const listed = listAt(own(objectAt(own(file, 'survey'), 'survey'), 'lanes') ?? [], 'survey/lanes', { most: 100 })
  const named = listed.map((each, i) => textAt(own(objectAt(each, `survey/lanes/${i}`), 'id'), `survey/lanes/${i}/id`))
  const states = door.states.map(({ id }) => id)
  const zones = door.zones
    .filter(({ mustNotSee }) => !mustNotSee)
    .flatMap(({ id }) =>
      states.flatMap((state) => (door.tolerances ? [false, true] : [false]).map((within) => ({ zone: id, state, tolerances: within }))),
    )
  return [
    ...zones
      .filter(
        ({ zone, state, tolerances }) =>
          !proved.some((each) => each.zone === zone && each.state === state && each.tolerances === tolerances),
      )
      .map((zone) => ({ kind: 'zone', ...zone }) as const),
    ...named
      .flatMap((lane) => states.map((state) => ({ lane, state })))
      .filter(({ lane, state }) => !lanes.some((each) => each.lane === lane && each.state === state))
      .map((lane) => ({ kind: 'lane', ...lane }) as const),
    ...(own(file, 'wiring') !== undefined && !wiring ? [{ kind: 'wiring' } as const] : []),
  ]
}
