import type { Door, DoorState } from '../model/door.ts'
import type { WorstCase } from '../model/finding.ts'
import type { Zone } from '../model/zone.ts'
import { floorHeight, floorPieces } from '../space/floor.ts'
import { type CellSet, countCells, emptySet, type Grid, hasCell, runsOf } from './grid.ts'
import { type CoverageMaps, coverageMaps } from './maps.ts'
import { deepestCell } from './pockets.ts'
import type { CountedField } from './scene.ts'

/**
 * The placements that are free and seen in at least one posture: the other end of the question from coverage, which asks for all postures.
 *
 * @returns empty where nothing is free
 */
export function seenInAnyPosture(maps: Pick<CoverageMaps, 'grid' | 'free' | 'seen'>): CellSet {
  const any = emptySet(maps.grid)
  for (const set of freeAndSeen(maps)) for (let w = 0; w < any.length; w++) any[w] = (any[w] as number) | (set[w] as number)
  return any
}

/** One set per stance: free and seen in it. */
function freeAndSeen({ free, seen }: Pick<CoverageMaps, 'free' | 'seen'>): readonly CellSet[] {
  return free.map((set, s) => set.map((word, w) => word & ((seen[s] as CellSet)[w] as number)))
}

/** A rectangle in the plan, doorway frame. */
export interface Extent {
  readonly xMin_mm: number
  readonly xMax_mm: number
  readonly yMin_mm: number
  readonly yMax_mm: number
}

/** What the reverse test finds in a zone that must not be seen. Areas are cells times the pitch squared. */
export interface ReverseTest {
  readonly seen: number // cells
  readonly free: number
  readonly seenArea_mm2: number
  /** Outer edges of the seen cells; undefined where none is. */
  readonly extent: Extent | undefined
  /** A body deep inside of what is seen. */
  readonly worstCase: WorstCase | undefined
}

/**
 * Where in a zone these fields see a body in at least one posture. It holds at the centres of the grid only.
 *
 * @param fields all of the function that must not see; one that lets a standing body go soon has seen it all the same
 */
export function reverseTest(door: Door, zone: Zone, state: DoorState, fields: readonly CountedField[]): ReverseTest {
  const maps = coverageMaps(door, zone, state, fields)
  const { grid, notFree } = maps
  const set = seenInAnyPosture(maps)
  const seen = countCells(set)
  return {
    seen,
    free: grid.columns * grid.rows - countCells(notFree),
    seenArea_mm2: seen * grid.pitch * grid.pitch,
    extent: seen > 0 ? extentOfSet(set, grid) : undefined,
    worstCase: seen > 0 ? caseIn(set, maps, state, freeAndSeen(maps)) : undefined,
  }
}

/** Outer edges of the cells of a set that is not empty. */
export function extentOfSet(set: CellSet, grid: Grid): Extent {
  const extent = { left: Infinity, right: -Infinity, low: Infinity, high: -Infinity }
  for (const [row, first, last] of runsOf(set, grid)) {
    extent.left = Math.min(extent.left, first)
    extent.right = Math.max(extent.right, last + 1)
    extent.low = Math.min(extent.low, row)
    extent.high = Math.max(extent.high, row + 1)
  }
  const { x0, y0, pitch } = grid
  return {
    xMin_mm: x0 + extent.left * pitch,
    xMax_mm: x0 + extent.right * pitch,
    yMin_mm: y0 + extent.low * pitch,
    yMax_mm: y0 + extent.high * pitch,
  }
}

/**
 * A body deep inside of a set of cells, in the first posture whose own set holds that cell.
 *
 * @param byPosture one set per stance: where a body in this posture is the case in point
 */
export function caseIn(
  set: CellSet,
  { grid, stances }: Pick<CoverageMaps, 'grid' | 'stances'>,
  state: DoorState,
  byPosture: readonly CellSet[],
): WorstCase | undefined {
  const { row, column } = deepestCell(runsOf(set, grid))
  const stance = stances.find((_, s) => hasCell(byPosture[s] as CellSet, grid, row, column))
  if (stance === undefined) return undefined
  const x_mm = grid.x0 + (column + 0.5) * grid.pitch
  const y_mm = grid.y0 + (row + 0.5) * grid.pitch
  const z_mm = floorHeight(floorPieces(state.floor), x_mm, y_mm)
  return { body: stance.body.id, posture: stance.index, x_mm, y_mm, z_mm, yaw_rad: stance.yaw_rad, state: state.id }
}
