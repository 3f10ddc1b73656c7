import { tape } from '../wording/figures.ts'
import { called } from '../wording/plain.ts'
import type { LabelRequest } from './labels.ts'
import { boxAround } from './model.ts'
import { outlineOf, STUB_MM } from './plan-window.ts'
import { type Scene, sensorSpots } from './scene.ts'
import { isInside, onSheet, type View } from './view.ts'

const MOST_LETTERS = 12

/** What the plan names, most important first: pockets, sensors, things, sides, zones. */
export function planLabels(scene: Scene, view: View): readonly LabelRequest[] {
  const { door, coverage, zone, language } = scene
  const letters = (coverage?.pockets ?? []).slice(0, MOST_LETTERS).map(
    (pocket): LabelRequest => ({
      text: pocket.letter,
      circled: true,
      clear_mm: 1.5,
      at: onSheet(view, { u_mm: pocket.worstCase.x_mm, v_mm: pocket.worstCase.y_mm }),
    }),
  )
  const sensors = sensorSpots(door).map(
    ({ name, x_mm, y_mm, z_mm }): LabelRequest => ({
      text: language.sheet.up(called(name, scene), tape(z_mm, scene)),
      circled: false,
      clear_mm: 1.8,
      at: onSheet(view, { u_mm: x_mm, v_mm: y_mm }),
    }),
  )
  const things = scene.things
    .filter(({ x_mm, y_mm }) => isInside(view.window, { u_mm: x_mm, v_mm: y_mm }))
    .map((obstacle): LabelRequest => {
      const box = boxAround(outlineOf(obstacle).map((place) => onSheet(view, place)))
      const clear_mm = Math.min(box.right_mm - box.left_mm, box.bottom_mm - box.top_mm) / 2
      return {
        text: called(obstacle.name, scene),
        circled: false,
        clear_mm,
        at: onSheet(view, { u_mm: obstacle.x_mm, v_mm: obstacle.y_mm }),
      }
    })
  const zoneOnly = door.sensors.flatMap((sensor): readonly LabelRequest[] =>
    sensor.kind !== 'zone-only'
      ? []
      : [
          {
            text: called(sensor.name, scene),
            circled: false,
            clear_mm: 0,
            at: onSheet(view, { u_mm: (sensor.xMin_mm + sensor.xMax_mm) / 2, v_mm: (sensor.yMin_mm + sensor.yMax_mm) / 2 }),
          },
        ],
  )
  const sides = (['a', 'b'] as const).map(
    (side): LabelRequest => ({
      text: called(door.sides[side], scene),
      circled: false,
      clear_mm: 0,
      at: onSheet(view, { u_mm: door.opening.width_mm + STUB_MM, v_mm: side === 'a' ? view.window.vMax_mm : view.window.vMin_mm }),
    }),
  )
  const zoneName = zone
    ? [
        {
          text: called(zone.name, scene),
          circled: false,
          clear_mm: 0,
          at: onSheet(view, { u_mm: (zone.xMin_mm + zone.xMax_mm) / 2, v_mm: zone.yMax_mm }),
        },
      ]
    : []
  return [...letters, ...sensors, ...things, ...sides, ...zoneOnly, ...zoneName]
}
