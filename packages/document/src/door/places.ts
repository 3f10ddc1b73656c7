import { type Body, cos, type DoorState, floorHeight, floorPieces, type Obstacle, type Sensor, sin, type Zone } from '@sillsight/engine'
import type { Remarks } from '../remarks.ts'
import { shownText } from '../shown.ts'

type Point = readonly [x_mm: number, y_mm: number, z_mm: number]
type Origin = { readonly path: string; readonly at: Point }

/** The parts of a door under the numbers of the file: undefined where a part could not be put together. */
interface Parts {
  readonly states: readonly DoorState[]
  readonly sensors: readonly (Sensor | undefined)[]
  readonly bodies: readonly Body[]
  readonly zones: readonly (Zone | undefined)[]
}

/** Refuses what cannot be: a sensor in a wall, a post or the floor, and a zone that no sensor could ever reach. */
export function checkPlaces({ states, sensors, bodies, zones }: Parts, remarks: Remarks): void {
  for (const [i, sensor] of sensors.entries()) {
    const origins = sensor === undefined ? [] : originsOf(sensor, `sensors/${i}`)
    for (const state of states) checkOrigins(origins, state, remarks)
  }
  const bodyReach_mm = Math.max(0, ...bodies.flatMap(({ postures }) => postures.map(halfDiagonal_mm)))
  const reachesAny = (zone: Zone) => sensors.some((sensor) => sensor === undefined || reaches(sensor, zone, bodyReach_mm))
  for (const [i, zone] of zones.entries()) {
    if (sensors.length > 0 && zone !== undefined && zone.purpose !== 'must-not-see' && !reachesAny(zone))
      remarks.issue({
        code: 'contradiction',
        path: `zones/${i}`,
        expected: 'a zone within the reach of a sensor',
        got: whereIs(zone),
        repair: 'check its coordinates and signs',
      })
  }
}

function checkOrigins(origins: readonly Origin[], { obstacles, floor, name }: DoorState, remarks: Remarks): void {
  const pieces = floorPieces(floor)
  const reported = new Set<string>()
  for (const { path, at } of origins) {
    const around = obstacles.find((obstacle) => isInside(at, obstacle))
    const where = around !== undefined ? `inside of ${shownText(around.name)}` : isUnder(at, pieces) ? 'under the floor' : undefined
    if (where === undefined || reported.has(path)) continue
    reported.add(path)
    const got = `(${at.map((c) => Math.round(c)).join(', ')}), ${where} in state ${shownText(name)}`
    remarks.issue({ code: 'contradiction', path, expected: 'a place in the open', got })
  }
}

function originsOf(sensor: Sensor, path: string): readonly Origin[] {
  if (sensor.kind === 'zone-only') return []
  if (sensor.kind === 'segment')
    return sensor.planes.flatMap(({ segments }, i) =>
      segments.flatMap(({ from_mm, to_mm }) => [from_mm, to_mm].map((at) => ({ path: `${path}/planes/${i}`, at }))),
    )
  const { pose } = sensor
  return sensor.planes.flatMap((plane, i): readonly Origin[] =>
    plane.kind === 'fan'
      ? [{ path, at: [pose.x_mm, pose.y_mm, pose.z_mm] }]
      : plane.places.map(({ x_mm, y_mm, z_mm }) => ({ path: `${path}/planes/${i}`, at: [x_mm, y_mm, z_mm] })),
  )
}

/** Strictly inside: a sensor that is screwed onto a face has its origin on it. */
function isInside([x, y, z]: Point, obstacle: Obstacle): boolean {
  if (z <= obstacle.from_mm || z >= obstacle.to_mm) return false
  const dx = x - obstacle.x_mm
  const dy = y - obstacle.y_mm
  if (obstacle.shape === 'post') return dx * dx + dy * dy < obstacle.radius_mm * obstacle.radius_mm
  const [along, across] = obstacle.size_mm
  const c = cos(obstacle.yaw_rad)
  const s = sin(obstacle.yaw_rad)
  return Math.abs(dx * c + dy * s) < along / 2 && Math.abs(dy * c - dx * s) < across / 2
}

function isUnder([x, y, z]: Point, pieces: ReturnType<typeof floorPieces>): boolean {
  return z < floorHeight(pieces, x, y)
}

type Rectangle = Pick<Zone, 'xMin_mm' | 'xMax_mm' | 'yMin_mm' | 'yMax_mm'>

/** Generous: only what no sensor could reach in the plan, whatever its aim, counts as out of reach. */
function reaches(sensor: Sensor, zone: Rectangle, bodyReach_mm: number): boolean {
  if (sensor.kind === 'zone-only') return overlaps(sensor, zone, 0)
  const reach_mm = bodyReach_mm + (sensor.kind === 'ranging' ? sensor.maxRange_mm : 0)
  const origins = originsOf(sensor, '')
  const xs = origins.map(({ at }) => at[0])
  const ys = origins.map(({ at }) => at[1])
  const all = { xMin_mm: least(xs), xMax_mm: -least(xs.map((x) => -x)), yMin_mm: least(ys), yMax_mm: -least(ys.map((y) => -y)) }
  return overlaps(all, zone, reach_mm)
}

function least(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b), Infinity)
}

function overlaps(a: Rectangle, b: Rectangle, within_mm: number): boolean {
  return (
    a.xMin_mm <= b.xMax_mm + within_mm &&
    b.xMin_mm <= a.xMax_mm + within_mm &&
    a.yMin_mm <= b.yMax_mm + within_mm &&
    b.yMin_mm <= a.yMax_mm + within_mm
  )
}

function halfDiagonal_mm(posture: Body['postures'][number]): number {
  return posture.shape === 'cylinder' ? posture.radius_mm : Math.sqrt(posture.a_mm * posture.a_mm + posture.b_mm * posture.b_mm) / 2
}

function whereIs({ xMin_mm, xMax_mm, yMin_mm, yMax_mm }: Rectangle): string {
  return `x ${xMin_mm} to ${xMax_mm}, y ${yMin_mm} to ${yMax_mm}`
}
