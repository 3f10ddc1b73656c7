import type { Affine } from './affine.ts'
import { refuse, wholeAt } from './json.ts'
import type { Floor, Tile } from './plain.ts'

const SPLIT = -1
/** Halves of halves: the largest zone is split into tiles of a millionth of a mm before. */
const DEEPEST = 80
const LARGEST_INDEX = 100_000_000

export const OPEN = -2

/**
 * Walks a tree in preorder, without recursion, and shows every leaf with its tile (docs/evidence.md, "Slices, roots, trees").
 *
 * @param visit what to do with a leaf, which stands at `at` in the list
 */
export function walkTree(tree: readonly unknown[], root: Tile, path: string, visit: (leaf: number, tile: Tile, at: number) => void): void {
  const waiting: { readonly tile: Tile; readonly depth: number }[] = [{ tile: root, depth: 0 }]
  for (let at = 0; at < tree.length; at++) {
    const next = waiting.pop()
    if (next === undefined) return refuse('tree-too-long', path, `a tree that ends after ${at} entries`, `${tree.length}`)
    const code = wholeAt(tree[at], `${path}/${at}`, -LARGEST_INDEX, LARGEST_INDEX)
    if (code !== SPLIT) {
      visit(code, next.tile, at)
      continue
    }
    if (next.depth >= DEEPEST) return refuse('too-deep', `${path}/${at}`, `at most ${DEEPEST} splits one within the other`, 'more')
    const [lower, upper] = halvesOf(next.tile)
    waiting.push({ tile: upper, depth: next.depth + 1 }, { tile: lower, depth: next.depth + 1 })
  }
  if (waiting.length > 0) refuse('tree-too-short', path, `a tree with ${waiting.length} more branches`, `${tree.length} entries`)
}

function halvesOf(tile: Tile): readonly [lower: Tile, upper: Tile] {
  const { xMin, xMax, yMin, yMax } = tile
  if (xMax - xMin >= yMax - yMin) {
    const middle = (xMin + xMax) / 2
    return [
      { ...tile, xMax: middle },
      { ...tile, xMin: middle },
    ]
  }
  const middle = (yMin + yMax) / 2
  return [
    { ...tile, yMax: middle },
    { ...tile, yMin: middle },
  ]
}

/** A part of the zone over one straight piece of the floor, whose height is affine in the placement. */
export interface Root {
  readonly tile: Tile
  readonly floor: Affine
}

/** The zone cut at each y of the floor profile that lies strictly inside of it, in rising y. */
export function rootsOf(zone: Tile, floor: Floor): readonly Root[] {
  const cuts = floor.profile.map(([y]) => y).filter((y) => zone.yMin < y && y < zone.yMax)
  const ends = [zone.yMin, ...cuts, zone.yMax]
  return ends.slice(1).map((yMax, i) => {
    const yMin = ends[i] ?? yMax
    return { tile: { xMin: zone.xMin, xMax: zone.xMax, yMin, yMax }, floor: pieceAbove(floor, yMin) }
  })
}

/** The floor from y on, up to the next point of the profile. */
function pieceAbove({ profile, slope }: Floor, y: number): Affine {
  const before = profile.filter(([at]) => at <= y).at(-1)
  const after = profile.find(([at]) => at > y)
  const [y0, z0] = before ?? after ?? [0, 0]
  const tan = before !== undefined && after !== undefined ? (after[1] - z0) / (after[0] - y0) : 0
  return [z0 - tan * y0, slope, tan]
}
