import type { DoorState, Obstacle } from '../model/door.ts'
import { meetFloor } from '../seeing/background.kernel.ts'
import { meetObstacle } from '../seeing/background.ts'
import type { Beams } from '../seeing/beams.ts'
import { floorPieces } from '../space/floor.ts'

export interface NearestThings {
  /** Per beam, mm; 0 where it starts inside something, Infinity where nothing ends it: the same as `backgrounds`. */
  readonly distances_mm: Float64Array
  /** Per beam what is met there; the obstacle listed first on a tie, the floor before any obstacle. */
  readonly things: readonly (Obstacle | 'floor' | undefined)[]
}

/** The backgrounds of beams, and what they are: the slow way that names things. */
export function nearestThings(beams: Beams, state: DoorState): NearestThings {
  const distances_mm = new Float64Array(beams.count).fill(Infinity)
  const things: (Obstacle | 'floor' | undefined)[] = Array.from({ length: beams.count })
  meetFloor(distances_mm, beams, floorPieces(state.floor))
  for (let i = 0; i < beams.count; i++) if ((distances_mm[i] as number) < Infinity) things[i] = 'floor'
  for (const obstacle of state.obstacles) {
    const before = Float64Array.from(distances_mm)
    meetObstacle(distances_mm, beams, obstacle)
    for (let i = 0; i < beams.count; i++) if ((distances_mm[i] as number) < (before[i] as number)) things[i] = obstacle
  }
  return { distances_mm, things }
}
