import { type Affine, cornersOf, SPARE, valueAt } from './affine.ts'
import type { Passage } from './passage.ts'
import type { Beam, Tile, Vector } from './plain.ts'
import { rounded } from './tolerances.ts'

/** A cylinder as a beam of a sensor meets it: what the spot leaves of it, its bottom at `floor`. */
export interface SeenCylinder {
  readonly radius: number
  readonly height: number
  readonly spot: number
  readonly floor: Affine
}

const [SIDE, END] = [1, 4]

/** What the beam does at one placement; nearest is its place closest to the axis. Ends are passed between `endIn` and `endOut`, e apart. */
interface Crossing {
  readonly past: number
  readonly nearest: number
  readonly sideIn: number
  readonly sideOut: number
  readonly endIn: number
  readonly endOut: number
}

/**
 * Steps 1 to 4 of docs/evidence.md for one beam and a cylinder. All entries are convex in the placement and all exits concave, so that corners
 * suffice; what is not has its own remark. `far` is the distance up to which `offByTolerances` bounds how the beam's points move.
 */
export function passageThroughCylinder(
  beam: Beam,
  body: SeenCylinder,
  offByTolerances: Vector,
  directionOff: Vector,
  far: number,
): Passage | undefined {
  const off = rounded(offByTolerances)
  const { from, along } = beam
  const [radius, low, high] = [body.radius - body.spot, body.spot, body.height - body.spot]
  const level = Math.sqrt(along[0] * along[0] + along[1] * along[1])
  const o = Math.sqrt(off[0] * off[0] + off[1] * off[1])
  const [within, around] = [radius - o, radius + o]
  if (!(within > 0 && low < high)) return undefined
  const isLevel = Math.abs(along[2]) <= directionOff[2] || Math.abs(along[2]) < 1e-9
  const isUpright = level < 1e-9
  const e = isLevel ? 0 : off[2] / Math.abs(along[2])
  const endAt = (height: number, x: number, y: number) => (valueAt(body.floor, x, y) + height - from[2]) / along[2]

  const crossingAt = ([x, y]: readonly [number, number]): Crossing => {
    const [px, py] = [x - from[0], y - from[1]]
    const [endIn, endOut] = isLevel
      ? [-Infinity, Infinity]
      : along[2] > 0
        ? [endAt(low, x, y), endAt(high, x, y)]
        : [endAt(high, x, y), endAt(low, x, y)]
    if (isUpright) {
      const [qx, qy] = [px - along[0] * endIn, py - along[1] * endIn]
      return { past: Math.sqrt(qx * qx + qy * qy), nearest: 0, sideIn: -Infinity, sideOut: Infinity, endIn, endOut }
    }
    const past = Math.abs(px * along[1] - py * along[0]) / level
    const nearest = (px * along[0] + py * along[1]) / (level * level)
    const half = Math.sqrt(Math.max(0, within * within - past * past)) / level
    return { past, nearest, sideIn: nearest - half, sideOut: nearest + half, endIn, endOut }
  }
  /**
   * Between the ends where the beam is level, or may be. At the entry by the side, which is convex in the placement, corners suffice for a ranging
   * beam: what it strays between them, |d| times a distance, is less than what `off` has to spare so far before `far`. A segment, whose `off` is the
   * same all along, has to be between them wherever it may come in.
   */
  const isBetweenEnds = ([x, y]: readonly [number, number], { nearest, sideIn }: Crossing, fromStart: boolean) => {
    const floor = valueAt(body.floor, x, y)
    const times = beam.length === Infinity ? [sideIn] : [nearest - within / level, nearest, ...(fromStart ? [0] : [])]
    return times.every((t) => {
      const height = from[2] + along[2] * t - floor
      return height > low + off[2] + SPARE && height < high - off[2] - SPARE
    })
  }
  const crossings = (tile: Tile) => cornersOf(tile).map((corner) => ({ corner, ...crossingAt(corner) }))

  return {
    isHit(tile) {
      const all = crossings(tile)
      const fromStart = beam.length < Infinity && all.some(({ nearest }) => nearest - within / level < 0)
      return (
        !(isLevel && isUpright) &&
        all.every((each) => {
          if (!(each.past < within - SPARE)) return false
          if (isLevel && !isBetweenEnds(each.corner, each, fromStart)) return false
          return Math.max(each.sideIn, each.endIn + e) < Math.min(each.sideOut, each.endOut - e) - SPARE
        })
      )
    },
    mayEnter(tile) {
      if (isLevel) return SIDE
      return crossings(tile).every(({ endIn, sideIn }) => endIn - e > sideIn + SPARE) ? END : SIDE | END
    },
    latest: (tile) => Math.max(...crossings(tile).map(({ sideIn, endIn }) => Math.max(sideIn, endIn + e))),
    /** The later of two affine bounds is convex, so that its corners say nothing about its least value: each bound stands for itself. */
    earliest(tile) {
      const all = crossings(tile)
      const byEnd = Math.min(...all.map(({ endIn }) => endIn - e))
      return isUpright ? byEnd : Math.max(byEnd, Math.min(...all.map(({ nearest }) => nearest - around / level)))
    },
    soonestEnd: (tile) => Math.min(...crossings(tile).map(({ sideOut, endOut }) => Math.min(sideOut, endOut - e))),
    cosines(faces, tile) {
      const all = crossings(tile)
      const moved = Math.sqrt(directionOff[0] * directionOff[0] + directionOff[1] * directionOff[1])
      const beyond = Math.max(0, ...all.map(({ nearest }) => nearest - far)) // where `off` no longer bounds how far the beam has moved
      const past = (Math.max(...all.map((each) => each.past)) + o + moved * beyond) / radius
      const side = {
        cosine: past < 1 ? level - directionOff[0] - directionOff[1] : 0,
        share: Math.sqrt(Math.sqrt(Math.max(0, 1 - past * past))),
      }
      return [
        ...((faces & SIDE) !== 0 ? [side] : []),
        ...((faces & END) !== 0 ? [{ cosine: Math.abs(along[2]) - directionOff[2], share: 1 }] : []),
      ]
    },
  }
}
