import { describe, expect, it } from 'vitest'
import { plainDoor } from '../../cases/plain-door.ts'
import type { Judgement } from '../model/finding.ts'
import { canonicalText } from './canonical-text.ts'
import { judge } from './judge.ts'

const judgement = (door: string, measured: number, facts: Readonly<Record<string, number>> = {}): Judgement => ({
  door,
  edition: '2026-11',
  crashes: [],
  coverages: [],
  findings: [
    {
      id: 'a',
      rule: 'a',
      subject: { kind: 'door', id: 'door' },
      edition: '2026-11',
      steps: [],
      basis: [],
      facts,
      verdict: 'fail',
      measured: { value: measured, unit: 'mm' },
      limit: { value: 0, unit: 'mm' },
    },
  ],
})

describe('the canonical text', () => {
  it('is JSON that leads back to the judgement', () => {
    const real = judge(plainDoor())
    expect(JSON.parse(canonicalText(real))).toEqual(JSON.parse(JSON.stringify(real)))
  })

  it('does not depend on the order in which keys were written', () => {
    expect(canonicalText(judgement('a', 1, { x: 1, y: 2 }))).toBe(canonicalText(judgement('a', 1, { y: 2, x: 1 })))
    const { door, ...rest } = judgement('a', 1)
    expect(canonicalText({ ...rest, door })).toBe(canonicalText({ door, ...rest }))
  })

  it('writes numbers by the shortest digits that lead back to them, and -0 as 0', () => {
    expect(canonicalText(judgement('a', 0.1 + 0.2))).toContain('"value":0.30000000000000004')
    expect(canonicalText(judgement('a', -0))).toBe(canonicalText(judgement('a', 0)))
    expect(canonicalText(judgement('a', 1e21))).toContain('"value":1e+21')
  })

  it('tells apart what JSON would lose, and any other two judgements', () => {
    const texts = [Infinity, -Infinity, Number.NaN, 0, 1, 1.0000000000000002].map((value) => canonicalText(judgement('a', value)))
    expect(new Set(texts).size).toBe(texts.length)
    expect(canonicalText(judgement('a"b\n', 1))).toContain('"a\\"b\\n"')
  })
})
