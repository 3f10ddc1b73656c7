import * as A from '@automerge/automerge'
import { firstWiring, parseDocument } from '@sillsight/document'
import { describe, expect, it } from 'vitest'
import { putAt } from '../entry/places.ts'
import type { Draft } from '../store/contract.ts'
import { keepEnds, renameTerminal, terminalName, terminalsOf } from './terminals.ts'

const survey = { opening: { width_mm: 3000, height_mm: 3000 } }
const sensor = { id: 'eye', use: 'demo-header-scanner', side: 'a', mountingHeight_mm: 2900, offset_mm: 150 }
const begun = () => structuredClone({ sillsight: 1, survey, sensors: [sensor], wiring: firstWiring(['eye']) }) as unknown as Draft
const reads = (draft: Draft) => parseDocument(JSON.stringify(draft)).ok

describe('the terminals of a wiring', () => {
  it('keep their cores when they are renamed', () => {
    const draft = begun()
    renameTerminal(draft, 'eye.common', 'eye.14')
    expect(draft.wiring?.cables[0]?.cores[2]?.to).toBe('eye.14')
    expect(terminalsOf(draft.wiring as NonNullable<Draft['wiring']>)).toContain('eye.14')
    expect(reads(draft)).toBe(true)
  })
  it('stay as ends in the air when their part goes, so that the door still reads', () => {
    const draft = begun()
    ;(draft.wiring?.sensors[0] as { test?: unknown }).test = undefined
    expect(reads(draft)).toBe(false)
    keepEnds(draft)
    expect(draft.wiring?.joints).toEqual(['eye.test'])
    expect(reads(draft)).toBe(true)
  })
  it('stay as ends in the air in a mergeable document too, whose lists have not all that lists have', () => {
    const made = A.from({ file: begun() as Record<string, unknown> })
    const { file } = A.change(made, ({ file: changing }) => {
      const draft = changing as unknown as Draft
      putAt(draft, 'wiring/sensors/0/test', undefined)
      keepEnds(draft)
    })
    expect((file as unknown as Draft).wiring?.joints).toEqual(['eye.test'])
  })
  it('take the name of their device where only the terminal is typed, and nothing that is no name', () => {
    expect(terminalName('14', 'eye')).toBe('eye.14')
    expect(terminalName(' T +', 'eye')).toBe('eye.T-+')
    expect(terminalName('box.3', 'eye')).toBe('box.3')
    expect([terminalName('', 'eye'), terminalName('a.', 'eye'), terminalName('\u00e4', 'eye')]).toEqual([undefined, undefined, undefined])
  })
})
