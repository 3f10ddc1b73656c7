import type { FieldSight } from '../coverage/seen-map.ts'
import { joined, type Stretch } from '../coverage/stretches.ts'
import { type Slab, slabsAt, type TurningLeaf } from '../motion/turning-leaf.ts'
import type { Beams } from '../seeing/beams.ts'
import type { PlanPoint } from '../space/plan-distance.ts'
import { apart_mm, type Outline } from './turning-contact.ts'

/** At which ways still to go a leaf that turns meets a beam in the field, mm of the arc of its edge. */
export interface TurningMeetings {
  readonly travel_mm: number
  /** Outside of these it surely meets none. */
  readonly mayMeet: readonly Stretch[]
  /** In the middle of each of these stretches of `CELL_MM` it surely does. */
  readonly meets: readonly Stretch[]
}

/** The way is asked about in stretches of this length, each from its middle. */
const CELL_MM = 4

/**
 * The leaf as an obstacle at every way, bulge included, between two heights: where it enters the field of the sensor that watches it. A panel is taken where it is
 * half-way through a stretch; what is farther from a beam then than any of its points moves in half of the stretch is met nowhere on it. As for a leaf that goes along, the leaf's
 * brightness is not known, so that every distance up to the range counts.
 */
export function turningInField(field: FieldSight, leaf: TurningLeaf, heights_mm: readonly [low: number, high: number]): TurningMeetings {
  const cells = Math.max(1, Math.ceil(leaf.way_mm / CELL_MM))
  const cell_mm = leaf.way_mm / cells
  const reach_mm = (leaf.ratio * cell_mm) / 2
  const slabs = Array.from({ length: cells }, (_, c) => leaf.swings.flatMap((swing) => slabsAt(swing, (c + 0.5) * cell_mm)))
  const [may, does] = [new Uint8Array(cells), new Uint8Array(cells)]
  for (const stretch of stretchesOf(field, heights_mm)) {
    const outline = inPlan(stretch)
    for (let c = 0; c < cells; ) {
      const gap_mm = does[c] === 1 ? 0 : apart_mm(slabs[c] as readonly Slab[], outline, 0)
      if (gap_mm <= reach_mm) {
        may[c] = 1
        if (does[c] === 0 && (slabs[c] as readonly Slab[]).some((slab) => isEntered(slab, stretch))) does[c] = 1
        c++
      } else c += Math.max(1, Math.floor((gap_mm - reach_mm) / (leaf.ratio * cell_mm)))
    }
  }
  return { travel_mm: leaf.way_mm, mayMeet: cellsOf(may, cell_mm), meets: cellsOf(does, cell_mm) }
}

/** The part of a beam that lies in the field and between the heights, in the doorway frame. */
interface BeamStretch {
  readonly origin: PlanPoint
  readonly along: PlanPoint
  readonly from: number
  readonly to: number
  /** Between the heights it is from here on: what it enters before does not count. */
  readonly enters: number
  readonly isSegment: boolean
}

function stretchesOf({ sight, windows, planes }: FieldSight, heights_mm: readonly [number, number]): readonly BeamStretch[] {
  const { beams, ends_mm } = sight
  const stretches: BeamStretch[] = []
  for (const { first, end } of planes)
    for (let i = first; i < end; i++) {
      const [low, high] = betweenHeights(beams, i, heights_mm)
      const most = Math.min(high, ends_mm[i] as number)
      const add = (from: number, to: number) => {
        const [a, b] = [Math.max(0, from, low), Math.min(to, most)]
        const origin: PlanPoint = [beams.originX[i] as number, beams.originY[i] as number]
        const along: PlanPoint = [beams.directionX[i] as number, beams.directionY[i] as number]
        if (a < b)
          stretches.push({
            origin,
            along,
            from: a,
            to: b,
            enters: Math.max(0, low),
            isSegment: sight.segments,
          })
      }
      if (sight.segments) add(0, Infinity)
      else
        for (let w = windows.first[i] as number; w < (windows.first[i + 1] as number); w++)
          add(windows.from[w] as number, windows.to[w] as number)
    }
  return stretches
}

function betweenHeights(beams: Beams, i: number, [low_mm, high_mm]: readonly [number, number]): readonly [from: number, to: number] {
  const [z, dz] = [beams.originZ[i] as number, beams.directionZ[i] as number]
  if (dz === 0) return low_mm < z && z < high_mm ? [-Infinity, Infinity] : [Infinity, -Infinity]
  const [a, b] = [(low_mm - z) / dz, (high_mm - z) / dz]
  return [Math.min(a, b), Math.max(a, b)]
}

function inPlan({ origin: [x, y], along: [dx, dy], from, to }: BeamStretch): Outline {
  const at = (t: number): PlanPoint => [x + t * dx, y + t * dy]
  return { points: [at(from), at(to)], radius_mm: 0, sides: [] }
}

/** A light grid's beam that the panel meets is interrupted; any other has to enter the panel in the field. */
function isEntered(
  { x_mm, y_mm, alongX, alongY, length_mm, half_mm }: Slab,
  { origin, along, from, to, enters, isSegment }: BeamStretch,
): boolean {
  const [fromX, fromY] = [origin[0] - x_mm, origin[1] - y_mm]
  const inside = [
    between(fromX * alongX + fromY * alongY, along[0] * alongX + along[1] * alongY, 0, length_mm),
    between(fromY * alongX - fromX * alongY, along[1] * alongX - along[0] * alongY, -half_mm, half_mm),
  ]
  const entry = Math.max(...inside.map(([a]) => a), isSegment ? from : enters)
  const leave = Math.min(...inside.map(([, b]) => b), to)
  return entry < leave && (isSegment || (entry >= from && entry > 0))
}

function between(start: number, rise: number, low: number, high: number): readonly [from: number, to: number] {
  if (rise === 0) return low < start && start < high ? [-Infinity, Infinity] : [Infinity, -Infinity]
  const [a, b] = [(low - start) / rise, (high - start) / rise]
  return [Math.min(a, b), Math.max(a, b)]
}

function cellsOf(cells: Uint8Array, cell_mm: number): readonly Stretch[] {
  return joined(Array.from(cells, (is, c) => ({ from_mm: c * cell_mm, to_mm: is === 1 ? (c + 1) * cell_mm : c * cell_mm })))
}
