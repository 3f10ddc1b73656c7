import { copied, same } from './take-back.ts'
import { groupsIn } from './twins.ts'

type Json = unknown
type Fields = Record<PropertyKey, Json>

/**
 * A draft of the door file in which twins are one thing: places in its lists are those of `withoutTwins`, which is what screens show and
 * what is judged. What is written into a thing is written into those of its twins that say the same, so that they go on being one; a thing
 * that goes takes all of its twins along. Lists are changed by `push`, `splice` and by their places.
 *
 * @param mirrors what else is to be written to wherever `node` is
 */
export function asOne(node: Json, mirrors: readonly Json[] = []): Json {
  if (typeof node !== 'object' || node === null) return node
  return Array.isArray(node) ? oneList(node, mirrors as readonly Json[][]) : oneThing(node as Fields, mirrors as readonly Fields[])
}

function oneThing(node: Fields, mirrors: readonly Fields[]): Json {
  return new Proxy(node, {
    get: (_, key) =>
      asOne(
        node[key],
        mirrors.map((each) => each[key]),
      ),
    set(_, key, value) {
      node[key] = value
      for (const each of mirrors) each[key] = copied(value)
      return true
    },
    deleteProperty(_, key) {
      for (const each of [node, ...mirrors]) delete each[key]
      return true
    },
  })
}

function oneList(list: Json[], mirrors: readonly Json[][]): Json {
  const all = [list, ...mirrors]
  /** The places of the thing at a place that say the same, the one that is shown first. */
  const alike = (at: number): readonly number[] => {
    const [first = at, ...others] = groupsIn(list)[at] ?? []
    const shown = plain(list[first])
    return [first, ...others.filter((each) => same(plain(list[each]), shown))]
  }
  const push = (...made: Json[]): number => {
    list.push(...made)
    for (const each of mirrors) each.push(...copied(made))
    return groupsIn(list).length
  }
  const splice = (start: number, count: number, ...made: Json[]): void => {
    const groups = groupsIn(list)
    const place = groups[start]?.[0] ?? list.length
    const gone = groups
      .slice(start, start + count)
      .flat()
      .sort((a, b) => b - a)
    for (const each of all) {
      for (const i of gone) each.splice(i, 1)
      if (made.length > 0) each.splice(place, 0, ...copied(made))
    }
  }
  // over a list of its own: that of the mergeable document throws at being asked for a property that lists do not have
  return new Proxy([] as Json[], {
    has: (_, key) => (placeIn(key) ?? Number.POSITIVE_INFINITY) < groupsIn(list).length || key in Array.prototype,
    get(_, key) {
      if (key === 'length') return groupsIn(list).length
      if (key === 'push') return push
      if (key === 'splice') return splice
      const at = placeIn(key)
      if (at === undefined)
        return typeof key === 'string' || key in Array.prototype ? Reflect.get(Array.prototype, key) : Reflect.get(list, key)
      if (at >= groupsIn(list).length) return undefined
      const [first = at, ...others] = alike(at)
      return asOne(list[first], [
        ...others.map((each) => list[each]),
        ...mirrors.flatMap((mirror) => [first, ...others].map((each) => mirror[each])),
      ])
    },
    set(_, key, value) {
      const at = placeIn(key)
      if (at === undefined) return false
      const places = alike(at)
      for (const each of all) for (const i of places) each[i] = each === list && i === places[0] ? value : copied(value)
      return true
    },
    deleteProperty: () => false,
  })
}

function placeIn(key: PropertyKey): number | undefined {
  return typeof key === 'string' && /^\d+$/.test(key) ? Number(key) : undefined
}

function plain(value: Json): Json {
  return value === undefined ? undefined : copied(value)
}
