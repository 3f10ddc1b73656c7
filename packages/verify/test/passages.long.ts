import { describe, expect, it } from 'vitest'
import { seedsFrom } from './evidence-holds.ts'
import { holdChanges } from './passing-doors.ts'
import { fileOfKind, holdKind, KINDS } from './passing-kinds.ts'
import { fileOfTurning, TURNING } from './turning-doors.ts'

it('evidence that nobody is struck is refused after every change by which somebody is (seeds 61 to 1,000, 10 changes each)', {
  timeout: 3_600_000,
}, () => {
  const { accepted, refused } = holdChanges(seedsFrom(61, 1000), 10)
  expect(accepted).toEqual([])
  expect(refused).toBeGreaterThan(500)
})

describe.each(Object.keys(KINDS))('evidence about lanes with %s', (kind) => {
  it('is accepted as it was written, and refused after every change of the door by which somebody is struck (seeds 8 to 60, 10 changes each)', {
    timeout: 3_600_000,
  }, () => {
    expect(holdKind(kind, seedsFrom(8, 60)).wrong).toEqual([])
    const { accepted, stillShown, refused } = holdChanges(seedsFrom(8, 60), 10, (seed) => fileOfKind(kind, seed))
    expect(accepted).toEqual([])
    expect({ stillShown: stillShown > 5, refused: refused > 50 }).toEqual({ stillShown: true, refused: true })
  })
})

describe.each(Object.keys(TURNING))('evidence about %s', (kind) => {
  it('is accepted as it was written, and refused after every change of the door by which somebody is struck (seeds 7 to 40, 8 changes each)', {
    timeout: 3_600_000,
  }, () => {
    expect(holdKind(kind, seedsFrom(7, 40), fileOfTurning).wrong).toEqual([])
    const { accepted, stillShown, refused } = holdChanges(seedsFrom(7, 40), 8, (seed) => fileOfTurning(kind, seed))
    expect(accepted).toEqual([])
    expect({ stillShown: stillShown > 5, refused: refused > 30 }).toEqual({ stillShown: true, refused: true })
  })
})
