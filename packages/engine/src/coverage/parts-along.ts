import { type BodyPart, partsOf } from '../model/body.ts'
import { shapeOfPart } from '../seeing/shape.ts'
import { turnOf } from '../space/trigonometry.ts'
import type { Strip } from './hits.kernel.ts'
import { NO_TOLERANCES } from './off.ts'
import type { Stance } from './scene.ts'
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
} from './tile-rule.kernel.ts'
import { type TolerantField, tileBeams, tileBody } from './tile-scene.ts'
import { OPEN, SPLIT, type TileTree } from './tile-tree.ts'

/** One part on one strip of floor, as the field's beams meet it. */
interface MetPart {
  readonly beams: TileBeams
  /** Shrunk by the spot: what is seen. */
  readonly body: TileBody
  /** As it is: what hides the others. */
  readonly whole: TileBody
  /** Of its middle from the body's, doorway frame. */
  readonly x_mm: number
  readonly y_mm: number
}

/** What sees a body of several parts: neighbouring beams from one of a plane on, each with the parts that it sees everywhere and by which faces: `[part, faces, part, faces, ...]`. */
export interface PartsSight {
  readonly plane: number // index into the sensor's planes
  readonly beam: number // first of the cluster, counted within the plane
  readonly parts: readonly (readonly number[])[]
}

interface Search {
  readonly field: TolerantField
  readonly parts: readonly MetPart[]
  readonly x_mm: number
  readonly smallest_mm: number
  readonly budget: { left: number }
  readonly scratch: TileScratch
  /** Of the part asked last, over the tile: no entry earlier, none later, no exit later. */
  readonly range: { earliest: number; latest: number; exit: number }
  readonly tree: TileTree
  /** Of the beam asked last, where it sees the body: parts and faces. */
  readonly by: number[]
  readonly sights: SightTable
}

/** Sights in the order in which they were first needed. */
export interface SightTable {
  readonly list: PartsSight[]
  readonly known: Map<string, number>
}

export function newSightTable(): SightTable {
  return { list: [], known: new Map() }
}

/**
 * Where along y a field sees a body of several parts whose middle keeps one x: the part that a beam enters first has to be seen, and hides the others
 * with its full size (docs/method.md, "Bodies of several parts"). Every place between the ends of a stretch is proved: on a tile without width a beam
 * sees the body when it sees one part at every place, and of each other part it sees as much, or misses it, or enters it later.
 */
export function partsAlong(
  field: TolerantField,
  stance: Stance,
  smallest_mm: number,
): (strip: Strip, x_mm: number, from_mm: number, to_mm: number, budget: { left: number }, sights: SightTable) => TileTree {
  const { posture, yaw_rad } = stance
  const parts = partsOf(posture) ?? []
  const { spotRadius_mm } = field.counted.sensor
  const shapes = parts.map((part) => ({ part, shape: shapeOfPart(part, yaw_rad, spotRadius_mm), whole: shapeOfPart(part, yaw_rad, 0) }))
  const asked = shapes.map((each) => ({ ...each, beams: tileBeams(field, each.shape, NO_TOLERANCES, 0) }))
  return (strip, x_mm, from_mm, to_mm, budget, sights) => {
    const met = asked.map(({ part, shape, whole, beams }): MetPart => {
      const [x, y] = offsetOf(part, yaw_rad)
      // the floor that carries it is the one under the middle of the body
      const carried = { ...strip, z0: strip.z0 - strip.slopeX * x - strip.slopeY * y }
      return { beams, body: tileBody(shape, carried), whole: tileBody(whole, carried), x_mm: x, y_mm: y }
    })
    const range = { earliest: 0, latest: 0, exit: 0 }
    const search: Search = { field, parts: met, x_mm, smallest_mm, budget, scratch: newTileScratch(), range, tree: [], by: [], sights }
    const all = field.nominal.planes.flatMap(({ first, end }) => Array.from({ length: end - first }, (_, k) => first + k))
    look(search, from_mm, to_mm, all)
    return search.tree
  }
}

/** Of the part's middle from the body's, turned with it. Doorway frame, mm. */
export function offsetOf({ alongX_mm, alongY_mm }: BodyPart, yaw_rad: number): readonly [x_mm: number, y_mm: number] {
  const [cosYaw, sinYaw] = turnOf(yaw_rad)
  return [alongX_mm * cosYaw - alongY_mm * sinYaw, alongX_mm * sinYaw + alongY_mm * cosYaw]
}

function look(search: Search, from_mm: number, to_mm: number, candidates: readonly number[]): void {
  const { field, smallest_mm, budget, tree, parts, by } = search
  budget.left -= candidates.length * parts.length
  const kept: number[] = []
  let row: (readonly number[])[] = []
  let before = -2
  for (const i of candidates) {
    const meets = bodyTile(search, i, from_mm, to_mm)
    if (meets === MISSES) continue
    kept.push(i)
    if (meets !== SEES || before !== i - 1 || startsPlane(field, i)) row = []
    before = meets === SEES ? i : -2
    if (meets === SEES) row.push([...by])
    if (row.length >= field.nominal.clusterBeams) {
      tree.push(indexOf(search, i - row.length + 1, row))
      return
    }
  }
  const together = inRows(kept, field)
  if (together.length === 0 || to_mm - from_mm <= smallest_mm || budget.left < 0) {
    tree.push(OPEN)
    return
  }
  tree.push(SPLIT)
  const middle = (from_mm + to_mm) / 2
  look(search, from_mm, middle, together)
  look(search, middle, to_mm, together)
}

function indexOf({ field, sights: { list, known } }: Search, first: number, parts: readonly (readonly number[])[]): number {
  const { planes } = field.nominal.sight.beams
  const plane = planes.findIndex((each) => each.first <= first && first < each.end)
  const sight = { plane, beam: first - (planes[plane]?.first ?? 0), parts }
  const key = `${plane} ${sight.beam} ${parts.map((each) => each.join()).join(' ')}`
  const n = known.get(key) ?? list.length
  if (n === list.length) list.push(sight)
  known.set(key, n)
  return n
}

/** Beams with enough neighbours to make up a cluster. */
function inRows(beams: readonly number[], field: TolerantField): readonly number[] {
  const { clusterBeams } = field.nominal
  if (clusterBeams === 1) return beams
  const kept: number[] = []
  let row: number[] = []
  for (const i of beams) {
    if (row.length > 0 && (row[row.length - 1] !== i - 1 || startsPlane(field, i))) {
      if (row.length >= clusterBeams) kept.push(...row)
      row = []
    }
    row.push(i)
  }
  return row.length >= clusterBeams ? [...kept, ...row] : kept
}

function startsPlane({ nominal }: TolerantField, i: number): boolean {
  return nominal.planes.some(({ first }) => first === i)
}

/** What beam i makes of the whole body at the places of a tile without width: MISSES only saves work, SEES is a claim. */
function bodyTile(search: Search, i: number, from_mm: number, to_mm: number): number {
  const { parts, range, by, scratch } = search
  by.length = 0
  const meets = parts.map((part, k) => {
    const each = partTile(search, part, i, from_mm, to_mm)
    // a segment has no face that means anything
    if (each === SEES) by.push(k, part.beams.segments ? (part.body.round ? 5 : 7) : scratch.faces)
    return each
  })
  if (meets.every((each) => each === MISSES)) return MISSES
  const touches = MISSES + 1
  if (!meets.includes(SEES)) return touches
  // a segment is interrupted by whatever meets it
  if (parts[0]?.beams.segments) return SEES
  let latest = Infinity
  for (const [k, part] of parts.entries())
    if (meets[k] === SEES) {
      entries(search, part, part.body, i, from_mm, to_mm)
      latest = Math.min(latest, range.latest)
    }
  for (const [k, part] of parts.entries()) {
    if (meets[k] === SEES) continue
    entries(search, part, part.whole, i, from_mm, to_mm)
    const isMissed = range.earliest > range.exit + SPARE_MM || range.exit < -SPARE_MM
    if (!isMissed && !(range.earliest > latest + SPARE_MM)) return touches
  }
  return SEES
}

function partTile(
  { x_mm, scratch }: Search,
  { beams, body, x_mm: offX, y_mm: offY }: MetPart,
  i: number,
  from: number,
  to: number,
): number {
  // nothing is left of a part that is smaller than the spot
  if (!(body.high[0] > 0 && body.high[1] > 0 && body.high[2] > body.low[2])) return MISSES
  const y = (from + to) / 2 + offY
  const half = (to - from) / 2
  return body.round
    ? cylinderTile(beams, i, body, x_mm + offX, y, 0, half, scratch)
    : boxTile(beams, i, body, x_mm + offX, y, 0, half, scratch)
}

/** Bounds on where the beam's line enters and leaves the part at the places of the tile, into `range`; `earliest` beyond `exit` where it surely misses. */
function entries({ x_mm, range }: Search, part: MetPart, body: TileBody, i: number, from: number, to: number): void {
  range.earliest = range.latest = -Infinity
  range.exit = Infinity
  const x = x_mm + part.x_mm
  const [y0, y1] = [from + part.y_mm, to + part.y_mm]
  if (body.round) sideEntries(range, part.beams, body.high[0], i, x, y0, y1)
  for (let axis = body.round ? 2 : 0; axis < 3; axis++) faceEntries(range, part.beams, body, i, axis as 0 | 1 | 2, x, y0, y1)
}

/** A slope below this moves a beam by less than `LEVEL_MM` over its whole length. */
const LEVEL = 1e-9
const LEVEL_MM = 1e-3

function faceEntries(
  range: Search['range'],
  beams: TileBeams,
  body: TileBody,
  i: number,
  axis: 0 | 1 | 2,
  x: number,
  y0: number,
  y1: number,
): void {
  const at = beams.at[3 * i + axis] as number
  const slope = beams.slope[3 * i + axis] as number
  const off = beams.off[3 * i + axis] as number
  const middle = body.a[axis] * x + body.c[axis] - at
  const m0 = middle + body.b[axis] * y0
  const m1 = middle + body.b[axis] * y1
  const [least, most] = m0 < m1 ? [m0, m1] : [m1, m0]
  const [low, high] = [body.low[axis], body.high[axis]]
  if (Math.abs(slope) < LEVEL) {
    if (least + low > off + LEVEL_MM || most + high < -off - LEVEL_MM) range.exit = -Infinity
    return
  }
  const unsure = off / Math.abs(slope)
  const [near, far] = slope > 0 ? [low, high] : [high, low]
  const [first, last] = slope > 0 ? [least, most] : [most, least]
  range.earliest = Math.max(range.earliest, (first + near) / slope - unsure)
  range.latest = Math.max(range.latest, (last + near) / slope + unsure)
  range.exit = Math.min(range.exit, (last + far) / slope + unsure)
}

/** The round side: entered up to a radius before the middle of the chord, and never after it. */
function sideEntries(range: Search['range'], beams: TileBeams, radius: number, i: number, x: number, y0: number, y1: number): void {
  const dx = beams.slope[3 * i] as number
  const dy = beams.slope[3 * i + 1] as number
  const off = (beams.off[3 * i] as number) + (beams.off[3 * i + 1] as number)
  const level2 = dx * dx + dy * dy
  const level = Math.sqrt(level2)
  const px = (beams.at[3 * i] as number) - x
  const [p0, p1] = [(beams.at[3 * i + 1] as number) - y0, (beams.at[3 * i + 1] as number) - y1]
  if (level < LEVEL) {
    const aside = Math.max(0, Math.min(p0, p1), -Math.max(p0, p1))
    if (px * px + aside * aside > (radius + off + LEVEL_MM) * (radius + off + LEVEL_MM)) range.exit = -Infinity
    return
  }
  const [c0, c1] = [(px * dy - p0 * dx) / level, (px * dy - p1 * dx) / level]
  const aside = Math.max(0, Math.min(c0, c1), -Math.max(c0, c1))
  if (aside > radius + off) {
    range.exit = -Infinity
    return
  }
  const [m0, m1] = [-(px * dx + p0 * dy) / level2, -(px * dx + p1 * dy) / level2]
  range.earliest = Math.max(range.earliest, Math.min(m0, m1) - (radius + off) / level)
  range.latest = Math.max(range.latest, Math.max(m0, m1) + off / level)
  range.exit = Math.min(range.exit, Math.max(m0, m1) + (radius + off) / level)
}
