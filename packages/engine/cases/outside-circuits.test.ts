import { Decimal } from 'decimal.js'
import { Matrix, SVD, solve } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import type { ControlInput, Wiring } from '../src/model/wiring.ts'
import { type Join, planned, solved } from '../src/wiring/circuit.ts'
import { wiringNetwork, withFaults } from '../src/wiring/network.ts'
import { randomNumbers } from './random-numbers.ts'
import { settledNetwork } from './settled-network.ts'
import { twoRelayDoor } from './two-relay-door.ts'

interface Resistors {
  readonly nodes: number
  readonly joins: readonly Join[]
  readonly siemens: Float64Array
  readonly into: Float64Array
}

/** A connected network: a random tree, and some joins more. Currents add up to nothing. @param decades of resistance from the least to the most */
function randomResistors(seed: number, decades: number): Resistors {
  const dice = randomNumbers(seed)
  const nodes = dice.whole(2, 24)
  const tree = Array.from({ length: nodes - 1 }, (_, i): Join => [dice.whole(0, i), i + 1])
  const more = Array.from({ length: dice.whole(0, nodes) }, (): Join => [dice.whole(0, nodes - 1), dice.whole(0, nodes - 1)])
  const joins = [...tree, ...more]
  const siemens = Float64Array.from(joins, () => 10 ** dice.between(-decades / 2, decades / 2))
  const into = new Float64Array(nodes)
  for (let i = 0; i < 3; i++) {
    const [from, to, ampere] = [dice.whole(0, nodes - 1), dice.whole(0, nodes - 1), dice.between(-1, 1)]
    into[from] = (into[from] ?? 0) + ampere
    into[to] = (into[to] ?? 0) - ampere
  }
  return { nodes, joins, siemens, into }
}

/** Kirchhoff's equations of all nodes but node 0, which is 0 V, as rows of numbers of any kind. */
function equations<T>({ nodes, joins, siemens }: Resistors, zero: T, sum: (a: T, siemens: number) => T): T[][] {
  const rows = Array.from({ length: nodes - 1 }, () => Array.from({ length: nodes - 1 }, () => zero))
  const add = (row: number, column: number, value: number) => {
    const at = rows[row - 1]
    if (at && column > 0) at[column - 1] = sum(at[column - 1] as T, value)
  }
  for (const [i, [a, b]] of joins.entries()) {
    if (a === b) continue
    const value = siemens[i] ?? 0
    add(a, a, value)
    add(b, b, value)
    add(a, b, -value)
    add(b, a, -value)
  }
  return rows
}

const ours = ({ nodes, joins, siemens, into }: Resistors) => solved(planned(nodes, joins), siemens, into)

describe('1,000 random resistor networks against ml-matrix 6.15.1', () => {
  it('have the voltages of its solution as far as its own condition number lets it know them', () => {
    let [worst, doubtful] = [0, 0]
    for (let seed = 1; seed <= 1000; seed++) {
      const network = randomResistors(seed, seed % 2 === 0 ? 4 : 12)
      const matrix = new Matrix(equations(network, 0, (a, b) => a + b))
      const theirs = solve(matrix, Matrix.columnVector(Array.from(network.into.subarray(1)))).to1DArray()
      const volt = ours(network)
      const largest = Math.max(...theirs.map(Math.abs), 1e-300)
      const off = Math.max(...theirs.map((each, i) => Math.abs(each - ((volt[i + 1] ?? 0) - (volt[0] ?? 0))))) / largest
      const knows = 1e-15 * network.nodes * new SVD(matrix).condition
      if (knows > 1e-3) doubtful++
      else worst = Math.max(worst, off / Math.max(knows, 1e-13))
    }
    expect(doubtful).toBeLessThan(200) // of 500 whose resistances lie 1e12 apart: there its own digits run out, and the next test goes on
    expect(worst).toBeLessThan(1)
  })
})

describe('random resistor networks whose resistances lie up to 1e12 apart', () => {
  it('are solved to 12 digits, against elimination with 60 digits by decimal.js', () => {
    const Exact = Decimal.clone({ precision: 60 })
    for (let seed = 2001; seed <= 2100; seed++) {
      const network = randomResistors(seed, 12)
      const rows = equations(network, new Exact(0), (a, b) => a.plus(b))
      const right = Array.from(network.into.subarray(1), (ampere) => new Exact(ampere))
      for (const [i, row] of rows.entries()) {
        for (let below = i + 1; below < rows.length; below++) {
          const share = (rows[below]?.[i] ?? new Exact(0)).div(row[i] ?? 1)
          rows[below] = (rows[below] ?? []).map((each, j) => each.minus(share.times(row[j] ?? 0)))
          right[below] = (right[below] ?? new Exact(0)).minus(share.times(right[i] ?? 0))
        }
      }
      const theirs: Decimal[] = []
      for (let i = rows.length - 1; i >= 0; i--) {
        const known = (rows[i] ?? []).reduce((sum, each, j) => (j > i ? sum.plus(each.times(theirs[j] ?? 0)) : sum), new Exact(0))
        theirs[i] = (right[i] ?? new Exact(0)).minus(known).div(rows[i]?.[i] ?? 1)
      }
      const volt = ours(network)
      const largest = Math.max(...theirs.map((each) => Math.abs(each.toNumber())), 1e-300)
      for (const [i, each] of theirs.entries())
        expect(Math.abs(each.toNumber() - ((volt[i + 1] ?? 0) - (volt[0] ?? 0))) / largest, `seed ${seed}`).toBeLessThan(1e-12)
    }
  })
})

/** A supply of 24 V, one resistive input, and what a case adds. */
function circuit(change: Partial<Wiring>, input: Partial<ControlInput> = {}): (plus: string, minus?: string) => number | undefined {
  const door = twoRelayDoor()
  const wiring: Wiring = {
    ...door,
    supply: { ...door.supply, plus: '+', minus: '-', least_V: 24, largest_V: 24, inner_ohm: 1 },
    sensors: [],
    cables: [],
    control: {
      inputs: [
        { id: 'in', acts: 'stop', plus: 'in', minus: '-', ohm: 10_000, fedFrom: undefined, bands: [], pairedWith: undefined, ...input },
      ],
      test: undefined,
      source: { basis: 'invented' },
    },
    ...change,
  }
  const settled = settledNetwork(withFaults(wiringNetwork(wiring), []), { seenBy: new Set(), asking: false, supply_V: 24 })
  return (plus, minus = '-') => settled.between(plus, minus)
}

describe('circuits worked on paper', () => {
  const [scanner] = twoRelayDoor().sensors
  if (!scanner) throw new Error('the case has no sensor')

  it('leave a load of 0.5 A at the end of two cores of 2 ohm, behind 1 ohm of the source, 24 - 0.5 x 5 = 21.5 V', () => {
    const between = circuit({
      sensors: [{ ...scanner, power: { ...scanner.power, plus: 'a', minus: 'b', largest_A: 0.5 }, outputs: [], test: undefined }],
      cables: [
        {
          id: 'W',
          length_mm: 1,
          conductor: { area_mm2: 1 },
          cores: [
            { id: '1', colour: undefined, from: '+', to: 'a', ohm: 2 },
            { id: '2', colour: undefined, from: '-', to: 'b', ohm: 2 },
          ],
        },
      ],
    })
    expect(between('a', 'b')).toBeCloseTo(21.5, 6) // the input's 10 kilohm hang on nothing
    expect(between('b')).toBeCloseTo(1, 6)
  })
  it('read a line with its 10 kilohm input, fed through 2 kilohm and closed by 3.3 kilohm, at 24 x 2.4812 / (2.4812 + 2.001) = 13.286 V', () => {
    const resistors = [{ id: 'R', from: 'in', to: '-', ohm: 3300 }]
    const fedFrom = { terminal: '+', ohm: 2000 }
    expect(circuit({ resistors }, { fedFrom })('in')).toBeCloseTo(13.2855, 3)
    expect(circuit({}, { fedFrom })('in')).toBeCloseTo((24 * 10_000) / 12_001, 9)
  })
  it('leave 2.18 V on an input of 10 kilohm behind an open transistor that leaks through 100 kilohm: nearly off', () => {
    const off = { ...scanner.outputs[0], from: '+', to: 'in', off_ohm: 100_000, closedIn: [] } as (typeof scanner.outputs)[number]
    const sensors = [{ ...scanner, power: { ...scanner.power, plus: '+', minus: '-', largest_A: 0 }, outputs: [off], test: undefined }]
    expect(circuit({ sensors })('in')).toBeCloseTo(24 * (10 / 110), 3)
  })
})
