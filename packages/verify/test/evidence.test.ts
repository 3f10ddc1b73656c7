import { describe, expect, it } from 'vitest'
import { holdEvidence, seedsFrom } from './evidence-holds.ts'

describe('true evidence', () => {
  it('of 60 random doors is accepted, and single placements never contradict it (seeds 201 to 260)', () => {
    const { refused, wrong, leaves, worstCases } = holdEvidence(seedsFrom(201, 260), 4)
    expect(refused).toEqual([])
    expect(wrong).toEqual([])
    expect(leaves.seen).toBeGreaterThan(5000) // or the test says nothing
    expect(leaves.notFree).toBeGreaterThan(3000)
    expect(worstCases).toBeGreaterThan(30)
  })
  it('of doors on which the engine once claimed too much is accepted: worst cases beyond the zone (46, 132, 144), a yaw at the end of its range (139), aim and yaw range together (272)', () => {
    const { refused, wrong } = holdEvidence([46, 132, 139, 144, 272], 4)
    expect({ refused, wrong }).toEqual({ refused: [], wrong: [] })
  })
})
