import { tape } from '../wording/figures.ts'
import { called } from '../wording/plain.ts'
import type { LabelRequest } from './labels.ts'
import { type Box, boxAround, type Mark, type Spot } from './model.ts'
import type { Scene } from './scene.ts'
import { isInside, onSheet, type Place, type View } from './view.ts'

/** Half of a danger's mark, in mm of paper. */
const HALF_MM = 1.9

interface DrawnDangers {
  readonly marks: readonly Mark[]
  readonly boxes: readonly Box[]
  readonly labels: readonly LabelRequest[]
}

/**
 * Danger points of which somebody said where they are, and computed gaps where they are smallest: a small triangle with a stroke in it, the same in
 * every view, with the name, or with the gap and that it is computed.
 *
 * @param place where a view shows a place of the doorway, mm
 */
export function dangerMarks(scene: Scene, view: View, place: (x_mm: number, y_mm: number, z_mm: number) => Place): DrawnDangers {
  const said = (scene.door.dangers?.points ?? []).flatMap(({ name, place: at, from_mm = 0 }) =>
    at ? [{ ...at, from_mm, text: called(name, scene) }] : [],
  )
  const computed = scene.gaps.map((gap) => ({ ...gap, text: scene.language.sheet.computedGap(tape(gap.gap_mm, scene)) }))
  const shown = [...said, ...computed].flatMap(({ x_mm, y_mm, from_mm, text }) => {
    const seen = place(x_mm, y_mm, from_mm)
    return isInside(view.window, seen) ? [{ text, at: onSheet(view, seen) }] : []
  })
  return {
    marks: shown.flatMap(({ at }) => triangle(at)),
    boxes: shown.map(({ at }) => boxAround(corners(at))),
    labels: shown.map(({ text, at }): LabelRequest => ({ text, circled: false, clear_mm: HALF_MM + 0.4, at })),
  }
}

function corners({ x_mm, y_mm }: Spot): readonly Spot[] {
  return [
    { x_mm, y_mm: y_mm - HALF_MM },
    { x_mm: x_mm + HALF_MM, y_mm: y_mm + HALF_MM * 0.75 },
    { x_mm: x_mm - HALF_MM, y_mm: y_mm + HALF_MM * 0.75 },
  ]
}

function triangle(at: Spot): readonly Mark[] {
  const { x_mm, y_mm } = at
  const stroke = [
    { x_mm, y_mm: y_mm - HALF_MM * 0.35 },
    { x_mm, y_mm: y_mm + HALF_MM * 0.4 },
  ]
  return [
    { kind: 'area', layer: 'thing', fill: 'paper', rings: [corners(at)] },
    { kind: 'line', layer: 'thing', dash: 'solid', points: stroke },
  ]
}
