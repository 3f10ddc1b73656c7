import { describe, expect, it } from 'vitest'
import { twoRelayDoor } from '../../cases/two-relay-door.ts'
import { effectOf, type FaultEffect, faultEffects } from './fault-effects.ts'

const named = ({ fault }: FaultEffect): string => {
  switch (fault.kind) {
    case 'cores-shorted':
      return fault.cores.join('-')
    case 'core-to-rail':
      return `${fault.core} to ${fault.rail}`
    case 'core-open':
      return `${fault.core} open`
    case 'switch-stuck':
      return `${fault.switch} ${fault.at}`
    case 'sensor-stuck':
      return `sensor ${fault.in}`
    case 'test-stuck':
      return `test ${fault.at}`
    default:
      return fault.kind
  }
}
const having = (effects: readonly FaultEffect[], effect: FaultEffect['effect']) =>
  effects.filter((each) => each.effect === effect).map(named)

describe('a sensor with two contacts and a test line, presence closed when clear', () => {
  const effects = faultEffects(twoRelayDoor())
  it('is in order without a fault', () => {
    expect(effectOf(twoRelayDoor(), [])).toMatchObject({ effect: 'no-effect' })
  })
  it('hides no dangerous fault: those that feed the stop line are found by the test', () => {
    expect(having(effects, 'hidden-and-dangerous')).toEqual([])
    expect(having(effects, 'found-by-test')).toEqual(expect.arrayContaining(['3-4', '4 to plus', '1-4', 'presence closed', 'sensor clear']))
  })
  it('keeps from closing where a core of the presence contact or the supply is open, or the opening line is fed', () => {
    expect(having(effects, 'keeps-from-closing')).toEqual(
      expect.arrayContaining(['1 open', '2 open', '3 open', '4 open', 'supply-lost', 'cable-off', '6 to plus', '5-6', 'opening closed']),
    )
  })
  it('fails to open, which is noticed in use, where the opening line is open', () => {
    expect(having(effects, 'fails-to-open')).toEqual(expect.arrayContaining(['5 open', '6 open', 'opening open']))
  })
})

describe('a test that never comes to the sensor', () => {
  const door = twoRelayDoor()
  const { test } = door.control
  const after = (whenFailed: 'does-not-close' | 'nothing') =>
    effectOf({ ...door, control: { ...door.control, ...(test && { test: { ...test, whenFailed } }) } }, [
      { kind: 'test-stuck', at: 'closed' },
    ])
  it('keeps a door from closing whose control heeds it, and is noticed by nobody where the control does nothing', () => {
    expect(after('does-not-close')).toMatchObject({ effect: 'keeps-from-closing', isHidden: false })
    expect(after('nothing')).toMatchObject({ effect: 'no-effect', isHidden: true })
  })
})

describe('the same sensor without a test', () => {
  it('hides what feeds the stop line', () => {
    const effects = faultEffects(twoRelayDoor({ isTested: false }))
    expect(having(effects, 'hidden-and-dangerous')).toEqual(expect.arrayContaining(['3-4', '4 to plus', 'presence closed', 'sensor clear']))
  })
  it('finds its own faults where it watches itself, but not those of the cable', () => {
    const door = twoRelayDoor({ isTested: false })
    const watching = { ...door, sensors: door.sensors.map((sensor) => ({ ...sensor, ownFaults_s: 2 })) }
    const effects = faultEffects(watching)
    expect(having(effects, 'found-by-test')).toEqual(['sensor clear'])
    expect(having(effects, 'hidden-and-dangerous')).toEqual(expect.arrayContaining(['3-4', '4 to plus', 'presence closed']))
  })
})

describe('a presence contact that opens when clear', () => {
  it('hides every open core of its line and the loss of power', () => {
    const effects = faultEffects(twoRelayDoor({ presence: ['seen'], isTested: false }))
    expect(having(effects, 'hidden-and-dangerous')).toEqual(
      expect.arrayContaining(['1 open', '2 open', '3 open', '4 open', 'supply-lost', 'cable-off']),
    )
  })
})

describe('an earth fault', () => {
  it('does nothing at first where the supply is not bonded, and meets the next one unseen', () => {
    const effects = faultEffects(twoRelayDoor())
    const earth = effects.find(({ fault }) => fault.kind === 'core-to-rail' && fault.core === '4' && fault.rail === 'earth')
    expect(earth).toMatchObject({ effect: 'no-effect', isHidden: true })
  })
  it('is the short to the rail that is bonded', () => {
    const door = twoRelayDoor({ isTested: false })
    const bonded = { ...door, supply: { ...door.supply, earthed: 'plus' as const } }
    const at = (rail: string) =>
      faultEffects(bonded).find(({ fault }) => fault.kind === 'core-to-rail' && fault.core === '4' && fault.rail === rail)?.effect
    expect([at('earth'), at('plus')]).toEqual(['hidden-and-dangerous', 'hidden-and-dangerous'])
  })
})
