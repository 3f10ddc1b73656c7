import { describe, expect, it } from 'vitest'
import { passesForAll, type Tight, tightestDoor, tolerantDoor, unseenInPoses } from './tolerant-pass.ts'

describe('a zone that passes over 5 mm and 0.3 degrees, floor, range and lengths included', () => {
  it('is contradicted by none of 4,000 random poses, each with a body at a random place (seeds 1 to 4,000)', () => {
    expect(passesForAll(tolerantDoor)).toBe(true)
    expect(unseenInPoses(tolerantDoor, 1, 4_000)).toEqual([])
  })
  it.each<Tight>(['x', 'y', 'z'])(
    'is not contradicted where it only just passes either: the body that is smallest along %s, 4,000 random poses',
    (tight) => {
      expect(unseenInPoses(tightestDoor(tight), 1, 4_000)).toEqual([])
    },
  )
})
