import type { Floor } from '../model/door.ts'

/**
 * A floor as straight pieces along y, ready for loops: piece i carries the y from `from[i]` up to (not with) `from[i + 1]`,
 * where z = z[i] + (y - y[i]) * slope[i] + slopeX * x. Doorway frame, mm.
 */
export interface FloorPieces {
  readonly count: number
  readonly from: Float64Array // from[0] is -Infinity
  readonly y: Float64Array
  readonly z: Float64Array
  readonly slope: Float64Array
  readonly slopeX: number
}

/** The floor profile as pieces, level beyond its ends (docs/method.md, section 1). */
export function floorPieces({ profile, slopeX }: Floor): FloorPieces {
  const count = profile.length + 1
  const pieces = {
    count,
    from: new Float64Array(count),
    y: new Float64Array(count),
    z: new Float64Array(count),
    slope: new Float64Array(count),
    slopeX,
  }
  for (let i = 0; i < count; i++) {
    const start = profile[i - 1]
    const end = profile[i]
    const anchor = start ?? end
    if (anchor === undefined) throw new Error('floor profile must have at least one point, got none')
    pieces.from[i] = start === undefined ? -Infinity : start.y_mm
    pieces.y[i] = anchor.y_mm
    pieces.z[i] = anchor.z_mm
    pieces.slope[i] = start && end ? (end.z_mm - start.z_mm) / (end.y_mm - start.y_mm) : 0
  }
  return pieces
}

/** The piece that carries y. */
export function pieceAt(pieces: FloorPieces, y_mm: number): number {
  let i = pieces.count - 1
  while (i > 0 && y_mm < (pieces.from[i] as number)) i--
  return i
}

/** Height of the floor under a point of the plan. Doorway frame. */
export function floorHeight(pieces: FloorPieces, x_mm: number, y_mm: number): number {
  const i = pieceAt(pieces, y_mm)
  return (pieces.z[i] as number) + (y_mm - (pieces.y[i] as number)) * (pieces.slope[i] as number) + pieces.slopeX * x_mm
}

/**
 * A floor that is nowhere below (side 1) or nowhere above (side -1) any floor point within `by_mm` along y. Between the shifted points of
 * the profile the extreme is convex (or concave), so the straight line between its ends errs to the same side.
 */
export function spreadFloor(floor: Floor, by_mm: number, side: 1 | -1): Floor {
  const level = floorPieces({ ...floor, slopeX: 0 })
  const extreme = (values: readonly number[]) => (side === 1 ? Math.max(...values) : Math.min(...values))
  const at = (y: number) => {
    const within = floor.profile.filter((p) => Math.abs(p.y_mm - y) <= by_mm).map((p) => p.z_mm)
    return extreme([floorHeight(level, 0, y - by_mm), floorHeight(level, 0, y + by_mm), ...within])
  }
  const ys = [...new Set(floor.profile.flatMap((p) => [p.y_mm - by_mm, p.y_mm + by_mm]))].sort((a, b) => a - b)
  return { ...floor, profile: ys.map((y_mm) => ({ y_mm, z_mm: at(y_mm) })) }
}
