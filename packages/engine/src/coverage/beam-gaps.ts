import type { Zone } from '../model/zone.ts'
import { floorDistance } from '../seeing/background.kernel.ts'
import type { Beams } from '../seeing/beams.ts'
import { reach } from '../seeing/reach.ts'
import { isEmpty, type Shape, shapeOf } from '../seeing/shape.ts'
import { type FieldLimits, fieldWindows, type Windows } from '../seeing/windows.ts'
import { hypot3 } from '../space/trigonometry.ts'
import type { Stance } from './scene.ts'
import type { FieldSight } from './seen-map.ts'
import type { Stretch } from './stretches.ts'

/** The largest gap between two neighbouring beams along one face of a body. Doorway frame, mm. */
export interface FaceGap {
  readonly gap_mm: number
  readonly face: 'top' | 'side'
  /** Shortest way across that face, spot taken off: a gap that is `clusterBeams` times shorter leaves no room between beams. */
  readonly across_mm: number
  readonly plane: string // id
  readonly beam: number // the first of both, counted from 0 in its plane
  /** Half way between both beams. */
  readonly x_mm: number
  readonly y_mm: number
  readonly z_mm: number
}

/**
 * The largest gaps between neighbouring beams of one plane, along the faces of a body that stands anywhere in the zone.
 *
 * Two neighbours are measured on the face that both meet most squarely (the smaller of both cosines of incidence decides; the top on a tie): a face
 * that is met at a graze shows wide gaps while its beams enter the body elsewhere. On that face the gap is the straight distance between the
 * points where both beams meet the face's plane, at the place in the zone where it is largest:
 * - top: the floor raised by the body's height;
 * - side: an upright plane that faces as the body does, wherever in the zone it may stand. One of the beams must meet it between the body's
 *   bottom and top. A cylinder's side is the upright plane square to the mean direction of both beams in the plan.
 * Both points must lie in the zone and count in the field: within its limits and the reach on that face, before the background less
 * the margin. A face met head-on at distance R by beams an angle a apart so has a gap of 2 R tan(a / 2). The body is shrunk by the spot first.
 *
 * @returns for each face of the body that is met, the largest gap; empty where no two neighbours meet the body
 */
export function beamGaps(field: FieldSight, zone: Zone, stance: Stance, spotRadius_mm: number): readonly FaceGap[] {
  const shape = shapeOf(stance.posture, stance.yaw_rad, stance.body.reflectance, spotRadius_mm)
  if (isEmpty(shape)) return []
  const scene = sceneOf(field, zone, shape)
  const largest = new Map<string, FaceGap>()
  for (const { id, first, end } of namedPlanes(field)) {
    for (let i = first; i + 1 < end; i++) {
      const face = squarest(field.sight.beams, i, shape)
      const found = face && (face.kind === 'top' ? topGap(scene, i) : sideGap(scene, i, face))
      if (!face || !found || !(found.gap_mm > (largest.get(face.key)?.gap_mm ?? 0))) continue
      largest.set(face.key, { ...found, face: face.kind, across_mm: face.across_mm, plane: id, beam: i - first })
    }
  }
  return [...largest.values()]
}

function namedPlanes({ planes, sight }: FieldSight) {
  return sight.beams.planes.filter(({ first, end }) => planes.some((plane) => plane.first === first && plane.end === end))
}

interface Face {
  readonly kind: 'top' | 'side'
  readonly key: string
  readonly cosine: number
  readonly across_mm: number
  /** Outward, level. */
  readonly nx: number
  readonly ny: number
}

/** The face that beams i and i + 1 meet most squarely; undefined if they meet none together. */
function squarest(beams: Beams, i: number, shape: Shape): Face | undefined {
  const downward = Math.min(-(beams.directionZ[i] as number), -(beams.directionZ[i + 1] as number))
  const top: Face = { kind: 'top', key: 'top', cosine: downward, across_mm: acrossTop(shape), nx: 0, ny: 0 }
  let best: Face | undefined = downward > 0 ? top : undefined
  for (const face of sidesOf(beams, i, shape)) if (face.cosine > (best?.cosine ?? 0)) best = face
  return best
}

function sidesOf(beams: Beams, i: number, shape: Shape): readonly Face[] {
  const high_mm = shape.high - shape.low
  const side = (key: string, across_mm: number, nx: number, ny: number): Face => {
    const cosine = Math.min(inward(beams, i, nx, ny), inward(beams, i + 1, nx, ny))
    return { kind: 'side', key, cosine, across_mm: Math.min(across_mm, high_mm), nx, ny }
  }
  if (shape.round) {
    const x = (beams.directionX[i] as number) + (beams.directionX[i + 1] as number)
    const y = (beams.directionY[i] as number) + (beams.directionY[i + 1] as number)
    const length = Math.sqrt(x * x + y * y)
    return length > 0 ? [side('round', acrossTop(shape), -x / length, -y / length)] : []
  }
  const { cosYaw: c, sinYaw: s, halfA, halfB } = shape
  return [side('+a', 2 * halfB, c, s), side('+b', 2 * halfA, -s, c), side('-a', 2 * halfB, -c, -s), side('-b', 2 * halfA, s, -c)]
}

/** Cosine of incidence on a level normal. */
function inward(beams: Beams, i: number, nx: number, ny: number): number {
  return -((beams.directionX[i] as number) * nx + (beams.directionY[i] as number) * ny)
}

/** Of a disc the square inside of it: every line that passes within half of its side from the centre runs at least so far. */
function acrossTop({ round, halfA, halfB }: Shape): number {
  return round ? halfA * Math.SQRT2 : 2 * Math.min(halfA, halfB)
}

interface Scene {
  readonly field: FieldSight
  readonly shape: Shape
  /** Stretches of each beam that count and lie in the zone; and those of them that lie between the body's bottom and top. */
  readonly counting: Windows
  readonly abreast: Windows
}

function sceneOf(field: FieldSight, zone: Zone, shape: Shape): Scene {
  const { beams, floor, limits, ends_mm, reach: parameters } = field.sight
  const inZone: FieldLimits = {
    ...limits,
    xMin_mm: Math.max(limits.xMin_mm, zone.xMin_mm),
    xMax_mm: Math.min(limits.xMax_mm, zone.xMax_mm),
    yMin_mm: Math.max(limits.yMin_mm, zone.yMin_mm),
    yMax_mm: Math.min(limits.yMax_mm, zone.yMax_mm),
  }
  const besideBody = {
    ...inZone,
    clearance_mm: Math.max(limits.clearance_mm, shape.low),
    top_mm: Math.min(limits.top_mm, shape.high),
  }
  const within = (wanted: FieldLimits) => fieldWindows(beams, floor, wanted, ends_mm, parameters.maxRange_mm)
  return { field, shape, counting: within(inZone), abreast: within(besideBody) }
}

type Gap = Pick<FaceGap, 'gap_mm' | 'x_mm' | 'y_mm' | 'z_mm'>

function topGap(scene: Scene, i: number): Gap | undefined {
  const t = topDistance(scene, i)
  const u = topDistance(scene, i + 1)
  return t === undefined || u === undefined ? undefined : between(scene.field.sight.beams, i, t, u)
}

/** How far beam i runs to the floor raised by the body's height, if it counts there. */
function topDistance({ field, shape, counting }: Scene, i: number): number | undefined {
  const { beams, floor, ends_mm, reach: parameters } = field.sight
  const [ox, oy, oz] = [beams.originX[i] as number, beams.originY[i] as number, beams.originZ[i] as number]
  const [dx, dy, dz] = [beams.directionX[i] as number, beams.directionY[i] as number, beams.directionZ[i] as number]
  const t = floorDistance(floor, ox, oy, oz - shape.high, dx, dy, dz)
  if (!(t > 0 && t < (ends_mm[i] as number) && t <= reach(shape.reflectance * -dz, parameters))) return undefined
  return stretchesOf(counting, i, Infinity).some(({ from_mm, to_mm }) => from_mm <= t && t <= to_mm) ? t : undefined
}

/** Along upright planes n . P = s the distance of both points is a convex function of s: over a stretch of s it is largest at an end. */
function sideGap(scene: Scene, i: number, face: Face): Gap | undefined {
  const { counting, abreast } = scene
  const pairs = [
    ...overlaps(alongNormal(scene, counting, i, face), alongNormal(scene, abreast, i + 1, face)),
    ...overlaps(alongNormal(scene, abreast, i, face), alongNormal(scene, counting, i + 1, face)),
  ]
  const { beams } = scene.field.sight
  let largest: Gap | undefined
  for (const s of pairs.flatMap(({ from_mm, to_mm }) => [from_mm, to_mm])) {
    const gap = between(beams, i, distanceTo(beams, i, face, s), distanceTo(beams, i + 1, face, s))
    if (gap.gap_mm > (largest?.gap_mm ?? 0)) largest = gap
  }
  return largest
}

/** The offsets s of upright planes n . P = s that beam i meets in one of its stretches, reach on that face included. */
function alongNormal({ field, shape }: Scene, windows: Windows, i: number, { nx, ny }: Face): readonly Stretch[] {
  const { beams, reach: parameters } = field.sight
  const cosine = inward(beams, i, nx, ny)
  const start = (beams.originX[i] as number) * nx + (beams.originY[i] as number) * ny
  const farthest = reach(shape.reflectance * cosine, parameters)
  return stretchesOf(windows, i, farthest).map(({ from_mm, to_mm }) => ({
    from_mm: start - to_mm * cosine,
    to_mm: start - from_mm * cosine,
  }))
}

function stretchesOf({ first, from, to }: Windows, i: number, farthest_mm: number): readonly Stretch[] {
  const stretches: Stretch[] = []
  for (let w = first[i] as number; w < (first[i + 1] as number); w++) {
    const stretch = { from_mm: from[w] as number, to_mm: Math.min(to[w] as number, farthest_mm) }
    if (stretch.from_mm <= stretch.to_mm) stretches.push(stretch)
  }
  return stretches
}

function overlaps(some: readonly Stretch[], others: readonly Stretch[]): readonly Stretch[] {
  return some
    .flatMap((a) => others.map((b) => ({ from_mm: Math.max(a.from_mm, b.from_mm), to_mm: Math.min(a.to_mm, b.to_mm) })))
    .filter(({ from_mm, to_mm }) => from_mm <= to_mm)
}

function distanceTo(beams: Beams, i: number, { nx, ny }: Face, s: number): number {
  const start = (beams.originX[i] as number) * nx + (beams.originY[i] as number) * ny
  return (start - s) / inward(beams, i, nx, ny)
}

/** From the point at distance t on beam i to the one at distance u on its neighbour. */
function between({ originX, originY, originZ, directionX, directionY, directionZ }: Beams, i: number, t: number, u: number): Gap {
  const at = (origin: Float64Array, direction: Float64Array, k: number, far: number) =>
    (origin[k] as number) + far * (direction[k] as number)
  const [x, y, z] = [at(originX, directionX, i, t), at(originY, directionY, i, t), at(originZ, directionZ, i, t)]
  const [p, q, r] = [at(originX, directionX, i + 1, u), at(originY, directionY, i + 1, u), at(originZ, directionZ, i + 1, u)]
  return { gap_mm: hypot3(p - x, q - y, r - z), x_mm: (x + p) / 2, y_mm: (y + q) / 2, z_mm: (z + r) / 2 }
}
