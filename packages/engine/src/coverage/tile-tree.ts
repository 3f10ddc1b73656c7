import type { Obstacle } from '../model/door.ts'
import type { Shape } from '../seeing/shape.ts'
import { sin } from '../space/trigonometry.ts'
import { type Footprint, footprint } from './free-map.ts'
import type { Strip } from './hits.kernel.ts'
import {
  boxTile,
  cylinderTile,
  MISSES,
  newTileScratch,
  SEES,
  SPARE_MM,
  type TileBeams,
  type TileBody,
  type TileScratch,
  TOUCHES,
} from './tile-rule.kernel.ts'
import type { TolerantField } from './tile-scene.ts'

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
  /** Not shrunk by spots: what counts as being in the way. */
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
  readonly smallest_mm: number
  /** Give up at the first tile that stays open: the tree is then of no use beyond that. */
  readonly stopAtOpen: boolean
  /** Questions of a beam or an obstacle about a tile that may still be asked; when none is left, tiles stay open. Shared by many trees. */
  readonly budget: { left: number }
}

/**
 * Grows the tree of one rectangle and adds what it needs to `sights`.
 *
 * @param only beams of the one field that are asked at all, rising; those of its planes if absent
 */
export function growTree(problem: TileProblem, root: Rectangle, sights: TileSight[], only?: readonly number[]): TileTree {
  const grower = new Map<string, number>()
  for (const [n, sight] of sights.entries()) grower.set(keyOf(sight), n)
  const state: Grower = {
    problem,
    sights,
    known: grower,
    scratch: newTileScratch(),
    feet: problem.obstacles.map(footprint),
    tree: [],
    beams: new Int32Array(4096),
    last: 0,
    needed: 1,
    stopped: false,
    faces: new Int32Array(64),
  }
  let end = 0
  if (only) for (const i of only) end = push(state, end, i)
  else
    for (const [f, field] of problem.fields.entries())
      for (const { first, end: last } of field.nominal.planes) for (let i = first; i < last; i++) end = push(state, end, f * FIELD + i)
  grow(state, root.xMin, root.xMax, root.yMin, root.yMax, 0, end, -1)
  return state.tree
}

const FIELD = 1 << 20 // beams of a field; a candidate is its field times this, plus the beam

interface Grower {
  readonly problem: TileProblem
  readonly sights: TileSight[]
  readonly known: Map<string, number>
  readonly scratch: TileScratch
  readonly feet: readonly Footprint[]
  readonly tree: TileTree
  /** A stack of candidates: each tile keeps those beams of its parent's that touch it. */
  beams: Int32Array
  last: number
  /** Cluster of the row of candidates that is being counted. */
  needed: number
  stopped: boolean
  readonly faces: Int32Array
}

function push(grower: Grower, end: number, candidate: number): number {
  if (end === grower.beams.length) {
    const larger = new Int32Array(2 * end)
    larger.set(grower.beams)
    grower.beams = larger
  }
  grower.beams[end] = candidate
  return end + 1
}

function keyOf({ field, plane, beam, faces }: TileSight): string {
  return `${field} ${plane} ${beam} ${faces.join()}`
}

/**
 * @param first @param end the candidates of the parent on the stack
 * @param hint a sight that saw the tile before this one
 * @returns the sight that saw the last seen tile, or the hint
 */
function grow(grower: Grower, xMin: number, xMax: number, yMin: number, yMax: number, first: number, end: number, hint: number): number {
  const { problem, tree } = grower
  if (grower.stopped) return hint
  const x = (xMin + xMax) / 2
  const y = (yMin + yMax) / 2
  const halfX = (xMax - xMin) / 2
  const halfY = (yMax - yMin) / 2
  if (hint >= 0 && seesAgain(grower, hint, x, y, halfX, halfY)) {
    tree.push(hint)
    return hint
  }
  const sight = sightOf(grower, x, y, halfX, halfY, first, end)
  if (sight >= 0) {
    tree.push(sight)
    return sight
  }
  const last = grower.last
  let touched = last > end
  for (const [n, foot] of grower.feet.entries()) {
    const meets = blocking(problem, foot, x, y, halfX, halfY)
    if (meets === SEES) {
      tree.push(blockedBy(n))
      return hint
    }
    if (meets === TOUCHES) touched = true
  }
  problem.budget.left -= end - first + grower.feet.length
  if (!touched || problem.budget.left < 0 || (2 * halfX <= problem.smallest_mm && 2 * halfY <= problem.smallest_mm)) {
    tree.push(OPEN)
    grower.stopped = problem.stopAtOpen
    return hint
  }
  tree.push(SPLIT)
  if (xMax - xMin >= yMax - yMin) {
    const next = grow(grower, xMin, x, yMin, yMax, end, last, hint)
    return grow(grower, x, xMax, yMin, yMax, end, last, next)
  }
  const next = grow(grower, xMin, xMax, yMin, y, end, last, hint)
  return grow(grower, xMin, xMax, y, yMax, end, last, next)
}

/** Whether a sight found for another tile sees this one too, through the same faces. */
function seesAgain({ problem, sights, scratch }: Grower, n: number, x: number, y: number, halfX: number, halfY: number): boolean {
  const { field, plane, beam, faces } = sights[n] as TileSight
  const { first } = (problem.fields[field] as TolerantField).nominal.sight.beams.planes[plane] as { first: number }
  for (let k = 0; k < faces.length; k++) {
    if (meetsTile(problem, field, first + beam + k, x, y, halfX, halfY, scratch) !== SEES) return false
    if (scratch.faces !== faces[k]) return false
  }
  return true
}

/** Whether each of some neighbouring beams of one field sees the body at every placement of a tile. */
export function beamsSee(
  problem: TileProblem,
  field: number,
  first: number,
  count: number,
  x: number,
  y: number,
  halfX: number,
  halfY: number,
  scratch: TileScratch,
): boolean {
  for (let k = 0; k < count; k++) if (meetsTile(problem, field, first + k, x, y, halfX, halfY, scratch) !== SEES) return false
  return true
}

function meetsTile(
  problem: TileProblem,
  field: number,
  i: number,
  x: number,
  y: number,
  halfX: number,
  halfY: number,
  scratch: TileScratch,
): number {
  const beams = problem.beams[field] as TileBeams
  const body = problem.bodies[field] as TileBody
  return body.round ? cylinderTile(beams, i, body, x, y, halfX, halfY, scratch) : boxTile(beams, i, body, x, y, halfX, halfY, scratch)
}

/**
 * Puts the candidates that touch the tile on the stack from `end` on, up to `grower.last`, unless a cluster of neighbours sees all of it.
 *
 * @returns the sight, or -1
 */
function sightOf(grower: Grower, x: number, y: number, halfX: number, halfY: number, first: number, end: number): number {
  const { problem, scratch, faces } = grower
  let last = end
  let streak = 0
  let before = -2
  // candidates in a row, whether they see all or touch only: fewer than a cluster lead nowhere
  let row = 0
  let rowBefore = -2
  for (let n = first; n < end; n++) {
    const candidate = grower.beams[n] as number
    const field = Math.floor(candidate / FIELD)
    const i = candidate - field * FIELD
    const meets = meetsTile(problem, field, i, x, y, halfX, halfY, scratch)
    if (meets === MISSES) continue
    const needed = (problem.fields[field] as TolerantField).nominal.clusterBeams
    if (needed > 1 && (rowBefore !== candidate - 1 || startsPlane(problem, field, i))) {
      if (row < grower.needed) last -= row // the row before was too short
      row = 0
      grower.needed = needed
    }
    row = needed > 1 ? row + 1 : 0
    rowBefore = needed > 1 ? candidate : -2
    last = push(grower, last, candidate)
    if (meets === TOUCHES) {
      streak = 0
      continue
    }
    if (before !== candidate - 1 || startsPlane(problem, field, i)) streak = 0
    before = candidate
    faces[streak % faces.length] = scratch.faces
    streak++
    if (streak >= needed)
      return tableIndex(
        grower,
        field,
        i - needed + 1,
        Array.from({ length: needed }, (_, k) => faces[(streak - needed + k) % faces.length] as number),
      )
  }
  if (row > 0 && row < grower.needed) last -= row
  grower.last = last
  return -1
}

function startsPlane(problem: TileProblem, field: number, i: number): boolean {
  for (const { first } of (problem.fields[field] as TolerantField).nominal.planes) if (first === i) return true
  return false
}

function tableIndex({ problem, sights, known }: Grower, field: number, start: number, faces: number[]): number {
  const { planes } = (problem.fields[field] as TolerantField).nominal.sight.beams
  const plane = planes.findIndex((p) => p.first <= start && start < p.end)
  const sight = { field, plane, beam: start - (planes[plane] as { first: number }).first, faces }
  const key = keyOf(sight)
  const n = known.get(key)
  if (n !== undefined) return n
  known.set(key, sights.length)
  sights.push(sight)
  return sights.length - 1
}

/**
 * SEES where the obstacle overlaps the body in space at every placement of the tile, whatever the tolerances; MISSES where it does nowhere.
 */
function blocking(
  { standing, strip, turn_rad, length_mm, floor_mm }: TileProblem,
  foot: Footprint,
  x: number,
  y: number,
  halfX: number,
  halfY: number,
): number {
  const floorHere = strip.z0 + strip.slopeX * x + strip.slopeY * y
  const floorSpread = Math.abs(strip.slopeX) * halfX + Math.abs(strip.slopeY) * halfY + floor_mm
  const above = floorHere + standing.high - foot.from
  const below = foot.to - floorHere - standing.low
  if (above < -floorSpread - length_mm || below < -floorSpread - length_mm) return MISSES
  const overlapsInHeight = above > floorSpread + length_mm + SPARE_MM && below > floorSpread + length_mm + SPARE_MM
  const swing = standing.round ? 0 : 2 * sin(turn_rad / 2) * extent(standing.halfA, standing.halfB)
  const inPlan = standing.round || foot.radius > 0 ? roundMeets : boxesMeet
  const meets = inPlan(standing, foot, swing, length_mm, x, y, halfX, halfY)
  return meets === SEES && !overlapsInHeight ? TOUCHES : meets
}

/** Two boxes: in each of their four directions, how the distance of the centres compares with the half sizes. */
function boxesMeet(
  body: Shape,
  foot: Footprint,
  swing: number,
  length_mm: number,
  x: number,
  y: number,
  halfX: number,
  halfY: number,
): number {
  const c = Math.abs(body.cosYaw * foot.cosYaw + body.sinYaw * foot.sinYaw)
  const s = Math.abs(body.sinYaw * foot.cosYaw - body.cosYaw * foot.sinYaw)
  const along = (nx: number, ny: number, bodyHalf: number, footHalf: number) => {
    const away = Math.abs(nx * (x - foot.x) + ny * (y - foot.y))
    const spread = Math.abs(nx) * halfX + Math.abs(ny) * halfY
    const off = (swing + length_mm) * (1 + c + s)
    if (away - spread > bodyHalf + footHalf + off) return MISSES
    return away + spread < bodyHalf + footHalf - off - SPARE_MM ? SEES : TOUCHES
  }
  if (!(body.halfA > swing && body.halfB > swing && foot.halfA > length_mm && foot.halfB > length_mm)) return TOUCHES
  return Math.min(
    along(body.cosYaw, body.sinYaw, body.halfA, foot.halfA * c + foot.halfB * s),
    along(-body.sinYaw, body.cosYaw, body.halfB, foot.halfA * s + foot.halfB * c),
    along(foot.cosYaw, foot.sinYaw, foot.halfA, body.halfA * c + body.halfB * s),
    along(-foot.sinYaw, foot.cosYaw, foot.halfB, body.halfA * s + body.halfB * c),
  )
}

/** At least one of the two is round: at the corners of the tile, the distance from the disc's centre to the other's core against the radii. */
function roundMeets(
  body: Shape,
  foot: Footprint,
  swing: number,
  length_mm: number,
  x: number,
  y: number,
  halfX: number,
  halfY: number,
): number {
  const radius = (body.round ? body.halfA : 0) + foot.radius
  const core = body.round ? (foot.radius > 0 ? undefined : foot) : body
  const off = swing + length_mm
  const away = (px: number, py: number, less: number) => {
    const u = core ? Math.max(0, Math.abs(px * core.cosYaw + py * core.sinYaw) - core.halfA + less) : Math.abs(px)
    const v = core ? Math.max(0, Math.abs(py * core.cosYaw - px * core.sinYaw) - core.halfB + less) : Math.abs(py)
    return extent(u, v)
  }
  if (away(foot.x - x, foot.y - y, 0) > radius + 2 * off + extent(halfX, halfY)) return MISSES
  if (core && !(core.halfA > off && core.halfB > off)) return TOUCHES
  for (const a of [-halfX, halfX])
    for (const b of [-halfY, halfY]) if (!(away(foot.x - x - a, foot.y - y - b, off) < radius - off - SPARE_MM)) return TOUCHES
  return SEES
}

function extent(a: number, b: number): number {
  return Math.sqrt(a * a + b * b)
}
