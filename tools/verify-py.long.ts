import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../packages/engine/cases/random-numbers.ts'
import { CORRUPTIONS, corrupt } from './verify-py.corruptions.ts'
import { randomDoorFile } from './verify-py.doors.ts'
import type { Draft } from './verify-py.draft.ts'
import { type Pair, proved, verdicts } from './verify-py.files.ts'

const WANTED = 5000
const FIRST_DOOR = 1001
const DOORS_AT_ONCE = 40
const OF_EACH_DOOR = 12

describe('the Python verifier, at length', () => {
  it(`accepts the true evidence of random doors and refuses ${WANTED} corruptions of it (doors from seed ${FIRST_DOOR})`, {
    timeout: 7_200_000,
  }, () => {
    const names = Object.keys(CORRUPTIONS)
    const random = randomNumbers(FIRST_DOOR)
    const refused = new Map<string, number>()
    let doors = 0
    for (let seed = FIRST_DOOR, total = 0; total < WANTED; seed += DOORS_AT_ONCE) {
      const found = Array.from({ length: DOORS_AT_ONCE }, (_, i) => proved(JSON.stringify(randomDoorFile(seed + i)))).filter(
        (each) => each !== undefined,
      )
      expect(verdicts(found.map(({ text, evidence }) => ({ door: text, evidence }))).filter(({ exit }) => exit !== 0)).toEqual([])
      doors += found.length
      const broken = found.flatMap(({ text, evidence, door }) =>
        Array.from({ length: OF_EACH_DOOR }).flatMap((): { name: string; pair: Pair }[] => {
          const name = random.pick(names as [string, ...string[]])
          const draft: Draft = JSON.parse(evidence)
          const coverage = draft.coverages[random.whole(0, draft.coverages.length - 1)]
          if (coverage === undefined || !corrupt(name, coverage, door, random)) return []
          return [{ name, pair: { door: text, evidence: JSON.stringify({ ...draft, coverages: [coverage] }) } }]
        }),
      )
      const answers = verdicts(broken.map(({ pair }) => pair))
      expect(broken.filter((_, i) => answers[i]?.exit !== 1).map(({ name }) => `${name}, doors from ${seed}`)).toEqual([])
      for (const { name } of broken) refused.set(name, (refused.get(name) ?? 0) + 1)
      total += broken.length
      process.stderr.write(`${total} refused, ${doors} true ones accepted\n`)
    }
    expect(names.filter((name) => !refused.has(name))).toEqual([])
  })
})
