import { describe, expect, it } from 'vitest'
import { signsOf } from './near-degenerate.ts'

const BATCH = 500_000
const firsts = Array.from({ length: 20 }, (_, i) => 1_000_001 + i * BATCH)
const hour_ms = 3_600_000

/** Longer than near-degenerate.test.ts, whose seeds lie below a million. */
describe('of 10,000,000 near-degenerate cases none is claimed seen or not free that is not so, and no placement misjudged by more than 1e-9 mm', () => {
  it.each(firsts)(
    `against arithmetic in whole numbers (${BATCH} cases from seed %i)`,
    (first) => {
      const { wrong, ...counts } = signsOf(first, BATCH)
      expect(wrong, JSON.stringify(counts)).toEqual([])
      expect(counts.seenTiles).toBeGreaterThan(50_000)
    },
    hour_ms,
  )
})
