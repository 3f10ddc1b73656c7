import { describe, expect, it } from 'vitest'
import { seedsFrom } from './evidence-holds.ts'
import { PASSING_CORRUPTIONS, type Passages } from './passing-corruptions.ts'
import { doorOfFile, passagesOf, verifiedPassages } from './passing-doors.ts'
import { fileOfKind } from './passing-kinds.ts'
import { diceOf } from './random-numbers.ts'

describe('corrupted evidence about lanes', () => {
  it(`is refused, whatever is corrupted (${Object.keys(PASSING_CORRUPTIONS).length} ways; the first door of seeds 1 to 9 of each kind in which nobody is struck)`, () => {
    const accepted: string[] = []
    const tried = new Map<string, number>()
    for (const kind of ['plain', 'bodies of several parts', 'followers', 'falls'])
      for (const seed of seedsFrom(1, 9)) {
        const file = fileOfKind(kind, seed)
        const door = doorOfFile(file)
        const passages = door === undefined ? [] : (passagesOf(door) as Passages[])
        if (passages.length === 0) continue
        const dice = diceOf(seed + 7)
        for (const [name, corrupt] of Object.entries(PASSING_CORRUPTIONS)) {
          const changed = structuredClone(passages)
          if (changed[0] === undefined || !corrupt(changed[0], dice)) continue
          tried.set(name, (tried.get(name) ?? 0) + 1)
          if (verifiedPassages(file, changed).ok) accepted.push(`${name}, ${kind}, seed ${seed}`)
        }
        break
      }
    expect(accepted).toEqual([])
    expect(Object.keys(PASSING_CORRUPTIONS).filter((name) => !tried.has(name))).toEqual([])
  })
})
