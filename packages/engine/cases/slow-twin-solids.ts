import type { Posture } from '../src/model/body.ts'
import type { Floor, Obstacle } from '../src/model/door.ts'
import { cos, sin } from '../src/space/trigonometry.ts'

/*
 * Straight lines against solids and floors, written from docs/method.md as plainly as possible. Doorway frame, mm.
 * Test support: the fast engine is compared with this, so nothing here may come from it (its sines excepted, which a library checks).
 */

export type Vector = readonly [x: number, y: number, z: number]
/** All points from + t * along. For a beam `along` has length 1 and t is in mm. */
export interface Line {
  readonly from: Vector
  readonly along: Vector
}

export interface UprightBox {
  readonly shape: 'box'
  readonly x: number // of the centre
  readonly y: number
  readonly halfA: number // along x at yaw 0
  readonly halfB: number
  readonly yaw_rad: number
  readonly bottom: number
  readonly top: number
}
export interface UprightCylinder {
  readonly shape: 'cylinder'
  readonly x: number
  readonly y: number
  readonly radius: number
  readonly bottom: number
  readonly top: number
}
export type Solid = UprightBox | UprightCylinder

/** Where a line runs through the interior of a solid: from t `enters` to t `leaves`, which is larger. Either may be negative. */
export interface Passage {
  readonly enters: number
  readonly leaves: number
  /** Of the incidence on the face it enters by; the smaller one at an edge. Only meant for lines of length 1. */
  readonly cosine: number
  /** Where it enters. */
  readonly point: Vector
}

export function pointOn(line: Line, t: number): Vector {
  return [line.from[0] + t * line.along[0], line.from[1] + t * line.along[1], line.from[2] + t * line.along[2]]
}

/** A line through the interior of a solid; undefined where it misses or only grazes. */
export function passageThrough(line: Line, solid: Solid): Passage | undefined {
  return solid.shape === 'box' ? passageThroughBox(line, solid) : passageThroughCylinder(line, solid)
}

/** One pair of faces: where the line is strictly between them. */
interface Stretch {
  readonly enters: number
  readonly leaves: number
  readonly cosine: number
}

function stretchBetween(position: number, speed: number, low: number, high: number): Stretch | undefined {
  if (!(low < high)) return undefined
  if (speed === 0) return low < position && position < high ? { enters: -Infinity, leaves: Infinity, cosine: Infinity } : undefined
  const toLow = (low - position) / speed
  const toHigh = (high - position) / speed
  return { enters: Math.min(toLow, toHigh), leaves: Math.max(toLow, toHigh), cosine: Math.abs(speed) }
}

/** Common part of several stretches; at an edge, where two begin together, the smaller cosine. */
function commonStretch(stretches: readonly (Stretch | undefined)[]): Stretch | undefined {
  let common: Stretch = { enters: -Infinity, leaves: Infinity, cosine: Infinity }
  for (const stretch of stretches) {
    if (stretch === undefined) return undefined
    const leaves = Math.min(common.leaves, stretch.leaves)
    if (stretch.enters > common.enters) common = { enters: stretch.enters, leaves, cosine: stretch.cosine }
    else if (stretch.enters === common.enters) common = { ...common, leaves, cosine: Math.min(common.cosine, stretch.cosine) }
    else common = { ...common, leaves }
  }
  return common.enters < common.leaves ? common : undefined
}

/** In the box's own frame, where its faces are x = +-halfA and y = +-halfB. */
function passageThroughBox(line: Line, box: UprightBox): Passage | undefined {
  const [x, y] = turnedBack(line.from[0] - box.x, line.from[1] - box.y, box.yaw_rad)
  const [dx, dy] = turnedBack(line.along[0], line.along[1], box.yaw_rad)
  const [z, dz] = [line.from[2], line.along[2]]
  const alongA = stretchBetween(x, dx, -box.halfA, box.halfA)
  const alongB = stretchBetween(y, dy, -box.halfB, box.halfB)
  const upward = stretchBetween(z, dz, box.bottom, box.top)
  const common = commonStretch([alongA, alongB, upward])
  if (common === undefined) return undefined
  // a point on a face that is square to an axis lies on it exactly, whatever rounding did to t
  const point: [number, number, number] = [...pointOn(line, common.enters)]
  if (alongA?.enters === common.enters && box.yaw_rad === 0) point[0] = dx > 0 ? box.x - box.halfA : box.x + box.halfA
  if (alongB?.enters === common.enters && box.yaw_rad === 0) point[1] = dy > 0 ? box.y - box.halfB : box.y + box.halfB
  if (upward?.enters === common.enters) point[2] = dz > 0 ? box.bottom : box.top
  return { ...common, point }
}

function turnedBack(x: number, y: number, yaw_rad: number): readonly [number, number] {
  if (yaw_rad === 0) return [x, y]
  return [x * cos(yaw_rad) + y * sin(yaw_rad), y * cos(yaw_rad) - x * sin(yaw_rad)]
}

function passageThroughCylinder(line: Line, cylinder: UprightCylinder): Passage | undefined {
  const [z, dz] = [line.from[2], line.along[2]]
  const round = stretchInRound(line, cylinder)
  const upward = stretchBetween(z, dz, cylinder.bottom, cylinder.top)
  const common = commonStretch([round, upward])
  if (common === undefined) return undefined
  const point: [number, number, number] = [...pointOn(line, common.enters)]
  if (upward?.enters === common.enters) point[2] = dz > 0 ? cylinder.bottom : cylinder.top
  return { ...common, point }
}

/** Seen from above, a straight line and a disc: the line passes the axis at a distance and runs half a chord to both sides of the nearest point. */
function stretchInRound(line: Line, { x, y, radius }: UprightCylinder): Stretch | undefined {
  if (!(radius > 0)) return undefined
  const [px, py] = [line.from[0] - x, line.from[1] - y]
  const [dx, dy] = [line.along[0], line.along[1]]
  if (dx === 0 && dy === 0) {
    return px * px + py * py < radius * radius ? { enters: -Infinity, leaves: Infinity, cosine: Infinity } : undefined
  }
  const speed = Math.sqrt(dx * dx + dy * dy)
  const [ux, uy] = [dx / speed, dy / speed] // exactly (1, 0) and the like along an axis, so that a tangent there is told from a chord
  const past = px * uy - py * ux
  if (!(past * past < radius * radius)) return undefined
  const halfChord = Math.sqrt(radius * radius - past * past)
  const nearest = -(px * ux + py * uy)
  // the face's normal at the entry has the component -halfChord / radius along (ux, uy)
  return { enters: (nearest - halfChord) / speed, leaves: (nearest + halfChord) / speed, cosine: (speed * halfChord) / radius }
}

/** Profile along y, constant beyond its ends, plus the slope across. */
export function floorHeight(floor: Floor, x: number, y: number): number {
  return profileHeight(floor, y) + floor.slopeX * x
}

function profileHeight({ profile }: Floor, y: number): number {
  const left = profile.filter((point) => point.y_mm <= y).at(-1)
  const right = profile.find((point) => point.y_mm > y)
  if (left === undefined || right === undefined) {
    const end = left ?? right
    if (end === undefined) throw new Error('a floor profile must have points, got none')
    return end.z_mm
  }
  return left.z_mm + ((right.z_mm - left.z_mm) * (y - left.y_mm)) / (right.y_mm - left.y_mm)
}

/** Where the beam goes under the floor first: 0 from a start under it, Infinity if never. Touching it is not going under. */
export function distanceToFloor(beam: Line, floor: Floor): number {
  const heightAt = (t: number) => {
    const [x, y, z] = pointOn(beam, t)
    return z - floorHeight(floor, x, y)
  }
  if (heightAt(0) < 0) return 0
  // from kink to kink of the profile the height above the floor is linear in t; after the last one the profile is level
  const kinks = beam.along[1] === 0 ? [] : floor.profile.map((point) => (point.y_mm - beam.from[1]) / beam.along[1])
  let start = 0
  for (const end of kinks.filter((t) => t > 0).sort((a, b) => a - b)) {
    const [above, aboveAtEnd] = [heightAt(start), heightAt(end)]
    if (aboveAtEnd < 0) return start + ((end - start) * above) / (above - aboveAtEnd)
    start = end
  }
  const sinking = floor.slopeX * beam.along[0] - beam.along[2] // height lost per mm of beam
  return sinking > 0 ? start + heightAt(start) / sinking : Infinity
}

export function solidOfObstacle(obstacle: Obstacle): Solid {
  const place = { x: obstacle.x_mm, y: obstacle.y_mm, bottom: obstacle.from_mm, top: obstacle.to_mm }
  if (obstacle.shape === 'post') return { shape: 'cylinder', ...place, radius: obstacle.radius_mm }
  const [along, across] = obstacle.size_mm
  return { shape: 'box', ...place, halfA: along / 2, halfB: across / 2, yaw_rad: obstacle.yaw_rad }
}

/** The body in a posture with its centre over (x, y): its bottom stands at the floor height under that centre. */
export function solidOfBody(posture: Posture, yaw_rad: number, floor: Floor, x: number, y: number): Solid {
  const bottom = floorHeight(floor, x, y)
  if (posture.shape === 'cylinder') return { shape: 'cylinder', x, y, radius: posture.radius_mm, bottom, top: bottom + posture.height_mm }
  return { shape: 'box', x, y, halfA: posture.a_mm / 2, halfB: posture.b_mm / 2, yaw_rad, bottom, top: bottom + posture.c_mm }
}

/** Smaller by `by` on every side, at its bottom too. What is left may be nothing: then no line passes through it. */
export function shrunk(solid: Solid, by: number): Solid {
  const heights = { bottom: solid.bottom + by, top: solid.top - by }
  return solid.shape === 'box'
    ? { ...solid, ...heights, halfA: solid.halfA - by, halfB: solid.halfB - by }
    : { ...solid, ...heights, radius: solid.radius - by }
}

/** Two solids share a piece of space; touching is not sharing. */
export function overlap(one: Solid, other: Solid): boolean {
  if (!(Math.max(one.bottom, other.bottom) < Math.min(one.top, other.top))) return false
  if (one.shape === 'cylinder') return overlapWithDisc(other, one)
  if (other.shape === 'cylinder') return overlapWithDisc(one, other)
  // two rectangles are apart when some side of one of them has the whole other one on its far side
  return !hasSideBetween(one, other) && !hasSideBetween(other, one)
}

function overlapWithDisc(solid: Solid, disc: UprightCylinder): boolean {
  const [x, y] = [disc.x - solid.x, disc.y - solid.y]
  if (solid.shape === 'cylinder') return x * x + y * y < (disc.radius + solid.radius) * (disc.radius + solid.radius)
  const [a, b] = turnedBack(x, y, solid.yaw_rad)
  const beyondA = Math.max(Math.abs(a) - solid.halfA, 0)
  const beyondB = Math.max(Math.abs(b) - solid.halfB, 0)
  return beyondA * beyondA + beyondB * beyondB < disc.radius * disc.radius
}

function hasSideBetween(box: UprightBox, other: UprightBox): boolean {
  const corners = cornersOf(other).map(([x, y]) => turnedBack(x - box.x, y - box.y, box.yaw_rad))
  return (
    corners.every(([a]) => a >= box.halfA) ||
    corners.every(([a]) => a <= -box.halfA) ||
    corners.every(([, b]) => b >= box.halfB) ||
    corners.every(([, b]) => b <= -box.halfB)
  )
}

function cornersOf({ x, y, halfA, halfB, yaw_rad }: UprightBox): readonly (readonly [number, number])[] {
  const corners = [
    [-halfA, -halfB],
    [halfA, -halfB],
    [halfA, halfB],
    [-halfA, halfB],
  ] as const
  if (yaw_rad === 0) return corners.map(([a, b]) => [x + a, y + b])
  return corners.map(([a, b]) => [x + a * cos(yaw_rad) - b * sin(yaw_rad), y + a * sin(yaw_rad) + b * cos(yaw_rad)])
}
