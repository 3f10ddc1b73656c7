import type { BlindRegion, Pocket, ZoneCoverage } from '@sillsight/engine'

type Rectangle = Pocket['extent']

/** Where an answer hatches, as rectangles of the doorway frame that share no area: cut out of the exact outline, or runs of blind cells. */
export function unseenGround({ exact, blindRuns, grid: { x0_mm, y0_mm, pitch_mm } }: ZoneCoverage): readonly Rectangle[] {
  if (exact) return exact.regions.flatMap(rectanglesOf)
  return blindRuns.map(([row, first, last]) => ({
    xMin_mm: x0_mm + first * pitch_mm,
    xMax_mm: x0_mm + (last + 1) * pitch_mm,
    yMin_mm: y0_mm + row * pitch_mm,
    yMax_mm: y0_mm + (row + 1) * pitch_mm,
  }))
}

/** Between two corners that follow each other along y the region is upright strips: from each odd upright edge to the next. */
function rectanglesOf({ rings }: BlindRegion): readonly Rectangle[] {
  const upright = rings.flatMap((ring) =>
    ring.flatMap(([x_mm, y_mm], i) => {
      const [nextX_mm, nextY_mm] = ring[(i + 1) % ring.length] ?? [x_mm, y_mm]
      return x_mm === nextX_mm ? [{ x_mm, from_mm: Math.min(y_mm, nextY_mm), to_mm: Math.max(y_mm, nextY_mm) }] : []
    }),
  )
  const levels = [...new Set(upright.flatMap(({ from_mm, to_mm }) => [from_mm, to_mm]))].sort((a, b) => a - b)
  return levels.slice(0, -1).flatMap((yMin_mm, i) => {
    const yMax_mm = levels[i + 1] ?? yMin_mm
    const edges = upright
      .filter(({ from_mm, to_mm }) => from_mm <= yMin_mm && to_mm >= yMax_mm)
      .map(({ x_mm }) => x_mm)
      .sort((a, b) => a - b)
    return edges.flatMap((xMin_mm, k) => (k % 2 === 0 ? [{ xMin_mm, xMax_mm: edges[k + 1] ?? xMin_mm, yMin_mm, yMax_mm }] : []))
  })
}
