import { describe, expect, it } from 'vitest'
import { block, bodyOf, box, cylinder, level, plainDoor, plainState, plainZone } from '../../cases/plain-door.ts'
import { type RandomNumbers, randomNumbers } from '../../cases/random-numbers.ts'
import { randomScene, type SceneSize } from '../../cases/random-scenes.ts'
import type { Posture } from '../model/body.ts'
import type { Door, Obstacle } from '../model/door.ts'
import { shapeOf } from '../seeing/shape.ts'
import { floorHeight, floorPieces } from '../space/floor.ts'
import { radians } from '../space/trigonometry.ts'
import { isTaken } from './free-map.ts'
import { countCells, gridOf, hasCell } from './grid.ts'
import { coverageMaps } from './maps.ts'
import { stancesOf } from './scene.ts'

/** A random scene without sensors, full of obstacles. */
function crowded(seed: number, size: SceneSize): Door {
  const door = randomScene(seed, size)
  const more = [1, 2, 3].flatMap((k) => randomScene(seed + k * 100_000, size).states[0]?.obstacles ?? [])
  return { ...door, sensors: [], states: door.states.map((state) => ({ ...state, obstacles: [...state.obstacles, ...more] })) }
}

function compared(door: Door): { readonly taken: number; readonly wrong: readonly string[] } {
  const [zone = plainZone(), state = plainState()] = [door.zones[0], door.states[0]]
  const grid = gridOf(zone)
  const floor = floorPieces(state.floor)
  const { free } = coverageMaps(door, zone, state)
  const wrong: string[] = []
  let taken = 0
  for (const [s, { posture, yaw_rad }] of stancesOf(door, zone).stances.entries())
    for (let row = 0; row < grid.rows; row++)
      for (let column = 0; column < 32 * grid.words; column++) {
        const [x, y] = [grid.x0 + (column + 0.5) * grid.pitch, grid.y0 + (row + 0.5) * grid.pitch]
        const expected = column < grid.columns && !isTaken(shapeOf(posture, yaw_rad, 1, 0), state.obstacles, floor, x, y)
        if (!expected) taken++
        if (hasCell(free[s] ?? new Int32Array(), grid, row, column) !== expected) wrong.push(`${door.name}, row ${row}, column ${column}`)
      }
  return { taken, wrong: wrong.slice(0, 1) }
}

describe('the map of free placements', () => {
  it.each<[string, SceneSize]>([
    ['90 x 60 cells', { columns: 90, rows: 60 }],
    ['one row', { columns: 500, rows: 1 }],
    ['one column', { columns: 1, rows: 500 }],
    ['a pitch of 0.1 mm', { columns: 40, rows: 30, pitch_mm: 0.1 }],
  ])('equals the predicate asked at every cell, on grids of %s, 150 random scenes from seed 1', (_, size) => {
    const found = Array.from({ length: 150 }, (__, i) => compared(crowded(i + 1, size)))
    expect(found.flatMap(({ wrong }) => wrong)).toEqual([])
    expect(found.reduce((sum, { taken }) => sum + taken, 0)).toBeGreaterThan(3000)
  })
  it('is empty of a body that stands inside of something everywhere, and full without obstacles', () => {
    const zone = plainZone({ xMin_mm: 0, xMax_mm: 700, yMin_mm: 0, yMax_mm: 400, pitch_mm: 10 })
    const wall = plainState({ obstacles: [block({ size_mm: [5000, 5000] })] })
    const count = (state: typeof wall) => countCells(coverageMaps(plainDoor({ states: [state] }), zone, state).free[0] ?? new Int32Array())
    expect(count(wall)).toBe(0)
    expect(count(plainState())).toBe(70 * 40)
  })
  it('ignores what stands above or below the body, on a floor that rises too (hand calculation: 10 % along x, body 200, box from 250)', () => {
    const zone = plainZone({ xMin_mm: 0, xMax_mm: 1000, yMin_mm: -10, yMax_mm: 10, pitch_mm: 20 })
    const beamAcross = block({ x_mm: 500, size_mm: [2000, 100], from_mm: 250, to_mm: 300 })
    const state = plainState({ floor: { ...level(), slopeX: 0.1 }, obstacles: [beamAcross] })
    const door = plainDoor({ states: [state], bodies: [bodyOf([box(100, 100, 200)])] })
    // its top reaches 250 where 0.1 x = 50: centres 10, 30, ... 490 stay below, 25 of 50
    expect(countCells(coverageMaps(door, zone, state).free[0] ?? new Int32Array())).toBe(25)
  })
})

const flat = floorPieces(level())
const taken = (posture: Posture, obstacle: Obstacle, x: number, y: number) =>
  isTaken(shapeOf(posture, posture.shape === 'box' ? posture.yawFrom_rad : 0, 1, 0), [obstacle], flat, x, y)

function post(radius_mm: number, to_mm = 900): Obstacle {
  return { shape: 'post', id: 'post', name: 'post', x_mm: 0, y_mm: 0, from_mm: 0, to_mm, implied: false, radius_mm }
}

describe('a placement is taken where the body overlaps an obstacle in space (hand calculation)', () => {
  it('two boxes that touch do not overlap, in plan and in height', () => {
    const at = block({ x_mm: 0, size_mm: [100, 200], from_mm: 0, to_mm: 300 })
    const body = box(60, 40, 500)
    expect([-80, -79.999, 79.999, 80].map((x) => taken(body, at, x, 0))).toEqual([false, true, true, false])
    expect([-120, -119.999, 119.999, 120].map((y) => taken(body, at, 0, y))).toEqual([false, true, true, false])
    const above = block({ x_mm: 0, from_mm: 500, to_mm: 600 })
    expect([500, 500.001].map((c) => taken(box(60, 40, c), above, 0, 0))).toEqual([false, true])
    const below = block({ x_mm: 0, from_mm: -300, to_mm: 0 })
    expect(taken(body, below, 0, 0)).toBe(false)
  })
  it('a box on its corner reaches half its diagonal (3-4-5: 300 x 400 turned so that a corner leads reaches 250)', () => {
    const at = block({ x_mm: 0, size_mm: [100, 5000], from_mm: 0, to_mm: 300 })
    const corner = { ...box(300, 400, 500), yawFrom_rad: -Math.atan2(4, 3), yawTo_rad: -Math.atan2(4, 3) } as Posture
    expect([299.999, 300.001].map((x) => taken(corner, at, x, 0))).toEqual([true, false])
  })
  it('a disc clears a corner at its radius (3-4-5: corner at (50, 100), disc of radius 50 at 30 and 40 from it)', () => {
    const at = block({ x_mm: 0, size_mm: [100, 200], from_mm: 0, to_mm: 300 })
    expect([0, 0.001].map((by) => taken(cylinder(50, 500), at, 80 - by, 140 - by))).toEqual([false, true])
    expect([100, 99.999].map((x) => taken(cylinder(50, 500), at, x, 0))).toEqual([false, true])
  })
  it('two discs clear each other at the sum of their radii (3-4-5: 30 and 20, 30 and 40 apart)', () => {
    expect([0, 0.001].map((by) => taken(cylinder(30, 500), post(20), 30 - by, 40 - by))).toEqual([false, true])
  })
  it('a body against a wall of 2000.7 mm touches it, whatever the wall measures', () => {
    for (let tenth = 20_000; tenth < 20_400; tenth++) {
      const [x, half] = [tenth / 10, 62.3]
      const wall = block({ x_mm: x + 33.3 / 2, size_mm: [33.3, 4000] })
      for (const body of [box(2 * half, 100, 500), cylinder(half, 500)]) {
        expect(taken(body, wall, x - half, 0), `${x}`).toBe(false)
        expect(taken(body, wall, x - half + 0.001, 0), `${x}`).toBe(true)
      }
    }
  })
})

describe('overlap', () => {
  const randomPosture = (dice: RandomNumbers) =>
    dice.chance(0.4)
      ? cylinder(dice.between(20, 300), 500)
      : box(dice.between(20, 600), dice.between(20, 600), 500, dice.chance(0.3) ? 0 : dice.between(-180, 180))
  /** An obstacle in place of the body. */
  const asObstacle = (posture: Posture): Obstacle =>
    posture.shape === 'cylinder'
      ? post(posture.radius_mm, posture.height_mm)
      : block({ x_mm: 0, y_mm: 0, to_mm: posture.c_mm, size_mm: [posture.a_mm, posture.b_mm], yaw_rad: posture.yawFrom_rad })

  it('is the same whichever of two is the body and whichever the obstacle, and when both are turned together, seeds 1 to 3000', () => {
    let both = 0
    for (let seed = 1; seed <= 3000; seed++) {
      const dice = randomNumbers(seed)
      const [one, other] = [randomPosture(dice), randomPosture(dice)]
      const [x, y] = [dice.between(-500, 500), dice.between(-500, 500)]
      const overlaps = taken(one, asObstacle(other), x, y)
      if (overlaps) both++
      expect(taken(other, asObstacle(one), -x, -y), `seed ${seed}`).toBe(overlaps)
      const [c, s, turn] = [Math.cos(0.7), Math.sin(0.7), 0.7]
      const turned = (p: Posture): Posture =>
        p.shape === 'box' ? { ...p, yawFrom_rad: p.yawFrom_rad + turn, yawTo_rad: p.yawTo_rad + turn } : p
      expect(taken(turned(one), asObstacle(turned(other)), x * c - y * s, x * s + y * c), `seed ${seed}`).toBe(overlaps)
    }
    expect(both).toBeGreaterThan(500)
  })
  it('is there exactly when some point lies in both: sampled, and grown or shrunk by half a millimetre, seeds 1 to 300', () => {
    const wrong: string[] = []
    for (let seed = 1; seed <= 300; seed++) {
      const dice = randomNumbers(seed)
      const [one, other] = [randomPosture(dice), randomPosture(dice)]
      const [x, y] = [dice.between(-500, 500), dice.between(-500, 500)]
      let common = false
      for (let k = 0; k < 4000 && !common; k++) {
        const [px, py] = [dice.between(-600, 600), dice.between(-600, 600)]
        common = depth(other, px, py) > 0 && depth(one, px - x, py - y) > 0
      }
      if (common && !taken(one, asObstacle(other), x, y)) wrong.push(`seed ${seed}: a point lies in both`)
      // a common point is searched downhill: the sum of how far it is outside of each has its least value 0 only there
      if (!common && taken(grown(one, -0.5), asObstacle(grown(other, -0.5)), x, y) && apart(one, other, x, y) > 0.01)
        wrong.push(`seed ${seed}: no point lies in both`)
    }
    expect(wrong).toEqual([])
  })
})

function grown(posture: Posture, by: number): Posture {
  return posture.shape === 'cylinder'
    ? { ...posture, radius_mm: posture.radius_mm + by }
    : { ...posture, a_mm: posture.a_mm + 2 * by, b_mm: posture.b_mm + 2 * by }
}

/** How deep a point of the plan lies in a body about the origin; below 0 outside. */
function depth(posture: Posture, x: number, y: number): number {
  if (posture.shape === 'cylinder') return posture.radius_mm - Math.sqrt(x * x + y * y)
  const [c, s] = [Math.cos(posture.yawFrom_rad), Math.sin(posture.yawFrom_rad)]
  return Math.min(posture.a_mm / 2 - Math.abs(x * c + y * s), posture.b_mm / 2 - Math.abs(y * c - x * s))
}

/** Least of how far a point is outside of one or the other, by steps downhill from many starts; at most 0 where they overlap. */
function apart(one: Posture, other: Posture, x: number, y: number): number {
  const outside = ([px, py]: readonly [number, number]) => Math.max(-depth(other, px, py), -depth(one, px - x, py - y))
  let least = Infinity
  for (let k = 0; k < 16; k++) {
    let [px, py] = [(x * k) / 15, (y * k) / 15]
    for (let step = 256; step > 1e-3; ) {
      const moves = Array.from(
        { length: 16 },
        (_, m) => [px + step * Math.cos(radians(22.5 * m)), py + step * Math.sin(radians(22.5 * m))] as const,
      )
      const best = moves.reduce((a, b) => (outside(b) < outside(a) ? b : a))
      if (outside(best) < outside([px, py])) [px, py] = best
      else step /= 2
    }
    least = Math.min(least, outside([px, py]))
  }
  return least
}

describe('the floor under a body', () => {
  it('is the one under its centre, whatever its corners stand on (method, section 3; hand calculation: a step of 300 at y = 0)', () => {
    const step = floorPieces(
      level(0, [
        [0, 0],
        [1e-3, 300],
      ]),
    )
    expect(floorHeight(step, 0, 1)).toBe(300)
    const shelf = block({ x_mm: 0, from_mm: 700, to_mm: 800 })
    const shape = shapeOf(box(100, 100, 500), 0, 1, 0)
    expect([-1, 1].map((y) => isTaken(shape, [shelf], step, 0, y))).toEqual([false, true])
  })
})
