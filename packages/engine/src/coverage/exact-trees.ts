import { partsOf } from '../model/body.ts'
import type { Door, DoorState, Tolerances } from '../model/door.ts'
import type { Zone } from '../model/zone.ts'
import { type Shape, shapeOf } from '../seeing/shape.ts'
import { floorPieces } from '../space/floor.ts'
import { radians } from '../space/trigonometry.ts'
import type { Strip } from './hits.kernel.ts'
import { NO_TOLERANCES } from './off.ts'
import { type CountedField, countedFields } from './scene.ts'
import { type TolerantField, tileBeams, tileBody, tolerantField } from './tile-scene.ts'
import { growTree, OPEN, type Rectangle, type TileProblem, type TileSight, type TileTree } from './tile-tree.ts'

/** One posture at one yaw, or over a slice of a yaw range, and what its tile trees say: tree k covers rectangle k. */
export interface ExactSlice {
  readonly body: string
  readonly posture: number
  readonly yawFrom_rad: number
  readonly yawTo_rad: number
  readonly trees: readonly TileTree[]
}

/** The exact answer of a zone in one state of the door, with the argument for every tile. */
export interface ExactTrees {
  readonly zone: string
  readonly state: string
  readonly tolerances: Tolerances
  readonly fields: readonly CountedField[]
  /** The zone, cut where the floor bends. */
  readonly roots: readonly Rectangle[]
  readonly slices: readonly ExactSlice[]
  /** What the trees refer to. */
  readonly sights: readonly TileSight[]
  readonly obstacles: readonly string[]
  readonly smallest_mm: number
}

/**
 * Questions of a beam about a tile that may be asked for one zone in one state, and for all of a door: several times what a door takes that
 * somebody measured, and few enough that no file keeps the judge busy. A matter of counting, not of time, so that every machine stops at
 * the same tile.
 */
const MOST_QUESTIONS = 3e6
const MOST_QUESTIONS_OF_DOOR = 6e6

const WIDEST_SLICE_RAD = radians(3)

/** The largest size of a tile that may stay open, unless the caller says otherwise. */
export const SMALLEST_TILE_MM = 3.125

/**
 * Proves, tile by tile, where a body is seen or cannot be (docs/method.md, "Exact"). What is left open counts as blind.
 *
 * @param tolerances none for the door as written
 * @param budget questions that may be asked, counted down; several calls may share one
 */
export function exactTrees(
  door: Door,
  zone: Zone,
  state: DoorState,
  tolerances: Tolerances = NO_TOLERANCES,
  smallest_mm = SMALLEST_TILE_MM,
  budget = { left: questionsOf(door) },
): ExactTrees {
  const scene = sceneOf(door, zone, state, tolerances, smallest_mm, false, budget)
  const slices = scene.slices.map((slice) => ({ ...named(slice), trees: treesOf(scene, slice) }))
  const obstacles = state.obstacles.map((o) => o.id)
  const roots = scene.roots.map((r) => r.tile)
  return {
    zone: zone.id,
    state: state.id,
    tolerances,
    fields: scene.fields.map((f) => f.counted),
    roots,
    slices,
    sights: scene.sights,
    obstacles,
    smallest_mm,
  }
}

/** Whether `exactTrees` would leave nothing open; stops at the first tile that stays so. */
export function isProved(door: Door, zone: Zone, state: DoorState, tolerances: Tolerances, budget = { left: questionsOf(door) }): boolean {
  const scene = sceneOf(door, zone, state, tolerances, SMALLEST_TILE_MM, true, budget)
  return scene.slices.every((slice) => treesOf(scene, slice).every((tree) => tree[tree.length - 1] !== OPEN && !tree.includes(OPEN)))
}

/** All zones and states of a door share what one may take. */
export function questionsOf({ zones, states }: Door): number {
  return Math.floor(Math.min(MOST_QUESTIONS, MOST_QUESTIONS_OF_DOOR / Math.max(1, zones.length * states.length)))
}

interface Scene {
  readonly state: DoorState
  readonly tolerances: Tolerances
  readonly fields: readonly TolerantField[]
  readonly roots: readonly Root[]
  readonly slices: readonly Slice[]
  readonly sights: TileSight[]
  readonly smallest_mm: number
  readonly stopAtOpen: boolean
  readonly budget: { left: number }
}

function sceneOf(
  door: Door,
  zone: Zone,
  state: DoorState,
  tolerances: Tolerances,
  smallest_mm: number,
  stopAtOpen: boolean,
  budget: { left: number },
): Scene {
  const fields = countedFields(door, zone).map((c) => tolerantField(door, state, c, tolerances))
  return {
    state,
    tolerances,
    fields,
    roots: rootsOf(zone, state),
    slices: slicesOf(door, zone),
    sights: [],
    smallest_mm,
    stopAtOpen,
    budget,
  }
}

interface Slice {
  readonly body: Door['bodies'][number]
  readonly index: number
  readonly yawFrom_rad: number
  readonly yawTo_rad: number
}

function named({ body, index, yawFrom_rad, yawTo_rad }: Slice): Omit<ExactSlice, 'trees'> {
  return { body: body.id, posture: index, yawFrom_rad, yawTo_rad }
}

/** Every posture of one part; a yaw range in slices of at most 3 degrees. */
function slicesOf(door: Door, zone: Zone): Slice[] {
  return zone.bodies.flatMap((id) => {
    const body = door.bodies.find((b) => b.id === id)
    if (body === undefined) throw new Error(`zone ${zone.id} must name a body of the door, got ${id}`)
    return body.postures.flatMap((posture, index) => {
      if (partsOf(posture)) return []
      if (posture.shape === 'cylinder') return [{ body, index, yawFrom_rad: 0, yawTo_rad: 0 }]
      const range = posture.yawTo_rad - posture.yawFrom_rad
      const count = Math.max(1, Math.ceil(range / WIDEST_SLICE_RAD - 1e-9))
      const at = (k: number) => (k === count ? posture.yawTo_rad : posture.yawFrom_rad + (range * k) / count)
      return Array.from({ length: count }, (_, k) => ({ body, index, yawFrom_rad: at(k), yawTo_rad: at(k + 1) }))
    })
  })
}

interface Root {
  readonly tile: Rectangle
  readonly strip: Strip
}

/** The zone cut along the bends of the floor, so that each part stands on one straight piece. */
function rootsOf(zone: Zone, state: DoorState): Root[] {
  const floor = floorPieces(state.floor)
  const roots: Root[] = []
  for (let piece = 0; piece < floor.count; piece++) {
    const yMin = Math.max(zone.yMin_mm, floor.from[piece] as number)
    const yMax = Math.min(zone.yMax_mm, floor.from[piece + 1] ?? Infinity)
    if (!(yMin < yMax)) continue
    const slopeY = floor.slope[piece] as number
    const z0 = (floor.z[piece] as number) - (floor.y[piece] as number) * slopeY
    const tile = { xMin: zone.xMin_mm, xMax: zone.xMax_mm, yMin, yMax }
    roots.push({ tile, strip: { firstRow: 0, lastRow: -1, z0, slopeX: floor.slopeX, slopeY, lowest: 0, highest: 0 } })
  }
  return roots
}

function treesOf({ state, tolerances, fields, roots, sights, smallest_mm, stopAtOpen, budget }: Scene, slice: Slice): TileTree[] {
  const posture = slice.body.postures[slice.index]
  if (posture === undefined) throw new Error(`body ${slice.body.id} must have posture ${slice.index}`)
  const yaw = (slice.yawFrom_rad + slice.yawTo_rad) / 2
  const turn_rad = (slice.yawTo_rad - slice.yawFrom_rad) / 2
  const shapes = fields.map((f) => shapeOf(posture, yaw, slice.body.reflectance, f.counted.sensor.spotRadius_mm))
  const beams = fields.map((field, f) => tileBeams(field, shapes[f] as Shape, tolerances, turn_rad))
  return roots.map(({ tile, strip }) => {
    const problem: TileProblem = {
      standing: shapeOf(posture, yaw, 1, 0),
      turn_rad,
      strip,
      fields,
      beams,
      bodies: shapes.map((shape) => tileBody(shape, strip)),
      obstacles: state.obstacles,
      length_mm: tolerances.length_mm,
      floor_mm: tolerances.floor_mm,
      smallest_mm,
      stopAtOpen,
      budget,
    }
    return growTree(problem, tile, sights)
  })
}
