import { type Pose, radians } from '@sillsight/engine'
import type { Given } from './sensors.ts'

/** A pose and what a row needs of it: rows lean toward one of the two sides, whatever the exact turn. */
export interface FilePlace {
  readonly pose: Pose
  /** 1 toward side A, -1 toward side B. */
  readonly faces: 1 | -1
  readonly tilt_deg: number
}

const SHORT = ['side', 'mountingHeight_mm', 'offset_mm'] as const

/** The pose, from its long form or from side, mounting height and offset; undefined, and asked for by name, if neither is whole. */
export function doorwayPose(given: Given): FilePlace | undefined {
  const { values, path, remarks } = given
  const short = SHORT.filter((name) => values[name] !== undefined)
  if (values.pose === undefined) {
    if (short.length === SHORT.length) return shortPose(given)
    for (const name of SHORT) if (values[name] === undefined) remarks.missing(`${path}/${name}`, `"${name}", as long as there is no "pose"`)
    return undefined
  }
  for (const name of [...SHORT.slice(1), 'x_mm', 'tilt_deg'] as const) {
    if (values[name] !== undefined)
      remarks.issue({
        code: 'contradiction',
        path: `${path}/${name}`,
        expected: 'nothing here beside "pose"',
        got: `${values[name]}`,
        repair: 'keep one of the two',
      })
  }
  const { x_mm, y_mm, z_mm, yaw_deg = 0, tilt_deg = 0, roll_deg = 0 } = values.pose
  const pose = { x_mm, y_mm, z_mm, yaw_rad: radians(yaw_deg), tilt_rad: radians(tilt_deg), roll_rad: radians(roll_deg) }
  return { pose, faces: Math.abs(yaw_deg) === 180 ? -1 : 1, tilt_deg }
}

function shortPose({ values, path, doorway, remarks }: Given): FilePlace {
  const { side, mountingHeight_mm = 0, offset_mm = 0 } = values
  if (values.x_mm === undefined) remarks.assume(`${path}/x_mm`)
  if (values.tilt_deg === undefined) remarks.assume(`${path}/tilt_deg`)
  const faces = side === 'b' ? -1 : 1
  const tilt_deg = values.tilt_deg ?? values.usualTilt_deg ?? 0
  const pose = {
    x_mm: values.x_mm ?? doorway.width_mm / 2,
    y_mm: faces * offset_mm + 0,
    z_mm: mountingHeight_mm,
    yaw_rad: faces === 1 ? 0 : radians(180),
    tilt_rad: radians(tilt_deg),
    roll_rad: 0,
  }
  return { pose, faces, tilt_deg }
}
