import { describe, expect, it } from 'vitest'
import { fuzz } from './fuzz.ts'

const RUN = 5000

describe('100,000 mutated door files', () => {
  it.each(Array.from({ length: 100_000 / RUN }, (_, i) => 10_001 + i * RUN))(
    'are refused with issues, or judged without a crash, within 2 s of processor time each, and written back the same (5,000 seeds from %i)',
    (firstSeed) => {
      const { problems, slowest_s, slowestSeed } = fuzz(firstSeed, RUN)
      expect(problems).toEqual([])
      expect(slowest_s, `seed ${slowestSeed}`).toBeLessThan(2)
    },
    3_600_000,
  )
})
