import { describe, expect, it } from 'vitest'
import { beamDoor, text } from '../test/doors.ts'
import { formats, record, written } from './formats.ts'
import { type JudgedAnswer, judgeFile, outcomeOf } from './judging.ts'

const look = { width: 80, colored: false, ascii: false, units: 'metric', language: 'en' } as const
const judged = judgeFile('door.json', text(beamDoor({ beam_mm: 400 }))) as JudgedAnswer

describe('a rule that crashes', () => {
  const judgement = { ...judged.judgement, crashes: [{ rule: 'beam-gap-max', message: 'expected a count, got -1' }] }
  const answer = { ...judged, judgement, outcome: outcomeOf(judgement) }

  it('outweighs every finding, for nobody knows what it would have said', () => {
    expect(judged.outcome).toBe('pass')
    expect(answer.outcome).toBe('crash')
  })

  it('is told on standard error in every format, as a fault of the program, and stands in the JSON beside the findings', () => {
    for (const format of formats) {
      const { outcome, remarks } = written(answer, format, look)
      expect(outcome).toBe('crash')
      expect(remarks).toContain('door.json: rule beam-gap-max crashed: expected a count, got -1')
      expect(remarks).toContain('fault in sillsight, not in your file')
    }
    expect(record(answer, look)).toMatchObject({ ok: true, outcome: 'crash', crashes: [{ rule: 'beam-gap-max' }] })
  })
})

describe('a program that throws where it should answer', () => {
  const crashed = { kind: 'crashed', file: 'door.json', outcome: 'crash', message: 'Error: oh' } as const

  it('has a record of its own and reaches pipelines too', () => {
    expect(record(crashed, look)).toEqual({
      file: 'door.json',
      ok: false,
      outcome: 'crash',
      crashes: [{ rule: 'sillsight', message: 'Error: oh' }],
    })
    expect(written(crashed, 'text', look)).toMatchObject({ result: '', remarks: expect.stringContaining('door.json: crashed: Error: oh') })
    expect(written(crashed, 'junit', look).whole).toMatchObject({ file: 'door.json', issues: [{ code: 'crash' }] })
  })
})

describe('the outcome of one door', () => {
  it('is a pass only when something passes and nothing fails or stays open', () => {
    const [pass] = judged.judgement.findings.filter(({ verdict }) => verdict === 'pass')
    const [none] = judged.judgement.findings.filter(({ verdict }) => verdict === 'not-applicable')
    if (!pass || !none) throw new Error('the test door has lost a finding')
    expect(outcomeOf({ findings: [pass, none], crashes: [] })).toBe('pass')
    expect(outcomeOf({ findings: [none], crashes: [] })).toBe('undetermined')
    expect(outcomeOf({ findings: [], crashes: [] })).toBe('undetermined')
  })
})
