import type { Beams } from '../seeing/beams.ts'
import { type FloorPieces, floorHeight } from '../space/floor.ts'

/**
 * Least and greatest height of a stretch of beam i above the floor under it. The height runs straight between the bends of the floor
 * profile, so its extremes lie at the ends of the stretch or over a bend.
 *
 * @param from_mm @param to_mm distances along the beam, both finite
 */
export function heightsAlong(
  beams: Beams,
  i: number,
  floor: FloorPieces,
  from_mm: number,
  to_mm: number,
): { readonly lowest_mm: number; readonly highest_mm: number; readonly lowestAt_mm: number } {
  let lowest_mm = Infinity
  let highest_mm = -Infinity
  let lowestAt_mm = from_mm
  for (const t of [from_mm, ...bendsOf(beams, i, floor).filter((bend) => bend > from_mm && bend < to_mm), to_mm]) {
    const height = heightAt(beams, i, floor, t)
    highest_mm = Math.max(highest_mm, height)
    if (height < lowest_mm) {
      lowest_mm = height
      lowestAt_mm = t
    }
  }
  return { lowest_mm, highest_mm, lowestAt_mm }
}

/** Distances at which a beam passes over (or under) a bend of the profile. */
export function bendsOf({ originY, directionY }: Beams, i: number, { count, from }: FloorPieces): readonly number[] {
  const dy = directionY[i] as number
  if (dy === 0) return []
  const bends: number[] = []
  for (let piece = 1; piece < count; piece++) bends.push(((from[piece] as number) - (originY[i] as number)) / dy)
  return bends.sort((a, b) => a - b)
}

export function heightAt(beams: Beams, i: number, floor: FloorPieces, t_mm: number): number {
  const x = (beams.originX[i] as number) + t_mm * (beams.directionX[i] as number)
  const y = (beams.originY[i] as number) + t_mm * (beams.directionY[i] as number)
  return (beams.originZ[i] as number) + t_mm * (beams.directionZ[i] as number) - floorHeight(floor, x, y)
}
