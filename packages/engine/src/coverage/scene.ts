import { type Body, type Posture, partsOf } from '../model/body.ts'
import type { Door, DoorState, Obstacle } from '../model/door.ts'
import type { Field, RangingSensor, SegmentSensor } from '../model/sensor.ts'
import type { Zone } from '../model/zone.ts'
import { backgrounds } from '../seeing/background.ts'
import { type Beams, beamsOf } from '../seeing/beams.ts'
import { type ReachParameters, reach } from '../seeing/reach.ts'
import type { Sight } from '../seeing/sees.ts'
import { type FieldLimits, fieldWindows, limitsOf } from '../seeing/windows.ts'
import { floorPieces } from '../space/floor.ts'
import { TOUCH_MM } from '../space/touch.ts'
import { radians } from '../space/trigonometry.ts'
import type { FieldSight } from './seen-map.ts'

/** One posture at one yaw, with the body it belongs to. */
export interface Stance {
  readonly body: Body
  readonly posture: Posture
  readonly index: number // of the posture in its body
  readonly yaw_rad: number
}

const YAW_STEP_RAD = radians(5)

/** Every posture of the zone's bodies that is of one part: nothing is claimed of others in a zone (`settle`). A yaw range is sampled at equal steps of at most 5 degrees, ends included; no pass may follow from samples. */
export function stancesOf(door: Door, zone: Zone): { readonly stances: readonly Stance[]; readonly yawSampled: boolean } {
  const { stances, yawSampled } = stancesOfBodies(door, zone.bodies, `zone ${zone.id}`)
  return { stances: stances.filter(({ posture }) => partsOf(posture) === undefined), yawSampled }
}

/** The same for any bodies, named by id. @param who names them, as "zone leaf" */
export function stancesOfBodies(
  door: Door,
  bodies: readonly string[],
  who: string,
): { readonly stances: readonly Stance[]; readonly yawSampled: boolean } {
  const stances: Stance[] = []
  let yawSampled = false
  for (const id of bodies) {
    const body = door.bodies.find((b) => b.id === id)
    if (body === undefined) throw new Error(`${who} must name a body of the door, got ${id}`)
    for (const [index, posture] of body.postures.entries()) {
      if (posture.shape === 'cylinder' || posture.yawTo_rad === posture.yawFrom_rad) {
        stances.push({ body, posture, index, yaw_rad: posture.shape === 'box' ? posture.yawFrom_rad : 0 })
        continue
      }
      yawSampled = true
      const range = posture.yawTo_rad - posture.yawFrom_rad
      const steps = Math.max(1, Math.ceil(range / YAW_STEP_RAD - 1e-9))
      for (let k = 0; k <= steps; k++) stances.push({ body, posture, index, yaw_rad: posture.yawFrom_rad + (range * k) / steps })
    }
  }
  return { stances, yawSampled }
}

/** A field whose output counts for a function, with the sensor it belongs to. */
export interface CountedField {
  readonly sensor: RangingSensor | SegmentSensor
  readonly field: Field
}

/** As findings name it. */
export function fieldName({ sensor, field }: CountedField): string {
  return `${sensor.id}/${field.id}`
}

/**
 * The fields that count for a zone: their output acts for the zone's function, and they hold a standing body for as long as one may
 * stay there (docs/method.md, sections 2 and 3: a field that lets go counts as blind for longer stays).
 */
export function countedFields(door: Door, zone: Zone): CountedField[] {
  const counted: CountedField[] = []
  for (const sensor of door.sensors) {
    if (sensor.kind === 'zone-only') continue
    for (const field of sensor.fields) if (field.function === zone.function && holdsFor(field, zone)) counted.push({ sensor, field })
  }
  return counted
}

function holdsFor({ presenceTime_s }: Field, { longestStay_s }: Zone): boolean {
  return presenceTime_s === undefined || longestStay_s === undefined || presenceTime_s >= longestStay_s
}

/** What to lift, to ask what hides a body. Nothing by default. */
export interface Lift {
  readonly reach?: true // to infinity
  readonly dark?: true // brightness to the reference
  readonly fog?: true
  readonly margin?: true
  readonly sides?: true
  readonly clearance?: true
  readonly top?: true
  readonly cluster?: true
  readonly obstacle?: Obstacle
  /** Other beams for a ranging sensor. */
  readonly beams?: (sensor: RangingSensor, field: Field) => Beams
}

/** Longer than any beam that could matter; the reach when it is lifted. */
const FAR_MM = 1e7

/**
 * Beams, backgrounds and windows of one field in one state of the door.
 *
 * @param asIs the same without the lift, if at hand: what the lift does not touch is taken from there
 */
export function fieldSight(door: Door, state: DoorState, { sensor, field }: CountedField, lift: Lift = {}, asIs?: FieldSight): FieldSight {
  const otherBeams = sensor.kind === 'ranging' && lift.beams ? lift.beams(sensor, field) : undefined
  const beams = otherBeams ?? asIs?.sight.beams ?? beamsOf(sensor)
  const floor = floorPieces(state.floor)
  const limits = sensor.kind === 'segment' ? OPEN : lifted(limitsOf(field), lift)
  const ends_mm =
    asIs && !otherBeams && !lift.margin && !lift.obstacle
      ? asIs.sight.ends_mm
      : sensor.kind === 'segment'
        ? segmentEnds(beams, state, lift)
        : rangingEnds(door, state, sensor, beams, lift)
  const parameters = sensor.kind === 'segment' ? UNLIMITED : reachOf(door, sensor, lift)
  const sight: Sight = { beams, floor, limits, ends_mm, reach: parameters, segments: sensor.kind === 'segment' }
  const named = beams.planes.filter(({ id }) => field.planes.includes(id))
  return {
    sight,
    windows: fieldWindows(beams, floor, limits, ends_mm, parameters.maxRange_mm),
    planes: named,
    clusterBeams: lift.cluster ? 1 : field.clusterBeams,
  }
}

/** What a field sees with in one state of the door. */
export type SightOf = (counted: CountedField, state: DoorState) => FieldSight

/** Computes what each field sees with when it is first asked for: several rules ask, and its beams and backgrounds are a fifth of the work. */
export function sightsOnce(door: Door): SightOf {
  const known = new Map<string, FieldSight>()
  return (counted, state) => {
    const key = JSON.stringify([state.id, counted.sensor.id, counted.field.id])
    const sight = known.get(key) ?? fieldSight(door, state, counted)
    known.set(key, sight)
    return sight
  }
}

const OPEN: FieldLimits = {
  xMin_mm: -Infinity,
  xMax_mm: Infinity,
  yMin_mm: -Infinity,
  yMax_mm: Infinity,
  clearance_mm: -Infinity,
  top_mm: Infinity,
}
const ANY_BRIGHTNESS = { rangeRef_mm: 1e150, reflectanceRef: 1, extinction_per_mm: 0 }
const UNLIMITED: ReachParameters = { maxRange_mm: FAR_MM, rangeRef_mm: FAR_MM, reflectanceRef: 1, extinction_per_mm: 0 }

function lifted(limits: FieldLimits, lift: Lift): FieldLimits {
  return {
    ...limits,
    ...(lift.sides ? { xMin_mm: -Infinity, xMax_mm: Infinity, yMin_mm: -Infinity, yMax_mm: Infinity } : {}),
    ...(lift.clearance ? { clearance_mm: -Infinity } : {}),
    ...(lift.top ? { top_mm: Infinity } : {}),
  }
}

function reachOf(door: Door, sensor: RangingSensor, lift: Lift): ReachParameters {
  const { maxRange_mm, rangeRef_mm, reflectanceRef } = sensor
  const asIs = { maxRange_mm, rangeRef_mm, reflectanceRef, extinction_per_mm: lift.fog ? 0 : door.extinction_per_mm }
  if (lift.reach) return { ...ANY_BRIGHTNESS, maxRange_mm: FAR_MM }
  if (lift.dark) return { ...ANY_BRIGHTNESS, maxRange_mm: reach(reflectanceRef, asIs) }
  return asIs
}

/** The nearer of the learned and the present background, less the margin: what has moved in between hides too. */
function rangingEnds(door: Door, state: DoorState, sensor: RangingSensor, beams: Beams, lift: Lift): Float64Array {
  const ends = backgrounds(beams, state, lift.obstacle)
  if (sensor.learnedIn !== state.id) {
    const learnedState = door.states.find((s) => s.id === sensor.learnedIn)
    if (learnedState === undefined) throw new Error(`sensor ${sensor.id} must have learned in a state of the door, got ${sensor.learnedIn}`)
    const learned = backgrounds(
      beams,
      learnedState,
      learnedState.obstacles.find((o) => o.id === lift.obstacle?.id),
    )
    for (let i = 0; i < ends.length; i++) ends[i] = Math.min(ends[i] as number, learned[i] as number)
  }
  const margin = lift.margin ? 0 : sensor.backgroundMargin_mm
  for (let i = 0; i < ends.length; i++) ends[i] = (ends[i] as number) - margin
  return ends
}

/** A segment that a fixed obstacle or the floor interrupts never works: it ends before any body. One that ends on a face is not interrupted. */
function segmentEnds(beams: Beams, state: DoorState, lift: Lift): Float64Array {
  const ends = backgrounds(beams, state, lift.obstacle)
  for (let i = 0; i < ends.length; i++) {
    const length = beams.length[i] as number
    ends[i] = (ends[i] as number) < length - TOUCH_MM ? -Infinity : length
  }
  return ends
}
