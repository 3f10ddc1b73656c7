import { type CellSet, emptySet, type Grid, gridOf, hasCell } from '../src/coverage/grid.ts'
import { countedFields, fieldSight, stancesOf } from '../src/coverage/scene.ts'
import { drawSeen, type FieldSight, newEasel, stripsOf } from '../src/coverage/seen-map.ts'
import type { Door } from '../src/model/door.ts'
import { beamSees } from '../src/seeing/sees.ts'
import { isEmpty, type Shape, shapeOf } from '../src/seeing/shape.ts'
import { floorPieces } from '../src/space/floor.ts'

/** What comparing found: cells that the predicate sees, and each map that is not the predicate's, with its first wrong cell. */
export interface Comparison {
  readonly seenCells: number
  readonly differences: readonly string[]
}

/**
 * Every beam of a door drawn alone, so that no other one covers up what it gets wrong, against the predicate asked about it at every cell. Bits past
 * the last column count as wrong.
 */
export function compareBeams(door: Door): Comparison {
  return compare(door, (field) =>
    Array.from({ length: field.sight.beams.count }, (_, i) => ({ ...field, planes: [{ first: i, end: i + 1 }], clusterBeams: 1 })),
  )
}

/** The planes of every field, with their clusters, against runs of neighbours that the predicate sees at every cell. */
export function compareFields(door: Door): Comparison {
  return compare(door, (field) => [field])
}

function compare(door: Door, parts: (field: FieldSight) => readonly FieldSight[]): Comparison {
  const differences: string[] = []
  let seenCells = 0
  for (const zone of door.zones)
    for (const state of door.states) {
      const grid = gridOf(zone)
      const easel = newEasel(grid)
      const strips = stripsOf(grid, floorPieces(state.floor))
      for (const counted of countedFields(door, zone))
        for (const part of parts(fieldSight(door, state, counted)))
          for (const { posture, yaw_rad, body } of stancesOf(door, zone).stances) {
            const shape = shapeOf(posture, yaw_rad, body.reflectance, counted.sensor.spotRadius_mm)
            const drawn = emptySet(grid)
            drawSeen(drawn, easel, strips, part, shape)
            const { seen, wrong } = against(drawn, grid, part, shape)
            seenCells += seen
            if (wrong.length > 0) {
              const [{ first, end } = { first: -1, end: -1 }] = part.planes
              differences.push(`${door.name}, ${counted.sensor.id}, beams ${first} to ${end - 1}: ${wrong.length} cells, first ${wrong[0]}`)
            }
          }
    }
  return { seenCells, differences }
}

function against(
  drawn: CellSet,
  grid: Grid,
  field: FieldSight,
  shape: Shape,
): { readonly seen: number; readonly wrong: readonly string[] } {
  const wrong: string[] = []
  let seen = 0
  const nothing = isEmpty(shape)
  const { x0, y0, pitch } = grid
  for (let row = 0; row < grid.rows; row++)
    for (let column = 0; column < grid.words * 32; column++) {
      const expected = !nothing && column < grid.columns && seesAt(field, shape, x0 + (column + 0.5) * pitch, y0 + (row + 0.5) * pitch)
      if (expected) seen++
      if (hasCell(drawn, grid, row, column) !== expected) wrong.push(`row ${row} column ${column}, where the predicate says ${expected}`)
    }
  return { seen, wrong }
}

const scratch = new Float64Array(3)

function seesAt({ sight, planes, clusterBeams }: FieldSight, shape: Shape, x: number, y: number): boolean {
  for (const { first, end } of planes) {
    let neighbours = 0
    for (let i = first; i < end; i++) {
      neighbours = beamSees(sight, i, shape, x, y, scratch) ? neighbours + 1 : 0
      if (neighbours >= clusterBeams) return true
    }
  }
  return false
}
