import { exp, log } from '../space/trigonometry.ts'

/**
 * A motion from rest to rest over a way: piece by piece a cubic in time, so that place, speed and acceleration are closed forms. The way is in mm for
 * a leaf that goes down or along, in rad for one that turns; speed, acceleration and jerk are in the same unit per s, s2, s3.
 */
export interface Profile {
  readonly pieces: readonly Piece[]
  readonly way: number
  readonly end_s: number
  /** From here on it slows down; at the end where it never moves. */
  readonly slowing_s: number
  /** The largest speed that it reaches. */
  readonly peak: number
}
interface Piece {
  readonly at_s: number
  readonly moved: number
  readonly speed: number
  readonly accel: number
  readonly jerk: number
}

export interface Limits {
  readonly speed: number // > 0
  readonly accel: number // > 0, of speeding up and slowing down alike
  /** How fast the acceleration itself may change; without it the speed is a trapezoid. */
  readonly jerk?: number | undefined
}

/** The trapezoid of speed over a way, a triangle where the way is too short for the full speed; with rounded corners where the jerk is limited. */
export function restToRest(way: number, { speed, accel, jerk }: Limits): Profile {
  if (!(way > 0)) return { pieces: [], way: 0, end_s: 0, slowing_s: 0, peak: 0 }
  return jerk === undefined ? trapezoid(way, speed, accel) : rounded(way, speed, accel, jerk)
}

function trapezoid(way: number, speed: number, accel: number): Profile {
  const peak = Math.min(speed, Math.sqrt(accel * way))
  const ramp_s = peak / accel
  const steady_s = Math.max(0, way / peak - ramp_s)
  return joined(way, peak, [
    { for_s: ramp_s, accel, jerk: 0 },
    { for_s: steady_s, accel: 0, jerk: 0 },
    { for_s: ramp_s, accel: -accel, jerk: 0 },
  ])
}

/** Each ramp takes peak / accel + accel / jerk, or twice sqrt(peak / jerk) where the full acceleration is never reached; its mean speed is half the peak. */
function rounded(way: number, speed: number, accel: number, jerk: number): Profile {
  const least = (accel * accel) / jerk // the peak from which on the full acceleration is reached
  const rounding_s = accel / jerk
  const withFull = (accel / 2) * (Math.sqrt(rounding_s * rounding_s + (4 * way) / accel) - rounding_s)
  const peak = Math.min(speed, withFull >= least ? withFull : cubeRoot((way * way * jerk) / 4))
  const isFull = peak >= least
  const turn_s = isFull ? rounding_s : Math.sqrt(peak / jerk)
  const hold_s = isFull ? Math.max(0, peak / accel - rounding_s) : 0
  const most = isFull ? accel : jerk * turn_s
  const steady_s = Math.max(0, way / peak - (2 * turn_s + hold_s))
  return joined(way, peak, [
    { for_s: turn_s, accel: 0, jerk },
    { for_s: hold_s, accel: most, jerk: 0 },
    { for_s: turn_s, accel: most, jerk: -jerk },
    { for_s: steady_s, accel: 0, jerk: 0 },
    { for_s: turn_s, accel: 0, jerk: -jerk },
    { for_s: hold_s, accel: -most, jerk: 0 },
    { for_s: turn_s, accel: -most, jerk },
  ])
}

function cubeRoot(value: number): number {
  const near = exp(log(value) / 3)
  return near - (near * near * near - value) / (3 * near * near)
}

function joined(
  way: number,
  peak: number,
  parts: readonly { readonly for_s: number; readonly accel: number; readonly jerk: number }[],
): Profile {
  const pieces: Piece[] = []
  let at_s = 0
  let moved = 0
  let speed = 0
  let slowing_s = 0
  for (const [i, { for_s: t, accel, jerk }] of parts.entries()) {
    if (2 * i + 1 === parts.length) slowing_s = at_s + t // the steady piece is the middle one
    pieces.push({ at_s, moved, speed, accel, jerk })
    moved += t * (speed + t * (accel / 2 + (t * jerk) / 6))
    speed = Math.max(0, speed + t * (accel + (t * jerk) / 2))
    at_s += t
  }
  return { pieces, way, end_s: at_s, slowing_s, peak }
}

/** How far the motion has come at a time; 0 before it begins, the whole way after its end. */
export function movedAt(profile: Profile, t_s: number): number {
  if (t_s <= 0) return 0
  if (t_s >= profile.end_s) return profile.way
  const { at_s, moved, speed, accel, jerk } = pieceAt(profile, t_s)
  const t = t_s - at_s
  return Math.min(profile.way, moved + t * (speed + t * (accel / 2 + (t * jerk) / 6)))
}

export function speedAt(profile: Profile, t_s: number): number {
  if (t_s <= 0 || t_s >= profile.end_s) return 0
  const { at_s, speed, accel, jerk } = pieceAt(profile, t_s)
  const t = t_s - at_s
  return Math.max(0, speed + t * (accel + (t * jerk) / 2))
}

/** Positive while it speeds up. */
export function accelAt(profile: Profile, t_s: number): number {
  if (t_s < 0 || t_s >= profile.end_s) return 0
  const { at_s, accel, jerk } = pieceAt(profile, t_s)
  return accel + (t_s - at_s) * jerk
}

/** When it has come so far; the end for the whole way. Bracketed down to neighbouring doubles: the way never falls. */
export function timeOf(profile: Profile, moved: number): number {
  if (moved <= 0) return 0
  if (moved >= profile.way) return profile.end_s
  let before = 0
  let after = profile.end_s
  for (let k = 0; k < 60; k++) {
    const middle = (before + after) / 2
    if (movedAt(profile, middle) < moved) before = middle
    else after = middle
  }
  return after
}

function pieceAt({ pieces }: Profile, t_s: number): Piece {
  let i = pieces.length - 1
  while (i > 0 && t_s < (pieces[i] as Piece).at_s) i--
  return pieces[i] as Piece
}
