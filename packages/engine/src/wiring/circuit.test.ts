import { describe, expect, it } from 'vitest'
import { type Circuit, solved } from './circuit.ts'

const ohms = (a: number, b: number, ohm: number) => ({ a, b, siemens: 1 / ohm })

describe('a network of direct current', () => {
  it('divides a voltage as two resistors do, worked by hand: 24 V over 1 and 2 kilohm leave 16 V', () => {
    const { volt } = solved({
      nodes: 3,
      conductances: [ohms(1, 2, 1000), ohms(2, 0, 2000)],
      sources: [{ plus: 1, minus: 0, volt: 24, ohm: 1e-6 }],
      draws: [],
    })
    expect(volt[2]).toBeCloseTo(16, 6)
  })
  it('gives way as a battery with 0.5 ohm at 2 A does: 12 V become 11 V', () => {
    const { volt } = solved({
      nodes: 2,
      conductances: [],
      sources: [{ plus: 1, minus: 0, volt: 12, ohm: 0.5 }],
      draws: [{ from: 1, to: 0, ampere: 2 }],
    })
    expect(volt[1]).toBeCloseTo(11, 12)
  })
  it('balances a bridge: equal ratios leave no voltage across it, whatever lies there', () => {
    const circuit = (across: number): Circuit => ({
      nodes: 4,
      conductances: [ohms(1, 2, 100), ohms(2, 0, 200), ohms(1, 3, 330), ohms(3, 0, 660), ohms(2, 3, across)],
      sources: [{ plus: 1, minus: 0, volt: 10, ohm: 1 }],
      draws: [],
    })
    for (const across of [0.001, 47, 1e9]) {
      const { volt } = solved(circuit(across))
      expect((volt[2] ?? 0) - (volt[3] ?? 0)).toBeCloseTo(0, 12)
    }
  })
  it('loses no digits where a short stands beside a leak of a gigaohm', () => {
    const { volt } = solved({
      nodes: 4,
      conductances: [ohms(1, 2, 1e9), ohms(2, 3, 1e-3), ohms(3, 0, 1e9)],
      sources: [{ plus: 1, minus: 0, volt: 24, ohm: 0.1 }],
      draws: [],
    })
    expect(volt[2]).toBeCloseTo((24 * (1e9 + 1e-3)) / (2e9 + 0.101), 13)
  })
  it('tells which nodes nothing connects', () => {
    const { partOf } = solved({ nodes: 4, conductances: [ohms(0, 1, 1), ohms(2, 3, 1)], sources: [], draws: [] })
    expect([...partOf]).toEqual([0, 0, 2, 2])
  })
})
