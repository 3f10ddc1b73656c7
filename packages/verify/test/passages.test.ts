import { describe, expect, it } from 'vitest'
import { seedsFrom } from './evidence-holds.ts'
import { contactsOf, doorOfFile, holdChanges, isStruck, onlyJust, passagesOf, passingFile, verifiedPassages } from './passing-doors.ts'
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

  it('claims nothing about a door file with something beside what it knows, or a leaf that turns of which nobody said how it is hung', () => {
    const codes = [
      (file: ReturnType<typeof passingFile>) => ((file.survey.leaf as Record<string, unknown>)['travel'] = 'turning'),
      (file: ReturnType<typeof passingFile>) => (file.survey.drive['rests'] = true),
      (file: ReturnType<typeof passingFile>) => (file.survey.drive['cycle'] = { siren: 'yes' }),
      (file: ReturnType<typeof passingFile>) => (file.survey.drive['cycle'] = { attempts: 2, attemptWhileHeld: 'starts' }),
    ].map((change) => {
      const file = passingFile(diceOf(3))
      const door = doorOfFile(file)
      const passages = door && passagesOf(door)
      change(file)
      const result = verifiedPassages(file, passages)
      return result.ok ? 'ok' : result.issues[0]?.code
    })
    expect(codes).toEqual(['cannot-show', 'cannot-show', 'cannot-show', 'cannot-show'])
  })
})

describe('entries about lanes', () => {
  it('are refused or accepted, and never crash, whatever stands in place of any of their values', () => {
    const files = [3, 1].map((seed) => passingFile(diceOf(seed)))
    const [clear, struck] = files.map((file) => doorOfFile(file))
    if (!clear || !struck || !files[0] || !files[1]) throw new Error('the doors of these seeds must be readable')
    const [passages, contacts] = [passagesOf(clear), contactsOf(struck)]
    expect([verifiedPassages(files[0], passages).ok, verifiedPassages(files[1], [], contacts).ok]).toEqual([true, true])
    const accepted: string[] = []
    let tried = 0
    const tryAll = (whole: unknown, isOk: () => boolean) => {
      const walk = (at: Record<string, unknown>, depth: number) => {
        for (const key of Object.keys(at).slice(0, 3)) {
          const kept = at[key]
          for (const junk of [undefined, null, -1, 1e308, 'x', [], {}, [[[]]], true]) {
            at[key] = junk
            tried++
            if (isOk() && junk !== kept && !(key === 'standsAt_mm' && junk === null)) accepted.push(`${key} ${JSON.stringify(junk)}`)
          }
          at[key] = kept
          if (depth < 8 && typeof kept === 'object' && kept !== null) walk(kept as Record<string, unknown>, depth + 1)
        }
      }
      walk(whole as Record<string, unknown>, 0)
    }
    const [clearFile, struckFile] = [files[0], files[1]]
    tryAll(passages, () => verifiedPassages(clearFile, passages).ok)
    for (const [i, contact] of contacts.entries())
      for (const key of Object.keys(contact)) {
        for (const junk of [undefined, -1e9, 1e308, 'x', [], {}, true]) {
          tried++
          const changed = contacts.map((each, k) => (k === i ? { ...each, [key]: junk } : each))
          if (verifiedPassages(struckFile, [], changed).ok) accepted.push(`${key} ${JSON.stringify(junk)}`)
        }
      }
    expect(accepted).toEqual([])
    expect(tried).toBeGreaterThan(120)
  })
})

describe('evidence that somebody is struck', () => {
  it('is accepted as it was written (seeds 1 to 25), and refused when its speed, its instant or its place is changed', () => {
    const wrong: string[] = []
    let accepted = 0
    for (const seed of seedsFrom(1, 25)) {
      const file = passingFile(diceOf(seed))
      const door = doorOfFile(file)
      const [contact] = door === undefined ? [] : contactsOf(door)
      if (contact === undefined) continue
      const says = (change: object) => {
        const result = verifiedPassages(file, [], [{ ...contact, ...change }])
        return result.ok
          ? 'ok'
          : `${result.issues[0]?.code} ${result.issues[0]?.path} ${result.issues[0]?.expected} ${result.issues[0]?.got}`
      }
      const answer = says({})
      if (answer === 'ok') accepted++
      else wrong.push(`seed ${seed}: ${answer}`)
      const [relative, contact_s, x] = [contact['relative_mm_per_s'], contact['contact_s'], contact['x_mm']] as [number, number, number]
      if (says({ relative_mm_per_s: relative + 1000 }) === 'ok') wrong.push(`seed ${seed}: faster`)
      if (says({ contact_s: contact_s + 100 }) === 'ok') wrong.push(`seed ${seed}: later`)
      if (says({ x_mm: x + 5000 }) === 'ok') wrong.push(`seed ${seed}: beside the lane`)
    }
    expect(wrong).toEqual([])
    expect(accepted).toBeGreaterThan(12)
  })

  it('is refused for a door in which nobody is', () => {
    const accepted: number[] = []
    let tried = 0
    for (const seed of seedsFrom(1, 40)) {
      const file = onlyJust(passingFile(diceOf(seed)))
      if (file === undefined) continue
      const faster = structuredClone(file)
      for (const lane of faster.survey.lanes) lane['fastest_m_per_s'] = (lane['fastest_m_per_s'] as number) * 1.5
      const door = doorOfFile(faster)
      const contacts = door === undefined ? [] : contactsOf(door)
      if (contacts.length === 0) continue
      tried++
      if (verifiedPassages(file, [], contacts).ok) accepted.push(seed)
    }
    expect(accepted).toEqual([])
    expect(tried).toBeGreaterThan(5)
  })
})
