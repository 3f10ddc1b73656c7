import { describe, expect, it } from 'vitest'
import { expectPassForAll, unseenInPoses } from './tolerant-pass.ts'

describe('a zone that passes over 5 mm and 0.3 degrees', () => {
  it('passes, floor, range and lengths included', () => {
    expectPassForAll()
  })
  it('is contradicted by none of 10,000 random poses, each with a body at a random place (seeds 1 to 10,000)', () => {
    expect(unseenInPoses(1, 10_000)).toEqual([])
  })
})
