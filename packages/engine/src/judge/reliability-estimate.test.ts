import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { plainDoor } from '../../cases/plain-door.ts'
import { scanner } from '../../cases/wired-door.ts'
import type { ProtectionConcept } from '../model/door.ts'
import type { Declared } from '../model/sensor.ts'

const CONCEPT: ProtectionConcept = { people: 'public', drive: 'automatic', closingEdge: 'contact-free' }
const GOOD: Partial<Declared> = { category: '2', mttfd_y: 40, diagnosticCoverage_percent: 60, commonCause: 65 }
const NEEDED = [
  'required-level',
  'simplified-levels',
  'failure-bands',
  'coverage-bands',
  'common-cause-score',
  'dangerous-share',
  'reliability-estimate',
]
const CONFIRMED = NEEDED.map((value) => ({ value, document: 'EXAMPLE', edition: '1', clause: '2', by: 'A. Reader', on: '2026-11-01' }))
const judged = (declares: Partial<Declared> | undefined, confirmations = CONFIRMED, concept = CONCEPT) =>
  findingOf('reliability-estimate', plainDoor({ sensors: [scanner(declares)], concept, confirmations }))

describe('reliability-estimate', () => {
  it('names the figures that are missing', () => {
    const needs = (declares: Partial<Declared>) => {
      const found = judged(declares)
      return found.verdict === 'undetermined' ? found.needs.map((need) => need.replace('sensors/0/declares/', '')) : found.verdict
    }
    expect(needs({})).toEqual(['category', 'mttfd_y', 'diagnosticCoverage_percent', 'commonCause'])
    expect(needs({ category: '1' })).toEqual(['mttfd_y'])
    expect(needs({ ...GOOD, mttfd_y: undefined, b10d: 1e6 })).toEqual(['operations_per_y'])
  })
  it('never passes on bands and a table that are only remembered', () => {
    const found = judged(GOOD, [])
    expect(found).toMatchObject({ verdict: 'undetermined', reason: 'limit-from-memory', facts: { level: 'c', required: 'c' } })
    expect(found.verdict === 'undetermined' && found.needs).toEqual(
      expect.arrayContaining(['confirmations/simplified-levels', 'confirmations/failure-bands', 'confirmations/required-level']),
    )
  })
  it('compares the level of the table with the one that is needed, once all is confirmed', () => {
    expect(judged(GOOD)).toMatchObject({ verdict: 'pass', measured: { value: 3 }, limit: { value: 3 } })
    expect(judged({ ...GOOD, mttfd_y: 29 })).toMatchObject({ verdict: 'fail', facts: { level: 'b' } })
    expect(judged({ ...GOOD, commonCause: 64 })).toMatchObject({ verdict: 'fail', facts: { level: 'none' } })
    expect(judged({ category: '1', mttfd_y: 40 })).toMatchObject({ verdict: 'pass', facts: { level: 'c' } })
  })
  it('takes the time to failure from operations, as in the example of the standard', () => {
    // fs-09 of the collection of check values: B10d 60 million at 2 534 400 operations in a year are 236.74 years
    const found = judged({ ...GOOD, mttfd_y: undefined, b10d: 60e6, operations_per_y: 2_534_400 })
    expect(found.verdict).toBe('pass')
    expect(found.facts['mttfd_y']).toBeCloseTo(236.74, 2)
  })
  it('is not needed where a level is declared, nothing is declared, or the concept rests on something else', () => {
    expect(judged({ ...GOOD, performanceLevel: 'a' }).verdict).toBe('not-applicable')
    expect(judged(undefined).verdict).toBe('not-applicable')
    expect(judged(GOOD, CONFIRMED, { ...CONCEPT, drive: 'hold-to-run' }).verdict).toBe('not-applicable')
  })
})
