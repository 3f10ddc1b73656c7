import { describe, expect, it } from 'vitest'
import { twoRelayDoor } from '../../cases/two-relay-door.ts'
import { played } from './played.ts'

const stop = (seenBy: readonly string[], faults: Parameters<typeof played>[1] = []) => {
  const { volts, states, beliefs } = played(twoRelayDoor(), faults, { seenBy, asking: false })
  return { volt: volts.get('control.stop'), state: states.get('scanner'), belief: beliefs.get('stop') }
}

describe('a wiring that is played', () => {
  it('reads nearly the supply at the stop input while nobody is there, and nothing while somebody is', () => {
    expect(stop([])).toMatchObject({ state: 'clear', belief: 'clear' })
    expect(stop([]).volt).toBeCloseTo(24.4, 1) // 24.5 V, less 0.5 ohm of the supply at 0.2 A, by hand
    expect(stop(['scanner'])).toMatchObject({ state: 'seen', belief: 'seen' })
    expect(stop(['scanner']).volt).toBeCloseTo(0, 6)
  })
  it('shows why a short from plus to the stop line hides: the voltage stays', () => {
    const faults = [{ kind: 'core-to-rail', core: '4', rail: 'plus' }] as const
    expect(stop(['scanner'], faults)).toMatchObject({ state: 'seen', belief: 'clear' })
  })
  it('leaves out a terminal that nothing connects any more', () => {
    const cut = played(twoRelayDoor(), [{ kind: 'cable-off', cable: 'W1' }], { seenBy: [], asking: false })
    expect(cut.volts.has('scanner.+')).toBe(false)
    expect(cut.states.get('scanner')).toBe('unpowered')
  })
})
