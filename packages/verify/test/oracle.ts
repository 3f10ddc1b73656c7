import type { Body, Door, DoorState, Field, Floor, Obstacle, RangingSensor, SegmentSensor, Sensor } from '@sillsight/engine'

/*
 * Sections 1 and 2 of docs/method.md once more, for one placement at a time and as plainly as possible: the judge of whether a claim holds there. It
 * shares no line with the verifier (which reads the door file itself and speaks of whole tiles) and none with the engine.
 */

type Vector = readonly [x: number, y: number, z: number]
export interface Line {
  readonly from: Vector
  readonly along: Vector
  readonly length: number
}
/** Inside where normal . point < offset, for each; a cylinder is what stands within its radius of the axis besides. */
interface Solid {
  readonly faces: readonly { readonly normal: Vector; readonly offset: number; readonly bit: number }[]
  readonly round?: { readonly x: number; readonly y: number; readonly radius: number }
}

/** A body at its place. */
export interface Standing {
  readonly body: Body
  readonly posture: number
  readonly yaw_rad: number
  readonly x: number
  readonly y: number
}

const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const times = (m: readonly Vector[], v: Vector): Vector => m.map((row) => dot(row, v)) as unknown as Vector
const about = {
  z: (a: number): readonly Vector[] => [
    [Math.cos(a), -Math.sin(a), 0],
    [Math.sin(a), Math.cos(a), 0],
    [0, 0, 1],
  ],
  x: (a: number): readonly Vector[] => [
    [1, 0, 0],
    [0, Math.cos(a), -Math.sin(a)],
    [0, Math.sin(a), Math.cos(a)],
  ],
}
export const pointAt = ({ from, along }: Line, t: number): Vector => [
  from[0] + t * along[0],
  from[1] + t * along[1],
  from[2] + t * along[2],
]

/** The turns by which a sensor is off, on top of its pose. */
export interface Turns {
  readonly yaw: number
  readonly tilt: number
  readonly roll: number
}
const STRAIGHT: Turns = { yaw: 0, tilt: 0, roll: 0 }

/** All beams of a plane; a row turns about the mean of its places. */
export function linesOf(sensor: RangingSensor | SegmentSensor, p: number, { yaw, tilt, roll }: Turns = STRAIGHT): readonly Line[] {
  const plane = sensor.planes[p]
  if (plane === undefined) throw new Error(`p must be a plane, got ${p}`)
  if (!('kind' in plane))
    return plane.segments.map(({ from_mm: a, to_mm: b }) => {
      const length = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2])
      return { from: a, along: [(b[0] - a[0]) / length, (b[1] - a[1]) / length, (b[2] - a[2]) / length], length }
    })
  const turned = (lean: number, turn: number, heading: number, v: Vector) =>
    times(about.z(heading), times(about.x(lean), times(aboutY(turn), v)))
  if (plane.kind === 'row') {
    const n = plane.places.length
    const mean = (of: 'x_mm' | 'y_mm' | 'z_mm') => plane.places.reduce((sum, place) => sum + place[of], 0) / n
    const [mx, my, mz] = [mean('x_mm'), mean('y_mm'), mean('z_mm')]
    // a place is turned as the whole row is: from how it hangs as written to how it hangs when off
    const asWritten = (v: Vector): Vector => times(about.x(-plane.tilt_rad), v)
    return plane.places.map(({ x_mm, y_mm, z_mm }) => {
      const [x, y, z] = turned(plane.tilt_rad + tilt, roll, yaw, asWritten([x_mm - mx, y_mm - my, z_mm - mz]))
      return { from: [mx + x, my + y, mz + z], along: turned(plane.tilt_rad + tilt, roll, yaw, [0, 0, -1]), length: Infinity }
    })
  }
  const { pose } = sensor as RangingSensor
  return Array.from({ length: plane.beamCount }, (_, j) => {
    const theta =
      plane.beamCount === 1 ? plane.fovMin_rad : plane.fovMin_rad + (j * (plane.fovMax_rad - plane.fovMin_rad)) / (plane.beamCount - 1)
    const along = turned(pose.tilt_rad + tilt + plane.offset_rad, theta + pose.roll_rad + roll, pose.yaw_rad + yaw, [0, 0, -1])
    return {
      from: [pose.x_mm, pose.y_mm, pose.z_mm],
      along: along.map((c) => (Math.abs(c) < 1e-15 ? 0 : c)) as unknown as Vector,
      length: Infinity,
    }
  })
}

/** Carries (0, 0, -1) to (sin a, 0, -cos a), as a beam's own angle does. */
function aboutY(a: number): readonly Vector[] {
  return [
    [Math.cos(a), 0, -Math.sin(a)],
    [0, 1, 0],
    [Math.sin(a), 0, Math.cos(a)],
  ]
}

export function floorAt({ profile, slopeX }: Floor, x: number, y: number): number {
  let z = profile[0]?.z_mm ?? 0
  for (const [i, point] of profile.entries()) {
    const next = profile[i + 1]
    if (y < point.y_mm) break
    z = next === undefined ? point.z_mm : point.z_mm + (next.z_mm - point.z_mm) * Math.min(1, (y - point.y_mm) / (next.y_mm - point.y_mm))
  }
  return z + slopeX * x
}

function box(x: number, y: number, half: readonly [number, number], yaw: number, from: number, to: number): Solid {
  const [u, v]: readonly [Vector, Vector] = [
    [Math.cos(yaw), Math.sin(yaw), 0],
    [-Math.sin(yaw), Math.cos(yaw), 0],
  ]
  const level = ([u, v] as const).flatMap((n, k) => {
    const middle = n[0] * x + n[1] * y
    return [
      { normal: n, offset: middle + half[k as 0 | 1], bit: k + 1 },
      { normal: [-n[0], -n[1], 0] as const, offset: -middle + half[k as 0 | 1], bit: k + 1 },
    ]
  })
  return { faces: [...level, ...ends(from, to)] }
}

function ends(from: number, to: number) {
  return [
    { normal: [0, 0, 1] as const, offset: to, bit: 4 },
    { normal: [0, 0, -1] as const, offset: -from, bit: 4 },
  ]
}

function solidOfBody({ body, posture, yaw_rad, x, y }: Standing, floor: Floor, spot: number): Solid {
  const shape = body.postures[posture]
  if (shape === undefined) throw new Error(`posture must be one of ${body.postures.length}, got ${posture}`)
  const z = floorAt(floor, x, y)
  if (shape.shape === 'cylinder')
    return { faces: ends(z + spot, z + shape.height_mm - spot), round: { x, y, radius: shape.radius_mm - spot } }
  return box(x, y, [shape.a_mm / 2 - spot, shape.b_mm / 2 - spot], yaw_rad, z + spot, z + shape.c_mm - spot)
}

function solidOfObstacle(obstacle: Obstacle): Solid {
  const { x_mm: x, y_mm: y, from_mm, to_mm } = obstacle
  if (obstacle.shape === 'post') return { faces: ends(from_mm, to_mm), round: { x, y, radius: obstacle.radius_mm } }
  return box(x, y, [obstacle.size_mm[0] / 2, obstacle.size_mm[1] / 2], obstacle.yaw_rad, from_mm, to_mm)
}

interface Way {
  readonly enters: number
  readonly leaves: number
  /** Faces that are entered within `near` of the last one, with the cosine of each. */
  readonly by: readonly { readonly bit: number; readonly cosine: number; readonly at: number }[]
}

function wayThrough(line: Line, { faces, round }: Solid): Way {
  let [enters, leaves] = [-Infinity, Infinity]
  const by: { bit: number; cosine: number; at: number }[] = []
  for (const { normal, offset, bit } of faces) {
    const [speed, depth] = [dot(normal, line.along), offset - dot(normal, line.from)]
    if (Math.abs(speed) < 1e-14) {
      if (depth <= 0) leaves = -Infinity
    } else if (speed > 0) leaves = Math.min(leaves, depth / speed)
    else {
      enters = Math.max(enters, depth / speed)
      by.push({ bit, cosine: -speed, at: depth / speed })
    }
  }
  if (round !== undefined) {
    const [x, y, dx, dy] = [line.from[0] - round.x, line.from[1] - round.y, line.along[0], line.along[1]]
    const [a, b, c] = [dx * dx + dy * dy, x * dx + y * dy, x * x + y * y - round.radius * round.radius]
    const square = b * b - a * c
    if (!(round.radius > 0) || (a < 1e-20 ? c >= 0 : square <= 0)) leaves = -Infinity
    else if (a >= 1e-20) {
      const at = (-b - Math.sqrt(square)) / a
      enters = Math.max(enters, at)
      leaves = Math.min(leaves, (-b + Math.sqrt(square)) / a)
      by.push({ bit: 1, at, cosine: Math.sqrt(square) / round.radius })
    }
  }
  return { enters, leaves, by: by.filter(({ at }) => at > enters - 1e-7) }
}

/** Whether two things overlap by more than `depth`: sampled edges and corners will not do, so by the planes that could part them. */
export function overlap(standing: Standing, floor: Floor, obstacle: Obstacle): number {
  const shape = standing.body.postures[standing.posture]
  if (shape === undefined) throw new Error('posture must be there, got none')
  const z = floorAt(floor, standing.x, standing.y)
  const height = shape.shape === 'box' ? shape.c_mm : shape.height_mm
  const heights = Math.min(z + height - obstacle.from_mm, obstacle.to_mm - z)
  const [x, y] = [standing.x - obstacle.x_mm, standing.y - obstacle.y_mm]
  const flat = (of: { half: readonly [number, number]; yaw: number } | { radius: number }, nx: number, ny: number) =>
    'radius' in of
      ? of.radius
      : of.half[0] * Math.abs(nx * Math.cos(of.yaw) + ny * Math.sin(of.yaw)) +
        of.half[1] * Math.abs(ny * Math.cos(of.yaw) - nx * Math.sin(of.yaw))
  const one =
    shape.shape === 'box' ? { half: [shape.a_mm / 2, shape.b_mm / 2] as const, yaw: standing.yaw_rad } : { radius: shape.radius_mm }
  const other =
    obstacle.shape === 'box'
      ? { half: [obstacle.size_mm[0] / 2, obstacle.size_mm[1] / 2] as const, yaw: obstacle.yaw_rad }
      : { radius: obstacle.radius_mm }
  let least = heights
  for (let i = 0; i < 720; i++) {
    const a = (i * Math.PI) / 720
    least = Math.min(least, partedBy(a))
  }
  for (const each of [one, other]) if ('yaw' in each) least = Math.min(least, partedBy(each.yaw), partedBy(each.yaw + Math.PI / 2))
  return least

  function partedBy(a: number): number {
    const [nx, ny] = [Math.cos(a), Math.sin(a)]
    return flat(one, nx, ny) + flat(other, nx, ny) - Math.abs(x * nx + y * ny)
  }
}

function groundOf(line: Line, floor: Floor): number {
  const above = (t: number) => {
    const [x, y, z] = pointAt(line, t)
    return z - floorAt(floor, x, y)
  }
  if (above(0) < -TOUCH) return 0
  const bends = floor.profile.map(({ y_mm }) => (y_mm - line.from[1]) / line.along[1]).filter((t) => Number.isFinite(t) && t > 0)
  const stops = [0, ...bends.sort((a, b) => a - b), 1e7]
  for (const [i, end] of stops.entries()) {
    const start = stops[i - 1] ?? 0
    if (above(end) < -TOUCH) return start + ((end - start) * Math.max(0, above(start))) / (Math.max(0, above(start)) - above(end))
  }
  return Infinity
}

const TOUCH = 1e-6

export function backgroundOf(line: Line, state: DoorState): number {
  const shrunk = (solid: Solid): Solid => ({
    faces: solid.faces.map((face) => ({ ...face, offset: face.offset - TOUCH })),
    ...(solid.round ? { round: { ...solid.round, radius: solid.round.radius - TOUCH } } : {}),
  })
  const ways = state.obstacles
    .map((obstacle) => wayThrough(line, shrunk(solidOfObstacle(obstacle))))
    .filter((way) => way.enters < way.leaves && way.leaves > 0)
  return Math.min(groundOf(line, state.floor), ...ways.map(({ enters }) => Math.max(0, enters)))
}

function reachOf(sensor: RangingSensor, rho: number, cosine: number, sigma: number): number {
  if (!(cosine > 0)) return 0
  const clear = sensor.rangeRef_mm * Math.sqrt((rho * cosine) / sensor.reflectanceRef)
  let [low, high] = [0, clear]
  for (let i = 0; i < 80 && sigma > 0; i++) {
    const middle = (low + high) / 2
    if (middle * Math.exp(sigma * middle) <= clear) low = middle
    else high = middle
  }
  return Math.min(sensor.maxRange_mm, sigma > 0 ? low : clear)
}

/** By how much each rule holds (above 0) or fails (below), in mm of whatever decides, and the faces that the beam enters. */
export interface Answer {
  readonly by: Readonly<Record<Rule, number>>
  /** The least of them: whether the beam sees. */
  readonly least: number
  readonly faces: number
}
/** As in worst cases: meets, before the background, within reach, within sides, not below clearance, not above top. */
export type Rule = 'm' | 'b' | 'r' | 's' | 'c' | 't'

export interface Scene {
  readonly door: Door
  readonly state: DoorState
  readonly turns?: ReadonlyMap<Sensor, Turns>
}

const known = new WeakMap<object, Map<string, readonly Line[]>>()
const backgrounds = new WeakMap<Line, Map<string, number>>()

/** Beams of a plane, made once for each door. */
function linesIn({ door, turns }: Scene, sensor: RangingSensor | SegmentSensor, p: number): readonly Line[] {
  const planes = known.get(door) ?? new Map<string, readonly Line[]>()
  known.set(door, planes)
  const key = `${sensor.id}/${p}`
  const lines = planes.get(key) ?? linesOf(sensor, p, turns?.get(sensor))
  planes.set(key, lines)
  return lines
}

function backgroundIn({ door, state }: Scene, sensor: RangingSensor | SegmentSensor, line: Line): number {
  const inStates = backgrounds.get(line) ?? new Map<string, number>()
  backgrounds.set(line, inStates)
  const found = inStates.get(state.id)
  if (found !== undefined) return found
  const learned = sensor.kind === 'ranging' ? door.states.find(({ id }) => id === sensor.learnedIn) : undefined
  const background = Math.min(backgroundOf(line, state), learned ? backgroundOf(line, learned) : Infinity)
  inStates.set(state.id, background)
  return background
}

export function beamCountOf(scene: Scene, sensor: RangingSensor | SegmentSensor, p: number): number {
  return linesIn(scene, sensor, p).length
}

/** One beam and one body at one place. */
export function answerOf(
  scene: Scene,
  sensor: RangingSensor | SegmentSensor,
  field: Field,
  p: number,
  b: number,
  standing: Standing,
): Answer {
  const line = linesIn(scene, sensor, p)[b]
  if (line === undefined) throw new Error(`b must be a beam, got ${b}`)
  const { floor } = scene.state
  const { enters, leaves, by } = wayThrough(line, solidOfBody(standing, floor, sensor.spotRadius_mm))
  const background = backgroundIn(scene, sensor, line)
  const all = { m: enters < leaves ? leaves - enters : -1e9, b: Infinity, r: Infinity, s: Infinity, c: Infinity, t: Infinity }
  if (sensor.kind === 'segment') {
    const works = background < line.length - TOUCH ? background - line.length : Infinity
    return answer({ ...all, m: Math.min(all.m, line.length - enters, leaves), b: works }, 0)
  }
  if (all.m < 0) return answer(all, 0)
  const [x, y, z] = pointAt(line, enters)
  const height = z - floorAt(floor, x, y)
  const reach = reachOf(sensor, standing.body.reflectance, Math.min(...by.map((each) => each.cosine)), scene.door.extinction_per_mm)
  const faces = by.reduce((sum, { bit, at }) => (at > enters - 1e-9 ? sum | bit : sum), 0)
  const rules = {
    m: Math.min(all.m, enters),
    b: background - sensor.backgroundMargin_mm - enters,
    r: reach - enters,
    s: Math.min(x - field.xMin_mm, field.xMax_mm - x, y - field.yMin_mm, field.yMax_mm - y),
    c: height - field.clearance_mm,
    t: field.top_mm - height,
  }
  return answer(rules, faces)
}

function answer(by: Answer['by'], faces: number): Answer {
  return { by, least: Math.min(...Object.values(by)), faces }
}
