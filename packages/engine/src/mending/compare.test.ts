import { describe, expect, it } from 'vitest'
import { bodyOf, box, plainDoor, plainZone } from '../../cases/plain-door.ts'
import { judge } from '../judge/judge.ts'
import type { Finding, Judgement } from '../model/finding.ts'
import { disorder, worsened } from './compare.ts'

/** The zone is covered; another one, far away, is not. */
const far = plainZone({ id: 'far', name: 'far', xMin_mm: 1400, xMax_mm: 1600, pitch_mm: 25 })
const door = plainDoor({
  zones: [plainZone({ xMin_mm: 450, xMax_mm: 550, yMin_mm: -50, yMax_mm: 50, pitch_mm: 25 }), far],
  bodies: [bodyOf([box(300, 300, 500)])],
})
const before = judge(door)
const PASSED = 'zone-covered:zone'
const FAILED = 'zone-covered:far'

const without = (id: string): Judgement => ({ ...before, findings: before.findings.filter((finding) => finding.id !== id) })
const changed = (id: string, change: (finding: Finding) => Finding): Judgement => ({
  ...before,
  findings: before.findings.map((finding) => (finding.id === id ? change(finding) : finding)),
})
const notApplicable = ({ id, rule, subject, edition, steps, basis, facts }: Finding): Finding => ({
  id,
  rule,
  subject,
  edition,
  steps,
  basis,
  facts,
  verdict: 'not-applicable',
  reason: 'no-subject',
})
const verdictOf = (id: string) => before.findings.find((finding) => finding.id === id)?.verdict

describe('a finding gets worse', () => {
  it('in none of the ways when nothing changes', () => {
    expect([verdictOf(PASSED), verdictOf(FAILED)]).toEqual(['pass', 'fail'])
    expect(worsened(before, before, 'none')).toEqual([])
  })
  it('when it passed and is gone', () => {
    expect(worsened(before, without(PASSED), FAILED)).toEqual([PASSED])
  })
  it('when it does not apply any more, whatever it said before', () => {
    expect(worsened(before, changed(PASSED, notApplicable), FAILED)).toEqual([PASSED])
    expect(worsened(before, changed(FAILED, notApplicable), PASSED)).toEqual([FAILED])
  })
  it('when its pocket grew between the cells of the grid', () => {
    const grown = changed(FAILED, (finding) =>
      finding.verdict === 'fail' ? { ...finding, measured: { ...finding.measured, value: finding.measured.value + 1 } } : finding,
    )
    expect(worsened(before, grown, PASSED)).toEqual([FAILED])
  })
  it('when more of its zone goes unseen', () => {
    const worse = judge({ ...door, bodies: [bodyOf([box(100, 100, 500)])] })
    expect(worsened(before, worse, 'none')).toContain(PASSED)
  })
  it('when it comes with a change and fails, and not when it comes and passes', () => {
    expect(worsened(without(FAILED), before, 'none')).toEqual([FAILED])
    expect(worsened(without(PASSED), before, 'none')).toEqual([])
  })
  it('when some rule breaks down', () => {
    expect(worsened(before, { ...before, crashes: [{ rule: 'zone-covered', message: 'broken' }] }, 'none')).toEqual(['crash'])
  })
})

describe('disorder', () => {
  it('is 1 and free as long as nothing changes, and has a price as soon as another finding is worse', () => {
    const finding = before.findings.find(({ id }) => id === FAILED) as Finding
    expect(disorder(finding, before, before)).toEqual({ left: 1, price: 0 })
    expect(disorder(finding, before, without(PASSED)).price).toBeGreaterThan(0)
  })
})
