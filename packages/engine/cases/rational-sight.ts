/*
 * What one beam sees, decided without rounding: every number is taken as the binary fraction that it is, and compared in whole numbers. Lengths
 * are whole multiples of 2^-80 mm, turns of 2^-60. Written from docs/method.md, section 2; slow.
 */

/** A ratio of whole numbers; `below` is positive. */
export interface Ratio {
  readonly above: bigint
  readonly below: bigint
}

const LENGTH_BITS = 80n
const TURN_BITS = 60n
const LENGTHS = 2 ** Number(LENGTH_BITS)
const TURNS = 2 ** Number(TURN_BITS)

/** The nearest length that a few additions keep exactly: a multiple of 2^-40 mm. */
export const asLength = (value: number) => Math.round(value * 2 ** 40) / 2 ** 40
/** The nearest part of a direction, slope or brightness that `exactTurn` takes. */
export const asTurn = (value: number) => Math.round(value * TURNS) / TURNS

function whole(value: number, scale: number): bigint {
  const scaled = value * scale
  if (!Number.isSafeInteger(scaled) && scaled !== Math.round(scaled))
    throw new Error(`the number must be a multiple of 1 / ${scale}, got ${value}`)
  return BigInt(scaled)
}
/** In multiples of 2^-80 mm. */
export const exactLength = (value: number) => whole(value, LENGTHS)
/** In multiples of 2^-60. */
export const exactTurn = (value: number) => whole(value, TURNS)

export const ratio = (above: bigint, below: bigint): Ratio => (below < 0n ? { above: -above, below: -below } : { above, below })
const order = (a: Ratio, b: Ratio): number => {
  const left = a.above * b.below
  const right = b.above * a.below
  return left < right ? -1 : left > right ? 1 : 0
}
const moved = ({ above, below }: Ratio, by: bigint): Ratio => ({ above: (above << LENGTH_BITS) + by * below, below: below << LENGTH_BITS })

export interface ExactLine {
  readonly origin: readonly [bigint, bigint, bigint] // lengths
  readonly along: readonly [bigint, bigint, bigint] // turns
}

/** A box or cylinder that stands at (x, y) on the floor z = z0 + slopeX x + slopeY y. Lengths and turns. */
export interface ExactBody {
  readonly round: boolean
  readonly halfA: bigint
  readonly halfB: bigint
  readonly low: bigint
  readonly high: bigint
  readonly cosYaw: bigint
  readonly sinYaw: bigint
  readonly reflectance: bigint
}

export interface ExactGround {
  readonly z0: bigint
  readonly slopeX: bigint
  readonly slopeY: bigint
}

export interface ExactLimits {
  /** Background less margin. */
  readonly end: bigint
  readonly maxRange: bigint
  readonly rangeRef: bigint
  readonly reflectanceRef: bigint
  readonly xMin: bigint
  readonly xMax: bigint
  readonly clearance: bigint
  readonly top: bigint
}

/**
 * Where a line enters: a ratio, or the first crossing of a round side, which is compared by squaring and whose reach has a root of a root: the caller
 * sees to it that a round side is always bright enough.
 */
type Entry = { readonly before: (limit: Ratio) => boolean; readonly after: (limit: Ratio) => boolean; readonly brightest: boolean }

/** The line misses the body, enters it too early or too late along its way for some limit, on too dark a face, or sees it. */
export type Verdict = 'misses' | 'early' | 'late' | 'dark' | 'outside' | 'seen'

/**
 * Whether the line sees the body in the field.
 *
 * @param spare in lengths: every limit must hold by this much, through any face that is entered within as much of the last; a negative one lets each
 *   fail by as much. 0 is the rule itself. The body stays as it is: the caller grows or shrinks it
 */
export function seesExactly(
  line: ExactLine,
  body: ExactBody,
  ground: ExactGround,
  x: bigint,
  y: bigint,
  limits: ExactLimits,
  spare: bigint,
): Verdict {
  const entries = body.round ? roundEntry(line, body, ground, x, y, limits, spare) : boxEntry(line, body, ground, x, y, limits, spare)
  if (entries === undefined) return 'misses'
  return inLimits(line, ground, limits, entries, spare)
}

interface Axis {
  readonly at: bigint // a length times a turn
  readonly slope: bigint // a turn times a turn
  readonly low: bigint // as `at`
  readonly high: bigint
}

function heightAxis(
  { origin, along }: ExactLine,
  { low, high }: ExactBody,
  { z0, slopeX, slopeY }: ExactGround,
  x: bigint,
  y: bigint,
): Axis {
  const under = (z0 << TURN_BITS) + slopeX * x + slopeY * y
  return { at: (origin[2] << TURN_BITS) - under, slope: along[2] << TURN_BITS, low: low << TURN_BITS, high: high << TURN_BITS }
}

const crossing = ({ at, slope }: Axis, face: bigint): Ratio => ratio((face - at) << TURN_BITS, slope << LENGTH_BITS)

function boxEntry(
  line: ExactLine,
  body: ExactBody,
  ground: ExactGround,
  x: bigint,
  y: bigint,
  limits: ExactLimits,
  spare: bigint,
): Entry | undefined {
  const { origin, along } = line
  const { cosYaw, sinYaw, halfA, halfB } = body
  const [px, py] = [origin[0] - x, origin[1] - y]
  const axes: Axis[] = [
    { at: px * cosYaw + py * sinYaw, slope: along[0] * cosYaw + along[1] * sinYaw, low: -halfA << TURN_BITS, high: halfA << TURN_BITS },
    { at: py * cosYaw - px * sinYaw, slope: along[1] * cosYaw - along[0] * sinYaw, low: -halfB << TURN_BITS, high: halfB << TURN_BITS },
    heightAxis(line, body, ground, x, y),
  ]
  let last: Ratio | undefined
  let first: Ratio | undefined
  let earliest: Ratio | undefined
  const room = (spare < 0n ? -spare : spare) << TURN_BITS
  const enters: { readonly axis: Axis; readonly late: Ratio }[] = []
  for (const axis of axes) {
    if (axis.slope === 0n) {
      if (!(axis.low < axis.at && axis.at < axis.high)) return undefined
      continue
    }
    const t = crossing(axis, axis.slope > 0n ? axis.low : axis.high)
    const leaves = crossing(axis, axis.slope > 0n ? axis.high : axis.low)
    const off = axis.slope > 0n ? room : -room
    const early = crossing(axis, (axis.slope > 0n ? axis.low : axis.high) - off)
    if (earliest === undefined || order(early, earliest) > 0) earliest = early
    enters.push({ axis, late: crossing(axis, (axis.slope > 0n ? axis.low : axis.high) + off) })
    if (last === undefined || order(t, last) > 0) last = t
    if (first === undefined || order(leaves, first) < 0) first = leaves
  }
  if (last === undefined || first === undefined || earliest === undefined || order(last, first) >= 0) return undefined
  // with something to spare every face that may be the entered one has to be bright enough; letting fail, one
  const candidates = enters.filter(({ late }) => order(late, earliest) >= 0)
  const bright = candidates.map(({ axis }) => isBright(axis.slope, last as Ratio, body, limits, spare))
  const brightest = spare < 0n ? bright.includes(true) : !bright.includes(false)
  return { before: (limit) => order(last as Ratio, limit) < 0, after: (limit) => order(last as Ratio, limit) > 0, brightest }
}

/** t^2 rhoRef <= rangeRef^2 rho cos, the inverse square of the reach in clear air without its root. */
function isBright(slope: bigint, t: Ratio, { reflectance }: ExactBody, { rangeRef, reflectanceRef }: ExactLimits, spare: bigint): boolean {
  const { above, below } = moved(t, spare)
  const cosine = slope < 0n ? -slope : slope
  const left = above * above * reflectanceRef
  const right = rangeRef * rangeRef * reflectance * cosine * below * below
  return above < 0n || left << (2n * LENGTH_BITS + 2n * TURN_BITS) <= right
}

function roundEntry(
  line: ExactLine,
  body: ExactBody,
  ground: ExactGround,
  x: bigint,
  y: bigint,
  limits: ExactLimits,
  spare: bigint,
): Entry | undefined {
  const { origin, along } = line
  const [px, py] = [origin[0] - x, origin[1] - y]
  const [dx, dy] = along
  const radius = body.halfA
  const level = dx * dx + dy * dy
  const cross = px * dy - py * dx
  const inside = radius * radius * level - cross * cross // (length times turn) squared
  const up = heightAxis(line, body, ground, x, y)
  const ends =
    up.slope === 0n ? undefined : [crossing(up, up.slope > 0n ? up.low : up.high), crossing(up, up.slope > 0n ? up.high : up.low)]
  if (ends === undefined && !(up.low < up.at && up.at < up.high)) return undefined
  const byEnd = (t: Ratio) => planeEntry(t, isBright(up.slope, t, body, limits, spare))
  if (level === 0n) {
    if (!(px * px + py * py < radius * radius) || ends === undefined) return undefined
    return byEnd(ends[0] as Ratio)
  }
  if (inside <= 0n) return undefined
  const middle = -(px * dx + py * dy)
  // t = (middle -+ root(inside)) / level
  const side = (sign: 1n | -1n) => (limit: Ratio) => {
    // the sign of t - limit, both sides times limit.below level: apart +- root(inside) below, and roots are compared by their squares
    const apart = ((middle * limit.below) << TURN_BITS) - ((limit.above * level) << LENGTH_BITS)
    const scale = limit.below << TURN_BITS
    const square = inside * scale * scale
    const less = apart * apart
    if (sign < 0n) return apart <= 0n ? -1 : less < square ? -1 : less > square ? 1 : 0
    return apart >= 0n ? 1 : less < square ? 1 : less > square ? -1 : 0
  }
  const near = side(-1n)
  const far = side(1n)
  if (ends === undefined) return { before: (limit) => near(limit) < 0, after: (limit) => near(limit) > 0, brightest: true }
  const [enters, leaves] = ends as [Ratio, Ratio]
  if (order(enters, leaves) >= 0 || far(enters) <= 0 || near(leaves) >= 0) return undefined
  if (near(enters) <= 0) return byEnd(enters)
  return { before: (limit) => near(limit) < 0, after: (limit) => near(limit) > 0, brightest: true }
}

function planeEntry(t: Ratio, brightest: boolean): Entry {
  return { before: (limit) => order(t, limit) < 0, after: (limit) => order(t, limit) > 0, brightest }
}

function inLimits(
  { origin, along }: ExactLine,
  { z0, slopeX, slopeY }: ExactGround,
  limits: ExactLimits,
  entry: Entry,
  spare: bigint,
): Verdict {
  const length = (value: bigint): Ratio => ratio(value, 1n << LENGTH_BITS)
  if (!entry.after(length(spare))) return 'early'
  if (!entry.before(length(limits.end - spare)) || entry.after(length(limits.maxRange - spare))) return 'late'
  if (!entry.brightest) return 'dark'
  let missed: 'early' | 'late' | undefined
  // a + b t is at least a limit, as a limit on t; a and the limit are lengths times turns, b a turn times a turn
  const atLeast = (a: bigint, b: bigint, limit: bigint): boolean => {
    if (b === 0n) return a >= limit // no place on the line is within
    const t = ratio((limit - a) << TURN_BITS, b << LENGTH_BITS)
    if (b > 0n ? !entry.before(t) : !entry.after(t)) return true
    missed ??= b > 0n ? 'early' : 'late'
    return false
  }
  const [ox, oy, oz] = origin
  const x0 = ox << TURN_BITS
  const xSlope = along[0] << TURN_BITS
  const room = (value: bigint) => value << TURN_BITS
  const across = atLeast(x0, xSlope, room(limits.xMin + spare)) && atLeast(-x0, -xSlope, room(-limits.xMax + spare))
  const height = (oz << TURN_BITS) - (z0 << TURN_BITS) - slopeX * ox - slopeY * oy
  const rises = (along[2] << TURN_BITS) - slopeX * along[0] - slopeY * along[1]
  const up = atLeast(height, rises, room(limits.clearance + spare)) && atLeast(-height, -rises, room(-limits.top + spare))
  return across && up ? 'seen' : (missed ?? 'outside')
}

/** Whether a body's plan overlaps an obstacle's, and their heights do: strictly, and by `spare` (in lengths). Boxes and discs. */
export interface ExactFoot {
  readonly x: bigint
  readonly y: bigint
  readonly halfA: bigint
  readonly halfB: bigint
  readonly cosYaw: bigint
  readonly sinYaw: bigint
  readonly radius: bigint // 0 for a box
  readonly from: bigint
  readonly to: bigint
}

export function overlapsExactly(body: ExactBody, foot: ExactFoot, { z0, slopeX, slopeY }: ExactGround, x: bigint, y: bigint): boolean {
  const under = (z0 << TURN_BITS) + slopeX * x + slopeY * y
  if (!(foot.from << TURN_BITS < under + (body.high << TURN_BITS) && under + (body.low << TURN_BITS) < foot.to << TURN_BITS)) return false
  const [dx, dy] = [x - foot.x, y - foot.y]
  if (body.round && foot.radius > 0n) return dx * dx + dy * dy < (body.halfA + foot.radius) * (body.halfA + foot.radius)
  if (body.round || foot.radius > 0n) {
    const core = body.round ? foot : body
    const radius = body.round ? body.halfA : foot.radius
    const past = (away: bigint, half: bigint) => {
      const beyond = (away < 0n ? -away : away) - (half << TURN_BITS)
      return beyond > 0n ? beyond : 0n
    }
    const u = past(dx * core.cosYaw + dy * core.sinYaw, core.halfA)
    const v = past(dy * core.cosYaw - dx * core.sinYaw, core.halfB)
    const reach = radius << TURN_BITS
    return u * u + v * v < reach * reach
  }
  const size = (value: bigint) => (value < 0n ? -value : value)
  const c = size(body.cosYaw * foot.cosYaw + body.sinYaw * foot.sinYaw)
  const s = size(body.sinYaw * foot.cosYaw - body.cosYaw * foot.sinYaw)
  const apart = (nx: bigint, ny: bigint, own: bigint, a: bigint, b: bigint) =>
    size(nx * dx + ny * dy) << TURN_BITS < (own << (2n * TURN_BITS)) + a + b
  return (
    apart(body.cosYaw, body.sinYaw, body.halfA, foot.halfA * c, foot.halfB * s) &&
    apart(-body.sinYaw, body.cosYaw, body.halfB, foot.halfA * s, foot.halfB * c) &&
    apart(foot.cosYaw, foot.sinYaw, foot.halfA, body.halfA * c, body.halfB * s) &&
    apart(-foot.sinYaw, foot.cosYaw, foot.halfB, body.halfA * s, body.halfB * c)
  )
}
