import { type Affine, cornersOf, leastOf, mostOf } from './affine.ts'
import type { Obstacle, Tile } from './plain.ts'
import { cosineOf, sineOf } from './sine.ts'

/** A body that stands somewhere: a box by its half sizes and yaw, or a cylinder. */
export type Standing =
  | { readonly shape: 'box'; readonly half: readonly [number, number]; readonly yaw_deg: number; readonly height: number }
  | { readonly shape: 'cylinder'; readonly radius: number; readonly height: number }

/** How much is taken off the obstacle's faces, how far the floor may be off, and by how much both have to overlap. */
export interface Least {
  readonly length: number
  readonly floor: number
  readonly depth: number
}

/**
 * Whether a body overlaps an obstacle in space wherever it stands on a tile, on the floor's piece there. The placements at which two convex
 * solids overlap are a convex set, so that the corners of the tile suffice.
 */
export function overlapsEverywhere(tile: Tile, body: Standing, floor: Affine, obstacle: Obstacle, least: Least): boolean {
  const [from, to] = [obstacle.from + least.length, obstacle.to - least.length]
  if (!(from < to && body.height > 0)) return false
  if (!(mostOf(floor, tile) + least.floor < to - least.depth)) return false
  if (!(leastOf(floor, tile) - least.floor + body.height > from + least.depth)) return false
  return cornersOf(tile).every(([x, y]) => overlapsInPlan([x - obstacle.x, y - obstacle.y], body, obstacle, least))
}

type Pair = readonly [x: number, y: number]

/** `at` is the body's middle, seen from the obstacle's. */
function overlapsInPlan(at: Pair, body: Standing, obstacle: Obstacle, { length, depth }: Least): boolean {
  if (obstacle.shape === 'post') {
    const radius = obstacle.radius - length
    if (!(radius > 0)) return false
    if (body.shape === 'box') return distanceToBox(at, body.half, body.yaw_deg) < radius - depth
    return body.radius > 0 && Math.sqrt(at[0] * at[0] + at[1] * at[1]) < radius + body.radius - depth
  }
  const half: Pair = [obstacle.half[0] - length, obstacle.half[1] - length]
  if (!(half[0] > 0 && half[1] > 0)) return false
  if (body.shape === 'cylinder') return distanceToBox(at, half, obstacle.yaw_deg) < body.radius - depth
  if (!(body.half[0] > 0 && body.half[1] > 0)) return false
  const turn_deg = body.yaw_deg - obstacle.yaw_deg
  const [c, s] = [Math.abs(cosineOf(turn_deg)), Math.abs(sineOf(turn_deg))]
  const [a, b] = turnedBack(at, obstacle.yaw_deg)
  const [u, v] = turnedBack(at, body.yaw_deg)
  return (
    Math.abs(a) < half[0] + body.half[0] * c + body.half[1] * s - depth &&
    Math.abs(b) < half[1] + body.half[0] * s + body.half[1] * c - depth &&
    Math.abs(u) < body.half[0] + half[0] * c + half[1] * s - depth &&
    Math.abs(v) < body.half[1] + half[0] * s + half[1] * c - depth
  )
}

function distanceToBox(at: Pair, half: Pair, yaw_deg: number): number {
  if (!(half[0] > 0 && half[1] > 0)) return Infinity
  const [a, b] = turnedBack(at, yaw_deg)
  const [beyondA, beyondB] = [Math.max(0, Math.abs(a) - half[0]), Math.max(0, Math.abs(b) - half[1])]
  return Math.sqrt(beyondA * beyondA + beyondB * beyondB)
}

function turnedBack([x, y]: Pair, yaw_deg: number): Pair {
  const [c, s] = [cosineOf(yaw_deg), sineOf(yaw_deg)]
  return [x * c + y * s, y * c - x * s]
}
