import { type Door, leafCorners, type TurningLeaf, turningLeaf } from '@sillsight/engine'
import type { Mark } from './model.ts'
import { shape, stroke } from './pen.ts'
import type { Place, View } from './view.ts'

const ARC_PARTS = 32

/**
 * A leaf that turns, in the plan: shut, or with so much of its way still to go, and dashed where it stands when open and what its edge runs over on the way.
 *
 * @returns undefined where the leaf does not turn, or nobody said how it is hung
 */
export function swingMarks(door: Door, view: View, way_mm = 0): readonly Mark[] | undefined {
  const leaf = turningLeaf(door)
  if (leaf === undefined) return undefined
  return [
    ...arcs(leaf).flatMap((arc) => stroke(view, 'help', arc, 'hidden')),
    ...panels(leaf, leaf.way_mm).flatMap((corners) => shape(view, 'help', corners, 'none', 'hidden')),
    ...panels(leaf, way_mm).flatMap((corners) => shape(view, 'thing', corners, 'paper')),
  ]
}

function panels(leaf: TurningLeaf, way_mm: number): readonly (readonly Place[])[] {
  return leafCorners(leaf, way_mm).map(({ corners }) => corners.map(([u_mm, v_mm]) => ({ u_mm, v_mm })))
}

/** The way of the far end of each panel on a hinge. */
function arcs({ swings, way_mm, arm_mm }: TurningLeaf): readonly (readonly Place[])[] {
  return swings.map(({ hingeX_mm, toward, side }) =>
    Array.from({ length: ARC_PARTS + 1 }, (_, i): Place => {
      const angle_rad = (way_mm * i) / ARC_PARTS / arm_mm
      return { u_mm: hingeX_mm + toward * arm_mm * Math.cos(angle_rad), v_mm: side * arm_mm * Math.sin(angle_rad) }
    }),
  )
}
