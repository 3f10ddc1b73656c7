import { offsetOf } from '../coverage/parts-along.ts'
import type { Stance } from '../coverage/scene.ts'
import { type BodyPart, type Posture, partsOf } from '../model/body.ts'
import { cornersOf, type Slab, type Swing, slabsAt } from '../motion/turning-leaf.ts'
import { boxCorners, gapToPolygon, type PlanPoint } from '../space/plan-distance.ts'
import { hypot2, turnOf } from '../space/trigonometry.ts'

/** What a solid covers in the plan, about the body's middle at x, its y at 0; on its way it moves along y without turning. mm. */
export interface Solid {
  readonly name: string | undefined
  readonly outline: Outline
}
/** Convex. */
export interface Outline {
  /** Of a box counter-clockwise; of a cylinder its middle, or both ends of what its middle covers. */
  readonly points: readonly PlanPoint[]
  /** It grows by this all round: 0 for a box. */
  readonly radius_mm: number
  /** Of a box: the outward unit normal of each side, and how far out the side lies. */
  readonly sides: readonly (readonly [x: number, y: number, out_mm: number])[]
}

/** A leaf that turns touches what it overlaps by less than this: then a body that stands flush with it is none that it meets. */
export const DEPTH_MM = 1e-3
/** Nearer than this counts as contact of a solid that is shrunk by `DEPTH_MM`: it overlaps the real one then. */
const NEAR_MM = 2e-5
const MOST_ADVANCES = 400

/** What the leaf can meet of a stance whose middle keeps one x: each part for itself, or all of it, as high as it may be; `depth_mm` smaller all round. */
export function solidsOf({ posture, yaw_rad }: Stance, x_mm: number, depth_mm = DEPTH_MM): readonly Solid[] {
  const parts = partsOf(posture)
  if (parts === undefined) return [solid(undefined, posture, [x_mm, 0], yaw_rad, depth_mm)]
  return parts
    .filter(({ shadesOnly }) => shadesOnly !== true)
    .map((part) => {
      const [alongX_mm, alongY_mm] = offsetOf(part, yaw_rad)
      return solid(part.name || undefined, part, [x_mm + alongX_mm, alongY_mm], yaw_rad + (part.turn_rad ?? 0), depth_mm)
    })
}

function solid(name: string | undefined, shape: Posture | BodyPart, middle: PlanPoint, yaw_rad: number, depth_mm: number): Solid {
  if (shape.shape === 'cylinder') return { name, outline: outlineOf([middle], Math.max(0, shape.radius_mm - depth_mm)) }
  const size: PlanPoint = [Math.max(DEPTH_MM, shape.a_mm - 2 * depth_mm), Math.max(DEPTH_MM, shape.b_mm - 2 * depth_mm)]
  return { name, outline: outlineOf(boxCorners(middle, size, turnOf(yaw_rad)), 0) }
}

function outlineOf(points: readonly PlanPoint[], radius_mm: number): Outline {
  const sides = points.map(([x, y], i): Outline['sides'][number] => {
    const [toX, toY] = points[(i + 1) % points.length] as PlanPoint
    const length = hypot2(toX - x, toY - y)
    const [nx, ny] = [(toY - y) / length, (x - toX) / length]
    return [nx, ny, nx * x + ny * y]
  })
  return { points, radius_mm, sides: points.length > 2 ? sides : [] }
}

/** Its extent along y from the body's middle. */
export function extentOf({ outline: { points, radius_mm } }: Solid): readonly [from_mm: number, to_mm: number] {
  const ys = points.map(([, y]) => y)
  return [Math.min(...ys) - radius_mm, Math.max(...ys) + radius_mm]
}

/** All that a solid covers while the body's middle goes from one y to another. */
export function sweptBy({ outline: { points, radius_mm } }: Solid, y0_mm: number, y1_mm: number): Outline {
  const moved = (y_mm: number) => points.map(([x, y]): PlanPoint => [x, y + y_mm])
  const all = [...moved(y0_mm), ...moved(y1_mm)]
  return outlineOf(points.length > 1 ? hullOf(all) : all, radius_mm)
}

/** Andrew's monotone chain, counter-clockwise. */
function hullOf(points: readonly PlanPoint[]): readonly PlanPoint[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (list: readonly PlanPoint[]) => {
    const chain: PlanPoint[] = []
    for (const point of list) {
      while (chain.length > 1 && turn(chain[chain.length - 2] as PlanPoint, chain[chain.length - 1] as PlanPoint, point) <= 0) chain.pop()
      chain.push(point)
    }
    return chain.slice(0, -1)
  }
  return [...half(sorted), ...half(sorted.reverse())]
}

function turn(a: PlanPoint, b: PlanPoint, c: PlanPoint): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/**
 * No more than the gap between the leaf, where it stands, and an outline that is moved along y, and above 0 where they are apart: for a box the widest gap
 * between both along a normal of either, for a cylinder the gap itself.
 */
export function apart_mm(slabs: readonly Slab[], outline: Outline, y_mm: number): number {
  let least = Infinity
  for (const slab of slabs) {
    const gap = outline.sides.length > 0 ? boxApart_mm(slab, outline, y_mm) : roundApart_mm(slab, outline, y_mm)
    if (gap < least) least = gap
  }
  return Math.max(0, least)
}

function boxApart_mm({ x_mm, y_mm, alongX, alongY, length_mm, half_mm }: Slab, { points, sides }: Outline, moved_mm: number): number {
  let [fromAlong, toAlong, fromAcross, toAcross] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const [px, py] of points) {
    const dx = px - x_mm
    const dy = py + moved_mm - y_mm
    const along = dx * alongX + dy * alongY
    const across = dy * alongX - dx * alongY
    if (along < fromAlong) fromAlong = along
    if (along > toAlong) toAlong = along
    if (across < fromAcross) fromAcross = across
    if (across > toAcross) toAcross = across
  }
  let widest = Math.max(fromAlong - length_mm, -toAlong, fromAcross - half_mm, -half_mm - toAcross)
  const middleX = x_mm + (alongX * length_mm) / 2
  const middleY = y_mm + (alongY * length_mm) / 2 - moved_mm
  for (const [nx, ny, out_mm] of sides) {
    const reach = (Math.abs(nx * alongX + ny * alongY) * length_mm) / 2 + Math.abs(ny * alongX - nx * alongY) * half_mm
    const gap = nx * middleX + ny * middleY - reach - out_mm
    if (gap > widest) widest = gap
  }
  return widest
}

function roundApart_mm({ x_mm, y_mm, alongX, alongY, length_mm, half_mm }: Slab, { points, radius_mm }: Outline, moved_mm: number): number {
  const inPanel = ([px, py]: PlanPoint): PlanPoint => {
    const [dx, dy] = [px - x_mm, py + moved_mm - y_mm]
    return [dx * alongX + dy * alongY, dy * alongX - dx * alongY]
  }
  const ends = points.map(inPanel)
  return segmentToBar(ends[0] as PlanPoint, ends[ends.length - 1] as PlanPoint, length_mm, half_mm) - radius_mm
}

/** From a segment to the bar from 0 to its length along the first axis, and to either side of it. */
function segmentToBar(a: PlanPoint, b: PlanPoint, length_mm: number, half_mm: number): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const square = dx * dx + dy * dy
  // the stretch of the segment in the bar, cut by both pairs of sides
  let [from, to] = [0, 1]
  const cut = (at: number, speed: number, low: number, high: number) => {
    if (speed === 0) {
      if (at < low || at > high) to = -1
      return
    }
    const [p, q] = [(low - at) / speed, (high - at) / speed]
    from = Math.max(from, Math.min(p, q))
    to = Math.min(to, Math.max(p, q))
  }
  cut(a[0], dx, 0, length_mm)
  cut(a[1], dy, -half_mm, half_mm)
  if (from <= to) return 0
  const outside = ([u, v]: PlanPoint) => hypot2(Math.max(0, -u, u - length_mm), Math.max(0, Math.abs(v) - half_mm))
  let least = Math.min(outside(a), outside(b))
  if (square > 0)
    for (const u of [0, length_mm])
      for (const v of [-half_mm, half_mm]) {
        const t = Math.min(1, Math.max(0, ((u - a[0]) * dx + (v - a[1]) * dy) / square))
        least = Math.min(least, hypot2(u - a[0] - t * dx, v - a[1] - t * dy))
      }
  return least
}

export function isMet(gap_mm: number): boolean {
  return gap_mm < NEAR_MM
}

/** Where both touch: the panel, and a point of the outline that is nearest to it. */
export function touchOf(
  slabs: readonly Slab[],
  { points, radius_mm }: Outline,
  y_mm: number,
): { readonly panel: number; readonly at: PlanPoint } {
  const moved = points.map(([x, y]): PlanPoint => [x, y + y_mm])
  const gaps = slabs.map((slab, panel) => {
    const corners = cornersOf(slab)
    if (moved.length > 2) return { panel, ...gapToPolygon(corners, { kind: 'polygon', corners: moved }) }
    const middle = moved[0] as PlanPoint
    const { gap_mm } = gapToPolygon(corners, { kind: 'disc', middle, radius_mm })
    return { panel, gap_mm, at: nearestInBar(slab, middle) }
  })
  return gaps.reduce((best, each) => (each.gap_mm < best.gap_mm ? each : best))
}

function nearestInBar({ x_mm, y_mm, alongX, alongY, length_mm, half_mm }: Slab, [px, py]: PlanPoint): PlanPoint {
  const [dx, dy] = [px - x_mm, py - y_mm]
  const along = Math.min(length_mm, Math.max(0, dx * alongX + dy * alongY))
  const across = Math.min(half_mm, Math.max(-half_mm, dy * alongX - dx * alongY))
  return [x_mm + along * alongX - across * alongY, y_mm + along * alongY + across * alongX]
}

/** Ways of the edge outside of which the leaf does not meet what a solid covers: it is met below `clear`, and above `passed`. */
export interface Reached {
  readonly clear: number
  /** -Infinity where the shut leaf meets it as well. */
  readonly passed: number
}

/**
 * From fully open down, and from shut up, the way is advanced by what the gap allows: no point of the leaf moves by more than `ratio` times its edge, so
 * that nothing is met on the way. Where that ends before a contact is reached, contact is assumed.
 */
export function reachedWays(swing: Swing, ratio: number, way_mm: number, swept: Outline): Reached | undefined {
  const clear = clearBelow(swing, ratio, way_mm, swept)
  if (clear === undefined) return undefined
  const passed = advance(swing, ratio, swept, 0, clear)
  return { clear, passed: passed === undefined || passed <= 0 ? -Infinity : passed }
}

/** The first half of it: undefined where the leaf comes down to shut without a contact. */
export function clearBelow(swing: Swing, ratio: number, way_mm: number, swept: Outline): number | undefined {
  return advance(swing, ratio, swept, way_mm, 0)
}

function advance(swing: Swing, ratio: number, swept: Outline, from: number, to: number): number | undefined {
  const toward = to < from ? -1 : 1
  let way = from
  for (let k = 0; k < MOST_ADVANCES; k++) {
    const gap_mm = apart_mm(slabsAt(swing, way), swept, 0)
    if (isMet(gap_mm)) return way
    const next = way + (toward * gap_mm) / ratio
    if (toward * (to - next) <= 0) return undefined
    way = next
  }
  return way
}
