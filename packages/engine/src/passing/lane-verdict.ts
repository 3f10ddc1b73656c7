import { type CountedField, type Stance, stancesOfBodies } from '../coverage/scene.ts'
import type { Along } from '../coverage/seen-along.ts'
import type { TolerantField } from '../coverage/tile-scene.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { Lane } from '../model/traffic.ts'
import { closingFrom, type LeafDrive } from '../motion/leaf-run.ts'
import type { TurningLeaf } from '../motion/turning-leaf.ts'
import { type Fall, worstOfFalls } from './falls.ts'
import { allFalls, allPassing, alongWay, type Passing, placesAcross, stretchInPlane } from './lane-ways.ts'
import { halfAlong, type LeafPlane, type MetPart } from './leaf-plane.ts'
import type { View } from './output.ts'
import { isWorse, type SightGap, worstSightGap } from './sight-gap.ts'
import type { Quiet } from './start-of-closing.ts'
import { worstOfTurningFalls } from './turning-falls.ts'
import { type TurningPassage, worstOfTurning } from './turning-passage.ts'
import { turningPassages } from './turning-ways.ts'
import { foundTurningWhileHeld, foundWhileHeld } from './while-held.ts'
import { type Contact, newTally, type Passage, type Tally, worstOfPassage } from './worst-passage.ts'

/** Everything that a lane's verdict rests on; whoever asks has made sure that nothing is missing. */
export interface LaneQuestion {
  readonly door: Door
  readonly state: DoorState
  readonly lane: Lane
  readonly drive: LeafDrive
  readonly plane: LeafPlane | TurningLeaf
  readonly speeds_mm_per_s: readonly [slowest: number, fastest: number]
  readonly fields: readonly TimedField[]
  /** Ways from which a closing begins, the full one among them. */
  readonly openings_mm: readonly number[]
  /** Ways to which a reversal opens, each as good as the others; undefined is fully. */
  readonly reversals_mm: readonly (number | undefined)[]
  readonly quiet: Quiet
  /** Attempts after a reversal begin though an output forbids closing. */
  readonly startsWhileHeld: boolean
}
export interface TimedField {
  readonly counted: CountedField
  /** Where it sees a body, in the state of the question. */
  readonly along: Along
  readonly response_s: number
  readonly hold_s: number
  /** It holds a body that stands for as long as one may. */
  readonly holds: boolean
  /** It sees so only while the edge has at least this way to go; always if undefined. */
  readonly actsFrom_mm?: number | undefined
  /** Another sight than that of the door as it stands: behind the leaf. */
  readonly sight?: TolerantField | undefined
}

export interface LaneVerdict {
  readonly struck: LaneContact | undefined
  readonly walked: LaneContact | undefined
  /** Where the smallest gap was found; undefined where nothing closes while the body is there. */
  readonly nearest: LaneContact | undefined
  readonly tally: Pick<Tally, 'struckAtMost' | 'walkedAtMost' | 'gap' | 'gapAtLeast' | 'unproved'>
  /** The gap in sight that holds bridge worst at the slowest speed; undefined where there is none. */
  readonly sightGap: LaneGap | undefined
  /** Only some yaws of a body were tried. */
  readonly yawSampled: boolean
  readonly passages: number
  /** Some sight depends on where the leaf is: more would be seen than was counted on. */
  readonly leafMatters: boolean
}
export interface LaneGap extends SightGap {
  readonly stance: Stance
  /** What is in the leaf's plane half-way through the gap; undefined where nothing is, or the body is of one part. */
  readonly part: string | undefined
  readonly x_mm: number
  readonly from: 'a' | 'b'
}
export interface LaneContact extends Contact {
  readonly stance: Stance
  /** Name of the part that is met; undefined where the body is of one part. */
  readonly part: string | undefined
  readonly company: Passing['company']
  /** The body that is so close. */
  readonly other?: Stance | undefined
  /** Among the parts of a body of several: the one that is met. */
  readonly met?: number | undefined
  /** As whom it came that then fell. */
  readonly upright?: Stance | undefined
  readonly x_mm: number
  readonly from: 'a' | 'b'
  readonly opening_mm: number
  readonly passage: Passage
  /** Where along the way each field sees the body. */
  readonly sights: readonly { readonly timed: TimedField; readonly visible: View['visible'] }[]
}

/** Nobody comes into sight from farther: so long before the door the longest closing is over. */
export const FARTHEST_MM = 60_000
const CONTACTS = ['struck', 'walked', 'nearest'] as const
/** Slower is standing. */
export const SLOWEST_MM_PER_S = 1

/**
 * The worst that can happen to the bodies of one lane in one state: over every phase, speed, place to stop and direction, at the middle and both
 * edges of the lane, for every opening from which the leaf may close.
 */
export function laneVerdict(question: LaneQuestion): LaneVerdict {
  const { door, lane, drive, plane, speeds_mm_per_s, fields, openings_mm, reversals_mm, quiet, startsWhileHeld } = question
  const flat = 'met' in plane ? plane : undefined
  const tally = newTally()
  const labelled: Partial<Record<(typeof CONTACTS)[number], LaneContact>> = {}
  const { stances, yawSampled } = stancesOfBodies(door, lane.bodies, `lane ${lane.id}`)
  const [slowest, fastest] = speeds_mm_per_s
  const closings = openings_mm.flatMap((from) => reversals_mm.map((reverseTo) => closingFrom({ ...drive, reverseTo }, from)))
  const speeds = [Math.max(SLOWEST_MM_PER_S, slowest), Math.max(SLOWEST_MM_PER_S, fastest)] as const
  let sightGap: LaneGap | undefined
  let passages = 0
  let leafMatters = false
  const keep = (label: Omit<LaneContact, keyof Contact>) => {
    passages++
    for (const kind of CONTACTS) {
      const contact = tally[kind]
      if (!contact || contact === labelled[kind]) continue
      // a leaf that turns meets a body nearer or farther from shut, place by place: what is told is where it met it
      const passage = label.passage.clear < Infinity ? label.passage : { ...label.passage, clear: contact.way }
      const told = { ...contact, ...label, passage }
      tally[kind] = told
      labelled[kind] = told
    }
  }
  const farthest_mm = Math.min(FARTHEST_MM, farthest(fields))
  const sightOf = (stance: Stance) => {
    const far_mm = farthest_mm + Math.max(2000, halfAlong(stance).y_mm)
    const asked = fields.map((timed) => ({ timed, stretches: timed.along(stance) }))
    return (x_mm: number) => asked.map(({ timed, stretches }) => ({ timed, alongY: stretches(x_mm, -far_mm, far_mm) }))
  }
  for (const { stance, sides, company, other } of allPassing(stances, lane)) {
    const sight = sightOf(stance)
    for (const x_mm of placesAcross(lane, halfAlong(stance).x_mm)) {
      const seen = sight(x_mm)
      const met = flat?.met(stance, x_mm) ?? []
      for (const from of sides) {
        const onWay = withoutRepeats(seen.map(({ timed, alongY }) => ({ timed, visible: alongWay(alongY, from) })))
        const views = onWay.map(viewOf)
        leafMatters ||= views.some(({ actsFrom_mm }) => actsFrom_mm !== undefined)
        const standing = onWay.flatMap(({ timed, visible }) => (timed.holds ? visible : [])).sort((a, b) => a.from_mm - b.from_mm)
        const turning = 'met' in plane ? [] : turningPassages(plane, stance, x_mm, from, { views, standing })
        const inPlane = met.map((part) => ({ part, ...stretchInPlane(part, from, flat?.half_mm ?? 0) }))
        const gap = worstGapOf(
          views.filter(({ actsFrom_mm }) => actsFrom_mm === undefined),
          [...inPlane, ...turning.map(asInPlane)],
          speeds[0],
        )
        if (gap && (sightGap === undefined || isWorse(gap, sightGap))) sightGap = { ...gap, stance, x_mm, from }
        for (const each of turning)
          for (const closing of closings) {
            worstOfTurning(closing, each, speeds, tally)
            if (startsWhileHeld) foundTurningWhileHeld(closing, each, tally)
            const passage: Passage = { enter_mm: each.enter_mm, leave_mm: each.leave_mm, clear: Infinity, views, standing }
            keep({ stance, part: each.solid.name, company, other, x_mm, from, opening_mm: closing.from, passage, sights: onWay })
          }
        for (const { part, enter_mm, leave_mm } of inPlane) {
          const passage: Passage = { enter_mm, leave_mm, clear: part.clear, views, standing, quiet }
          for (const closing of closings) {
            worstOfPassage(closing, passage, speeds, tally)
            if (startsWhileHeld) foundWhileHeld(closing, passage, tally)
            keep({
              stance,
              part: part.name || undefined,
              met: part.index,
              company,
              other,
              x_mm,
              from,
              opening_mm: closing.from,
              passage,
              sights: onWay,
            })
          }
        }
      }
    }
  }
  for (const { upright, lying, sides } of allFalls(stances, lane)) {
    const [sightUpright, sightLying] = [sightOf(upright), sightOf(lying)]
    for (const x_mm of placesAcross(lane, halfAlong(upright).x_mm)) {
      const [before, after] = [sightUpright(x_mm), sightLying(x_mm)]
      for (const from of sides) {
        const onWay = before.map(({ timed, alongY }) => ({ timed, visible: alongWay(alongY, from) }))
        const views = onWay.map(({ timed, visible }, i) => {
          const held = timed.holds ? alongWay(after[i]?.alongY ?? [], from) : []
          return { upright: visible, lying: held, response_s: timed.response_s, hold_s: timed.hold_s }
        })
        for (const each of 'met' in plane ? [] : turningPassages(plane, lying, x_mm, from, { views: [], standing: [] }))
          for (const closing of closings) {
            worstOfTurningFalls(closing, each, views, speeds, tally)
            if (startsWhileHeld) foundTurningWhileHeld(closing, { ...each, ...lyingHeld({ views }) }, tally)
            const passage: Passage = { enter_mm: each.enter_mm, leave_mm: each.leave_mm, clear: Infinity, views: [], standing: [] }
            const told = { part: each.solid.name, company: undefined, x_mm, from, opening_mm: closing.from, passage, sights: onWay }
            keep({ stance: lying, upright, ...told })
          }
        for (const part of flat?.met(lying, x_mm) ?? []) {
          const fall = { ...stretchInPlane(part, from, flat?.half_mm ?? 0), clear: part.clear, views, quiet }
          for (const closing of closings) {
            worstOfFalls(closing, fall, speeds, tally)
            const passage: Passage = { ...fall, views: [], standing: [] }
            if (startsWhileHeld) foundWhileHeld(closing, { ...passage, ...lyingHeld(fall) }, tally)
            keep({
              stance: lying,
              part: part.name,
              met: part.index,
              upright,
              company: undefined,
              x_mm,
              from,
              opening_mm: closing.from,
              passage,
              sights: onWay,
            })
          }
        }
      }
    }
  }
  return { struck: labelled.struck, walked: labelled.walked, nearest: labelled.nearest, tally, sightGap, yawSampled, passages, leafMatters }
}

type FieldOnWay = LaneContact['sights'][number]

function viewOf({ timed: { response_s, hold_s, actsFrom_mm }, visible }: FieldOnWay): View {
  return { visible, response_s, hold_s, actsFrom_mm }
}

/** Of the sights of one field above several heights of the leaf, those that show more than the next lower one. */
function withoutRepeats(onWay: readonly FieldOnWay[]): readonly FieldOnWay[] {
  const kept: FieldOnWay[] = []
  for (const each of onWay) {
    const last = kept[kept.length - 1]
    const isRepeat =
      last?.timed.actsFrom_mm !== undefined && last.timed.counted === each.timed.counted && isSame(last.visible, each.visible)
    if (isRepeat) kept[kept.length - 1] = { ...each, timed: { ...each.timed, holds: each.timed.holds || last.timed.holds } }
    else kept.push(each)
  }
  return kept
}

function isSame(some: View['visible'], others: View['visible']): boolean {
  return (
    some.length === others.length && some.every(({ from_mm, to_mm }, i) => from_mm === others[i]?.from_mm && to_mm === others[i]?.to_mm)
  )
}

/** Whoever lies stays, where a field holds it. */
function lyingHeld({ views }: Pick<Fall, 'views'>): Pick<Passage, 'views' | 'standing'> {
  return {
    views: views.map(({ lying, response_s, hold_s }) => ({ visible: lying, response_s, hold_s })),
    standing: views.flatMap(({ lying }) => lying),
  }
}

function asInPlane({ solid: { name }, enter_mm, leave_mm }: TurningPassage): PartInPlane {
  return { part: { name }, enter_mm, leave_mm }
}

interface PartInPlane {
  readonly part: Pick<MetPart, 'name'>
  readonly enter_mm: number
  readonly leave_mm: number
}

function worstGapOf(views: readonly View[], parts: readonly PartInPlane[], slowest: number) {
  if (parts.length === 0) return undefined
  const enter_mm = Math.min(...parts.map((each) => each.enter_mm))
  const leave_mm = Math.max(...parts.map((each) => each.leave_mm))
  const gap = worstSightGap(views, enter_mm, leave_mm, slowest)
  if (gap === undefined) return undefined
  const middle_mm = (gap.from_mm + gap.to_mm) / 2
  return { ...gap, part: parts.find((each) => each.enter_mm < middle_mm && middle_mm < each.leave_mm)?.part.name }
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
