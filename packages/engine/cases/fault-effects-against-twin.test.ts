import { describe, expect, it } from 'vitest'
import { faultEffects } from '../src/wiring/fault-effects.ts'
import { plainFaultEffects } from './plain-fault-effects.ts'
import { randomWiring } from './random-wiring.ts'

describe('the effects of every single fault', () => {
  it('are those that the plain way finds, over wirings of seeds 1 to 40', () => {
    const found = new Set<string>()
    for (let seed = 1; seed <= 40; seed++) {
      const wiring = randomWiring(seed)
      const effects = faultEffects(wiring)
      expect(effects, `seed ${seed}`).toEqual(plainFaultEffects(wiring))
      for (const { effect } of effects) found.add(effect)
    }
    expect(found.size).toBe(6)
  })
  it('are those that the plain way finds on top of another fault, over wirings of seeds 41 to 50', () => {
    for (let seed = 41; seed <= 50; seed++) {
      const wiring = randomWiring(seed)
      const first = faultEffects(wiring).filter(({ isHidden }) => isHidden)[seed % 7]?.fault
      const hidden = first ? [first] : []
      expect(faultEffects(wiring, hidden), `seed ${seed}`).toEqual(plainFaultEffects(wiring, hidden))
    }
  })
})
