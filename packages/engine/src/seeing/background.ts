import type { DoorState, Obstacle } from '../model/door.ts'
import { floorPieces } from '../space/floor.ts'
import { turnOf } from '../space/trigonometry.ts'
import { meetBox, meetFloor, meetPost } from './background.kernel.ts'
import type { Beams } from './beams.ts'

/**
 * How far each beam runs, with nobody there, to the nearest obstacle or the floor: pure geometry whatever the range
 * (docs/method.md, section 2). 0 where a beam starts inside an obstacle or under the floor, Infinity where nothing ends it.
 *
 * @param except an obstacle to leave out, to ask what hides behind it
 * @returns mm, one per beam
 */
export function backgrounds(beams: Beams, state: DoorState, except?: Obstacle): Float64Array {
  const out = new Float64Array(beams.count).fill(Infinity)
  meetFloor(out, beams, floorPieces(state.floor))
  for (const obstacle of state.obstacles) if (obstacle !== except) meetObstacle(out, beams, obstacle)
  return out
}

/** Lowers `out[i]` to where beam i meets the obstacle. */
export function meetObstacle(out: Float64Array, beams: Beams, obstacle: Obstacle): void {
  const { x_mm: x, y_mm: y, from_mm: low, to_mm: high } = obstacle
  if (obstacle.shape === 'post') return meetPost(out, beams, x, y, low, high, obstacle.radius_mm)
  const [along, across] = obstacle.size_mm
  meetBox(out, beams, x, y, low, high, along / 2, across / 2, ...turnOf(obstacle.yaw_rad))
}
