/** How the leaf is driven, as far as the evidence of passages needs it. mm and s. */
export interface Drive {
  readonly speed: number
  readonly accel: number
  readonly jerk: number | undefined
  readonly delay: number
  readonly decel: number
  /** Measured instead of both: time since the stop command and way since then, rising; at rest at its end. */
  readonly curve: readonly (readonly [time: number, way: number])[] | undefined
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
function fastestBetween(closing: Closing, from: number, to: number): number {
  const [rises, falls] = closing.steady
  return to >= rises && from <= falls ? closing.fastest : Math.max(movedAt(closing, from).speed, movedAt(closing, to).speed)
}

/** The way still to go and the speed, so long after the stop command to a closing that had run for `ran`; at rest in the end. */
export function stoppedAt(closing: Closing, ran: number, after: number): { readonly left: number; readonly speed: number } {
  const { delay, decel, curve } = closing.drive
  if (after <= 0 || (curve === undefined && after <= delay)) {
    const { way, speed } = movedAt(closing, ran + after)
    return { left: closing.from - way, speed }
  }
  if (curve !== undefined) {
    const { way, speed } = onCurve(curve, after)
    const left = closing.from - movedAt(closing, ran).way - way
    return left > 0 ? { left, speed } : { left: 0, speed: 0 }
  }
  const { way, speed } = movedAt(closing, ran + delay)
  const braked = Math.min(after - delay, speed / decel)
  const left = closing.from - way - braked * (speed - (braked * decel) / 2)
  return left > 0 ? { left, speed: speed - braked * decel } : { left: 0, speed: 0 }
}

function onCurve(curve: NonNullable<Drive['curve']>, time: number): { readonly way: number; readonly speed: number } {
  let [at, gone] = [0, 0]
  for (const [next, way] of curve) {
    if (time < next) {
      const speed = (way - gone) / (next - at)
      return { way: gone + speed * (time - at), speed }
    }
    ;[at, gone] = [next, way]
  }
  return { way: gone, speed: 0 }
}

function endOfCurve(curve: NonNullable<Drive['curve']>): readonly [time: number, way: number] {
  return curve[curve.length - 1] ?? [0, 0]
}

/** docs/evidence.md, "Weak stops": a stop that comes earlier may leave the leaf lower, or moving for longer. */
export function isWeak({ drive }: Closing): boolean {
  return drive.curve !== undefined || drive.decel < drive.accel
}

/** When a closing is over at the latest, stopped or not. */
export function overAt(closing: Closing): number {
  const { delay, decel, curve } = closing.drive
  if (!isWeak(closing)) return closing.end
  return closing.end + (curve ? endOfCurve(curve)[0] : delay + closing.fastest / decel)
}

/** How long after the stop command a leaf rests that had run for `from` to `to`; where stops are weak, for less than `to`. */
export function restsAfter(closing: Closing, from: number, to: number): number {
  const { delay, decel, curve } = closing.drive
  if (curve) return endOfCurve(curve)[0]
  return delay + fastestBetween(closing, (isWeak(closing) ? 0 : from) + delay, to + delay) / decel
}

/** The least way still to go at a time after the closing began, told to stop after having run for `ran` (Infinity: never); where stops are weak, for `ran` or less. */
export function leastLeft(closing: Closing, ran: number, time: number): number {
  const { drive, from } = closing
  if (drive.curve) return from - mostOnCurve(closing, drive.curve, Math.min(ran, time), time)
  const stopped = (at: number) => (time <= at ? from - movedAt(closing, time).way : stoppedAt(closing, at, time - at).left)
  const turns = isWeak(closing) ? Math.max(0, harderFrom(closing) - drive.delay) : Infinity
  return turns < ran ? Math.min(stopped(ran), stopped(turns)) : stopped(ran)
}

/** From when on the closing slows down harder than a stop would; Infinity where it never does. */
function harderFrom({ pieces, drive }: Closing): number {
  let time = 0
  for (const { lasts, accel, jerk } of pieces) {
    if (lasts > 0 && accel < -drive.decel) return time
    if (jerk < 0 && accel + jerk * lasts < -drive.decel) return time + (accel + drive.decel) / -jerk
    time += lasts
  }
  return Infinity
}

const PARTS = 64

/** How far it has come at most at a time, for every stop up to `ran`: on each of 64 equal parts, the way at its end and the curve since its beginning. */
function mostOnCurve(closing: Closing, curve: NonNullable<Drive['curve']>, ran: number, time: number): number {
  const [last, whole] = endOfCurve(curve)
  const rested = Math.min(ran, time - last)
  let most = rested >= 0 ? movedAt(closing, rested).way + whole : 0
  const first = Math.max(0, rested)
  for (let k = 0; first < ran && k < PARTS; k++) {
    const [a, b] = [first + ((ran - first) * k) / PARTS, first + ((ran - first) * (k + 1)) / PARTS]
    most = Math.max(most, movedAt(closing, b).way + onCurve(curve, time - a).way)
  }
  return most
}
