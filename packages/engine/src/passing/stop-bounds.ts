import { type Closing, curveAt, runOf, wayAt } from '../motion/leaf-run.ts'
import { movedAt, type Profile, speedAt } from '../motion/profile.ts'

/**
 * What the evidence of passages says about a leaf after its stop (docs/evidence.md, "Weak stops"). A tree speaks of closings that run for so long, and may
 * leave out changes of an output that stop them sooner; where that may leave the leaf lower, or moving for longer, every earlier stop is taken in.
 */

/** It slows harder by itself than after a stop, or what was measured at full speed stands for every phase. */
export function earlierMayBeWorse({ drive }: Closing): boolean {
  return drive.stoppingCurve !== undefined || drive.stopDecel < drive.close.accel
}

/** When a closing is over, stopped or not, at the latest. */
export function overAt_s(closing: Closing): number {
  const { profile, drive } = closing
  if (!earlierMayBeWorse(closing)) return profile.end_s
  return profile.end_s + (drive.stoppingCurve ? lastOf(closing).at_s : drive.stopDelay_s + profile.peak / drive.stopDecel)
}

/** How long after a stop command the leaf rests at the latest, after closings that ran for so long. */
export function restsAfter_s(closing: Closing, ran0_s: number, ran1_s: number): number {
  const { profile, drive } = closing
  if (drive.stoppingCurve) return lastOf(closing).at_s
  const from_s = earlierMayBeWorse(closing) ? 0 : ran0_s
  return drive.stopDelay_s + fastest(profile, from_s + drive.stopDelay_s, ran1_s + drive.stopDelay_s) / drive.stopDecel
}

/** The least way still to go, so long after the closing began, of one that was told to stop after having run for `ran_s` (Infinity: never). */
export function leastWay(closing: Closing, ran_s: number, at_s: number): number {
  const { drive, from } = closing
  if (drive.stoppingCurve) return Math.max(0, from - mostOnCurve(closing, Math.min(ran_s, at_s), at_s))
  const stopped = (ran: number) => {
    const run = runOf(closing, ran)
    return wayAt(run, Math.min(at_s, run.rest_s))
  }
  const worst_s = earlierMayBeWorse(closing) ? slowsHarderFrom_s(closing) - drive.stopDelay_s : Infinity
  return worst_s < ran_s ? Math.min(stopped(ran_s), stopped(Math.max(0, worst_s))) : stopped(ran_s)
}

/** The largest speed of a profile between two instants: it rises, stays and falls. */
function fastest(profile: Profile, from_s: number, to_s: number): number {
  if (to_s >= profile.end_s - profile.slowing_s && from_s <= profile.slowing_s) return profile.peak
  return Math.max(speedAt(profile, from_s), speedAt(profile, to_s))
}

/** From here on the profile slows down harder than a stop would; Infinity where it never does. */
function slowsHarderFrom_s({ profile, drive: { close, stopDecel } }: Closing): number {
  if (close.jerk === undefined) return profile.slowing_s
  const most = Math.min(close.accel, Math.sqrt(profile.peak * close.jerk))
  return most > stopDecel ? profile.slowing_s + stopDecel / close.jerk : Infinity
}

/** Parts of the time before a stop in which the way of the closing and that of the curve are each taken at their worst. */
const PARTS = 64

/** How far the leaf has come at most, with a stop command at any time up to `ran_s`. */
function mostOnCurve(closing: Closing, ran_s: number, at_s: number): number {
  const { profile, drive } = closing
  const curve = drive.stoppingCurve ?? []
  const last = lastOf(closing)
  // stopped so early, it has come to rest
  const rested_s = Math.min(ran_s, at_s - last.at_s)
  let most = rested_s >= 0 ? movedAt(profile, rested_s) + last.way : 0
  const first_s = Math.max(0, rested_s)
  if (first_s >= ran_s) return most
  for (let k = 0; k < PARTS; k++) {
    const a_s = first_s + ((ran_s - first_s) * k) / PARTS
    const b_s = k === PARTS - 1 ? ran_s : first_s + ((ran_s - first_s) * (k + 1)) / PARTS
    most = Math.max(most, movedAt(profile, b_s) + curveAt(curve, at_s - a_s).way)
  }
  return most
}

function lastOf({ drive: { stoppingCurve = [] } }: Closing) {
  return stoppingCurve[stoppingCurve.length - 1] ?? { at_s: 0, way: 0 }
}
