import type { BeamPlane, FanPlane, Pose, RangingSensor, SegmentSensor } from '../model/sensor.ts'
import { cos, sin } from '../space/trigonometry.ts'

/** Beams of one sensor, one array per quantity; index i is the same beam in all. Doorway frame, mm; directions are unit vectors. */
export interface Beams {
  readonly count: number
  readonly originX: Float64Array
  readonly originY: Float64Array
  readonly originZ: Float64Array
  readonly directionX: Float64Array
  readonly directionY: Float64Array
  readonly directionZ: Float64Array
  /** Where a segment ends; Infinity for a ranging beam. */
  readonly length: Float64Array
  /** Planes in the sensor's order: beams `first` up to (not with) `end` are neighbours. */
  readonly planes: readonly { readonly id: string; readonly first: number; readonly end: number }[]
}

/** The beams of a ranging sensor or the segments of a light grid (docs/method.md, sections 1 and 2). */
export function beamsOf(sensor: RangingSensor | SegmentSensor): Beams {
  const counts = sensor.kind === 'segment' ? sensor.planes.map((p) => p.segments.length) : sensor.planes.map(planeCount)
  const beams = emptyBeams(sensor.planes, counts)
  if (sensor.kind === 'segment') writeSegments(beams, sensor)
  else for (const [i, plane] of sensor.planes.entries()) writePlane(beams, plane, sensor.pose, (beams.planes[i] as { first: number }).first)
  return beams
}

/** The same plane with other angles; used to ask what a beam at every angle, or a plane at every offset, would see. */
export function beamsOfFans(pose: Pose, fans: readonly FanPlane[]): Beams {
  const beams = emptyBeams(
    fans,
    fans.map((f) => f.beamCount),
  )
  for (const [i, fan] of fans.entries()) writePlane(beams, fan, pose, (beams.planes[i] as { first: number }).first)
  return beams
}

function planeCount(plane: BeamPlane): number {
  return plane.kind === 'fan' ? plane.beamCount : plane.places.length
}

function emptyBeams(planes: readonly { readonly id: string }[], counts: readonly number[]): Beams {
  let count = 0
  const ranges = planes.map(({ id }, i) => {
    const first = count
    count += counts[i] as number
    return { id, first, end: count }
  })
  const column = () => new Float64Array(count)
  return {
    count,
    originX: column(),
    originY: column(),
    originZ: column(),
    directionX: column(),
    directionY: column(),
    directionZ: column(),
    length: new Float64Array(count).fill(Infinity),
    planes: ranges,
  }
}

/** A beam at `theta` looks along Rz(yaw) Rx(tilt + offset) (sin(theta + roll), 0, -cos(theta + roll)): docs/method.md, section 1. */
function writePlane(beams: Beams, plane: BeamPlane, pose: Pose, first: number): void {
  if (plane.kind === 'fan') {
    const step_rad = plane.beamCount > 1 ? (plane.fovMax_rad - plane.fovMin_rad) / (plane.beamCount - 1) : 0
    const lean = pose.tilt_rad + plane.offset_rad
    const sinLean = sin(lean)
    const cosLean = cos(lean)
    const cosYaw = cos(pose.yaw_rad)
    const sinYaw = sin(pose.yaw_rad)
    for (let j = 0; j < plane.beamCount; j++) {
      const theta = plane.fovMin_rad + j * step_rad + pose.roll_rad
      const across = sin(theta)
      const down = cos(theta)
      const outward = down * sinLean
      write(
        beams,
        first + j,
        pose.x_mm,
        pose.y_mm,
        pose.z_mm,
        across * cosYaw - outward * sinYaw,
        across * sinYaw + outward * cosYaw,
        -down * cosLean,
      )
    }
    return
  }
  for (const [j, place] of plane.places.entries())
    write(beams, first + j, place.x_mm, place.y_mm, place.z_mm, 0, sin(plane.tilt_rad), -cos(plane.tilt_rad))
}

function writeSegments(beams: Beams, sensor: SegmentSensor): void {
  let i = 0
  for (const plane of sensor.planes)
    for (const { from_mm: p, to_mm: q } of plane.segments) {
      const dx = q[0] - p[0]
      const dy = q[1] - p[1]
      const dz = q[2] - p[2]
      const length = Math.sqrt(dx * dx + dy * dy + dz * dz)
      if (!(length > 0)) throw new Error(`segment of ${sensor.id} must have two ends, got both at ${p.join(', ')}`)
      write(beams, i, p[0], p[1], p[2], dx / length, dy / length, dz / length)
      beams.length[i] = length
      i++
    }
}

function write(beams: Beams, i: number, ox: number, oy: number, oz: number, dx: number, dy: number, dz: number): void {
  beams.originX[i] = ox
  beams.originY[i] = oy
  beams.originZ[i] = oz
  beams.directionX[i] = exact(dx)
  beams.directionY[i] = exact(dy)
  beams.directionZ[i] = exact(dz)
}

/**
 * What is left of a component that should be 0 when angles and their sines are rounded (6e-17 of a quarter turn). As 0, a level beam is level and
 * a graze along a face is one from both sides of the door; otherwise it "enters" what it runs along. 1e-15 moves a beam by 1e-8 mm over 10 km.
 */
function exact(component: number): number {
  return component < 1e-15 && component > -1e-15 ? 0 : component
}
