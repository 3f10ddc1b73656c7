import type { Tolerances } from '../model/door.ts'
import type { RangingSensor, SegmentSensor } from '../model/sensor.ts'
import type { Beams } from '../seeing/beams.ts'
import { cos, sin } from '../space/trigonometry.ts'

export const NO_TOLERANCES: Tolerances = { length_mm: 0, position_mm: 0, tilt_rad: 0, roll_rad: 0, yaw_rad: 0, floor_mm: 0, range: 0 }

/** How far each beam may stand off its nominal line, per doorway axis, mm; and how far its direction may be off, per unit of length. */
export interface Off {
  readonly x: Float64Array
  readonly y: Float64Array
  readonly z: Float64Array
  readonly directionX: Float64Array
  readonly directionY: Float64Array
  readonly directionZ: Float64Array
}

/**
 * Bounds on how far the points of a beam up to `until_mm` can move over all tolerances of position and aim.
 *
 * A turn by a small angle about an axis e moves the point v from the origin by angle * |e x v|, component by component; yaw turns about z,
 * tilt about the level axis of the housing, roll about the normal of the plane. What the three leave out together is at most half the
 * square of their sum, times |v| (second derivatives of a turn are at most 1).
 *
 * @param until_mm one distance per beam: farther points are of no interest
 */
export function offOf(sensor: RangingSensor | SegmentSensor, beams: Beams, tolerances: Tolerances, until_mm: Float64Array): Off {
  const column = () => new Float64Array(beams.count)
  const off = { x: column(), y: column(), z: column(), directionX: column(), directionY: column(), directionZ: column() }
  const { position_mm, tilt_rad, roll_rad, yaw_rad } = tolerances
  if (position_mm + tilt_rad + roll_rad + yaw_rad === 0) return off
  for (const { id, first, end } of beams.planes) {
    const turn = sensor.kind === 'ranging' ? planeTurns(sensor, id, tolerances) : undefined
    const middle = [mean(beams.originX, first, end), mean(beams.originY, first, end), mean(beams.originZ, first, end)] as const
    for (let i = first; i < end; i++) {
      const v = [beams.directionX[i] as number, beams.directionY[i] as number, beams.directionZ[i] as number] as const
      const [x, y, z] = turn ? turnedOff(v, turn) : [0, 0, 0]
      // the beams of a row sit on one bar that turns about its middle
      const [barX, barY, barZ] = turn
        ? turnedOff(
            [(beams.originX[i] as number) - middle[0], (beams.originY[i] as number) - middle[1], (beams.originZ[i] as number) - middle[2]],
            turn,
          )
        : [0, 0, 0]
      // a segment's two ends move each by itself, and every point between no more than they
      const length = turn ? (until_mm[i] as number) : 0
      off.x[i] = position_mm + barX + x * length
      off.y[i] = position_mm + barY + y * length
      off.z[i] = position_mm + barZ + z * length
      const sway = turn ? 0 : (2 * position_mm) / (beams.length[i] as number)
      off.directionX[i] = x + sway
      off.directionY[i] = y + sway
      off.directionZ[i] = z + sway
    }
  }
  return off
}

type Vector = readonly [number, number, number]

interface Turn {
  readonly axes: readonly { readonly axis: Vector; readonly angle_rad: number }[]
  readonly rest: number
}

function planeTurns(sensor: RangingSensor, planeId: string, { tilt_rad, roll_rad, yaw_rad }: Tolerances): Turn {
  const plane = sensor.planes.find((p) => p.id === planeId)
  const fan = plane?.kind === 'fan'
  const lean = fan ? sensor.pose.tilt_rad + plane.offset_rad : plane?.kind === 'row' ? plane.tilt_rad : 0
  const yaw = fan ? sensor.pose.yaw_rad : 0
  const sum = tilt_rad + roll_rad + yaw_rad
  return {
    axes: [
      { axis: [0, 0, 1], angle_rad: yaw_rad },
      { axis: [cos(yaw), sin(yaw), 0], angle_rad: tilt_rad },
      { axis: [-sin(yaw) * cos(lean), cos(yaw) * cos(lean), sin(lean)], angle_rad: roll_rad },
    ],
    rest: (sum * sum) / 2,
  }
}

function mean(values: Float64Array, first: number, end: number): number {
  let sum = 0
  for (let i = first; i < end; i++) sum += values[i] as number
  return sum / (end - first)
}

function turnedOff([x, y, z]: Vector, { axes, rest }: Turn): Vector {
  const left = rest * Math.sqrt(x * x + y * y + z * z)
  let offX = left
  let offY = left
  let offZ = left
  for (const {
    axis: [a, b, c],
    angle_rad,
  } of axes) {
    offX += angle_rad * Math.abs(b * z - c * y)
    offY += angle_rad * Math.abs(c * x - a * z)
    offZ += angle_rad * Math.abs(a * y - b * x)
  }
  return [offX, offY, offZ]
}
