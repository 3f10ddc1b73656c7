import type { Door, DoorState } from '../model/door.ts'
import type { WorstCase } from '../model/finding.ts'
import type { RangingSensor } from '../model/sensor.ts'
import type { Zone } from '../model/zone.ts'
import { type CellSet, countCells, emptySet, type Grid, hasCell } from './grid.ts'
import { type CoverageMaps, coverageMaps } from './maps.ts'
import { type CellGroup, diameter, groupsOf, setOfRuns } from './pockets.ts'
import type { CountedField, SightOf } from './scene.ts'
import { caseIn, type Extent, extentOfSet, seenInAnyPosture } from './seen-in-any-posture.ts'

/** The floor near a sensor where none of its beams sees any body of the zone. It holds at the centres of the grid only. */
export interface DeadGround {
  readonly cells: number
  readonly area_mm2: number
  /** Largest distance between two points of its cells; 0 where there is no dead ground. */
  readonly diameter_mm: number
  /** How far it reaches out from the mid-plane of the leaf, to the outer edge of its cells. */
  readonly depth_mm: number
  readonly extent: Extent | undefined
  /** What other sensors that count for the zone do not see either: the largest connected piece of it. */
  readonly left: { readonly cells: number; readonly diameter_mm: number; readonly worstCase: WorstCase | undefined }
}

/**
 * Dead ground: cells at which some body is free, and no posture of any body of the zone is seen by this sensor's counting fields, as far as they
 * are connected (8 neighbours) with the cell nearest to the sensor's foot. A row of beams has a foot under each of them. Cells at which
 * nothing is free neither belong to it nor are nearest.
 *
 * @param all the maps of this zone in this state with all fields that count
 */
export function deadGround(
  door: Door,
  zone: Zone,
  state: DoorState,
  sensor: RangingSensor,
  all: CoverageMaps = coverageMaps(door, zone, state),
  sightOf?: SightOf,
): DeadGround {
  const [ownFields, otherFields] = [true, false].map((isOwn) => all.counted.filter((field) => (field.sensor === sensor) === isOwn))
  const mapsOf = (fields: readonly CountedField[] = []) =>
    fields.length === all.counted.length ? all : coverageMaps(door, zone, state, fields, sightOf)
  const own = mapsOf(ownFields)
  const { grid } = own
  const dead = nearFeet(unseenInAll(own), own, feetOf(sensor))
  const left = otherFields?.length === 0 ? dead : minus(dead, seenInAnyPosture(mapsOf(otherFields)))
  const [largest] = groupsOf(left, grid)
    .map((group) => ({ group, diameter_mm: diameter(group.runs, grid) }))
    .sort((a, b) => b.diameter_mm - a.diameter_mm)
  const cells = countCells(dead)
  const extent = cells > 0 ? extentOfSet(dead, grid) : undefined
  return {
    cells,
    area_mm2: cells * grid.pitch * grid.pitch,
    diameter_mm: largestDiameter(groupsOf(dead, grid), grid),
    depth_mm: extent ? Math.max(Math.abs(extent.yMin_mm), Math.abs(extent.yMax_mm)) : 0,
    extent,
    left: {
      cells: largest?.group.cells ?? 0,
      diameter_mm: largest?.diameter_mm ?? 0,
      worstCase: largest && caseIn(setOfRuns(largest.group.runs, grid), own, state, own.free),
    },
  }
}

function largestDiameter(groups: readonly CellGroup[], grid: Grid): number {
  return groups.reduce((most, { runs }) => Math.max(most, diameter(runs, grid)), 0)
}

function unseenInAll(maps: CoverageMaps): CellSet {
  return minus(complement(maps.notFree, maps.grid), seenInAnyPosture(maps))
}

/** The groups of a set that hold the free cell nearest to one of the feet; of several as near the first in row order. */
function nearFeet(set: CellSet, { grid, notFree }: CoverageMaps, feet: readonly Foot[]): CellSet {
  const near = feet.flatMap((foot) => nearestFree(notFree, grid, foot) ?? [])
  const result = emptySet(grid)
  for (const { runs } of groupsOf(set, grid)) {
    const group = setOfRuns(runs, grid)
    if (near.some(({ row, column }) => hasCell(group, grid, row, column)))
      for (let w = 0; w < result.length; w++) result[w] = (result[w] as number) | (group[w] as number)
  }
  return result
}

interface Foot {
  readonly x_mm: number
  readonly y_mm: number
}

function feetOf({ planes, pose }: RangingSensor): readonly Foot[] {
  const feet: Foot[] = planes.flatMap((plane) => (plane.kind === 'row' ? plane.places : [pose]))
  return feet.filter(({ x_mm, y_mm }, i) => feet.findIndex((other) => other.x_mm === x_mm && other.y_mm === y_mm) === i)
}

function nearestFree(notFree: CellSet, grid: Grid, { x_mm, y_mm }: Foot): { readonly row: number; readonly column: number } | undefined {
  let nearest: { readonly row: number; readonly column: number } | undefined
  let least = Infinity
  for (let row = 0; row < grid.rows; row++) {
    const dy = grid.y0 + (row + 0.5) * grid.pitch - y_mm
    if (dy * dy >= least) continue
    for (let column = 0; column < grid.columns; column++) {
      const dx = grid.x0 + (column + 0.5) * grid.pitch - x_mm
      const squared = dx * dx + dy * dy
      if (squared < least && !hasCell(notFree, grid, row, column)) {
        least = squared
        nearest = { row, column }
      }
    }
  }
  return nearest
}

function complement(set: CellSet, grid: Grid): CellSet {
  const spare = grid.words * 32 - grid.columns
  return set.map((word, w) => ~word & (spare > 0 && w % grid.words === grid.words - 1 ? -1 >>> spare : -1))
}

function minus(set: CellSet, other: CellSet): CellSet {
  return set.map((word, w) => word & ~(other[w] as number))
}
