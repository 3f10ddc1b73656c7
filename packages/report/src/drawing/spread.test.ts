import { describe, expect, it } from 'vitest'
import { seeded } from '../../test/doors.ts'
import { spread } from './spread.ts'

describe('places spread along a line', () => {
  it('stay where they are when they are far enough apart', () => {
    expect(spread([1, 10, 20], 5, 0, 30)).toEqual([1, 10, 20])
  })
  it('move about their middle where they are not: 10 and 12 become 8.5 and 13.5 (hand calculation)', () => {
    expect(spread([10, 12], 5, 0, 30)).toEqual([8.5, 13.5])
  })
  it('keep off both ends', () => {
    expect(spread([0, 1, 29, 30], 5, 0, 30)).toEqual([0, 5, 25, 30])
  })
  it('keep their distance and their order, whatever they are (seeds 1 to 200)', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const random = seeded(seed)
      const wanted = Array.from({ length: 1 + Math.floor(random() * 9) }, () => random() * 60).sort((a, b) => a - b)
      const places = spread(wanted, 6, 0, 60)
      expect(Math.min(...places)).toBeGreaterThanOrEqual(-1e-9)
      expect(Math.max(...places)).toBeLessThanOrEqual(60 + 1e-9)
      for (const [i, place] of places.entries()) if (i > 0) expect(place - (places[i - 1] ?? 0)).toBeGreaterThanOrEqual(6 - 1e-9)
    }
  })
})
