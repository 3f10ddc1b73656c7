import type { DoorState } from '../model/door.ts'
import { beamsOf } from '../seeing/beams.ts'
import { floorPieces } from '../space/floor.ts'
import { heightsAlong } from './heights-along.ts'
import type { CountedField } from './scene.ts'

/** Lower and upper edge of a field above the floor, mm. */
export interface FieldEdges {
  /** Where it is highest; 0 for a field that begins at the floor. */
  readonly lower_mm: number
  /** Where it is lowest; Infinity for a field without a top. */
  readonly upper_mm: number
}

/**
 * Between which heights above the floor a field watches. For a ranging sensor these are its clearance and its top as set; for a light grid
 * its lowest and its highest beam: each beam counts where the floor makes it worst, the lower edge at its highest and the upper one at its lowest.
 *
 * @returns `lower_mm` Infinity and `upper_mm` 0 for a grid without beams in the field
 */
export function fieldEdges({ sensor, field }: CountedField, state: DoorState): FieldEdges {
  if (sensor.kind === 'ranging') return { lower_mm: Math.max(0, field.clearance_mm), upper_mm: field.top_mm }
  const beams = beamsOf(sensor)
  const floor = floorPieces(state.floor)
  const edges = { lower_mm: Infinity, upper_mm: 0 }
  for (const { id, first, end } of beams.planes) {
    if (!field.planes.includes(id)) continue
    for (let i = first; i < end; i++) {
      const { lowest_mm, highest_mm } = heightsAlong(beams, i, floor, 0, beams.length[i] as number)
      edges.lower_mm = Math.min(edges.lower_mm, highest_mm)
      edges.upper_mm = Math.max(edges.upper_mm, lowest_mm)
    }
  }
  return edges
}
