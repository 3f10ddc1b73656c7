import { closingSpeedAt, endOf, type LeafRun, wayAt } from '../motion/leaf-run.ts'
import { type Swing, slabsAt, velocityOf } from '../motion/turning-leaf.ts'
import { hypot2 } from '../space/trigonometry.ts'
import { apart_mm, isMet, type Solid, touchOf } from './turning-contact.ts'

/** A solid on its way: its body's middle is at `enter_mm` of the way at `enters_s`, goes on at `pace`, and stops for good at `stopsAt_mm`. */
export interface SolidOnWay {
  readonly solid: Solid
  readonly from: 'a' | 'b'
  readonly enter_mm: number
  /** Beyond it, there is no contact any more. */
  readonly leave_mm: number
  /** Since the closing began; -Infinity for a body that stands at `stopsAt_mm` from the first. */
  readonly enters_s: number
  readonly pace: number
  readonly stopsAt_mm: number
}

export interface TurningMeeting {
  readonly kind: 'struck' | 'walked into'
  readonly at_s: number
  /** Middle of the body along its way. */
  readonly place_mm: number
  readonly way: number
  readonly stands: boolean
  readonly bodySpeed: number
  /** Of the point of the leaf at contact. */
  readonly leafSpeed: number
  /** Length of the difference of both velocities there. */
  readonly relativeSpeed: number
}

/** More than any passage takes; where they run out nothing is claimed. */
const MOST_ADVANCES = 4000

/**
 * The first contact of one solid with one leaf in one closing, or undefined. Time is advanced by what the gap allows, body and leaf each at the most that
 * they can do: nothing between is missed, and what is found does overlap. Struck: the leaf moves toward shut then, and did not rest.
 */
export function firstMeeting(swing: Swing, ratio: number, run: LeafRun, way: SolidOnWay): TurningMeeting | undefined {
  const end_s = Math.min(run.isShut ? run.rest_s : endOf(run), leaves(way))
  const last_s = Number.isFinite(end_s) ? end_s : Math.max(run.rest_s, arrives(way))
  let t_s = Number.isFinite(way.enters_s) ? way.enters_s : 0
  for (let k = 0; k < MOST_ADVANCES && t_s <= last_s; k++) {
    const place_mm = placeAt(way, t_s)
    const y_mm = way.from === 'b' ? place_mm : -place_mm
    const edge = wayAt(run, t_s)
    const gap_mm = apart_mm(slabsAt(swing, edge), way.solid.outline, y_mm)
    if (isMet(gap_mm)) return run.isShut && t_s >= run.rest_s ? undefined : meetingAt(swing, run, way, t_s, edge)
    const body = t_s < arrives(way) ? way.pace : 0
    const [fastest, until_s] = fastestFrom(run, t_s)
    const rate = body + ratio * fastest
    const next_s = rate > 0 ? t_s + gap_mm / rate : Infinity
    const turns_s = Math.min(until_s, body > 0 ? arrives(way) : Infinity)
    t_s = Math.min(next_s, turns_s > t_s ? turns_s : Infinity)
  }
  return undefined
}

function placeAt({ enter_mm, enters_s, pace, stopsAt_mm }: SolidOnWay, t_s: number): number {
  return Number.isFinite(enters_s) ? Math.min(stopsAt_mm, enter_mm + (t_s - enters_s) * pace) : stopsAt_mm
}
function arrives({ enter_mm, enters_s, pace, stopsAt_mm }: SolidOnWay): number {
  return Number.isFinite(enters_s) ? enters_s + Math.max(0, stopsAt_mm - enter_mm) / pace : -Infinity
}
function leaves({ enter_mm, leave_mm, enters_s, pace, stopsAt_mm }: SolidOnWay): number {
  return stopsAt_mm < leave_mm ? Infinity : enters_s + (leave_mm - enter_mm) / pace
}

/** The most that the edge does from a time on, and until when that holds: before the closing, toward shut, at rest, while it opens. */
function fastestFrom(run: LeafRun, t_s: number): readonly [speed: number, until_s: number] {
  const { closing, rest_s, opens_s } = run
  if (t_s < 0) return [0, 0]
  if (t_s < rest_s) {
    const curve = closing.drive.stoppingCurve ?? []
    const steepest = curve.reduce(
      (most, { at_s, way }, i) => Math.max(most, (way - (curve[i - 1]?.way ?? 0)) / (at_s - (curve[i - 1]?.at_s ?? 0))),
      0,
    )
    return [Math.max(closing.profile.peak, steepest), rest_s]
  }
  if (t_s < opens_s) return [0, opens_s]
  return [closing.drive.open.speed, Infinity]
}

function meetingAt(swing: Swing, run: LeafRun, onWay: SolidOnWay, t_s: number, edge: number): TurningMeeting {
  const stands = t_s >= arrives(onWay)
  const bodySpeed = stands ? 0 : onWay.pace
  const closing = closingSpeedAt(run, t_s)
  const place_mm = placeAt(onWay, t_s)
  const touch = touchOf(slabsAt(swing, edge), onWay.solid.outline, onWay.from === 'b' ? place_mm : -place_mm)
  const [x, y] = velocityOf(swing, touch.panel, edge, closing, touch.at)
  const bodyY = onWay.from === 'b' ? bodySpeed : -bodySpeed
  return {
    kind: t_s > 0 && closing > 0 ? 'struck' : 'walked into',
    at_s: t_s,
    place_mm,
    way: edge,
    stands,
    bodySpeed,
    leafSpeed: hypot2(x, y),
    relativeSpeed: hypot2(x, y - bodyY),
  }
}
