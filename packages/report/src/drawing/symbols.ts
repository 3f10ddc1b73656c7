import { solidsOfBody } from './body-solids.ts'
import { blank } from './labels.ts'
import { type Box, boxAround, corners, grown, type Mark, type Spot } from './model.ts'
import { round, shape, turnedCorners, upright } from './pen.ts'
import { halfExtents, type ShownBody } from './scene.ts'
import { onSheet, type View } from './view.ts'

/** A body from above as it lies: the outlines of its parts with a little paper around them, so that the hatching inside stays to be seen. */
export function bodyMarks(view: View, { worstCase, posture }: ShownBody): readonly Mark[] {
  const solids = solidsOfBody(posture, worstCase)
  return (['halo', 'body'] as const).flatMap((layer) =>
    solids.flatMap((solid) => {
      const middle = { u_mm: solid.x_mm, v_mm: solid.y_mm }
      return solid.shape === 'box'
        ? shape(view, layer, turnedCorners(middle, solid.size_mm, solid.yaw_rad), 'none')
        : round(view, layer, middle, solid.radius_mm, 'none')
    }),
  )
}

/** The room that bodies take in the plan. */
export function bodyBoxes(view: View, bodies: readonly ShownBody[]): readonly Box[] {
  return bodies.map((body) => {
    const { x_mm, y_mm } = body.worstCase
    const half = halfExtents(body)
    return boxAround(upright(x_mm - half.x_mm, x_mm + half.x_mm, y_mm - half.y_mm, y_mm + half.y_mm).map((place) => onSheet(view, place)))
  })
}

/** A sensor is the same small solid block in every view, whatever the scale. */
export function sensorSymbol(at: Spot): { readonly marks: readonly Mark[]; readonly box: Box } {
  const box = { left_mm: at.x_mm - 1.5, right_mm: at.x_mm + 1.5, top_mm: at.y_mm - 0.9, bottom_mm: at.y_mm + 0.9 }
  const marks: readonly Mark[] = [blank(grown(box, 0.4)), { kind: 'area', layer: 'thing', fill: 'ink', rings: [corners(box)] }]
  return { box, marks }
}

/** The stretches of lines and outlines, for labels to keep off. */
export function linesOf(marks: readonly Mark[]): readonly (readonly [Spot, Spot])[] {
  return marks.flatMap((mark) => {
    if (mark.kind === 'line') return stretches(mark.points)
    if (mark.kind === 'area') return mark.rings.flatMap((ring) => stretches(ring[0] ? [...ring, ring[0]] : ring))
    if (mark.kind !== 'circle') return []
    const box = grown(
      { left_mm: mark.centre.x_mm, right_mm: mark.centre.x_mm, top_mm: mark.centre.y_mm, bottom_mm: mark.centre.y_mm },
      mark.radius_mm,
    )
    return stretches([
      { x_mm: box.left_mm, y_mm: box.top_mm },
      { x_mm: box.right_mm, y_mm: box.bottom_mm },
    ])
  })
}

function stretches(points: readonly Spot[]): readonly (readonly [Spot, Spot])[] {
  return points.slice(1).map((to, i): readonly [Spot, Spot] => [points[i] ?? to, to])
}
