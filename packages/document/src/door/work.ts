import { type Body, type Door, type DoorState, radians, type Sensor, type Zone } from '@sillsight/engine'
import { BOUNDS } from '../bounds.ts'
import type { Remarks } from '../remarks.ts'

/**
 * Refuses a door whose parts, each within its bound, together would keep the judge busy for longer than anybody waits. What the judge does
 * is mostly to draw one beam over one row of the grid for one posture; `judgingWork` counts these strokes, generously.
 */
export function checkWork(door: Door, remarks: Remarks): void {
  const work = judgingWork(door)
  if (work > BOUNDS.work)
    remarks.issue({
      code: 'too-much',
      path: 'zones',
      expected: `work of at most ${BOUNDS.work} strokes (beams times rows times postures times states)`,
      got: work.toPrecision(2),
      repair: 'choose a larger pitch, smaller zones, fewer postures or a narrower range of yaw; or judge the states in files of their own',
    })
}

/** Strokes that judging takes, counted from above. */
export function judgingWork(door: Door): number {
  return door.zones.reduce((sum, zone) => sum + door.states.reduce((inZone, state) => inZone + zoneWork(door, zone, state), 0), 0)
}

/** Lifted one after the other to find the causes of a pocket: every rule of sight, and every obstacle. */
const LIFTED_RULES = 10
/** To set up a beam for a posture takes as long as to draw it over so many rows. */
const ROWS_OF_SETTING_UP = 50
/** To find what lies between beams and between planes, the judge refines the fans of a sensor, up to so many beams each time. */
const REFINED_BEAMS = 60_000

function zoneWork({ bodies, sensors, extinction_per_mm }: Door, zone: Zone, { obstacles, floor }: DoorState): number {
  const rows = Math.ceil((zone.yMax_mm - zone.yMin_mm) / zone.pitch_mm)
  const cells = rows * Math.ceil((zone.xMax_mm - zone.xMin_mm) / zone.pitch_mm)
  const stances = bodies.filter(({ id }) => zone.bodies.includes(id)).reduce((sum, body) => sum + stancesOf(body, extinction_per_mm > 0), 0)
  const sizes = zone.family ? Math.ceil(zone.family.largest_mm / zone.family.step_mm) + 1 : 0
  const lifts = LIFTED_RULES + obstacles.length
  const bends = 1 + floor.profile.length / 8 // each row is drawn piece by piece of the floor
  return sensors.reduce((sum, sensor) => {
    const fields = countingFields(sensor, zone)
    const beams = fields * beamsOf(sensor)
    const refined = fields * refinedBeams(sensor, zone, bodies)
    const strokes = (rows + ROWS_OF_SETTING_UP) * bends * (stances * (beams * (lifts + 3) + refined) + sizes * beams)
    const backgrounds = (beams * lifts + refined) * obstacles.length
    const feet = fields > 0 ? feetOf(sensor) * cells : 0
    return sum + strokes + backgrounds + feet + cells * lifts
  }, 0)
}

/** How many times a box at one yaw a body takes: a range of yaw is sampled every 5 degrees, a round side in fog is settled cell by cell. */
export function stancesOf({ postures }: Body, inFog: boolean): number {
  return postures.reduce((sum, posture) => {
    if (posture.shape === 'cylinder') return sum + (inFog ? 8 : 2)
    const parts = posture.parts?.length ?? 1 // each meets the leaf for itself
    return sum + parts * (1 + Math.ceil((posture.yawTo_rad - posture.yawFrom_rad) / radians(5)))
  }, 0)
}

function countingFields(sensor: Sensor, zone: Zone): number {
  return sensor.kind === 'zone-only' ? 0 : sensor.fields.filter((field) => field.function === zone.function).length
}

/** Fans with beams an eighth of the smallest body apart at the farthest corner of the zone, and as many planes as there may be. */
function refinedBeams(sensor: Sensor, zone: Zone, bodies: readonly Body[]): number {
  if (sensor.kind !== 'ranging' || sensor.planes.every((plane) => plane.kind === 'row')) return 0
  const { x_mm, y_mm, z_mm } = sensor.pose
  const across_mm = Math.max(Math.abs(zone.xMin_mm - x_mm), Math.abs(zone.xMax_mm - x_mm))
  const deep_mm = Math.max(Math.abs(zone.yMin_mm - y_mm), Math.abs(zone.yMax_mm - y_mm))
  const step_rad = smallestSide_mm(bodies) / 8 / (across_mm + deep_mm + Math.abs(z_mm) + zone.pitch_mm)
  const angles = sensor.planes.reduce((sum, plane) => {
    if (plane.kind === 'row') return sum
    const gaps = Math.max(1, plane.beamCount - 1)
    return sum + gaps * Math.max(4, Math.ceil((plane.fovMax_rad - plane.fovMin_rad) / gaps / step_rad)) + 1
  }, 0)
  return Math.min(REFINED_BEAMS, angles) + REFINED_BEAMS
}

function smallestSide_mm(bodies: readonly Body[]): number {
  const sides = bodies.flatMap(({ postures }) =>
    postures.flatMap((posture) =>
      posture.shape === 'box' ? [posture.a_mm, posture.b_mm, posture.c_mm] : [2 * posture.radius_mm, posture.height_mm],
    ),
  )
  return Math.min(...sides)
}

/** Places under which the judge looks for dead ground. */
function feetOf(sensor: Sensor): number {
  return sensor.kind === 'ranging' ? sensor.planes.reduce((sum, plane) => sum + (plane.kind === 'row' ? plane.places.length : 1), 0) : 0
}

function beamsOf(sensor: Sensor): number {
  if (sensor.kind === 'zone-only') return 0
  if (sensor.kind === 'segment') return sensor.planes.reduce((sum, plane) => sum + plane.segments.length, 0)
  return sensor.planes.reduce((sum, plane) => sum + (plane.kind === 'fan' ? plane.beamCount : plane.places.length), 0)
}
