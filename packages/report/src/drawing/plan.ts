import type { Obstacle } from '@sillsight/engine'
import { dimensionFigure } from '../wording/figures.ts'
import { sideName } from '../wording/places.ts'
import { dangerMarks } from './danger-marks.ts'
import type { Dimension } from './dimensions.ts'
import { swingMarks } from './leaf-swing.ts'
import { blocks, lightGrids } from './light-grid.ts'
import { type Box, boxAround, type Mark } from './model.ts'
import { round, shape, stroke, turnedCorners, upright } from './pen.ts'
import { planLabels } from './plan-labels.ts'
import { outlineOf, planWindow } from './plan-window.ts'
import { type Drawn, isFitting, type Projection, type Scene, sensorSpots } from './scene.ts'
import { bodyBoxes, bodyMarks, linesOf } from './symbols.ts'
import { unseenBoxes, unseenMarks } from './unseen.ts'
import { clippedArea, onSheet, type Place, type View } from './view.ts'

/** The plan is a cut at this height: what stands in it is filled, what hangs above is left out. */
const CUT_MM = 1000

/** The plan, side A at the top of the sheet. */
export function plan(scene: Scene): Projection {
  const window = planWindow(scene)
  return {
    heading: scene.language.sheet.plan,
    seen: scene.language.sheet.topAndBelow(sideName(scene.door, 'a', scene), sideName(scene.door, 'b', scene)),
    window,
    dimensions: planDimensions(scene),
    draw: (view) => drawPlan(scene, view),
  }
}

function planDimensions(scene: Scene): readonly Dimension[] {
  const { door, zone, coverage } = scene
  const width_mm = door.opening.width_mm
  const bottom_mm = Math.min(-(door.leaf?.thickness_mm ?? 0) / 2, zone && zone.yMin_mm < 0 ? zone.yMin_mm : 0)
  const right_mm = Math.max(width_mm, zone?.xMax_mm ?? width_mm)
  const found: Dimension[] = []
  const add = (side: Dimension['side'], from_mm: number, to_mm: number, startsAt_mm: number, of?: string): void => {
    if (to_mm - from_mm > 0) found.push({ side, from_mm, to_mm, startsAt_mm, text: dimensionFigure(to_mm - from_mm, scene), of })
  }
  const largest = coverage?.pockets[0]?.extent
  if (largest && !(largest.xMin_mm === 0 && largest.xMax_mm === width_mm)) add('top', largest.xMin_mm, largest.xMax_mm, largest.yMax_mm)
  if (largest && !(largest.yMin_mm === zone?.yMin_mm && largest.yMax_mm === zone.yMax_mm))
    add('right', largest.yMin_mm, largest.yMax_mm, largest.xMax_mm)
  add('bottom', 0, width_mm, bottom_mm, 'opening/width')
  if (zone) {
    add('right', zone.yMin_mm, zone.yMax_mm, right_mm, `zone/${zone.id}/depth`)
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
  const dangers = dangerMarks(scene, view, (u_mm, v_mm) => ({ u_mm, v_mm }))
  const marks = [
    ...building,
    ...zoneMarks(scene, view),
    ...traceMarks(scene, view),
    ...things,
    ...(coverage ? unseenMarks(view, coverage) : []), // over things: what is unseen stays in sight wherever it is
    ...people,
    ...dangers.marks,
    ...sensors.marks,
  ]
  return {
    marks,
    hatched: coverage ? unseenBoxes(view, coverage) : [],
    kept: [...sensors.kept, ...dangers.boxes, ...bodyBoxes(view, bodies), ...thingBoxes(scene, view), ...wallBoxes(scene, view)],
    lines: linesOf([...building, ...things, ...people, ...sensors.beams]),
    labels: [...planLabels(scene, view), ...dangers.labels],
  }
}

function buildingMarks({ door, state, leafWay_mm }: Scene, view: View): readonly Mark[] {
  const width_mm = door.opening.width_mm
  const half_mm = (door.leaf?.thickness_mm ?? 0) / 2
  const cut = state.obstacles.filter(({ implied, from_mm, to_mm }) => implied && from_mm <= CUT_MM && to_mm > CUT_MM)
  const walls = [...cut]
    .sort((a, b) => Number(isFitting(a)) - Number(isFitting(b)))
    .flatMap((obstacle) =>
      isFitting(obstacle) ? obstacleMarks(view, obstacle, 'thing', 'paper') : obstacleMarks(view, obstacle, 'structure', 'wall'),
    )
  const swing = swingMarks(door, view, leafWay_mm)
  const leaf = swing
    ? swing
    : door.leaf
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

function sensorMarks(
  { door }: Scene,
  view: View,
): {
  readonly marks: readonly Mark[]
  readonly kept: readonly Box[]
  /** The lines among them, for names to keep off. */
  readonly beams: readonly Mark[]
} {
  const grids = lightGrids(door, view, ([u_mm, v_mm]) => ({ u_mm, v_mm }))
  const others = sensorSpots({ ...door, sensors: door.sensors.filter(({ kind }) => kind !== 'segment') })
  const symbols = blocks([...others.map(({ x_mm, y_mm }) => onSheet(view, { u_mm: x_mm, v_mm: y_mm })), ...grids.ends])
  const drawn = door.sensors.flatMap((sensor): readonly Mark[] => {
    if (sensor.kind === 'zone-only')
      return shape(view, 'thing', upright(sensor.xMin_mm, sensor.xMax_mm, sensor.yMin_mm, sensor.yMax_mm), 'none', 'hidden')
    if (sensor.kind === 'segment') return []
    return sensor.planes.flatMap((plane) =>
      plane.kind === 'row'
        ? stroke(
            view,
            'thing',
            plane.places.map(({ x_mm, y_mm }) => ({ u_mm: x_mm, v_mm: y_mm })),
          )
        : [],
    )
  })
  const lines = [...drawn, ...grids.beams, ...grids.bars]
  return { marks: [...lines, ...symbols.marks], kept: [...symbols.boxes, ...grids.boxes], beams: lines }
}
