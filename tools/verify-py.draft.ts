import type { Body, Door, DoorState, Obstacle, Posture, Sensor, Zone } from '@sillsight/engine'
import { cos, floorHeight, floorPieces, sin } from '@sillsight/engine'

/** Evidence as it stands in the file (docs/evidence.md), free to be changed. */
export interface Draft {
  sillsightEvidence: number
  doorSha256: string
  coverages: DraftCoverage[]
}
export interface DraftCoverage {
  zone: string
  state: string
  tolerances: Record<string, number> | null
  smallest_mm: number
  fields: string[]
  obstacles: string[]
  sights: [field: number, plane: number, first: number, faces: number[]][]
  slices: { body: string; posture: number; part: number; of: number; trees: number[][] }[]
  worstCases: { pocket: string; slice: number; x_mm: number; y_mm: number; yaw_deg: number; fails: [number, number, string][] }[]
}

export interface Tile {
  readonly x0: number
  readonly x1: number
  readonly y0: number
  readonly y1: number
}
/** A node of a tree: its token stands at `at`, its whole part of the list ends before `end`. */
export interface Node {
  readonly slice: number
  readonly tree: number
  readonly at: number
  end: number
  readonly token: number
  readonly tile: Tile
}

/** What a coverage is about, found by its ids. */
export interface Subject {
  readonly coverage: DraftCoverage
  readonly zone: Zone
  readonly state: DoorState
  readonly door: Door
}

export function subjectOf(coverage: DraftCoverage, door: Door): Subject {
  return { coverage, door, zone: byId(door.zones, coverage.zone), state: byId(door.states, coverage.state) }
}

export function byId<T extends { readonly id: string }>(list: readonly T[], id: string): T {
  const found = list.find((each) => each.id === id)
  if (found === undefined) throw new Error(`id must be known, got ${id}`)
  return found
}

/** All nodes of all trees of a coverage. */
export function nodesOf(subject: Subject): readonly Node[] {
  const roots = rootsOf(subject)
  return subject.coverage.slices.flatMap(({ trees }, slice) =>
    trees.flatMap((tokens, tree) => {
      const root = roots[tree]
      return root === undefined ? [] : nodesOfTree(tokens, root, slice, tree)
    }),
  )
}

function nodesOfTree(tokens: readonly number[], root: Tile, slice: number, tree: number): readonly Node[] {
  const waiting = [root]
  const nodes: Node[] = []
  const openSplits: { node: Node; left: number }[] = []
  for (const [at, token] of tokens.entries()) {
    const tile = waiting.pop()
    if (tile === undefined) break
    const node: Node = { slice, tree, at, end: at + 1, token, tile }
    nodes.push(node)
    if (token === -1) {
      waiting.push(...halves(tile).reverse())
      openSplits.push({ node, left: 2 })
      continue
    }
    for (let split = openSplits.at(-1); split !== undefined; split = openSplits.at(-1)) {
      split.left--
      if (split.left > 0) break
      split.node.end = at + 1
      openSplits.pop()
    }
  }
  return nodes
}

function rootsOf({ zone, state }: Subject): readonly Tile[] {
  const inside = state.floor.profile.map(({ y_mm }) => y_mm).filter((y) => y > zone.yMin_mm && y < zone.yMax_mm)
  const cuts = [zone.yMin_mm, ...inside, zone.yMax_mm]
  return cuts.slice(1).map((y1, i) => ({ x0: zone.xMin_mm, x1: zone.xMax_mm, y0: cuts[i] ?? 0, y1 }))
}

function halves({ x0, x1, y0, y1 }: Tile): [Tile, Tile] {
  if (x1 - x0 >= y1 - y0) {
    const middle = (x0 + x1) / 2
    return [
      { x0, x1: middle, y0, y1 },
      { x0: middle, x1, y0, y1 },
    ]
  }
  const middle = (y0 + y1) / 2
  return [
    { x0, x1, y0, y1: middle },
    { x0, x1, y0: middle, y1 },
  ]
}

/** Corners, middle and a few places between: where a claim about a tile is held against the truth. */
export function placesIn({ x0, x1, y0, y1 }: Tile): readonly (readonly [x: number, y: number])[] {
  const steps = [0, 0.25, 0.5, 0.75, 1]
  return steps.flatMap((i) => steps.map((j) => [x0 + i * (x1 - x0), y0 + j * (y1 - y0)] as const))
}

export interface Line {
  readonly from: readonly [number, number, number]
  readonly along: readonly [number, number, number]
  readonly length: number // of a segment; Infinity for a beam
}

/** One beam of a sensor (docs/method.md, section 1). */
export function lineOf(sensor: Sensor, plane: number, index: number): Line {
  if (sensor.kind === 'segment') {
    const segment = sensor.planes[plane]?.segments[index]
    if (segment === undefined) throw new Error(`segment must exist, got ${plane}, ${index}`)
    const [[ax, ay, az], [bx, by, bz]] = [segment.from_mm, segment.to_mm]
    const length = Math.sqrt((bx - ax) ** 2 + (by - ay) ** 2 + (bz - az) ** 2)
    return { from: segment.from_mm, along: [(bx - ax) / length, (by - ay) / length, (bz - az) / length], length }
  }
  const beams = sensor.kind === 'ranging' ? sensor.planes[plane] : undefined
  if (sensor.kind !== 'ranging' || beams === undefined) throw new Error(`plane must exist, got ${plane}`)
  if (beams.kind === 'row') {
    const place = beams.places[index]
    if (place === undefined) throw new Error(`beam must exist, got ${index}`)
    const { x_mm, y_mm, z_mm } = place
    return { from: [x_mm, y_mm, z_mm], along: [0, sin(beams.tilt_rad), -cos(beams.tilt_rad)], length: Infinity }
  }
  const { pose } = sensor
  const step = beams.beamCount === 1 ? 0 : (beams.fovMax_rad - beams.fovMin_rad) / (beams.beamCount - 1)
  const theta = beams.fovMin_rad + index * step + pose.roll_rad
  const lean = pose.tilt_rad + beams.offset_rad
  const [x, y, z] = [sin(theta), cos(theta) * sin(lean), -cos(theta) * cos(lean)]
  const [c, s] = [cos(pose.yaw_rad), sin(pose.yaw_rad)]
  return { from: [pose.x_mm, pose.y_mm, pose.z_mm], along: [x * c - y * s, x * s + y * c, z], length: Infinity }
}

/** A body that stands somewhere, its yaw one of those of its slice. */
export interface Standing {
  readonly posture: Posture
  readonly x: number
  readonly y: number
  readonly floor: number
  readonly yaw_rad: number
}

export function standing({ coverage, door, state }: Subject, slice: number, [x, y]: readonly [number, number]): Standing {
  const given = coverage.slices[slice]
  const posture = given && byId<Body>(door.bodies, given.body).postures[given.posture]
  if (given === undefined || posture === undefined) throw new Error(`slice must exist, got ${slice}`)
  const width = posture.shape === 'box' ? (posture.yawTo_rad - posture.yawFrom_rad) / given.of : 0
  const yaw_rad = posture.shape === 'box' ? posture.yawFrom_rad + width * (given.part + 0.5) : 0
  return { posture, x, y, floor: floorHeight(floorPieces(state.floor), x, y), yaw_rad }
}

/** Where a line enters a body grown by `grow_mm` all round (shrunk if negative), and by which of the faces 1 along, 2 across, 4 upright, or
 * 1 side, 4 end of a cylinder; undefined where it does not meet it ahead of its start and before its end. `clear_mm`: since when all
 * other faces were passed. */
export function entry({ from, along, length }: Line, body: Standing, grow_mm: number) {
  const { posture } = body
  const [c, s] = [cos(body.yaw_rad), sin(body.yaw_rad)]
  const [x, y, z] = [from[0] - body.x, from[1] - body.y, from[2] - body.floor]
  const height = posture.shape === 'box' ? posture.c_mm : posture.height_mm
  const stretches: { face: number; enters: number; leaves: number }[] = [slab(4, z, along[2], -grow_mm, height + grow_mm)]
  if (posture.shape === 'box') {
    const [a, b] = [posture.a_mm / 2 + grow_mm, posture.b_mm / 2 + grow_mm]
    stretches.push(slab(1, x * c + y * s, along[0] * c + along[1] * s, -a, a), slab(2, y * c - x * s, along[1] * c - along[0] * s, -b, b))
  } else {
    stretches.push(round(x, y, along, posture.radius_mm + grow_mm))
  }
  stretches.sort((one, other) => other.enters - one.enters)
  const [last, before] = stretches
  const leaves = Math.min(...stretches.map((each) => each.leaves))
  if (last === undefined || before === undefined || last.enters >= leaves || last.enters >= length || leaves <= 0) return undefined
  return { face: last.face, t: last.enters, clear_mm: last.enters - before.enters }
}

function slab(face: number, at: number, rate: number, low: number, high: number) {
  if (rate === 0) return { face, enters: low < at && at < high ? -Infinity : Infinity, leaves: Infinity }
  const [one, other] = [(low - at) / rate, (high - at) / rate]
  return { face, enters: Math.min(one, other), leaves: Math.max(one, other) }
}

function round(x: number, y: number, [dx, dy]: Line['along'], radius: number) {
  const square = dx * dx + dy * dy
  const inside = radius * radius * square - (x * dy - y * dx) ** 2
  if (square === 0) return { face: 1, enters: x * x + y * y < radius * radius ? -Infinity : Infinity, leaves: Infinity }
  const foot = -(x * dx + y * dy) / square
  const half = Math.sqrt(Math.max(0, inside)) / square
  return inside <= 0 ? { face: 1, enters: Infinity, leaves: -Infinity } : { face: 1, enters: foot - half, leaves: foot + half }
}

/** At least this far apart in the plan or in height, so that the obstacle cannot overlap the body; by circles about both. */
export function surelyApart(body: Standing, obstacle: Obstacle): boolean {
  const { posture } = body
  const around = posture.shape === 'box' ? Math.sqrt(posture.a_mm ** 2 + posture.b_mm ** 2) / 2 : posture.radius_mm
  const other = obstacle.shape === 'post' ? obstacle.radius_mm : Math.sqrt(obstacle.size_mm[0] ** 2 + obstacle.size_mm[1] ** 2) / 2
  const apart = Math.sqrt((obstacle.x_mm - body.x) ** 2 + (obstacle.y_mm - body.y) ** 2) - around - other
  const height = posture.shape === 'box' ? posture.c_mm : posture.height_mm
  return apart > 1 || obstacle.from_mm > body.floor + height + 1 || obstacle.to_mm < body.floor - 1
}
