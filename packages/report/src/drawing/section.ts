import { dimensionFigure } from '../wording/figures.ts'
import { sideName } from '../wording/places.ts'
import type { Dimension } from './dimensions.ts'
import type { Mark } from './model.ts'
import { shape, stroke, upright } from './pen.ts'
import { floorAt, halfExtents, type Projection, type Scene, sensorSpots } from './scene.ts'
import { distinct, drawUpright, heights, type Look, MOST_HEIGHTS, STUB_MM } from './upright.ts'
import type { View, Window } from './view.ts'

/** The section across the leaf at the middle of the opening, side A on the left: as seen from the end where x = 0. */
export function section(scene: Scene): Projection {
  const { door, state, zone } = scene
  const middle_mm = door.opening.width_mm / 2
  const ys = [-STUB_MM, STUB_MM, ...(zone ? [zone.yMin_mm, zone.yMax_mm] : []), ...sensorSpots(door).map(({ y_mm }) => y_mm)]
  for (const body of scene.bodies) ys.push(body.worstCase.y_mm - halfExtents(body).y_mm, body.worstCase.y_mm + halfExtents(body).y_mm)
  const from_mm = Math.min(...ys)
  const to_mm = Math.max(...ys)
  const inside = state.floor.profile.map(({ y_mm }) => y_mm).filter((y_mm) => y_mm > from_mm && y_mm < to_mm)
  const look: Look = {
    across: (_x_mm, y_mm) => -y_mm,
    depth: (x_mm) => x_mm - middle_mm,
    wallsBeyond: false,
    rays: 'middle',
    floor: [from_mm, ...inside, to_mm].map((y_mm) => ({ x_mm: middle_mm, y_mm })),
  }
  const window = { ...heights(scene), uMin_mm: -to_mm, uMax_mm: -from_mm }
  return {
    heading: scene.language.sheet.section,
    seen: scene.language.sheet.onTheLeft(sideName(door, 'a', scene)),
    window,
    dimensions: sectionDimensions(scene, window),
    draw: (view) => drawUpright(scene, view, look, leafLine(scene, view)),
  }
}

function sectionDimensions(scene: Scene, window: Window): readonly Dimension[] {
  const { door, counted, zone } = scene
  const face_mm = (door.leaf?.thickness_mm ?? 0) / 2
  const sensors = sensorSpots(door)
    .filter(({ id, y_mm }) => counted.has(id) && Math.abs(y_mm) > face_mm)
    .slice(0, MOST_HEIGHTS)
  const offsets = distinct(sensors.map(({ y_mm }) => y_mm)).map((y_mm): Dimension => {
    const from_mm = y_mm < 0 ? face_mm : -face_mm
    return {
      side: 'top',
      from_mm,
      to_mm: -y_mm,
      startsAt_mm: Math.max(...sensors.map(({ z_mm }) => z_mm)) + 60,
      text: dimensionFigure(Math.abs(y_mm) - face_mm, scene),
      of: `sensor/${sensors.find((sensor) => sensor.y_mm === y_mm)?.id}/y`,
    }
  })
  if (!zone || zone.yMax_mm - zone.yMin_mm <= 0) return offsets
  return [
    ...offsets,
    {
      side: 'bottom',
      from_mm: -zone.yMax_mm,
      to_mm: -zone.yMin_mm,
      startsAt_mm: window.vMin_mm,
      text: dimensionFigure(zone.yMax_mm - zone.yMin_mm, scene),
      of: `zone/${zone.id}/depth`,
    },
  ]
}

/** The closed leaf, or the line of the opening where there is none. */
function leafLine({ door, state }: Scene, view: View): readonly Mark[] {
  const floor_mm = floorAt(state.floor, door.opening.width_mm / 2, 0)
  const half_mm = (door.leaf?.thickness_mm ?? 0) / 2
  if (half_mm === 0)
    return stroke(
      view,
      'help',
      [
        { u_mm: 0, v_mm: view.window.vMin_mm },
        { u_mm: 0, v_mm: view.window.vMax_mm },
      ],
      'centre',
    )
  return shape(view, 'help', upright(-half_mm, half_mm, floor_mm, door.opening.height_mm), 'paper')
}
