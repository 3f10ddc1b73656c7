import { describe, expect, it } from 'vitest'
import { corruptMany, piecesOf } from './corrupting.ts'
import { seedsFrom } from './evidence-holds.ts'

describe('corrupted evidence', () => {
  for (let round = 1; round <= 20; round++) {
    const first = 100 * round + 1
    it(`is refused whenever its claim became false: 5,000 corruptions (doors of seeds ${first} to ${first + 59}, seed ${round + 1})`, {
      timeout: 3_600_000,
    }, () => {
      const { refused, stillTrue, acceptedThoughFalse, kinds } = corruptMany(piecesOf(seedsFrom(first, first + 59)), 5000, round + 1)
      console.log(`${refused} refused, ${stillTrue} still true, ${acceptedThoughFalse.length} accepted though false`)
      console.log(
        [...kinds]
          .sort()
          .map(([kind, count]) => `${kind} ${count}`)
          .join('; '),
      )
      expect(acceptedThoughFalse).toEqual([])
    })
  }
})
