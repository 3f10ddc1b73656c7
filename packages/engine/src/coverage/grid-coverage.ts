import type { Door, DoorState } from '../model/door.ts'
import type { BlindRegion, CellRun, Pocket, WorstCase, ZoneCoverage } from '../model/finding.ts'
import type { Zone } from '../model/zone.ts'
import { floorHeight, floorPieces } from '../space/floor.ts'
import { causesOf, type Remedy, remedies } from './causes.ts'
import { type CellSet, countCells, type Grid, runsOf } from './grid.ts'
import { type CoverageMaps, coverageMaps } from './maps.ts'
import { exactGrounds, gridGrounds, type PocketGround } from './pocket-grounds.ts'
import { deepestCell, letterOf, setOfRuns } from './pockets.ts'
import { fieldName } from './scene.ts'

/**
 * The grid answer of one zone in one state of the door: what is seen, blind and not free, and the blind pockets with their causes
 * and a worst case each (docs/method.md, section 3). It holds at the centres of the grid only.
 *
 * @param causes whether to find what hides each pocket: the most of the work, left out while something is dragged
 * @param regions what the exact answer leaves open: then pockets are its connected parts and have its figures
 * @param maps of this zone in this state with all fields that count, if at hand
 */
export function gridCoverage(
  door: Door,
  zone: Zone,
  state: DoorState,
  {
    causes = true,
    regions,
    maps = coverageMaps(door, zone, state),
  }: { readonly causes?: boolean; readonly regions?: readonly BlindRegion[] | undefined; readonly maps?: CoverageMaps } = {},
): ZoneCoverage {
  const { grid, stances, yawSampled, counted, blind, notFree } = maps
  const blindCount = countCells(blind)
  const notFreeCount = countCells(notFree)
  return {
    zone: zone.id,
    state: state.id,
    grid: { x0_mm: grid.x0, y0_mm: grid.y0, pitch_mm: grid.pitch, columns: grid.columns, rows: grid.rows },
    postures: stances.map(({ body, index, yaw_rad }) => ({ body: body.id, posture: index, yaw_rad })),
    yawSampled,
    counts: { seen: grid.columns * grid.rows - blindCount - notFreeCount, blind: blindCount, notFree: notFreeCount },
    blindRuns: runsOf(blind, grid),
    notFreeRuns: runsOf(notFree, grid),
    pockets: pocketsOf(door, zone, state, maps, causes, regions),
    countedFields: counted.map(fieldName),
  }
}

function pocketsOf(
  door: Door,
  zone: Zone,
  state: DoorState,
  maps: CoverageMaps,
  causes: boolean,
  regions: readonly BlindRegion[] | undefined,
): Pocket[] {
  const found = causes ? remedies(door, state, maps) : []
  const grounds = regions ? exactGrounds(maps.blind, maps.grid, zone, regions) : gridGrounds(maps.blind, maps.grid)
  return grounds.map((ground, i) => pocketOf(letterOf(i), ground, zone, state, maps, found))
}

function pocketOf(
  letter: string,
  ground: PocketGround,
  zone: Zone,
  state: DoorState,
  maps: CoverageMaps,
  found: readonly Remedy[],
): Pocket {
  const set = setOfRuns(ground.runs, maps.grid)
  const worstPosture = worstStance(set, maps)
  return {
    letter,
    ...ground,
    worstPosture,
    worstCase: worstCaseOf(set, worstPosture, zone, state, maps),
    causes: causesOf(set, ground.cells, found),
  }
}

/** Cells of the pocket that are blind in stance s itself. */
function blindIn(pocket: CellSet, s: number, { free, seen }: CoverageMaps): CellSet {
  const set = new Int32Array(pocket.length)
  const freeSet = free[s] as CellSet
  const seenSet = seen[s] as CellSet
  for (let w = 0; w < set.length; w++) set[w] = (pocket[w] as number) & (freeSet[w] as number) & ~(seenSet[w] as number)
  return set
}

/** The stance that is blind in most cells; the first on a tie. */
function worstStance(pocket: CellSet, maps: CoverageMaps): number {
  let worst = 0
  let most = -1
  for (let s = 0; s < maps.stances.length; s++) {
    const cells = countCells(blindIn(pocket, s, maps))
    if (cells > most) {
      most = cells
      worst = s
    }
  }
  return worst
}

function worstCaseOf(pocket: CellSet, stance: number, zone: Zone, state: DoorState, maps: CoverageMaps): WorstCase {
  const { grid } = maps
  const set = blindIn(pocket, stance, maps)
  const runs = runsOf(set, grid)
  const inside = runs.flatMap((run) => insideZone(run, grid, zone))
  const { row, column } = deepestCell(inside.length > 0 ? inside : runs)
  const { body, index, yaw_rad } = maps.stances[stance] as CoverageMaps['stances'][number]
  const x_mm = grid.x0 + (column + 0.5) * grid.pitch
  const y_mm = grid.y0 + (row + 0.5) * grid.pitch
  return { body: body.id, posture: index, x_mm, y_mm, z_mm: floorHeight(floorPieces(state.floor), x_mm, y_mm), yaw_rad, state: state.id }
}

/** The cells of a run whose middles lie in the zone: those of the last strip may lie beyond it, and would be no placement of the zone. */
function insideZone([row, first, last]: CellRun, { x0, y0, pitch }: Grid, { xMax_mm, yMax_mm }: Zone): readonly CellRun[] {
  if (y0 + (row + 0.5) * pitch > yMax_mm) return []
  const end = x0 + (last + 0.5) * pitch > xMax_mm ? last - 1 : last
  return end < first ? [] : [[row, first, end]]
}
