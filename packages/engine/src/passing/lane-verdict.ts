import { type CountedField, type Stance, stancesOfBodies } from '../coverage/scene.ts'
import { seenAlong } from '../coverage/seen-along.ts'
import { partsOf } from '../model/body.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { Lane } from '../model/traffic.ts'
import { closingFrom, type LeafDrive } from '../motion/leaf-run.ts'
import { radians } from '../space/trigonometry.ts'
import { halfAlong, type LeafPlane } from './leaf-plane.ts'
import type { View } from './output.ts'
import { type Contact, newTally, type Passage, type Tally, worstOfPassage } from './worst-passage.ts'

/** Everything that a lane's verdict rests on; whoever asks has made sure that nothing is missing. */
export interface LaneQuestion {
  readonly door: Door
  readonly state: DoorState
  readonly lane: Lane
  readonly drive: LeafDrive
  readonly plane: LeafPlane
  readonly speeds_mm_per_s: readonly [slowest: number, fastest: number]
  readonly fields: readonly TimedField[]
  /** Ways from which a closing begins, the full one among them. */
  readonly openings_mm: readonly number[]
}
export interface TimedField {
  readonly counted: CountedField
  readonly response_s: number
  readonly hold_s: number
  /** It holds a body that stands for as long as one may. */
  readonly holds: boolean
}

export interface LaneVerdict {
  readonly struck: LaneContact | undefined
  readonly walked: LaneContact | undefined
  /** Where the smallest gap was found; undefined where nothing closes while the body is there. */
  readonly nearest: LaneContact | undefined
  readonly tally: Pick<Tally, 'struckAtMost' | 'walkedAtMost' | 'gap' | 'gapAtLeast' | 'unproved'>
  /** Only some yaws of a body were tried. */
  readonly yawSampled: boolean
  readonly passages: number
}
export interface LaneContact extends Contact {
  readonly stance: Stance
  /** Name of the part that is met; undefined where the body is of one part. */
  readonly part: string | undefined
  readonly x_mm: number
  readonly from: 'a' | 'b'
  readonly opening_mm: number
  readonly passage: Passage
  /** Where along the way each field sees the body. */
  readonly sights: readonly { readonly timed: TimedField; readonly visible: View['visible'] }[]
}

/** Nobody comes into sight from farther: so long before the door the longest closing is over. */
export const FARTHEST_MM = 60_000
const HALF_TURN_RAD = radians(180)
const CONTACTS = ['struck', 'walked', 'nearest'] as const
/** Slower is standing. */
export const SLOWEST_MM_PER_S = 1

/**
 * The worst that can happen to the bodies of one lane in one state: over every phase, speed, place to stop and direction, at the middle and both
 * edges of the lane, for every opening from which the leaf may close.
 */
export function laneVerdict({ door, state, lane, drive, plane, speeds_mm_per_s, fields, openings_mm }: LaneQuestion): LaneVerdict {
  const tally = newTally()
  const labelled: Partial<Record<(typeof CONTACTS)[number], LaneContact>> = {}
  const { stances, yawSampled } = stancesOfBodies(door, lane.bodies, `lane ${lane.id}`)
  const sights = fields.map((timed) => ({ timed, along: seenAlong(door, state, timed.counted) }))
  const [slowest, fastest] = speeds_mm_per_s
  const speeds = [Math.max(SLOWEST_MM_PER_S, slowest), Math.max(SLOWEST_MM_PER_S, fastest)] as const
  let passages = 0
  for (const { stance, sides } of stances.flatMap((each) => waysThrough(each, lane.from))) {
    const half = halfAlong(stance)
    const far_mm = Math.min(FARTHEST_MM, farthest(fields)) + Math.max(2000, half.y_mm)
    const asked = sights.map(({ timed, along }) => ({ timed, stretches: along(stance) }))
    for (const x_mm of placesAcross(lane, half.x_mm)) {
      const seen = asked.map(({ timed, stretches }) => ({ timed, alongY: stretches(x_mm, -far_mm, far_mm) }))
      const met = plane.met(stance, x_mm)
      for (const from of sides) {
        // along the way of whoever comes from side A, y falls
        const onWay = seen.map(({ timed, alongY }) => ({ timed, visible: from === 'b' ? alongY : mirrored(alongY) }))
        const views: View[] = onWay.map(({ timed: { response_s, hold_s }, visible }) => ({ visible, response_s, hold_s }))
        const standing = onWay.flatMap(({ timed, visible }) => (timed.holds ? visible : [])).sort((a, b) => a.from_mm - b.from_mm)
        for (const part of met) {
          const [front_mm, back_mm] = from === 'b' ? [part.to_mm, part.from_mm] : [-part.from_mm, -part.to_mm]
          const { half_mm } = plane
          const passage: Passage = { enter_mm: -half_mm - front_mm, leave_mm: half_mm - back_mm, clear: part.clear, views, standing }
          for (const opening_mm of openings_mm) {
            worstOfPassage(closingFrom(drive, opening_mm), passage, speeds, tally)
            passages++
            const label = { stance, part: part.name, x_mm, from, opening_mm, passage, sights: onWay }
            for (const kind of CONTACTS) {
              const contact = tally[kind]
              if (contact && contact !== labelled[kind]) tally[kind] = labelled[kind] = { ...contact, ...label }
            }
          }
        }
      }
    }
  }
  return { struck: labelled.struck, walked: labelled.walked, nearest: labelled.nearest, tally, yawSampled, passages }
}

/** A body of several parts goes forward: from side A it is turned by half a turn. All others look alike from both. */
export function waysThrough(stance: Stance, from: Lane['from']): readonly { readonly stance: Stance; readonly sides: Lane['from'] }[] {
  if (partsOf(stance.posture) === undefined) return [{ stance, sides: from }]
  return from.map((side) => ({ stance: side === 'b' ? stance : { ...stance, yaw_rad: stance.yaw_rad + HALF_TURN_RAD }, sides: [side] }))
}

/** The middle of a body that keeps to the lane: at both edges and between; only in the middle where the lane is as narrow as the body. */
export function placesAcross({ xMin_mm, xMax_mm }: Lane, half_mm: number): readonly number[] {
  const middle_mm = (xMin_mm + xMax_mm) / 2
  const left_mm = xMin_mm + half_mm
  const right_mm = xMax_mm - half_mm
  return left_mm < right_mm ? [left_mm, middle_mm, right_mm] : [middle_mm]
}

export function mirrored(stretches: View['visible']): View['visible'] {
  return stretches.map(({ from_mm, to_mm }) => ({ from_mm: -to_mm, to_mm: -from_mm })).reverse()
}

/** How far from y = 0 a point can lie that counts for one of the fields. */
export function farthest(fields: readonly Pick<TimedField, 'counted'>[]): number {
  return fields.reduce((most, { counted: { sensor, field } }) => {
    const limit = Math.max(Math.abs(field.yMin_mm), Math.abs(field.yMax_mm))
    return Math.max(most, Math.min(limit, reachAcross(sensor)))
  }, 0)
}

function reachAcross(sensor: CountedField['sensor']): number {
  const ys = (list: readonly number[]) => list.reduce((most, y) => Math.max(most, Math.abs(y)), 0)
  if (sensor.kind === 'segment')
    return ys(sensor.planes.flatMap(({ segments }) => segments.flatMap(({ from_mm, to_mm }) => [from_mm[1], to_mm[1]])))
  const origins = sensor.planes.flatMap((plane) => (plane.kind === 'row' ? plane.places.map(({ y_mm }) => y_mm) : [sensor.pose.y_mm]))
  return ys(origins) + sensor.maxRange_mm
}
