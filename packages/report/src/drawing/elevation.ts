import { dimensionFigure } from '../wording/figures.ts'
import { sideName } from '../wording/places.ts'
import type { Dimension } from './dimensions.ts'
import type { Mark } from './model.ts'
import { stroke } from './pen.ts'
import { floorAt, halfExtents, type Projection, type Scene, sensorSpots } from './scene.ts'
import { distinct, drawUpright, heights, type Look, MOST_HEIGHTS, STUB_MM } from './upright.ts'
import type { View, Window } from './view.ts'

/** The elevation, a cut along the leaf line seen from side B, so that it stands above the plan with the same left and right. */
export function elevation(scene: Scene): Projection {
  const width_mm = scene.door.opening.width_mm
  const xs = [
    -STUB_MM,
    width_mm + STUB_MM,
    ...(scene.zone ? [scene.zone.xMin_mm, scene.zone.xMax_mm] : []),
    ...sensorSpots(scene.door).map(({ x_mm }) => x_mm),
  ]
  for (const body of scene.bodies) xs.push(body.worstCase.x_mm - halfExtents(body).x_mm, body.worstCase.x_mm + halfExtents(body).x_mm)
  const from_mm = Math.min(...xs)
  const to_mm = Math.max(...xs)
  const look: Look = {
    across: (x_mm) => x_mm,
    depth: (_x_mm, y_mm) => y_mm,
    wallsBeyond: true,
    rays: 'outer',
    floor: [
      { x_mm: from_mm, y_mm: 0 },
      { x_mm: to_mm, y_mm: 0 },
    ],
  }
  const window = { ...heights(scene), uMin_mm: from_mm, uMax_mm: to_mm }
  return {
    heading: scene.language.sheet.elevation,
    seen: scene.language.places.seenFrom(sideName(scene.door, 'b', scene)),
    window,
    dimensions: elevationDimensions(scene, window),
    draw: (view) => drawUpright(scene, view, look, openingMarks(scene, view)),
  }
}

function elevationDimensions(scene: Scene, window: Window): readonly Dimension[] {
  const { door, counted } = scene
  const sensors = sensorSpots(door)
    .filter(({ id }) => counted.has(id))
    .slice(0, MOST_HEIGHTS)
  const { width_mm, height_mm } = door.opening
  const say = (value_mm: number): string => dimensionFigure(value_mm, scene)
  const offsets = distinct(sensors.map(({ x_mm }) => x_mm))
    .filter((x_mm) => Math.abs(x_mm) >= 1)
    .map(
      (x_mm): Dimension => ({
        side: 'top',
        from_mm: 0,
        to_mm: x_mm,
        startsAt_mm: Math.max(...sensors.map(({ z_mm }) => z_mm)) + 60,
        text: say(Math.abs(x_mm)),
        of: `sensor/${sensors.find((sensor) => sensor.x_mm === x_mm)?.id}/x`,
      }),
    )
  const up = distinct(sensors.map(({ z_mm }) => z_mm))
    .filter((z_mm) => Math.abs(z_mm) >= 1)
    .map(
      (z_mm): Dimension => ({
        side: 'left',
        from_mm: 0,
        to_mm: z_mm,
        startsAt_mm: Math.min(window.uMax_mm, ...sensors.filter((sensor) => sensor.z_mm === z_mm).map(({ x_mm }) => x_mm)),
        text: say(z_mm),
        of: `sensor/${sensors.find((sensor) => sensor.z_mm === z_mm)?.id}/z`,
      }),
    )
  const opening: readonly Dimension[] = [
    { side: 'right', from_mm: 0, to_mm: height_mm, startsAt_mm: width_mm, text: say(height_mm), of: 'opening/height' },
    { side: 'bottom', from_mm: 0, to_mm: width_mm, startsAt_mm: window.vMin_mm, text: say(width_mm), of: 'opening/width' },
  ]
  return [...offsets, ...up, ...opening]
}

function openingMarks({ door, state }: Scene, view: View): readonly Mark[] {
  const { width_mm, height_mm } = door.opening
  const floors = [0, width_mm].map((x_mm) => floorAt(state.floor, x_mm, 0))
  return stroke(view, 'structure', [
    { u_mm: 0, v_mm: floors[0] ?? 0 },
    { u_mm: 0, v_mm: height_mm },
    { u_mm: width_mm, v_mm: height_mm },
    { u_mm: width_mm, v_mm: floors[1] ?? 0 },
  ])
}
