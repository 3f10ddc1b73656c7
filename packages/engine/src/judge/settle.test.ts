import { describe, expect, it } from 'vitest'
import { bodyOf, box, fromMemory, measured, plainDoor, plainState } from '../../cases/plain-door.ts'
import type { Door } from '../model/door.ts'
import { THE_DOOR } from './drafts.ts'
import type { Draft, RestsOn, Rule } from './rule.ts'
import { settle } from './settle.ts'

const rule: Rule = { id: 'rule', source: { basis: 'our decision' }, judge: () => [] }
const known = { id: '2026-11', known: true }
const remembered = { id: 'limit', value: 1, unit: 'mm', means: '', source: fromMemory } as const
const confirmation = { value: 'limit', document: 'EXAMPLE 1', edition: '2024', clause: '3', by: 'A. Reader', on: '2026-11-25' }

function draft(restsOn: Partial<RestsOn>, verdict: 'pass' | 'fail' = 'pass'): Draft {
  const against = { measured: { value: 1, unit: 'mm' }, limit: { value: 2, unit: 'mm' } } as const
  return {
    verdict,
    ...against,
    subject: THE_DOOR,
    steps: [],
    facts: {},
    restsOn: { inputs: [], values: [], bodies: [], sensors: [], ...restsOn },
  }
}

const settled = (restsOn: Partial<RestsOn>, door: Partial<Door> = {}, edition = known) =>
  settle(draft(restsOn), rule, plainDoor(door), edition)

describe('a pass stands', () => {
  it('where all that it rests on was entered, and is known', () => {
    expect(settled({ inputs: ['survey/opening'] })).toEqual({
      id: 'rule:door',
      rule: 'rule',
      edition: '2026-11',
      basis: [{ id: 'rule', source: rule.source }],
      verdict: 'pass',
      measured: { value: 1, unit: 'mm' },
      limit: { value: 2, unit: 'mm' },
      subject: THE_DOOR,
      steps: [],
      facts: {},
    })
  })

  it('where assumptions are about something else', () => {
    expect(settled({ inputs: ['sensors/1', 'survey/floor'] }, { assumed: ['sensors/10/fields', 'survey/floorplan'] }).verdict).toBe('pass')
  })

  it('on a remembered value that the user confirmed, and carries the confirmation', () => {
    const finding = settled({ values: [remembered] }, { confirmations: [confirmation] })
    expect(finding.verdict).toBe('pass')
    expect(finding.basis).toContainEqual({ id: 'limit', source: fromMemory, confirmed: confirmation })
  })
})

describe('a pass is taken back', () => {
  it('where it rests on an assumed entry, one above or one below it', () => {
    const needs = (assumed: string) => settled({ inputs: ['zones/0/bodies'] }, { assumed: [assumed] })
    expect(needs('zones/0/bodies')).toMatchObject({ verdict: 'undetermined', reason: 'rests-on-assumption', needs: ['zones/0/bodies'] })
    expect(needs('zones')).toMatchObject({ reason: 'rests-on-assumption', needs: ['zones'], measured: { value: 1 }, limit: { value: 2 } })
    expect(needs('zones/0/bodies/3')).toMatchObject({ reason: 'rests-on-assumption', needs: ['zones/0/bodies/3'] })
  })

  it('where a value, a body or a sensor is from memory and nobody confirmed it', () => {
    const [sensor] = plainDoor().sensors
    if (!sensor) throw new Error('the plain door must have a sensor')
    const body = bodyOf([box(1, 1, 1)], { source: fromMemory })
    const finding = settled(
      { values: [remembered], bodies: [body], sensors: [{ ...sensor, source: fromMemory }] },
      { confirmations: [{ ...confirmation, value: 'other' }] },
    )
    expect(finding).toMatchObject({
      verdict: 'undetermined',
      reason: 'limit-from-memory',
      needs: ['confirmations/limit', 'confirmations/body', 'confirmations/sensor'],
    })
  })

  it('where the edition is not known', () => {
    expect(settled({}, {}, { id: '2026-11', known: false })).toMatchObject({
      verdict: 'undetermined',
      reason: 'missing-input',
      needs: ['edition'],
    })
  })

  it('for all reasons at once, the gravest named and everything needed listed', () => {
    const finding = settled({ inputs: ['survey'], values: [remembered] }, { assumed: ['survey/walls'] }, { id: '2026-11', known: false })
    expect(finding).toMatchObject({ reason: 'missing-input', needs: ['edition', 'survey/walls', 'confirmations/limit'] })
  })
})

describe('any other verdict', () => {
  it('stands whatever it rests on', () => {
    const fail = settle(draft({ inputs: ['survey'], values: [remembered] }, 'fail'), rule, plainDoor({ assumed: ['survey'] }), {
      id: '2026-11',
      known: false,
    })
    expect(fail.verdict).toBe('fail')
  })
})

describe('two values for one place', () => {
  it.each(['pass', 'fail'] as const)('leave a %s unsettled that rests on it, and say where to choose', (verdict) => {
    const disputed = ['survey/opening/width_mm']
    const finding = settle(draft({ inputs: ['survey'] }, verdict), rule, plainDoor({ disputed }), known)
    expect(finding).toMatchObject({ verdict: 'undetermined', reason: 'two-values', needs: disputed })
  })
  it('leave alone what does not rest on it', () => {
    expect(
      settle(draft({ inputs: ['sensors/0'] }, 'fail'), rule, plainDoor({ disputed: ['survey/opening/width_mm'] }), known).verdict,
    ).toBe('fail')
  })
})

describe('a finding', () => {
  it('is named after its rule and subject, or its key, and its state where the door has several', () => {
    const named = (states: number) =>
      settle(
        { ...draft({}), key: 'zone/field', state: 'up' },
        rule,
        plainDoor({ states: Array.from({ length: states }, () => plainState()) }),
        known,
      ).id
    expect(named(1)).toBe('rule:zone/field')
    expect(named(2)).toBe('rule:zone/field@up')
  })

  it('lists each ground once', () => {
    const twice = { ...remembered, source: measured }
    expect(settled({ values: [twice, twice] }).basis.map(({ id }) => id)).toEqual(['rule', 'limit'])
  })
})
