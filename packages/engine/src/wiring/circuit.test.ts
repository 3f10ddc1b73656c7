import { describe, expect, it } from 'vitest'
import { type Join, partsOf, planned, solved } from './circuit.ts'

/** Resistors between nodes, and a source with inner resistance between node 1 and node 0. */
function volts(nodes: number, resistors: readonly (readonly [a: number, b: number, ohm: number])[], volt: number, inner_ohm: number) {
  const all = [...resistors, [1, 0, inner_ohm] as const]
  const into = new Float64Array(nodes)
  into[1] = volt / inner_ohm
  into[0] = -volt / inner_ohm
  const plan = planned(
    nodes,
    all.map(([a, b]): Join => [a, b]),
  )
  const solution = solved(
    plan,
    Float64Array.from(all, ([, , ohm]) => 1 / ohm),
    into,
  )
  return (node: number, against = 0) => (solution[node] as number) - (solution[against] as number)
}

describe('a network of direct current', () => {
  it('divides a voltage as two resistors do, worked by hand: 24 V over 1 and 2 kilohm leave 16 V', () => {
    const at = volts(
      3,
      [
        [1, 2, 1000],
        [2, 0, 2000],
      ],
      24,
      1e-6,
    )
    expect(at(2)).toBeCloseTo(16, 6)
  })
  it('gives way as a battery with 0.5 ohm at 2 A does: 12 V become 11 V', () => {
    const plan = planned(2, [[1, 0]])
    const volt = solved(plan, Float64Array.of(2), Float64Array.of(-24 + 2, 24 - 2))
    expect((volt[1] as number) - (volt[0] as number)).toBeCloseTo(11, 12)
  })
  it('balances a bridge: equal ratios leave no voltage across it, whatever lies there', () => {
    for (const across of [0.001, 47, 1e9]) {
      const at = volts(
        4,
        [
          [1, 2, 100],
          [2, 0, 200],
          [1, 3, 330],
          [3, 0, 660],
          [2, 3, across],
        ],
        10,
        1,
      )
      expect(at(2, 3)).toBeCloseTo(0, 12)
    }
  })
  it('loses no digits where a short stands beside a leak of a gigaohm', () => {
    const at = volts(
      4,
      [
        [1, 2, 1e9],
        [2, 3, 1e-3],
        [3, 0, 1e9],
      ],
      24,
      0.1,
    )
    expect(at(2)).toBeCloseTo((24 * (1e9 + 1e-3)) / (2e9 + 0.101), 13)
  })
  it('tells which nodes nothing connects, and takes an open join for none', () => {
    const joins: readonly Join[] = [
      [0, 1],
      [2, 3],
      [1, 2],
    ]
    expect([...partsOf({ nodes: 4, joins }, Float64Array.of(1, 1, 0))]).toEqual([0, 0, 2, 2])
    expect([...partsOf({ nodes: 4, joins }, Float64Array.of(1, 1, 1))]).toEqual([0, 0, 0, 0])
  })
  it('solves what an open join cuts off as a network of its own', () => {
    const joins: readonly Join[] = [
      [0, 1],
      [1, 2],
      [2, 3],
    ]
    const volt = solved(planned(4, joins), Float64Array.of(1, 0, 0.5), Float64Array.of(-1, 1, 2, -2))
    expect([(volt[1] as number) - (volt[0] as number), (volt[2] as number) - (volt[3] as number)]).toEqual([1, 4])
  })
})
