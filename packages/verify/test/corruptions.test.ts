import { describe, expect, it } from 'vitest'
import { corruptMany, piecesOf } from './corrupting.ts'
import { seedsFrom } from './evidence-holds.ts'

describe('corrupted evidence', () => {
  it('is refused whenever its claim became false: 600 corruptions (doors of seeds 1 to 50, seed 1)', () => {
    const pieces = piecesOf(seedsFrom(1, 50))
    expect(pieces.length).toBeGreaterThan(30)
    const { refused, stillTrue, acceptedThoughFalse } = corruptMany(pieces, 600, 1)
    expect(acceptedThoughFalse).toEqual([])
    expect(refused).toBeGreaterThan(300)
    expect(refused + stillTrue).toBe(600)
  })
})
