import { Box3, Matrix4, Ray, Vector3 } from 'three'
import { describe, expect, it } from 'vitest'
import type { DoorState } from '../src/model/door.ts'
import { backgrounds } from '../src/seeing/background.ts'
import type { Beams } from '../src/seeing/beams.ts'
import { enterBox, enterCylinder } from '../src/seeing/entry.kernel.ts'
import { beamSees, type Sight } from '../src/seeing/sees.ts'
import { type Shape, shapeOf } from '../src/seeing/shape.ts'
import { floorPieces } from '../src/space/floor.ts'
import { cos, sin } from '../src/space/trigonometry.ts'
import { randomDoor } from './random-doors.ts'
import { type RandomNumbers, randomNumbers } from './random-numbers.ts'
import { floorCorners, obstacleCorners, prismCorners, ReferenceMesh, roundOutline } from './reference-meshes.ts'
import { distanceToSurroundings } from './slow-twin-beams.ts'
import { type Line, passageThrough, type Solid, type UprightBox, type UprightCylinder } from './slow-twin-solids.ts'

const CASES = 100_000
const CLOSE_MM = 1e-6

/** What one method says about a line and a solid; undefined if it misses or lies behind. */
interface Entry {
  readonly t: number
  readonly cosine: number
}

describe('a beam against a box agrees with three (Ray.intersectBox), 100,000 cases from seed 1', () => {
  it.each([
    ['the slow twin', entryOfTwin],
    ['the engine', entryOfEngine],
  ] as const)('%s: hit or miss, distance and incidence', (_, entryOf) => {
    const random = randomNumbers(1)
    let hits = 0
    for (let i = 0; i < CASES; i++) {
      const box = randomBox(random)
      const line = randomLine(random, box)
      const [ours, theirs] = [entryOf(line, box), entryOfThree(line, box)]
      if (theirs === undefined ? ours !== undefined : !agree(ours, theirs)) expect.fail(`case ${i}: ${say({ ours, theirs, line, box })}`)
      if (theirs !== undefined) hits++
    }
    expect(hits).toBeGreaterThan(CASES / 4)
    expect(hits).toBeLessThan((CASES * 3) / 4)
  })
})

describe('a beam against a cylinder lies between the prisms of three-mesh-bvh inside and around it, 100,000 cases from seed 2', () => {
  const [inside, around] = [unitPrism('inside'), unitPrism('around')]
  it.each([
    ['the slow twin', entryOfTwin],
    ['the engine', entryOfEngine],
  ] as const)('%s: hit or miss, distance and incidence', (_, entryOf) => {
    const random = randomNumbers(2)
    const widths: number[] = []
    for (let i = 0; i < CASES; i++) {
      const cylinder = randomCylinder(random)
      const line = randomLine(random, cylinder)
      const [ours, last, first] = [entryOf(line, cylinder), entryOfPrism(line, cylinder, inside), entryOfPrism(line, cylinder, around)]
      const lies = ours === undefined ? last === undefined : first !== undefined && liesBetween(ours, first, last)
      if (!lies) expect.fail(`case ${i}: ${say({ ours, last, first, line, cylinder })}`)
      if (first !== undefined && last !== undefined) widths.push(last.t - first.t)
    }
    expect(widths.length).toBeGreaterThan(CASES / 4)
    // the two prisms pin the distance down closely, so that the check means something
    expect(widths.sort((a, b) => a - b)[Math.floor(widths.length * 0.9)]).toBeLessThan(0.2)
  })
})

describe('what the predicate of the engine sees with nothing in the way is what three hits, 100,000 cases from seed 3', () => {
  it('boxes and cylinders', () => {
    const random = randomNumbers(3)
    const [inside, around] = [unitPrism('inside'), unitPrism('around')]
    for (let i = 0; i < CASES; i++) {
      const solid = random.chance(0.5) ? randomBox(random) : randomCylinder(random)
      const line = randomLine(random, solid)
      const [must, may] =
        solid.shape === 'box'
          ? [entryOfThree(line, solid), entryOfThree(line, solid)]
          : [entryOfPrism(line, solid, inside), entryOfPrism(line, solid, around)]
      const sees = sightOf(line, solid)
      if ((must !== undefined && !sees) || (may === undefined && sees)) expect.fail(`case ${i}: ${say({ sees, must, may, line, solid })}`)
    }
  })
})

describe('the background agrees with the mesh ray caster three-mesh-bvh on the obstacles and floors of random doors (seeds 1 to 200)', () => {
  it.each([
    ['the slow twin', (line: Line, state: DoorState) => distanceToSurroundings(line, state)],
    ['the engine', (line: Line, state: DoorState) => backgrounds(beamsOfLine(line), state)[0] ?? Number.NaN],
  ] as const)('%s: distance to what comes first, 0 inside of obstacles and under the floor', (_, backgroundOf) => {
    const found = { inside: 0, obstacle: 0, floor: 0, nothing: 0 }
    for (let seed = 1; seed <= 200; seed++) {
      for (const state of randomDoor(seed).states) {
        const random = randomNumbers(seed)
        const scene = referenceScene(state)
        for (let i = 0; i < 60; i++) {
          const line = lineThroughDoor(random)
          const ours = backgroundOf(line, state)
          const { what, from, to } = scene(line)
          found[what]++
          if (!(from <= ours && ours <= to)) expect.fail(`seed ${seed}, line ${i}: ${say({ ours, what, from, to, line })}`)
        }
      }
    }
    for (const count of Object.values(found)) expect(count).toBeGreaterThan(150)
  })
})

function entryOfTwin(line: Line, solid: Solid): Entry | undefined {
  const passage = passageThrough(line, solid)
  return passage !== undefined && passage.enters > 0 ? { t: passage.enters, cosine: passage.cosine } : undefined
}

function entryOfEngine({ from: [ox, oy, oz], along: [dx, dy, dz] }: Line, solid: Solid): Entry | undefined {
  const out = new Float64Array(3)
  const { x, y, bottom, top } = solid
  const hit =
    solid.shape === 'box'
      ? enterBox(
          out,
          ox,
          oy,
          oz,
          dx,
          dy,
          dz,
          x,
          y,
          bottom,
          solid.halfA,
          solid.halfB,
          0,
          top - bottom,
          cos(solid.yaw_rad),
          sin(solid.yaw_rad),
        )
      : enterCylinder(out, ox, oy, oz, dx, dy, dz, x, y, bottom, solid.radius, 0, top - bottom)
  const [t = 0, cosine = 0] = out
  return hit && t > 0 ? { t, cosine } : undefined
}

/** The library turns the ray into the box's frame with its own matrices and cuts it with an axis-parallel box. */
function entryOfThree({ from, along }: Line, box: UprightBox): Entry | undefined {
  const toBox = new Matrix4().makeRotationZ(box.yaw_rad).setPosition(box.x, box.y, 0).invert()
  const ray = new Ray(new Vector3(...from), new Vector3(...along)).applyMatrix4(toBox)
  const bounds = new Box3(new Vector3(-box.halfA, -box.halfB, box.bottom), new Vector3(box.halfA, box.halfB, box.top))
  const point = ray.intersectBox(bounds, new Vector3())
  if (point === null) return undefined
  const away = (['x', 'y', 'z'] as const).map((axis) => ({
    axis,
    fromFace: Math.min(Math.abs(point[axis] - bounds.min[axis]), Math.abs(point[axis] - bounds.max[axis])),
  }))
  const [nearest] = away.sort((a, b) => a.fromFace - b.fromFace)
  return { t: point.distanceTo(ray.origin), cosine: Math.abs(ray.direction[nearest?.axis ?? 'x']) }
}

/** A prism of radius 1 and height 1: rays are brought to it by scaling, so that one search tree serves all cases. */
function unitPrism(prism: 'inside' | 'around'): ReferenceMesh {
  return new ReferenceMesh(prismCorners(roundOutline(0, 0, 1, prism), 0, 1))
}

function entryOfPrism({ from, along }: Line, { x, y, radius, bottom, top }: UprightCylinder, prism: ReferenceMesh): Entry | undefined {
  const height = top - bottom
  const scaled = new Vector3(along[0] / radius, along[1] / radius, along[2] / height)
  const strike = prism.first({ x: (from[0] - x) / radius, y: (from[1] - y) / radius, z: (from[2] - bottom) / height }, scaled)
  if (strike === undefined) return undefined
  const normal = new Vector3(strike.normal.x / radius, strike.normal.y / radius, strike.normal.z / height).normalize()
  return { t: strike.distance / scaled.length(), cosine: Math.abs(normal.dot(new Vector3(...along))) }
}

function agree(ours: Entry | undefined, theirs: Entry): boolean {
  return ours !== undefined && Math.abs(ours.t - theirs.t) < CLOSE_MM && Math.abs(ours.cosine - theirs.cosine) < 1e-9
}

function liesBetween(ours: Entry, first: Entry, last: Entry | undefined): boolean {
  if (!(first.t - CLOSE_MM <= ours.t && ours.t <= (last?.t ?? Infinity) + CLOSE_MM)) return false
  // a side of the prism is turned from the round face by half a side at most; at the rim the prisms may be entered by different faces
  if (last === undefined || Math.abs(first.cosine - last.cosine) > 1e-3) return true
  return Math.abs(ours.cosine - first.cosine) < Math.PI / 256 + 1e-3
}

function randomBox(random: RandomNumbers): UprightBox {
  return {
    shape: 'box',
    ...randomPlace(random),
    halfA: random.between(20, 500),
    halfB: random.between(20, 500),
    yaw_rad: random.chance(0.3) ? 0 : random.between(-4, 4),
  }
}

function randomCylinder(random: RandomNumbers): UprightCylinder {
  return { shape: 'cylinder', ...randomPlace(random), radius: random.between(20, 500) }
}

function randomPlace(random: RandomNumbers): { x: number; y: number; bottom: number; top: number } {
  const bottom = random.between(-300, 300)
  return { x: random.between(-2000, 2000), y: random.between(-2000, 2000), bottom, top: bottom + random.between(20, 1200) }
}

/** From outside of the solid toward something near it, sometimes away from it. */
function randomLine(random: RandomNumbers, { x, y, bottom, top }: Solid): Line {
  const [turn, distance] = [random.between(-Math.PI, Math.PI), random.between(800, 4000)]
  const from = new Vector3(x + distance * Math.cos(turn), y + distance * Math.sin(turn), random.between(bottom - 500, top + 2500))
  const target = new Vector3(x + random.between(-500, 500), y + random.between(-500, 500), random.between(bottom - 100, top + 100))
  const along = target
    .sub(from)
    .normalize()
    .multiplyScalar(random.chance(0.05) ? -1 : 1)
  return { from: from.toArray(), along: along.toArray() }
}

function beamsOfLine({ from, along }: Line): Beams {
  const one = (value: number) => Float64Array.of(value)
  return {
    count: 1,
    originX: one(from[0]),
    originY: one(from[1]),
    originZ: one(from[2]),
    directionX: one(along[0]),
    directionY: one(along[1]),
    directionZ: one(along[2]),
    length: one(Infinity),
    planes: [],
  }
}

/** The body stands on a level floor at its bottom; no field, no background and no lack of light limits the beam. */
function sightOf(line: Line, solid: Solid): boolean {
  const height_mm = solid.top - solid.bottom
  const [posture, yaw_rad] =
    solid.shape === 'box'
      ? [
          { shape: 'box', name: '', a_mm: 2 * solid.halfA, b_mm: 2 * solid.halfB, c_mm: height_mm, yawFrom_rad: 0, yawTo_rad: 0 } as const,
          solid.yaw_rad,
        ]
      : [{ shape: 'cylinder', name: '', radius_mm: solid.radius, height_mm } as const, 0]
  const shape: Shape = shapeOf(posture, yaw_rad, 1, 0)
  const sight: Sight = {
    beams: beamsOfLine(line),
    floor: floorPieces({ profile: [{ y_mm: 0, z_mm: solid.bottom }], slopeX: 0, tolerance_mm: undefined }),
    limits: { xMin_mm: -Infinity, xMax_mm: Infinity, yMin_mm: -Infinity, yMax_mm: Infinity, clearance_mm: -Infinity, top_mm: Infinity },
    ends_mm: Float64Array.of(Infinity),
    reach: { maxRange_mm: 1e9, rangeRef_mm: 1e9, reflectanceRef: 1e-9, extinction_per_mm: 0 },
    segments: false,
  }
  return beamSees(sight, 0, shape, solid.x, solid.y, new Float64Array(3))
}

function lineThroughDoor(random: RandomNumbers): Line {
  const from = [random.between(-300, 2000), random.between(-1000, 1000), random.between(-50, 2500)] as const
  const along = new Vector3(random.between(-1, 1), random.between(-1, 1), random.between(-2, 0.3)).normalize()
  return { from, along: along.toArray() }
}

interface Seen {
  readonly what: 'inside' | 'obstacle' | 'floor' | 'nothing'
  /** The true distance lies from `from` to `to`: round posts lie between prisms. */
  readonly from: number
  readonly to: number
}

function referenceScene(state: DoorState): (line: Line) => Seen {
  const floor = new ReferenceMesh(floorCorners(state.floor))
  const posts =
    state.obstacles.length === 0 ? [] : (['around', 'inside'] as const).map((prism) => new ReferenceMesh(obstacleCorners(state, prism)))
  return ({ from, along }) => {
    const [origin, direction] = [new Vector3(...from), new Vector3(...along)]
    const isUnder = floor.first(origin, new Vector3(0, 0, 1)) !== undefined
    const insides = posts.map((mesh) => mesh.around(origin) > 0)
    const toFloor = isUnder ? 0 : (floor.first(origin, direction)?.distance ?? Infinity)
    const [first = toFloor, last = toFloor] = posts.map((mesh, i) =>
      insides[i] ? 0 : Math.min(toFloor, mesh.first(origin, direction)?.distance ?? Infinity),
    )
    const what = last === 0 ? 'inside' : last === Infinity ? 'nothing' : last < toFloor ? 'obstacle' : 'floor'
    // the mesh of the floor ends after 100 m: what lies beyond 60 m is only compared as far away
    return { what, from: Math.min(first, 60_000) * (1 - 1e-9) - CLOSE_MM, to: last > 60_000 ? Infinity : last * (1 + 1e-9) + CLOSE_MM }
  }
}

function say(what: object): string {
  return JSON.stringify(what)
}
