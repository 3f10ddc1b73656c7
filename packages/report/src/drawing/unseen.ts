import type { BlindRegion, CellRun, ZoneCoverage } from '@sillsight/engine'
import { unseenGround } from '../unseen-ground.ts'
import { hatchLines } from './hatch.ts'
import type { Box, Mark, Spot } from './model.ts'
import { outlineOfRuns, placeOfCorner } from './regions.ts'
import { onSheet, type View } from './view.ts'

/**
 * The blind region of an answer in the plan: ground, hatch, solid outline. Exact where there is an exact answer, else cell by cell. Hatching
 * means unseen and nothing else.
 */
export function unseenMarks(view: View, coverage: ZoneCoverage): readonly Mark[] {
  const regions = coverage.exact ? exactRings(view, coverage.exact.regions) : gridRings(view, coverage)
  const rings = regions.flat()
  if (rings.length === 0) return []
  return [
    { kind: 'area', layer: 'unseen', rings, fill: 'unseen', outline: false },
    ...regions.flatMap(hatchLines).map((points): Mark => ({ kind: 'line', layer: 'hatch', points })),
    { kind: 'area', layer: 'unseen', rings, fill: 'none' },
  ]
}

function exactRings(view: View, regions: readonly BlindRegion[]): readonly (readonly (readonly Spot[])[])[] {
  return regions.map(({ rings }) => rings.map((ring) => ring.map(([u_mm, v_mm]) => onSheet(view, { u_mm, v_mm }))))
}

/** Pocket by pocket, so that each has at least one line of hatching, however small it is. */
function gridRings(view: View, { grid, pockets, blindRuns }: ZoneCoverage): readonly (readonly (readonly Spot[])[])[] {
  const areas: readonly (readonly CellRun[])[] = pockets.length > 0 ? pockets.map(({ runs }) => runs) : [blindRuns]
  return areas.map((runs) => outlineOfRuns(runs).map((ring) => ring.map((corner) => cornerOnSheet(view, grid, corner))))
}

function cornerOnSheet(view: View, grid: ZoneCoverage['grid'], corner: { readonly column: number; readonly row: number }): Spot {
  const { x_mm, y_mm } = placeOfCorner(grid, corner)
  return onSheet(view, { u_mm: x_mm, v_mm: y_mm })
}

/** The hatched ground as boxes on the sheet: what labels keep off. */
export function unseenBoxes(view: View, coverage: ZoneCoverage): readonly Box[] {
  return unseenGround(coverage).map(({ xMin_mm, xMax_mm, yMin_mm, yMax_mm }) => {
    const lower = onSheet(view, { u_mm: xMin_mm, v_mm: yMin_mm })
    const upper = onSheet(view, { u_mm: xMax_mm, v_mm: yMax_mm })
    return { left_mm: lower.x_mm, right_mm: upper.x_mm, top_mm: upper.y_mm, bottom_mm: lower.y_mm }
  })
}
