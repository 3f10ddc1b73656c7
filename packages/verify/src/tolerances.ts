import type { Beam, Plane, Sensor, Tolerances, Vector } from './plain.ts'
import { cosineOf, sineOf } from './sine.ts'

/** How far things may be off from what is written (docs/evidence.md, "Tolerances"). All 0 where a door is checked as written. */
export const AS_WRITTEN: Tolerances = { length: 0, position: 0, tilt: 0, roll: 0, yaw: 0, floor: 0, range: 0 }

const RADIANS = Math.PI / 180

/** How far the points of a beam up to the distance `far` can move along the doorway's x, y and z: *off*. */
export function offOf(tolerances: Tolerances, sensor: Sensor, plane: Plane, beam: Beam, far: number): Vector {
  const { position } = tolerances
  if (sensor.segments) return [position, position, position]
  const reached = turned(tolerances, plane, scaled(beam.along, far))
  const place = turned(tolerances, plane, difference(beam.from, plane.middle))
  return [position + reached[0] + place[0], position + reached[1] + place[1], position + reached[2] + place[2]]
}

/** What rounding may shift a beam against a body counts like a tolerance: it grows as it must where a beam all but runs along a face. */
export function rounded([x, y, z]: Vector): Vector {
  return [x + ROUNDING, y + ROUNDING, z + ROUNDING]
}

const ROUNDING = 1e-9

/** How far the beam's direction can move: *e_d* along the doorway's axes, before any slice of yaws. */
export function directionOffOf(tolerances: Tolerances, sensor: Sensor, plane: Plane, beam: Beam): Vector {
  if (!sensor.segments) return turned(tolerances, plane, beam.along)
  const both = (2 * tolerances.position) / beam.length
  return [both, both, both]
}

/** By how much the end of v moves in small turns about the axes of yaw, tilt and roll: first order by components, the rest S^2 / 2 |v|. */
function turned({ yaw, tilt, roll }: Tolerances, { yaw_deg, lean_deg }: Plane, v: Vector): Vector {
  const [c, s] = [cosineOf(yaw_deg), sineOf(yaw_deg)]
  const turns = [
    { by: yaw * RADIANS, e: [0, 0, 1] },
    { by: tilt * RADIANS, e: [c, s, 0] },
    { by: roll * RADIANS, e: [-s * cosineOf(lean_deg), c * cosineOf(lean_deg), sineOf(lean_deg)] },
  ] as const
  const sum = turns.reduce((all, { by }) => all + by, 0)
  const rest = ((sum * sum) / 2) * lengthOf(v)
  const moved = [rest, rest, rest] as [number, number, number]
  for (const { by, e } of turns) {
    moved[0] += by * Math.abs(e[1] * v[2] - e[2] * v[1])
    moved[1] += by * Math.abs(e[2] * v[0] - e[0] * v[2])
    moved[2] += by * Math.abs(e[0] * v[1] - e[1] * v[0])
  }
  return moved
}

/** The range that a sensor has at least: a share of what its values say. */
export function weakest(sensor: Sensor, { range }: Tolerances): Sensor {
  const share = 1 - range / 100
  return { ...sensor, maxRange: sensor.maxRange * share, rangeRef: sensor.rangeRef * share }
}

/** The extent of a box with these half sizes along the axes of a body that is turned by `yaw_deg`. */
export function alongAxes([x, y, z]: Vector, yaw_deg: number): Vector {
  const [c, s] = [Math.abs(cosineOf(yaw_deg)), Math.abs(sineOf(yaw_deg))]
  return [x * c + y * s, x * s + y * c, z]
}

export function lengthOf([x, y, z]: Vector): number {
  return Math.sqrt(x * x + y * y + z * z)
}

function scaled([x, y, z]: Vector, by: number): Vector {
  return [x * by, y * by, z * by]
}

function difference(a: Vector, b: Vector): Vector {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}
