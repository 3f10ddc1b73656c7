import type { BlindOutline, BlindPosture, BlindRegion, PointMm } from '../model/finding.ts'
import type { ExactTrees } from './exact-trees.ts'
import { eachLeaf } from './open-region.ts'
import { setBits } from './rows.kernel.ts'
import { OPEN, type Rectangle, type TileTree } from './tile-tree.ts'

/** So much larger than the circle that was found may the largest one be. */
export const CIRCLE_WITHIN_MM = 2

type OpenTrees = Pick<ExactTrees, 'roots' | 'slices' | 'smallest_mm'>

/** The open tiles of all slices as polygons, each with its largest circle: see `blindOutlines`. */
export function blindRegions(trees: OpenTrees): readonly BlindRegion[] {
  return blindOutlines(trees).map((outline) => ({ ...outline, circle: largestCircle(outline.rings) }))
}

/** The same for each posture on its own, over all its yaws, in the order of the slices. */
export function blindByPosture({ slices, ...trees }: OpenTrees): readonly BlindPosture[] {
  const postures = slices.filter(
    ({ body, posture }, i) => slices.findIndex((other) => other.body === body && other.posture === posture) === i,
  )
  return postures.map(({ body, posture }) => ({
    body,
    posture,
    regions: blindRegions({ ...trees, slices: slices.filter((other) => other.body === body && other.posture === posture) }),
  }))
}

/**
 * The open tiles of all slices as polygons: where the middle of some body is not proved to be seen. Tiles that share a part of an edge
 * belong together, those that only touch at a corner do not. Largest first.
 *
 * Each region's rings run with the region on their left: the first one around it, counter-clockwise, the others around its holes. Their
 * corners are corners of tiles, so area and outline are exact.
 */
export function blindOutlines({ roots, slices, smallest_mm }: OpenTrees): readonly BlindOutline[] {
  const mesh = meshOf(roots, smallest_mm)
  for (const [r, root] of roots.entries())
    for (const { trees } of slices)
      eachLeaf(trees[r] as TileTree, root, (leaf, tile) => {
        if (leaf === OPEN) fill(mesh, r, root, tile)
      })
  return regionsOf(mesh).sort((a, b) => b.area_mm2 - a.area_mm2)
}

/** A grid of uneven rows that every tile of every root fits: bit c & 31 of word r * words + (c >> 5) is cell (r, c). */
interface Mesh {
  readonly xs: Float64Array // edges, columns + 1
  readonly ys: Float64Array
  readonly firstRow: readonly number[] // of each root
  readonly rowsOf: readonly number[]
  readonly words: number
  readonly bits: Int32Array
}

function meshOf(roots: readonly Rectangle[], smallest_mm: number): Mesh {
  const [first] = roots
  if (first === undefined)
    return { xs: new Float64Array(1), ys: new Float64Array(1), firstRow: [], rowsOf: [], words: 0, bits: new Int32Array(0) }
  const columns = halvings(first.xMax - first.xMin, smallest_mm)
  const xs = Float64Array.from({ length: columns + 1 }, (_, i) => edgeOf(first.xMin, first.xMax, i, columns))
  const rowsOf = roots.map(({ yMin, yMax }) => halvings(yMax - yMin, smallest_mm))
  const firstRow = rowsOf.map((_, r) => rowsOf.slice(0, r).reduce((sum, rows) => sum + rows, 0))
  const all = rowsOf.reduce((sum, rows) => sum + rows, 0)
  const ys = new Float64Array(all + 1)
  for (const [r, { yMin, yMax }] of roots.entries()) {
    const rows = rowsOf[r] as number
    for (let i = 0; i <= rows; i++) ys[(firstRow[r] as number) + i] = edgeOf(yMin, yMax, i, rows)
  }
  const words = (columns + 31) >> 5
  return { xs, ys, firstRow, rowsOf, words, bits: new Int32Array(all * words) }
}

/** How often a length is halved until its pieces may stay open, as a power of two. */
function halvings(length_mm: number, smallest_mm: number): number {
  let n = 1
  while (length_mm / n > smallest_mm) n *= 2
  return n
}

/** The last edge is the rectangle's own, whatever the division rounds to. */
function edgeOf(from: number, to: number, i: number, n: number): number {
  return i === n ? to : from + ((to - from) * i) / n
}

function fill({ xs, firstRow, rowsOf, words, bits }: Mesh, r: number, root: Rectangle, { xMin, xMax, yMin, yMax }: Rectangle): void {
  const columns = xs.length - 1
  const rows = rowsOf[r] as number
  const column = (x: number) => Math.round(((x - root.xMin) / (root.xMax - root.xMin)) * columns)
  const row = (y: number) => (firstRow[r] as number) + Math.round(((y - root.yMin) / (root.yMax - root.yMin)) * rows)
  for (let i = row(yMin); i < row(yMax); i++) setBits(bits, i * words, column(xMin), column(xMax) - 1)
}

/** Maximal runs of filled cells, row by row, each with the number of its region. */
interface Run {
  readonly row: number
  readonly first: number
  readonly end: number // one past the last
  region: number
}

function regionsOf(mesh: Mesh): BlindOutline[] {
  const runs = runsOf(mesh)
  const areas = label(runs, mesh)
  const rings = ringsOf(mesh, runs, areas.length)
  return areas.map((area_mm2, k) => {
    const own = (rings[k] as (readonly PointMm[])[]).sort((a, b) => Math.abs(signedArea(b)) - Math.abs(signedArea(a)))
    return { area_mm2, rings: own }
  })
}

function runsOf({ xs, ys, words, bits }: Mesh): Run[] {
  const columns = xs.length - 1
  const isFilled = (row: number, c: number) => (((bits[row * words + (c >> 5)] as number) >>> (c & 31)) & 1) === 1
  const runs: Run[] = []
  for (let row = 0; row < ys.length - 1; row++)
    for (let c = 0; c < columns; c++) {
      if ((bits[row * words + (c >> 5)] as number) === 0) {
        c |= 31 // nothing in this word
        continue
      }
      if (!isFilled(row, c)) continue
      const first = c
      while (c < columns && isFilled(row, c)) c++
      runs.push({ row, first, end: c, region: -1 })
    }
  return runs
}

/** Numbers the regions in the runs; returns the area of each. */
function label(runs: readonly Run[], { xs, ys }: Mesh): number[] {
  const parent = runs.map((_, i) => i)
  const rootOf = (i: number): number => {
    let k = i
    while (parent[k] !== k) {
      parent[k] = parent[parent[k] as number] as number // halves the way for the next one: a region may be thousands of rows long
      k = parent[k] as number
    }
    return k
  }
  let below = 0
  for (const [i, run] of runs.entries()) {
    while (
      below < i &&
      ((runs[below] as Run).row < run.row - 1 || ((runs[below] as Run).row === run.row - 1 && (runs[below] as Run).end <= run.first))
    )
      below++
    for (let k = below; k < i && (runs[k] as Run).row === run.row - 1 && (runs[k] as Run).first < run.end; k++)
      parent[rootOf(k)] = rootOf(i)
  }
  const numbers = new Map<number, number>()
  const areas: number[] = []
  for (const [i, run] of runs.entries()) {
    const top = rootOf(i)
    const number = numbers.get(top) ?? areas.push(0) - 1
    numbers.set(top, number)
    run.region = number
    areas[number] =
      (areas[number] as number) +
      ((xs[run.end] as number) - (xs[run.first] as number)) * ((ys[run.row + 1] as number) - (ys[run.row] as number))
  }
  return areas
}

/** Directed edges with the filled cell on their left, walked into rings; where two rings touch at a corner each keeps to its own cell. */
function ringsOf(mesh: Mesh, runs: readonly Run[], regions: number): (readonly PointMm[])[][] {
  const wide = mesh.xs.length
  const next = new Map<number, { to: number; region: number }[]>()
  const add = (from: number, to: number, region: number) => {
    const known = next.get(from)
    if (known) known.push({ to, region })
    else next.set(from, [{ to, region }])
  }
  const rows = new Map<number, Run[]>()
  for (const run of runs) {
    const known = rows.get(run.row)
    if (known) known.push(run)
    else rows.set(run.row, [run])
  }
  for (const { row, first, end, region } of runs) {
    add(row * wide + end, (row + 1) * wide + end, region)
    add((row + 1) * wide + first, row * wide + first, region)
    for (const [from, to] of bare(first, end, rows.get(row - 1))) add(row * wide + from, row * wide + to, region)
    for (const [from, to] of bare(first, end, rows.get(row + 1))) add((row + 1) * wide + to, (row + 1) * wide + from, region)
  }
  const rings: (readonly PointMm[])[][] = Array.from({ length: regions }, () => [])
  for (const [start, ways] of next) while (ways.length > 0) walk(start, next, wide, mesh, rings)
  return rings
}

/** The stretches of a run that no run of the neighbouring row lies at. */
function bare(first: number, end: number, beside: readonly Run[] = []): readonly (readonly [number, number])[] {
  const stretches: (readonly [number, number])[] = []
  let from = first
  for (const other of beside) {
    if (other.end <= from || other.first >= end) continue
    if (other.first > from) stretches.push([from, other.first])
    from = other.end
  }
  if (from < end) stretches.push([from, end])
  return stretches
}

function walk(
  start: number,
  next: Map<number, { to: number; region: number }[]>,
  wide: number,
  { xs, ys }: Mesh,
  rings: (readonly PointMm[])[][],
): void {
  const at = (vertex: number): PointMm => [xs[vertex % wide] as number, ys[Math.floor(vertex / wide)] as number]
  const ring: PointMm[] = []
  let vertex = start
  let from: number | undefined
  let region = -1
  do {
    const ways = next.get(vertex) as { to: number; region: number }[]
    const k =
      ways.length === 1 || from === undefined
        ? 0
        : leftmost(
            at(from),
            at(vertex),
            ways.map(({ to }) => at(to)),
          )
    const [way] = ways.splice(k, 1) as [{ to: number; region: number }]
    region = way.region
    ring.push(at(vertex))
    from = vertex
    vertex = way.to
  } while (vertex !== start)
  ;(rings[region] as (readonly PointMm[])[]).push(corners(ring))
}

/** Which way turns left, seen from where one comes. */
function leftmost([ax, ay]: PointMm, [bx, by]: PointMm, ways: readonly PointMm[]): number {
  return Math.max(
    0,
    ways.findIndex(([cx, cy]) => (bx - ax) * (cy - by) - (by - ay) * (cx - bx) > 0),
  )
}

/** Only the places where a ring turns. */
function corners(ring: readonly PointMm[]): readonly PointMm[] {
  return ring.filter((point, i) => {
    const before = ring[(i + ring.length - 1) % ring.length] as PointMm
    const after = ring[(i + 1) % ring.length] as PointMm
    return !((before[0] === point[0] && point[0] === after[0]) || (before[1] === point[1] && point[1] === after[1]))
  })
}

/** Counter-clockwise counts up. */
export function signedArea(ring: readonly PointMm[]): number {
  let twice = 0
  for (const [i, [x, y]] of ring.entries()) {
    const [nextX, nextY] = ring[(i + 1) % ring.length] as PointMm
    twice += x * nextY - nextX * y
  }
  return twice / 2
}

/**
 * A circle inside of the region; no circle there is larger by more than `CIRCLE_WITHIN_MM`. Best squares first: the distance from a
 * square's middle to the outline, and half its diagonal more, bounds every circle whose centre lies in it.
 */
function largestCircle(rings: readonly (readonly PointMm[])[]): BlindRegion['circle'] {
  const [outer = []] = rings
  const edges = edgesOf(rings)
  const xMin = Math.min(...outer.map(([x]) => x))
  const xMax = Math.max(...outer.map(([x]) => x))
  const yMin = Math.min(...outer.map(([, y]) => y))
  const yMax = Math.max(...outer.map(([, y]) => y))
  const side = Math.min(xMax - xMin, yMax - yMin)
  let best = { x_mm: xMin, y_mm: yMin, radius_mm: 0 } // until a place inside is found
  let waiting: { x: number; y: number; half: number; most: number }[] = []
  const look = (x: number, y: number, half: number) => {
    const inside_mm = distanceInside(edges, x, y)
    if (inside_mm > best.radius_mm) best = { x_mm: x, y_mm: y, radius_mm: inside_mm }
    waiting.push({ x, y, half, most: inside_mm + half * Math.SQRT2 })
  }
  for (let x = xMin; x < xMax; x += side) for (let y = yMin; y < yMax; y += side) look(x + side / 2, y + side / 2, side / 2)
  while (waiting.length > 0) {
    const promising = waiting.filter(({ most }) => most > best.radius_mm + (best.radius_mm > 0 ? CIRCLE_WITHIN_MM : 0))
    waiting = []
    for (const { x, y, half } of promising)
      for (const [dx, dy] of [
        [-1, -1],
        [1, -1],
        [1, 1],
        [-1, 1],
      ] as const)
        look(x + (dx * half) / 2, y + (dy * half) / 2, half / 2)
  }
  return best
}

/** Lower and upper x, lower and upper y of each edge of each ring, one after the other. */
function edgesOf(rings: readonly (readonly PointMm[])[]): Float64Array {
  const edges = new Float64Array(4 * rings.reduce((sum, ring) => sum + ring.length, 0))
  let k = 0
  for (const ring of rings)
    for (const [i, [ax, ay]] of ring.entries()) {
      const [bx, by] = ring[(i + 1) % ring.length] as PointMm
      edges[k++] = Math.min(ax, bx)
      edges[k++] = Math.max(ax, bx)
      edges[k++] = Math.min(ay, by)
      edges[k++] = Math.max(ay, by)
    }
  return edges
}

/** From a point to the nearest edge; below zero outside of the region (even-odd). Edges run along the axes: those across a row are upright. */
function distanceInside(edges: Float64Array, x: number, y: number): number {
  let inside = false
  let nearest = Infinity
  for (let k = 0; k < edges.length; k += 4) {
    const left = edges[k] as number
    const right = edges[k + 1] as number
    const low = edges[k + 2] as number
    const high = edges[k + 3] as number
    if (low <= y && high > y && x < left) inside = !inside
    const dx = left > x ? left - x : x > right ? x - right : 0
    const dy = low > y ? low - y : y > high ? y - high : 0
    const square = dx * dx + dy * dy
    if (square < nearest) nearest = square
  }
  return inside ? Math.sqrt(nearest) : -Math.sqrt(nearest)
}
