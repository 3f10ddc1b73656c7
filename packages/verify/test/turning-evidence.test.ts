import { describe, expect, it } from 'vitest'
import { holdChanges } from './passing-doors.ts'
import { holdKind } from './passing-kinds.ts'
import { fileOfTurning, TURNING } from './turning-doors.ts'

// More of each in passages.long.ts
describe('evidence about leaves that turn', () => {
  it('is accepted as it was written, of who is struck and of who is not (seeds 3 and 6 of each kind)', { timeout: 120_000 }, () => {
    let [passages, contacts] = [0, 0]
    const wrong: string[] = []
    for (const kind of Object.keys(TURNING)) {
      const found = holdKind(kind, [3, 6], fileOfTurning)
      wrong.push(...found.wrong.map((each) => `${kind}: ${each}`))
      passages += found.passages
      contacts += found.contacts
    }
    expect(wrong).toEqual([])
    expect({ passages: passages > 3, contacts: contacts > 2 }).toEqual({ passages: true, contacts: true })
  })

  it('is refused after every change of the door by which somebody is struck (doors only just in time, seed 5 of each kind, 4 changes each)', {
    timeout: 120_000,
  }, () => {
    let refused = 0
    for (const kind of Object.keys(TURNING)) {
      const found = holdChanges([5], 4, (seed) => fileOfTurning(kind, seed))
      expect(found.accepted).toEqual([])
      refused += found.refused
    }
    expect(refused).toBeGreaterThan(8)
  })
})
