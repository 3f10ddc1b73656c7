import {
  beamSpots,
  type Door,
  type DoorState,
  floorHeight,
  floorPieces,
  type Judgement,
  type Obstacle,
  type ZoneCoverage,
} from '@sillsight/engine'
import { type BodySolid, bodiesToDraw, isFitting, sensorSpots, shownOf, solidsOfBody } from '@sillsight/report'

/** What a thing in the room is; decides how it is drawn. */
export type SolidKind =
  | 'floor'
  | 'grid'
  | 'building'
  | 'fitting'
  | 'thing'
  | 'leaf'
  | 'zone'
  | 'unseen'
  | 'body'
  | 'sensor'
  | 'beams'
  | 'moving'

export type Point = readonly [x_mm: number, y_mm: number, z_mm: number]

/** Doorway frame, mm; z up. */
export type Shape =
  | { readonly shape: 'box'; readonly middle: Point; readonly size_mm: Point; readonly yaw_rad: number }
  | { readonly shape: 'post'; readonly middle: Point; readonly radius_mm: number; readonly height_mm: number }
  /** Rings as an even-odd area, lifted onto the floor at every corner. */
  | { readonly shape: 'area'; readonly rings: readonly (readonly Point[])[] }
  | { readonly shape: 'quads'; readonly quads: readonly (readonly [Point, Point, Point, Point])[] }
  | { readonly shape: 'lines'; readonly lines: readonly (readonly [Point, Point])[] }

export interface Solid {
  readonly kind: SolidKind
  /** As the drawing calls it: from the survey, the door file or the judgement; empty where nobody gave it a name. */
  readonly name: string
  readonly at: Shape
}

/** Floor around what matters. */
const AROUND_MM = 1200
/** Walls are shown so far beside and above the opening: the rest of the building would only stand in the way. */
const WALL_MM = 900
/** More lines than that of one sensor are a grey surface. */
const MOST_LINES = 170
const LIFT_MM = 4

/** Everything that the view in space shows of one state of a door and one zone's coverage. Computes nothing that a verdict rests on. */
export function solidsOf(
  door: Door,
  judgement: Judgement,
  wanted: { readonly state?: string | undefined; readonly zone?: string | undefined },
): Solid[] {
  const { state, coverage } = shownOf(door, judgement, wanted)
  const floor = floorPieces(state.floor)
  const room = roomOf(door, state)
  const onFloor = (x: number, y: number, lift = 0): Point => [x, y, floorHeight(floor, x, y) + lift]
  return [
    { kind: 'floor', name: '', at: { shape: 'quads', quads: floorQuads(state, room, onFloor) } },
    { kind: 'grid', name: '', at: { shape: 'lines', lines: metres(state, room, onFloor) } },
    ...state.obstacles.flatMap((obstacle) => obstacleSolid(door, obstacle)),
    ...leafSolid(door),
    ...door.zones.map(({ name, xMin_mm, xMax_mm, yMin_mm, yMax_mm }): Solid => {
      const corners = [
        onFloor(xMin_mm, yMin_mm, LIFT_MM),
        onFloor(xMax_mm, yMin_mm, LIFT_MM),
        onFloor(xMax_mm, yMax_mm, LIFT_MM),
        onFloor(xMin_mm, yMax_mm, LIFT_MM),
      ] as const
      return { kind: 'zone', name, at: { shape: 'lines', lines: corners.map((corner, i) => [corner, corners[(i + 1) % 4] as Point]) } }
    }),
    ...unseenSolids(coverage, onFloor),
    ...bodySolids(door, coverage),
    ...sensorSolids(door, state, room),
  ]
}

function obstacleSolid({ opening }: Door, obstacle: Obstacle): Solid[] {
  const { name, implied, x_mm, y_mm } = obstacle
  const kind = !implied ? 'thing' : isFitting(obstacle) ? 'fitting' : 'building'
  const highest = kind === 'building' ? Math.min(obstacle.to_mm, opening.height_mm + WALL_MM) : obstacle.to_mm
  const lowest = kind === 'building' ? Math.max(obstacle.from_mm, -WALL_MM / 3) : obstacle.from_mm
  const [middle_mm, height_mm] = [(lowest + highest) / 2, highest - lowest]
  if (!(height_mm > 0)) return []
  if (obstacle.shape === 'post')
    return [{ kind, name, at: { shape: 'post', middle: [x_mm, y_mm, middle_mm], radius_mm: obstacle.radius_mm, height_mm } }]
  const [along, across] = obstacle.size_mm
  const cut = kind === 'building' && obstacle.yaw_rad === 0
  const [from, to] = cut
    ? [Math.max(x_mm - along / 2, -WALL_MM), Math.min(x_mm + along / 2, opening.width_mm + WALL_MM)]
    : [x_mm - along / 2, x_mm + along / 2]
  if (!(to > from)) return []
  return [
    {
      kind,
      name,
      at: { shape: 'box', middle: [(from + to) / 2, y_mm, middle_mm], size_mm: [to - from, across, height_mm], yaw_rad: obstacle.yaw_rad },
    },
  ]
}

/** Where the closed leaf would be: an outline, for the view is of the open door. */
function leafSolid({ leaf, opening: { width_mm, height_mm } }: Door): Solid[] {
  if (leaf === undefined) return []
  const corners: Point[] = [
    [0, 0, 0],
    [width_mm, 0, 0],
    [width_mm, 0, height_mm],
    [0, 0, height_mm],
  ]
  return [{ kind: 'leaf', name: '', at: { shape: 'lines', lines: corners.map((corner, i) => [corner, corners[(i + 1) % 4] as Point]) } }]
}

/** mm, doorway frame. */
interface Room {
  readonly xMin: number
  readonly xMax: number
  readonly yMin: number
  readonly yMax: number
}

/** The floor that is shown: as far as zones, sensors and listed things reach, and a little more. */
function roomOf(door: Door, { obstacles }: DoorState): Room {
  const listed = obstacles.filter(({ implied }) => !implied)
  const xs = [0, door.opening.width_mm, ...door.zones.flatMap((z) => [z.xMin_mm, z.xMax_mm]), ...listed.map(({ x_mm }) => x_mm)]
  const ys = [0, ...door.zones.flatMap((z) => [z.yMin_mm, z.yMax_mm]), ...listed.map(({ y_mm }) => y_mm)]
  return {
    xMin: Math.min(...xs) - WALL_MM,
    xMax: Math.max(...xs) + WALL_MM,
    yMin: Math.min(...ys) - AROUND_MM,
    yMax: Math.max(...ys) + AROUND_MM,
  }
}

/** Strips of floor between its bends. */
function floorQuads(
  { floor }: DoorState,
  { xMin, xMax, yMin, yMax }: Room,
  onFloor: (x: number, y: number) => Point,
): (readonly [Point, Point, Point, Point])[] {
  const cuts = cutsOf(floor, yMin, yMax)
  return cuts.slice(1).map((to, i) => {
    const from = cuts[i] as number
    return [onFloor(xMin, from), onFloor(xMax, from), onFloor(xMax, to), onFloor(xMin, to)] as const
  })
}

function cutsOf({ profile }: DoorState['floor'], yMin: number, yMax: number): readonly number[] {
  return [yMin, ...profile.map(({ y_mm }) => y_mm).filter((y) => y > yMin && y < yMax), yMax]
}

const METRE_MM = 1000

/** A line every metre, both ways, from the corner of the opening: the picture has no other scale. */
function metres(
  { floor }: DoorState,
  { xMin, xMax, yMin, yMax }: Room,
  onFloor: (x: number, y: number, lift: number) => Point,
): (readonly [Point, Point])[] {
  const steps = (from: number, to: number) =>
    Array.from(
      { length: Math.floor(to / METRE_MM) - Math.ceil(from / METRE_MM) + 1 },
      (_, i) => (Math.ceil(from / METRE_MM) + i) * METRE_MM,
    )
  const cuts = cutsOf(floor, yMin, yMax)
  return [
    ...steps(yMin, yMax).map((y) => [onFloor(xMin, y, 1), onFloor(xMax, y, 1)] as const),
    ...steps(xMin, xMax).flatMap((x) => cuts.slice(1).map((to, i) => [onFloor(x, cuts[i] as number, 1), onFloor(x, to, 1)] as const)),
  ]
}

function unseenSolids(coverage: ZoneCoverage | undefined, onFloor: (x: number, y: number, lift: number) => Point): Solid[] {
  const lettered = new Map(
    coverage?.pockets.flatMap(({ letter, exact }) => (exact?.regions ?? []).map((region) => [region, letter] as const)),
  )
  return (coverage?.exact?.regions ?? []).map(({ rings }, i) => ({
    kind: 'unseen',
    name: lettered.get(i) ?? '',
    at: { shape: 'area', rings: rings.map((ring) => ring.map(([x, y]) => onFloor(x, y, 2 * LIFT_MM))) },
  }))
}

function bodySolids(door: Door, coverage: ZoneCoverage | undefined): Solid[] {
  return bodiesToDraw(door, coverage?.pockets ?? []).flatMap(({ letter, posture, worstCase }) =>
    solidsOfBody(posture, worstCase).map((solid): Solid => ({ kind: 'body', name: letter, at: shapeOf(solid) })),
  )
}

/** A part of a body as the view in space draws it. */
export function shapeOf(solid: BodySolid): Shape {
  const { x_mm, y_mm, from_mm, to_mm, yaw_rad } = solid
  const middle: Point = [x_mm, y_mm, (from_mm + to_mm) / 2]
  const height_mm = to_mm - from_mm
  return solid.shape === 'box'
    ? { shape: 'box', middle, size_mm: [...solid.size_mm, height_mm], yaw_rad }
    : { shape: 'post', middle, radius_mm: solid.radius_mm, height_mm }
}

function sensorSolids(door: Door, state: DoorState, room: Room): Solid[] {
  const planes = beamSpots(door, state)
  return sensorSpots(door).flatMap(({ id, name, x_mm, y_mm, z_mm }): Solid[] => {
    const own = planes.filter((plane) => plane.sensor === id)
    const every = Math.max(1, Math.ceil(own.reduce((sum, { beams }) => sum + beams.length, 0) / MOST_LINES))
    const lines = own.flatMap(({ beams }) =>
      beams.filter((_, i) => i % every === 0 || i === beams.length - 1).map(({ from, to }) => [from, within(room, from, to)] as const),
    )
    return [
      { kind: 'sensor', name, at: { shape: 'box', middle: [x_mm, y_mm, z_mm], size_mm: [160, 80, 80], yaw_rad: 0 } },
      { kind: 'beams', name, at: { shape: 'lines', lines } },
    ]
  })
}

/** A beam as far as the shown floor reaches. */
function within({ xMin, xMax, yMin, yMax }: Room, from: Point, to: Point): Point {
  const along = [to[0] - from[0], to[1] - from[1], to[2] - from[2]] as const
  const most = (start: number, by: number, low: number, high: number) => (by > 0 ? (high - start) / by : by < 0 ? (low - start) / by : 1)
  const share = Math.max(0, Math.min(1, most(from[0], along[0], xMin, xMax), most(from[1], along[1], yMin, yMax)))
  return [from[0] + share * along[0], from[1] + share * along[1], from[2] + share * along[2]]
}
