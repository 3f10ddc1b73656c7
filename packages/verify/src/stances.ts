import { refuse } from './json.ts'
import type { Body, Door, Floor, Passer, Solid } from './plain.ts'
import { cosineOf, sineOf } from './sine.ts'
import type { Lane, Side, Traffic } from './traffic.ts'
import { wayOfHung } from './turning-leaf.ts'

/** Somebody or something on its way through a lane, from the sides from which it looks like this. Doorway frame, from its middle; mm and degrees. */
export interface Stance {
  readonly body: Body
  readonly posture: number
  readonly beside: Beside | undefined
  readonly from: readonly Side[]
  readonly ofParts: boolean
  readonly solids: readonly Placed[]
  /** Half of its extent along x and y, its own alone. */
  readonly half: readonly [x: number, y: number]
}
/** Another body so close that it is seen, and hides this one. */
export interface Beside {
  readonly body: Body
  readonly posture: number
  readonly where: 'ahead' | 'behind'
}
/** A solid at the yaw of the whole. */
export type Placed = Solid & { /** It is another body's: the leaf does not meet it. */ readonly shades: boolean }

/** Every posture of every body of the lane that passes, alone and, where the lane has followers, with each other one ahead of it and behind. */
export function stancesOf(lane: Lane, door: Door): readonly Stance[] {
  const passing = postureListOf(lane, door).filter(({ falls }) => !falls)
  const alone = passing.flatMap((each) => standingAlone(each, lane.from))
  const { followGap } = lane
  if (followGap === undefined) return alone
  const pairs = passing.flatMap((self) =>
    passing.flatMap((other) => (['ahead', 'behind'] as const).flatMap((where) => together(self, other, where, followGap, lane.from))),
  )
  return [...alone, ...pairs]
}

/** Every posture with each one in which the same body then lies, from each side; none where nobody falls. */
export function fallsOf(lane: Lane, door: Door): readonly { readonly upright: Stance; readonly lying: Stance; readonly from: Side }[] {
  if (!lane.falls) return []
  const all = postureListOf(lane, door)
  return all.flatMap((upright) => {
    if (upright.falls) return []
    const lying = all.filter(({ body, passer }) => body === upright.body && passer.lies)
    if (lying.length === 0) refuse('cannot-show', `bodies/${upright.body.id}/postures`, 'a posture in which it lies once it fell', 'none')
    return lying.flatMap((each) => lane.from.map((from) => ({ upright: turnedFor(upright, from), lying: turnedFor(each, from), from })))
  })
}

interface Listed {
  readonly body: Body
  readonly posture: number
  readonly passer: Passer
  /** It comes about by a fall alone: it does not pass. */
  readonly falls: boolean
}

function postureListOf(lane: Lane, door: Door): readonly Listed[] {
  return lane.bodies.flatMap((id) => {
    const body = door.bodies.find((each) => each.id === id)
    if (body === undefined) throw new Error(`lane ${lane.id} must name a body of the door, got ${id}`)
    const passes = body.passers.some(({ lies }) => !lies)
    return body.passers.map((passer, posture) => {
      if (passer.yaw_deg[0] !== passer.yaw_deg[1]) refuse('cannot-show', `bodies/${id}/postures/${posture}`, 'one yaw', 'a range')
      return { body, posture, passer, falls: passer.lies && passes }
    })
  })
}

function standingAlone(listed: Listed, from: readonly Side[]): readonly Stance[] {
  if (listed.passer.ofParts) return from.map((side) => turnedFor(listed, side))
  return [{ ...turnedFor(listed, 'b'), from }]
}

/** A body of several parts goes forward: from side A it is turned by half a turn. All others look alike from both. */
function turnedFor({ body, posture, passer }: Listed, side: Side): Stance {
  return stanceAt(body, posture, passer, passer.yaw_deg[0] + (passer.ofParts && side === 'a' ? 180 : 0), [side])
}

/** As it stands at one yaw. */
export function stanceAt(body: Body, posture: number, passer: Passer, yaw_deg: number, from: readonly Side[]): Stance {
  const solids = turned(passer.solids, yaw_deg).map((solid) => ({ ...solid, shades: false }))
  return { body, posture, beside: undefined, from, ofParts: passer.ofParts, solids, half: halfAt(passer, yaw_deg) }
}

/** One that passes with another, as `beside` of the evidence names them. */
export function stanceBeside(
  lane: Lane,
  door: Door,
  self: Pick<Listed, 'body' | 'posture'>,
  named: unknown,
  from: Side,
): Stance | undefined {
  const wanted = JSON.stringify(named)
  return stancesOf(lane, door).find(
    ({ body, posture, beside, from: sides }) =>
      body === self.body &&
      posture === self.posture &&
      sides.includes(from) &&
      JSON.stringify(beside && [beside.body.id, beside.posture, beside.where]) === wanted,
  )
}

function together(self: Listed, other: Listed, where: 'ahead' | 'behind', gap: number, from: readonly Side[]): readonly Stance[] {
  const at = ({ passer }: Listed) => passer.yaw_deg[0]
  const half = halfAt(self.passer, at(self))
  const apart = (half[1] + gap + halfAt(other.passer, at(other))[1]) * (where === 'ahead' ? 1 : -1)
  const own = turned(self.passer.solids, at(self)).map((solid) => ({ ...solid, shades: false }))
  const others = turned(other.passer.solids, at(other)).map((solid) => ({ ...solid, y: solid.y + apart, shades: true }))
  const beside = { body: other.body, posture: other.posture, where }
  return from.map((side) => ({
    body: self.body,
    posture: self.posture,
    beside,
    from: [side],
    ofParts: true,
    solids: turned([...own, ...others], side === 'a' ? 180 : 0),
    half,
  }))
}

function turned<T extends Solid>(solids: readonly T[], yaw_deg: number): readonly T[] {
  const [c, s] = [cosineOf(yaw_deg), sineOf(yaw_deg)]
  return solids.map((solid) => {
    const place = { x: solid.x * c - solid.y * s, y: solid.x * s + solid.y * c }
    return solid.shape === 'box' ? { ...solid, ...place, turn_deg: solid.turn_deg + yaw_deg } : { ...solid, ...place }
  })
}

function halfAt({ half: [a, b], round }: Passer, yaw_deg: number): readonly [number, number] {
  return round ? [a, a] : halfOfBox(a, b, yaw_deg)
}

function halfOfBox(a: number, b: number, yaw_deg: number): readonly [number, number] {
  const [c, s] = [Math.abs(cosineOf(yaw_deg)), Math.abs(sineOf(yaw_deg))]
  return [c * a + s * b, s * a + c * b]
}

/** Middles of a body that keeps to the lane: at both edges and between; only in the middle where the lane is as narrow as the body. */
export function placesAcross({ xMin, xMax }: Lane, half: number): readonly number[] {
  const [left, middle, right] = [xMin + half, (xMin + xMax) / 2, xMax - half]
  return left < right ? [left, middle, right] : [middle]
}

/** A solid as the leaf meets it: its extent along y from the body's middle, and the way at which the edge meets it. */
export interface Met {
  readonly index: number
  readonly low: number
  readonly high: number
  readonly clear: number
}

/** What of a body at x the leaf can meet; what another one covers along y and in the way is left out, of two that are alike the later one. */
export function metOf({ leaf, width }: Traffic, floor: Floor, { solids, half }: Stance, x: number): readonly Met[] {
  const stands = leaf.travel === 'down' ? highest(floor, [x], leaf.half + half[1]) - highest(floor, [0, width], leaf.half) : 0
  const met = solids.flatMap((solid, index): Met[] => {
    if (solid.shades) return []
    const own =
      solid.shape === 'cylinder' ? ([solid.radius, solid.radius] as const) : halfOfBox(solid.size[0] / 2, solid.size[1] / 2, solid.turn_deg)
    const top = solid.from + (solid.shape === 'cylinder' ? solid.height : solid.size[2])
    const at = x + solid.x
    const clear =
      leaf.travel === 'down'
        ? stands + top
        : leaf.travel === 'toward-zero'
          ? at + own[0]
          : leaf.travel === 'toward-width'
            ? width - at + own[0]
            : Math.abs(at - width / 2) + own[0]
    return [{ index, low: solid.y - own[1], high: solid.y + own[1], clear }]
  })
  const covers = (a: Met, b: Met) => a.low <= b.low && a.high >= b.high && a.clear >= b.clear
  return met.filter((one, i) => !met.some((other, k) => k !== i && covers(other, one) && (k < i || !covers(one, other))))
}

/** Middles along the way with which it is in the leaf's plane. */
export function inPlane({ low, high }: Met, from: Side, leafHalf: number): { readonly enter: number; readonly leave: number } {
  return from === 'b' ? { enter: -leafHalf - high, leave: leafHalf - low } : { enter: -leafHalf + low, leave: leafHalf + high }
}

/** The way of the leaf from fully open. */
export function wholeWay({ leaf, width, height }: Traffic, floor: Floor): number {
  if (leaf.hung) return wayOfHung(leaf.hung)
  if (leaf.travel === 'down') return height - highest(floor, [0, width], leaf.half)
  return leaf.travel === 'both-inward' ? width / 2 : width
}

/** The highest point of the floor at these x, up to so far to both sides of y = 0. */
export function highest({ profile, slope }: Floor, xs: readonly number[], far: number): number {
  const at = (y: number): number => {
    const after = profile.findIndex(([each]) => each >= y)
    const [last, next] = [profile[after === -1 ? profile.length - 1 : after - 1], profile[after === -1 ? profile.length - 1 : after]]
    if (next === undefined) return 0
    if (last === undefined || next[0] === last[0]) return next[1]
    return last[1] + ((y - last[0]) * (next[1] - last[1])) / (next[0] - last[0])
  }
  const ys = [-far, ...profile.map(([y]) => y).filter((y) => -far < y && y < far), far]
  return Math.max(...ys.flatMap((y) => xs.map((x) => at(y) + slope * x)))
}
