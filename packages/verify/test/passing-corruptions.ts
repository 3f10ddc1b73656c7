import type { Dice } from './random-numbers.ts'

type Tree = number[]
interface Part {
  to: number
  trees: Tree[]
}
interface Closing {
  from?: string
  opening_mm: number
  met?: number
  parts: Part[]
  stretches: { to_mm: number; field: number; parts: Part[] }[]
}
interface Entry {
  body: string
  posture: number
  lying?: number
  from?: string
  beside?: unknown
  x_mm: number
  seen: Tree[][]
  lies?: Tree[][]
  closings: Closing[]
}
/** An entry of `passages` as JSON carries it, to be changed at will. */
export interface Passages {
  fields: string[]
  sights: [number, number, number, number[]][][]
  partSights?: [number, number, number[][]][][]
  far_mm: number
  stands: Entry[]
  falls?: Entry[]
}

/** A change of true evidence, done in place, after which it cannot be accepted; false where there was nothing to change. */
type Corruption = (given: Passages, dice: Dice) => boolean

const entriesOf = ({ stands, falls = [] }: Passages) => [...stands, ...falls]
const partsOf = (given: Passages) =>
  entriesOf(given).flatMap(({ closings }) => closings.flatMap(({ parts, stretches }) => parts ?? stretches.flatMap((each) => each.parts)))

/** One of them is changed. */
function one<T>(of: (given: Passages) => readonly T[] | undefined, change: (each: T, dice: Dice) => boolean | undefined): Corruption {
  return (given, dice) => {
    const all = of(given) ?? []
    return all.length > 0 && change(dice.pick(all), dice) !== false
  }
}

const usedSights = (given: Passages) => {
  const trees = entriesOf(given).flatMap(({ seen, lies = [] }) => [...seen, ...lies])
  return trees.length === 0 ? [] : (given.partSights ?? []).flat()
}

export const PASSING_CORRUPTIONS: Readonly<Record<string, Corruption>> = {
  'a stand less': ({ stands }, dice) => stands.splice(dice.whole(0, stands.length - 1), 1).length > 0,
  'a stand twice': ({ stands }, dice) => stands.push(dice.pick(stands)) > 0,
  'another posture': one(entriesOf, (entry) => {
    entry.posture += 1
  }),
  'another body beside': one(
    ({ stands }) => stands.filter(({ beside }) => beside),
    (entry, dice) => {
      const [body, posture, where] = entry.beside as [string, number, string]
      entry.beside = dice.pick([
        undefined,
        [body, posture, where === 'ahead' ? 'behind' : 'ahead'],
        [body, posture + 1, where],
        ['nobody', 0, where],
      ])
    },
  ),
  'a body beside one that goes alone': one(
    ({ stands }) => stands.filter(({ beside }) => !beside),
    (entry) => {
      entry.beside = [entry.body, 0, 'ahead']
    },
  ),
  'a closing less': one(entriesOf, ({ closings }) => closings.pop() !== undefined),
  'a closing from elsewhere': one(entriesOf, ({ closings }) => {
    const [closing] = closings
    if (closing) closing.opening_mm -= 1
  }),
  'another part met': one(
    (given) => entriesOf(given).flatMap(({ closings }) => closings.filter(({ met }) => met !== undefined)),
    (closing) => {
      closing.met = (closing.met ?? 0) + 1
    },
  ),
  'no part met': one(
    (given) => entriesOf(given).flatMap(({ closings }) => closings.filter(({ met }) => met !== undefined)),
    (closing) => delete closing.met,
  ),
  'paces left out at the slow end': one(
    (given) =>
      entriesOf(given).flatMap(({ closings }) =>
        closings.flatMap(({ parts, stretches }) => (parts ? [parts] : stretches.map((each) => each.parts))),
      ),
    (parts) => {
      const last = parts.at(-1)
      if (last) last.to *= 0.99
    },
  ),
  'a window less': one(partsOf, ({ trees }) => trees.pop() !== undefined),
  'a window more': one(partsOf, ({ trees }) => trees.push([0]) > 0),
  'a tree of a window too long': one(partsOf, ({ trees }) => (trees[0]?.push(0) ?? 0) > 0),
  'a tree of a window too short': one(partsOf, ({ trees }) => trees[0]?.pop() !== undefined),
  'a tree of places too short': one(entriesOf, ({ seen }) => seen[0]?.[0]?.pop() !== undefined),
  'nothing seen at all': (given) => {
    for (const { seen, lies = [] } of entriesOf(given))
      for (const trees of [...seen, ...lies]) for (const tree of trees) tree.splice(0, tree.length, -2)
    return true
  },
  'seen everywhere by one sight': (given) => {
    const [{ seen } = { seen: [] }] = given.stands
    for (const trees of seen) for (const tree of trees) tree.splice(0, tree.length, 0)
    return seen.length > 0
  },
  'a sight that is not there': one(entriesOf, ({ seen }) => {
    const tree = seen[0]?.[0]
    const at = tree?.findIndex((code) => code !== -1) ?? -1
    if (tree === undefined || at < 0) return false
    tree[at] = 1_000_000
    return true
  }),
  'a field less': ({ fields }) => fields.pop() !== undefined,
  'a field twice': ({ fields }) => {
    const [first] = fields
    if (first === undefined || fields.length < 2) return false
    fields[1] = first
    return true
  },
  'no sights of several parts': (given) => usedSights(given).length > 0 && delete given.partSights,
  'beams that see no part': (given) => {
    for (const sight of usedSights(given)) sight[2] = sight[2].map(() => [])
    return usedSights(given).length > 0
  },
  'a part that is not there': (given) => {
    for (const sight of usedSights(given)) sight[2] = sight[2].map(([, faces = 7, ...rest]) => [99, faces, ...rest])
    return usedSights(given).length > 0
  },
  'beams of several parts shifted by twenty': (given) => {
    for (const sight of usedSights(given)) sight[1] += 20
    return usedSights(given).length > 0
  },
  'a fall less': ({ falls = [] }) => falls.pop() !== undefined,
  'no falls': (given) => given.falls !== undefined && delete given.falls,
  'falls that are no more': (given) => {
    if (given.falls) return false
    given.falls = [structuredClone(given.stands[0] as Entry)]
    return true
  },
  'another posture once it lies': one(
    ({ falls }) => falls,
    (fall) => {
      fall.lying = 0
    },
  ),
  'a fall from the other side': one(
    ({ falls }) => falls,
    (fall) => {
      fall.from = fall.from === 'a' ? 'b' : 'a'
    },
  ),
  'falls left out at the end': one(
    ({ falls = [] }) => falls.flatMap(({ closings }) => closings),
    ({ stretches }) => {
      const last = stretches.at(-1)
      if (last) last.to_mm -= 1
    },
  ),
  'falls seen for longer than they are': one(
    ({ falls = [] }) => falls.flatMap(({ closings }) => closings),
    ({ stretches }) => {
      const last = stretches.at(-1)
      if (last) last.to_mm += 60_000
    },
  ),
  'a stretch of falls less': one(
    ({ falls = [] }) => falls.flatMap(({ closings }) => closings),
    ({ stretches }) => stretches.pop() !== undefined,
  ),
  'falls that no field sees': one(
    ({ falls }) => falls,
    ({ lies = [] }) => {
      for (const trees of lies) for (const tree of trees) tree.splice(0, tree.length, -2)
      return lies.length > 0
    },
  ),
  'falls seen by a field that is not there': one(
    ({ falls = [] }) => falls.flatMap(({ closings }) => closings.flatMap(({ stretches }) => stretches)),
    (stretch) => {
      stretch.field = 77
    },
  ),
}
