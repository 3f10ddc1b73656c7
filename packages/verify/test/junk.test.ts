import { describe, expect, it } from 'vitest'
import { randomDoorFile, sha256 } from './random-door-files.ts'
import { diceOf } from './random-numbers.ts'
import { type Changeable, evidenceOfFile, verified } from './true-evidence.ts'

const JUNK = [
  null,
  0,
  -1,
  1e308,
  -1e308,
  1e-320,
  '',
  'x',
  '__proto__',
  'constructor',
  [],
  {},
  [[]],
  [null],
  true,
  'open',
  4096,
  [1, 2],
  [1, 2, 3],
  { id: 'a' },
]

describe('the verifier', () => {
  it('answers whatever stands in place of whatever in a door file or its evidence: 1,200 files with junk in them (seeds 1 to 40)', () => {
    let [answered, accepted] = [0, 0]
    for (let seed = 1; seed <= 40; seed++) {
      const file = randomDoorFile(seed)
      const evidence = evidenceOfFile(file)
      if (JSON.stringify(evidence).length > 30_000) continue
      const dice = diceOf(seed)
      for (let i = 0; i < 60; i++) {
        const door = JSON.parse(file.text)
        const changed: Changeable = structuredClone(evidence)
        const inDoor = dice.chance(0.6)
        const places = placesIn(inDoor ? door : changed)
        const { of, name } = dice.pick(places)
        of[name] = structuredClone(dice.pick(JUNK))
        const text = JSON.stringify(door)
        changed.doorSha256 = inDoor ? sha256(text) : changed.doorSha256
        const result = verified({ text, readLibrary: file.readLibrary }, JSON.stringify(changed))
        answered++
        accepted += result.ok ? 1 : 0
        if (!result.ok) expect(result.issues.length).toBeGreaterThan(0)
      }
    }
    expect(answered).toBeGreaterThan(1200)
    expect(accepted).toBeLessThan(answered / 4) // of what nothing hangs on, such as a name
  })
})

/** Every place in a value that holds another one. */
function placesIn(whole: object): readonly { readonly of: Record<string, unknown>; readonly name: string }[] {
  const places: { readonly of: Record<string, unknown>; readonly name: string }[] = []
  const waiting: object[] = [whole]
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop())
    for (const [name, value] of Object.entries(next)) {
      places.push({ of: next as Record<string, unknown>, name })
      if (typeof value === 'object' && value !== null) waiting.push(value)
    }
  return places
}
