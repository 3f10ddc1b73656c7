import type { Wiring } from '../model/wiring.ts'
import { effectJudge, type FaultEffect, faultEffects } from './fault-effects.ts'
import { type Fault, sameAs } from './faults.ts'
import { wiringNetwork } from './network.ts'

/** Two faults that each leave the door safe and together do not, of which the first is there and nobody knows of it. */
export interface FaultPair extends Omit<FaultEffect, 'fault'> {
  readonly effect: 'hidden-and-dangerous' | 'found-by-test'
  readonly first: Fault
  readonly second: Fault
}

export interface SecondFaults {
  /** In the order of the faults. Shorts that join the same two terminals are one fault here; the first of them stands for all. */
  readonly pairs: readonly FaultPair[]
  readonly judged: number
  /** Pairs that the bound left out: of these nothing is known. */
  readonly left: number
}

/**
 * Every second fault on top of each first that nobody notices, each pair once. It pauses after each first, so that whoever runs it can show how far it
 * is and stop it by not going on.
 *
 * @param mostPairs bound on the pairs that are judged; there are at most as many as hidden faults times all faults
 */
export function* secondFaults(wiring: Wiring, mostPairs: number): Generator<Pick<SecondFaults, 'judged' | 'left'>, SecondFaults> {
  const network = wiringNetwork(wiring)
  const singles = firstOfEach(wiring, faultEffects(wiring))
  const isSafe = ({ effect }: FaultEffect) => effect !== 'hidden-and-dangerous' && effect !== 'found-by-test'
  const isFirst = (each: FaultEffect) => each.isHidden && isSafe(each)
  const seconds = singles.filter(isSafe)
  // a pair of two that are both hidden comes once, under the earlier
  const partners = (first: FaultEffect, i: number) => seconds.filter((each, j) => each !== first && (j > i || !isFirst(each)))
  let left = seconds.reduce((sum, each, i) => sum + (isFirst(each) ? partners(each, i).length : 0), 0)
  let judged = 0
  const pairs: FaultPair[] = []
  for (const [i, first] of seconds.entries()) {
    if (!isFirst(first)) continue
    const judge = effectJudge(network, [first.fault])
    for (const { fault } of partners(first, i).slice(0, mostPairs - judged)) {
      const { effect, ...more } = judge(fault)
      if (effect === 'hidden-and-dangerous' || effect === 'found-by-test')
        pairs.push({ ...more, effect, first: first.fault, second: fault })
      judged++
      left--
    }
    yield { judged, left }
  }
  return { pairs, judged, left }
}

function firstOfEach(wiring: Wiring, effects: readonly FaultEffect[]): readonly FaultEffect[] {
  const known = new Set<string>()
  return effects.filter(({ fault }) => {
    const same = sameAs(wiring, fault)
    if (known.has(same)) return false
    known.add(same)
    return true
  })
}
