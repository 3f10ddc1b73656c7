import { type Finding, judge } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { leafZone, loadingDoor } from '../test/doors.ts'
import { METRIC } from '../test/readers.ts'
import { findingsText } from './findings-text.ts'
import { type Palette, plainPalette } from './options.ts'
import { columns } from './wording/plain.ts'

const judgement = judge(loadingDoor)
const plainly = { width: 80, palette: plainPalette, ...METRIC, ascii: false } as const
const told = (change: Partial<typeof plainly> | { readonly width: number } | { readonly ascii: boolean } = {}): string =>
  findingsText(loadingDoor, judgement, { ...plainly, ...change })

const base = { subject: { kind: 'door', id: 'door' }, edition: '2026-11', steps: [], basis: [], facts: {} } as const
const quantities = { measured: { value: 3, unit: '1' }, limit: { value: 3, unit: '1' } } as const
const pass: Finding = { ...base, ...quantities, id: 'concept-stated:door', rule: 'concept-stated', verdict: 'pass' }
const fail: Finding = { ...base, ...quantities, id: 'presence-required:door', rule: 'presence-required', verdict: 'fail' }
const missing: Finding = {
  ...base,
  id: 'smallest-body:x',
  rule: 'smallest-body',
  verdict: 'undetermined',
  reason: 'missing-input',
  needs: ['zones/0/family/required_mm'],
}
const none: Finding = { ...base, id: 'must-not-see:door', rule: 'must-not-see', verdict: 'not-applicable', reason: 'no-subject' }
const of = (findings: readonly Finding[], palette: Palette = plainPalette): string =>
  findingsText(loadingDoor, { door: 'x', edition: '2026-11', findings, crashes: [], coverages: [] }, { ...plainly, palette })

describe('findings as text', () => {
  it('begins with the name and the count, worst first', () => {
    const [name, note, count] = of([none, pass, missing, fail]).split('\n')
    expect([name, note, count]).toEqual([
      'North dock 4',
      'with figures invented for the demonstration',
      '1 fails \u00b7 1 not settled \u00b7 1 in order \u00b7 1 does not apply',
    ])
  })

  it('shows fails first, then what is not settled, then what is in order', () => {
    const text = of([none, pass, missing, fail])
    const places = ['fails:', 'not settled:', 'in order:', 'does not apply:'].map((word) => text.indexOf(word))
    expect(places).toEqual([...places].sort((a, b) => a - b))
    expect(places).not.toContain(-1)
  })

  it('marks each verdict by sign and word, in ASCII too', () => {
    const text = of([none, pass, missing, fail])
    for (const words of ['\u22a0 fails', '\u25d0 not settled', '\u25cb in order', '\u2013 does not apply']) expect(text).toContain(words)
    expect(told({ ascii: true })).toMatch(/\[x\] fails[\s\S]*\( \) in order/)
  })

  it('keeps to the width that is asked for', () => {
    for (const width of [40, 60, 80, 120]) for (const line of told({ width }).split('\n')) expect(columns(line)).toBeLessThanOrEqual(width)
  })

  it('uses ASCII alone where that is asked for', () => {
    expect(told({ ascii: true })).toMatch(/^[\n -~]*$/)
  })

  it('names the id of every finding, so that one can ask why', () => {
    const joined = told().replace(/\s+/g, ' ')
    for (const { id } of judgement.findings) expect(joined).toContain(id)
  })

  it('names the rules that were measured on a grid only, where there are any', () => {
    expect(told().replace(/\s+/g, ' ')).toContain('Measured on a grid only, and provisional: Dead ground.')
    expect(of([pass]).replace(/\s+/g, ' ')).not.toContain('on a grid')
  })

  it('tells once what several passes wait for', () => {
    const waiting = (id: string): Finding => ({
      ...pass,
      id,
      verdict: 'undetermined',
      reason: 'limit-from-memory',
      needs: ['confirmations/lying'],
    })
    const text = of([waiting('concept-stated:a'), waiting('concept-stated:b')])
    expect(text.match(/never\s+held against its page/g)).toHaveLength(1)
    expect(text).toContain('These 2 are in order so far')
  })

  it('lets a rule that broke down stand beside the findings', () => {
    const text = findingsText(
      loadingDoor,
      { ...judgement, crashes: [{ rule: 'dead-ground', message: 'x must be positive,\u001b[2J got -3' }] },
      plainly,
    )
    expect(text.replace(/\s+/g, ' ')).toContain('! Rule dead-ground broke down and gave no answer: x must be positive, [2J got -3.')
    expect(text).toContain('1 could not be judged')
  })

  it('puts colour only where the palette says, and says the same without it', () => {
    const loud = (text: string): string => `<${text}>`
    const palette: Palette = { verdict: { pass: loud, fail: loud, undetermined: loud, 'not-applicable': loud }, strong: loud, quiet: loud }
    const painted = findingsText(loadingDoor, judgement, { ...plainly, palette })
    expect(painted).toContain('<\u22a0 fails>:')
    expect(painted.replace(/[<>]/g, '')).toBe(told())
  })

  it('lets no name of the door file steer the terminal', () => {
    const door = { ...loadingDoor, name: 'a\u001b[31mb', zones: [{ ...leafZone, name: '\u001b]0;x\u0007' }] }
    expect(findingsText(door, judge(door), plainly)).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/)
  })
})
