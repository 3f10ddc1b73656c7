import { describe, expect, it } from 'vitest'
import { seedsFrom } from './evidence-holds.ts'
import { contactsOf, doorOfFile, holdChanges, isStruck, passagesOf, verifiedPassages } from './passing-doors.ts'
import { fileOfKind, KINDS } from './passing-kinds.ts'

describe.each(Object.keys(KINDS))('evidence about lanes with %s', (kind) => {
  it('is accepted as it was written, of who is struck and of who is not (seeds 1 to 16)', () => {
    const wrong: string[] = []
    let [passages, contacts] = [0, 0]
    for (const seed of seedsFrom(1, 16)) {
      const file = fileOfKind(kind, seed)
      const door = doorOfFile(file)
      if (door === undefined) continue
      const [clear, struck] = [passagesOf(door) as unknown[], contactsOf(door)]
      const result = verifiedPassages(file, clear, struck)
      if (!result.ok) wrong.push(`seed ${seed}: ${JSON.stringify(result.issues[0])}`)
      if (clear.length > 0 && isStruck(door)) wrong.push(`seed ${seed} is struck`)
      passages += clear.length
      contacts += struck.length
    }
    expect(wrong).toEqual([])
    expect({ passages: passages > 2, contacts: contacts > 2 }, `${passages} passages, ${contacts} contacts`).toEqual({
      passages: true,
      contacts: true,
    })
  })

  it('is refused after every change of the door by which somebody is struck (doors only just in time, seeds 1 to 12, 4 changes each)', () => {
    const { accepted, stillShown, refused } = holdChanges(seedsFrom(1, 12), 4, (seed) => fileOfKind(kind, seed))
    expect(accepted).toEqual([])
    expect({ stillShown: stillShown > 1, refused: refused > 5 }, `${stillShown} shown, ${refused} refused`).toEqual({
      stillShown: true,
      refused: true,
    })
  })
})
