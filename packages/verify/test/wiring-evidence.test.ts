import { EFFECTS } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { diceOf } from './random-numbers.ts'
import { demoText, randomWiredFile, verifiedWiring, wiringEvidenceOf } from './wired-door-files.ts'

describe('true evidence of a wiring', () => {
  it('is accepted of the demo doors, with the counts of their findings, and says of which faults nothing is shown', () => {
    for (const [name, faults, notShown] of [
      ['box-hatch', 69, 8],
      ['freezer-door', 51, 1],
    ] as const) {
      const text = demoText(name)
      const evidence = wiringEvidenceOf(text, { isJudged: true })
      expect(evidence.findings.length, name).toBe(name === 'box-hatch' ? 2 : 1)
      const result = verifiedWiring(text, evidence)
      if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.issues)}`)
      expect([result.wiring?.faults, result.wiring?.notShown.length], name).toEqual([faults, notShown])
    }
  })

  it('is accepted of random wirings in which every effect occurs (seeds 1 to 40)', () => {
    const effects = new Map<string, number>()
    let chasing = 0
    for (let seed = 1; seed <= 40; seed++) {
      const text = randomWiredFile(diceOf(seed))
      const evidence = wiringEvidenceOf(text, { isJudged: false })
      const result = verifiedWiring(text, evidence)
      if (!result.ok) throw new Error(`seed ${seed}: ${JSON.stringify(result.issues)}`)
      chasing += result.wiring?.notShown.length ?? 0
      for (const { effect } of evidence.faults) effects.set(effect, (effects.get(effect) ?? 0) + 1)
    }
    expect([...effects.keys()].sort()).toEqual([...EFFECTS].sort())
    expect(chasing).toBeGreaterThan(0)
  })

  it('claims nothing where it is absent', () => {
    const result = verifiedWiring(demoText('box-hatch'), undefined)
    expect(result).toMatchObject({ ok: true, wiring: undefined })
  })
})
