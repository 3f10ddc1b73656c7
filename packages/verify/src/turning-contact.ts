import { refuse } from './json.ts'
import { cosineOf, sineOf } from './sine.ts'
import type { Placed, Stance } from './stances.ts'
import type { Side } from './traffic.ts'
import { gapTo, type Hung, lengthOf, mostMoved, type Panel, panelsAt, solidsMet } from './turning-leaf.ts'

/** A body past a leaf that turns: docs/evidence.md, "Of a leaf that turns". mm and s. */
export interface Past {
  readonly hung: Hung
  readonly coming: Stance
  /** Another than who comes only where it has fallen. */
  readonly met: Stance
  readonly x: number
  readonly from: Side
}

/** What is claimed of the instant of contact. */
export interface Instant {
  /** Way still to go. */
  readonly left: number
  /** Speeds toward shut that the edge may have then. */
  readonly speeds: readonly number[]
  readonly place: number
  readonly bodySpeed: number
  /** By how much the edge may be elsewhere, for what sight may be off. */
  readonly off: number
}

const TOUCH = 0.01
/** A point in which both touch is known to this. */
const POINT = 1

/** Refuses if the body comes against the leaf where it rests before the closing, by when that begins. */
export function mustNotRestOn(
  { hung, coming, met, x, from }: Past,
  opening: number,
  {
    place,
    comes,
    lies,
  }: {
    readonly place: number /** Else it is there from the first. */
    readonly comes: boolean /** It has fallen by then. */
    readonly lies: boolean
  },
  path: string,
): void {
  const panels = panelsAt(hung, opening)
  const far = 2 * lengthOf(hung.arm, hung.second ?? 0) + 1e5
  const isOn = (stance: Stance, first: number, last: number) =>
    panels.some((panel) => solidsMet(stance).some((solid) => gapTo(panel, solid, x, yOf(from, first), yOf(from, last)) < -TOUCH))
  if (comes ? isOn(coming, -far, place) || (lies && isOn(met, place, place)) : isOn(met, place, place))
    refuse('not-shown', path, 'a body that has not come against the leaf before it closes', `its middle ${place} mm along its way`)
}

/** Between what the relative speed at the contact lies; refuses unless some panel touches a solid then. */
export function touchAt(
  { hung, met, x, from }: Past,
  { left, speeds, place, bodySpeed, off }: Instant,
  path: string,
): readonly [number, number] {
  const within = TOUCH + mostMoved(hung) * off
  const y = yOf(from, place)
  const pairs = panelsAt(hung, left).flatMap((panel, p) =>
    solidsMet(met).map((solid) => ({ p, panel, solid, gap: gapTo(panel, solid, x, y, y) })),
  )
  const least = pairs.reduce((gap, pair) => Math.min(gap, pair.gap), Infinity)
  if (Math.abs(least) > within) refuse('not-shown', path, `a leaf that just touches the body, to ${within} mm`, `${least} mm between them`)
  const bodyY = from === 'b' ? bodySpeed : -bodySpeed
  const ranges = pairs
    .filter(({ gap }) => gap <= within)
    .flatMap(({ p, panel, solid }) =>
      speeds.map((speed) => {
        const velocities = pointsOf(panel, solid, x, y, within + POINT).map((point) => {
          const [vx, vy] = velocityAt(hung, p, left, speed, point)
          return [vx, vy - bodyY] as const
        })
        return [leastOf(velocities), Math.max(...velocities.map(([vx, vy]) => lengthOf(vx, vy)))] as const
      }),
    )
  const turns = Math.max(...speeds) / hung.arm
  const [low, high] = [Math.min(...ranges.map(([a]) => a)), Math.max(...ranges.map(([, b]) => b))]
  return [Math.max(0, low - turns * (within + POINT)), high + turns * (within + POINT)]
}

function yOf(from: Side, place: number): number {
  return from === 'b' ? place : -place
}

type Point = readonly [x: number, y: number]

/** Ends of what touches: corners of either near the other, of a cylinder what of the panel is next to it. */
function pointsOf(panel: Panel, solid: Placed, x: number, y: number, near: number): readonly Point[] {
  const middle: Point = [x + solid.x, y + solid.y]
  if (solid.shape === 'cylinder') {
    const [u, v] = inFrame(panel, middle)
    const [cu, cv] = [Math.min(panel.length, Math.max(0, u)), Math.min(panel.half, Math.max(-panel.half, v))]
    return [[panel.x + cu * panel.alongX - cv * panel.alongY, panel.y + cu * panel.alongY + cv * panel.alongX]]
  }
  const [c, s] = [cosineOf(solid.turn_deg), sineOf(solid.turn_deg)]
  const [a, b] = [solid.size[0] / 2, solid.size[1] / 2]
  const box: Panel = { x: middle[0] - a * c, y: middle[1] - a * s, alongX: c, alongY: s, length: 2 * a, half: b }
  const isNear = (bar: Panel, point: Point) => {
    const [u, v] = inFrame(bar, point)
    return u > -near && u < bar.length + near && Math.abs(v) < bar.half + near
  }
  return [...cornersOf(box).filter((corner) => isNear(panel, corner)), ...cornersOf(panel).filter((corner) => isNear(box, corner))]
}

function inFrame({ x, y, alongX, alongY }: Panel, [px, py]: Point): Point {
  return [(px - x) * alongX + (py - y) * alongY, (py - y) * alongX - (px - x) * alongY]
}

function cornersOf({ x, y, alongX, alongY, length, half }: Panel): readonly Point[] {
  return [0, length].flatMap((u) => [-half, half].map((v): Point => [x + u * alongX - v * alongY, y + u * alongY + v * alongX]))
}

/** Of a point that goes with panel `p` of all, while the edge goes toward shut. */
export function velocityAt({ leaves, opensTo, arm, second }: Hung, p: number, left: number, speed: number, [x, y]: Point): Point {
  const perLeaf = second === undefined ? 1 : 2
  const leaf = leaves[Math.floor(p / perLeaf)]
  if (leaf === undefined) throw new Error(`p must be the number of a panel, got ${p}`)
  const { hingeX, toward } = leaf
  const side = opensTo === 'a' ? 1 : -1
  const turning = (-speed / arm) * toward * side // counter-clockwise
  if (second === undefined || p % 2 === 0) return [-turning * y, turning * (x - hingeX)]
  const angle_deg = (left / arm) * (180 / Math.PI)
  const [c, s] = [cosineOf(angle_deg), sineOf(angle_deg)]
  const joint: Point = [hingeX + toward * arm * c, side * arm * s]
  const share = arm / second
  const forth = Math.sqrt(c * c + ((second - arm) / second) * (1 + share) * s * s)
  const back = second === arm ? -turning : (-turning * share * c) / forth
  return [-turning * joint[1] - back * (y - joint[1]), turning * (joint[0] - hingeX) + back * (x - joint[0])]
}

/** The least length of anything between two of these. */
function leastOf(velocities: readonly Point[]): number {
  return velocities.reduce(
    (least, [ax, ay]) =>
      velocities.reduce((so, [bx, by]) => {
        const [dx, dy] = [bx - ax, by - ay]
        const square = dx * dx + dy * dy
        const t = square > 0 ? Math.min(1, Math.max(0, -(ax * dx + ay * dy) / square)) : 0
        return Math.min(so, lengthOf(ax + t * dx, ay + t * dy))
      }, least),
    Infinity,
  )
}
