import { type BeamPlane, type FanPlane, type RowPlane, radians, type SegmentPlane } from '@sillsight/engine'
import type { FilePlane } from '../schema/sensor.ts'
import { shown } from '../shown.ts'
import type { FilePlace } from './pose.ts'
import type { Given } from './sensors.ts'
import { reportTwins } from './states.ts'

type PlaneKey = Exclude<keyof FilePlane, 'id'>
const FAN_KEYS: readonly PlaneKey[] = ['offset_deg', 'fovMin_deg', 'fovMax_deg', 'beamCount']
const ROW_KEYS: readonly PlaneKey[] = ['places_mm', 'beamCount', 'spacing_mm', 'tilt_deg']
const SEGMENT_KEYS: readonly PlaneKey[] = ['segments_mm', 'between_mm', 'heights_mm']
const ALL_KEYS: readonly PlaneKey[] = [...new Set([...FAN_KEYS, ...ROW_KEYS, ...SEGMENT_KEYS])]

/** The planes of a ranging sensor; undefined if there are none. */
export function rangingPlanes(given: Given, device: 'scanner' | 'downward-row', place: FilePlace): readonly BeamPlane[] | undefined {
  if (device === 'downward-row') mustHangStraight(given)
  return eachPlane(given, device, device === 'scanner' ? FAN_KEYS : ROW_KEYS, (plane, path) =>
    device === 'scanner' ? fanPlane(plane, path, given) : rowPlane(plane, path, place, given),
  )
}

export function segmentPlanes(given: Given): readonly SegmentPlane[] | undefined {
  return eachPlane(given, 'segments', SEGMENT_KEYS, (plane, path) => segmentPlane(plane, path, given))
}

function eachPlane<T>(
  given: Given,
  device: string,
  keys: readonly PlaneKey[],
  make: (plane: FilePlane, path: string) => T | undefined,
): readonly T[] | undefined {
  const { values, path, remarks } = given
  if (values.planes === undefined) {
    remarks.missing(`${path}/planes`, `the beams of device "${device}"`)
    return undefined
  }
  reportTwins(
    values.planes.map((plane) => plane.id),
    (i) => `${path}/planes/${i}/id`,
    remarks,
  )
  return values.planes.flatMap((plane, i) => {
    const planePath = `${path}/planes/${i}`
    for (const key of ALL_KEYS.filter((each) => plane[each] !== undefined && !keys.includes(each)))
      remarks.issue({
        code: 'does-not-fit',
        path: `${planePath}/${key}`,
        expected: `nothing here for device "${device}"`,
        got: shown(plane[key]),
      })
    return make(plane, planePath) ?? []
  })
}

function fanPlane(
  { id, offset_deg = 0, fovMin_deg, fovMax_deg, beamCount }: FilePlane,
  path: string,
  { remarks }: Given,
): FanPlane | undefined {
  if (fovMin_deg === undefined) remarks.missing(`${path}/fovMin_deg`, 'the angle of the first beam')
  if (fovMax_deg === undefined) remarks.missing(`${path}/fovMax_deg`, 'the angle of the last beam')
  if (beamCount === undefined) remarks.missing(`${path}/beamCount`, 'the number of beams')
  if (fovMin_deg === undefined || fovMax_deg === undefined || beamCount === undefined) return undefined
  const wide_deg = fovMax_deg - fovMin_deg
  if (wide_deg < 0 || (wide_deg === 0 && beamCount > 1))
    remarks.issue({
      code: 'contradiction',
      path: `${path}/fovMax_deg`,
      expected: `an angle above fovMin_deg (${fovMin_deg})`,
      got: shown(fovMax_deg),
    })
  if (wide_deg >= 360)
    remarks.issue({
      code: 'contradiction',
      path: `${path}/fovMax_deg`,
      expected: 'a field of view below 360 degrees',
      got: `${wide_deg} degrees`,
    })
  return { kind: 'fan', id, offset_rad: radians(offset_deg), fovMin_rad: radians(fovMin_deg), fovMax_rad: radians(fovMax_deg), beamCount }
}

/** Beams in a row along x, centred on the pose and numbered as the sensor turns with its side, or each at a place of its own. */
function rowPlane(plane: FilePlane, path: string, place: FilePlace, { remarks }: Given): RowPlane | undefined {
  const { id, places_mm, beamCount, spacing_mm, tilt_deg = 0 } = plane
  const tilt_rad = radians(place.faces * (place.tilt_deg + tilt_deg))
  if (Math.abs(place.tilt_deg + tilt_deg) >= 90)
    remarks.issue({
      code: 'contradiction',
      path: `${path}/tilt_deg`,
      expected: 'less than 90 degrees together with the pose',
      got: `${place.tilt_deg + tilt_deg} degrees`,
    })
  if (places_mm !== undefined) {
    for (const key of ['beamCount', 'spacing_mm'] as const)
      if (plane[key] !== undefined)
        remarks.issue({
          code: 'contradiction',
          path: `${path}/${key}`,
          expected: 'nothing here beside "places_mm"',
          got: shown(plane[key]),
        })
    return { kind: 'row', id, places: places_mm.map(([x_mm, y_mm, z_mm]) => ({ x_mm, y_mm, z_mm })), tilt_rad }
  }
  if (beamCount === undefined) remarks.missing(`${path}/beamCount`, 'the number of beams, or "places_mm"')
  else if (spacing_mm === undefined && beamCount > 1) remarks.missing(`${path}/spacing_mm`, 'the distance from beam to beam')
  if (beamCount === undefined || (spacing_mm === undefined && beamCount > 1)) return undefined
  const { x_mm, y_mm, z_mm } = place.pose
  const places = Array.from({ length: beamCount }, (_, j) => ({
    x_mm: x_mm + place.faces * (j - (beamCount - 1) / 2) * (spacing_mm ?? 0),
    y_mm,
    z_mm,
  }))
  return { kind: 'row', id, places, tilt_rad }
}

/** Rows lean along y alone: a row that stands askew cannot be written down, and must not be taken for one that hangs straight. */
function mustHangStraight({ values: { pose }, path, remarks }: Given): void {
  const yaw_deg = pose?.yaw_deg ?? 0
  if (yaw_deg !== 0 && Math.abs(yaw_deg) !== 180)
    remarks.issue({
      code: 'does-not-fit',
      path: `${path}/pose/yaw_deg`,
      expected: '0 or 180 for device "downward-row"',
      got: shown(yaw_deg),
    })
  if ((pose?.roll_deg ?? 0) !== 0)
    remarks.issue({
      code: 'does-not-fit',
      path: `${path}/pose/roll_deg`,
      expected: '0 for device "downward-row"',
      got: shown(pose?.roll_deg),
    })
}

function segmentPlane({ id, segments_mm, between_mm, heights_mm }: FilePlane, path: string, { remarks }: Given): SegmentPlane | undefined {
  if (segments_mm !== undefined) {
    for (const [key, value] of [
      ['between_mm', between_mm],
      ['heights_mm', heights_mm],
    ] as const)
      if (value !== undefined)
        remarks.issue({ code: 'contradiction', path: `${path}/${key}`, expected: 'nothing here beside "segments_mm"', got: shown(value) })
    for (const [i, [from, to]] of segments_mm.entries())
      if (from.every((value, axis) => value === to[axis]))
        remarks.issue({
          code: 'contradiction',
          path: `${path}/segments_mm/${i}/1`,
          expected: 'another place than the first',
          got: shown(to),
        })
    return { id, segments: segments_mm.map(([from_mm, to_mm]) => ({ from_mm, to_mm })) }
  }
  if (between_mm === undefined) remarks.missing(`${path}/between_mm`, 'the two uprights, or "segments_mm"')
  if (heights_mm === undefined) remarks.missing(`${path}/heights_mm`, 'the heights of the beams, or "segments_mm"')
  if (between_mm === undefined || heights_mm === undefined) return undefined
  const [[x1, y1], [x2, y2]] = between_mm
  if (x1 === x2 && y1 === y2)
    remarks.issue({
      code: 'contradiction',
      path: `${path}/between_mm/1`,
      expected: 'another place than the first',
      got: shown(between_mm[1]),
    })
  return { id, segments: heights_mm.map((z) => ({ from_mm: [x1, y1, z], to_mm: [x2, y2, z] })) }
}
