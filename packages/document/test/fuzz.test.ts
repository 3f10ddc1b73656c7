import { describe, expect, it } from 'vitest'
import { fuzz } from './fuzz.ts'

// The long run (npm run test:long) goes on to 100,000 and holds each file against 2 s.
describe('5,000 mutated door files', () => {
  it.each([1, 1001, 2001, 3001, 4001])(
    'are refused with issues, or judged without a crash and written back the same (1,000 seeds from %i)',
    (firstSeed) => {
      const { read, refused, problems } = fuzz(firstSeed, 1000)
      expect(problems).toEqual([])
      // Both paths are really taken
      expect(read).toBeGreaterThan(200)
      expect(refused).toBeGreaterThan(200)
    },
    600_000,
  )
})
