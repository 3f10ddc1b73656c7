import { atan2, cos, hypot2, PI, sin } from './trigonometry.ts'

// Distances in the plan, in closed form. mm, radians. `at` is a point of the thing that is asked about, not of the region that moves.

export type PlanPoint = readonly [x_mm: number, y_mm: number]
/** Convex, in either turn; or round. */
export type PlanShape =
  | { readonly kind: 'polygon'; readonly corners: readonly PlanPoint[] }
  | { readonly kind: 'disc'; readonly middle: PlanPoint; readonly radius_mm: number }
/** What a bar sweeps that turns about `hinge` from one direction to another, counter-clockwise by at most half a turn. */
export interface PlanSector {
  readonly hinge: PlanPoint
  readonly inner_mm: number
  readonly outer_mm: number
  readonly from_rad: number
  readonly turn_rad: number
}
export interface NearestInPlan {
  readonly gap_mm: number // 0 where they meet
  readonly at: PlanPoint
}

/** The corners of a box that is turned by a yaw. */
export function boxCorners([x, y]: PlanPoint, [along_mm, across_mm]: PlanPoint, [c, s]: PlanPoint): readonly PlanPoint[] {
  const corner = (u: number, v: number): PlanPoint => [
    x + (u * along_mm * c - v * across_mm * s) / 2,
    y + (u * along_mm * s + v * across_mm * c) / 2,
  ]
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]
}

/** From a thing to a convex polygon. */
export function gapToPolygon(corners: readonly PlanPoint[], thing: PlanShape): NearestInPlan {
  if (thing.kind === 'disc') return shrunk(thing, (at) => pointToPolygon(at, corners))
  const inside = thing.corners.find((at) => isInside(at, corners))
  if (inside) return { gap_mm: 0, at: inside }
  const met = corners.find((at) => isInside(at, thing.corners))
  if (met) return { gap_mm: 0, at: met }
  const edges = edgesOf(corners)
  return nearest([
    ...thing.corners.map((at) => ({ gap_mm: pointToPolygon(at, corners), at })),
    ...edgesOf(thing.corners).flatMap((edge) => [
      ...corners.map((corner) => toEdge(corner, edge)),
      ...edges.flatMap((other) => crossing(edge, other)),
    ]),
  ])
}

/** From a thing to what a turning bar sweeps. */
export function gapToSector(sector: PlanSector, thing: PlanShape): NearestInPlan {
  if (thing.kind === 'disc') return shrunk(thing, (at) => pointToSector(at, sector))
  const rim = sectorCorners(sector)
  const met = rim.find((at) => isInside(at, thing.corners))
  if (met) return { gap_mm: 0, at: met }
  const [a, b, c, d] = rim as readonly [PlanPoint, PlanPoint, PlanPoint, PlanPoint]
  const spokes = [[a, b] as const, [c, d] as const]
  return nearest(
    edgesOf(thing.corners).flatMap((edge) => [
      ...candidates(edge, sector).map((at) => ({ gap_mm: pointToSector(at, sector), at })),
      ...rim.map((corner) => toEdge(corner, edge)),
      ...spokes.flatMap((spoke) => crossing(edge, spoke)),
    ]),
  )
}

type Edge = readonly [PlanPoint, PlanPoint]

function edgesOf(corners: readonly PlanPoint[]): readonly Edge[] {
  return corners.map((corner, i) => [corner, corners[(i + 1) % corners.length] as PlanPoint])
}

/** Of equal ones the first. */
function nearest(found: readonly NearestInPlan[]): NearestInPlan {
  return found.reduce((best, each) => (each.gap_mm < best.gap_mm ? each : best))
}

function shrunk(disc: { readonly middle: PlanPoint; readonly radius_mm: number }, toMiddle: (at: PlanPoint) => number): NearestInPlan {
  return { gap_mm: Math.max(0, toMiddle(disc.middle) - disc.radius_mm), at: disc.middle }
}

function pointToPolygon(at: PlanPoint, corners: readonly PlanPoint[]): number {
  if (isInside(at, corners)) return 0
  return Math.min(...edgesOf(corners).map((edge) => toEdge(at, edge).gap_mm))
}

/** The sign of the turn at each edge is the same all round. */
function isInside([x, y]: PlanPoint, corners: readonly PlanPoint[]): boolean {
  const turns = edgesOf(corners).map(([[ax, ay], [bx, by]]) => (bx - ax) * (y - ay) - (by - ay) * (x - ax))
  return turns.every((turn) => turn > 0) || turns.every((turn) => turn < 0)
}

/** From a point to the nearest one of an edge, which is `at`. */
function toEdge([x, y]: PlanPoint, [[ax, ay], [bx, by]]: Edge): NearestInPlan {
  const [dx, dy] = [bx - ax, by - ay]
  const square = dx * dx + dy * dy
  const t = square > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square)) : 0
  const at: PlanPoint = [ax + t * dx, ay + t * dy]
  return { gap_mm: hypot2(x - at[0], y - at[1]), at }
}

function crossing([a, b]: Edge, [c, d]: Edge): readonly NearestInPlan[] {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]]
  const turn = ux * vy - uy * vx
  if (turn === 0) return []
  const t = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / turn
  const s = ((c[0] - a[0]) * uy - (c[1] - a[1]) * ux) / turn
  return t >= 0 && t <= 1 && s >= 0 && s <= 1 ? [{ gap_mm: 0, at: [a[0] + t * ux, a[1] + t * uy] }] : []
}

function sectorCorners({ hinge: [x, y], inner_mm, outer_mm, from_rad, turn_rad }: PlanSector): readonly PlanPoint[] {
  return [from_rad, from_rad + turn_rad].flatMap((angle) =>
    [inner_mm, outer_mm].map((radius): PlanPoint => [x + radius * cos(angle), y + radius * sin(angle)]),
  )
}

function pointToSector([x, y]: PlanPoint, sector: PlanSector): number {
  const { hinge, inner_mm, outer_mm, from_rad, turn_rad } = sector
  const [dx, dy] = [x - hinge[0], y - hinge[1]]
  const radius = hypot2(dx, dy)
  const whole = 2 * PI
  const angle = atan2(dy, dx) - from_rad
  const turned = angle - whole * Math.floor(angle / whole)
  if (radius > 0 && turned <= turn_rad) return Math.max(0, radius - outer_mm, inner_mm - radius)
  const [a, b, c, d] = sectorCorners(sector) as readonly [PlanPoint, PlanPoint, PlanPoint, PlanPoint]
  return Math.min(toEdge([x, y], [a, b]).gap_mm, toEdge([x, y], [c, d]).gap_mm)
}

/** Where on an edge the nearest point can be, corners of the sector aside: its ends, the foot from the hinge, and where it crosses either circle. */
function candidates(edge: Edge, { hinge, inner_mm, outer_mm }: PlanSector): readonly PlanPoint[] {
  const [[ax, ay], [bx, by]] = edge
  const [dx, dy] = [bx - ax, by - ay]
  const square = dx * dx + dy * dy
  if (square === 0) return [edge[0]]
  const foot = ((hinge[0] - ax) * dx + (hinge[1] - ay) * dy) / square
  const away = hypot2(ax + foot * dx - hinge[0], ay + foot * dy - hinge[1])
  const crossings = [inner_mm, outer_mm].flatMap((radius) => {
    const half = radius > away ? Math.sqrt((radius * radius - away * away) / square) : 0
    return half > 0 ? [foot - half, foot + half] : []
  })
  return [0, 1, foot, ...crossings].filter((t) => t >= 0 && t <= 1).map((t) => [ax + t * dx, ay + t * dy])
}
