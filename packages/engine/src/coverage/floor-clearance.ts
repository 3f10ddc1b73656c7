import { heightsAlong } from './heights-along.ts'
import type { FieldSight } from './seen-map.ts'

/** Where a field comes closest to the floor. Doorway frame, mm. */
export interface LowestEntry {
  /** Above the floor under it; below 0 where the field reaches under the floor of this state. */
  readonly height_mm: number
  readonly plane: string // id
  readonly beam: number // counted from 0 in its plane
  readonly x_mm: number
  readonly y_mm: number
}

/**
 * The lowest point at which something would still be taken, over all beams of a field: how far the highest point of the floor may rise
 * before the floor itself is taken for a body. Along each beam it lies where the background less the margin, the range, a side or the
 * clearance ends the field, or over a bump of the profile. A slanted beam with margin m that meets a level floor at the angle a to it ends
 * m sin(a) above it. Reach by brightness is left out: how bright the floor is, nobody knows.
 *
 * @returns undefined for a field in which no beam takes anything
 */
export function lowestEntry({ sight, windows, planes }: FieldSight): LowestEntry | undefined {
  const { beams, floor } = sight
  let lowest: LowestEntry | undefined
  for (const { id, first, end } of beams.planes) {
    if (!planes.some((plane) => plane.first === first && plane.end === end)) continue
    for (let i = first; i < end; i++) {
      for (let w = windows.first[i] as number; w < (windows.first[i + 1] as number); w++) {
        const { lowest_mm, lowestAt_mm } = heightsAlong(beams, i, floor, windows.from[w] as number, windows.to[w] as number)
        if (lowest !== undefined && lowest_mm >= lowest.height_mm) continue
        const x_mm = (beams.originX[i] as number) + lowestAt_mm * (beams.directionX[i] as number)
        const y_mm = (beams.originY[i] as number) + lowestAt_mm * (beams.directionY[i] as number)
        lowest = { height_mm: lowest_mm, plane: id, beam: i - first, x_mm, y_mm }
      }
    }
  }
  return lowest
}
