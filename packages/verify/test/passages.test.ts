import { describe, expect, it } from 'vitest'
import { seedsFrom } from './evidence-holds.ts'
import { doorOfFile, holdChanges, isStruck, passagesOf, passingFile, verifiedPassages } from './passing-doors.ts'
import { diceOf } from './random-numbers.ts'

describe('evidence that nobody is struck', () => {
  it('is accepted as it was written, and written only where the search for the fastest contact finds none (seeds 1 to 60)', () => {
    const refused: string[] = []
    const wrong: number[] = []
    let shown = 0
    for (let seed = 1; seed <= 60; seed++) {
      const file = passingFile(diceOf(seed))
      const door = doorOfFile(file)
      if (door === undefined) continue
      const passages = passagesOf(door) as unknown[]
      if (passages.length === 0) continue
      const result = verifiedPassages(file, passages)
      if (!result.ok) refused.push(`seed ${seed}: ${JSON.stringify(result.issues[0])}`)
      else shown += result.passages.length
      if (isStruck(door)) wrong.push(seed)
    }
    expect({ refused, wrong }).toEqual({ refused: [], wrong: [] })
    expect(shown).toBeGreaterThan(12)
  })

  it('is refused after every change of the door by which somebody is struck (doors only just in time, seeds 1 to 40, 6 changes each)', () => {
    const { accepted, stillShown, refused } = holdChanges(seedsFrom(1, 40), 6)
    expect(accepted).toEqual([])
    expect({ stillShown: stillShown > 10, refused: refused > 30 }).toEqual({ stillShown: true, refused: true })
  })

  it('claims nothing about a door file with something beside what it knows, a leaf that brakes weakly, or a body of several parts', () => {
    const codes = [
      (file: ReturnType<typeof passingFile>) => (file.survey.drive['coasts'] = true),
      (file: ReturnType<typeof passingFile>) => (file.survey.drive['stopDecel_m_per_s2'] = 0.1),
      (file: ReturnType<typeof passingFile>) => {
        const part = { name: 'part', shape: 'box', size_mm: [200, 200, 200], x_mm: 0, y_mm: 0, from_mm: 0 }
        for (const body of file.bodies) body.postures = [{ shape: 'parts', parts: [part] }]
      },
    ].map((change) => {
      const file = passingFile(diceOf(3))
      const door = doorOfFile(file)
      const passages = door && passagesOf(door)
      change(file)
      const result = verifiedPassages(file, passages)
      return result.ok ? 'ok' : result.issues[0]?.code
    })
    expect(codes).toEqual(['cannot-show', 'cannot-show', 'several-parts'])
  })
})
