import type { BlindOutline, OpenRegion } from '../model/finding.ts'
import { connectedParts } from './blind-parts.ts'
import type { ExactTrees } from './exact-trees.ts'
import { OPEN, type Rectangle, SPLIT, type TileTree } from './tile-tree.ts'

/** Calls `visit` for every leaf of a tree, with its rectangle. Does not recurse deeper than the tree. */
export function eachLeaf(tree: TileTree, root: Rectangle, visit: (leaf: number, tile: Rectangle) => void): void {
  const waiting: Rectangle[] = [root]
  for (const token of tree) {
    const tile = waiting.pop()
    if (tile === undefined) throw new Error('a tile tree must end with its last leaf, got more')
    if (token !== SPLIT) {
      visit(token, tile)
      continue
    }
    const { xMin, xMax, yMin, yMax } = tile
    if (xMax - xMin >= yMax - yMin) {
      const middle = (xMin + xMax) / 2
      waiting.push({ ...tile, xMin: middle }, { ...tile, xMax: middle })
    } else {
      const middle = (yMin + yMax) / 2
      waiting.push({ ...tile, yMin: middle }, { ...tile, yMax: middle })
    }
  }
  if (waiting.length > 0) throw new Error(`a tile tree must cover its rectangle, got ${waiting.length} tiles without a leaf`)
}

/**
 * The open tiles of all trees together, in figures: a placement is open if it is in one of them.
 *
 * @param outlines of the same trees
 */
export function openRegion({ roots, slices }: Pick<ExactTrees, 'roots' | 'slices'>, outlines: readonly BlindOutline[]): OpenRegion {
  const leaves = { seen: 0, notFree: 0, open: 0 }
  for (const [r, root] of roots.entries())
    for (const { trees } of slices)
      eachLeaf(trees[r] as TileTree, root, (leaf) => {
        if (leaf >= 0) leaves.seen++
        else if (leaf === OPEN) leaves.open++
        else leaves.notFree++
      })
  const parts = connectedParts(outlines)
  return {
    area_mm2: openArea(outlines),
    diameter_mm: parts.reduce((most, { diameter_mm }) => Math.max(most, diameter_mm), 0),
    parts: parts.length,
    leaves,
  }
}

export function openArea(outlines: readonly BlindOutline[]): number {
  return outlines.reduce((sum, { area_mm2 }) => sum + area_mm2, 0)
}
