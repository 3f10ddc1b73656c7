import { describe, expect, it } from 'vitest'
import { gridCoverage } from '../src/coverage/grid-coverage.ts'
import type { Door } from '../src/model/door.ts'
import { shifted } from './door-changes.ts'
import { compareBeams, compareFields } from './map-against-predicate.ts'
import { randomScene, type SceneSize } from './random-scenes.ts'
import { extreme, steepened } from './strained-scenes.ts'

const BATCH = 500
const batches = (count: number) => Array.from({ length: count }, (_, i) => 10_001 + i * BATCH)
const hour_ms = 3_600_000
const sizes: readonly SceneSize[] = [
  { columns: 150, rows: 90 },
  { columns: 65, rows: 40 },
  { columns: 1, rows: 300 },
  { columns: 300, rows: 1 },
  { columns: 80, rows: 50, pitch_mm: 0.1 },
  { columns: 80, rows: 50, pitch_mm: 200 },
]
const smallSizes: readonly SceneSize[] = [10, 25, 73.1, 200].flatMap((pitch_mm) =>
  [1, 33].map((columns) => ({ columns, rows: 25, pitch_mm })),
)

function scene(seed: number, among: readonly SceneSize[]): Door {
  return randomScene(seed, among[seed % among.length] ?? { columns: 10, rows: 10 })
}

function differencesIn(first: number, made: (seed: number) => Door): readonly string[] {
  return Array.from({ length: BATCH }, (_, i) => made(first + i)).flatMap((door) => [
    ...compareBeams(door).differences,
    ...compareFields(door).differences,
  ])
}

/** Longer than the shorter runs beside the maps (coverage/seen-map.test.ts), whose seeds lie below 10,000. */
describe('the map of what a beam sees equals the predicate asked at every cell', () => {
  it.each(batches(40))(
    `in 20,000 random scenes: beams alone, planes with their clusters, near the origin and 100 m from it (${BATCH} seeds from %i)`,
    (first) => {
      const away = (door: Door) => shifted(door, { x_mm: 1e5, y_mm: -123_456.7, z_mm: 1e4 + 1e5 * (door.states[0]?.floor.slopeX ?? 0) })
      expect(differencesIn(first, (seed) => (seed % 5 === 0 ? away(scene(seed, sizes)) : scene(seed, sizes)))).toEqual([])
    },
    hour_ms,
  )
  it.each(batches(80))(
    `in 40,000 small scenes with beams along slopes (${BATCH} seeds from %i)`,
    (first) => expect(differencesIn(first, (seed) => steepened(scene(seed, smallSizes), seed))).toEqual([]),
    hour_ms,
  )
  it.each(batches(20))(
    `in 10,000 scenes with numbers that no door has, and a whole answer follows (${BATCH} seeds from %i)`,
    (first) => {
      const made = (seed: number) => extreme(scene(seed, smallSizes), seed)
      expect(differencesIn(first, made)).toEqual([])
      for (let seed = first; seed < first + BATCH; seed++) {
        const door = made(seed)
        const [zone, state] = [door.zones[0], door.states[0]]
        if (!zone || !state) return expect.fail('a scene has one zone and one state')
        const { counts, grid, ...rest } = gridCoverage(door, zone, state)
        expect(counts.seen + counts.blind + counts.notFree).toBe(grid.columns * grid.rows)
        expect(JSON.stringify(rest), `seed ${seed}`).not.toContain('null') // what is not a number
      }
    },
    hour_ms,
  )
})
