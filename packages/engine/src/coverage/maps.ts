import type { Door, DoorState } from '../model/door.ts'
import type { Zone } from '../model/zone.ts'
import { shapeOf } from '../seeing/shape.ts'
import { floorPieces } from '../space/floor.ts'
import { drawTaken } from './free-map.ts'
import { type CellSet, emptySet, fullSet, type Grid, gridOf } from './grid.ts'
import type { Strip } from './hits.kernel.ts'
import { type CountedField, countedFields, fieldSight, type SightOf, type Stance, stancesOf } from './scene.ts'
import { drawSeen, type Easel, type FieldSight, newEasel, stripsOf } from './seen-map.ts'

/** The grid answer of a zone in one state of the door, as sets of cells; one set per stance in `free` and `seen`. */
export interface CoverageMaps {
  readonly grid: Grid
  readonly stances: readonly Stance[]
  readonly yawSampled: boolean
  readonly counted: readonly CountedField[]
  readonly free: readonly CellSet[]
  readonly seen: readonly CellSet[]
  /** Free and unseen in at least one stance. */
  readonly blind: CellSet
  /** Free in no stance. */
  readonly notFree: CellSet
}

/**
 * Where a body is seen, blind or cannot be (docs/method.md, section 3), at the centres of the zone's grid.
 *
 * @param counted the fields that count; all of the zone's function if not given
 * @param sightOf what these fields see with, if somebody keeps it
 */
export function coverageMaps(
  door: Door,
  zone: Zone,
  state: DoorState,
  counted: readonly CountedField[] = countedFields(door, zone),
  sightOf: SightOf = (field) => fieldSight(door, state, field),
): CoverageMaps {
  const grid = gridOf(zone)
  const easel = newEasel(grid)
  const { stances, yawSampled } = stancesOf(door, zone)
  const strips = stripsOf(grid, floorPieces(state.floor))
  const free = stances.map((stance) => freeMap(easel, strips, state, stance))
  const sights = counted.map((field) => sightOf(field, state))
  const seen = stances.map((stance) => {
    const set = emptySet(grid)
    drawStance(set, easel, strips, counted, sights, stance)
    return set
  })
  const blind = emptySet(grid)
  const notFree = fullSet(grid)
  for (let s = 0; s < stances.length; s++) {
    addBlind(blind, free[s] as CellSet, seen[s] as CellSet)
    const freeSet = free[s] as CellSet
    for (let w = 0; w < notFree.length; w++) notFree[w] = (notFree[w] as number) & ~(freeSet[w] as number)
  }
  return { grid, stances, yawSampled, counted, free, seen, blind, notFree }
}

/** Adds what all counted fields see of one stance. */
export function drawStance(
  seen: CellSet,
  easel: Easel,
  strips: readonly Strip[],
  counted: readonly CountedField[],
  sights: readonly FieldSight[],
  { posture, yaw_rad, body }: Stance,
): void {
  for (const [k, { sensor }] of counted.entries())
    drawSeen(seen, easel, strips, sights[k] as FieldSight, shapeOf(posture, yaw_rad, body.reflectance, sensor.spotRadius_mm))
}

/** blind |= free and not seen. */
export function addBlind(blind: CellSet, free: CellSet, seen: CellSet): void {
  for (let w = 0; w < blind.length; w++) blind[w] = (blind[w] as number) | ((free[w] as number) & ~(seen[w] as number))
}

function freeMap(easel: Easel, strips: readonly Strip[], state: DoorState, { posture, yaw_rad }: Stance): CellSet {
  const taken = emptySet(easel.grid)
  drawTaken(taken, easel, strips, floorPieces(state.floor), state.obstacles, shapeOf(posture, yaw_rad, 1, 0))
  const free = fullSet(easel.grid)
  for (let w = 0; w < free.length; w++) free[w] = (free[w] as number) & ~(taken[w] as number)
  return free
}
