import type { Dice } from './random-numbers.ts'

type Part = { to: number; trees: number[][] }
interface Strip {
  to_mm: number
  clear_mm: number | null
  field?: number
  parts?: Part[]
}
interface Entry {
  closings: { from?: string; opening_mm: number; met?: number; strips?: Strip[]; stretches?: Strip[]; parts?: Part[] }[]
  seen: number[][][]
}
/** An entry of `passages` about a leaf that turns, to be changed at will. */
export interface TurningPassages {
  stands: Entry[]
  falls?: Entry[]
}

const closingsOf = ({ stands, falls = [] }: TurningPassages) => [...stands, ...falls].flatMap(({ closings }) => closings)
const listsOf = (given: TurningPassages) => closingsOf(given).map(({ strips, stretches }) => strips ?? stretches ?? [])
const met = (given: TurningPassages) =>
  listsOf(given)
    .flat()
    .filter(({ clear_mm }) => clear_mm !== null)

function one<T>(of: (given: TurningPassages) => readonly T[], change: (each: T, dice: Dice) => unknown) {
  return (given: TurningPassages, dice: Dice): boolean => {
    const all = of(given)
    return all.length > 0 && change(dice.pick(all), dice) !== false
  }
}

/** Changes of true evidence, done in place, after which it cannot be accepted; false where there was nothing to change. */
export const TURNING_CORRUPTIONS: Readonly<Record<string, (given: TurningPassages, dice: Dice) => boolean>> = {
  'no strips': one(listsOf, (strips) => strips.splice(0).length > 0),
  'the last strip left out': one(listsOf, (strips) => strips.pop()),
  'the last strip short of the end': one(listsOf, (strips) => {
    const last = strips.at(-1)
    if (last) last.to_mm -= 1
  }),
  'strips that go back': one(listsOf, (strips) => {
    const [first] = strips
    if (first) first.to_mm -= 100_000
  }),
  'a leaf that meets nobody anywhere': one(met, (strip) => {
    strip.clear_mm = null
  }),
  'a leaf that is free down to shut': one(met, (strip) => {
    strip.clear_mm = 0
  }),
  'a leaf that is free below 0': one(met, (strip) => {
    strip.clear_mm = -1
  }),
  'a leaf that is free from above the opening': one(met, (strip) => {
    strip.clear_mm = 1e6
  }),
  'no word of where the leaf is free': one(met, (strip) => delete (strip as Partial<Strip>).clear_mm),
  'a strip without parts': one(met, (strip) => delete strip.parts),
  'paces left out at the slow end': one(met, ({ parts = [] }) => {
    const last = parts.at(-1)
    if (last) last.to *= 0.99
  }),
  'a window less': one(met, ({ parts = [] }) => parts[0]?.trees.pop() !== undefined),
  'a window more': one(met, ({ parts = [] }) => parts[0]?.trees.push([0])),
  'a tree of a window too long': one(met, ({ parts = [] }) => parts[0]?.trees[0]?.push(0)),
  'a tree of a window too short': one(met, ({ parts = [] }) => parts[0]?.trees[0]?.pop() !== undefined),
  'a closing less': one(
    ({ stands, falls = [] }) => [...stands, ...falls],
    ({ closings }) => closings.pop() !== undefined,
  ),
  'a closing from elsewhere': one(closingsOf, (closing) => {
    closing.opening_mm -= 1
  }),
  'a closing past one from the other side': one(
    ({ stands }) => stands.flatMap(({ closings }) => closings),
    (closing) => {
      closing.from = closing.from === 'a' ? 'b' : 'a'
    },
  ),
  'parts of a leaf that does not turn': one(
    ({ stands }) => stands.flatMap(({ closings }) => closings),
    (closing) => {
      closing.parts = closing.strips?.[0]?.parts ?? []
      delete closing.strips
    },
  ),
  'nothing seen': ({ stands, falls = [] }) => {
    for (const { seen } of [...stands, ...falls]) for (const trees of seen) for (const tree of trees) tree.splice(0, tree.length, -2)
    return true
  },
}
