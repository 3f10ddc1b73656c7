import { accelAt, type Limits, movedAt, type Profile, restToRest, speedAt } from './profile.ts'

/** How a leaf is driven. Ways are those that the closing edge still has to go (0 is shut), in mm, or in rad for a leaf that turns. */
export interface LeafDrive {
  /** Way to go when fully open. */
  readonly way: number
  readonly close: Limits
  readonly open: Limits
  /** From the stop command until braking begins; the leaf keeps its motion so long. */
  readonly stopDelay_s: number
  readonly stopDecel: number
  /** Rest after braking, before it opens; `undefined` if it stays where it stopped. */
  readonly reverseDelay_s: number | undefined
  /** Way to go when it has opened again; fully if undefined. A leaf that stopped higher stays there. */
  readonly reverseTo?: number | undefined
  /** Measured instead of computed, delay included: how far the leaf went on after the stop command at full speed; from (0, 0), both rising, at rest at its end. */
  readonly stoppingCurve?: readonly StopPoint[] | undefined
}
export interface StopPoint {
  readonly at_s: number
  readonly way: number
}

/** A closing that begins at time 0 from a way to go, full or partial. */
export interface Closing {
  readonly drive: LeafDrive
  readonly from: number
  readonly profile: Profile
}

export function closingFrom(drive: LeafDrive, from: number): Closing {
  return { drive, from, profile: restToRest(from, drive.close) }
}

/** A closing and what a stop command makes of it: everything after is in closed form. */
export interface LeafRun {
  readonly closing: Closing
  readonly stop_s: number
  /** Braking begins; with a measured curve the instant of the command. */
  readonly brake_s: number
  readonly brakeWay: number
  readonly brakeSpeed: number
  /** It comes to rest, or is shut before. */
  readonly rest_s: number
  readonly restWay: number
  readonly isShut: boolean
  /** It begins to open; Infinity if it stays. */
  readonly opens_s: number
}

/** Below this the edge stands on the floor: no drive stops so exactly. */
const SHUT_WAY = 1e-9

/**
 * The closing with a stop command at `stop_s` after its start; Infinity for one that is never stopped. During the control's delay the leaf keeps the
 * motion of its profile, then slows at `stopDecel` to rest, dwells, and opens.
 */
export function runOf(closing: Closing, stop_s: number): LeafRun {
  const { drive, from, profile } = closing
  const curve = drive.stoppingCurve
  const brake_s = curve ? stop_s : stop_s + drive.stopDelay_s
  if (!(brake_s < profile.end_s)) return shutRun(closing, stop_s, profile.end_s, profile.end_s, 0, 0)
  const brakeWay = from - movedAt(profile, brake_s)
  if (curve) return curveRun(closing, stop_s, brakeWay, curve)
  const brakeSpeed = speedAt(profile, brake_s)
  const restWay = brakeWay - (brakeSpeed * brakeSpeed) / (2 * drive.stopDecel)
  if (restWay <= SHUT_WAY && brakeSpeed > 0) {
    const left = Math.sqrt(Math.max(0, brakeSpeed * brakeSpeed - 2 * drive.stopDecel * brakeWay))
    return shutRun(closing, stop_s, brake_s + (brakeSpeed - left) / drive.stopDecel, brake_s, brakeWay, brakeSpeed)
  }
  return restingRun({ closing, stop_s, brake_s, brakeWay, brakeSpeed }, brake_s + brakeSpeed / drive.stopDecel, restWay)
}

function curveRun(closing: Closing, stop_s: number, brakeWay: number, curve: readonly StopPoint[]): LeafRun {
  const last = curve[curve.length - 1] as StopPoint
  const brakeSpeed = speedAt(closing.profile, stop_s)
  if (last.way < brakeWay - SHUT_WAY)
    return restingRun({ closing, stop_s, brake_s: stop_s, brakeWay, brakeSpeed }, stop_s + last.at_s, brakeWay - last.way)
  const i = curve.findIndex(({ way }) => way >= brakeWay - SHUT_WAY)
  const [a, b] = [curve[i - 1] ?? { at_s: 0, way: 0 }, curve[i] as StopPoint]
  const share = b.way > a.way ? Math.min(1, (brakeWay - a.way) / (b.way - a.way)) : 1
  return shutRun(closing, stop_s, stop_s + a.at_s + share * (b.at_s - a.at_s), stop_s, brakeWay, brakeSpeed)
}

function shutRun(closing: Closing, stop_s: number, shut_s: number, brake_s: number, brakeWay: number, brakeSpeed: number): LeafRun {
  return {
    closing,
    stop_s,
    brake_s,
    brakeWay,
    brakeSpeed,
    rest_s: shut_s,
    restWay: 0,
    isShut: true,
    opens_s: Infinity,
  }
}

type Braking = Pick<LeafRun, 'closing' | 'stop_s' | 'brake_s' | 'brakeWay' | 'brakeSpeed'>

function restingRun(braking: Braking, rest_s: number, restWay: number): LeafRun {
  const { closing, stop_s, brake_s, brakeWay, brakeSpeed } = braking
  const opens_s = rest_s + (closing.drive.reverseDelay_s ?? Infinity)
  return { closing, stop_s, brake_s, brakeWay, brakeSpeed, rest_s, restWay, isShut: false, opens_s }
}

/** The way back up, from `opens_s` on. Worked out when it is asked for: of most runs only the closing matters. */
export function openingOf({ closing: { drive }, restWay }: LeafRun): Profile {
  return restToRest((drive.reverseTo ?? drive.way) - restWay, drive.open)
}

/** Shut, or open again as far as it goes, or Infinity where it stays. */
export function endOf(run: LeafRun): number {
  if (run.isShut) return run.rest_s
  return run.opens_s < Infinity ? run.opens_s + openingOf(run).end_s : Infinity
}

/** The way still to go at a time after the start of the closing; what it stood at before it, 0 once shut. */
export function wayAt(run: LeafRun, t_s: number): number {
  const { closing, brake_s, rest_s, opens_s } = run
  if (t_s <= brake_s && t_s < rest_s) return closing.from - movedAt(closing.profile, t_s)
  if (t_s >= opens_s) return run.restWay + movedAt(openingOf(run), t_s - opens_s)
  if (t_s >= rest_s) return run.restWay
  const t = t_s - brake_s
  const curve = closing.drive.stoppingCurve
  if (curve) return Math.max(0, run.brakeWay - curveAt(curve, t).way)
  return Math.max(run.restWay, run.brakeWay - t * (run.brakeSpeed - (t * closing.drive.stopDecel) / 2))
}

/** Positive toward shut, negative while it opens. */
export function closingSpeedAt(run: LeafRun, t_s: number): number {
  const { closing, brake_s, rest_s, opens_s } = run
  if (t_s >= opens_s) return -speedAt(openingOf(run), t_s - opens_s)
  if (t_s >= rest_s) return 0
  if (t_s <= brake_s) return speedAt(closing.profile, t_s)
  const curve = closing.drive.stoppingCurve
  return curve ? curveAt(curve, t_s - brake_s).speed : Math.max(0, run.brakeSpeed - (t_s - brake_s) * closing.drive.stopDecel)
}

/** Toward shut; the side that follows where it jumps. */
export function closingAccelAt(run: LeafRun, t_s: number): number {
  const { closing, brake_s, rest_s, opens_s } = run
  if (t_s >= opens_s) return -accelAt(openingOf(run), t_s - opens_s)
  if (t_s >= rest_s) return 0
  if (t_s < brake_s) return accelAt(closing.profile, t_s)
  return closing.drive.stoppingCurve ? 0 : -closing.drive.stopDecel
}

/** In J, of what moves with the edge: mass in kg, speed in mm/s. */
export function kineticEnergy_J(mass_kg: number, speed_mm_per_s: number): number {
  return (mass_kg * speed_mm_per_s * speed_mm_per_s) / 2e6
}

/** Straight between the readings; the speed is that of the stretch. */
export function curveAt(curve: readonly StopPoint[], t_s: number): { readonly way: number; readonly speed: number } {
  let a: StopPoint = { at_s: 0, way: 0 }
  for (const b of curve) {
    if (t_s < b.at_s) {
      const speed = (b.way - a.way) / (b.at_s - a.at_s)
      return { way: a.way + speed * (t_s - a.at_s), speed }
    }
    a = b
  }
  return { way: a.way, speed: 0 }
}
