import { describe, expect, it } from 'vitest'
import { seedsFrom } from './evidence-holds.ts'
import { holdChanges } from './passing-doors.ts'
import { fileOfKind, holdKind, KINDS } from './passing-kinds.ts'

// More of each in passages.long.ts
describe.each(Object.keys(KINDS))('evidence about lanes with %s', (kind) => {
  it('is accepted as it was written, of who is struck and of who is not (seeds 1 to 7)', () => {
    const { wrong, passages, contacts } = holdKind(kind, seedsFrom(1, 7))
    expect(wrong).toEqual([])
    expect(passages).toBeGreaterThan(0)
    expect(contacts).toBeGreaterThan(0)
  })

  it('is refused after every change of the door by which somebody is struck (doors only just in time, seeds 1 to 4, 6 changes each)', () => {
    const { accepted, refused } = holdChanges(seedsFrom(1, 4), 6, (seed) => fileOfKind(kind, seed))
    expect(accepted).toEqual([])
    expect(refused).toBeGreaterThan(0)
  })
})
