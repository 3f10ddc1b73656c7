import { describe, expect, it } from 'vitest'
import type { SensorSwitch, Wiring } from '../src/model/wiring.ts'
import { effectOf } from '../src/wiring/fault-effects.ts'
import type { Fault } from '../src/wiring/faults.ts'
import { twoRelayDoor } from './two-relay-door.ts'

/** Contacts in series, side by side, or one contact, named after the event that it fails to close. */
type Contacts = string | { readonly series: readonly Contacts[] } | { readonly parallel: readonly Contacts[] }

/** A stop line that is fed where a body is seen, through such contacts: the top event is that nothing feeds it. */
function lineOf(contacts: Contacts): Wiring {
  const door = twoRelayDoor({ isTested: false })
  const [scanner] = door.sensors
  const [input] = door.control.inputs
  if (!scanner || !input) throw new Error('the case has no sensor')
  const outputs: SensorSwitch[] = []
  let terminals = 0
  const lay = (part: Contacts, from: string, to: string): void => {
    if (typeof part === 'string') {
      const contact = { name: part, output: part, acts: 'presence', from, to, closedIn: ['seen'], on_ohm: 0.2, off_ohm: Infinity } as const
      outputs.push({ ...contact, pulsed: undefined, rating: undefined })
    } else if ('parallel' in part) for (const each of part.parallel) lay(each, from, to)
    else {
      const joints = part.series.slice(1).map(() => `between ${++terminals}`)
      for (const [i, each] of part.series.entries()) lay(each, i === 0 ? from : (joints[i - 1] ?? ''), joints[i] ?? to)
    }
  }
  lay(contacts, 'control.24V', 'control.stop')
  return {
    ...door,
    sensors: [
      { ...scanner, outputs, test: undefined, power: { ...scanner.power, plus: 'control.24V', minus: 'control.0V', largest_A: 0 } },
    ],
    cables: [],
    control: {
      ...door.control,
      inputs: [
        {
          ...input,
          bands: [
            { from_V: -50, to_V: 5, means: 'clear' },
            { from_V: 11, to_V: 50, means: 'seen' },
          ],
        },
      ],
    },
  }
}

/** Sets of contacts that fail to close and together hide a body, none of which is hidden by fewer: from the network's own answers. */
function cutSets(wiring: Wiring, largest: number): readonly (readonly string[])[] {
  const events = wiring.sensors.flatMap(({ outputs }) => outputs.map(({ name }) => name))
  const sets: (readonly string[])[] = []
  const grow = (set: readonly string[], from: number, size: number): void => {
    if (set.length === size) {
      const faults = set.map((name): Fault => ({ kind: 'switch-stuck', sensor: 'scanner', switch: name, at: 'open' }))
      if (effectOf(wiring, faults).effect === 'hidden-and-dangerous') sets.push(set)
      return
    }
    for (let i = from; i < events.length; i++) {
      const more = [...set, events[i] ?? '']
      if (!sets.some((known) => known.every((event) => more.includes(event)))) grow(more, i + 1, size)
    }
  }
  for (let size = 1; size <= largest; size++) grow([], 0, size)
  return sets
}

/** Probability that all events of some set happen, by inclusion and exclusion over the sets; events are independent. */
function topEvent(sets: readonly (readonly string[])[], probability: Readonly<Record<string, number>>): number {
  let top = 0
  for (let chosen = 1; chosen < 1 << sets.length; chosen++) {
    const some = sets.filter((_, i) => chosen & (1 << i))
    const product = [...new Set(some.flat())].reduce((all, event) => all * (probability[event] ?? Number.NaN), 1)
    top += some.length % 2 === 1 ? product : -product
  }
  return top
}

describe('the theatre supply of OpenFTA (report in the SCRAM repository, input/Theatre, 2014, published; check value di-01)', () => {
  const wiring = lineOf({ parallel: ['mains', { series: ['gen', 'relay'] }] })
  const sets = cutSets(wiring, 3)
  it('fails by two pairs: no power from the mains, and no generator or no relay', () => {
    expect(sets).toEqual([
      ['mains', 'gen'],
      ['mains', 'relay'],
    ])
  })
  it('fails with probability 0.002064338', () => {
    expect(topEvent(sets, { mains: 0.03, gen: 1 - Math.exp(-0.02), relay: 0.05 })).toBeCloseTo(0.002064338, 9)
  })
})

describe('the two events of OpenFTA (input/ThreeLevels, 2014, published; check value di-03)', () => {
  it('fail singly, together with probability 0.28', () => {
    const sets = cutSets(lineOf({ series: ['a', 'b'] }), 2)
    expect(sets).toEqual([['a'], ['b']])
    expect(topEvent(sets, { a: 0.1, b: 0.2 })).toBeCloseTo(0.28, 12)
  })
})

describe('the pressure tank of NUREG-0492 (1981, from memory, its structure too; check value di-06)', () => {
  const wiring = lineOf({ series: ['t', 'k2', { parallel: ['s', { series: ['s1', 'k1', 'r'] }] }] })
  const sets = cutSets(wiring, 3)
  it('has two cut sets of one event and three of two', () => {
    expect(sets).toEqual([['t'], ['k2'], ['s', 's1'], ['s', 'k1'], ['s', 'r']])
  })
  it('fails with probability 3.5016e-5', () => {
    expect(topEvent(sets, { t: 5e-6, k2: 3e-5, s: 1e-4, s1: 3e-5, k1: 3e-5, r: 1e-4 })).toBeCloseTo(3.5016e-5, 9)
  })
})
