import { BufferAttribute, BufferGeometry, DoubleSide, Ray, Vector3, type Vector3Like } from 'three'
import { MeshBVH } from 'three-mesh-bvh'
import type { DoorState, Floor, Obstacle } from '../src/model/door.ts'

/*
 * Triangles for an independent ray caster (three and three-mesh-bvh, in double precision). A round thing becomes a prism of many sides, once inside
 * and once around it: what is true of the round thing lies between the two.
 */

export type Prism = 'inside' | 'around'
const SIDES = 256

export interface Strike {
  readonly distance: number
  readonly normal: Vector3
}

export class ReferenceMesh {
  readonly #tree: MeshBVH

  constructor(corners: readonly number[]) {
    const geometry = new BufferGeometry()
    geometry.setAttribute('position', new BufferAttribute(Float64Array.from(corners), 3))
    this.#tree = new MeshBVH(geometry)
  }

  /** The first triangle that a ray meets, from either side. */
  first(from: Vector3Like, along: Vector3Like): Strike | undefined {
    const hit = this.#tree.raycastFirst(rayOf(from, along), DoubleSide)
    return hit?.face ? { distance: hit.distance, normal: hit.face.normal } : undefined
  }

  /** How many closed surfaces lie around a point: outward strikes less inward ones. */
  around(point: Vector3Like): number {
    const along = new Vector3(0.36, 0.48, 0.8)
    const hits = this.#tree.raycast(rayOf(point, along), DoubleSide)
    return hits.reduce((sum, { face }) => sum + Math.sign(face?.normal.dot(along) ?? 0), 0)
  }
}

function rayOf(from: Vector3Like, along: Vector3Like): Ray {
  return new Ray(new Vector3().copy(from), new Vector3().copy(along).normalize())
}

/** An upright prism over a convex outline that runs counter-clockwise; normals point outward. */
export function prismCorners(outline: readonly (readonly [number, number])[], bottom: number, top: number): readonly number[] {
  return outline.flatMap(([x, y], i) => {
    const [nextX, nextY] = outline[(i + 1) % outline.length] ?? [x, y]
    const [firstX, firstY] = outline[0] ?? [x, y]
    const side = [x, y, bottom, nextX, nextY, bottom, nextX, nextY, top, x, y, bottom, nextX, nextY, top, x, y, top]
    const caps = [firstX, firstY, top, x, y, top, nextX, nextY, top, firstX, firstY, bottom, nextX, nextY, bottom, x, y, bottom]
    return i === 0 || i === outline.length - 1 ? side : [...side, ...caps]
  })
}

export function roundOutline(x: number, y: number, radius: number, prism: Prism): readonly (readonly [number, number])[] {
  const corner = prism === 'inside' ? radius : radius / Math.cos(Math.PI / SIDES)
  return Array.from({ length: SIDES }, (_, i) => {
    const angle = (2 * Math.PI * (i + 0.3)) / SIDES
    return [x + corner * Math.cos(angle), y + corner * Math.sin(angle)]
  })
}

function boxOutline(x: number, y: number, halfA: number, halfB: number, yaw_rad: number): readonly (readonly [number, number])[] {
  const corners = [
    [-halfA, -halfB],
    [halfA, -halfB],
    [halfA, halfB],
    [-halfA, halfB],
  ] as const
  const turn = new Vector3(0, 0, 1)
  return corners.map(([a, b]) => {
    const corner = new Vector3(a, b, 0).applyAxisAngle(turn, yaw_rad)
    return [x + corner.x, y + corner.y]
  })
}

/** All obstacles of a state as closed surfaces. */
export function obstacleCorners({ obstacles }: DoorState, prism: Prism): readonly number[] {
  return obstacles.flatMap((obstacle) => prismCorners(outlineOf(obstacle, prism), obstacle.from_mm, obstacle.to_mm))
}

function outlineOf(obstacle: Obstacle, prism: Prism): readonly (readonly [number, number])[] {
  const { x_mm, y_mm } = obstacle
  if (obstacle.shape === 'post') return roundOutline(x_mm, y_mm, obstacle.radius_mm, prism)
  return boxOutline(x_mm, y_mm, obstacle.size_mm[0] / 2, obstacle.size_mm[1] / 2, obstacle.yaw_rad)
}

const FLOOR_ENDS_MM = 100_000

/** The floor out to 100 m on all sides, two triangles for each piece. */
export function floorCorners({ profile, slopeX }: Floor): readonly number[] {
  const first = profile[0]
  const last = profile.at(-1)
  if (first === undefined || last === undefined) return []
  const bends = [{ y_mm: -FLOOR_ENDS_MM, z_mm: first.z_mm }, ...profile, { y_mm: FLOOR_ENDS_MM, z_mm: last.z_mm }]
  return bends.slice(1).flatMap(({ y_mm, z_mm }, i) => {
    const near = bends[i] ?? first
    const corner = (x: number, y: number, z: number) => [x, y, z + slopeX * x]
    const [a, b] = [corner(-FLOOR_ENDS_MM, near.y_mm, near.z_mm), corner(FLOOR_ENDS_MM, near.y_mm, near.z_mm)]
    const [c, d] = [corner(FLOOR_ENDS_MM, y_mm, z_mm), corner(-FLOOR_ENDS_MM, y_mm, z_mm)]
    return [...a, ...b, ...c, ...a, ...c, ...d]
  })
}
