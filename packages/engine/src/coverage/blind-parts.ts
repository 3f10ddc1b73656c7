import type { BlindOutline, Extent, PointMm } from '../model/finding.ts'
import { farthestApart } from './pockets.ts'

/** Pieces of an open region that touch, if only at corners: as one, so that no way through from blind to blind is cut in two. */
export interface BlindPart {
  /** Indices of its outlines, the largest first. */
  readonly outlines: readonly number[]
  readonly area_mm2: number
  readonly extent: Extent
  /** Largest distance between two of its points. */
  readonly diameter_mm: number
}

/** The connected parts of an open region, largest first. Pieces that touch at a corner share that corner of their rings to the last bit. */
export function connectedParts(outlines: readonly BlindOutline[]): readonly BlindPart[] {
  const groups = outlines.map((_, i) => new Set([i]))
  const seen = new Map<string, number>()
  for (const [i, { rings }] of outlines.entries())
    for (const ring of rings)
      for (const [x, y] of ring) {
        const key = `${x} ${y}`
        const other = seen.get(key)
        if (other === undefined) seen.set(key, i)
        else join(groups, i, other)
      }
  return [...new Set(groups)]
    .map((group) =>
      partOf(
        [...group].sort((a, b) => a - b),
        outlines,
      ),
    )
    .sort((a, b) => b.area_mm2 - a.area_mm2)
}

function join(groups: Set<number>[], i: number, other: number): void {
  const group = groups[i] as Set<number>
  const joined = groups[other] as Set<number>
  if (group === joined) return
  for (const k of group) {
    joined.add(k)
    groups[k] = joined
  }
}

function partOf(members: readonly number[], outlines: readonly BlindOutline[]): BlindPart {
  const own = members.map((i) => outlines[i] as BlindOutline)
  const points = own.flatMap(({ rings: [outer = []] }): readonly PointMm[] => outer)
  return {
    outlines: members,
    area_mm2: own.reduce((sum, { area_mm2 }) => sum + area_mm2, 0),
    extent: extentOf(points),
    diameter_mm: farthestApart(points),
  }
}

function extentOf(points: readonly PointMm[]): Extent {
  const extent = { xMin_mm: Infinity, xMax_mm: -Infinity, yMin_mm: Infinity, yMax_mm: -Infinity }
  for (const [x, y] of points) {
    extent.xMin_mm = Math.min(extent.xMin_mm, x)
    extent.xMax_mm = Math.max(extent.xMax_mm, x)
    extent.yMin_mm = Math.min(extent.yMin_mm, y)
    extent.yMax_mm = Math.max(extent.yMax_mm, y)
  }
  return extent
}
