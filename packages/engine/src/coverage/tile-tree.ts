import type { Obstacle } from '../model/door.ts'
import type { Shape } from '../seeing/shape.ts'
import { atan2, cos, sin } from '../space/trigonometry.ts'
import { footprint, type Footprint } from './free-map.ts'
import type { Strip } from './hits.kernel.ts'
import type { TolerantField } from './tile-scene.ts'
import { newTileScratch, seesBoxTile, seesCylinderTile, SPARE_MM, type TileBeams, type TileBody, type TileScratch } from './tile-rule.kernel.ts'

/**
 * A tree over a rectangle of placements, in preorder: SPLIT is followed by its two halves (cut across the longer side, across x when both
 * are alike; lower half first), OPEN is a tile of which nothing is claimed, n >= 0 a tile that sight n of the table sees, and
 * -3 - n one that obstacle n blocks.
 */
export type TileTree = number[]
export const SPLIT = -1
export const OPEN = -2
export const blockedBy = (obstacle: number) => -3 - obstacle

/** What sees a tile: the beams `first` and the next ones up to the cluster, each by faces out of a set (bits 1 along, 2 across, 4 up or down). */
export interface TileSight {
  readonly field: number // index into the fields
  readonly plane: number // index into the sensor's planes
  readonly beam: number // first of the cluster, counted within the plane
  readonly faces: readonly number[] // one set for each beam of the cluster
}

export interface Rectangle {
  readonly xMin: number
  readonly xMax: number
  readonly yMin: number
  readonly yMax: number
}

/** One body in one stance on one strip of floor, with everything that may see or block it. */
export interface TileProblem {
  readonly shape: Shape
  /** As the shape, but what counts as being in the way: not shrunk by spots. */
  readonly standing: Shape
  /** Half of the range of yaw; the shape stands for all of it. */
  readonly turn_rad: number
  readonly strip: Strip
  readonly fields: readonly TolerantField[]
  readonly beams: readonly TileBeams[]
  readonly bodies: readonly TileBody[] // one for each field: spots differ
  readonly obstacles: readonly Obstacle[]
  /** How far each face of an obstacle may be off. */
  readonly length_mm: number
  readonly floor_mm: number
  /** Nothing can be seen in this rectangle, so that there is no use in splitting it; may answer false at any time. */
  readonly hopeless: (tile: Rectangle) => boolean
  readonly smallest_mm: number
  readonly largest_mm: number
}

/** Grows the tree of one rectangle and adds what it needs to `sights`. */
export function growTree(problem: TileProblem, root: Rectangle, sights: TileSight[]): TileTree {
  const grower = { problem, sights, known: new Map<string, number>(), scratch: newTileScratch(), feet: problem.obstacles.map(footprint), tree: [] as TileTree }
  for (const [n, sight] of sights.entries()) grower.known.set(keyOf(sight), n)
  grow(grower, root.xMin, root.xMax, root.yMin, root.yMax, [])
  return grower.tree
}

interface Grower {
  readonly problem: TileProblem
  readonly sights: TileSight[]
  readonly known: Map<string, number>
  readonly scratch: TileScratch
  readonly feet: readonly Footprint[]
  readonly tree: TileTree
}

function keyOf({ field, plane, beam, faces }: TileSight): string {
  return `${field} ${plane} ${beam} ${faces.join()}`
}

/** @param hints sights of neighbouring tiles, which often see this one as well */
function grow(grower: Grower, xMin: number, xMax: number, yMin: number, yMax: number, hints: number[]): void {
  const { problem, tree } = grower
  const width = xMax - xMin
  const depth = yMax - yMin
  const small = width <= problem.largest_mm && depth <= problem.largest_mm
  if (small) {
    const leaf = leafOf(grower, xMin, xMax, yMin, yMax, hints)
    if (leaf !== undefined) {
      tree.push(leaf)
      if (leaf >= 0) hints[0] = leaf
      return
    }
  }
  if ((width <= problem.smallest_mm && depth <= problem.smallest_mm) || problem.hopeless({ xMin, xMax, yMin, yMax })) {
    tree.push(OPEN)
    return
  }
  tree.push(SPLIT)
  if (width >= depth) {
    const middle = (xMin + xMax) / 2
    grow(grower, xMin, middle, yMin, yMax, hints)
    grow(grower, middle, xMax, yMin, yMax, hints)
  } else {
    const middle = (yMin + yMax) / 2
    grow(grower, xMin, xMax, yMin, middle, hints)
    grow(grower, xMin, xMax, middle, yMax, hints)
  }
}

function leafOf(grower: Grower, xMin: number, xMax: number, yMin: number, yMax: number, hints: readonly number[]): number | undefined {
  const { problem, feet } = grower
  const x = (xMin + xMax) / 2
  const y = (yMin + yMax) / 2
  // a little more than half, so that rounding of the corners is inside
  const halfX = (xMax - xMin) / 2
  const halfY = (yMax - yMin) / 2
  for (const n of hints) if (seesAgain(grower, n, x, y, halfX, halfY)) return n
  const seen = sightOf(grower, x, y, halfX, halfY)
  if (seen !== undefined) return seen
  for (const [n, foot] of feet.entries()) if (blocks(problem, foot, x, y, halfX, halfY)) return blockedBy(n)
  return undefined
}

function seesAgain({ problem, sights, scratch }: Grower, n: number, x: number, y: number, halfX: number, halfY: number): boolean {
  const { field, plane, beam, faces } = sights[n] as TileSight
  const { first } = (problem.fields[field] as TolerantField).nominal.sight.beams.planes[plane] as { first: number }
  for (const [k, set] of faces.entries()) {
    if (!sees(problem, field, first + beam + k, x, y, halfX, halfY, scratch)) return false
    if (scratch.faces !== set) return false
  }
  return true
}

function sees(problem: TileProblem, field: number, i: number, x: number, y: number, halfX: number, halfY: number, scratch: TileScratch): boolean {
  const beams = problem.beams[field] as TileBeams
  const body = problem.bodies[field] as TileBody
  return body.round ? seesCylinderTile(beams, i, body, x, y, halfX, halfY, scratch) : seesBoxTile(beams, i, body, x, y, halfX, halfY, scratch)
}

/** Looks for neighbouring beams that see the whole tile: first those that pass closest to the body's middle. */
function sightOf(grower: Grower, x: number, y: number, halfX: number, halfY: number): number | undefined {
  const { problem, scratch } = grower
  for (const [f, field] of problem.fields.entries()) {
    const { sight, planes, clusterBeams } = field.nominal
    for (const { first, end } of planes) {
      if (end - first < clusterBeams) continue
      const centre = nearestBeam(problem, field, f, first, end, x, y)
      if (centre < 0) continue
      const spread = sight.segments || end - first <= 64 ? end - first : 4 + clusterBeams
      for (let away = 0; away <= spread; away++)
        for (const start of away === 0 ? [centre] : [centre - away, centre + away]) {
          if (start < first || start + clusterBeams > end) continue
          const faces: number[] = []
          for (let k = 0; k < clusterBeams; k++) {
            if (!sees(problem, f, start + k, x, y, halfX, halfY, scratch)) break
            faces.push(scratch.faces)
          }
          if (faces.length === clusterBeams) return tableIndex(grower, f, first, start, faces)
        }
    }
  }
  return undefined
}

function tableIndex({ problem, sights, known }: Grower, field: number, first: number, start: number, faces: number[]): number {
  const plane = (problem.fields[field] as TolerantField).nominal.sight.beams.planes.findIndex((p) => p.first === first)
  const sight = { field, plane, beam: start - first, faces }
  const key = keyOf(sight)
  const n = known.get(key)
  if (n !== undefined) return n
  known.set(key, sights.length)
  sights.push(sight)
  return sights.length - 1
}

/** The first beam of a cluster that passes near the middle of a body at (x, y); -1 if the plane passes too far from it. */
function nearestBeam(problem: TileProblem, field: TolerantField, f: number, first: number, end: number, x: number, y: number): number {
  const { sensor } = field.counted
  const { beams } = field.nominal.sight
  const plane = sensor.kind === 'ranging' ? sensor.planes.find((p) => p.id === beams.planes.find((q) => q.first === first)?.id) : undefined
  if (sensor.kind !== 'ranging' || plane?.kind !== 'fan') return first
  const { strip, shape } = problem
  const body = problem.bodies[f] as TileBody
  const z = strip.z0 + strip.slopeX * x + strip.slopeY * y + (body.low[2] + body.high[2]) / 2
  const { pose } = sensor
  const cosYaw = cos(pose.yaw_rad)
  const sinYaw = sin(pose.yaw_rad)
  const vx = (x - pose.x_mm) * cosYaw + (y - pose.y_mm) * sinYaw
  const vy = (y - pose.y_mm) * cosYaw - (x - pose.x_mm) * sinYaw
  const vz = z - pose.z_mm
  const lean = pose.tilt_rad + plane.offset_rad
  const aside = vy * cos(lean) + vz * sin(lean)
  const reachOut = Math.sqrt(shape.halfA * shape.halfA + shape.halfB * shape.halfB) + (body.high[2] - body.low[2]) / 2
  if (aside > reachOut || aside < -reachOut) return -1
  const theta = atan2(vx, vy * sin(lean) - vz * cos(lean)) - pose.roll_rad
  const step = plane.beamCount > 1 ? (plane.fovMax_rad - plane.fovMin_rad) / (plane.beamCount - 1) : 1
  const j = Math.round((theta - plane.fovMin_rad) / step) - ((field.nominal.clusterBeams - 1) >> 1)
  return first + Math.max(0, Math.min(end - first - field.nominal.clusterBeams, j))
}

/** The obstacle overlaps the body in space at every placement of the tile, whatever the tolerances. */
function blocks({ standing, strip, turn_rad, length_mm, floor_mm }: TileProblem, foot: Footprint, x: number, y: number, halfX: number, halfY: number): boolean {
  const floorHere = strip.z0 + strip.slopeX * x + strip.slopeY * y
  const floorSpread = Math.abs(strip.slopeX) * halfX + Math.abs(strip.slopeY) * halfY + floor_mm
  if (!(floorHere - floorSpread + standing.high > foot.from + length_mm + SPARE_MM)) return false
  if (!(floorHere + floorSpread + standing.low < foot.to - length_mm - SPARE_MM)) return false
  const swing = standing.round ? 0 : 2 * sin(turn_rad / 2) * Math.sqrt(standing.halfA * standing.halfA + standing.halfB * standing.halfB)
  const body = { ...standing, halfA: standing.halfA - swing, halfB: standing.halfB - swing }
  if (!(body.halfA > 0 && body.halfB > 0)) return false
  if (!body.round && foot.radius === 0) return boxesMeet(body, foot, length_mm, x, y, halfX, halfY)
  return [-1, 1].every((a) => [-1, 1].every((b) => roundMeets(body, foot, length_mm, x + a * halfX, y + b * halfY)))
}

function boxesMeet(body: Shape, foot: Footprint, length_mm: number, x: number, y: number, halfX: number, halfY: number): boolean {
  const c = Math.abs(body.cosYaw * foot.cosYaw + body.sinYaw * foot.sinYaw)
  const s = Math.abs(body.sinYaw * foot.cosYaw - body.cosYaw * foot.sinYaw)
  const halfC = foot.halfA - length_mm
  const halfD = foot.halfB - length_mm
  if (!(halfC > 0 && halfD > 0)) return false
  const within = (nx: number, ny: number, half: number) =>
    Math.abs(nx * (x - foot.x) + ny * (y - foot.y)) + Math.abs(nx) * halfX + Math.abs(ny) * halfY < half - SPARE_MM
  return (
    within(body.cosYaw, body.sinYaw, body.halfA + halfC * c + halfD * s) &&
    within(-body.sinYaw, body.cosYaw, body.halfB + halfC * s + halfD * c) &&
    within(foot.cosYaw, foot.sinYaw, halfC + body.halfA * c + body.halfB * s) &&
    within(-foot.sinYaw, foot.cosYaw, halfD + body.halfA * s + body.halfB * c)
  )
}

/** At one placement, with at least one of the two round: the distance from the disc's centre to the other's core is below the radii. */
function roundMeets(body: Shape, foot: Footprint, length_mm: number, x: number, y: number): boolean {
  const radius = (body.round ? body.halfA : 0) + Math.max(0, foot.radius - length_mm)
  const core = body.round ? (foot.radius > 0 ? undefined : foot) : body
  const px = foot.x - x
  const py = foot.y - y
  const less = body.round && foot.radius === 0 ? length_mm : 0
  if (core && !(core.halfA > less && core.halfB > less)) return false
  const u = core ? Math.max(0, Math.abs(px * core.cosYaw + py * core.sinYaw) - core.halfA + less) : Math.abs(px)
  const v = core ? Math.max(0, Math.abs(py * core.cosYaw - px * core.sinYaw) - core.halfB + less) : Math.abs(py)
  return Math.sqrt(u * u + v * v) < radius - SPARE_MM
}
