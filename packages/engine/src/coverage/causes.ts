import type { Posture } from '../model/body.ts'
import type { Door, DoorState, Obstacle } from '../model/door.ts'
import type { Cause } from '../model/finding.ts'
import type { Field, Pose, RangingSensor } from '../model/sensor.ts'
import { type Beams, beamsOf, beamsOfFans } from '../seeing/beams.ts'
import { floorHeight, floorPieces } from '../space/floor.ts'
import { atan2, cos, hypot3, PI, sin } from '../space/trigonometry.ts'
import { type CellSet, countCells, emptySet, type Grid } from './grid.ts'
import { addBlind, type CoverageMaps, drawStance } from './maps.ts'
import { fieldSight, type Lift } from './scene.ts'
import { type Easel, type FieldSight, newEasel, stripsOf } from './seen-map.ts'

/** Cells that lifting one thing alone would make seen. */
export interface Remedy {
  readonly kind: Cause['kind']
  readonly obstacle?: string
  readonly cells: CellSet
}

/**
 * For every rule and every obstacle: which blind cells lifting it alone would make seen (docs/method.md, section 3). A beam at every
 * angle and a plane at every offset are tried in steps well below the size of the smallest body, so these two may miss a sliver
 * and never claim too much.
 */
export function remedies(door: Door, state: DoorState, maps: CoverageMaps): Remedy[] {
  if (countCells(maps.blind) === 0) return []
  const [firstRow, lastRow] = rowsOf(maps.blind, maps.grid)
  const strips = stripsOf(maps.grid, floorPieces(state.floor), firstRow, lastRow)
  const easel = newEasel(maps.grid)
  const asIs = maps.counted.map((counted) => fieldSight(door, state, counted))
  const found: Remedy[] = []
  for (const { kind, lift } of lifts(door, state, maps)) {
    const sights = maps.counted.map((counted, k) => fieldSight(door, state, counted, lift, asIs[k]))
    if (sights.every((sight, k) => isSame(sight, asIs[k] as FieldSight))) continue
    const cells = madeSeen(easel, strips, maps, sights)
    if (countCells(cells) > 0) found.push(lift.obstacle ? { kind, obstacle: lift.obstacle.id, cells } : { kind, cells })
  }
  return found
}

/** Causes of one pocket, most cells first. Cells that no lifting alone makes seen count as `several-together`. */
export function causesOf(pocket: CellSet, cells: number, found: readonly Remedy[]): Cause[] {
  const mended = new Int32Array(pocket.length)
  const causes: Cause[] = []
  for (const { kind, obstacle, cells: made } of found) {
    const common = intersection(made, pocket)
    const count = countCells(common)
    for (let w = 0; w < mended.length; w++) mended[w] = (mended[w] as number) | (common[w] as number)
    if (count > 0) causes.push(obstacle === undefined ? { kind, cells: count } : { kind, obstacle, cells: count })
  }
  const left = cells - countCells(mended)
  if (left > 0) causes.push({ kind: 'several-together', cells: left })
  return causes.sort((a, b) => b.cells - a.cells)
}

function intersection(a: CellSet, b: CellSet): CellSet {
  const both = new Int32Array(a.length)
  for (let w = 0; w < both.length; w++) both[w] = (a[w] as number) & (b[w] as number)
  return both
}

/** What can be lifted, leaving out what cannot matter. */
function lifts(door: Door, state: DoorState, maps: CoverageMaps): { readonly kind: Cause['kind']; readonly lift: Lift }[] {
  const postures = maps.stances.map((s) => s.posture)
  const list: { readonly kind: Cause['kind']; readonly lift: Lift }[] = [
    { kind: 'beyond-reach', lift: { reach: true } },
    { kind: 'too-dark', lift: { dark: true } },
    { kind: 'too-close-to-background', lift: { margin: true } },
    { kind: 'outside-sides', lift: { sides: true } },
    { kind: 'below-clearance', lift: { clearance: true } },
    { kind: 'above-top', lift: { top: true } },
    { kind: 'too-few-neighbours', lift: { cluster: true } },
    { kind: 'between-beams', lift: { beams: (sensor) => everyAngle(sensor, maps.grid, state, postures) } },
    { kind: 'no-plane-here', lift: { beams: (sensor, field) => everyOffset(sensor, field, maps.grid, state, postures) } },
  ]
  if (door.extinction_per_mm > 0) list.splice(2, 0, { kind: 'fog', lift: { fog: true } })
  for (const obstacle of obstaclesThatHide(door, state, maps)) list.push({ kind: 'hidden-behind', lift: { obstacle } })
  return list
}

/** What stands there now, and what stood there when one of the sensors learned its background and is gone since. */
function obstaclesThatHide(door: Door, state: DoorState, { counted }: CoverageMaps): Obstacle[] {
  const learned = new Set(counted.flatMap(({ sensor }) => (sensor.kind === 'ranging' ? [sensor.learnedIn] : [])))
  const byId = new Map(state.obstacles.map((obstacle) => [obstacle.id, obstacle]))
  for (const { id, obstacles } of door.states)
    if (learned.has(id)) for (const obstacle of obstacles) if (!byId.has(obstacle.id)) byId.set(obstacle.id, obstacle)
  return [...byId.values()]
}

/** The lift changes nothing that a beam of this field could see. */
function isSame(a: FieldSight, b: FieldSight): boolean {
  const p = a.sight.reach
  const q = b.sight.reach
  return (
    a.clusterBeams === b.clusterBeams &&
    a.sight.beams.count === b.sight.beams.count &&
    p.maxRange_mm === q.maxRange_mm &&
    p.rangeRef_mm === q.rangeRef_mm &&
    p.reflectanceRef === q.reflectanceRef &&
    p.extinction_per_mm === q.extinction_per_mm &&
    isEqual(a.windows.first, b.windows.first) &&
    isEqual(a.windows.from, b.windows.from) &&
    isEqual(a.windows.to, b.windows.to)
  )
}

function isEqual(a: Float64Array | Int32Array, b: Float64Array | Int32Array): boolean {
  if (a.length !== b.length) return false
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false
  return true
}

/** Blind cells that the changed sights would leave blind in no stance. */
function madeSeen(easel: Easel, strips: ReturnType<typeof stripsOf>, maps: CoverageMaps, sights: readonly FieldSight[]): CellSet {
  const still = emptySet(maps.grid)
  for (const [s, stance] of maps.stances.entries()) {
    const seen = emptySet(maps.grid)
    drawStance(seen, easel, strips, maps.counted, sights, stance)
    addBlind(still, maps.free[s] as CellSet, seen)
  }
  const made = emptySet(maps.grid)
  for (let w = 0; w < made.length; w++) made[w] = (maps.blind[w] as number) & ~(still[w] as number)
  return made
}

function rowsOf(set: CellSet, { rows, words }: Grid): readonly [number, number] {
  let first = rows
  let last = -1
  for (let r = 0; r < rows; r++)
    for (let w = 0; w < words; w++)
      if (set[r * words + w] !== 0) {
        if (r < first) first = r
        last = r
      }
  return [first, last]
}

const MOST_BEAMS = 60_000 // of one sensor with its fans refined; keeps a hostile file bounded

/** The sensor's fans with beams so close that none is farther from its neighbour than an eighth of the smallest body. */
function everyAngle(sensor: RangingSensor, grid: Grid, state: DoorState, postures: readonly Posture[]): Beams {
  const away = farthest(sensor.pose, grid, state)
  const step_rad = smallestSide(postures) / 8 / away
  const fans = sensor.planes.filter((p) => p.kind === 'fan')
  const most = Math.floor(MOST_BEAMS / Math.max(1, fans.length))
  if (fans.length !== sensor.planes.length) return beamsOf(sensor) // a row of single beams has no angles between
  return beamsOfFans(
    sensor.pose,
    fans.map((fan) => {
      const gaps = Math.max(1, fan.beamCount - 1)
      const factor = Math.max(4, Math.ceil((fan.fovMax_rad - fan.fovMin_rad) / gaps / step_rad))
      return { ...fan, beamCount: Math.min(most, gaps * factor + 1) }
    }),
  )
}

/** The field's first fan at offsets so close that planes lie at most a quarter of the smallest body apart, over the whole zone. */
function everyOffset(sensor: RangingSensor, field: Field, grid: Grid, state: DoorState, postures: readonly Posture[]): Beams {
  const fan = sensor.planes.find((p) => p.kind === 'fan' && field.planes.includes(p.id))
  if (fan?.kind !== 'fan') return beamsOf(sensor)
  const step_rad = smallestSide(postures) / 4 / farthest(sensor.pose, grid, state)
  const [low, high] = leansToward(sensor.pose, grid, state, tallest(postures))
  const count = Math.min(Math.floor(MOST_BEAMS / fan.beamCount), Math.max(2, Math.ceil((high - low) / step_rad) + 1))
  // All take part under a name that the field knows, each as a plane of its own.
  const fans = Array.from({ length: count }, (_, k) => ({
    ...fan,
    id: fan.id,
    offset_rad: low + ((high - low) * k) / (count - 1) - sensor.pose.tilt_rad,
  }))
  return beamsOfFans(sensor.pose, fans)
}

function smallestSide(postures: readonly Posture[]): number {
  return Math.min(...postures.map((p) => (p.shape === 'box' ? Math.min(p.a_mm, p.b_mm, p.c_mm) : Math.min(2 * p.radius_mm, p.height_mm))))
}

function tallest(postures: readonly Posture[]): number {
  return Math.max(...postures.map((p) => (p.shape === 'box' ? p.c_mm : p.height_mm)))
}

function cornersOf(grid: Grid): readonly (readonly [number, number])[] {
  const { x0, y0, pitch, columns, rows } = grid
  return [x0, x0 + columns * pitch].flatMap((x) => [y0, y0 + rows * pitch].map((y) => [x, y] as const))
}

/** Lowest and highest floor in the zone: at its corners and where the profile bends between them. */
function floorSpan({ x0, y0, pitch, columns, rows }: Grid, { floor }: DoorState): readonly [low: number, high: number] {
  const pieces = floorPieces(floor)
  const end = y0 + rows * pitch
  const ys = [y0, end, ...floor.profile.map((p) => p.y_mm).filter((y) => y > y0 && y < end)]
  const heights = ys.flatMap((y) => [floorHeight(pieces, x0, y), floorHeight(pieces, x0 + columns * pitch, y)])
  return [Math.min(...heights), Math.max(...heights)]
}

/** Distance from the sensor to the farthest corner of the zone, at the lowest or highest floor in it. */
function farthest({ x_mm, y_mm, z_mm }: Pose, grid: Grid, state: DoorState): number {
  const [low, high] = floorSpan(grid, state)
  const upward = Math.max(Math.abs(z_mm - low), Math.abs(z_mm - high))
  return Math.max(1, ...cornersOf(grid).map(([x, y]) => hypot3(x - x_mm, y - y_mm, upward)))
}

/** Range of the lean of planes through the sensor that pass through the zone between the floor and `height`. */
function leansToward(pose: Pose, grid: Grid, state: DoorState, height_mm: number): readonly [number, number] {
  const [low, highest] = floorSpan(grid, state)
  const high = highest + height_mm
  if (high >= pose.z_mm) return [-PI / 2, PI / 2]
  const leans = cornersOf(grid).flatMap(([x, y]) => {
    const outward = (y - pose.y_mm) * cos(pose.yaw_rad) - (x - pose.x_mm) * sin(pose.yaw_rad)
    return [low, high].map((z) => atan2(outward, pose.z_mm - z))
  })
  return [Math.min(...leans), Math.max(...leans)]
}
