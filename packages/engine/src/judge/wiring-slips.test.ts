import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../cases/judged.ts'
import { plainDoor } from '../../cases/plain-door.ts'
import { twoRelayDoor } from '../../cases/two-relay-door.ts'
import type { Core, Wiring } from '../model/wiring.ts'

const slips = (wiring: Wiring) => findingsOf('wiring-slips', plainDoor({ wiring }))
const rewired = (change: (core: Core) => Core | undefined, changes: Partial<Wiring> = {}): Wiring => {
  const wiring = { ...twoRelayDoor(), ...changes }
  return { ...wiring, cables: wiring.cables.map((cable) => ({ ...cable, cores: cable.cores.flatMap((core) => change(core) ?? []) })) }
}

describe('wiring-slips', () => {
  it('finds none in a wiring that is in order, and has nothing to look at without one', () => {
    expect(slips(twoRelayDoor())).toMatchObject([{ id: 'wiring-slips:door', verdict: 'pass' }])
    expect(findingsOf('wiring-slips', plainDoor())).toMatchObject([{ verdict: 'not-applicable' }])
  })
  it('names both ends of an input to which no core leads', () => {
    expect(slips(rewired((core) => (core.id === '6' ? undefined : core)))).toMatchObject([
      { verdict: 'fail', facts: { slip: 'input-floating', a: 'control.open', b: 'control.0V' } },
    ])
  })
  it('names the sensor that hangs on no supply', () => {
    expect(slips(rewired((core) => (core.id === '2' ? undefined : core)))).toMatchObject([
      { facts: { slip: 'no-supply', a: 'scanner.+', b: 'scanner.-' } },
    ])
  })
  it('names the contact that copper bridges', () => {
    expect(slips(rewired((core) => (core.id === '4' ? { ...core, from: 'control.24V' } : core)))).toMatchObject([
      { facts: { slip: 'bridged-contact', a: 'scanner.P1', b: 'scanner.P2' } },
      { facts: { slip: 'input-floating' } },
    ])
  })
  it('names two transistors on one line, and leaves contacts side by side alone', () => {
    const sensors = twoRelayDoor({ sensors: 2 })
    const together = (from: (id: string) => string): Wiring => ({
      ...sensors,
      sensors: sensors.sensors.map((sensor) => ({
        ...sensor,
        outputs: sensor.outputs.map((each) => (each.acts === 'opening' ? { ...each, from: from(sensor.id) } : each)),
      })),
      cables: sensors.cables.map((cable) => ({
        ...cable,
        cores: cable.cores.map((core) => (core.to.endsWith('.O2') ? { ...core, from: 'control.open' } : core)),
      })),
    })
    const kinds = (wiring: Wiring) => slips(wiring).map(({ facts }) => facts['slip'])
    expect(kinds(together((id) => `${id}.+`))).toContain('two-drivers')
    expect(kinds(together((id) => `${id}.O1`))).not.toContain('two-drivers')
  })
})
