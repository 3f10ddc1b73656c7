import { describe, expect, it } from 'vitest'
import { effectOf, type FaultEffect, faultEffects } from './fault-effects.ts'
import { twoRelayDoor } from './two-relay-door.ts'

const named = ({ fault }: FaultEffect): string => {
  switch (fault.kind) {
    case 'short':
      return fault.what.kind === 'cores' ? `${fault.what.cores.join('-')}` : `${fault.what.core} to ${fault.what.rail}`
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
    expect(effectOf(twoRelayDoor(), undefined)).toEqual({ effect: 'no-effect' })
  })
  it('hides no dangerous fault but those that feed the stop line: these the test finds', () => {
    expect(having(effects, 'hidden-and-dangerous')).toEqual([])
    expect(having(effects, 'found-by-test')).toEqual(expect.arrayContaining(['3-4', '4 to plus', 'presence closed', 'sensor clear']))
  })
  it('keeps from closing where a core of the presence contact or the supply is open', () => {
    expect(having(effects, 'keeps-from-closing')).toEqual(
      expect.arrayContaining(['1 open', '2 open', '3 open', '4 open', 'supply-lost', 'cable-off']),
    )
  })
  it('fails to open, which is noticed in use, where the opening line is open', () => {
    expect(having(effects, 'fails-to-open')).toEqual(expect.arrayContaining(['5 open', '6 open', 'opening open']))
  })
})

describe('the same sensor without a test', () => {
  it('hides what feeds the stop line', () => {
    expect(having(faultEffects(twoRelayDoor({ isTested: false })), 'hidden-and-dangerous')).toEqual(
      expect.arrayContaining(['3-4', '4 to plus', 'presence closed', 'sensor clear']),
    )
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
