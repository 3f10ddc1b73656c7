import type { Door, Leaf } from '../model/door.ts'
import type { Beams } from '../seeing/beams.ts'
import { type FloorPieces, floorHeight } from '../space/floor.ts'
import type { FieldSight } from './seen-map.ts'
import { joined, type Stretch } from './stretches.ts'

/** At which positions of the closing edge the leaf meets a beam in the field. Positions are the way still to go, mm from closed. */
export interface LeafMeeting {
  /** From closed to open. */
  readonly travel_mm: number
  /** Rising, apart from each other; blanking windows are not taken off. */
  readonly met: readonly Stretch[]
}

/**
 * The leaf as an obstacle at every position, bulge included: where it enters the field of the sensor that watches it. The leaf fills the opening
 * behind its closing edge: for a vertical one everything above the edge up to the clear height, for sliding ones what they have passed of the
 * clear width, on both sides of its mid-plane by half its thickness and the bulge. What lies outside of the opening is left out; the parked leaf
 * is an obstacle of its own. Closed means that the edge is on the highest point of the floor under it, at the end of the opening, or at the
 * other leaf. The leaf's brightness is not known, so that every distance up to the range counts: errs toward "meets".
 *
 * In closed form: along a beam the leaf is { u > e } for the edge position e and a u that changes straight along the beam, within the stretch
 * of the beam that lies in the leaf's slab. It is entered at the start of that stretch while e < u there, or through the edge
 * where u = e, if u rises along the beam.
 *
 * @returns undefined for a turning leaf
 */
export function leafInField(
  field: FieldSight,
  { leaf, opening }: { readonly leaf: Leaf; readonly opening: Door['opening'] },
): LeafMeeting | undefined {
  if (leaf.travel === 'turning') return undefined
  const half_mm = leaf.thickness_mm / 2 + leaf.bulge_mm
  const closed_mm = leaf.travel === 'down' ? highestFloor(field.sight.floor, opening.width_mm, half_mm) : 0
  const { travel_mm, leaves } = leavesOf(leaf.travel, opening, closed_mm)
  const slab = { half_mm, width_mm: opening.width_mm, height_mm: opening.height_mm }
  const met: Stretch[] = []
  for (const { first, end } of field.planes)
    for (let i = first; i < end; i++)
      for (const edge of leaves) met.push(...positionsMet(field, i, edge, inSlab(field.sight.beams, i, slab)))
  const clipped = met.map(({ from_mm, to_mm }) => ({ from_mm: Math.max(0, from_mm), to_mm: Math.min(travel_mm, to_mm) }))
  return { travel_mm: Math.max(0, travel_mm), met: joined(clipped) }
}

/** The leaf lies where ux * x + uz * z + u0 exceeds the position of its edge. */
interface Edge {
  readonly ux: number
  readonly uz: number
  readonly u0: number
}

function leavesOf(
  travel: Exclude<Leaf['travel'], 'turning'>,
  { width_mm, height_mm }: Door['opening'],
  closed_mm: number,
): { readonly travel_mm: number; readonly leaves: readonly Edge[] } {
  if (travel === 'down') return { travel_mm: height_mm - closed_mm, leaves: [{ ux: 0, uz: 1, u0: -closed_mm }] }
  if (travel === 'toward-zero') return { travel_mm: width_mm, leaves: [{ ux: 1, uz: 0, u0: 0 }] }
  if (travel === 'toward-width') return { travel_mm: width_mm, leaves: [{ ux: -1, uz: 0, u0: width_mm }] }
  const middle_mm = width_mm / 2
  return {
    travel_mm: middle_mm,
    leaves: [
      { ux: 1, uz: 0, u0: -middle_mm },
      { ux: -1, uz: 0, u0: middle_mm },
    ],
  }
}

/** Highest floor under the closed leaf: the floor runs straight between its bends, so the extremes lie on them or at the corners. */
export function highestFloor(floor: FloorPieces, width_mm: number, half_mm: number): number {
  const bends = Array.from(floor.from).filter((y) => y > -half_mm && y < half_mm)
  return Math.max(...[-half_mm, ...bends, half_mm].flatMap((y) => [floorHeight(floor, 0, y), floorHeight(floor, width_mm, y)]))
}

/** The stretch of a beam inside of the opening's part of the leaf's slab; empty as undefined. */
function inSlab(
  beams: Beams,
  i: number,
  slab: { readonly half_mm: number; readonly width_mm: number; readonly height_mm: number },
): Stretch | undefined {
  const x = stretchBetween(beams.originX[i] as number, beams.directionX[i] as number, 0, slab.width_mm)
  const y = stretchBetween(beams.originY[i] as number, beams.directionY[i] as number, -slab.half_mm, slab.half_mm)
  const z = stretchBetween(beams.originZ[i] as number, beams.directionZ[i] as number, -Infinity, slab.height_mm)
  const stretch = { from_mm: Math.max(x.from_mm, y.from_mm, z.from_mm), to_mm: Math.min(x.to_mm, y.to_mm, z.to_mm) }
  return stretch.from_mm < stretch.to_mm ? stretch : undefined
}

/** Where low < origin + t * direction < high; a beam along a face is not inside. */
function stretchBetween(origin: number, direction: number, low: number, high: number): Stretch {
  if (direction === 0)
    return low < origin && origin < high ? { from_mm: -Infinity, to_mm: Infinity } : { from_mm: Infinity, to_mm: -Infinity }
  const a = (low - origin) / direction
  const b = (high - origin) / direction
  return { from_mm: Math.min(a, b), to_mm: Math.max(a, b) }
}

function positionsMet({ sight, windows }: FieldSight, i: number, { ux, uz, u0 }: Edge, slab: Stretch | undefined): readonly Stretch[] {
  if (slab === undefined) return []
  const { beams, ends_mm } = sight
  const start = ux * (beams.originX[i] as number) + uz * (beams.originZ[i] as number) + u0
  const rise = ux * (beams.directionX[i] as number) + uz * (beams.directionZ[i] as number)
  const u = (t: number) => (rise === 0 ? start : start + rise * t)
  const end = ends_mm[i] as number
  if (sight.segments) {
    const from = Math.max(0, slab.from_mm)
    const to = Math.min(end, slab.to_mm)
    return from < to ? [{ from_mm: -Infinity, to_mm: Math.max(u(from), u(to)) }] : []
  }
  const positions: Stretch[] = []
  for (let w = windows.first[i] as number; w < (windows.first[i + 1] as number); w++) {
    const from = windows.from[w] as number
    const to = windows.to[w] as number
    const entry = slab.from_mm
    if (entry > 0 && entry >= from && entry <= to && entry < end) positions.push({ from_mm: -Infinity, to_mm: u(entry) })
    const a = Math.max(from, entry)
    const b = Math.min(to, slab.to_mm)
    if (rise > 0 && a < b) positions.push({ from_mm: u(a), to_mm: u(b) })
  }
  return positions
}
