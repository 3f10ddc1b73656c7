import type { Body, BodyPart, Posture } from '../src/model/body.ts'
import type { Door, DoorState, Floor, Obstacle } from '../src/model/door.ts'
import type { BeamPlane, Field, RangingSensor, SegmentSensor, ZoneOnlySensor } from '../src/model/sensor.ts'
import type { Source } from '../src/model/source.ts'
import type { Zone } from '../src/model/zone.ts'
import { radians } from '../src/space/trigonometry.ts'

/*
 * A plain door for rules and computations whose answers are worked on paper: opening 2000 wide and 2500 high, level floor, a vertical leaf 40 thick
 * without bulge, nothing in the way, nothing assumed, one zone of presence at the leaf of one cell 200 x 200 about (500, 0), one body 100 x 100 x 500.
 * Each test changes what it is about.
 */

export const measured: Source = { basis: 'measured', note: 'for a test' }
export const fromMemory: Source = { basis: 'from memory', document: 'EXAMPLE 1', note: 'for a test' }

export function plainDoor(changes: Partial<Door> = {}): Door {
  return {
    name: 'plain door',
    sides: { a: 'yard', b: 'hall' },
    opening: { width_mm: 2000, height_mm: 2500 },
    leaf: { travel: 'down', thickness_mm: 40, bulge_mm: 0 },
    states: [plainState()],
    sensors: [downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }])],
    bodies: [bodyOf([box(100, 100, 500)])],
    zones: [plainZone()],
    concept: { people: 'trained', drive: 'automatic', closingEdge: 'contact-free' },
    extinction_per_mm: 0,
    edition: '2026-11',
    confirmations: [],
    assumed: [],
    ...changes,
  }
}

export function plainState(changes: Partial<DoorState> & { readonly obstacles?: readonly Obstacle[] } = {}): DoorState {
  return { id: 'as surveyed', name: 'as surveyed', floor: level(), obstacles: [], ...changes }
}

/** A level floor at z = 0 with this tolerance, or a profile of [y, z] points. */
export function level(tolerance_mm: number | undefined = 10, profile: readonly (readonly [y: number, z: number])[] = [[0, 0]]): Floor {
  return { profile: profile.map(([y_mm, z_mm]) => ({ y_mm, z_mm })), slopeX: 0, tolerance_mm }
}

export function plainZone(changes: Partial<Zone> = {}): Zone {
  return {
    id: 'zone',
    name: 'at the leaf',
    purpose: 'presence-at-leaf',
    function: 'presence',
    xMin_mm: 400,
    xMax_mm: 600,
    yMin_mm: -100,
    yMax_mm: 100,
    bodies: ['body'],
    allowedPocket_mm: 0,
    pitch_mm: 200,
    longestStay_s: 60,
    family: undefined,
    ...changes,
  }
}

export function plainField(changes: Partial<Field> = {}): Field {
  return {
    id: 'field',
    name: 'field',
    planes: ['p0'],
    xMin_mm: -Infinity,
    xMax_mm: Infinity,
    yMin_mm: -Infinity,
    yMax_mm: Infinity,
    clearance_mm: 0,
    top_mm: Infinity,
    clusterBeams: 1,
    output: 'OUT1',
    function: 'presence',
    presenceTime_s: Infinity,
    blanking: [],
    ...changes,
  }
}

/** Reaches 10 m on the body's reflectance, without margin and spot. */
export function ranging(planes: readonly BeamPlane[], changes: Partial<RangingSensor> = {}, field: Partial<Field> = {}): RangingSensor {
  return {
    kind: 'ranging',
    id: 'sensor',
    name: 'sensor',
    source: measured,
    planes,
    pose: { x_mm: 500, y_mm: 0, z_mm: 2000, yaw_rad: 0, tilt_rad: 0, roll_rad: 0 },
    maxRange_mm: 10_000,
    rangeRef_mm: 10_000,
    reflectanceRef: 0.1,
    backgroundMargin_mm: 0,
    spotRadius_mm: 0,
    fields: [plainField({ planes: planes.map(({ id }) => id), ...field })],
    learnedIn: 'as surveyed',
    ...changes,
  }
}

type Place = { readonly x_mm: number; readonly y_mm: number; readonly z_mm: number }

/** Ranging beams from these places, straight down or leaning. */
export function downward(
  places: readonly Place[],
  changes: Partial<RangingSensor> = {},
  field: Partial<Field> = {},
  tilt_deg = 0,
): RangingSensor {
  return ranging([{ kind: 'row', id: 'p0', places, tilt_rad: radians(tilt_deg) }], changes, field)
}

/** One scan plane with beams at even angles. */
export function fan(fovMin_deg: number, fovMax_deg: number, beamCount: number): BeamPlane {
  return { kind: 'fan', id: 'p0', offset_rad: 0, fovMin_rad: radians(fovMin_deg), fovMax_rad: radians(fovMax_deg), beamCount }
}

/** Level beams along x between two posts at x = 0 and x = 2000, at these heights. */
export function lightGrid(
  heights_mm: readonly number[],
  y_mm = 0,
  changes: Partial<SegmentSensor> = {},
  field: Partial<Field> = {},
): SegmentSensor {
  const segments = heights_mm.map((z) => ({ from_mm: [0, y_mm, z] as const, to_mm: [2000, y_mm, z] as const }))
  return {
    kind: 'segment',
    id: 'grid',
    name: 'light grid',
    source: measured,
    planes: [{ id: 'p0', segments }],
    spotRadius_mm: 0,
    fields: [plainField(field)],
    ...changes,
  }
}

export function zoneOnly(changes: Partial<ZoneOnlySensor> = {}): ZoneOnlySensor {
  const covers = { xMin_mm: 0, xMax_mm: 2000, yMin_mm: 0, yMax_mm: 2000 }
  return {
    kind: 'zone-only',
    id: 'radar',
    name: 'radar',
    source: measured,
    function: 'opening',
    output: 'OUT2',
    needs: '0.1 m/s',
    ...covers,
    ...changes,
  }
}

export function bodyOf(postures: readonly Posture[], changes: Partial<Body> = {}): Body {
  return { id: 'body', name: 'test body', reflectance: 0.1, postures, source: measured, ...changes }
}

export function box(a_mm: number, b_mm: number, c_mm: number, yaw_deg: number | readonly [number, number] = 0): Posture {
  const [from, to] = typeof yaw_deg === 'number' ? [yaw_deg, yaw_deg] : yaw_deg
  return { shape: 'box', name: `${a_mm} x ${b_mm} x ${c_mm}`, a_mm, b_mm, c_mm, yawFrom_rad: radians(from), yawTo_rad: radians(to) }
}

/** Several parts as they are, the box around them made for the purpose of having one: about the body's middle, wide enough for all. */
export function ofParts(parts: readonly BodyPart[], name = 'several parts'): Posture {
  const half = (part: BodyPart, side: 'a_mm' | 'b_mm') => (part.shape === 'box' ? part[side] / 2 : part.radius_mm)
  const most = (values: readonly number[]) => Math.max(...values)
  const a_mm = 2 * most(parts.map((part) => Math.abs(part.alongX_mm) + half(part, 'a_mm')))
  const b_mm = 2 * most(parts.map((part) => Math.abs(part.alongY_mm) + half(part, 'b_mm')))
  const c_mm = most(parts.map((part) => part.from_mm + (part.shape === 'box' ? part.c_mm : part.height_mm)))
  return { shape: 'box', name, a_mm, b_mm, c_mm, yawFrom_rad: 0, yawTo_rad: 0, parts }
}

/** A box of a body of several parts, its middle at (x, y) from the body's. */
export function partBox(
  size_mm: readonly [a_mm: number, b_mm: number, c_mm: number],
  at: {
    readonly x_mm?: number
    readonly y_mm?: number
    readonly from_mm?: number
    readonly reflectance?: number
    readonly name?: string
  } = {},
): BodyPart {
  const [a_mm, b_mm, c_mm] = size_mm
  const { x_mm = 0, y_mm = 0, from_mm = 0, reflectance = 0.1, name = size_mm.join(' x ') } = at
  return { shape: 'box', name, alongX_mm: x_mm, alongY_mm: y_mm, from_mm, reflectance, a_mm, b_mm, c_mm }
}

export function cylinder(radius_mm: number, height_mm: number): Posture {
  return { shape: 'cylinder', name: `radius ${radius_mm}, height ${height_mm}`, radius_mm, height_mm }
}

export function block(changes: Partial<Extract<Obstacle, { readonly shape: 'box' }>> = {}): Obstacle {
  return {
    shape: 'box',
    id: 'block',
    name: 'block',
    x_mm: 500,
    y_mm: 0,
    from_mm: 0,
    to_mm: 2500,
    implied: false,
    size_mm: [100, 100],
    yaw_rad: 0,
    ...changes,
  }
}
