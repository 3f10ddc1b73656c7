import type { Body, Posture } from '../src/model/body.ts'
import type { Door, DoorState, Floor } from '../src/model/door.ts'
import type { Field, RangingSensor, SegmentSensor } from '../src/model/sensor.ts'
import type { Zone } from '../src/model/zone.ts'
import { radians } from '../src/space/trigonometry.ts'
import { backgroundDistance, beamsOfPlane, reachOf } from './slow-twin-beams.ts'
import {
  distanceToFloor,
  floorHeight,
  type Line,
  overlap,
  type Passage,
  passageThrough,
  type Solid,
  shrunk,
  solidOfBody,
  solidOfObstacle,
} from './slow-twin-solids.ts'

/** One answer of the twin: every placement of the grid in row order (cell = row * columns + column, row 0 at the smallest y). */
export interface TwinCoverage {
  readonly columns: number
  readonly rows: number
  /** All postures of all bodies of the zone; a yaw range gives one for each yaw tried. */
  readonly postures: readonly TriedPosture[]
  readonly cells: readonly TwinCell[]
}
export interface TwinCell {
  readonly x_mm: number
  readonly y_mm: number
  readonly verdict: 'seen' | 'blind' | 'not free'
  readonly free: readonly boolean[] // one per posture
  readonly seen: readonly boolean[]
}
export interface TriedPosture {
  readonly body: Body
  readonly posture: number
  readonly yaw_rad: number
}

/**
 * Coverage of a zone in one state of the door, placement by placement and beam by beam, straight from docs/method.md, sections 1 to 3.
 * The leaf is open and blanking windows, which belong to its travel, do not matter. A yaw range is tried at its ends and in equal steps of at
 * most 5 degrees between. A segment that dips under the floor can never work, like one that an obstacle blocks.
 */
export function slowTwin(door: Door, zoneId: string, stateId: string): TwinCoverage {
  const zone = found(door.zones, zoneId, 'zone')
  const state = found(door.states, stateId, 'state')
  const watchers = watchersOf(door, zone, state)
  const postures = zone.bodies.flatMap((id) => triedPostures(found(door.bodies, id, 'body')))
  const obstacles = state.obstacles.map(solidOfObstacle)
  const columns = Math.ceil((zone.xMax_mm - zone.xMin_mm) / zone.pitch_mm)
  const rows = Math.ceil((zone.yMax_mm - zone.yMin_mm) / zone.pitch_mm)
  const cells = Array.from({ length: columns * rows }, (_, cell) => {
    const x_mm = zone.xMin_mm + ((cell % columns) + 0.5) * zone.pitch_mm
    const y_mm = zone.yMin_mm + (Math.floor(cell / columns) + 0.5) * zone.pitch_mm
    const standing = postures.map(({ body, posture, yaw_rad }) => ({
      solid: solidOfBody(postureOf(body, posture), yaw_rad, state.floor, x_mm, y_mm),
      reflectance: body.reflectance,
    }))
    const free = standing.map(({ solid }) => !obstacles.some((obstacle) => overlap(solid, obstacle)))
    const seen = standing.map(({ solid, reflectance }) => watchers.some((sees) => sees(solid, reflectance)))
    return { x_mm, y_mm, verdict: verdictOf(free, seen), free, seen }
  })
  return { columns, rows, postures, cells }
}

function verdictOf(free: readonly boolean[], seen: readonly boolean[]): TwinCell['verdict'] {
  if (free.some((isFree, p) => isFree && !seen[p])) return 'blind'
  return free.some((isFree) => isFree) ? 'seen' : 'not free'
}

function found<T extends { readonly id: string }>(all: readonly T[], id: string, what: string): T {
  const one = all.find((each) => each.id === id)
  if (one === undefined) throw new Error(`the door must have the ${what} ${id}, got ${all.map((each) => each.id).join(', ')}`)
  return one
}

function postureOf(body: Body, index: number): Posture {
  const posture = body.postures[index]
  if (posture === undefined) throw new Error(`body ${body.id} must have posture ${index}, got ${body.postures.length} postures`)
  return posture
}

function triedPostures(body: Body): readonly TriedPosture[] {
  return body.postures.flatMap((posture, index) => yawsOf(posture).map((yaw_rad) => ({ body, posture: index, yaw_rad })))
}

function yawsOf(posture: Posture): readonly number[] {
  if (posture.shape === 'cylinder') return [0]
  const { yawFrom_rad, yawTo_rad } = posture
  if (yawFrom_rad === yawTo_rad) return [yawFrom_rad]
  const steps = Math.ceil((yawTo_rad - yawFrom_rad) / radians(5))
  return Array.from({ length: steps + 1 }, (_, k) => (k === steps ? yawTo_rad : yawFrom_rad + (k * (yawTo_rad - yawFrom_rad)) / steps))
}

/** Says whether one plane of one field sees a body. */
type Watcher = (body: Solid, reflectance: number) => boolean

/** Every plane of every field that acts for the zone's function and does not let a standing body go too soon. */
function watchersOf(door: Door, zone: Zone, state: DoorState): readonly Watcher[] {
  return door.sensors.flatMap((sensor) => {
    if (sensor.kind === 'zone-only') return []
    return sensor.fields
      .filter((field) => counts(field, zone))
      .flatMap((field) => (sensor.kind === 'segment' ? segmentWatchers(sensor, field, state) : rangingWatchers(sensor, field, door, state)))
  })
}

function counts(field: Field, zone: Zone): boolean {
  const letsGoTooSoon = field.presenceTime_s !== undefined && zone.longestStay_s !== undefined && field.presenceTime_s < zone.longestStay_s
  return field.function === zone.function && !letsGoTooSoon
}

function rangingWatchers(sensor: RangingSensor, field: Field, door: Door, state: DoorState): readonly Watcher[] {
  const learned = found(door.states, sensor.learnedIn, 'state')
  return sensor.planes
    .filter((plane) => field.planes.includes(plane.id))
    .map((plane) => {
      const beams = beamsOfPlane(plane, sensor.pose).map((line) => ({ line, background_mm: backgroundDistance(line, learned, state) }))
      return (body, reflectance) => {
        const target = shrunk(body, sensor.spotRadius_mm)
        return hasRun(
          field.clusterBeams,
          beams.map(({ line, background_mm }) => {
            const entry = passageThrough(line, target)
            return (
              entry !== undefined &&
              entry.enters > 0 &&
              entry.enters < background_mm - sensor.backgroundMargin_mm &&
              entry.enters <= reachOf(sensor, reflectance, entry.cosine, door.extinction_per_mm) &&
              liesIn(field, entry, state.floor)
            )
          }),
        )
      }
    })
}

/** The entry point is within the field's sides, and its height above the floor under it between clearance and top. */
function liesIn(field: Field, { point: [x, y, z] }: Passage, floor: Floor): boolean {
  const height = z - floorHeight(floor, x, y)
  return (
    field.xMin_mm <= x &&
    x <= field.xMax_mm &&
    field.yMin_mm <= y &&
    y <= field.yMax_mm &&
    field.clearance_mm <= height &&
    height <= field.top_mm
  )
}

/** As many neighbours as the field asks for, one after the other. */
function hasRun(length: number, seen: readonly boolean[]): boolean {
  return seen.some((_, start) => start + length <= seen.length && seen.slice(start, start + length).every((sees) => sees))
}

function segmentWatchers(sensor: SegmentSensor, field: Field, state: DoorState): readonly Watcher[] {
  const obstacles = state.obstacles.map(solidOfObstacle)
  return sensor.planes
    .filter((plane) => field.planes.includes(plane.id))
    .map((plane) => {
      const segments = plane.segments.map(({ from_mm: [x, y, z], to_mm }) => {
        const line: Line = { from: [x, y, z], along: [to_mm[0] - x, to_mm[1] - y, to_mm[2] - z] }
        return { line, works: !obstacles.some((obstacle) => interrupts(obstacle, line)) && !dipsUnder(state.floor, line) }
      })
      return (body) =>
        hasRun(
          field.clusterBeams,
          segments.map(({ line, works }) => works && interrupts(shrunk(body, sensor.spotRadius_mm), line)),
        )
    })
}

/** The solid's interior holds a point of the segment t = 0 .. 1. */
function interrupts(solid: Solid, segment: Line): boolean {
  const passage = passageThrough(segment, solid)
  return passage !== undefined && passage.enters < 1 && passage.leaves > 0
}

function dipsUnder(floor: Floor, segment: Line): boolean {
  return distanceToFloor(segment, floor) < 1
}
