import { describe, expect, it } from 'vitest'
import type { Door } from '../src/model/door.ts'
import { tightestDoor, unseenInPoses } from './tolerant-pass.ts'

const BATCH = 50_000
const doors = (['x', 'y', 'z'] as const).map(tightestDoor)
const hour_ms = 3_600_000

/** Longer than tolerant-pass.test.ts, with other seeds. */
describe('a zone that only just passes over 5 mm and 0.3 degrees is contradicted by none of a million random poses', () => {
  it.each(Array.from({ length: 20 }, (_, i) => 100_001 + i * BATCH))(
    `each with a body at a random place (${BATCH} from seed %i)`,
    (first) => {
      expect(unseenInPoses(doors[Math.floor(first / BATCH) % doors.length] as Door, first, BATCH)).toEqual([])
    },
    hour_ms,
  )
})
