import { type Budget, spend } from './budget.ts'
import { cosineOf, sineOf } from './sine.ts'
import type { Placed, Stance } from './stances.ts'
import type { Side } from './traffic.ts'

/** A leaf that swings or folds, in the plan: docs/evidence.md, "Leaves that turn". Lengths in mm, angles in degrees. */
export interface Hung {
  readonly leaves: readonly { readonly hingeX: number; readonly toward: 1 | -1 }[]
  readonly opensTo: Side
  readonly arm: number
  /** Of the panel that hangs on the first one, at least as long; undefined where the leaf swings as one. */
  readonly second: number | undefined
  readonly openAngle_deg: number
  readonly half: number
}

/** A bar from its start along a unit vector, and `half` to either side. */
export interface Panel {
  readonly x: number
  readonly y: number
  readonly alongX: number
  readonly alongY: number
  readonly length: number
  readonly half: number
}

/** Of the edge, from fully open to shut. */
export function wayOfHung({ arm, openAngle_deg }: Hung): number {
  return (openAngle_deg * Math.PI * arm) / 180
}

/** No point of the leaf moves by more than so many mm for 1 mm of its edge. */
export function mostMoved({ arm, second, half }: Hung): number {
  return second === undefined ? Math.sqrt(arm * arm + half * half) / arm : 2 + half / arm
}

export function panelsAt({ leaves, opensTo, arm, second, half }: Hung, way: number): readonly Panel[] {
  const angle_deg = (way / arm) * (180 / Math.PI)
  const [c, s] = [cosineOf(angle_deg), sineOf(angle_deg)]
  const side = opensTo === 'a' ? 1 : -1
  return leaves.flatMap(({ hingeX, toward }): readonly Panel[] => {
    const first = { x: hingeX, y: 0, alongX: toward * c, alongY: side * s, length: arm, half }
    if (second === undefined) return [first]
    const share = arm / second
    // 1 - (share s)^2 as a sum of what is not negative: as the difference it would lose half of its digits near 90 degrees
    const forth = Math.sqrt(c * c + ((second - arm) / second) * (1 + share) * s * s)
    const joint = { x: hingeX + toward * arm * c, y: side * arm * s }
    return [first, { ...joint, alongX: toward * forth, alongY: -side * share * s, length: second, half }]
  })
}

/** How far the leaf ever reaches to the side to which it opens, as the range of y that it keeps to. */
function keepsTo({ opensTo, arm, openAngle_deg, half }: Hung): readonly [number, number] {
  const reach = half + (openAngle_deg >= 90 ? arm : arm * sineOf(openAngle_deg))
  return opensTo === 'a' ? [-half, reach] : [-reach, half]
}

/** What the leaf can meet of a body. */
export function solidsMet({ solids }: Stance): readonly Placed[] {
  return solids.filter(({ shades }) => !shades)
}

/** Middles along the way with which any solid is where the leaf may ever come. */
export function withinSweep(hung: Hung, stance: Stance, from: Side): { readonly enter: number; readonly leave: number } {
  const [low, high] = keepsTo(hung)
  const extents = solidsMet(stance).map((solid) => {
    const half = solid.shape === 'cylinder' ? solid.radius : halfAlong(solid, [0, 1], 0)
    return [solid.y - half, solid.y + half] as const
  })
  const [back, front] = [Math.min(...extents.map(([y]) => y)), Math.max(...extents.map(([, y]) => y))]
  return from === 'b' ? { enter: low - front, leave: high - back } : { enter: back - high, leave: front - low }
}

/** Every solid is so much smaller on each side: what touches is not met. */
const DEPTH = 1e-3

/** Half of a box's extent along a direction of length 1. */
function halfAlong({ size, turn_deg }: Extract<Placed, { shape: 'box' }>, [nx, ny]: readonly [number, number], depth: number): number {
  const [c, s] = [cosineOf(turn_deg), sineOf(turn_deg)]
  return Math.abs(nx * c + ny * s) * Math.max(0, size[0] / 2 - depth) + Math.abs(ny * c - nx * s) * Math.max(0, size[1] / 2 - depth)
}

/** No more than the distance between a panel and all that a solid covers while the body's middle goes at x from one y to another; below 0 where no axis separates them. */
export function gapTo(panel: Panel, solid: Placed, x: number, y0: number, y1: number): number {
  const at = [x + solid.x, Math.min(y0, y1) + solid.y, Math.max(y0, y1) + solid.y] as const
  if (solid.shape === 'cylinder') return fromSegment(panel, ...at) - Math.max(0, solid.radius - DEPTH)
  const [c, s] = [cosineOf(solid.turn_deg), sineOf(solid.turn_deg)]
  const axes = [
    [panel.alongX, panel.alongY],
    [-panel.alongY, panel.alongX],
    [c, s],
    [-s, c],
    [1, 0],
  ] as const
  return Math.max(...axes.map((axis) => apartAlong(axis, panel, solid, at)))
}

function apartAlong(
  axis: readonly [number, number],
  { x, y, alongX, alongY, length, half }: Panel,
  solid: Extract<Placed, { shape: 'box' }>,
  [solidX, y0, y1]: readonly [number, number, number],
): number {
  const [nx, ny] = axis
  const along = nx * alongX + ny * alongY
  const start = nx * x + ny * y
  const wide = Math.abs(ny * alongX - nx * alongY) * half
  const own = halfAlong(solid, axis, DEPTH)
  const [a, b] = [nx * solidX + ny * y0, nx * solidX + ny * y1]
  const [low, high] = [Math.min(start, start + along * length) - wide, Math.max(start, start + along * length) + wide]
  return Math.max(low - Math.max(a, b) - own, Math.min(a, b) - own - high)
}

/** The distance of a panel from the segment at one x between two y; 0 where they meet. */
function fromSegment({ x, y, alongX, alongY, length, half }: Panel, sx: number, y0: number, y1: number): number {
  // in the panel's frame: u from 0 to its length, v up to `half` to either side
  const inFrame = (py: number) => [(sx - x) * alongX + (py - y) * alongY, (py - y) * alongX - (sx - x) * alongY] as const
  const [a, b] = [inFrame(y0), inFrame(y1)]
  const [du, dv] = [b[0] - a[0], b[1] - a[1]]
  let [from, to] = [0, 1]
  for (const [start, step, low, high] of [
    [a[0], du, 0, length],
    [a[1], dv, -half, half],
  ] as const) {
    if (step === 0) {
      if (start < low || start > high) to = -1
      continue
    }
    const ends = [(low - start) / step, (high - start) / step]
    from = Math.max(from, Math.min(...ends))
    to = Math.min(to, Math.max(...ends))
  }
  if (from <= to) return 0
  const outside = ([u, v]: readonly [number, number]) => lengthOf(Math.max(0, -u, u - length), Math.max(0, Math.abs(v) - half))
  let least = Math.min(outside(a), outside(b))
  const square = du * du + dv * dv
  for (const u of [0, length])
    for (const v of [-half, half]) {
      const t = square > 0 ? Math.min(1, Math.max(0, ((u - a[0]) * du + (v - a[1]) * dv) / square)) : 0
      least = Math.min(least, lengthOf(u - a[0] - t * du, v - a[1] - t * dv))
    }
  return least
}

export function lengthOf(x: number, y: number): number {
  return Math.sqrt(x * x + y * y)
}

const SPARE = 1e-6
const DEEPEST = 40

/** Whether the leaf meets no solid of a body, with its middle at x and anywhere between two y, at any way from `down` to `up`: by pieces that what no point can move exceeds. */
export function isFree(
  hung: Hung,
  { stance, x, y }: { readonly stance: Stance; readonly x: number; readonly y: readonly [number, number] },
  [down, up]: readonly [number, number],
  budget: Budget,
  path: string,
): boolean {
  const solids = solidsMet(stance)
  const most = mostMoved(hung)
  const isApart = (low: number, high: number, deep: number): boolean => {
    const middle = (low + high) / 2
    const panels = panelsAt(hung, middle)
    spend(budget, 2 * panels.length * solids.length, path)
    const gap = panels.reduce((least, panel) => Math.min(least, ...solids.map((solid) => gapTo(panel, solid, x, ...y))), Infinity)
    if (gap > most * (high - middle) + SPARE) return true
    return deep < DEEPEST && gap > SPARE && isApart(low, middle, deep + 1) && isApart(middle, high, deep + 1)
  }
  return isApart(down, up, 0)
}
