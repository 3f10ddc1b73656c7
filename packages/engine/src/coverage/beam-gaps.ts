import type { Zone } from '../model/zone.ts'
import { floorDistance } from '../seeing/background.kernel.ts'
import type { Beams } from '../seeing/beams.ts'
import { reach } from '../seeing/reach.ts'
import { isEmpty, type Shape, shapeOf } from '../seeing/shape.ts'
import { type FieldLimits, fieldWindows, type Windows } from '../seeing/windows.ts'
import { hypot2, hypot3 } from '../space/trigonometry.ts'
import type { Stance } from './scene.ts'
import type { FieldSight } from './seen-map.ts'
import type { Stretch } from './stretches.ts'

/** The largest gap between two neighbouring beams along one face of a body. Doorway frame, mm. */
export interface FaceGap {
  readonly gap_mm: number
  readonly stance: Stance
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
 * The largest gaps between neighbouring beams of one plane, along the faces of bodies that stand anywhere in the zone.
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
 * @returns for each stance and each face of it that is met, the largest gap; empty where no two neighbours meet a body
 */
export function beamGaps(field: FieldSight, zone: Zone, stances: readonly Stance[], spotRadius_mm: number): readonly FaceGap[] {
  const counting = windowsIn(field, limitsInZone(field, zone))
  const abreast = new Map<string, Windows>() // by the heights of the body: postures of one height share them
  return stances.flatMap((stance) => {
    const shape = shapeOf(stance.posture, stance.yaw_rad, stance.body.reflectance, spotRadius_mm)
    if (isEmpty(shape)) return []
    const heights = `${shape.low} ${shape.high}`
    const beside = abreast.get(heights) ?? windowsIn(field, limitsBeside(limitsInZone(field, zone), shape))
    abreast.set(heights, beside)
    return largestGaps({ field, shape, counting, abreast: beside }, stance)
  })
}

function largestGaps(scene: Scene, stance: Stance): readonly FaceGap[] {
  const { field, shape } = scene
  const faces = facesOf(shape)
  const largest = new Map<string, FaceGap>()
  for (const { id, first, end } of namedPlanes(field)) {
    for (let i = first; i + 1 < end; i++) {
      const face = shape.round
        ? squarest(field.sight.beams, i, roundFaces(field.sight.beams, i, shape))
        : squarest(field.sight.beams, i, faces)
      const found = face && (face.kind === 'top' ? topGap(scene, i) : sideGap(scene, i, face))
      if (!face || !found || !(found.gap_mm > (largest.get(face.key)?.gap_mm ?? 0))) continue
      largest.set(face.key, { ...found, stance, face: face.kind, across_mm: face.across_mm, plane: id, beam: i - first })
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
  readonly across_mm: number
  /** Outward normal. */
  readonly nx: number
  readonly ny: number
  readonly nz: number
}

/** The face that beams i and i + 1 meet most squarely, the first on a tie; undefined if they meet none together. */
function squarest(beams: Beams, i: number, faces: readonly Face[]): Face | undefined {
  let best: Face | undefined
  let most = 0
  for (const face of faces) {
    const cosine = Math.min(inward(beams, i, face), inward(beams, i + 1, face))
    if (cosine > most) {
      most = cosine
      best = face
    }
  }
  return best
}

function facesOf(shape: Shape): readonly Face[] {
  const { cosYaw: c, sinYaw: s, halfA, halfB } = shape
  return [
    topOf(shape),
    sideOf(shape, '+a', 2 * halfB, c, s),
    sideOf(shape, '+b', 2 * halfA, -s, c),
    sideOf(shape, '-a', 2 * halfB, -c, -s),
    sideOf(shape, '-b', 2 * halfA, s, -c),
  ]
}

/** Of a cylinder the top, and the upright plane square to the mean direction of both beams in the plan. */
function roundFaces({ directionX, directionY }: Beams, i: number, shape: Shape): readonly Face[] {
  const x = (directionX[i] as number) + (directionX[i + 1] as number)
  const y = (directionY[i] as number) + (directionY[i + 1] as number)
  const length = hypot2(x, y)
  return length > 0 ? [topOf(shape), sideOf(shape, 'round', acrossTop(shape), -x / length, -y / length)] : [topOf(shape)]
}

function topOf(shape: Shape): Face {
  return { kind: 'top', key: 'top', across_mm: acrossTop(shape), nx: 0, ny: 0, nz: 1 }
}

function sideOf({ low, high }: Shape, key: string, width_mm: number, nx: number, ny: number): Face {
  return { kind: 'side', key, across_mm: Math.min(width_mm, high - low), nx, ny, nz: 0 }
}

/** Cosine of incidence; 0 or less where the beam does not come from outside. */
function inward({ directionX, directionY, directionZ }: Beams, i: number, { nx, ny, nz }: Face): number {
  return -((directionX[i] as number) * nx + (directionY[i] as number) * ny + (directionZ[i] as number) * nz)
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

function limitsInZone({ sight: { limits } }: FieldSight, zone: Zone): FieldLimits {
  return {
    ...limits,
    xMin_mm: Math.max(limits.xMin_mm, zone.xMin_mm),
    xMax_mm: Math.min(limits.xMax_mm, zone.xMax_mm),
    yMin_mm: Math.max(limits.yMin_mm, zone.yMin_mm),
    yMax_mm: Math.min(limits.yMax_mm, zone.yMax_mm),
  }
}

function limitsBeside(limits: FieldLimits, { low, high }: Shape): FieldLimits {
  return { ...limits, clearance_mm: Math.max(limits.clearance_mm, low), top_mm: Math.min(limits.top_mm, high) }
}

function windowsIn({ sight }: FieldSight, limits: FieldLimits): Windows {
  return fieldWindows(sight.beams, sight.floor, limits, sight.ends_mm, sight.reach.maxRange_mm)
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
function alongNormal({ field, shape }: Scene, windows: Windows, i: number, face: Face): readonly Stretch[] {
  const { beams, reach: parameters } = field.sight
  const cosine = inward(beams, i, face)
  const start = originAlong(beams, i, face)
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

function distanceTo(beams: Beams, i: number, face: Face, s: number): number {
  return (originAlong(beams, i, face) - s) / inward(beams, i, face)
}

function originAlong({ originX, originY }: Beams, i: number, { nx, ny }: Face): number {
  return (originX[i] as number) * nx + (originY[i] as number) * ny
}

/** From the point at distance t on beam i to the one at distance u on its neighbour. */
function between({ originX, originY, originZ, directionX, directionY, directionZ }: Beams, i: number, t: number, u: number): Gap {
  const at = (origin: Float64Array, direction: Float64Array, k: number, far: number) =>
    (origin[k] as number) + far * (direction[k] as number)
  const [x, y, z] = [at(originX, directionX, i, t), at(originY, directionY, i, t), at(originZ, directionZ, i, t)]
  const [p, q, r] = [at(originX, directionX, i + 1, u), at(originY, directionY, i + 1, u), at(originZ, directionZ, i + 1, u)]
  return { gap_mm: hypot3(p - x, q - y, r - z), x_mm: (x + p) / 2, y_mm: (y + q) / 2, z_mm: (z + r) / 2 }
}
