import { describe, expect, it } from 'vitest'
import { settledNetwork } from '../../cases/settled-network.ts'
import { twoRelayDoor } from '../../cases/two-relay-door.ts'
import type { Wiring } from '../model/wiring.ts'
import { diagnosis, type Meter, type NextMeasurement, type Observation } from './diagnosis.ts'
import { type Fault, sameAs, singleFaults } from './faults.ts'
import { wiringNetwork, withFaults } from './network.ts'

const METER: Meter = { off_V: 0.05, off_percent: 1, ohm: 1e7 }
type Probes = Pick<NextMeasurement, 'plus' | 'minus' | 'seenBy' | 'asking'>

/** What a meter shows at a door with a fault whose supply gives 24.3 V; undefined where the door does not come to rest. */
function measured(wiring: Wiring, fault: Fault, { plus, minus, seenBy, asking }: Probes): Observation | undefined {
  const network = withFaults(wiringNetwork(wiring), [fault], [{ from: plus, to: minus, ohm: METER.ohm }])
  const settled = settledNetwork(network, { seenBy: new Set(seenBy), asking, supply_V: 24.3 })
  if (!settled.isStable) return undefined
  return { kind: 'volt', plus, minus, seenBy, asking, volt: settled.between(plus, minus) ?? 0 }
}

/** Starts where anybody would, and then goes where it is sent, until nothing more can be told apart. */
function traced(wiring: Wiring, fault: Fault) {
  const seen: Observation[] = []
  let probes: Probes | undefined = { plus: 'control.stop', minus: 'control.0V', seenBy: [], asking: false }
  for (let i = 0; probes && i < 20; i++) {
    const observation = measured(wiring, fault, probes)
    if (!observation) return undefined
    seen.push(observation)
    probes = diagnosis(wiring, seen, METER).next
  }
  return { ...diagnosis(wiring, seen, METER), seen }
}

describe('the search for what is wrong', () => {
  const wiring = twoRelayDoor()
  it('keeps each seeded fault among those that explain everything, and ends where no measurement parts them', () => {
    let [alone, tracedAll] = [0, 0]
    for (const fault of singleFaults(wiring)) {
      if (sameAs(wiring, fault) === 'nothing') continue
      const found = traced(wiring, fault)
      if (!found) continue
      const best = found.suspects.filter(({ explains }) => explains === found.seen.length)
      expect(
        best.map((each) => each.fault && sameAs(wiring, each.fault)),
        JSON.stringify(fault),
      ).toContain(sameAs(wiring, fault))
      expect(found.next).toBeUndefined()
      tracedAll++
      if (best.length === 1) alone++
    }
    expect(tracedAll).toBeGreaterThan(50)
    expect(alone).toBeGreaterThan(tracedAll / 3)
  })
  it('tells an open core from an open contact by the voltage across them', () => {
    const { suspects, seen } = traced(wiring, { kind: 'core-open', core: '4' }) ?? { suspects: [], seen: [] }
    expect(suspects.filter(({ explains }) => explains === seen.length).map(({ fault }) => fault)).toEqual([
      { kind: 'core-open', core: '4' },
    ])
  })
  it('suspects nothing of a wiring in order that it cannot clear, and lists "in order" first', () => {
    const at = { plus: 'control.stop', minus: 'control.0V', seenBy: [], asking: false }
    const { suspects, next } = diagnosis(wiring, [{ ...at, kind: 'volt', volt: 24 }], METER)
    expect(suspects[0]).toEqual({ fault: undefined, explains: 1 })
    expect(next?.bits).toBeGreaterThan(0)
  })
  it('heeds what the sensor and the control show', () => {
    const standing = { seenBy: ['scanner'], asking: false }
    const shown: readonly Observation[] = [
      { ...standing, kind: 'sensor', sensor: 'scanner', shows: 'seen' },
      { ...standing, kind: 'input', input: 'stop', shows: 'clear' },
    ]
    const { suspects } = diagnosis(wiring, shown, METER)
    const best = suspects.filter(({ explains }) => explains === 2).map(({ fault }) => fault)
    expect(best).toContainEqual({ kind: 'switch-stuck', sensor: 'scanner', switch: 'presence', at: 'closed' })
    expect(best).not.toContainEqual({ kind: 'sensor-stuck', sensor: 'scanner', in: 'clear' })
    expect(best).not.toContain(undefined)
  })
  it('shows nothing at a terminal that an open core has cut off, as a meter does', () => {
    const cut = (volt: number): Observation => ({ kind: 'volt', plus: 'scanner.P1', minus: 'control.0V', seenBy: [], asking: false, volt })
    const keeps = (volt: number) =>
      diagnosis(wiring, [cut(volt)], METER).suspects.some(({ fault, explains }) => explains === 1 && fault?.kind === 'cable-off')
    expect([keeps(0), keeps(12), keeps(24)]).toEqual([true, false, false])
    // behind a contact that leaks through 10 megohm the meter takes its half: 12 V of 24 V, and not 24 V
    const [scanner] = wiring.sensors
    if (!scanner) throw new Error('no sensor')
    const leaky = { ...scanner, outputs: scanner.outputs.map((each) => ({ ...each, off_ohm: 1e7 })) }
    const door: Wiring = { ...wiring, supply: { ...wiring.supply, least_V: 24, largest_V: 24 }, sensors: [leaky] }
    const opening: Observation = { kind: 'volt', plus: 'scanner.O2', minus: 'control.0V', seenBy: [], asking: false, volt: 12 }
    const best = diagnosis(door, [opening], METER).suspects.filter(({ explains }) => explains === 1)
    expect(best.map(({ fault }) => fault)).toContainEqual({ kind: 'core-open', core: '6' })
  })
  it('keeps what only part of the range of the supply explains', () => {
    // at 22 V the input is between its ranges: it may show anything there; above 24 V it is clear
    const bands = [
      { from_V: -50, to_V: 5, means: 'seen' as const },
      { from_V: 24, to_V: 50, means: 'clear' as const },
    ]
    const [stop, ...others] = wiring.control.inputs
    if (!stop) throw new Error('no input')
    const door: Wiring = { ...wiring, control: { ...wiring.control, inputs: [{ ...stop, bands }, ...others] } }
    const shows = (what: 'clear' | 'seen'): Observation => ({ seenBy: [], asking: false, kind: 'input', input: 'stop', shows: what })
    const inOrder = (what: 'clear' | 'seen') => diagnosis(door, [shows(what)], METER).suspects.find(({ fault }) => !fault)?.explains
    expect([inOrder('clear'), inOrder('seen')]).toEqual([1, 1])
  })
  it('refuses a terminal that the wiring has not', () => {
    const at = { plus: 'control.stpo', minus: 'control.0V', seenBy: [], asking: false }
    expect(() => diagnosis(wiring, [{ ...at, kind: 'volt', volt: 24 }], METER)).toThrow('the wiring has no control.stpo')
  })
})
