import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../cases/random-numbers.ts'
import { twoRelayDoor } from '../../cases/two-relay-door.ts'
import type { Cable, WiredSensor, Wiring } from '../model/wiring.ts'
import { LONGEST_MM, supplyAtDevices, supplyLoad, switchLoads } from './supply.ts'

const INVENTED = { basis: 'invented' } as const
const AS_20 = { coldest: 1, hottest: 1 }

function device(id: string, largest_A: number, least_V = 18, changes: Partial<WiredSensor['power']> = {}): WiredSensor {
  const power = { plus: `${id}.+`, minus: `${id}.-`, largest_A, inrush_A: undefined, least_V, largest_V: 30, ...changes }
  return { id, power, outputs: [], test: undefined, ownFaults_s: undefined, source: INVENTED }
}

/** Two cores from here to there. */
function feed(id: string, from: string, to: string, length_m: number, ohm_per_km: number, area_mm2 = 0.75): Cable {
  const core = (end: '+' | '-') => ({
    id: `${id}${end}`,
    colour: undefined,
    from: `${from}.${end}`,
    to: `${to}.${end}`,
    ohm: (length_m * ohm_per_km) / 1000,
  })
  return { id, length_mm: length_m * 1000, conductor: { area_mm2 }, cores: [core('+'), core('-')] }
}

function fed(sensors: readonly WiredSensor[], cables: readonly Cable[], volt: number | readonly [number, number] = 24): Wiring {
  const [least_V, largest_V] = typeof volt === 'number' ? [volt, volt] : volt
  return {
    supply: {
      plus: 'source.+',
      minus: 'source.-',
      least_V,
      largest_V,
      inner_ohm: 1e-6,
      largest_A: 5,
      earthed: 'none',
      source: INVENTED,
    },
    sensors,
    control: { inputs: [], test: undefined, source: INVENTED },
    cables,
    resistors: [],
    joints: [],
  }
}

const only = (wiring: Wiring, copper = AS_20) => supplyAtDevices(wiring, copper)[0]

describe('the voltage at a device', () => {
  // el-17 of the collection of check values: 60 m at 26.0 ohm/km and 0.5 A; the loop has 3.12 ohm and takes 1.56 V of 24 V
  const example = fed([device('d', 0.5)], [feed('W1', 'source', 'd', 60, 26)])
  it('is 22.44 V in the published example of a loop', () => {
    expect(only(example)?.lowest_V).toBeCloseTo(22.44, 5)
  })
  it('is 24 - 1.56 x 1.1179 with the loop at 50 °C', () => {
    const found = only(example, { coldest: 0.9, hottest: 1.1179 })
    expect(found?.lowest_V).toBeCloseTo(22.256, 3)
    expect(found?.coldest_V).toBeCloseTo(24 - 1.56 * 0.9, 5)
  })
  it('is that of the largest source where nothing is drawn', () => {
    expect(only({ ...example, supply: { ...example.supply, largest_V: 28 } })?.highest_V).toBeCloseTo(28, 9)
  })
  it('sinks at the moment when power comes to all at once, where somebody said by how much', () => {
    expect(only(example)?.inrush_V).toBeUndefined()
    const rushing = { ...example, sensors: [device('d', 0.5, 18, { inrush_A: 2 })] }
    expect(only(rushing)?.inrush_V).toBeCloseTo(24 - 3.12 * 2, 4)
  })
  it('is lower where two devices share a cable, worked by hand: 2 ohm with 0.5 A, then 1 ohm with 0.2 A and 4 ohm with 0.3 A', () => {
    const shared = fed(
      [device('near', 0.2), device('far', 0.3)],
      [feed('W1', 'source', 'box', 50, 20), feed('W2', 'box', 'near', 25, 20), feed('W3', 'box', 'far', 100, 20)],
    )
    const [near, far] = supplyAtDevices(shared, AS_20)
    expect([near?.lowest_V, far?.lowest_V].map((volt) => Number(volt?.toFixed(4)))).toEqual([22.8, 21.8])
    expect([near?.cables, far?.cables]).toEqual([
      ['W1', 'W2'],
      ['W1', 'W3'],
    ])
  })
  it('counts what the outputs feed: 24 V over 3 kilohm load the plus core by 8 mA', () => {
    const door = twoRelayDoor({ isTested: false })
    const at = (ohm: number) => {
      const inputs = door.control.inputs.map((input) => ({ ...input, ohm }))
      // the presence contact gets its voltage at the sensor
      const cores = door.cables.flatMap((cable) =>
        cable.cores.map((core) => (core.to === 'scanner.P1' ? { ...core, from: 'scanner.+' } : core)),
      )
      return (
        only({ ...door, control: { ...door.control, inputs }, cables: door.cables.map((cable) => ({ ...cable, cores })) })?.lowest_V ?? 0
      )
    }
    expect(at(1e9) - at(3000)).toBeCloseTo((0.234 + 0.5) * (22 / 3000), 3) // the plus core and the source alone: the input returns at the control
  })
  it('is 0 where nothing connects the device, or it cannot draw its current', () => {
    expect(only(fed([device('d', 0.5)], []))).toMatchObject({ lowest_V: 0, highest_V: 0, cables: [], longest_mm: undefined })
    expect(only(fed([device('d', 50)], [feed('W1', 'source', 'd', 60, 26)]))?.lowest_V).toBe(0)
  })
  it('agrees with the sum of the drops along its path, on 200 random trees of cables (seed 5)', () => {
    const random = randomNumbers(5)
    for (let round = 0; round < 200; round++) {
      const count = random.whole(2, 7)
      const parents = Array.from({ length: count }, (_, i) => random.whole(-1, i - 1))
      const ohms = parents.map(() => random.between(0.1, 2))
      const currents = parents.map(() => random.between(0.01, 0.3))
      const name = (i: number) => (i < 0 ? 'source' : `d${i}`)
      const tree = fed(
        currents.map((ampere, i) => device(name(i), ampere)),
        parents.map((parent, i) => feed(`W${i}`, name(parent), name(i), 1, (ohms[i] as number) * 1000)),
      )
      const below = (i: number): number => parents.reduce((sum, parent, j) => (parent === i ? sum + below(j) : sum), currents[i] as number)
      const drop = (i: number): number => (i < 0 ? 0 : 2 * (ohms[i] as number) * below(i) + drop(parents[i] as number))
      const total = currents.reduce((a, b) => a + b, 0)
      for (const [i, { lowest_V }] of supplyAtDevices(tree, AS_20).entries())
        expect(lowest_V).toBeCloseTo(Math.max(0, 24 - drop(i) - 1e-6 * total), 9)
    }
  })
})

describe('the cable that would do', () => {
  it('is the thinnest that holds: 0.5 A over 60 m and at least 22.5 V need less than 25.0 ohm/km, so 1 mm2, and 18 AWG', () => {
    const wiring = fed([device('d', 0.5, 22.5)], [feed('W1', 'source', 'd', 60, 26)])
    expect(only(wiring)?.smallest).toEqual({ area: { area_mm2: 1.0 }, gauge: { awg: 18 } })
    // hotter by a quarter: at most 20 ohm/km at 20 °C, where 1 mm2 has 19.5, and 18 AWG 21.6
    expect(only(wiring, { coldest: 1, hottest: 1.25 })?.smallest).toEqual({ area: { area_mm2: 1.0 }, gauge: { awg: 16 } })
    // and by half: at most 16.7
    expect(only(wiring, { coldest: 1, hottest: 1.5 })?.smallest).toEqual({ area: { area_mm2: 1.5 }, gauge: { awg: 16 } })
  })
  it('is none where the source itself is too low', () => {
    const wiring = fed([device('d', 0.5, 25)], [feed('W1', 'source', 'd', 60, 26)])
    expect(only(wiring)).toMatchObject({ smallest: { area: undefined, gauge: undefined }, longest_mm: 0 })
  })
  it('may be as long as the loop takes what may be lost: 1.5 V at 0.5 A and 52 ohm/km of loop are 57.69 m', () => {
    const wiring = fed([device('d', 0.5, 22.5)], [feed('W1', 'source', 'd', 10, 26)])
    expect(only(wiring)?.longest_mm).toBe(57_600)
  })
  it('may be as long as we look where nearly nothing is drawn', () => {
    expect(LONGEST_MM).toBe(1_000_000)
    expect(only(fed([device('d', 0.001, 22.5)], [feed('W1', 'source', 'd', 10, 26)]))?.longest_mm).toBe(Infinity)
  })
})

describe('what the source gives', () => {
  it('is the sum of all, and of their inrush', () => {
    const wiring = fed(
      [device('a', 0.5, 18, { inrush_A: 2 }), device('b', 0.25)],
      [feed('W1', 'source', 'a', 10, 26), feed('W2', 'source', 'b', 10, 26)],
    )
    const { largest_A, inrush_A } = supplyLoad(wiring, AS_20)
    expect([largest_A, inrush_A].map((ampere) => Number(ampere.toFixed(6)))).toEqual([0.75, 2.25])
  })
})

describe('what a contact switches', () => {
  it('is the current of its input, most at the largest source and least at the least, and the voltage that stands across it while open', () => {
    const [presence, opening] = switchLoads(twoRelayDoor(), AS_20)
    expect(presence).toMatchObject({ sensor: 'scanner', name: 'presence' })
    // 27 V and 22 V over 3000 ohm and about 1.2 ohm of contact, core and source; the device draws 0.2 A at the least source
    expect(presence?.most_A).toBeCloseTo(27 / 3001.2, 4)
    expect(presence?.least_A).toBeCloseTo(22 / 3001.2, 4)
    expect(presence?.least_A).toBeLessThan(22 / 3000)
    expect(opening?.open_V).toBeCloseTo(27, 1)
  })
})
