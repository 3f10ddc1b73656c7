import type { Door, DoorState, Obstacle, Tolerances } from '../model/door.ts'
import type { WorstCase } from '../model/finding.ts'
import { floorDistance } from '../seeing/background.kernel.ts'
import { enterBox, enterCylinder } from '../seeing/entry.kernel.ts'
import { reach } from '../seeing/reach.ts'
import { isEmpty, type Shape, shapeOf } from '../seeing/shape.ts'
import { fieldWindows, type Windows } from '../seeing/windows.ts'
import { floorHeight, floorPieces, spreadFloor } from '../space/floor.ts'
import { turnOf } from '../space/trigonometry.ts'
import { isTaken } from './free-map.ts'
import type { CountedField } from './scene.ts'
import { type TolerantField, tolerantField } from './tile-scene.ts'

/**
 * Whether a body at one placement is free and unseen whatever the tolerances do: for every beam of every field that counts, no beam within
 * tolerances can see it, or too few neighbours can. False where that cannot be shown.
 */
export function isBlindForAll(
  door: Door,
  state: DoorState,
  counted: readonly CountedField[],
  { body: id, posture: index, x_mm, y_mm, yaw_rad }: WorstCase,
  tolerances: Tolerances,
): boolean {
  const body = door.bodies.find((b) => b.id === id)
  const posture = body?.postures[index]
  if (body === undefined || posture === undefined) throw new Error(`the door must have body ${id} with posture ${index}`)
  const floor = floorPieces(state.floor)
  const wide = state.obstacles.map((o) => grown(o, tolerances.length_mm, tolerances.floor_mm))
  if (isTaken(shapeOf(posture, yaw_rad, 1, 0), wide, floor, x_mm, y_mm)) return false
  return counted.every((one) => {
    const field = tolerantField(door, state, one, tolerances)
    const shape = shapeOf(posture, yaw_rad, body.reflectance, one.sensor.spotRadius_mm)
    if (isEmpty(shape)) return true
    const windows = widestWindows(state, field, tolerances)
    return field.nominal.planes.every(({ first, end }) => {
      let streak = 0
      for (let i = first; i < end; i++) {
        streak = maySee(field, windows, i, shape, x_mm, y_mm, floorHeight(floor, x_mm, y_mm), tolerances) ? streak + 1 : 0
        if (streak >= field.nominal.clusterBeams) return false
      }
      return true
    })
  })
}

/** The obstacle with every face farther out, and out of the way of a floor that is off. */
function grown(o: Obstacle, by_mm: number, floor_mm: number): Obstacle {
  const heights = { from_mm: o.from_mm - by_mm - floor_mm, to_mm: o.to_mm + by_mm + floor_mm }
  return o.shape === 'post'
    ? { ...o, ...heights, radius_mm: o.radius_mm + by_mm }
    : { ...o, ...heights, size_mm: [o.size_mm[0] + 2 * by_mm, o.size_mm[1] + 2 * by_mm] }
}

/** Windows that hold every entry point that could count for some beam within tolerances. */
function widestWindows(state: DoorState, { nominal, off, counted }: TolerantField, tolerances: Tolerances): Windows {
  const { beams, limits, reach: parameters, segments } = nominal.sight
  if (segments) return fieldWindows(beams, nominal.sight.floor, limits, beams.length, parameters.maxRange_mm)
  const outward = (values: Float64Array) => values.map((v) => -v)
  const by_mm = off.y.reduce((most, v) => Math.max(most, v), 0)
  const heights = off.z.map((z, i) => z + Math.abs(state.floor.slopeX) * (off.x[i] as number) + tolerances.floor_mm)
  const lowest = floorPieces(spreadFloor(state.floor, by_mm, -1))
  const margin = counted.sensor.kind === 'ranging' ? counted.sensor.backgroundMargin_mm : 0
  const scratch = new Float64Array(3)
  const ends = new Float64Array(beams.count)
  for (let i = 0; i < beams.count; i++) {
    const from = [beams.originX[i] as number, beams.originY[i] as number, beams.originZ[i] as number] as const
    const along = [beams.directionX[i] as number, beams.directionY[i] as number, beams.directionZ[i] as number] as const
    // below the lowest floor there can be, or inside what is left of an obstacle, every beam within tolerances has met its background
    let farthest = floorDistance(lowest, from[0], from[1], from[2] + (heights[i] as number), ...along)
    for (const obstacle of state.obstacles) {
      const less = [off.x[i] as number, off.y[i] as number, off.z[i] as number].map((v) => v + tolerances.length_mm) as [
        number,
        number,
        number,
      ]
      const t = entryInto(scratch, shrunk(obstacle, ...less), from, along)
      if (t < farthest) farthest = t
    }
    ends[i] = farthest - margin
  }
  const insets = { x: outward(off.x), y: outward(off.y), height: outward(heights) }
  // a step between floors may lie anywhere within reach of the point, so only one of clearance and top is asked of each extreme
  const above = floorPieces(spreadFloor(state.floor, by_mm, -1))
  return fieldWindows(beams, above, { ...limits, top_mm: Infinity }, ends, parameters.maxRange_mm, insets)
}

function shrunk(o: Obstacle, x: number, y: number, z: number): Obstacle | undefined {
  if (o.to_mm - o.from_mm <= 2 * z) return undefined
  const heights = { from_mm: o.from_mm + z, to_mm: o.to_mm - z }
  if (o.shape === 'post') {
    const radius_mm = o.radius_mm - Math.sqrt(x * x + y * y)
    return radius_mm > 0 ? { ...o, ...heights, radius_mm } : undefined
  }
  const [c, s] = turnOf(o.yaw_rad).map(Math.abs) as [number, number]
  const along = o.size_mm[0] - 2 * (x * c + y * s)
  const across = o.size_mm[1] - 2 * (x * s + y * c)
  return along > 0 && across > 0 ? { ...o, ...heights, size_mm: [along, across] } : undefined
}

type Vector = readonly [number, number, number]

function entryInto(scratch: Float64Array, o: Obstacle | undefined, from: Vector, along: Vector): number {
  if (o === undefined) return Infinity
  const hit =
    o.shape === 'post'
      ? enterCylinder(scratch, ...from, ...along, o.x_mm, o.y_mm, 0, o.radius_mm, o.from_mm, o.to_mm)
      : enterBox(
          scratch,
          ...from,
          ...along,
          o.x_mm,
          o.y_mm,
          0,
          o.size_mm[0] / 2,
          o.size_mm[1] / 2,
          o.from_mm,
          o.to_mm,
          ...turnOf(o.yaw_rad),
        )
  return hit && (scratch[2] as number) > 0 ? Math.max(0, scratch[0] as number) : Infinity
}

/** Whether some beam within tolerances of beam i may see the body: its nominal line meets the body grown by what it can be off. */
function maySee(
  field: TolerantField,
  windows: Windows,
  i: number,
  shape: Shape,
  x: number,
  y: number,
  under: number,
  tolerances: Tolerances,
): boolean {
  const { beams, reach: parameters, segments } = field.nominal.sight
  const { off } = field
  if (windows.first[i] === windows.first[i + 1]) return false
  const from = [beams.originX[i] as number, beams.originY[i] as number, beams.originZ[i] as number] as const
  const along = [beams.directionX[i] as number, beams.directionY[i] as number, beams.directionZ[i] as number] as const
  const [ox, oy, oz] = [off.x[i] as number, off.y[i] as number, (off.z[i] as number) + tolerances.floor_mm]
  const scratch = new Float64Array(3)
  const c = Math.abs(shape.cosYaw)
  const s = Math.abs(shape.sinYaw)
  const low = shape.low - oz
  const high = shape.high + oz
  const hit = shape.round
    ? enterCylinder(scratch, ...from, ...along, x, y, under, shape.halfA + Math.sqrt(ox * ox + oy * oy), low, high)
    : enterBox(
        scratch,
        ...from,
        ...along,
        x,
        y,
        under,
        shape.halfA + ox * c + oy * s,
        shape.halfB + ox * s + oy * c,
        low,
        high,
        shape.cosYaw,
        shape.sinYaw,
      )
  if (!hit) return false
  const earliest = scratch[0] as number
  const latest = scratch[2] as number
  if (latest <= 0) return false
  if (segments) return earliest < (beams.length[i] as number)
  // brighter than head-on no face can be
  if (earliest > reach(shape.reflectance, parameters)) return false
  for (let w = windows.first[i] as number; w < (windows.first[i + 1] as number); w++)
    if (earliest <= (windows.to[w] as number) && latest >= (windows.from[w] as number)) return true
  return false
}
