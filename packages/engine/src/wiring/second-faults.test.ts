import { describe, expect, it } from 'vitest'
import { randomWiring } from '../../cases/random-wiring.ts'
import { twoRelayDoor } from '../../cases/two-relay-door.ts'
import type { Wiring } from '../model/wiring.ts'
import { effectOf, faultEffects } from './fault-effects.ts'
import { sameAs } from './faults.ts'
import { type SecondFaults, secondFaults } from './second-faults.ts'

function all(wiring: Wiring, mostPairs = 1e6): SecondFaults {
  const search = secondFaults(wiring, mostPairs)
  let step = search.next()
  while (!step.done) step = search.next()
  return step.value
}

describe('second faults', () => {
  it('meet at earthed metal where no rail is bonded: the stop line and plus there are the short of the two', () => {
    const { pairs, left } = all(twoRelayDoor({ isTested: false }))
    expect(left).toBe(0)
    const earth = (core: string) => ({ kind: 'core-to-rail', core, rail: 'earth' })
    expect(pairs).toContainEqual(
      expect.objectContaining({ first: earth('1'), second: earth('4'), effect: 'hidden-and-dangerous', sensors: ['scanner'] }),
    )
  })
  it('that are dangerous by a plain search over all pairs are all found, each once, over wirings of seeds 101, 102, 130 and 141', () => {
    for (const seed of [101, 102, 130, 141]) {
      const wiring = randomWiring(seed)
      const singles = faultEffects(wiring)
      const isSafe = ({ effect }: { readonly effect: string }) => effect !== 'hidden-and-dangerous' && effect !== 'found-by-test'
      const name = (a: string, b: string) => (a < b ? `${a} and ${b}` : `${b} and ${a}`)
      const dangerous = new Set<string>()
      for (const first of singles.filter((each) => each.isHidden && isSafe(each)))
        for (const second of singles.filter(isSafe))
          if (!isSafe(effectOf(wiring, [first.fault, second.fault])))
            dangerous.add(name(sameAs(wiring, first.fault), sameAs(wiring, second.fault)))
      const found = all(wiring).pairs.map(({ first, second }) => name(sameAs(wiring, first), sameAs(wiring, second)))
      expect(new Set(found), `seed ${seed}`).toEqual(dangerous)
      expect(found.length).toBe(dangerous.size)
    }
  })
  it('beyond the bound are counted and not judged', () => {
    const whole = all(twoRelayDoor())
    const some = all(twoRelayDoor(), 25)
    expect(some.judged).toBe(25)
    expect(some.left).toBe(whole.judged - 25)
    expect(whole.pairs.slice(0, some.pairs.length)).toEqual(some.pairs)
  })
})
