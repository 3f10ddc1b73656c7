import type { DoorState } from '../src/model/door.ts'
import type { FanPlane, Pose, RangingSensor, RowPlane } from '../src/model/sensor.ts'
import { cos, exp, sin } from '../src/space/trigonometry.ts'
import { distanceToFloor, type Line, passageThrough, solidOfObstacle, type Vector } from './slow-twin-solids.ts'

/** The beams of one plane in the order of their indices (docs/method.md, section 1). Doorway frame, mm. */
export function beamsOfPlane(plane: FanPlane | RowPlane, pose: Pose): readonly Line[] {
  return plane.kind === 'row' ? beamsOfRow(plane) : beamsOfFan(plane, pose)
}

function beamsOfFan(plane: FanPlane, pose: Pose): readonly Line[] {
  const { beamCount: n, fovMin_rad, fovMax_rad, offset_rad } = plane
  return Array.from({ length: n }, (_, j) => {
    const theta = n === 1 ? fovMin_rad : fovMin_rad + (j * (fovMax_rad - fovMin_rad)) / (n - 1)
    const inPlane: Vector = [sin(theta + pose.roll_rad), 0, -cos(theta + pose.roll_rad)]
    const along = turnedAboutZ(turnedAboutX(inPlane, pose.tilt_rad + offset_rad), pose.yaw_rad)
    return { from: [pose.x_mm, pose.y_mm, pose.z_mm], along }
  })
}

function beamsOfRow(plane: RowPlane): readonly Line[] {
  const along = turnedAboutX([0, 0, -1], plane.tilt_rad)
  return plane.places.map(({ x_mm, y_mm, z_mm }) => ({ from: [x_mm, y_mm, z_mm], along }))
}

/** Rx of section 1. */
function turnedAboutX([x, y, z]: Vector, angle_rad: number): Vector {
  return [x, y * cos(angle_rad) - z * sin(angle_rad), y * sin(angle_rad) + z * cos(angle_rad)]
}

/** Rz of section 1. */
function turnedAboutZ([x, y, z]: Vector, angle_rad: number): Vector {
  return [x * cos(angle_rad) - y * sin(angle_rad), x * sin(angle_rad) + y * cos(angle_rad), z]
}

/**
 * The distance to what the sensor takes for the background: learned in one state of the door, and whatever stands nearer in the present one
 * blocks the beam as well.
 */
export function backgroundDistance(beam: Line, learned: DoorState, present: DoorState): number {
  return Math.min(distanceToSurroundings(beam, learned), distanceToSurroundings(beam, present))
}

/** To the nearest obstacle or the floor; 0 from inside an obstacle or under the floor, Infinity if nothing is in the way. */
export function distanceToSurroundings(beam: Line, state: DoorState): number {
  const distances = state.obstacles.map((obstacle) => {
    const passage = passageThrough(beam, solidOfObstacle(obstacle))
    if (passage === undefined || passage.leaves <= 0) return Infinity
    return Math.max(passage.enters, 0)
  })
  return Math.min(...distances, distanceToFloor(beam, state.floor))
}

/**
 * How far a body of this reflectance is seen at this incidence: min(maxRange, R) with rho cos i exp(-2 sigma R) / R^2 = rhoRef / rangeRef^2.
 * With the root taken on both sides the equation is R exp(sigma R) = rangeRef sqrt(rho cos i / rhoRef), and its left side rises with R.
 */
export function reachOf(sensor: RangingSensor, reflectance: number, cosine: number, extinction_per_mm: number): number {
  const inClearAir_mm = sensor.rangeRef_mm * Math.sqrt((reflectance * cosine) / sensor.reflectanceRef)
  let [low, high] = [0, inClearAir_mm]
  if (extinction_per_mm === 0) low = inClearAir_mm
  for (let middle = (low + high) / 2; low < middle && middle < high; middle = (low + high) / 2) {
    if (middle * exp(extinction_per_mm * middle) <= inClearAir_mm) low = middle
    else high = middle
  }
  return Math.min(sensor.maxRange_mm, low)
}
