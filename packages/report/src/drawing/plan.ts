import type { Obstacle, ZoneCoverage } from '@sillsight/engine'
import { dimensionFigure, tape } from '../wording/figures.ts'
import { sideName } from '../wording/places.ts'
import { plain } from '../wording/plain.ts'
import type { Dimension } from './dimensions.ts'
import { blank, type LabelRequest } from './labels.ts'
import { type Box, boxAround, corners, grown, type Mark, type Spot } from './model.ts'
import { round, shape, stroke, turnedCorners, upright } from './pen.ts'
import {
  type Drawn,
  footprint,
  halfExtents,
  isFitting,
  type Projection,
  reachOf,
  type Scene,
  type ShownBody,
  sensorSpots,
} from './scene.ts'
import { unseenBoxes, unseenMarks } from './unseen.ts'
import { clippedArea, isInside, onSheet, type Place, type View, type Window, windowAround } from './view.ts'

/** The plan is a cut at this height: what stands in it is filled, what hangs above is left out. */
const CUT_MM = 1000
const STUB_MM = 260 // of wall beside the opening, and of ground on the far side of the leaf
const MOST_LETTERS = 12
const ROOM_FOR_THINGS_MM = 600 // the plan is widened by so much at most to show a thing whole

/** The plan, side A at the top of the sheet. */
export function plan(scene: Scene): Projection {
  const window = planWindow(scene)
  return {
    heading: 'Plan',
    seen: `${sideName(scene.door, 'a')} at the top, ${sideName(scene.door, 'b')} below`,
    window,
    dimensions: planDimensions(scene),
    draw: (view) => drawPlan(scene, view),
  }
}

/** What of the survey's list shows in the plan. */
export function thingsInPlan(scene: Omit<Scene, 'things'>): readonly Obstacle[] {
  const window = planWindow(scene)
  return scene.state.obstacles.filter((obstacle) => !obstacle.implied && outlineOf(obstacle).some((place) => isInside(window, place)))
}

function planWindow({ door, state, zone, coverage, bodies }: Omit<Scene, 'things'>): Window {
  const width_mm = door.opening.width_mm
  const places: Place[] = upright(-STUB_MM, width_mm + STUB_MM, -STUB_MM, STUB_MM).slice()
  if (zone) places.push(...upright(zone.xMin_mm, zone.xMax_mm, zone.yMin_mm, zone.yMax_mm))
  if (coverage) places.push(...gridCorners(coverage.grid)) // the last strip of cells may reach past the zone
  for (const { x_mm, y_mm } of sensorSpots(door)) places.push({ u_mm: x_mm, v_mm: y_mm })
  for (const body of bodies) {
    const half = halfExtents(body)
    const { x_mm, y_mm } = body.worstCase
    places.push(...upright(x_mm - half.x_mm, x_mm + half.x_mm, y_mm - half.y_mm, y_mm + half.y_mm))
  }
  return widenedForThings(windowAround(places), state.obstacles)
}

function gridCorners({ x0_mm, y0_mm, pitch_mm, columns, rows }: ZoneCoverage['grid']): readonly Place[] {
  return upright(x0_mm, x0_mm + columns * pitch_mm, y0_mm, y0_mm + rows * pitch_mm)
}

function widenedForThings(window: Window, obstacles: readonly Obstacle[]): Window {
  const room = grownWindow(window, ROOM_FOR_THINGS_MM)
  const whole = obstacles
    .filter(({ implied }) => !implied)
    .map(outlineOf)
    .filter((ring) => ring.some((place) => isInside(window, place)) && ring.every((place) => isInside(room, place)))
  return whole.length === 0
    ? window
    : windowAround([{ u_mm: window.uMin_mm, v_mm: window.vMin_mm }, { u_mm: window.uMax_mm, v_mm: window.vMax_mm }, ...whole.flat()])
}

function grownWindow({ uMin_mm, uMax_mm, vMin_mm, vMax_mm }: Window, by_mm: number): Window {
  return { uMin_mm: uMin_mm - by_mm, uMax_mm: uMax_mm + by_mm, vMin_mm: vMin_mm - by_mm, vMax_mm: vMax_mm + by_mm }
}

function outlineOf(obstacle: Obstacle): readonly Place[] {
  const middle = { u_mm: obstacle.x_mm, v_mm: obstacle.y_mm }
  if (obstacle.shape === 'box') return turnedCorners(middle, obstacle.size_mm, obstacle.yaw_rad)
  return turnedCorners(middle, [2 * obstacle.radius_mm, 2 * obstacle.radius_mm], 0)
}

function planDimensions({ door, zone, coverage, units }: Scene): readonly Dimension[] {
  const width_mm = door.opening.width_mm
  const bottom_mm = Math.min(-(door.leaf?.thickness_mm ?? 0) / 2, zone && zone.yMin_mm < 0 ? zone.yMin_mm : 0)
  const right_mm = Math.max(width_mm, zone?.xMax_mm ?? width_mm)
  const found: Dimension[] = []
  const add = (side: Dimension['side'], from_mm: number, to_mm: number, startsAt_mm: number): void => {
    if (to_mm - from_mm > 0) found.push({ side, from_mm, to_mm, startsAt_mm, text: dimensionFigure(to_mm - from_mm, units) })
  }
  const largest = coverage?.pockets[0]?.extent
  if (largest && !(largest.xMin_mm === 0 && largest.xMax_mm === width_mm)) add('top', largest.xMin_mm, largest.xMax_mm, largest.yMax_mm)
  if (largest && !(largest.yMin_mm === zone?.yMin_mm && largest.yMax_mm === zone.yMax_mm))
    add('right', largest.yMin_mm, largest.yMax_mm, largest.xMax_mm)
  add('bottom', 0, width_mm, bottom_mm)
  if (zone) {
    add('right', zone.yMin_mm, zone.yMax_mm, right_mm)
    if (zone.xMin_mm !== 0 || zone.xMax_mm !== width_mm) add('bottom', zone.xMin_mm, zone.xMax_mm, zone.yMin_mm)
  }
  return found
}

function drawPlan(scene: Scene, view: View): Drawn {
  const { coverage, bodies } = scene
  const building = buildingMarks(scene, view)
  const things = thingMarks(scene, view)
  const people = bodies.flatMap((body) => bodyMarks(view, body))
  const sensors = sensorMarks(scene, view)
  const marks = [
    ...building,
    ...zoneMarks(scene, view),
    ...traceMarks(scene, view),
    ...(coverage ? unseenMarks(view, coverage) : []),
    ...things,
    ...people,
    ...sensors.marks,
  ]
  return {
    marks,
    hatched: coverage ? unseenBoxes(view, coverage) : [],
    kept: [...sensors.kept, ...bodyBoxes(view, bodies), ...thingBoxes(scene, view), ...wallBoxes(scene, view)],
    lines: linesOf([...building, ...things, ...people]),
    labels: planLabels(scene, view),
  }
}

function buildingMarks({ door, state }: Scene, view: View): readonly Mark[] {
  const width_mm = door.opening.width_mm
  const half_mm = (door.leaf?.thickness_mm ?? 0) / 2
  const cut = state.obstacles.filter(({ implied, from_mm, to_mm }) => implied && from_mm <= CUT_MM && to_mm > CUT_MM)
  const walls = [...cut]
    .sort((a, b) => Number(isFitting(a)) - Number(isFitting(b)))
    .flatMap((obstacle) =>
      isFitting(obstacle) ? obstacleMarks(view, obstacle, 'thing', 'paper') : obstacleMarks(view, obstacle, 'structure', 'wall'),
    )
  const leaf = door.leaf
    ? shape(view, 'thing', upright(0, width_mm, -half_mm, half_mm), 'paper')
    : stroke(view, 'thing', [
        { u_mm: 0, v_mm: 0 },
        { u_mm: width_mm, v_mm: 0 },
      ])
  return [
    ...walls,
    ...leaf,
    ...stroke(
      view,
      'help',
      [
        { u_mm: view.window.uMin_mm, v_mm: 0 },
        { u_mm: view.window.uMax_mm, v_mm: 0 },
      ],
      'centre',
    ),
  ]
}

/** What is filled in the plan: lettering on it would look cut out. */
function wallBoxes({ state }: Scene, view: View): readonly Box[] {
  return state.obstacles
    .filter((obstacle) => obstacle.implied && !isFitting(obstacle) && obstacle.from_mm <= CUT_MM && obstacle.to_mm > CUT_MM)
    .map((obstacle) => clippedArea(view.window, outlineOf(obstacle)))
    .filter((ring) => ring.length > 2)
    .map((ring) => boxAround(ring.map((place) => onSheet(view, place))))
}

function obstacleMarks(view: View, obstacle: Obstacle, layer: 'structure' | 'thing', fill: 'wall' | 'paper'): readonly Mark[] {
  if (obstacle.shape === 'box') return shape(view, layer, outlineOf(obstacle), fill)
  return round(view, layer, { u_mm: obstacle.x_mm, v_mm: obstacle.y_mm }, obstacle.radius_mm, fill)
}

/** What the survey lists: boxes with their diagonals, posts with a cross, as solid things are drawn from above. */
function thingMarks({ things }: Scene, view: View): readonly Mark[] {
  return things.flatMap((obstacle) => {
    const [a, b, c, d] = outlineOf(obstacle)
    if (!a || !b || !c || !d) return []
    const reach_mm = obstacle.shape === 'post' ? obstacle.radius_mm * Math.SQRT1_2 : 0
    const cross =
      obstacle.shape === 'box' ? [a, b, c, d] : turnedCorners({ u_mm: obstacle.x_mm, v_mm: obstacle.y_mm }, [2 * reach_mm, 2 * reach_mm], 0)
    const diagonals = [
      [cross[0], cross[2]],
      [cross[1], cross[3]],
    ].flatMap(([from, to]) => (from && to ? stroke(view, 'help', [from, to]) : []))
    return [...obstacleMarks(view, obstacle, 'thing', 'paper'), ...diagonals]
  })
}

function thingBoxes({ things }: Scene, view: View): readonly Box[] {
  return things.map((obstacle) => boxAround(outlineOf(obstacle).map((place) => onSheet(view, place))))
}

function zoneMarks({ zone }: Scene, view: View): readonly Mark[] {
  if (!zone) return []
  const ring = upright(zone.xMin_mm, zone.xMax_mm, zone.yMin_mm, zone.yMax_mm)
  return [{ kind: 'area', layer: 'dimension', fill: 'none', dash: 'zone', rings: [ring.map((place) => onSheet(view, place))] }]
}

/** The lines in which scan planes meet the floor; they break where a beam ends on something else. */
function traceMarks({ traces }: Scene, view: View): readonly Mark[] {
  return traces.flatMap(({ spots }) => {
    const lines: Place[][] = [[]]
    for (const {
      to_mm: [x, y],
      onFloor,
    } of spots) {
      if (onFloor) lines[lines.length - 1]?.push({ u_mm: x, v_mm: y })
      else lines.push([])
    }
    return lines.flatMap((line) => stroke(view, 'help', line))
  })
}

/** A body as it lies: outline on paper, and a cross in its middle, which is what the tape distances go to. */
export function bodyMarks(view: View, body: ShownBody): readonly Mark[] {
  const { worstCase, posture } = body
  const middle = { u_mm: worstCase.x_mm, v_mm: worstCase.y_mm }
  const ring = footprint(body)
  return ring ? shape(view, 'body', ring, 'paper') : round(view, 'body', middle, reachOf(posture), 'paper')
}

function bodyBoxes(view: View, bodies: readonly ShownBody[]): readonly Box[] {
  return bodies.map((body) => {
    const { x_mm, y_mm } = body.worstCase
    const half = halfExtents(body)
    return boxAround(upright(x_mm - half.x_mm, x_mm + half.x_mm, y_mm - half.y_mm, y_mm + half.y_mm).map((place) => onSheet(view, place)))
  })
}

function sensorMarks({ door }: Scene, view: View): { readonly marks: readonly Mark[]; readonly kept: readonly Box[] } {
  const symbols = sensorSpots(door).map(({ x_mm, y_mm }) => sensorSymbol(onSheet(view, { u_mm: x_mm, v_mm: y_mm })))
  const drawn = door.sensors.flatMap((sensor): readonly Mark[] => {
    if (sensor.kind === 'zone-only')
      return shape(view, 'thing', upright(sensor.xMin_mm, sensor.xMax_mm, sensor.yMin_mm, sensor.yMax_mm), 'none', 'hidden')
    if (sensor.kind === 'ranging')
      return sensor.planes.flatMap((plane) =>
        plane.kind === 'row'
          ? stroke(
              view,
              'thing',
              plane.places.map(({ x_mm, y_mm }) => ({ u_mm: x_mm, v_mm: y_mm })),
            )
          : [],
      )
    return sensor.planes.flatMap(({ segments }) =>
      segments.flatMap(({ from_mm, to_mm }) => [
        ...stroke(view, 'help', [
          { u_mm: from_mm[0], v_mm: from_mm[1] },
          { u_mm: to_mm[0], v_mm: to_mm[1] },
        ]),
        ...sensorSymbol(onSheet(view, { u_mm: to_mm[0], v_mm: to_mm[1] })).marks,
      ]),
    )
  })
  return { marks: [...drawn, ...symbols.flatMap(({ marks }) => marks)], kept: symbols.map(({ box }) => box) }
}

/** A sensor is the same small solid block in every view, whatever the scale. */
export function sensorSymbol(at: Spot): { readonly marks: readonly Mark[]; readonly box: Box } {
  const box = { left_mm: at.x_mm - 1.5, right_mm: at.x_mm + 1.5, top_mm: at.y_mm - 0.9, bottom_mm: at.y_mm + 0.9 }
  const marks: readonly Mark[] = [blank(grown(box, 0.4)), { kind: 'area', layer: 'thing', fill: 'ink', rings: [corners(box)] }]
  return { box, marks }
}

function planLabels(scene: Scene, view: View): readonly LabelRequest[] {
  const { door, coverage, units, zone } = scene
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
      text: `${plain(name)}, ${tape(z_mm, units)} up`,
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
      return { text: plain(obstacle.name), circled: false, clear_mm, at: onSheet(view, { u_mm: obstacle.x_mm, v_mm: obstacle.y_mm }) }
    })
  const zoneOnly = door.sensors.flatMap((sensor): readonly LabelRequest[] =>
    sensor.kind !== 'zone-only'
      ? []
      : [
          {
            text: plain(sensor.name),
            circled: false,
            clear_mm: 0,
            at: onSheet(view, { u_mm: (sensor.xMin_mm + sensor.xMax_mm) / 2, v_mm: (sensor.yMin_mm + sensor.yMax_mm) / 2 }),
          },
        ],
  )
  const sides = (['a', 'b'] as const).map(
    (side): LabelRequest => ({
      text: plain(door.sides[side]),
      circled: false,
      clear_mm: 0,
      at: onSheet(view, { u_mm: door.opening.width_mm + STUB_MM, v_mm: side === 'a' ? view.window.vMax_mm : view.window.vMin_mm }),
    }),
  )
  const zoneName = zone
    ? [
        {
          text: plain(zone.name),
          circled: false,
          clear_mm: 0,
          at: onSheet(view, { u_mm: (zone.xMin_mm + zone.xMax_mm) / 2, v_mm: zone.yMax_mm }),
        },
      ]
    : []
  return [...letters, ...sensors, ...things, ...sides, ...zoneOnly, ...zoneName]
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
