import { describe, expect, it } from 'vitest'
import {
  block,
  bodyOf,
  box,
  cylinder,
  downward,
  fan,
  lightGrid,
  plainDoor,
  plainField,
  plainState,
  plainZone,
  ranging,
  zoneOnly,
} from '../../cases/plain-door.ts'
import { randomScene } from '../../cases/random-scenes.ts'
import type { Door } from '../model/door.ts'
import type { Field } from '../model/sensor.ts'
import { radians } from '../space/trigonometry.ts'
import { countedFields, fieldName, fieldSight, type Lift, stancesOf } from './scene.ts'

describe('the stances of a zone', () => {
  const yaws = (from_deg: number, to_deg: number) => {
    const door = plainDoor({ bodies: [bodyOf([box(100, 100, 500, [from_deg, to_deg])])] })
    const { stances, yawSampled } = stancesOf(door, plainZone())
    return { yaws_deg: stances.map(({ yaw_rad }) => (yaw_rad * 180) / Math.PI), yawSampled }
  }
  it('are all postures of its bodies in order, each at its one yaw', () => {
    const bodies = [
      bodyOf([box(1, 2, 3, 10), cylinder(4, 5)]),
      bodyOf([box(6, 7, 8, -20)], { id: 'other' }),
      bodyOf([box(9, 9, 9)], { id: 'elsewhere' }),
    ]
    const { stances, yawSampled } = stancesOf(plainDoor({ bodies }), plainZone({ bodies: ['other', 'body'] }))
    expect(stances.map(({ body, index, yaw_rad }) => [body.id, index, yaw_rad])).toEqual([
      ['other', 0, radians(-20)],
      ['body', 0, radians(10)],
      ['body', 1, 0],
    ])
    expect(yawSampled).toBe(false)
  })
  it.each([
    [0, 90],
    [-180, 180],
    [10, 15],
    [10, 15.001],
    [10, 10.001],
    [-3, 9],
    [0, 5.0000000001],
    [30, 30.0000000001],
  ])('from %d to %d degrees hold both ends, in equal steps of at most 5 degrees', (from_deg, to_deg) => {
    const { yaws_deg, yawSampled } = yaws(from_deg, to_deg)
    expect(yawSampled).toBe(true)
    expect(yaws_deg[0]).toBeCloseTo(from_deg, 12)
    expect(yaws_deg.at(-1)).toBeCloseTo(to_deg, 12)
    const steps = yaws_deg.slice(1).map((yaw, k) => yaw - (yaws_deg[k] ?? Number.NaN))
    expect(Math.max(...steps)).toBeLessThan(5 + 1e-6)
    expect(Math.max(...steps) - Math.min(...steps)).toBeLessThan(1e-9)
    expect(steps.length).toBeLessThanOrEqual((to_deg - from_deg) / 5 + 1)
  })
  it('of a body that the door does not have are refused', () => {
    expect(() => stancesOf(plainDoor(), plainZone({ bodies: ['nobody'] }))).toThrow('zone zone must name a body of the door, got nobody')
  })
})

describe('the fields that count', () => {
  const field = (id: string, changes: Partial<Field>) => plainField({ id, ...changes })

  it('are those whose output acts for the function of the zone and that hold a body as long as one stays', () => {
    const fields = [
      field('presence', {}),
      field('opening', { function: 'opening' }),
      field('lets go', { presenceTime_s: 59 }),
      field('just holds', { presenceTime_s: 60 }),
      field('unsaid', { presenceTime_s: undefined }),
    ]
    const door = plainDoor({ sensors: [downward([], { fields }), zoneOnly({ function: 'presence' }), lightGrid([200])] })
    const names = (longestStay_s: number | undefined, changes: { readonly function?: 'opening' } = {}) =>
      countedFields(door, plainZone({ longestStay_s, ...changes })).map(fieldName)
    expect(names(60)).toEqual(['sensor/presence', 'sensor/just holds', 'sensor/unsaid', 'grid/field'])
    expect(names(undefined)).toEqual(['sensor/presence', 'sensor/lets go', 'sensor/just holds', 'sensor/unsaid', 'grid/field'])
    expect(names(60, { function: 'opening' })).toEqual(['sensor/opening'])
  })
})

describe('where the beams of a field end', () => {
  const endsIn = (door: Door, lift: Lift = {}, state = door.states[0] ?? plainState()) => {
    const [counted] = countedFields(door, plainZone())
    return counted ? [...fieldSight(door, state, counted, lift).sight.ends_mm] : expect.fail('no field counts')
  }
  const shelf = block({ id: 'shelf', to_mm: 300 })
  const trailer = block({ id: 'trailer', to_mm: 900 })

  it('is the background less the margin, which can be lifted (hand calculation: 2000 - 60)', () => {
    const door = plainDoor({ sensors: [downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], { backgroundMargin_mm: 60 })] })
    expect(endsIn(door)).toEqual([1940])
    expect(endsIn(door, { margin: true })).toEqual([2000])
  })
  it('is the nearer of what was learned and what stands there now, and an obstacle is lifted from both (hand calculation)', () => {
    const learned = plainState({ id: 'learned', obstacles: [trailer] })
    const now = plainState({ id: 'now', obstacles: [shelf] })
    const door = plainDoor({ states: [learned, now], sensors: [downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], { learnedIn: 'learned' })] })
    expect(endsIn(door, {}, now)).toEqual([1100])
    expect(endsIn(door, { obstacle: trailer }, now)).toEqual([1700])
    expect(endsIn(door, { obstacle: shelf }, now)).toEqual([1100])
    expect(endsIn(door, {}, learned)).toEqual([1100])
    const both = { ...door, states: [learned, plainState({ id: 'now', obstacles: [{ ...trailer }] })] }
    expect(endsIn(both, { obstacle: both.states[1]?.obstacles[0] ?? expect.fail() }, both.states[1])).toEqual([2000])
  })
  it('needs a state that the sensor learned in', () => {
    const door = plainDoor({ sensors: [downward([], { learnedIn: 'never' })] })
    expect(() => endsIn(door)).toThrow('sensor sensor must have learned in a state of the door, got never')
  })
  it('is the length of a segment, or nowhere where an obstacle or the floor is in the way', () => {
    const blocked = plainState({ obstacles: [block({ to_mm: 300 })] })
    const door = plainDoor({ sensors: [lightGrid([200, 300, 400, -10])], states: [blocked] })
    expect(endsIn(door)).toEqual([-Infinity, 2000, 2000, -Infinity])
    expect(endsIn(door, { obstacle: blocked.obstacles[0] ?? expect.fail() })).toEqual([2000, 2000, 2000, -Infinity])
  })
  it('is the length too of a slanted segment that ends on a wall, whatever its measures', () => {
    for (let tenth = 20_000; tenth < 20_500; tenth++) {
      const x = tenth / 10
      const wall = block({ x_mm: x + 33.3 / 2, size_mm: [33.3, 4000] })
      const segments = [{ from_mm: [0, -100, 200], to_mm: [x, 300, 350] }] as const
      const door = plainDoor({
        sensors: [lightGrid([], 0, { planes: [{ id: 'p0', segments }] })],
        states: [plainState({ obstacles: [wall] })],
      })
      expect(endsIn(door)[0], `${x}`).toBeGreaterThan(0)
    }
  })
})

describe('what is lifted from a field', () => {
  it('is that and nothing else, and what it does not touch may be taken from before: random scenes, seeds 1 to 200', () => {
    const lifts: readonly Lift[] = [
      { reach: true },
      { dark: true },
      { fog: true },
      { margin: true },
      { sides: true },
      { clearance: true },
      { top: true },
      { cluster: true },
    ]
    for (let seed = 1; seed <= 200; seed++) {
      const door = randomScene(seed, { columns: 3, rows: 3 })
      const [state, zone] = [door.states[0] ?? plainState(), door.zones[0] ?? plainZone()]
      for (const counted of countedFields(door, zone)) {
        const asIs = fieldSight(door, state, counted)
        for (const lift of lifts) expect(fieldSight(door, state, counted, lift, asIs)).toEqual(fieldSight(door, state, counted, lift))
        for (const obstacle of state.obstacles)
          expect(fieldSight(door, state, counted, { obstacle }, asIs)).toEqual(fieldSight(door, state, counted, { obstacle }))
      }
    }
  })
  it('keeps the cap of the range and the fog of a dark body, and neither of one beyond reach (hand calculation)', () => {
    const door = plainDoor({ sensors: [ranging([fan(0, 0, 1)], { maxRange_mm: 900, rangeRef_mm: 1000 })], extinction_per_mm: 0.001 })
    const [counted] = countedFields(door, plainZone())
    if (!counted) return expect.fail('no field counts')
    const maxRange = (lift: Lift) => fieldSight(door, plainState(), counted, lift).sight.reach.maxRange_mm
    // R exp(0.001 R) = 1000 gives 567.14 (Lambert's W of 1 is 0.567143, its Taylor series and tables agree)
    expect(maxRange({ dark: true })).toBeCloseTo(567.143, 3)
    expect(maxRange({ fog: true })).toBe(900)
    expect(maxRange({ reach: true })).toBeGreaterThanOrEqual(1e6)
  })
  it('leaves planes that the field does not name out, also among other beams', () => {
    const door = plainDoor({ sensors: [ranging([fan(-10, 10, 3), { ...fan(-10, 10, 5), id: 'p1' }], {}, { planes: ['p1'] })] })
    const [counted] = countedFields(door, plainZone())
    if (!counted) return expect.fail('no field counts')
    expect(fieldSight(door, plainState(), counted).planes).toEqual([{ id: 'p1', first: 3, end: 8 }])
  })
})
