import type { Door, DoorState, Obstacle, Tolerances } from '../model/door.ts'
import { floorDistance } from '../seeing/background.kernel.ts'
import { backgrounds } from '../seeing/background.ts'
import type { Beams } from '../seeing/beams.ts'
import { enterBox, enterCylinder } from '../seeing/entry.kernel.ts'
import { reach } from '../seeing/reach.ts'
import type { Sight } from '../seeing/sees.ts'
import type { Shape } from '../seeing/shape.ts'
import { commonWindows, fieldWindows, type Windows } from '../seeing/windows.ts'
import { floorPieces, spreadFloor } from '../space/floor.ts'
import { sin, turnOf } from '../space/trigonometry.ts'
import type { Strip } from './hits.kernel.ts'
import { type Off, offOf } from './off.ts'
import { type CountedField, fieldSight } from './scene.ts'
import type { FieldSight } from './seen-map.ts'
import type { TileBeams, TileBody } from './tile-rule.kernel.ts'

/**
 * What rounding may shift a beam against a body or a field, per axis, in mm: a few operations on lengths of up to a kilometre. Counted as a tolerance,
 * so that it grows as it must where a beam all but runs along a face; half of it is what checkers allow for.
 */
const ROUNDING_OFF_MM = 2e-9

/** A field and the bounds on it that hold over all tolerances. */
export interface TolerantField {
  readonly counted: CountedField
  readonly nominal: FieldSight
  readonly off: Off
  /** As the nominal windows, but an entry point within them counts whatever the tolerances do. */
  readonly windows: Windows
}

/** Beams, how far they can stand off, and the windows that stay open for all of them. */
export function tolerantField(door: Door, state: DoorState, counted: CountedField, tolerances: Tolerances): TolerantField {
  const nominal = fieldSight(door, state, counted)
  const { beams, floor, limits, reach: parameters, segments } = nominal.sight
  // the background lies the margin behind the last window, and must not come nearer than is allowed for either
  const margin = counted.sensor.kind === 'ranging' ? counted.sensor.backgroundMargin_mm : 0
  const until = new Float64Array(beams.count)
  for (let i = 0; i < beams.count; i++)
    for (let w = nominal.windows.first[i] as number; w < (nominal.windows.first[i + 1] as number); w++)
      until[i] = Math.max(until[i] as number, (nominal.windows.to[w] as number) + margin)
  const off = offOf(counted.sensor, beams, tolerances, until)
  if (isNone(tolerances)) return { counted, nominal, off, windows: windowsAsWritten(nominal.sight) }
  const ends = new Float64Array(beams.count)
  nearestGrown(ends, beams, state, off, tolerances)
  if (segments || counted.sensor.kind === 'segment') {
    for (let i = 0; i < beams.count; i++)
      ends[i] = (ends[i] as number) < (beams.length[i] as number) ? -1 : (nominal.sight.ends_mm[i] as number)
    return { counted, nominal, off, windows: fieldWindows(beams, floor, limits, ends, parameters.maxRange_mm) }
  }
  const { learnedIn, backgroundMargin_mm } = counted.sensor
  const learned = door.states.find((s) => s.id === learnedIn)
  if (learned && learned.id !== state.id) {
    const other = new Float64Array(beams.count)
    nearestGrown(other, beams, learned, off, tolerances)
    for (let i = 0; i < beams.count; i++) ends[i] = Math.min(ends[i] as number, other[i] as number)
  }
  for (let i = 0; i < beams.count; i++) ends[i] = (ends[i] as number) - backgroundMargin_mm
  const insets = { x: off.x, y: off.y, height: heightOff(off, floor.slopeX, tolerances) }
  const by_mm = largest(off.y)
  const range = parameters.maxRange_mm * (1 - tolerances.range)
  // above the clearance over the highest floor that may lie under the point, and below the top over the lowest
  const above = fieldWindows(beams, floorPieces(spreadFloor(state.floor, by_mm, 1)), { ...limits, top_mm: Infinity }, ends, range, insets)
  if (limits.top_mm === Infinity) return { counted, nominal, off, windows: above }
  const below = fieldWindows(
    beams,
    floorPieces(spreadFloor(state.floor, by_mm, -1)),
    { ...limits, clearance_mm: -Infinity },
    ends,
    range,
    insets,
  )
  return { counted, nominal, off, windows: commonWindows(above, below) }
}

/** Where an entry point counts without tolerances, whatever rounding does. */
export function windowsAsWritten({ beams, floor, limits, ends_mm, reach: { maxRange_mm } }: Sight): Windows {
  const inset = new Float64Array(beams.count).fill(ROUNDING_OFF_MM)
  return fieldWindows(beams, floor, limits, ends_mm, maxRange_mm, { x: inset, y: inset, height: inset })
}

function isNone(t: Tolerances): boolean {
  return t.length_mm + t.position_mm + t.tilt_rad + t.roll_rad + t.yaw_rad + t.floor_mm + t.range === 0
}

/** How far the height of a beam's point above the floor under it can be off, beside what `spreadFloor` allows for. */
function heightOff(off: Off, slopeX: number, { floor_mm }: Tolerances): Float64Array {
  return off.z.map((z, i) => z + Math.abs(slopeX) * (off.x[i] as number) + floor_mm)
}

function largest(values: Float64Array): number {
  let most = 0
  for (const value of values) most = Math.max(most, value)
  return most
}

/** The nearest that any beam within tolerances can come to an obstacle or the floor: the nominal line against solids grown by what it can be off. */
function nearestGrown(out: Float64Array, beams: Beams, state: DoorState, off: Off, tolerances: Tolerances): void {
  const floor = floorPieces(spreadFloor(state.floor, largest(off.y), 1))
  const heights = heightOff(off, state.floor.slopeX, tolerances)
  const scratch = new Float64Array(3)
  const plain = backgrounds(beams, state)
  for (let i = 0; i < beams.count; i++) {
    const ox = beams.originX[i] as number
    const oy = beams.originY[i] as number
    const oz = beams.originZ[i] as number
    const dx = beams.directionX[i] as number
    const dy = beams.directionY[i] as number
    const dz = beams.directionZ[i] as number
    let nearest = Math.min(plain[i] as number, floorDistance(floor, ox, oy, oz - (heights[i] as number), dx, dy, dz))
    for (const obstacle of state.obstacles) {
      const hit = enterGrown(
        scratch,
        obstacle,
        ox,
        oy,
        oz,
        dx,
        dy,
        dz,
        (off.x[i] as number) + tolerances.length_mm,
        (off.y[i] as number) + tolerances.length_mm,
        (off.z[i] as number) + tolerances.length_mm,
      )
      if (hit && (scratch[2] as number) > 0) nearest = Math.min(nearest, Math.max(0, scratch[0] as number))
    }
    out[i] = nearest
  }
}

function enterGrown(
  scratch: Float64Array,
  o: Obstacle,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  growX: number,
  growY: number,
  growZ: number,
): boolean {
  const low = o.from_mm - growZ
  const high = o.to_mm + growZ
  if (o.shape === 'post')
    return enterCylinder(
      scratch,
      ox,
      oy,
      oz,
      dx,
      dy,
      dz,
      o.x_mm,
      o.y_mm,
      0,
      o.radius_mm + Math.sqrt(growX * growX + growY * growY),
      low,
      high,
    )
  const [c, s] = turnOf(o.yaw_rad)
  const halfA = o.size_mm[0] / 2 + growX * Math.abs(c) + growY * Math.abs(s)
  const halfB = o.size_mm[1] / 2 + growX * Math.abs(s) + growY * Math.abs(c)
  return enterBox(scratch, ox, oy, oz, dx, dy, dz, o.x_mm, o.y_mm, 0, halfA, halfB, low, high, c, s)
}

/** How a body's axes move with its placement on one strip of floor. */
export function tileBody(shape: Shape, strip: Strip): TileBody {
  const { round, halfA, halfB, low, high, cosYaw, sinYaw } = shape
  return {
    round,
    low: [-halfA, -halfB, low],
    high: [halfA, halfB, high],
    a: [cosYaw, -sinYaw, strip.slopeX],
    b: [sinYaw, cosYaw, strip.slopeY],
    c: [0, 0, strip.z0],
  }
}

/**
 * The field's beams in the body's axes.
 *
 * @param turn_rad half of a range of yaw that the body may have about `shape`'s: a point within the body then moves along its axes by at
 *   most 2 sin(turn / 2) times its distance from the centre
 */
export function tileBeams(field: TolerantField, shape: Shape, tolerances: Tolerances, turn_rad: number): TileBeams {
  const { beams, reach: parameters, segments } = field.nominal.sight
  const { off, windows } = field
  const { cosYaw, sinYaw, halfA, halfB, round } = shape
  const n = 3 * beams.count
  const [at, slope, offs, slopeOff, far] = [
    new Float64Array(n),
    new Float64Array(n),
    new Float64Array(n),
    new Float64Array(n),
    new Float64Array(n),
  ]
  const steep = new Uint8Array(beams.count)
  const turn = round ? 0 : 2 * sin(turn_rad / 2)
  const swing = turn * Math.sqrt(halfA * halfA + halfB * halfB)
  const less = {
    ...parameters,
    rangeRef_mm: parameters.rangeRef_mm * (1 - tolerances.range),
    maxRange_mm: parameters.maxRange_mm * (1 - tolerances.range),
  }
  const c = Math.abs(cosYaw)
  const s = Math.abs(sinYaw)
  for (let i = 0; i < beams.count; i++) {
    const k = 3 * i
    const dx = beams.directionX[i] as number
    const dy = beams.directionY[i] as number
    const ox = beams.originX[i] as number
    const oy = beams.originY[i] as number
    const level = Math.sqrt(dx * dx + dy * dy)
    at[k] = ox * cosYaw + oy * sinYaw
    at[k + 1] = oy * cosYaw - ox * sinYaw
    at[k + 2] = beams.originZ[i] as number
    slope[k] = dx * cosYaw + dy * sinYaw
    slope[k + 1] = dy * cosYaw - dx * sinYaw
    slope[k + 2] = beams.directionZ[i] as number
    offs[k] = (off.x[i] as number) * c + (off.y[i] as number) * s + swing + ROUNDING_OFF_MM
    offs[k + 1] = (off.x[i] as number) * s + (off.y[i] as number) * c + swing + ROUNDING_OFF_MM
    offs[k + 2] = (off.z[i] as number) + tolerances.floor_mm + ROUNDING_OFF_MM
    const offX = off.directionX[i] as number
    const offY = off.directionY[i] as number
    const turned = turn * (level + Math.sqrt(offX * offX + offY * offY)) // what is off turns with the rest
    slopeOff[k] = offX * c + offY * s + turned
    slopeOff[k + 1] = offX * s + offY * c + turned
    slopeOff[k + 2] = off.directionZ[i] as number
    steep[i] = [0, 1, 2].every((axis) => Math.abs(slope[k + axis] as number) > Math.max(1e-9, slopeOff[k + axis] as number)) ? 1 : 0
    if (segments) continue
    const leastLevel = level - (off.directionX[i] as number) - (off.directionY[i] as number)
    for (let axis = 0; axis < 3; axis++) {
      const cosine = round && axis < 2 ? leastLevel : Math.abs(slope[k + axis] as number) - (slopeOff[k + axis] as number)
      far[k + axis] = reach(shape.reflectance * Math.max(0, cosine), less)
    }
  }
  return {
    count: beams.count,
    at,
    slope,
    off: offs,
    slopeOff,
    steep,
    reach: far,
    first: windows.first,
    from: windows.from,
    to: windows.to,
    segments,
  }
}
