import { type Affine, leastOf, mostOf, SPARE, scaledOf, sumOf } from './affine.ts'
import type { Passage } from './passage.ts'
import type { Beam, Tile, Vector } from './plain.ts'
import { alongAxes, rounded } from './tolerances.ts'

/** A box as a beam of a sensor meets it: what the spot leaves of it, at the middle of a slice of yaws, its bottom at `floor`. */
export interface SeenBox {
  readonly size: Vector
  readonly yaw_deg: number
  readonly axes: readonly [u: Vector, v: Vector]
  readonly spot: number
  readonly floor: Affine
  /** 2 sin(width / 4) of the slice's width. */
  readonly turn: number
}

interface Axis {
  readonly bit: number
  readonly d: number
  /** Where the beam is along this axis at t, seen from the body's middle (its bottom): `place + d t - centre`. */
  readonly place: number
  readonly centre: Affine
  readonly low: number
  readonly high: number
  readonly off: number
  readonly directionOff: number
}
/** An axis along which the beam has an entry of its own. */
interface OwnAxis extends Axis {
  readonly enters: Affine
  readonly leaves: Affine
  readonly e: number
}

/** On a tile: the affine value stays below the limit, by the spare. */
type Below = readonly [value: Affine, limit: number]

/**
 * Steps 1 to 4 of docs/evidence.md for one beam and a box. `off` and `directionOff` are those of the doorway's axes, 0 without tolerances.
 * The hit is shown at t = the latest t_in + e: there the beam stands inside of every pair of faces by more than anything can move.
 */
export function passageThroughBox(beam: Beam, box: SeenBox, off: Vector, directionOff: Vector): Passage | undefined {
  const axes = axesOf(beam, box, rounded(off), directionOff)
  if (axes.some(({ low, high }) => !(low < high))) return undefined // the spot leaves nothing
  const own = axes.filter(({ d, directionOff: most }) => Math.abs(d) > most && Math.abs(d) >= 1e-9).map(withEntry)
  const others = axes.filter((axis) => !own.some((each) => each.bit === axis.bit))
  const hit = [
    ...own.flatMap((k) => own.map((j): Below => [sumOf(k.enters, j.leaves, -1), -k.e - j.e])),
    ...others.flatMap((m) => own.flatMap((k) => isBetween(m, k.enters, k.e))),
  ]
  const atStart = others.flatMap((m) => isBetween(m, NEVER, 0))
  const spared = axes.map((m) => sparedBy(m, own))
  return {
    isHit(tile) {
      if (own.length === 0 || !hold(hit, tile)) return false
      return beam.length === Infinity || own.some((k) => leastOf(k.enters, tile) + k.e >= 0) || hold(atStart, tile)
    },
    mayEnter: (tile) =>
      axes.reduce((faces, { bit }, m) => (spared[m]?.some((conditions) => hold(conditions, tile)) ? faces : faces | bit), 0),
    latest: (tile) => own.reduce((latest, k) => Math.max(latest, mostOf(k.enters, tile) + k.e), -Infinity),
    earliest: (tile) => own.reduce((earliest, k) => Math.max(earliest, leastOf(k.enters, tile) - k.e), -Infinity),
    soonestEnd: (tile) => own.reduce((end, k) => Math.min(end, leastOf(k.leaves, tile) - k.e), Infinity),
    cosines: (faces) =>
      axes.filter(({ bit }) => (faces & bit) !== 0).map(({ d, directionOff: most }) => ({ cosine: Math.abs(d) - most, share: 1 })),
  }
}

const NEVER: Affine = [0, 0, 0]

function axesOf(
  { from, along }: Beam,
  { size, yaw_deg, axes: [u, v], spot, floor, turn }: SeenBox,
  off: Vector,
  directionOff: Vector,
): readonly Axis[] {
  const half = [size[0] / 2 - spot, size[1] / 2 - spot] as const
  const turnedOff = turn * Math.sqrt(half[0] * half[0] + half[1] * half[1])
  const level =
    Math.sqrt(along[0] * along[0] + along[1] * along[1]) + Math.sqrt(directionOff[0] * directionOff[0] + directionOff[1] * directionOff[1])
  const [offs, directionOffs] = [alongAxes(off, yaw_deg), alongAxes(directionOff, yaw_deg)]
  const levelAxis = (k: 0 | 1, n: Vector): Axis => ({
    bit: k + 1,
    d: along[0] * n[0] + along[1] * n[1],
    place: from[0] * n[0] + from[1] * n[1],
    centre: [0, n[0], n[1]],
    low: -half[k],
    high: half[k],
    off: offs[k] + turnedOff,
    directionOff: directionOffs[k] + turn * level,
  })
  const upward: Axis = {
    bit: 4,
    d: along[2],
    place: from[2],
    centre: floor,
    low: spot,
    high: size[2] - spot,
    off: off[2],
    directionOff: directionOff[2],
  }
  return [levelAxis(0, u), levelAxis(1, v), upward]
}

function withEntry(axis: Axis): OwnAxis {
  const { d, place, centre, low, high, off } = axis
  const [first, last] = d > 0 ? [low, high] : [high, low]
  return { ...axis, enters: scaledOf(centre, first - place, 1 / d), leaves: scaledOf(centre, last - place, 1 / d), e: off / Math.abs(d) }
}

/** The beam stands between the faces of an axis by more than its `off`, at t = time + later. */
function isBetween({ d, place, centre, low, high, off }: Axis, time: Affine, later: number): readonly Below[] {
  const at = sumOf(scaledOf(time, later, d), centre, -1) // without `place`
  return [
    [at, high - off - place],
    [scaledOf(at, 0, -1), place - low - off],
  ]
}

/** Each of these alone shows that the faces of an axis are never the ones entered. */
function sparedBy(m: Axis, own: readonly OwnAxis[]): readonly (readonly Below[])[] {
  const itself = own.find(({ bit }) => bit === m.bit)
  if (itself === undefined) return own.map((k) => isBetween(m, k.enters, -k.e))
  return own.filter(({ bit }) => bit !== m.bit).map((k): readonly Below[] => [[sumOf(itself.enters, k.enters, -1), -k.e - itself.e]])
}

function hold(conditions: readonly Below[], tile: Tile): boolean {
  return conditions.every(([value, limit]) => mostOf(value, tile) < limit - SPARE)
}
