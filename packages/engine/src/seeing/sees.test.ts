import { describe, expect, it } from 'vitest'
import { bodyOf, box, cylinder, downward, lightGrid, plainDoor } from '../../cases/plain-door.ts'
import { type RandomNumbers, randomNumbers } from '../../cases/random-numbers.ts'
import { randomScene } from '../../cases/random-scenes.ts'
import { countedFields, fieldSight } from '../coverage/scene.ts'
import type { Posture } from '../model/body.ts'
import type { Door } from '../model/door.ts'
import { floorHeight } from '../space/floor.ts'
import { beamSees, type Sight } from './sees.ts'
import { type Shape, shapeOf } from './shape.ts'

/** What the one field of a door sees of its one body. */
function subjectOf(door: Door): { readonly sight: Sight; readonly shape: Shape } {
  const [zone] = door.zones
  const [state] = door.states
  const [body] = door.bodies
  const [posture] = body?.postures ?? []
  const [counted] = zone ? countedFields(door, zone) : []
  if (!state || !body || !posture || !counted) return expect.fail('the door lacks something')
  const yaw_rad = posture.shape === 'box' ? posture.yawFrom_rad : 0
  return { sight: fieldSight(door, state, counted).sight, shape: shapeOf(posture, yaw_rad, body.reflectance, counted.sensor.spotRadius_mm) }
}

const scratch = new Float64Array(3)

describe('whether a beam sees a body', () => {
  it('follows from the convex distance to its skin along the beam, with every condition of the method, in random scenes, seeds 1 to 300', () => {
    const wrong: string[] = []
    const tally = { seen: 0, missed: 0, barred: 0, close: 0 }
    for (let seed = 1; seed <= 300; seed++) {
      const door = randomScene(seed, { columns: 60, rows: 40 })
      const { sight, shape } = subjectOf(door)
      const dice = randomNumbers(seed + 1_000_000)
      const [zone] = door.zones
      if (!zone) continue
      for (let i = 0; i < sight.beams.count; i++)
        for (let k = 0; k < 6; k++) {
          const [x, y] =
            k === 0 ? placeOnBeam(dice, sight, i) : [dice.between(zone.xMin_mm, zone.xMax_mm), dice.between(zone.yMin_mm, zone.yMax_mm)]
          const expected = derived(sight, i, shape, x, y)
          tally[expected]++
          if (expected === 'close') continue
          if (beamSees(sight, i, shape, x, y, scratch) !== (expected === 'seen'))
            wrong.push(`seed ${seed}, beam ${i} at ${x}, ${y}: ${expected}`)
        }
    }
    expect(wrong).toEqual([])
    for (const count of [tally.seen, tally.missed, tally.barred]) expect(count).toBeGreaterThan(300)
    expect(tally.close).toBeLessThan(tally.seen)
  })

  it('is no for an origin inside of it or on its skin, and for a body behind (hand calculation)', () => {
    const at = (z_mm: number) => subjectOf(plainDoor({ sensors: [downward([{ x_mm: 500, y_mm: 0, z_mm }])] }))
    const seesFrom = (z_mm: number) => {
      const { sight, shape } = at(z_mm)
      return beamSees(sight, 0, shape, 500, 0, scratch)
    }
    expect([501, 500, 499, 100].map(seesFrom)).toEqual([true, false, false, false])
    const upward = subjectOf(plainDoor({ sensors: [downward([{ x_mm: 500, y_mm: 0, z_mm: 600 }], {}, {}, 180)] }))
    expect(beamSees(upward.sight, 0, upward.shape, 500, 0, scratch)).toBe(false)
  })

  it('is no for a graze along a face, and yes a thousandth of a millimetre further (hand calculation)', () => {
    const { sight, shape } = subjectOf(plainDoor())
    expect([450, 450.001, 550, 549.999].map((x) => beamSees(sight, 0, shape, x, 0, scratch))).toEqual([false, true, false, true])
    const round = subjectOf(plainDoor({ bodies: [bodyOf([cylinder(50, 500)])] }))
    expect([450, 450.001, 550, 549.999].map((x) => beamSees(round.sight, 0, round.shape, x, 0, scratch))).toEqual([
      false,
      true,
      false,
      true,
    ])
  })

  it('at an edge uses the smaller cosine (hand calculation: a beam at 3-4-5 onto the edge of the top, 1000 mm away)', () => {
    // down 800 and along y 600: cosines 0.8 on the top and 0.6 on the side; brightness 0.06 needs a range of 1000 / sqrt(0.6) = 1290.99
    const edge = (rangeRef_mm: number) => {
      const sensor = downward([{ x_mm: 500, y_mm: -650, z_mm: 1300 }], { rangeRef_mm }, {})
      const { sight, shape } = subjectOf(plainDoor({ sensors: [sensor] }))
      const { beams } = sight
      const slanted = { ...beams, directionY: Float64Array.of(0.6), directionZ: Float64Array.of(-0.8) }
      return beamSees({ ...sight, beams: slanted, ends_mm: Float64Array.of(1e6) }, 0, shape, 500, 0, scratch)
    }
    expect([1290, 1291].map(edge)).toEqual([false, true])
  })
})

describe('whether a segment is interrupted', () => {
  const across = (body: Posture, spotRadius_mm = 0) =>
    subjectOf(plainDoor({ bodies: [bodyOf([body])], sensors: [lightGrid([200], 0, { spotRadius_mm })] }))

  it('is yes wherever the interior meets it, its ends inside of the body too, and no at a graze (hand calculation: 0 to 2000 along x, 200 high)', () => {
    const { sight, shape } = across(box(100, 100, 500))
    const sees = (x: number, y = 0) => beamSees(sight, 0, shape, x, y, scratch)
    expect([-50, -49, 0, 1000, 2049, 2050].map((x) => sees(x))).toEqual([false, true, true, true, true, false])
    expect([-50, -49, 49, 50].map((y) => sees(1000, y))).toEqual([false, true, true, false])
    const low = across(box(100, 100, 200))
    expect(beamSees(low.sight, 0, low.shape, 1000, 0, scratch)).toBe(false)
  })
  it('needs the interior of what the spot leaves of the body (hand calculation: 100 less twice 10)', () => {
    const { sight, shape } = across(box(100, 100, 215), 10)
    expect([-40, -39, 39, 40].map((y) => beamSees(sight, 0, shape, 1000, y, scratch))).toEqual([false, true, true, false])
    const lower = across(box(100, 100, 210), 10)
    expect(beamSees(lower.sight, 0, lower.shape, 1000, 0, scratch)).toBe(false)
  })
  it('is no for one that something blocks, even by a body around its first end', () => {
    const blocked = plainDoor({
      sensors: [lightGrid([200])],
      states: plainDoor().states.map((state) => ({
        ...state,
        obstacles: [
          { shape: 'post', id: 'post', name: 'post', x_mm: 1500, y_mm: 0, from_mm: 0, to_mm: 900, implied: false, radius_mm: 50 },
        ],
      })),
    })
    const { sight, shape } = subjectOf(blocked)
    expect([-40, 0, 40, 1000].map((x) => beamSees(sight, 0, shape, x, 0, scratch))).toEqual([false, false, false, false])
  })
})

function placeOnBeam(dice: RandomNumbers, { beams, ends_mm }: Sight, i: number): readonly [number, number] {
  const t = dice.between(0, Math.max(0, Math.min(5000, ends_mm[i] as number)))
  return [
    (beams.originX[i] as number) + t * (beams.directionX[i] as number),
    (beams.originY[i] as number) + t * (beams.directionY[i] as number),
  ]
}

const CLOSE = 1e-5 // mm: nearer than this to a limit, the last digits of either derivation decide

/**
 * Whether beam i sees the body, from one idea: the distance to the skin of a convex body, below 0 inside, is convex along a line. Its least value says
 * whether the line comes inside, halving from there where it enters, and the face that is nearest there is the one it enters by.
 */
function derived(
  { beams, floor, limits, ends_mm, reach, segments }: Sight,
  i: number,
  shape: Shape,
  x: number,
  y: number,
): 'seen' | 'missed' | 'barred' | 'close' {
  if (!(shape.halfA > 0 && shape.halfB > 0 && shape.high > shape.low)) return 'missed'
  const faces = facesOf(shape, x, y, floorHeight(floor, x, y))
  const [ox, oy, oz] = [beams.originX, beams.originY, beams.originZ].map((values) => values[i]) as [number, number, number]
  const [dx, dy, dz] = [beams.directionX, beams.directionY, beams.directionZ].map((values) => values[i]) as [number, number, number]
  const skin = (t: number) => Math.max(...faces.map(({ distance }) => distance(ox + t * dx, oy + t * dy, oz + t * dz)))
  const deepest = least(skin, -30_000, 30_000)
  if (skin(deepest) > CLOSE) return 'missed'
  if (skin(deepest) > -CLOSE) return 'close'
  const t = crossing(skin, deepest, -30_000)
  const end = ends_mm[i] as number
  if (segments) {
    const leaves = crossing(skin, deepest, 30_000)
    if (Math.abs(t - end) < CLOSE || Math.abs(leaves) < CLOSE) return 'close'
    return t < end && leaves > 0 ? 'seen' : 'barred'
  }
  const [px, py, pz] = [ox + t * dx, oy + t * dy, oz + t * dz]
  const entered = faces.filter(({ distance }) => distance(px, py, pz) > -CLOSE)
  if (entered.length !== 1) return 'close'
  const [nx, ny, nz] = entered[0]?.normal(px, py) ?? [0, 0, 0]
  const cosine = -(nx * dx + ny * dy + nz * dz)
  // received power over the power that is needed, in clear air or fog
  const power =
    ((shape.reflectance * cosine) / reach.reflectanceRef) * ((reach.rangeRef_mm / t) * Math.exp(-reach.extinction_per_mm * t)) ** 2
  const height = pz - floorHeight(floor, px, py)
  const spare = [
    t,
    end - t,
    reach.maxRange_mm - t,
    px - limits.xMin_mm,
    limits.xMax_mm - px,
    py - limits.yMin_mm,
    limits.yMax_mm - py,
    height - limits.clearance_mm,
    limits.top_mm - height,
    (power - 1) * 1e3,
  ]
  if (spare.some((s) => Math.abs(s) < CLOSE)) return 'close'
  return spare.every((s) => s > 0) ? 'seen' : 'barred'
}

interface Face {
  readonly distance: (x: number, y: number, z: number) => number
  readonly normal: (x: number, y: number) => readonly [number, number, number]
}

function facesOf({ round, halfA, halfB, low, high, cosYaw, sinYaw }: Shape, x: number, y: number, floor: number): readonly Face[] {
  const flat = (nx: number, ny: number, nz: number, offset: number): Face => ({
    distance: (px, py, pz) => nx * (px - x) + ny * (py - y) + nz * (pz - floor) - offset,
    normal: () => [nx, ny, nz],
  })
  const ends = [flat(0, 0, 1, high), flat(0, 0, -1, -low)]
  if (!round)
    return [
      ...ends,
      flat(cosYaw, sinYaw, 0, halfA),
      flat(-cosYaw, -sinYaw, 0, halfA),
      flat(-sinYaw, cosYaw, 0, halfB),
      flat(sinYaw, -cosYaw, 0, halfB),
    ]
  const away = (px: number, py: number) => Math.sqrt((px - x) * (px - x) + (py - y) * (py - y))
  return [
    ...ends,
    { distance: (px, py) => away(px, py) - halfA, normal: (px, py) => [(px - x) / away(px, py), (py - y) / away(px, py), 0] },
  ]
}

/** Where a convex function is least, by thirds. */
function least(f: (t: number) => number, from: number, to: number): number {
  let [low, high] = [from, to]
  for (let k = 0; k < 90; k++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3]
    if (f(a) < f(b)) high = b
    else low = a
  }
  return (low + high) / 2
}

/** Where f passes 0 between a place inside and one outside, by halving. */
function crossing(f: (t: number) => number, inside: number, outside: number): number {
  let [a, b] = [inside, outside]
  for (let k = 0; k < 70; k++) {
    const middle = (a + b) / 2
    if (f(middle) < 0) a = middle
    else b = middle
  }
  return (a + b) / 2
}
