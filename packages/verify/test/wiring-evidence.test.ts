import { EFFECTS } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { diceOf } from './random-numbers.ts'
import { demoText, randomWiredFile, verifiedWiring, wiringEvidenceOf } from './wired-door-files.ts'

describe('true evidence of a wiring', () => {
  it('is accepted of the demo doors, with the counts of their findings, and of faults whose states chase each other too', () => {
    for (const [name, faults, findings, chasing] of [
      ['box-hatch', 69, 2, 8],
      ['freezer-door', 51, 1, 1],
    ] as const) {
      const text = demoText(name)
      const evidence = wiringEvidenceOf(text, { isJudged: true })
      expect([evidence.findings.length, evidence.faults.filter(chases).length], name).toEqual([findings, chasing])
      const result = verifiedWiring(text, evidence)
      if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.issues)}`)
      expect(result.wiring?.faults, name).toBe(faults)
    }
  })

  it('is accepted of random wirings in which every effect occurs, with states that chase each other and without (seeds 1 to 40)', () => {
    const effects = new Map<string, number>()
    for (let seed = 1; seed <= 40; seed++) {
      const text = randomWiredFile(diceOf(seed))
      const evidence = wiringEvidenceOf(text, { isJudged: false })
      const result = verifiedWiring(text, evidence)
      if (!result.ok) throw new Error(`seed ${seed}: ${JSON.stringify(result.issues)}`)
      for (const fault of evidence.faults) {
        const kind = chases(fault) ? `chasing ${fault.effect}` : fault.effect
        effects.set(kind, (effects.get(kind) ?? 0) + 1)
      }
    }
    expect([...effects.keys()]).toEqual(expect.arrayContaining([...EFFECTS]))
    expect([...effects.keys()].filter((kind) => kind.startsWith('chasing')).length).toBeGreaterThan(2)
  })

  it('claims nothing where it is absent', () => {
    const result = verifiedWiring(demoText('box-hatch'), undefined)
    expect(result).toMatchObject({ ok: true, wiring: undefined })
  })
})

const chases = ({ says }: { readonly says: readonly (readonly string[])[] }) => says.flat().some((said) => said.startsWith('~'))
