import { partsOf } from '../model/body.ts'
import { type LaneQuestion, laneVerdict } from './lane-verdict.ts'

/** One case in which a body of a lane is struck: docs/evidence.md, "Contacts". */
export interface ContactEvidence {
  readonly lane: string
  readonly state: string
  readonly body: string
  readonly posture: number
  /** The posture in which it lies, where it has fallen: at `standsAt_mm`. */
  readonly lying?: number
  /** Another body so close that it is seen, and hides this one. */
  readonly beside?: readonly [body: string, posture: number, 'ahead' | 'behind']
  readonly yaw_deg: number
  /** Which part of a body of several is met. */
  readonly met?: number
  readonly x_mm: number
  readonly from: 'a' | 'b'
  readonly opening_mm: number
  /** Of the body while it goes; 0 where it stands from the first. */
  readonly pace_mm_per_s: number
  /** Where along its way it stands, `null` where it goes through. */
  readonly standsAt_mm: number | null
  /** The closing begins: on the clock on which the body's middle passes y = 0 at 0 s. */
  readonly begins_s: number
  /** From then to the contact. */
  readonly contact_s: number
  readonly relative_mm_per_s: number
}

/**
 * Undefined where nobody is struck, or where the case is of a kind that verifiers do not re-check: a closing while an output forbids it, and of a leaf that turns one of
 * which the control may say that it does not begin then (the verdict does not ask it).
 */
export function contactEvidence(question: LaneQuestion): ContactEvidence | undefined {
  if (!('met' in question.plane) && (question.startsWhileHeld || saysAnything(question.quiet))) return undefined
  const { struck } = laneVerdict(question)
  if (!struck || struck.whileHeld) return undefined
  const {
    stance,
    upright,
    company,
    other,
    met,
    x_mm,
    from,
    opening_mm,
    pace,
    stands,
    place_mm,
    enters_s,
    entersAt_mm,
    at_s,
    relativeSpeed,
  } = struck
  return {
    lane: question.lane.id,
    state: question.state.id,
    body: stance.body.id,
    posture: (upright ?? stance).index,
    ...(upright ? { lying: stance.index } : {}),
    ...(company && other ? { beside: [other.body.id, other.index, company] as const } : {}),
    yaw_deg: (stance.yaw_rad * 180) / Math.PI,
    ...(met !== undefined && partsOf(stance.posture) ? { met } : {}),
    x_mm,
    from,
    opening_mm,
    pace_mm_per_s: pace,
    standsAt_mm: stands ? place_mm : null,
    begins_s: pace === 0 ? 0 : entersAt_mm / pace - enters_s,
    contact_s: at_s,
    relative_mm_per_s: relativeSpeed,
  }
}

function saysAnything({ warning_s, beforeCommand_s }: LaneQuestion['quiet']): boolean {
  return warning_s > 0 || beforeCommand_s !== undefined
}
