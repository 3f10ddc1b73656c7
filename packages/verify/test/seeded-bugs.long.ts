import { describe, expect, it } from 'vitest'
import { seedsFrom } from './evidence-holds.ts'
import { diceOf } from './random-numbers.ts'
import { type Outcome, type Slip, someSlip, workbench } from './seeded-bugs.ts'

const WANTED = 100
const LEAST_CAUGHT = 95

describe('the verifier alone', () => {
  it(`catches at least ${LEAST_CAUGHT} of ${WANTED} bugs that make the engine claim what is false (seed 1)`, { timeout: 7_200_000 }, () => {
    const bench = workbench()
    const dice = diceOf(1)
    const found: { outcome: Outcome; slip: Slip }[] = []
    const count = (outcome: Outcome) => found.filter((each) => each.outcome === outcome).length
    const tried = new Set<string>()
    try {
      while (count('caught') + count('missed') < WANTED) {
        const slip = someSlip(bench.engine, dice)
        const key = `${slip.file}:${slip.line} ${slip.after}`
        if (tried.has(key)) continue
        tried.add(key)
        const outcome = bench.tryOut(slip, seedsFrom(201, 214))
        found.push({ outcome, slip })
        process.stderr.write(`${outcome.padEnd(9)} ${slip.file}:${slip.line}  ${slip.before}  ->  ${slip.after}\n`)
      }
    } finally {
      bench.clear()
    }
    process.stderr.write(
      `${count('caught')} caught, ${count('missed')} missed, ${count('harmless')} harmless, ${count('broken')} broke the engine itself\n`,
    )
    expect(count('caught')).toBeGreaterThanOrEqual(LEAST_CAUGHT)
  })
})
