import { describe, expect, it } from 'vitest'
import { exitCodeOf, exitMeanings, outcomes, worstOutcome } from './exit-codes.ts'

describe('exit codes', () => {
  it('are 0 all pass, 1 a fail, 2 undetermined only, 3 bad input, 70 a crash', () => {
    expect(outcomes.map(exitCodeOf)).toEqual([70, 3, 1, 2, 0])
  })

  it('take the first of crash, bad input, fail, undetermined that any file has', () => {
    expect(worstOutcome(['pass', 'undetermined', 'fail'])).toBe('fail')
    expect(worstOutcome(['pass', 'undetermined'])).toBe('undetermined')
    expect(worstOutcome(['fail', 'bad-input'])).toBe('bad-input')
    expect(worstOutcome(['bad-input', 'crash'])).toBe('crash')
    expect(worstOutcome(['pass', 'pass'])).toBe('pass')
  })

  it('never call it a pass when nothing was judged', () => {
    expect(worstOutcome([])).toBe('undetermined')
  })

  it('are each explained once', () => {
    expect(new Set(exitMeanings.map(([code]) => code)).size).toBe(exitMeanings.length)
  })
})
