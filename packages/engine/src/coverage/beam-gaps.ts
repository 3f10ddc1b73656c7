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
  const { beams } = scene.field.sight
  const widest = { s: Number.NaN, gap_mm: 0 }
  widen(widest, scene, i, face, counting, abreast)
  widen(widest, scene, i, face, abreast, counting)
  const { s, gap_mm } = widest
  return gap_mm > 0 ? between(beams, i, distanceTo(beams, i, face, s), distanceTo(beams, i + 1, face, s)) : undefined
}

/**
 * Tries the ends of all stretches of s that beam i meets in `windows` and its neighbour in `others`, reach on that face included. Asked for every beam
 * of every posture while somebody drags: nothing is allocated.
 */
function widen(
  widest: { s: number; gap_mm: number },
  { field, shape }: Scene,
  i: number,
  face: Face,
  windows: Windows,
  others: Windows,
): void {
  const { beams, reach: parameters } = field.sight
  const k = i + 1
  if (windows.first[i] === windows.first[k] || others.first[k] === others.first[k + 1]) return
  const [cosineI, startI] = [inward(beams, i, face), originAlong(beams, i, face)]
  const [cosineK, startK] = [inward(beams, k, face), originAlong(beams, k, face)]
  const farI = reach(shape.reflectance * cosineI, parameters)
  const farK = reach(shape.reflectance * cosineK, parameters)
  for (let w = windows.first[i] as number; w < (windows.first[k] as number); w++) {
    const fromI = windows.from[w] as number
    const toI = Math.min(windows.to[w] as number, farI)
    if (!(fromI <= toI)) continue
    for (let v = others.first[k] as number; v < (others.first[k + 1] as number); v++) {
      const fromK = others.from[v] as number
      const toK = Math.min(others.to[v] as number, farK)
      if (!(fromK <= toK)) continue
      const low = Math.max(startI - toI * cosineI, startK - toK * cosineK)
      const high = Math.min(startI - fromI * cosineI, startK - fromK * cosineK)
      if (!(low <= high)) continue
      widenAt(widest, beams, i, face, low)
      widenAt(widest, beams, i, face, high)
    }
  }
}

function widenAt(widest: { s: number; gap_mm: number }, beams: Beams, i: number, face: Face, s: number): void {
  const gap_mm = apart(beams, i, distanceTo(beams, i, face, s), distanceTo(beams, i + 1, face, s))
  if (!(gap_mm > widest.gap_mm)) return
  widest.s = s
  widest.gap_mm = gap_mm
}

function stretchesOf({ first, from, to }: Windows, i: number, farthest_mm: number): readonly Stretch[] {
  const stretches: Stretch[] = []
  for (let w = first[i] as number; w < (first[i + 1] as number); w++) {
    const stretch = { from_mm: from[w] as number, to_mm: Math.min(to[w] as number, farthest_mm) }
    if (stretch.from_mm <= stretch.to_mm) stretches.push(stretch)
  }
  return stretches
}

function distanceTo(beams: Beams, i: number, face: Face, s: number): number {
  return (originAlong(beams, i, face) - s) / inward(beams, i, face)
}

function originAlong({ originX, originY }: Beams, i: number, { nx, ny }: Face): number {
  return (originX[i] as number) * nx + (originY[i] as number) * ny
}

/** From the point at distance t on beam i to the one at distance u on its neighbour. */
function between(beams: Beams, i: number, t: number, u: number): Gap {
  const { originX, originY, originZ, directionX, directionY, directionZ } = beams
  const middle = (origin: Float64Array, direction: Float64Array) =>
    (along(origin, direction, i, t) + along(origin, direction, i + 1, u)) / 2
  return {
    gap_mm: apart(beams, i, t, u),
    x_mm: middle(originX, directionX),
    y_mm: middle(originY, directionY),
    z_mm: middle(originZ, directionZ),
  }
}

function apart({ originX, originY, originZ, directionX, directionY, directionZ }: Beams, i: number, t: number, u: number): number {
  return hypot3(
    along(originX, directionX, i + 1, u) - along(originX, directionX, i, t),
    along(originY, directionY, i + 1, u) - along(originY, directionY, i, t),
    along(originZ, directionZ, i + 1, u) - along(originZ, directionZ, i, t),
  )
}

function along(origin: Float64Array, direction: Float64Array, i: number, far: number): number {
  return (origin[i] as number) + far * (direction[i] as number)
}
