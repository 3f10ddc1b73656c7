import type { Stance } from '../coverage/scene.ts'
import type { Closing } from '../motion/leaf-run.ts'
import { reach_mm, slabsAt, type TurningLeaf } from '../motion/turning-leaf.ts'
import type { FallView } from './falls.ts'
import { fallsProved, type LeafBudget, neverStruck, type ProvedPart } from './never-struck.ts'
import type { View } from './output.ts'
import { apart_mm, clearBelow, extentOf, solidsOf, sweptBy } from './turning-contact.ts'

/**
 * Proofs that a leaf that turns never strikes: docs/evidence.md, "Leaves that turn". The way is cut into strips, as long as each can be shown; on each the leaf is
 * free down to some way that it has to go, and from there on counts as one that meets the body.
 */
export interface ProvedStrip {
  readonly to_mm: number
  /** `null` where the leaf meets the body nowhere. */
  readonly clear_mm: number | null
  readonly parts?: readonly ProvedPart[]
}
export interface ProvedFallStrip extends ProvedStrip {
  readonly field?: number
}

/** A body in one stance, at one x, from one side, past a leaf that turns. */
export interface PastTurning {
  readonly leaf: TurningLeaf
  readonly stance: Stance
  readonly x_mm: number
  readonly from: 'a' | 'b'
  readonly closing: Closing
}

const SHORTEST_MM = 1
/** Leaves of the trees of one strip, and of all strips of one way. */
const MOST_LEAVES_OF_STRIP = 600
const MOST_LEAVES = 20_000
/** Strips that are tried for one way. */
const MOST_TRIED = 400

/** Undefined where it is not so, or where a proof of this form was not found. */
export function stripsNeverStruck(
  past: PastTurning,
  views: readonly View[],
  slownesses: readonly [from: number, to: number],
): readonly ProvedStrip[] | undefined {
  const { closing } = past
  return stripByStrip(past, (from_mm, to_mm, budget) => {
    const clear_mm = clearPast(past, from_mm, to_mm)
    if (clear_mm === null) return { to_mm, clear_mm }
    const strip = { closing, enter_mm: from_mm, leave_mm: to_mm, clear: clear_mm, views, turns: true }
    const parts = neverStruck(strip, slownesses, budget)
    return parts && { to_mm, clear_mm, parts }
  })
}

/** The same for falls, of the lying body. */
export function stripsNeverStruckLying(
  past: PastTurning,
  views: readonly FallView[],
  slownesses: readonly [from: number, to: number],
): readonly ProvedFallStrip[] | undefined {
  const { closing } = past
  return stripByStrip(past, (from_mm, to_mm, budget): ProvedFallStrip | undefined => {
    const clear_mm = clearPast(past, from_mm, to_mm)
    if (clear_mm === null) return { to_mm, clear_mm }
    for (const [field, { upright, lying, response_s, hold_s }] of views.entries()) {
      const holding = (list: FallView['lying']) => list.find((each) => each.from_mm <= from_mm && to_mm <= each.to_mm)
      if (!holding(lying)) continue
      const own = { from_mm: holding(upright)?.from_mm ?? to_mm, response_s, to_mm: Infinity, hold_s }
      const way = { closing, enter_mm: from_mm, leave_mm: to_mm, clear: clear_mm, views, turns: true }
      const parts = fallsProved(way, own, from_mm, slownesses, budget)
      if (parts) return { to_mm, clear_mm, field, parts }
    }
    return undefined
  })
}

/** From the beginning of the way on, each strip as long as it can be shown by halving what is left. */
function stripByStrip<T extends ProvedStrip>(
  past: PastTurning,
  prove: (from_mm: number, to_mm: number, budget: LeafBudget) => T | undefined,
): readonly T[] | undefined {
  const { enter_mm, leave_mm } = withinSweep(past)
  const proved: T[] = []
  let left = MOST_LEAVES
  let length_mm = leave_mm - enter_mm
  let tried = 0
  for (let at_mm = enter_mm; at_mm < leave_mm; ) {
    const budget = { left: Math.min(left, MOST_LEAVES_OF_STRIP) }
    const given = budget.left
    const to_mm = at_mm + length_mm >= leave_mm ? leave_mm + BEYOND_MM : at_mm + length_mm
    const strip = prove(at_mm, to_mm, budget)
    left -= given - Math.max(0, budget.left)
    if (strip) {
      proved.push(strip)
      at_mm = to_mm
      length_mm *= 2
    } else length_mm = Math.min(length_mm, leave_mm - at_mm) / 2
    if (++tried > MOST_TRIED || left <= 0 || length_mm < SHORTEST_MM) return undefined
  }
  return proved
}

/** So much farther than the end: no rounding may leave a rest. */
const BEYOND_MM = 1e-3

/** Middles along the way with which any solid, at its full size, is where any leaf ever comes. */
function withinSweep({ leaf: { swings, way_mm }, stance, x_mm, from }: PastTurning): {
  readonly enter_mm: number
  readonly leave_mm: number
} {
  const ends = solidsOf(stance, x_mm, 0).flatMap((solid) =>
    swings.map((swing) => {
      const reach = reach_mm(swing, way_mm)
      const [yMin_mm, yMax_mm] = swing.side > 0 ? [-swing.half_mm, reach] : [-reach, swing.half_mm]
      const [back_mm, front_mm] = extentOf(solid)
      return [yMin_mm - front_mm, yMax_mm - back_mm] as const
    }),
  )
  const [first_mm, last_mm] = [Math.min(...ends.map(([y]) => y)), Math.max(...ends.map(([, y]) => y))]
  return from === 'b' ? { enter_mm: first_mm, leave_mm: last_mm } : { enter_mm: -last_mm, leave_mm: -first_mm }
}

/** What is left free above a contact, tried in turn: nearer to it more pieces would have to be asked. */
const ABOVE_MM = [0.05, 0.3, 1, 4, 16, 60] as const

/** Down to which way the leaf is surely free while the body is on a strip: the opening itself where it need not be, `null` where it is so down to shut. */
function clearPast({ leaf: { swings, ratio }, stance, x_mm, from, closing }: PastTurning, from_mm: number, to_mm: number): number | null {
  const swept = solidsOf(stance, x_mm).map((solid) => (from === 'b' ? sweptBy(solid, from_mm, to_mm) : sweptBy(solid, -to_mm, -from_mm)))
  const isFreeTo = (down: number) => {
    const budget = { left: MOST_PIECES }
    return swings.every((swing) =>
      swept.every((outline) => isFree((way) => apart_mm(slabsAt(swing, way), outline, 0), ratio, down, closing.from, budget, 0)),
    )
  }
  const met = swings.flatMap((swing) => swept.map((outline) => clearBelow(swing, ratio, closing.from, outline) ?? -1))
  const highest = Math.max(...met)
  if (highest < 0 && isFreeTo(0)) return null
  const tried = ABOVE_MM.map((above_mm) => Math.max(0, highest) + above_mm).find((down) => down < closing.from && isFreeTo(down))
  return tried ?? closing.from
}

/** What the page asks for, and more than two programs differ in where a second panel stands. */
const SPARE_MM = 5e-5
const DEEPEST = 30
const MOST_PIECES = 4000

/** By pieces of the ways, each free because nothing moves by as much as the gap in half of it. */
function isFree(gapAt: (way: number) => number, ratio: number, down: number, up: number, budget: LeafBudget, depth: number): boolean {
  if (--budget.left < 0) return false
  const middle = (down + up) / 2
  const gap_mm = gapAt(middle)
  if (gap_mm > ratio * (up - middle) + SPARE_MM) return true
  if (depth >= DEEPEST || gap_mm <= SPARE_MM) return false
  return isFree(gapAt, ratio, down, middle, budget, depth + 1) && isFree(gapAt, ratio, middle, up, budget, depth + 1)
}
