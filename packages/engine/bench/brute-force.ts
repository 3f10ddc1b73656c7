import { emptySet, type Grid } from '../src/coverage/grid.ts'
import { setBits } from '../src/coverage/rows.kernel.ts'
import { type CountedField, fieldSight, type Stance } from '../src/coverage/scene.ts'
import type { Door } from '../src/model/door.ts'
import { reach } from '../src/seeing/reach.ts'
import { beamSees, type Sight } from '../src/seeing/sees.ts'
import { isEmpty, shapeOf } from '../src/seeing/shape.ts'
import type { Windows } from '../src/seeing/windows.ts'
import { type BruteBeams, bruteForceBox } from './brute-force.kernel.ts'

/**
 * The seen maps of the plain reference job by trying every beam at every placement in one tight loop: what the fast maps are measured
 * against. Limits along each beam are worked out beforehand, so that the loop only meets boxes.
 */
export function bruteForceLoop(door: Door, grid: Grid, [counted]: readonly CountedField[], stances: readonly Stance[]): Int32Array[] {
  if (counted?.sensor.kind !== 'ranging' || counted.field.clusterBeams !== 1)
    throw new Error('the loop takes one ranging field without clusters')
  const { sight, windows } = fieldSight(door, door.states[0] as Door['states'][number], counted)
  return stances.map(({ posture, yaw_rad, body }) => {
    const { halfA, halfB, high } = shapeOf(posture, yaw_rad, body.reflectance, 0)
    const seen = emptySet(grid)
    bruteForceBox(seen, grid, sight.beams, bruteBeams(sight, windows, body.reflectance), halfA, halfB, high)
    return seen
  })
}

function bruteBeams({ beams, reach: parameters }: Sight, windows: Windows, reflectance: number): BruteBeams {
  const column = (value: (i: number) => number) => Float64Array.from({ length: beams.count }, (_, i) => value(i))
  const window = (i: number) => ((windows.first[i] as number) < (windows.first[i + 1] as number) ? (windows.first[i] as number) : -1)
  const end = (i: number) => (window(i) < 0 ? -1 : (windows.to[window(i)] as number))
  const limit = (direction: Float64Array) =>
    column((i) => Math.min(end(i), reach(reflectance * Math.abs(direction[i] as number), parameters)))
  return {
    count: beams.count,
    inverseX: column((i) => 1 / (beams.directionX[i] as number)),
    inverseY: column((i) => 1 / (beams.directionY[i] as number)),
    inverseZ: column((i) => 1 / (beams.directionZ[i] as number)),
    from: column((i) => (window(i) < 0 ? Infinity : (windows.from[window(i)] as number))),
    limitX: limit(beams.directionX),
    limitY: limit(beams.directionY),
    limitZ: limit(beams.directionZ),
  }
}

/** The seen maps by asking the predicate about every beam at every placement: what the fast maps must equal in every cell. Takes any job. */
export function predicateMaps(door: Door, grid: Grid, counted: readonly CountedField[], stances: readonly Stance[]): Int32Array[] {
  const state = door.states[0] as Door['states'][number]
  const sights = counted.map((c) => fieldSight(door, state, c))
  const scratch = new Float64Array(3)
  return stances.map(({ posture, yaw_rad, body }) => {
    const seen = emptySet(grid)
    for (const [k, { sensor }] of counted.entries()) {
      const { sight, planes, clusterBeams } = sights[k] as (typeof sights)[number]
      const shape = shapeOf(posture, yaw_rad, body.reflectance, sensor.spotRadius_mm)
      if (isEmpty(shape)) continue
      for (let row = 0; row < grid.rows; row++)
        for (let column = 0; column < grid.columns; column++) {
          const x = grid.x0 + (column + 0.5) * grid.pitch
          const y = grid.y0 + (row + 0.5) * grid.pitch
          if (planes.some(({ first, end }) => sees(sight, first, end, clusterBeams))) setBits(seen, row * grid.words, column, column)
          function sees(s: Sight, first: number, end: number, needed: number): boolean {
            let streak = 0
            for (let i = first; i < end; i++) {
              streak = beamSees(s, i, shape, x, y, scratch) ? streak + 1 : 0
              if (streak >= needed) return true
            }
            return false
          }
        }
    }
    return seen
  })
}
