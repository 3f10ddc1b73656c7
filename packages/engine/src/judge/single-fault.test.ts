import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../cases/judged.ts'
import { fromMemory, measured, plainDoor } from '../../cases/plain-door.ts'
import { twoRelayDoor } from '../../cases/two-relay-door.ts'
import { scanner, wiredDoor } from '../../cases/wired-door.ts'
import type { Door } from '../model/door.ts'
import type { Wiring } from '../model/wiring.ts'

const door = (wiring: Wiring | undefined, changes: Partial<Door> = {}) => {
  const plain = plainDoor({ wiring, ...changes })
  return { ...plain, sensors: plain.sensors.map((sensor) => ({ ...sensor, id: 'scanner' })) }
}
const judged = (wiring: Wiring | undefined, changes: Partial<Door> = {}) => findingsOf('single-fault', door(wiring, changes))

describe('single-fault', () => {
  it('asks how a door is wired that says nothing of it', () => {
    expect(judged(undefined)).toMatchObject([{ id: 'single-fault:door', verdict: 'undetermined', needs: ['wiring'] }])
  })
  it('asks for the sensor that the wiring leaves out', () => {
    const other = { ...twoRelayDoor(), sensors: twoRelayDoor().sensors.map((sensor) => ({ ...sensor, id: 'other' })) }
    expect(judged(other)).toMatchObject([{ id: 'single-fault:scanner', verdict: 'undetermined', needs: ['wiring/sensors'] }])
  })
  it('passes where a test finds what would hide, and says within what time', () => {
    expect(judged(twoRelayDoor())).toMatchObject([
      { id: 'single-fault:scanner', verdict: 'pass', measured: { value: 0 }, limit: { value: 0 }, facts: { hidden: 0, within_s: 3600 } },
    ])
  })
  it('fails without a test, and tells the first fault that hides', () => {
    const [finding] = judged(twoRelayDoor({ isTested: false }))
    expect(finding).toMatchObject({ verdict: 'fail', facts: { fault: 'cores-shorted', core: '1', other: '4' } })
  })
  it('fails for a broken core first where presence opens nothing', () => {
    expect(judged(twoRelayDoor({ presence: ['seen'], isTested: false }))).toMatchObject([
      { verdict: 'fail', facts: { fault: 'core-open', core: '1' } },
    ])
  })
  it('fails without any fault where the control looks at the wrong contact', () => {
    const right = twoRelayDoor()
    const wrong = {
      ...right,
      cables: right.cables.map((cable) => ({
        ...cable,
        cores: cable.cores.map((core) => (core.id === '4' ? { ...core, from: 'control.24V' } : core)),
      })),
      control: {
        ...right.control,
        test: undefined,
        inputs: right.control.inputs.map((input) => (input.id === 'stop' ? { ...input, plus: 'control.24V' } : input)),
      },
    }
    expect(judged(wrong)).toMatchObject([{ verdict: 'fail', facts: { fault: 'none' } }])
  })
  it('passes on nothing that is only remembered', () => {
    const right = twoRelayDoor()
    expect(judged({ ...right, control: { ...right.control, source: fromMemory } })).toMatchObject([
      { verdict: 'undetermined', reason: 'limit-from-memory', needs: ['confirmations/wiring/control'] },
    ])
  })
  it('asks nothing of a door that somebody holds to run', () => {
    const concept = { people: 'trained', drive: 'hold-to-run', closingEdge: 'none' } as const
    expect(judged(undefined, { concept })).toMatchObject([{ verdict: 'not-applicable', reason: 'not-required-by-concept' }])
  })
})

describe('single-fault of two sensors on one line', () => {
  /** Both presence contacts in series from 24 V to one stop input, and no test. */
  const series = (): Wiring => {
    const two = twoRelayDoor({ sensors: 2, isTested: false })
    const [stop, ...others] = two.control.inputs
    if (!stop) throw new Error('the case must have an input')
    return {
      ...two,
      control: { ...two.control, inputs: [stop, ...others.filter(({ acts }) => acts === 'open')] },
      cables: two.cables.map((cable) => ({
        ...cable,
        cores: cable.cores.flatMap((core) => {
          if (core.to === 'scanner1.P2') return [{ ...core, from: 'scanner2.P1' }]
          if (core.to === 'scanner2.P1') return []
          return [core.to === 'scanner2.P2' ? { ...core, from: 'control.stop' } : core]
        }),
      })),
    }
  }
  it('fails for both where a fault of the common line hides both', () => {
    const plain = plainDoor({ wiring: series() })
    const [sensor] = plain.sensors
    if (!sensor) throw new Error('the door must have a sensor')
    const sensors = ['scanner1', 'scanner2'].map((id) => ({ ...sensor, id, name: id }))
    const findings = findingsOf('single-fault', { ...plain, sensors })
    expect(findings.map(({ subject, verdict }) => `${subject.id} ${verdict}`)).toEqual(['scanner1 fail', 'scanner2 fail'])
    const toPlus = findings.map(({ facts }) => Number(facts['hidden']))
    // 24 V on the stop line, by itself or through cores that carry it: the same faults for both, and each its own contact and state
    expect(toPlus[0]).toBeGreaterThan(3)
    expect(toPlus[1]).toBeGreaterThan(3)
  })
})

describe('how often the faults that hide are to be tested for by hand', () => {
  const figures = { mostHidden_percent: 0.1, cable_y: 1000, supply_y: 500, source: measured } as const
  const wiredWith = (handTest: Wiring['handTest'], declares: Parameters<typeof scanner>[0]) =>
    findingsOf('single-fault', {
      ...wiredDoor((wiring) => ({ ...wiring, handTest, control: { ...wiring.control, test: undefined } })),
      sensors: [scanner(declares)],
    })
  it('is said with its arithmetic where years and share are stated: 1 / (1 / 100 + 1 / 1000) years and 0.1 % are 66.4 days', () => {
    const [finding] = wiredWith(figures, { mttfd_y: 100 })
    expect(finding).toMatchObject({
      verdict: 'fail',
      facts: { longest_d: expect.closeTo(66.36, 2), mostHidden_percent: 0.1, handRemembered: false },
    })
    expect(finding?.verdict === 'fail' && finding.steps.slice(-2).map(({ quantity }) => quantity)).toEqual([
      { unit: 'y', value: expect.closeTo(90.91, 2) },
      { unit: 'd', value: expect.closeTo(66.36, 2) },
    ])
  })
  it('goes by B10d and operations where no years are declared, which rests on a remembered share of failures', () => {
    const [finding] = wiredWith(figures, { b10d: 2e6, operations_per_y: 200_000 })
    expect(finding).toMatchObject({ facts: { longest_d: expect.closeTo(66.36, 2), handRemembered: true } })
  })
  it('is not said where something is missing, which is named', () => {
    const [nothing] = wiredWith(undefined, {})
    expect(nothing).toMatchObject({ verdict: 'fail', facts: { handMissing: 'cable W1, sensor scanner, share' } })
    expect(nothing?.facts).not.toHaveProperty('longest_d')
    const [some] = wiredWith({ ...figures, cable_y: undefined }, { mttfd_y: 100 })
    expect(some).toMatchObject({ facts: { handMissing: 'cable W1' } })
  })
  it('never makes a fault that hides pass, and is not asked where none does', () => {
    const [passing] = findingsOf(
      'single-fault',
      wiredDoor((wiring) => ({ ...wiring, handTest: figures })),
    )
    expect(passing).toMatchObject({ verdict: 'pass' })
    expect(Object.keys(passing?.facts ?? {}).filter((key) => key.startsWith('hand') || key === 'longest_d')).toEqual([])
  })
})
