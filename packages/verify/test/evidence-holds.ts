import { claimedOf, counterexample, leavesOf, wrongCase } from './claims.ts'
import { randomDoorFile } from './random-door-files.ts'
import { diceOf } from './random-numbers.ts'
import { evidenceOfFile, verified } from './true-evidence.ts'

export interface Held {
  /** What the verifier says against true evidence, by seed. */
  readonly refused: readonly string[]
  /** What single placements say against evidence that the verifier accepts. */
  readonly wrong: readonly string[]
  readonly leaves: { readonly seen: number; readonly notFree: number }
  readonly worstCases: number
}

/** Has all evidence of random doors verified, and tries some leaves of each coverage and all its worst cases at single placements. */
export function holdEvidence(seeds: readonly number[], leavesOfEach: number): Held {
  const [refused, wrong]: [string[], string[]] = [[], []]
  const leaves = { seen: 0, notFree: 0 }
  let worstCases = 0
  for (const seed of seeds) {
    const file = randomDoorFile(seed)
    const evidence = evidenceOfFile(file)
    const result = verified(file, JSON.stringify(evidence))
    if (!result.ok) {
      refused.push(
        `seed ${seed}: ${result.issues.map(({ path, expected, got }) => `${path}: expected ${expected}, got ${got}`).join('; ')}`,
      )
      continue
    }
    for (const proved of result.proved) {
      leaves.seen += proved.leaves.seen
      leaves.notFree += proved.leaves.notFree
      worstCases += proved.worstCases.length
    }
    const dice = diceOf(seed)
    for (const [i, coverage] of evidence.coverages.entries()) {
      const claimed = claimedOf(file.door, coverage)
      const found = claimed && leavesOf(claimed)
      if (claimed === undefined || found === undefined || typeof found === 'string')
        throw new Error(`seed ${seed} must give whole trees, got ${found}`)
      const claims = found.filter(({ code }) => code !== -2)
      const tried = Array.from({ length: Math.min(claims.length, leavesOfEach) }, () => counterexample(claimed, dice.pick(claims), dice))
      const cases = [...coverage.worstCases.keys()].map((k) => wrongCase(claimed, k))
      for (const each of [...tried, ...cases]) if (each !== undefined) wrong.push(`seed ${seed}, coverage ${i}: ${each}`)
    }
  }
  return { refused, wrong, leaves, worstCases }
}

export function seedsFrom(first: number, last: number): readonly number[] {
  return Array.from({ length: last - first + 1 }, (_, i) => first + i)
}
