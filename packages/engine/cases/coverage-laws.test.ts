import { describe, expect, it } from 'vitest'
import { type CellSet, hasCell } from '../src/coverage/grid.ts'
import { coverageMaps } from '../src/coverage/maps.ts'
import type { Door } from '../src/model/door.ts'
import type { Zone } from '../src/model/zone.ts'
import { mirrored, shifted, withBodies, withFields, withRanging, withStates } from './door-changes.ts'
import { randomDoor } from './random-doors.ts'

const seeds = Array.from({ length: 400 }, (_, i) => i + 1)

describe('laws of the coverage map (random doors, seeds 1 to 400)', () => {
  it('one sensor more never adds blind area', () => {
    const better = (door: Door, seed: number) => {
      const more = randomDoor(seed + 100_000).sensors.map((sensor) => ({ ...sensor, id: `${sensor.id} more` }))
      return { ...door, sensors: [...door.sensors, ...more] }
    }
    expectNeverMoreBlind((door, seed) => [better(door, seed), door])
  })

  it.each<[string, (door: Door, seed: number) => Door]>([
    ['a larger clearance', (door) => withFields(door, (field) => ({ ...field, clearance_mm: Math.max(field.clearance_mm, 0) + 150 }))],
    ['a lower top', (door) => withFields(door, (field) => ({ ...field, top_mm: Math.min(field.top_mm, 1000) - 300 }))],
    [
      'a field narrower at its right and left',
      (door) =>
        withFields(door, (field) => ({
          ...field,
          xMin_mm: Math.max(field.xMin_mm, 0) + 250,
          xMax_mm: Math.min(field.xMax_mm, 1500) - 250,
        })),
    ],
    [
      'a field narrower toward the sides A and B',
      (door) =>
        withFields(door, (field) => ({
          ...field,
          yMin_mm: Math.max(field.yMin_mm, -400) + 250,
          yMax_mm: Math.min(field.yMax_mm, 400) - 100,
        })),
    ],
    ['more fog', (door) => ({ ...door, extinction_per_mm: door.extinction_per_mm + 3.912 / 8000 })],
    ['a darker body', (door) => withBodies(door, (body) => ({ ...body, reflectance: body.reflectance * 0.3 }))],
    ['a larger margin', (door) => withRanging(door, (sensor) => ({ ...sensor, backgroundMargin_mm: sensor.backgroundMargin_mm + 60 }))],
    ['a larger cluster', (door) => withFields(door, (field) => ({ ...field, clusterBeams: field.clusterBeams + 1 }))],
  ])('%s never makes a blind place seen', (_, worsened) => {
    expectNeverMoreBlind((door, seed) => [door, worsened(door, seed)])
  })

  it('the order of obstacles does not matter', () => {
    for (const seed of seeds) {
      const door = randomDoor(seed)
      const reversed = withStates(door, (state) => ({ ...state, obstacles: [...state.obstacles].reverse() }))
      expect(plansOf(reversed), `seed ${seed}`).toEqual(plansOf(door))
    }
  })

  it('mirrored doors give mirrored maps where the width is a multiple of the pitch', () => {
    let compared = 0
    for (const seed of seeds) {
      const door = withWholeCells(randomDoor(seed))
      const twin = mirrored(door, door.opening.width_mm)
      if (![...door.zones, ...twin.zones].every(isWhole)) continue // the product of an awkward pitch is not always exact in binary
      compared++
      expect(plansOf(twin).map(turnedRound), `seed ${seed}`).toEqual(plansOf(door))
    }
    expect(compared).toBeGreaterThan(seeds.length * 0.7)
  })

  it('shifting everything along the plane of the floor changes nothing', () => {
    let sloped = 0
    for (const seed of seeds) {
      const door = randomDoor(seed)
      const [slope = 0, ...others] = new Set(door.states.map(({ floor }) => floor.slopeX))
      const x_mm = others.length === 0 ? 1024 : 0 // two states on different slopes have no common direction but y
      if (slope !== 0 && x_mm !== 0) sloped++
      expect(plansOf(shifted(door, { x_mm, y_mm: -512, z_mm: slope * x_mm })), `seed ${seed}`).toEqual(plansOf(door))
    }
    expect(sloped).toBeGreaterThan(seeds.length / 10)
  })
})

/** For every seed: no cell that is blind in the first door is seen in the second one. Counts that the law was put to a test at all. */
function expectNeverMoreBlind(pair: (door: Door, seed: number) => readonly [better: Door, worse: Door]): void {
  let changed = 0
  for (const seed of seeds) {
    const [better, worse] = pair(randomDoor(seed), seed)
    for (const zone of better.zones)
      for (const state of better.states) {
        const [less, more] = [coverageMaps(better, zone, state).blind, coverageMaps(worse, zone, state).blind]
        if (less.some((word, w) => (word & ~(more[w] ?? 0)) !== 0)) expect.fail(`seed ${seed}, ${zone.id}, ${state.id}`)
        if (less.some((word, w) => word !== more[w])) changed++
      }
  }
  expect(changed).toBeGreaterThan(10)
}

/** The map of each zone in each state as rows of letters: s seen, b blind, - not free. */
function plansOf(door: Door): readonly (readonly string[])[] {
  return door.zones.flatMap((zone) =>
    door.states.map((state) => {
      const { grid, blind, notFree } = coverageMaps(door, zone, state)
      const letter = (row: number, column: number) => (has(notFree, row, column) ? '-' : has(blind, row, column) ? 'b' : 's')
      const has = (set: CellSet, row: number, column: number) => hasCell(set, grid, row, column)
      return Array.from({ length: grid.rows }, (_, row) =>
        Array.from({ length: grid.columns }, (_, column) => letter(row, column)).join(''),
      )
    }),
  )
}

/** Rows read from the other end. */
function turnedRound(plan: readonly string[]): readonly string[] {
  return plan.map((row) => [...row].reverse().join(''))
}

/** Zones as wide as a whole number of cells. */
function withWholeCells(door: Door): Door {
  const zones = door.zones.map((zone) => ({
    ...zone,
    xMax_mm: zone.xMin_mm + Math.round((zone.xMax_mm - zone.xMin_mm) / zone.pitch_mm) * zone.pitch_mm,
  }))
  return { ...door, zones }
}

function isWhole({ xMin_mm, xMax_mm, pitch_mm }: Zone): boolean {
  return Math.abs(Math.ceil((xMax_mm - xMin_mm) / pitch_mm) * pitch_mm - (xMax_mm - xMin_mm)) < 1e-6
}
