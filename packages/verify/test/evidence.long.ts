import { describe, expect, it } from 'vitest'
import { holdEvidence, seedsFrom } from './evidence-holds.ts'

describe('true evidence', () => {
  for (let first = 1; first <= 2000; first += 100)
    it(`of 100 random doors is accepted, and single placements never contradict it (seeds ${first} to ${first + 99})`, {
      timeout: 3_600_000,
    }, () => {
      const { refused, wrong } = holdEvidence(seedsFrom(first, first + 99), 12)
      expect({ refused, wrong }).toEqual({ refused: [], wrong: [] })
    })
})
