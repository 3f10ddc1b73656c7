import { describe, expect, it } from 'vitest'
import { shifted } from './door-changes.ts'
import { compareBeams, compareFields } from './map-against-predicate.ts'
import { randomScene, type SceneSize } from './random-scenes.ts'

const BATCH = 500
const sizes: readonly SceneSize[] = [
  { columns: 150, rows: 90 },
  { columns: 65, rows: 40 },
  { columns: 1, rows: 300 },
  { columns: 300, rows: 1 },
  { columns: 80, rows: 50, pitch_mm: 0.1 },
  { columns: 80, rows: 50, pitch_mm: 200 },
]

/** Longer than the shorter run beside the maps (coverage/seen-map.test.ts), whose seeds lie below 10,000. */
describe('the map of what a beam sees equals the predicate asked at every cell, in 20,000 random scenes', () => {
  it.each(Array.from({ length: 40 }, (_, i) => 10_001 + i * BATCH))(
    `${BATCH} seeds from %i: beams alone, planes with their clusters, near the origin and 100 m from it`,
    (first) => {
      const differences: string[] = []
      for (let seed = first; seed < first + BATCH; seed++) {
        const door = randomScene(seed, sizes[seed % sizes.length] as SceneSize)
        const slope = door.states[0]?.floor.slopeX ?? 0
        const moved = seed % 5 === 0 ? shifted(door, { x_mm: 100_000, y_mm: -123_456.7, z_mm: 10_000 + 100_000 * slope }) : door
        differences.push(...compareBeams(moved).differences, ...compareFields(moved).differences)
      }
      expect(differences).toEqual([])
    },
    3_600_000,
  )
})
