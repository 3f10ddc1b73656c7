import type { Body, Posture } from '../src/model/body.ts'
import type { Door, Floor, Obstacle } from '../src/model/door.ts'
import type { BeamPlane, Field, Pose, RangingSensor } from '../src/model/sensor.ts'
import type { Source } from '../src/model/source.ts'
import type { Zone } from '../src/model/zone.ts'
import { radians } from '../src/space/trigonometry.ts'

/*
 * Small cases worked on paper, each of which pins one reading of docs/method.md. Source of every answer: hand calculation, as `why` says.
 * Unless a case says otherwise: one sensor at (500, 0, 2000), yaw = tilt = roll = 0, one plane with one beam at 0 degrees, maxRange = rangeRef = 10000,
 * rhoRef = rho = 0.1, margin 0, clusterBeams 1, field unlimited, flat floor, clear air, no walls; one cell 200 x 200 centred on (500, 0);
 * body an upright box 100 x 100 x 500.
 */

const handCalculation: Source = { basis: 'our decision', note: 'hand calculation' }

const plainPose: Pose = { x_mm: 500, y_mm: 0, z_mm: 2000, yaw_rad: 0, tilt_rad: 0, roll_rad: 0 }
const plainFloor: Floor = { profile: [{ y_mm: 0, z_mm: 0 }], slopeX: 0, tolerance_mm: undefined }
const plainField: Field = {
  id: 'field',
  name: 'field',
  planes: ['p0'],
  xMin_mm: -Infinity,
  xMax_mm: Infinity,
  yMin_mm: -Infinity,
  yMax_mm: Infinity,
  clearance_mm: -Infinity,
  top_mm: Infinity,
  clusterBeams: 1,
  output: 'output',
  function: 'presence',
  presenceTime_s: Infinity,
  blanking: [],
}
const plainSensor: RangingSensor = {
  kind: 'ranging',
  id: 'sensor',
  name: 'sensor',
  source: handCalculation,
  planes: [beamAt(0)],
  pose: plainPose,
  maxRange_mm: 10_000,
  rangeRef_mm: 10_000,
  reflectanceRef: 0.1,
  backgroundMargin_mm: 0,
  spotRadius_mm: 0,
  fields: [plainField],
  learnedIn: 'as surveyed',
}
const plainZone: Zone = {
  id: 'zone',
  name: 'zone',
  purpose: 'presence-at-leaf',
  function: 'presence',
  xMin_mm: 400,
  xMax_mm: 600,
  yMin_mm: -100,
  yMax_mm: 100,
  bodies: ['body'],
  allowedPocket_mm: 0,
  pitch_mm: 200,
  longestStay_s: undefined,
  family: undefined,
}

interface Changes {
  readonly pose?: Partial<Pose>
  readonly sensor?: Partial<RangingSensor>
  readonly field?: Partial<Field>
  readonly floor?: Partial<Floor>
  readonly obstacles?: readonly Obstacle[]
  readonly zone?: Partial<Zone>
  readonly postures?: readonly Posture[]
  readonly visibility_m?: number
}

/** The plain door of the table with what one case changes. */
function doorWith(changes: Changes): Door {
  const field = { ...plainField, ...changes.field }
  const sensor = { ...plainSensor, ...changes.sensor, pose: { ...plainPose, ...changes.pose } }
  const body: Body = {
    id: 'body',
    name: 'body',
    reflectance: 0.1,
    postures: changes.postures ?? [box(100, 100, 500)],
    source: handCalculation,
  }
  return {
    name: 'case',
    sides: { a: 'A', b: 'B' },
    opening: { width_mm: 1000, height_mm: 3000 },
    leaf: undefined,
    states: [{ id: 'as surveyed', name: 'as surveyed', floor: { ...plainFloor, ...changes.floor }, obstacles: changes.obstacles ?? [] }],
    sensors: [{ ...sensor, fields: [{ ...field, planes: sensor.planes.map((plane) => plane.id) }] }],
    bodies: [body],
    zones: [{ ...plainZone, ...changes.zone }],
    concept: undefined,
    extinction_per_mm: changes.visibility_m === undefined ? 0 : 3.912 / (changes.visibility_m * 1000),
    edition: 'none',
    confirmations: [],
    assumed: [],
  }
}

function box(a_mm: number, b_mm: number, c_mm: number): Posture {
  return { shape: 'box', name: `${a_mm} x ${b_mm} x ${c_mm}`, a_mm, b_mm, c_mm, yawFrom_rad: 0, yawTo_rad: 0 }
}

/** A plane of one beam at the angle theta. */
function beamAt(theta_deg: number, id = 'p0', offset_deg = 0): BeamPlane {
  const theta_rad = radians(theta_deg)
  return { kind: 'fan', id, offset_rad: radians(offset_deg), fovMin_rad: theta_rad, fovMax_rad: theta_rad, beamCount: 1 }
}

function block(x_mm: number, y_mm: number, along: number, across: number, from_mm: number, to_mm: number): Obstacle {
  return { shape: 'box', id: 'block', name: 'block', x_mm, y_mm, from_mm, to_mm, implied: false, size_mm: [along, across], yaw_rad: 0 }
}

function post(x_mm: number, y_mm: number, radius_mm: number, to_mm: number): Obstacle {
  return { shape: 'post', id: 'post', name: 'post', x_mm, y_mm, from_mm: 0, to_mm, implied: false, radius_mm }
}

/** H1: where the one beam of a pose points. */
export const directionCases = [
  { id: 'H1', setting: 'tilt 45', pose: { ...plainPose, tilt_rad: radians(45) }, direction: [0, Math.SQRT1_2, -Math.SQRT1_2] },
  { id: 'H1', setting: 'roll 30', pose: { ...plainPose, roll_rad: radians(30) }, direction: [0.5, 0, -Math.sqrt(0.75)] },
  {
    id: 'H1',
    setting: 'roll 30 with yaw 90',
    pose: { ...plainPose, roll_rad: radians(30), yaw_rad: radians(90) },
    direction: [0, 0.5, -Math.sqrt(0.75)],
  },
] as const
export const directionPlane = beamAt(0)

/** H2 to H12: `answer` counts the cells of the one zone. */
export interface MethodCase {
  readonly id: string
  readonly setting: string
  readonly door: Door
  readonly answer: { readonly seen: number; readonly blind: number; readonly notFree: number }
  readonly why: string
}

const seen = { seen: 1, blind: 0, notFree: 0 }
const blind = { seen: 0, blind: 1, notFree: 0 }
const notFree = { seen: 0, blind: 0, notFree: 1 }

const cellsOf100: Partial<Zone> = { xMin_mm: 300, xMax_mm: 700, yMin_mm: -200, yMax_mm: 200, pitch_mm: 100 }
const h2 = 'centres at 450, 550 and +-50 put the beam on a common edge: chord 0'
const rising: Partial<Floor> = {
  profile: [
    { y_mm: -1000, z_mm: -100 },
    { y_mm: 1000, z_mm: 100 },
  ],
}
const h3 = 'at -100 the body spans -10..90 and P stands 90 above the floor under it; at +100 it spans 10..110 and P stands 110 above'
const h4 = 'b = 2000; entry at 2000 - h must be < 1950'
const h5: Changes = { pose: { z_mm: 1000, tilt_rad: radians(60) }, postures: [box(200, 1000, 500)], zone: { yMin_mm: 900, yMax_mm: 1100 } }
const h5why = 'at z = 500 the beam has t = 1000, y = 866: the top is entered, cos i = 0.5; reach 989.9, then 1004.1'
const h6 = 'a cluster lives in one plane'
const twoBeams: BeamPlane = { kind: 'fan', id: 'p0', offset_rad: 0, fovMin_rad: 0, fovMax_rad: radians(0.2), beamCount: 2 }
const h7 = 'sigma = 3.912/10000; R exp(sigma R) = 2000 gives R = 1234'
const h8 = [block(700, 0, 399, 400, 1000, 1500)]
const h8why = 'touching is not overlapping, and overlap is in space'
const h9 = { obstacles: [post(800, 0, 50, 900)], field: { clearance_mm: 50 } }
const h9why = 'a posture that is not free does not count; one free unseen posture is enough'
const h11: Partial<Zone> = { xMin_mm: 300, xMax_mm: 750, yMin_mm: -200, yMax_mm: 200, pitch_mm: 100 }
const h12: Changes = {
  pose: { x_mm: 440, y_mm: -920, z_mm: 250, tilt_rad: radians(90) },
  postures: [{ shape: 'cylinder', name: 'cylinder', radius_mm: 100, height_mm: 500 }],
}
const h12why = '60 off the axis: entry at y = -80, t = 840, cos i = 0.8; reach 840.8, then 839.0'

export const methodCases: readonly MethodCase[] = [
  methodCase('H2', 'body 100 x 100 on cells of 100', { zone: cellsOf100 }, { seen: 0, blind: 16, notFree: 0 }, h2),
  methodCase(
    'H2',
    'body 102 x 102 on cells of 100',
    { zone: cellsOf100, postures: [box(102, 102, 500)] },
    { seen: 4, blind: 12, notFree: 0 },
    h2,
  ),
  methodCase('H3', 'rising floor, cell at y = -100', slopeCase(-100), seen, h3),
  methodCase('H3', 'rising floor, cell at y = +100', slopeCase(100), blind, h3),
  methodCase('H4', 'margin 50, body height 50', { sensor: { backgroundMargin_mm: 50 }, postures: [box(100, 100, 50)] }, blind, h4),
  methodCase('H4', 'margin 50, body height 51', { sensor: { backgroundMargin_mm: 50 }, postures: [box(100, 100, 51)] }, seen, h4),
  methodCase('H5', 'rangeRef 1400', { ...h5, sensor: { rangeRef_mm: 1400 } }, blind, h5why),
  methodCase('H5', 'rangeRef 1420', { ...h5, sensor: { rangeRef_mm: 1420 } }, seen, h5why),
  methodCase(
    'H6',
    'cluster of 2, two planes of one beam',
    { field: { clusterBeams: 2 }, sensor: { planes: [beamAt(0), beamAt(0, 'p1', 0.2)] } },
    blind,
    h6,
  ),
  methodCase('H6', 'cluster of 2, one plane of two beams', { field: { clusterBeams: 2 }, sensor: { planes: [twoBeams] } }, seen, h6),
  methodCase('H7', 'fog, body height 700', { visibility_m: 10, sensor: { rangeRef_mm: 2000 }, postures: [box(100, 100, 700)] }, blind, h7),
  methodCase('H7', 'fog, body height 780', { visibility_m: 10, sensor: { rangeRef_mm: 2000 }, postures: [box(100, 100, 780)] }, seen, h7),
  methodCase('H8', 'body as high as the overhead box is', { obstacles: h8, postures: [box(420, 100, 1000)] }, seen, h8why),
  methodCase('H8', 'body 1 higher', { obstacles: h8, postures: [box(420, 100, 1001)] }, notFree, h8why),
  methodCase('H9', 'the unseen posture is not free', { ...h9, postures: [box(100, 100, 500), box(900, 100, 500)] }, seen, h9why),
  methodCase('H9', 'the unseen posture is free', { ...h9, postures: [box(900, 100, 500), box(100, 100, 40)] }, blind, h9why),
  methodCase('H10', 'origin inside an obstacle', { obstacles: [block(500, 0, 100, 100, 1900, 2100)] }, blind, 'background 0'),
  methodCase('H10', 'origin inside the body', { postures: [box(100, 100, 2100)] }, blind, 'no entry point'),
  methodCase(
    'H11',
    'a width that is no multiple of the pitch',
    { zone: h11, postures: [box(102, 102, 500)] },
    { seen: 4, blind: 16, notFree: 0 },
    'the beam sees the 2 x 2 cells about (500, 0); the odd strip gets cells',
  ),
  methodCase('H12', 'rangeRef 940', { ...h12, sensor: { rangeRef_mm: 940 } }, seen, h12why),
  methodCase('H12', 'rangeRef 938', { ...h12, sensor: { rangeRef_mm: 938 } }, blind, h12why),
]

/** The one pocket of H11. */
export const pocketOfH11 = { cells: 16, area_mm2: 160_000, extent: { xMin_mm: 300, xMax_mm: 800, yMin_mm: -200, yMax_mm: 200 } } as const

function methodCase(id: string, setting: string, changes: Changes, answer: MethodCase['answer'], why: string): MethodCase {
  return { id, setting, door: doorWith(changes), answer, why }
}

function slopeCase(y_mm: number): Changes {
  return { floor: rising, field: { top_mm: 105 }, postures: [box(300, 300, 100)], zone: { yMin_mm: y_mm - 100, yMax_mm: y_mm + 100 } }
}
