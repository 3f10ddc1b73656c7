import { describe, expect, it } from 'vitest'
import { block, downward, fan, level, lightGrid, plainState, ranging } from '../../cases/plain-door.ts'
import { type RandomNumbers, randomNumbers } from '../../cases/random-numbers.ts'
import { randomScene } from '../../cases/random-scenes.ts'
import type { DoorState, Floor, Obstacle, PostObstacle } from '../model/door.ts'
import { floorHeight, floorPieces } from '../space/floor.ts'
import { radians } from '../space/trigonometry.ts'
import { backgrounds } from './background.ts'
import { beamsOf } from './beams.ts'

type Point = readonly [x: number, y: number, z: number]

/** The background of one line, given as a segment so that any direction is exact. */
function ofLine(from_mm: Point, to_mm: Point, state: DoorState): number {
  const beams = beamsOf(lightGrid([], 0, { planes: [{ id: 'p0', segments: [{ from_mm, to_mm }] }] }))
  return backgrounds(beams, state)[0] as number
}

function profiled(...points: readonly (readonly [y: number, z: number])[]): DoorState {
  return plainState({ floor: level(0, points) })
}

function post(changes: Partial<PostObstacle> = {}): Obstacle {
  return { shape: 'post', id: 'post', name: 'post', x_mm: 500, y_mm: 0, from_mm: 0, to_mm: 900, implied: false, radius_mm: 50, ...changes }
}

describe('the floor ends a beam', () => {
  it('H5: at 2000 mm for one from 1000 mm high at a tilt of 60 degrees (hand calculation: 1000 / cos 60)', () => {
    const sensor = downward([{ x_mm: 500, y_mm: 0, z_mm: 1000 }], {}, {}, 60)
    expect(backgrounds(beamsOf(sensor), plainState())[0]).toBeCloseTo(2000, 9)
  })
  it('where it meets the piece that lies there (hand calculation: down at 3-4-5, ramps of 1 in 4)', () => {
    const ramps = profiled([0, 0], [400, 100], [800, 100], [1200, 0])
    // falls 4 per 3 along y: from (0, 500) it reaches z = 100 - past the first ramp - at y = 300 only if the ramp is not higher there: 75
    expect(ofLine([0, 0, 500], [0, 300, 100], ramps)).toBeCloseTo((500 / (4 / 5 + (3 / 5) * 0.25)) * 1, 9) // 500 - 0.8 t = 0.25 * 0.6 t
    expect(ofLine([0, 300, 500], [0, 600, 100], ramps)).toBeCloseTo(500, 9) // on the plateau: 500 - 0.8 t = 100
    expect(ofLine([0, 900, 500], [0, 1200, 100], ramps)).toBeCloseTo(500 / 0.8, 9) // beyond the last point: z = 0 at y = 1275
    expect(ofLine([0, 1200, 500], [0, 900, 100], ramps)).toBeCloseTo(500 / (0.8 + 0.15), 9) // back up the second ramp: 500 - 0.8 t = 0.25 * 0.6 t
  })
  it('at a dock edge, steep as it is (hand calculation: 1200 mm over 1 mm is met 500 / 1200 mm after it begins)', () => {
    const dock = profiled([0, 0], [1, 1200])
    expect(ofLine([0, -1000, 500], [0, 1000, 500], dock)).toBeCloseTo(1000 + 500 / 1200, 9)
    expect(ofLine([0, 1000, 1300], [0, -1000, 1300], dock)).toBe(Infinity)
    expect(ofLine([0, 1000, 1300], [0, -1000, 900], dock)).toBeCloseTo(500 * Math.sqrt(1.04), 9) // falls 1 in 5: onto the dock at y = 500
    expect(ofLine([0, 1000, 1300], [0, -1000, 1100], dock)).toBeCloseTo(13_000 * Math.sqrt(1.01), 9) // 1 in 10: over the edge, far down
  })
  it('never, for a beam that rises, is level above it, or runs along it', () => {
    expect(ofLine([0, 0, 500], [0, 900, 501], plainState())).toBe(Infinity)
    expect(ofLine([0, 0, 500], [0, 900, 500], plainState())).toBe(Infinity)
    expect(ofLine([0, 0, 0], [700, 900, 0], plainState())).toBe(Infinity)
    expect(ofLine([0, 0, 0], [0, 400, 100], profiled([0, 0], [400, 100]))).toBe(Infinity) // up the ramp, which levels off below it
  })
  it('at once, where it starts on a bend and runs into the piece ahead, whichever way that is', () => {
    const valley = profiled([-400, 100], [0, 0], [400, 100])
    const ridge = profiled([-400, -100], [0, 0], [400, -100])
    for (const y of [-300, 300]) {
      expect(ofLine([0, 0, 0], [0, y, 0], valley)).toBe(0)
      expect(ofLine([0, 0, 0], [0, y, 300], valley)).toBe(Infinity)
      expect(ofLine([0, 0, 0], [0, y, 0], ridge)).toBe(Infinity)
      expect(ofLine([0, 0, 0], [0, y, -75], ridge)).toBeCloseTo(100 * Math.sqrt(17), 9) // along the slope to its end at (400, -100)
    }
  })
  it('first, where it dips below: all before is above, and just after it lies below, seeds 1 to 2000', () => {
    let met = 0
    for (let seed = 1; seed <= 2000; seed++) {
      const dice = randomNumbers(seed)
      const floor = randomFloor(dice)
      const pieces = floorPieces(floor)
      const from: Point = [dice.between(-3000, 3000), dice.between(-3000, 3000), dice.between(0, 800)]
      const to: Point = [dice.between(-3000, 3000), dice.between(-3000, 3000), dice.between(-500, 800)]
      const b = ofLine(from, to, plainState({ floor }))
      const length = Math.sqrt((to[0] - from[0]) ** 2 + (to[1] - from[1]) ** 2 + (to[2] - from[2]) ** 2)
      const height = (t: number) => {
        const [x, y, z] = [0, 1, 2].map(
          (axis) => (from[axis] as number) + (((to[axis] as number) - (from[axis] as number)) * t) / length,
        ) as [number, number, number]
        return z - floorHeight(pieces, x, y)
      }
      const end = Math.min(b, 20_000)
      const before = Array.from({ length: 200 }, (_, k) => height((end * k) / 200))
      if (b > 0) expect(Math.min(...before), `seed ${seed}`).toBeGreaterThan(-1e-6)
      if (b === 0) expect(height(0)).toBeLessThan(0)
      else if (b < Infinity) expect(height(b + 1e-3), `seed ${seed}`).toBeLessThan(0)
      if (b > 0 && b < Infinity) met++
    }
    expect(met).toBeGreaterThan(500)
  })
})

function randomFloor(dice: RandomNumbers): Floor {
  let y_mm = dice.between(-3000, 0)
  const profile = Array.from({ length: dice.whole(1, 8) }, () => {
    y_mm += dice.chance(0.3) ? dice.between(0.01, 2) : dice.between(50, 1500)
    return { y_mm, z_mm: dice.between(-200, 200) }
  })
  return { profile, slopeX: dice.chance(0.5) ? 0 : dice.between(-0.2, 0.2), tolerance_mm: 0 }
}

describe('obstacles end a beam', () => {
  it('at their nearest face (hand calculation: a box of 100 about (500, 0), a post of radius 50 there, beams along x and at 3-4-5)', () => {
    const boxed = plainState({ obstacles: [block()] })
    const posted = plainState({ obstacles: [post()] })
    for (const state of [boxed, posted]) {
      expect(ofLine([0, 0, 300], [900, 0, 300], state)).toBe(450)
      expect(ofLine([1000, 0, 300], [0, 0, 300], state)).toBe(450)
    }
    expect(ofLine([50, -300, 300], [450, 0, 300], boxed)).toBe(500) // onto the corner-near face at (450, 0)
    expect(ofLine([500, 0, 1000], [500, 0, 0], posted)).toBe(100) // onto the post's top
    expect(ofLine([0, 30, 300], [900, 30, 300], posted)).toBeCloseTo(460, 9) // 30 off the axis: half a chord of 40
  })
  it('not where the beam only grazes a face, an edge, a corner or a round side', () => {
    const state = plainState({ obstacles: [block(), post({ x_mm: 2000 })] })
    const grazes: readonly (readonly [from: Point, to: Point])[] = [
      [
        [0, 50, 300],
        [900, 50, 300],
      ], // along a side
      [
        [450, -500, 300],
        [450, 500, 300],
      ],
      [
        [450, 0, 3000],
        [450, 0, 100],
      ],
      [
        [0, 0, 2500],
        [900, 0, 2500],
      ], // along the top
      [
        [350, 0, 300],
        [450, -100, 300],
      ], // past the corner at (450, -50)
      [
        [400, -200, 300],
        [600, 0, 300],
      ], // and that at (550, -50)
      [
        [1900, 50, 300],
        [2100, 50, 300],
      ], // along the round side
      [
        [1950, -50, 3000],
        [1950, 50, 2000],
      ],
      [
        [1900, 0, 900],
        [2100, 0, 900],
      ], // along the post's top
    ]
    for (const [from, to] of grazes) expect(ofLine(from, to, state), from.join()).toBe(ofLine(from, to, plainState()))
  })
  it('at once where the beam starts inside, and not where it starts on a face and leaves', () => {
    const state = plainState({ obstacles: [block()] })
    expect(ofLine([500, 0, 300], [900, 0, 300], state)).toBe(0)
    expect(ofLine([550, 0, 300], [900, 0, 300], state)).toBe(Infinity)
    expect(ofLine([550, 0, 300], [500, 0, 300], state)).toBe(0) // on the face, but into the box
    expect(ofLine([550, -20, 300], [550, 900, 300], state)).toBe(Infinity)
    expect(ofLine([550, 0, -300], [900, 0, -300], plainState())).toBe(0) // under the floor
  })
  it('at once neither for a sensor on the face of a wall whose measures have no exact binary form, nor along that face', () => {
    for (let tenth = 20_000; tenth < 20_400; tenth++)
      for (const thickness_mm of [100, 124.3, 33.3]) {
        const width_mm = tenth / 10
        const wall = block({ x_mm: width_mm + thickness_mm / 2, size_mm: [thickness_mm, 4000], to_mm: 3000 })
        const pose = { x_mm: width_mm, y_mm: 0, z_mm: 2000, yaw_rad: 0, tilt_rad: radians(20), roll_rad: 0 }
        const away = backgrounds(beamsOf(ranging([fan(-60, 0, 7)], { pose })), plainState({ obstacles: [wall] }))
        const alone = backgrounds(beamsOf(ranging([fan(-60, 0, 7)], { pose })), plainState())
        expect(away, `${width_mm} ${thickness_mm}`).toEqual(alone)
        const into = backgrounds(beamsOf(ranging([fan(10, 60, 7)], { pose })), plainState({ obstacles: [wall] }))
        expect(Math.max(...into)).toBeLessThan(1e-6)
      }
  })
  it('first, where the beam comes into one of them or below the floor: nothing before, something just after, in random scenes, seeds 1 to 600', () => {
    let met = 0
    const wrong: string[] = []
    for (let seed = 1; seed <= 600; seed++) {
      const door = randomScene(seed, { columns: 60, rows: 40 })
      const [state] = door.states as [DoorState]
      const [sensor] = door.sensors
      if (sensor === undefined || sensor.kind === 'zone-only') continue
      const beams = beamsOf(sensor)
      const found = backgrounds(beams, state)
      const depthAt = depthIn(state)
      for (let i = 0; i < beams.count; i++) {
        const at = (t: number): Point => [
          (beams.originX[i] as number) + t * (beams.directionX[i] as number),
          (beams.originY[i] as number) + t * (beams.directionY[i] as number),
          (beams.originZ[i] as number) + t * (beams.directionZ[i] as number),
        ]
        const b = found[i] as number
        const end = Math.min(b, 8000)
        const before = Array.from({ length: 150 }, (_, k) => depthAt(at((end * (k + 1)) / 151)))
        if (b > 0 && Math.max(...before) > 1e-5) wrong.push(`seed ${seed}, beam ${i}: passes through something before ${b}`)
        if (b === Infinity) continue
        const after = [1e-4, 1e-3, 1e-2, 0.1, 1].map((step) => depthAt(at(b + step)))
        if (Math.max(...after) <= 0) wrong.push(`seed ${seed}, beam ${i}: nothing after ${b}`)
        met++
      }
    }
    expect(wrong).toEqual([])
    expect(met).toBeGreaterThan(2000)
  })
  it('all alike in any order, none sooner for a smaller one, and none for one that is left out, seeds 1 to 300', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const door = randomScene(seed, { columns: 60, rows: 40 })
      const [state] = door.states as [DoorState]
      const [sensor] = door.sensors
      if (sensor === undefined || sensor.kind === 'zone-only') continue
      const beams = beamsOf(sensor)
      const found = backgrounds(beams, state)
      expect(backgrounds(beams, { ...state, obstacles: [...state.obstacles].reverse() })).toEqual(found)
      for (const obstacle of state.obstacles) {
        const rest = { ...state, obstacles: state.obstacles.filter((o) => o !== obstacle) }
        const without = backgrounds(beams, state, obstacle)
        expect(without).toEqual(backgrounds(beams, rest))
        const smaller = backgrounds(beams, { ...rest, obstacles: [...rest.obstacles, shrunken(obstacle)] })
        expect(found.every((b, i) => b <= (smaller[i] as number) + 1e-9)).toBe(true)
        expect(smaller.every((b, i) => b <= (without[i] as number))).toBe(true)
      }
    }
  })
})

function shrunken(obstacle: Obstacle): Obstacle {
  const low = { ...obstacle, to_mm: obstacle.to_mm - 0.2 * (obstacle.to_mm - obstacle.from_mm) }
  return low.shape === 'post'
    ? { ...low, radius_mm: 0.8 * low.radius_mm }
    : { ...low, size_mm: [0.8 * low.size_mm[0], 0.7 * low.size_mm[1]] }
}

/** How deep a point lies in an obstacle or below the floor: above 0 inside. */
function depthIn({ obstacles, floor }: DoorState): (point: Point) => number {
  const pieces = floorPieces(floor)
  return ([x, y, z]) => Math.max(floorHeight(pieces, x, y) - z, ...obstacles.map((o) => depthInObstacle(o, x, y, z)))
}

function depthInObstacle(o: Obstacle, x: number, y: number, z: number): number {
  const upward = Math.min(z - o.from_mm, o.to_mm - z)
  const [px, py] = [x - o.x_mm, y - o.y_mm]
  if (o.shape === 'post') return Math.min(upward, o.radius_mm - Math.sqrt(px * px + py * py))
  const [c, s] = [Math.cos(o.yaw_rad), Math.sin(o.yaw_rad)]
  return Math.min(upward, o.size_mm[0] / 2 - Math.abs(px * c + py * s), o.size_mm[1] / 2 - Math.abs(py * c - px * s))
}
