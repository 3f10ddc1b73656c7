import type { Obstacle } from '@sillsight/engine'
import { dimensionFigure } from '../wording/figures.ts'
import { type BodySolid, solidsOfBody } from './body-solids.ts'
import { dangerMarks } from './danger-marks.ts'
import type { LabelRequest } from './labels.ts'
import { blocks, lightGrids } from './light-grid.ts'
import { boxAround, type Mark } from './model.ts'
import { shape, stroke, turnedCorners, upright } from './pen.ts'
import { type Drawn, floorAt, heightOf, isFitting, type Scene, sensorSpots } from './scene.ts'
import { linesOf } from './symbols.ts'
import { isInside, onSheet, type Place, type View, type Window } from './view.ts'

// Elevation and section are the same drawing seen along two directions: what the plane of the cut meets is filled, the rest is outlined.

/** Of wall and ground around the opening. */
export const STUB_MM = 260
/** Sensors whose places are dimensioned; more would hide the drawing behind its figures. */
export const MOST_HEIGHTS = 3
const UNDER_MM = 140 // of ground drawn under the lowest floor

/** Which way an upright view looks. `x` is a place along the leaf, `y` one across it. */
export interface Look {
  readonly across: (x_mm: number, y_mm: number) => number
  /** Distance of a place behind the plane of the cut; 0 is in it. */
  readonly depth: (x_mm: number, y_mm: number) => number
  /** Walls behind the plane are filled like those that it cuts: in the elevation they frame the opening. */
  readonly wallsBeyond: boolean
  readonly rays: 'outer' | 'middle'
  /** The line that the plane of the cut draws on the floor, as places in the doorway frame. */
  readonly floor: readonly { readonly x_mm: number; readonly y_mm: number }[]
}

/** How far an upright view reaches down and up. */
export function heights({ door, state, zone, bodies }: Scene): Pick<Window, 'vMin_mm' | 'vMax_mm'> {
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

/** Each value once, in order. */
export function distinct(values: readonly number[]): readonly number[] {
  return [...new Set(values)]
}

/** An upright view; `opening` is what it shows of opening and leaf. */
export function drawUpright(scene: Scene, view: View, look: Look, opening: readonly Mark[]): Drawn {
  const { bodies, door } = scene
  const walls = builtMarks(scene, view, look)
  const things = scene.things.flatMap((obstacle) => shape(view, 'thing', silhouette(obstacle, look), 'none'))
  const ground = floorMarks(scene, view, look)
  const people = bodies.map(({ worstCase, posture }) =>
    [...solidsOfBody(posture, worstCase)]
      .sort((a, b) => look.depth(b.x_mm, b.y_mm) - look.depth(a.x_mm, a.y_mm))
      .map((solid) => bodySilhouette(solid, look)),
  )
  const bodyLines = people.flatMap((parts) => parts.flatMap((ring) => shape(view, 'body', ring, 'paper')))
  const grids = lightGrids(door, view, ([x, y, z]) => ({ u_mm: look.across(x, y), v_mm: z }))
  const others = sensorSpots({ ...door, sensors: door.sensors.filter(({ kind }) => kind !== 'segment') })
    .map(({ x_mm, y_mm, z_mm }) => ({ u_mm: look.across(x_mm, y_mm), v_mm: z_mm }))
    .filter((place) => isInside(view.window, place))
  const symbols = blocks([...others.map((place) => onSheet(view, place)), ...grids.ends])
  const letters = bodies.map(
    ({ letter, worstCase, posture }): LabelRequest => ({
      text: letter,
      circled: true,
      clear_mm: 1.5,
      at: onSheet(view, { u_mm: look.across(worstCase.x_mm, worstCase.y_mm), v_mm: worstCase.z_mm + heightOf(posture) / 2 }),
    }),
  )
  const dangers = dangerMarks(scene, view, (x_mm, y_mm, z_mm) => ({
    u_mm: look.across(x_mm, y_mm),
    v_mm: floorAt(scene.state.floor, x_mm, y_mm) + z_mm,
  }))
  const levels = levelLabels(scene, view, look)
  return {
    marks: [
      ...walls,
      ...rayMarks(scene, view, look),
      ...grids.beams,
      ...grids.bars,
      ...things,
      ...opening,
      ...bodyLines,
      ...ground,
      ...dangers.marks,
      ...symbols.marks,
    ],
    hatched: [],
    kept: [
      ...symbols.boxes,
      ...grids.boxes,
      ...dangers.boxes,
      ...people.map((parts) => boxAround(parts.flat().map((place) => onSheet(view, place)))),
    ],
    lines: linesOf([...walls, ...things, ...opening, ...ground, ...bodyLines, ...grids.beams, ...grids.bars]),
    labels: [...letters, ...dangers.labels, ...levels],
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

/** What a part of a body covers as the view looks. */
function bodySilhouette(solid: BodySolid, look: Look): readonly Place[] {
  const size_mm = solid.shape === 'box' ? solid.size_mm : ([2 * solid.radius_mm, 2 * solid.radius_mm] as const)
  const corners = turnedCorners({ u_mm: solid.x_mm, v_mm: solid.y_mm }, size_mm, solid.shape === 'box' ? solid.yaw_rad : 0)
  const across = corners.map(({ u_mm, v_mm }) => look.across(u_mm, v_mm))
  return upright(Math.min(...across), Math.max(...across), solid.from_mm, solid.to_mm)
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
function levelLabels(scene: Scene, view: View, look: Look): readonly LabelRequest[] {
  return look.floor.flatMap(({ x_mm, y_mm }) => {
    const z_mm = floorAt(scene.state.floor, x_mm, y_mm)
    if (Math.abs(z_mm) < 0.5) return []
    const at = onSheet(view, { u_mm: look.across(x_mm, y_mm), v_mm: z_mm })
    return [{ text: `${z_mm > 0 ? '+' : ''}${dimensionFigure(z_mm, scene)}`, circled: false, clear_mm: 0.6, within_mm: 5, at }]
  })
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
