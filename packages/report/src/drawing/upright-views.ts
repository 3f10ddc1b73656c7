import type { Door, Obstacle } from '@sillsight/engine'
import { dimensionFigure } from '../wording/figures.ts'
import { sideName } from '../wording/places.ts'
import type { Dimension } from './dimensions.ts'
import type { LabelRequest } from './labels.ts'
import { boxAround, type Mark } from './model.ts'
import { shape, stroke, turnedCorners, upright } from './pen.ts'
import { linesOf, sensorSymbol } from './plan.ts'
import { type Drawn, floorAt, halfExtents, heightOf, isFitting, type Projection, type Scene, sensorSpots } from './scene.ts'
import { onSheet, type Place, type View, type Window } from './view.ts'

// Elevation and section are the same drawing seen along two directions: what the plane of the cut meets is filled, the rest is outlined.

/** Which way an upright view looks. `x` is a place along the leaf, `y` one across it. */
interface Look {
  readonly across: (x_mm: number, y_mm: number) => number
  /** Distance of a place behind the plane of the cut; 0 is in it. */
  readonly depth: (x_mm: number, y_mm: number) => number
  /** Walls behind the plane are filled like those that it cuts: in the elevation they frame the opening. */
  readonly wallsBeyond: boolean
  readonly rays: 'outer' | 'middle'
  /** The line that the plane of the cut draws on the floor, as places in the doorway frame. */
  readonly floor: readonly { readonly x_mm: number; readonly y_mm: number }[]
}

const STUB_MM = 260
const UNDER_MM = 140 // of ground drawn under the lowest floor
const MOST_HEIGHTS = 3

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
    heading: 'Elevation',
    seen: `seen from ${sideName(scene.door, 'b')}`,
    window,
    dimensions: elevationDimensions(scene, window),
    draw: (view) => drawUpright(scene, view, look, openingMarks(scene, view)),
  }
}

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
    heading: 'Section',
    seen: `${sideName(door, 'a')} on the left`,
    window,
    dimensions: sectionDimensions(scene, window),
    draw: (view) => drawUpright(scene, view, look, leafLine(scene, view)),
  }
}

function heights({ door, state, zone, bodies }: Scene): Pick<Window, 'vMin_mm' | 'vMax_mm'> {
  const ys = [
    0,
    ...(zone ? [zone.yMin_mm, zone.yMax_mm] : []),
    ...state.floor.profile.map(({ y_mm }) => y_mm).filter((y_mm) => zone && y_mm > zone.yMin_mm && y_mm < zone.yMax_mm),
  ]
  const floors = ys.flatMap((y_mm) => [0, door.opening.width_mm].map((x_mm) => floorAt(state.floor, x_mm, y_mm)))
  const tops = [
    door.opening.height_mm + STUB_MM,
    ...sensorSpots(door).map(({ z_mm }) => z_mm + 120),
    ...bodies.map(({ worstCase, posture }) => worstCase.z_mm + heightOf(posture)),
  ]
  return { vMin_mm: Math.min(0, ...floors) - UNDER_MM, vMax_mm: Math.max(...tops) }
}

function elevationDimensions({ door, counted, units }: Scene, window: Window): readonly Dimension[] {
  const sensors = sensorSpots(door)
    .filter(({ id }) => counted.has(id))
    .slice(0, MOST_HEIGHTS)
  const { width_mm, height_mm } = door.opening
  const say = (value_mm: number): string => dimensionFigure(value_mm, units)
  const offsets = distinct(sensors.map(({ x_mm }) => x_mm))
    .filter((x_mm) => Math.abs(x_mm) >= 1)
    .map(
      (x_mm): Dimension => ({
        side: 'top',
        from_mm: 0,
        to_mm: x_mm,
        startsAt_mm: Math.max(...sensors.map(({ z_mm }) => z_mm)) + 60,
        text: say(Math.abs(x_mm)),
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
      }),
    )
  return [...offsets, ...up, { side: 'right', from_mm: 0, to_mm: height_mm, startsAt_mm: width_mm, text: say(height_mm) }]
}

function sectionDimensions({ door, counted, zone, units }: Scene, window: Window): readonly Dimension[] {
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
      text: dimensionFigure(Math.abs(y_mm) - face_mm, units),
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
      text: dimensionFigure(zone.yMax_mm - zone.yMin_mm, units),
    },
  ]
}

function distinct(values: readonly number[]): readonly number[] {
  return [...new Set(values)]
}

function drawUpright(scene: Scene, view: View, look: Look, opening: readonly Mark[]): Drawn {
  const { bodies, door } = scene
  const walls = builtMarks(scene, view, look)
  const things = scene.things.flatMap((obstacle) => shape(view, 'thing', silhouette(obstacle, look), 'none'))
  const ground = floorMarks(scene, view, look)
  const people = bodies.flatMap(({ worstCase, posture }, i) => {
    const half = halfExtents(bodies[i] ?? { letter: '', worstCase, posture })
    const reach_mm = look.across(half.x_mm, half.y_mm)
    const middle_mm = look.across(worstCase.x_mm, worstCase.y_mm)
    return [upright(middle_mm - Math.abs(reach_mm), middle_mm + Math.abs(reach_mm), worstCase.z_mm, worstCase.z_mm + heightOf(posture))]
  })
  const bodyLines = people.flatMap((ring) => shape(view, 'body', ring, 'paper'))
  const spots = [...sensorSpots(door).map(({ x_mm, y_mm, z_mm }) => [x_mm, y_mm, z_mm] as const), ...segmentsOf(door).flat()].map(
    ([x, y, z]) => onSheet(view, { u_mm: look.across(x, y), v_mm: z }),
  )
  const symbols = spots.map(sensorSymbol)
  const letters = bodies.map(
    ({ letter, worstCase, posture }): LabelRequest => ({
      text: letter,
      circled: true,
      clear_mm: 1.5,
      at: onSheet(view, { u_mm: look.across(worstCase.x_mm, worstCase.y_mm), v_mm: worstCase.z_mm + heightOf(posture) / 2 }),
    }),
  )
  const levels = levelLabels(scene, view, look)
  return {
    marks: [
      ...walls,
      ...rayMarks(scene, view, look),
      ...segmentMarks(scene, view, look),
      ...things,
      ...opening,
      ...bodyLines,
      ...ground,
      ...symbols.flatMap(({ marks }) => marks),
    ],
    hatched: [],
    kept: [...symbols.map(({ box }) => box), ...people.map((ring) => boxAround(ring.map((place) => onSheet(view, place))))],
    lines: linesOf([...walls, ...things, ...opening, ...ground, ...bodyLines]),
    labels: [...letters, ...levels],
  }
}

/** The building, from the back to the front: filled where the look shows walls, fittings as outlines on paper. */
function builtMarks({ state }: Scene, view: View, look: Look): readonly Mark[] {
  const shown = state.obstacles.filter((obstacle) => obstacle.implied && (look.wallsBeyond || isCut(obstacle, look)))
  return [...shown]
    .sort((a, b) => Number(isFitting(a)) - Number(isFitting(b)) || look.depth(b.x_mm, b.y_mm) - look.depth(a.x_mm, a.y_mm))
    .flatMap((obstacle) =>
      isFitting(obstacle)
        ? shape(view, 'thing', silhouette(obstacle, look), 'paper')
        : shape(view, 'structure', silhouette(obstacle, look), 'wall'),
    )
}

/** Whether the plane of the cut runs through an obstacle. */
function isCut(obstacle: Obstacle, look: Look): boolean {
  const depths = planCorners(obstacle).map(({ u_mm, v_mm }) => look.depth(u_mm, v_mm))
  return Math.min(...depths) < 0 && Math.max(...depths) > 0
}

function planCorners(obstacle: Obstacle): readonly Place[] {
  const middle = { u_mm: obstacle.x_mm, v_mm: obstacle.y_mm }
  return obstacle.shape === 'box'
    ? turnedCorners(middle, obstacle.size_mm, obstacle.yaw_rad)
    : turnedCorners(middle, [2 * obstacle.radius_mm, 2 * obstacle.radius_mm], 0)
}

function silhouette(obstacle: Obstacle, look: Look): readonly Place[] {
  const across = planCorners(obstacle).map(({ u_mm, v_mm }) => look.across(u_mm, v_mm))
  return upright(Math.min(...across), Math.max(...across), obstacle.from_mm, obstacle.to_mm)
}

/** The ground in section: a heavy line at the floor, the earth below it left as paper. */
function floorMarks({ state }: Scene, view: View, look: Look): readonly Mark[] {
  const line = look.floor.map(({ x_mm, y_mm }): Place => ({ u_mm: look.across(x_mm, y_mm), v_mm: floorAt(state.floor, x_mm, y_mm) }))
  return stroke(view, 'structure', line)
}

/** Heights of the floor where it bends, as far as they differ from the finished floor. */
function levelLabels({ state, units }: Scene, view: View, look: Look): readonly LabelRequest[] {
  return look.floor.flatMap(({ x_mm, y_mm }) => {
    const z_mm = floorAt(state.floor, x_mm, y_mm)
    if (Math.abs(z_mm) < 0.5) return []
    const at = onSheet(view, { u_mm: look.across(x_mm, y_mm), v_mm: z_mm })
    return [{ text: `${z_mm > 0 ? '+' : ''}${dimensionFigure(z_mm, units)}`, circled: false, clear_mm: 0.6, within_mm: 5, at }]
  })
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

/** A few beams of each plane as thin lines: the outermost where one sees how wide it is, the middle one where one sees how it leans. */
function rayMarks({ traces }: Scene, view: View, look: Look): readonly Mark[] {
  return traces.flatMap(({ spots }) => {
    const middle = Math.floor((spots.length - 1) / 2)
    const shown = look.rays === 'outer' ? distinct([0, spots.length - 1]) : [middle]
    return shown.flatMap((index) => {
      const spot = spots[index]
      return spot
        ? stroke(
            view,
            'help',
            [spot.from_mm, spot.to_mm].map(([x, y, z]): Place => ({ u_mm: look.across(x, y), v_mm: z })),
          )
        : []
    })
  })
}

/** Both ends of the beams of light grids and photo-eyes. */
function segmentsOf(door: Door): readonly (readonly [Point, Point])[] {
  return door.sensors.flatMap((sensor) =>
    sensor.kind === 'segment'
      ? sensor.planes.flatMap(({ segments }) => segments.map(({ from_mm, to_mm }) => [from_mm, to_mm] as const))
      : [],
  )
}
type Point = readonly [x_mm: number, y_mm: number, z_mm: number]

function segmentMarks({ door }: Scene, view: View, look: Look): readonly Mark[] {
  return segmentsOf(door).flatMap((ends) =>
    stroke(
      view,
      'help',
      ends.map(([x, y, z]): Place => ({ u_mm: look.across(x, y), v_mm: z })),
    ),
  )
}
