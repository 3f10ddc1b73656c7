import { type Affine, leastOf, mostOf, SPARE } from './affine.ts'
import { listAt, refuse, wholeAt } from './json.ts'
import type { Beam, Field, Plane, Tile } from './plain.ts'
import { type Reading, type Setting, type Target, type Watch, watchOfBeam } from './sights.ts'
import { boxAt } from './slices.ts'
import type { Placed } from './stances.ts'

/** Neighbouring beams, and of each the parts of the body that it is to see, by which faces. */
export interface PartsSight {
  readonly field: Field
  readonly plane: Plane
  readonly first: number
  readonly seen: readonly (readonly { readonly part: number; readonly faces: number }[])[]
}

const MOST_PARTS = 256

/** Reads the list of one field's sights of bodies of several parts. */
export function partSightsOf(listed: unknown, field: Field, path: string): readonly PartsSight[] {
  return listAt(listed, path, { most: 2_000_000 }).map((each, i) => {
    const at = `${path}/${i}`
    const [p, b, seen] = listAt(each, at, { least: 3, most: 3 })
    const plane = field.sensor.planes[wholeAt(p, `${at}/0`, 0, field.sensor.planes.length - 1)]
    if (plane === undefined || !field.planes.includes(plane.id)) return refuse('wrong-plane', `${at}/0`, `a plane of ${field.name}`, p)
    const first = wholeAt(b, `${at}/1`, 0, plane.beams.length - field.cluster)
    const beams = listAt(seen, `${at}/2`, { least: field.cluster, most: field.cluster }).map((one, k) => {
      const pairs = listAt(one, `${at}/2/${k}`, { least: 2, most: 2 * MOST_PARTS })
      if (pairs.length % 2 !== 0) refuse('out-of-range', `${at}/2/${k}`, 'a part and its faces, each', pairs.length)
      return Array.from({ length: pairs.length / 2 }, (_, n) => ({
        part: wholeAt(pairs[2 * n], `${at}/2/${k}/${2 * n}`, 0, MOST_PARTS),
        faces: wholeAt(pairs[2 * n + 1], `${at}/2/${k}/${2 * n + 1}`, 1, 7),
      }))
    })
    return { field, plane, first, seen: beams }
  })
}

/**
 * One sight against a body of several parts on one piece of the floor (docs/evidence.md, "Several parts"): each beam sees the parts that are named by the
 * rules of one part, and enters every other one, at its full size, later than one of these, or not at all. A segment is interrupted by any of them.
 */
export function watchOfParts(
  { field, plane, first, seen }: PartsSight,
  solids: readonly Placed[],
  floor: Affine,
  setting: Setting,
  readingAt: (field: Field, plane: Plane, b: number) => Reading,
): Watch {
  const beams = seen.map((named, k) => {
    const reading = readingAt(field, plane, first + k)
    const sees = named.map(({ part, faces }) => {
      const solid = solids[part]
      if (solid === undefined) return refuse('out-of-range', `part ${part}`, `one of ${solids.length} parts`, part)
      return { solid, watch: watchOfBeam(field, reading, faces, targetOfSolid(solid, floor), setting) }
    })
    const others = field.sensor.segments ? [] : solids.filter((_, part) => !named.some((one) => one.part === part))
    return { sees, others: others.map((solid) => ({ solid, reach: reachIn(reading.beam, solid, floor) })) }
  })
  return (tile) => {
    for (const [k, { sees, others }] of beams.entries()) {
      let latest = Infinity
      for (const { solid, watch } of sees) {
        const at = moved(tile, solid)
        const fails = watch.failsOn(at)
        if (fails !== undefined) return { beam: first + k, fails }
        latest = Math.min(latest, watch.latest(at))
      }
      for (const { solid, reach } of others) {
        const { earliest, exit } = reach(moved(tile, solid))
        const isMissed = earliest > exit + SPARE || exit < -SPARE
        if (!isMissed && !(earliest > latest + SPARE))
          return { beam: first + k, fails: 'an entry before that of every part that is not seen' }
      }
    }
    return undefined
  }
}

/** Where the middle of a part is while that of the body is on the tile. */
function moved({ xMin, xMax, yMin, yMax }: Tile, { x, y }: Placed): Tile {
  return { xMin: xMin + x, xMax: xMax + x, yMin: yMin + y, yMax: yMax + y }
}

/** The bottom of a part by where its middle is: the floor that carries it is the one under the middle of the body. */
function bottomOf([c, bx, by]: Affine, { x, y, from }: Placed): Affine {
  return [c - bx * x - by * y + from, bx, by]
}

function targetOfSolid(solid: Placed, floor: Affine): Target {
  const bottom = bottomOf(floor, solid)
  const { reflectance } = solid
  if (solid.shape === 'cylinder')
    return { reflectance, shape: (spot) => ({ cylinder: { radius: solid.radius, height: solid.height, spot, floor: bottom } }) }
  const box = boxAt(solid.size, solid.turn_deg, bottom, 0)
  return { reflectance, shape: (spot) => ({ box: { ...box, spot } }) }
}

/** Bounds over a tile, of the beam's line and the whole solid: no entry sooner, no exit later. */
type Reach = (tile: Tile) => { readonly earliest: number; readonly exit: number }

const NOWHERE = { earliest: Infinity, exit: -Infinity }
/** What rounding may shift a beam against a body, mm. */
const OFF = 1e-9
const LEVEL = 1e-9

function reachIn(beam: Beam, solid: Placed, floor: Affine): Reach {
  const bottom = bottomOf(floor, solid)
  const height = solid.shape === 'cylinder' ? solid.height : solid.size[2]
  const up = between(beam.from[2], beam.along[2], bottom, 0, height)
  if (solid.shape === 'cylinder') return both([up, roundReach(beam, solid.radius)])
  const { axes } = boxAt(solid.size, solid.turn_deg, bottom, 0)
  const level = axes.map(([nx, ny], k) => {
    const half = (solid.size[k] ?? 0) / 2
    return between(beam.from[0] * nx + beam.from[1] * ny, beam.along[0] * nx + beam.along[1] * ny, [0, nx, ny], -half, half)
  })
  return both([up, ...level])
}

/** Inside of all of them. */
function both(reaches: readonly Reach[]): Reach {
  return (tile) => {
    const all = reaches.map((reach) => reach(tile))
    return { earliest: Math.max(...all.map((each) => each.earliest)), exit: Math.min(...all.map((each) => each.exit)) }
  }
}

/** Between two faces, `low` and `high` from a middle that moves with the placement. */
function between(place: number, speed: number, middle: Affine, low: number, high: number): Reach {
  return (tile) => {
    const [least, most] = [leastOf(middle, tile) + low - OFF, mostOf(middle, tile) + high + OFF]
    if (Math.abs(speed) < LEVEL) return place < least - SPARE || place > most + SPARE ? NOWHERE : { earliest: -Infinity, exit: Infinity }
    const [a, b] = [(least - place) / speed, (most - place) / speed]
    return { earliest: Math.min(a, b), exit: Math.max(a, b) }
  }
}

/** Within a radius of an axis: never farther along the line from its foot than the radius. */
function roundReach({ from, along }: Beam, radius: number): Reach {
  const level = Math.sqrt(along[0] * along[0] + along[1] * along[1])
  const wide = radius + OFF
  return ({ xMin, xMax, yMin, yMax }) => {
    if (level < LEVEL) {
      const aside = (at: number, least: number, most: number) => Math.max(0, least - at, at - most)
      const [x, y] = [aside(from[0], xMin, xMax), aside(from[1], yMin, yMax)]
      return x * x + y * y > (wide + SPARE) * (wide + SPARE) ? NOWHERE : { earliest: -Infinity, exit: Infinity }
    }
    const tile = { xMin, xMax, yMin, yMax }
    const past: Affine = [(from[1] * along[0] - from[0] * along[1]) / level, along[1] / level, -along[0] / level]
    if (leastOf(past, tile) > wide || mostOf(past, tile) < -wide) return NOWHERE
    const square = level * level
    const foot: Affine = [-(from[0] * along[0] + from[1] * along[1]) / square, along[0] / square, along[1] / square]
    return { earliest: leastOf(foot, tile) - wide / level, exit: mostOf(foot, tile) + wide / level }
  }
}
