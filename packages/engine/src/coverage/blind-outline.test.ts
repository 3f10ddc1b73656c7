import { FillRule, unionD } from 'clipper2-ts'
import polygonClipping from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import { bodyOf, box, downward, plainDoor, plainZone } from '../../cases/plain-door.ts'
import { randomDoor } from '../../cases/random-doors.ts'
import { randomNumbers } from '../../cases/random-numbers.ts'
import type { DoorState } from '../model/door.ts'
import type { BlindRegion, PointMm } from '../model/finding.ts'
import { blindByPosture, blindRegions, CIRCLE_WITHIN_MM, signedArea } from './blind-outline.ts'
import { exactTrees } from './exact-trees.ts'
import { eachLeaf } from './open-region.ts'
import { OPEN, type Rectangle, SPLIT, type TileTree } from './tile-tree.ts'

type Trees = Parameters<typeof blindRegions>[0]
const SEEN = 0

/** One tree over one rectangle, as if it were the answer of one posture. */
function treesOf(root: Rectangle, ...trees: TileTree[]): Trees {
  return {
    roots: [root],
    smallest_mm: 1,
    slices: trees.map((tree) => ({ body: 'b', posture: 0, yawFrom_rad: 0, yawTo_rad: 0, trees: [tree] })),
  }
}

/** A tree whose open leaves are the cells of a square of 2^depth by 2^depth for which `isOpen` holds. */
function treeOfCells(root: Rectangle, depth: number, isOpen: (column: number, row: number) => boolean): TileTree {
  const grow = (tile: Rectangle, level: number): number[] => {
    if (level === 2 * depth) {
      const cell = (root.xMax - root.xMin) / 2 ** depth
      return [isOpen(Math.round((tile.xMin - root.xMin) / cell), Math.round((tile.yMin - root.yMin) / cell)) ? OPEN : SEEN]
    }
    const wide = tile.xMax - tile.xMin >= tile.yMax - tile.yMin
    const middle = wide ? (tile.xMin + tile.xMax) / 2 : (tile.yMin + tile.yMax) / 2
    const [low, high] = wide
      ? [
          { ...tile, xMax: middle },
          { ...tile, xMin: middle },
        ]
      : [
          { ...tile, yMax: middle },
          { ...tile, yMin: middle },
        ]
    return [SPLIT, ...grow(low, level + 1), ...grow(high, level + 1)]
  }
  return grow(root, 0)
}

const SQUARE: Rectangle = { xMin: -3, xMax: 13, yMin: 5, yMax: 21 }

function openTiles({ roots, slices }: Trees): readonly Rectangle[] {
  const tiles: Rectangle[] = []
  for (const [r, root] of roots.entries())
    for (const { trees } of slices) eachLeaf(trees[r] as TileTree, root, (leaf, tile) => leaf === OPEN && tiles.push(tile))
  return tiles
}

const totalArea = (regions: readonly BlindRegion[]) => regions.reduce((sum, { area_mm2 }) => sum + area_mm2, 0)
const cornersOf = ({ xMin, xMax, yMin, yMax }: Rectangle): [number, number][] => [
  [xMin, yMin],
  [xMax, yMin],
  [xMax, yMax],
  [xMin, yMax],
]

/** Area of the union, by two libraries. */
function byLibraries(tiles: readonly Rectangle[]): readonly [number, number] {
  const clipped = unionD(
    tiles.map((tile) => cornersOf(tile).map(([x, y]) => ({ x, y }))),
    [],
    FillRule.NonZero,
    8,
  )
  const clipperArea = clipped.reduce((sum, path) => sum + signedArea(path.map(({ x, y }): PointMm => [x, y])), 0)
  const [first, ...others] = tiles.map((tile) => [[...cornersOf(tile)]])
  const joined = first === undefined ? [] : polygonClipping.union(first as never, ...(others as never[]))
  const ringArea = (ring: readonly (readonly [number, number])[]) => Math.abs(signedArea(ring.slice(0, -1)))
  const area = joined.reduce(
    (sum, [outer = [], ...holes]) => sum + ringArea(outer) - holes.reduce((cut, hole) => cut + ringArea(hole), 0),
    0,
  )
  return [clipperArea, area]
}

/** How many sets of tiles hang together by edges: every pair compared. */
function partsOf(tiles: readonly Rectangle[]): number {
  const left = new Set(tiles)
  let parts = 0
  for (const first of tiles) {
    if (!left.delete(first)) continue
    parts++
    const waiting = [first]
    for (let tile = waiting.pop(); tile; tile = waiting.pop())
      for (const other of left) {
        const acrossX = Math.min(tile.xMax, other.xMax) - Math.max(tile.xMin, other.xMin)
        const acrossY = Math.min(tile.yMax, other.yMax) - Math.max(tile.yMin, other.yMin)
        if (acrossX >= 0 && acrossY >= 0 && acrossX + acrossY > 0) {
          left.delete(other)
          waiting.push(other)
        }
      }
  }
  return parts
}

function mustAgree(trees: Trees, name: string): void {
  const regions = blindRegions(trees)
  const mine = totalArea(regions)
  for (const theirs of byLibraries(openTiles(trees))) expect(Math.abs(mine - theirs), name).toBeLessThanOrEqual(1e-6 * Math.max(1, mine))
  expect({ name, regions: regions.length }).toEqual({ name, regions: partsOf(openTiles(trees)) })
  const byRings = regions.reduce((sum, { rings }) => sum + rings.reduce((part, ring) => part + signedArea(ring), 0), 0)
  expect(Math.abs(byRings - mine), name).toBeLessThanOrEqual(1e-9 * Math.max(1, mine))
}

describe('the blind region as polygons', () => {
  it('has the area that two polygon libraries find, in parts that hang together by edges, on 200 random trees of one to three postures (seeds 1 to 200)', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const random = randomNumbers(seed)
      const share = random.between(0.05, 0.95)
      const trees = Array.from({ length: random.whole(1, 3) }, () => treeOfCells(SQUARE, 4, () => random.chance(share)))
      mustAgree(treesOf(SQUARE, ...trees), `seed ${seed}`)
    }
  })
  it('has them on random doors too, floors that bend among them (seeds 1 to 60)', () => {
    let regions = 0
    for (let seed = 1; seed <= 60; seed++) {
      const door = randomDoor(seed)
      for (const zone of door.zones.slice(0, 1))
        for (const state of door.states.slice(0, 1)) {
          if (zone.purpose === 'must-not-see') continue
          const trees = exactTrees(door, zone, state)
          if (openTiles(trees).length > 1500) continue // the libraries would take minutes
          mustAgree(trees, `door ${seed}`)
          regions += blindRegions(trees).length
        }
    }
    expect(regions).toBeGreaterThan(20)
  })
  it('is told of each posture alone too, its slices of yaw together: what all of them have is the whole', () => {
    const slice = (posture: number, isOpen: (c: number, r: number) => boolean) => ({
      body: 'b',
      posture,
      yawFrom_rad: 0,
      yawTo_rad: 0,
      trees: [treeOfCells(SQUARE, 2, isOpen)],
    })
    const trees: Trees = {
      roots: [SQUARE],
      smallest_mm: 1,
      slices: [slice(0, (c) => c === 0), slice(1, (_, r) => r === 0), slice(0, (c) => c === 3)],
    }
    expect(blindByPosture(trees).map(({ posture, regions }) => [posture, regions.map(({ area_mm2 }) => area_mm2)])).toEqual([
      [0, [64, 64]],
      [1, [64]],
    ])
    expect(blindRegions(trees).map(({ area_mm2 }) => area_mm2)).toEqual([160])
  })
  it('goes around a hole the other way, and keeps tiles apart that touch at a corner', () => {
    const [frame, ...none] = blindRegions(
      treesOf(
        SQUARE,
        treeOfCells(SQUARE, 2, (c, r) => c === 0 || r === 0 || c === 3 || r === 3),
      ),
    )
    expect(none).toEqual([])
    expect(frame?.rings.map(signedArea)).toEqual([256, -64])
    const chess = blindRegions(
      treesOf(
        SQUARE,
        treeOfCells(SQUARE, 2, (c, r) => (c + r) % 2 === 0),
      ),
    )
    expect(chess.map(({ rings, area_mm2 }) => [rings.length, rings[0]?.length, area_mm2])).toEqual(
      Array.from({ length: 8 }, () => [1, 4, 16]),
    )
  })
  it("is four corners where two rows of beams cross, each as large as what the body's half leaves of it (closed form)", () => {
    // beams straight down every 20 mm along both middle lines of a square of 1000: a box of 200 is seen up to 100 mm from a line
    const along = Array.from({ length: 61 }, (_, i) => 20 * i - 100)
    const places = [
      ...along.map((x_mm) => ({ x_mm, y_mm: 0, z_mm: 2000 })),
      ...along.map((x_mm) => ({ x_mm: 500, y_mm: x_mm - 500, z_mm: 2000 })),
    ]
    const zone = plainZone({ xMin_mm: 0, xMax_mm: 1000, yMin_mm: -500, yMax_mm: 500, pitch_mm: 25 })
    const door = plainDoor({ sensors: [downward(places)], zones: [zone], bodies: [bodyOf([box(200, 200, 500)])] })
    const regions = blindRegions(exactTrees(door, zone, door.states[0] as DoorState))
    expect(regions).toHaveLength(4)
    for (const { area_mm2, circle, rings } of regions) {
      expect(rings).toHaveLength(1)
      expect(area_mm2).toBeGreaterThanOrEqual(400 * 400 - 1e-6)
      expect(area_mm2).toBeLessThanOrEqual(403.125 * 403.125) // within one smallest tile of the rim
      expect(circle.radius_mm + CIRCLE_WITHIN_MM).toBeGreaterThanOrEqual(200)
      expect(circle.radius_mm).toBeLessThanOrEqual(403.125 / 2 + 1e-9)
    }
  })
  it('is nothing where all is seen', () => {
    expect(blindRegions(treesOf(SQUARE, [SEEN]))).toEqual([])
  })
})

describe('the largest circle', () => {
  const radiusOf = (isOpen: (c: number, r: number) => boolean, depth = 4) =>
    blindRegions(treesOf(SQUARE, treeOfCells(SQUARE, depth, isOpen)))[0]?.circle.radius_mm ?? 0
  const within = (radius: number, exact: number) => {
    expect(radius).toBeLessThanOrEqual(exact + 1e-9)
    expect(radius).toBeGreaterThanOrEqual(exact - CIRCLE_WITHIN_MM)
  }
  it('is that of a square, of a strip, of a frame and of an L in closed form', () => {
    within(
      radiusOf(() => true),
      8,
    )
    within(
      radiusOf((_, r) => r < 4),
      2,
    )
    within(
      radiusOf((c, r) => c < 2 || c > 13 || r < 2 || r > 13),
      2 * (2 - Math.SQRT2),
    ) // in a corner of the frame: touches two sides and the inner corner
    within(
      radiusOf((c, r) => c < 8 || r < 8),
      16 * (2 - Math.SQRT2) * 0.5,
    ) // of an L with legs of 8: touches the outer sides and the inner corner
  })
  it('lies inside of the region, and no circle around 400 random points is larger by more than it says (seeds 1 to 40)', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const random = randomNumbers(seed)
      const share = random.between(0.4, 0.95)
      for (const { circle, rings } of blindRegions(
        treesOf(
          SQUARE,
          treeOfCells(SQUARE, 4, () => random.chance(share)),
        ),
      )) {
        expect(clear(rings, circle.x_mm, circle.y_mm)).toBeCloseTo(circle.radius_mm, 9)
        for (let i = 0; i < 400; i++)
          expect(clear(rings, random.between(SQUARE.xMin, SQUARE.xMax), random.between(SQUARE.yMin, SQUARE.yMax))).toBeLessThanOrEqual(
            circle.radius_mm + CIRCLE_WITHIN_MM,
          )
      }
    }
  })
})

/** Slow and obvious: by winding, and by the distance to each edge as a stretch. */
function clear(rings: readonly (readonly PointMm[])[], x: number, y: number): number {
  let winding = 0
  let nearest = Infinity
  for (const ring of rings)
    for (const [i, [ax, ay]] of ring.entries()) {
      const [bx, by] = ring[(i + 1) % ring.length] as PointMm
      winding += Math.atan2((ax - x) * (by - y) - (ay - y) * (bx - x), (ax - x) * (bx - x) + (ay - y) * (by - y))
      const along = Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2)))
      nearest = Math.min(nearest, Math.hypot(ax + along * (bx - ax) - x, ay + along * (by - ay) - y))
    }
  return Math.abs(winding) > 1 ? nearest : -nearest
}
