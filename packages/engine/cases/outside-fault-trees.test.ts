import { describe, expect, it } from 'vitest'
import { all, any, cutSetsOf, eventsOf, topEvent } from './tree-circuit.ts'

const of = (table: Readonly<Record<string, number>>) => (event: string) => table[event] ?? Number.NaN
/** How many sets have one event, two, and so on. */
function byOrder(sets: readonly (readonly string[])[]): readonly number[] {
  const most = Math.max(...sets.map(({ length }) => length))
  return Array.from({ length: most }, (_, i) => sets.filter(({ length }) => length === i + 1).length)
}

describe('the theatre supply of OpenFTA (report in the SCRAM repository, input/Theatre, 2014, published; check value di-01)', () => {
  const sets = cutSetsOf(all('mains', any('gen', 'relay')))
  it('fails by two pairs: no power from the mains, and no generator or no relay', () => {
    expect(sets).toEqual([
      ['gen', 'mains'],
      ['mains', 'relay'],
    ])
  })
  it('fails with probability 0.002064338', () => {
    expect(topEvent(sets, of({ mains: 0.03, gen: 1 - Math.exp(-0.02), relay: 0.05 }))).toBeCloseTo(0.002064338, 9)
  })
})

// OpenFTA_Report.txt, input/ThreeMotor in the SCRAM repository, run of 9 April 2014, and three_motor.xml there; its events, gates by their parts
describe('the three motors of OpenFTA (report and tree in the SCRAM repository, input/ThreeMotor, 2014, published; check value di-02)', () => {
  const energised1 = any('K1', all(any('KT1inc', 'T2inc'), any('KT2inc', 'T3inc'), any('KT3inc', 'T4inc')), 'S1', 'T1inc')
  const relay5 = any('K5', all(energised1, any('T2', 'K5')))
  const relay2 = any('K2', 'T1', 'K1', all('KT1', 'KT3', any('KT2', 'T4')), 'S1', 'T3')
  const sets = cutSetsOf(all(relay5, relay2))
  it('have 54 cut sets of 18 events: 7 of two, 3 of three, 2 of four, 26 of five, 16 of seven', () => {
    expect(eventsOf(all(relay5, relay2)).length).toBe(18)
    expect(byOrder(sets)).toEqual([0, 7, 3, 2, 26, 0, 16])
    expect(sets.slice(0, 12)).toEqual(
      expect.arrayContaining(
        [
          ...['K1 K5', 'K1 T2', 'K2 K5', 'K5 S1', 'K5 T1', 'K5 T3', 'S1 T2', 'K2 T1inc T2', 'T1 T1inc T2', 'T1inc T2 T3'],
          ...['K5 KT1 KT2 KT3', 'K5 KT1 KT3 T4'],
        ].map((set) => set.split(' ')),
      ),
    )
  })
  it('fail with probability 2.720245e-3 where every event has 0.02, and 0.0211538 where the timers are reset (KT1 to KT3: 1)', () => {
    // the report adds up in single precision: its first term is 1.8e-9 more than the sum of the sets that it lists
    expect(Math.abs(topEvent(sets, () => 0.02) - 2.720245e-3)).toBeLessThan(2.5e-9)
    const isReset = (event: string) => event === 'KT1' || event === 'KT2' || event === 'KT3'
    expect(topEvent(sets, (event) => (isReset(event) ? 1 : 0.02))).toBeCloseTo(0.0211538, 7)
  })
})

describe('the two events of OpenFTA (input/ThreeLevels, 2014, published; check value di-03)', () => {
  it('fail singly, together with probability 0.28', () => {
    const sets = cutSetsOf(any('a', 'b'))
    expect(sets).toEqual([['a'], ['b']])
    expect(topEvent(sets, of({ a: 0.1, b: 0.2 }))).toBeCloseTo(0.28, 12)
  })
})

// chinese.xml, input/Chinese in the SCRAM repository; g31 and g21, g28 and g20 are g10 and g3, g17 and the same with other names
describe('the Chinese tree of the SCRAM benchmark (2019, published; check value di-04)', () => {
  const g15 = any('e17', 'e18')
  const g16 = any('e19', 'e20', 'e21')
  const g3 = all(any('e9', 'e10', 'e11', all(g15, g16)), any('e12', 'e13'))
  const g17 = all(any('e17', 'e18', 'e21'), any('e19', 'e20'))
  const g8 = all(any('e14', 'e15', 'e16', g17), any('e22', 'e23'), any('e24', 'e25'))
  const g9 = all(any('e1', 'e2', 'e3', g8), any('e4', 'e5', 'e6', 'e7', g3))
  const tree = all(any('e1', 'e2', 'e3', g3), any('e4', 'e5', 'e6', 'e7', g8), any('e8', g9))
  const sets = cutSetsOf(tree)
  it('has 392 cut sets of 25 events: 12 of two, 24 of four, 188 of five, 168 of six', () => {
    expect(eventsOf(tree).length).toBe(25)
    expect(byOrder(sets)).toEqual([0, 12, 0, 24, 188, 168])
  })
  it('fails with probability 0.0045691 where every event has 0.02', () => {
    // the benchmark stops at the third term and allows 1e-5
    expect(Math.abs(topEvent(sets, () => 0.02) - 0.0045691)).toBeLessThan(1e-6)
  })
})

describe('the course tree NE 574 of the SCRAM benchmark (input/ne574, 2019, published; check value di-05)', () => {
  const sets = cutSetsOf(all(any('F', 'G', 'B', 'C'), any('C', 'D', all('H', 'I'))))
  it('has one cut set of one event, three of two and three of three', () => {
    expect(byOrder(sets)).toEqual([1, 3, 3])
    expect(sets[0]).toEqual(['C'])
  })
  it('fails with probability 0.662208, where the sum of the sets exceeds 1', () => {
    const given = 'B 0.1, C 0.3, D 0.5, F 0.7, G 0.2, H 0.4, I 0.8'.split(', ').map((each) => each.split(' '))
    const probability = of(Object.fromEntries(given.map(([event, value]) => [event, Number(value)])))
    expect(topEvent(sets, probability)).toBeCloseTo(0.662208, 12)
    expect(sets.reduce((sum, set) => sum + set.reduce((product, event) => product * probability(event), 1), 0)).toBeGreaterThan(1)
  })
})

describe('the pressure tank of NUREG-0492 (1981, from memory, its structure too; check value di-06)', () => {
  const sets = cutSetsOf(any('t', 'k2', all('s', any('s1', 'k1', 'r'))))
  it('has two cut sets of one event and three of two', () => {
    expect(sets).toEqual([['k2'], ['t'], ['k1', 's'], ['r', 's'], ['s', 's1']])
  })
  it('fails with probability 3.5016e-5', () => {
    expect(topEvent(sets, of({ t: 5e-6, k2: 3e-5, s: 1e-4, s1: 3e-5, k1: 3e-5, r: 1e-4 }))).toBeCloseTo(3.5016e-5, 9)
  })
})
