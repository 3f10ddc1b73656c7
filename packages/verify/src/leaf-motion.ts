/** How the leaf is driven, as far as the evidence of passages needs it. mm and s. */
export interface Drive {
  readonly speed: number
  readonly accel: number
  readonly jerk: number | undefined
  readonly delay: number
  readonly decel: number
}

/** A closing from rest to rest, piece by piece of one jerk. */
export interface Closing {
  readonly from: number
  readonly drive: Drive
  readonly pieces: readonly Piece[]
  readonly end: number
  /** Between these instants it has its largest speed. */
  readonly steady: readonly [from: number, to: number]
  readonly fastest: number
}
interface Piece {
  readonly lasts: number
  readonly accel: number
  readonly jerk: number
}

export function closingOf(from: number, drive: Drive): Closing {
  const fastest = fastestOf(from, drive)
  const { ramp, pieces } = rampOf(fastest, drive)
  const steady = Math.max(0, from / fastest - ramp)
  const down = pieces.map(({ lasts, accel, jerk }) => ({ lasts, accel: -accel, jerk: -jerk }))
  const all = [...pieces, { lasts: steady, accel: 0, jerk: 0 }, ...down]
  return { from, drive, pieces: all, end: steady + 2 * ramp, steady: [ramp, ramp + steady], fastest }
}

/** The largest speed whose two ramps fit into the way; found by halving, as the way that they take grows with it. */
function fastestOf(way: number, drive: Drive): number {
  const fits = (speed: number) => speed * rampOf(speed, drive).ramp <= way
  if (fits(drive.speed)) return drive.speed
  let [low, high] = [0, drive.speed]
  for (let k = 0; k < 100; k++) {
    const middle = (low + high) / 2
    if (fits(middle)) low = middle
    else high = middle
  }
  return low
}

/** Speeding up from rest: at once with the full acceleration, or with the jerk up to it (if it is reached), and back. */
function rampOf(speed: number, { accel, jerk }: Drive): { readonly ramp: number; readonly pieces: readonly Piece[] } {
  if (jerk === undefined) return { ramp: speed / accel, pieces: [{ lasts: speed / accel, accel, jerk: 0 }] }
  const turn = Math.min(accel / jerk, Math.sqrt(speed / jerk))
  const most = turn * jerk
  const hold = Math.max(0, speed / most - turn)
  const pieces = [
    { lasts: turn, accel: 0, jerk },
    { lasts: hold, accel: most, jerk: 0 },
    { lasts: turn, accel: most, jerk: -jerk },
  ]
  return { ramp: 2 * turn + hold, pieces }
}

/** Way and speed of the closing after so long; at rest before it begins and after it has ended. */
export function movedAt({ pieces }: Closing, time: number): { readonly way: number; readonly speed: number } {
  let [way, speed, left] = [0, 0, Math.max(0, time)]
  for (const { lasts, accel, jerk } of pieces) {
    const t = Math.min(left, lasts)
    way += t * (speed + t * (accel / 2 + (t * jerk) / 6))
    speed += t * (accel + (t * jerk) / 2)
    left -= t
    if (left <= 0) return { way, speed: Math.max(0, speed) }
  }
  return { way, speed: 0 }
}

/** The largest speed between two instants: it rises, stays and falls. */
export function fastestBetween(closing: Closing, from: number, to: number): number {
  const [rises, falls] = closing.steady
  return to >= rises && from <= falls ? closing.fastest : Math.max(movedAt(closing, from).speed, movedAt(closing, to).speed)
}

/** The way still to go, so long after the stop command to a closing that had run for `ran`; at rest in the end. */
export function leftAfterStop(closing: Closing, ran: number, after: number): number {
  const { delay, decel } = closing.drive
  if (after <= delay) return closing.from - movedAt(closing, ran + after).way
  const { way, speed } = movedAt(closing, ran + delay)
  const braked = Math.min(after - delay, speed / decel)
  return closing.from - way - braked * (speed - (braked * decel) / 2)
}
