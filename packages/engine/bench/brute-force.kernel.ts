// Every beam at every placement, as fast as the plain way goes: one loop over typed arrays. Level floor at 0, box along the axes. Doorway frame, mm.
import type { Grid } from '../src/coverage/grid.ts'
import type { Beams } from '../src/seeing/beams.ts'

/** What the loop needs of each beam, worked out once: slopes of the slab test and the farthest entry by each face. */
export interface BruteBeams {
  readonly count: number
  readonly inverseX: Float64Array
  readonly inverseY: Float64Array
  readonly inverseZ: Float64Array
  readonly from: Float64Array
  readonly limitX: Float64Array
  readonly limitY: Float64Array
  readonly limitZ: Float64Array
}

/** KERNEL. Sets the bit of each placement at which some beam enters the box within its limits. Stops at the first beam that does. */
export function bruteForceBox(
  bits: Int32Array,
  grid: Grid,
  beams: Beams,
  brute: BruteBeams,
  halfA: number,
  halfB: number,
  high: number,
): void {
  const { originX, originY, originZ } = beams
  const { count, inverseX, inverseY, inverseZ, from, limitX, limitY, limitZ } = brute
  for (let row = 0; row < grid.rows; row++) {
    const y = grid.y0 + (row + 0.5) * grid.pitch
    for (let column = 0; column < grid.columns; column++) {
      const x = grid.x0 + (column + 0.5) * grid.pitch
      for (let i = 0; i < count; i++) {
        const ax = (x - halfA - originX[i]!) * inverseX[i]!
        const bx = (x + halfA - originX[i]!) * inverseX[i]!
        const ay = (y - halfB - originY[i]!) * inverseY[i]!
        const by = (y + halfB - originY[i]!) * inverseY[i]!
        const top = (high - originZ[i]!) * inverseZ[i]!
        const bottom = -originZ[i]! * inverseZ[i]!
        const nearX = ax < bx ? ax : bx
        const farX = ax < bx ? bx : ax
        const nearY = ay < by ? ay : by
        const farY = ay < by ? by : ay
        if (nearX >= farY || nearY >= farX || top >= farX || top >= farY || nearX >= bottom || nearY >= bottom) continue
        const t = nearX > nearY ? (nearX > top ? nearX : top) : nearY > top ? nearY : top
        if (t < from[i]!) continue
        if (t > (t === top ? limitZ[i]! : t === nearX ? limitX[i]! : limitY[i]!)) continue
        bits[row * grid.words + (column >> 5)] = bits[row * grid.words + (column >> 5)]! | (1 << (column & 31))
        break
      }
    }
  }
}
