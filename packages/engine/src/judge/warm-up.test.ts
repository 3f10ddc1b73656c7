import { describe, expect, it } from 'vitest'
import { findingOf, findingsOf } from '../../cases/judged.ts'
import { fromMemory, lightGrid, measured, plainDoor, zoneOnly } from '../../cases/plain-door.ts'
import { randomNumbers } from '../../cases/random-numbers.ts'
import type { Control } from '../model/control.ts'
import type { Door, ProtectionConcept } from '../model/door.ts'
import type { Output } from '../model/sensor.ts'

type Says = Output['whileWarmingUp']
type PowerReturn = NonNullable<Control['powerReturn']>

const concept: ProtectionConcept = { people: 'public', drive: 'automatic', closingEdge: 'contact-free' }
const nothing: Control = { sensorFault: undefined, powerReturn: undefined, fire: undefined, escape: undefined, interlock: undefined }

/** One light grid with two outputs: OUT stops the leaf, IMPULSE opens it. */
function doorOf(
  says: Says,
  warmUp_s: number | undefined,
  powerReturn: Omit<PowerReturn, 'source'> | undefined,
  changes: Partial<Door> = {},
) {
  const outputs: readonly Output[] = [
    { name: 'IMPULSE', function: 'opening', whileWarmingUp: 'clear' },
    { name: 'OUT', function: 'presence', whileWarmingUp: says },
  ]
  const [grid] = [lightGrid([300], 0, { outputs, warmUp_s }, { output: 'OUT', function: 'presence' })]
  const opening = grid.fields.map((field) => ({ ...field, id: 'far', output: 'IMPULSE', function: 'opening' as const }))
  const control = { ...nothing, powerReturn: powerReturn && { ...powerReturn, source: measured } }
  return plainDoor({ concept, control, sensors: [{ ...grid, fields: [...grid.fields, ...opening] }], ...changes })
}
const judged = (...given: Parameters<typeof doorOf>) => findingOf('warm-up', doorOf(...given))

describe('warm-up', () => {
  it('passes where the output says that somebody is there until the sensor is awake, whatever the control does', () => {
    expect(judged('detecting', undefined, { does: 'moves' })).toMatchObject({
      id: 'warm-up:grid/field',
      verdict: 'pass',
      measured: { value: 0, unit: 's' },
    })
    expect(judged('detecting', undefined, undefined).verdict).toBe('pass')
  })

  it('fails by the time for which a closing can begin while the output says that nobody is there', () => {
    expect(judged('clear', 8, { does: 'moves' })).toMatchObject({
      verdict: 'fail',
      measured: { value: 8 },
      limit: { value: 0, unit: 's' },
      facts: { says: 'clear', warmUp_s: 8 },
    })
    expect(judged('clear', 8, { does: 'waits', closesAfter_s: 5 })).toMatchObject({ verdict: 'fail', measured: { value: 3 } })
  })

  it('takes an output that may say either for one that says that nobody is there', () => {
    expect(judged('undefined', 8, { does: 'moves' }).verdict).toBe('fail')
  })

  it('passes where the control waits for its sensors, or lets nothing close before they are awake, equal times included', () => {
    expect(judged('clear', 8, { does: 'moves-guarded' }).verdict).toBe('pass')
    expect(judged('clear', undefined, { does: 'moves-guarded' }).verdict).toBe('pass')
    expect(judged('clear', 8, { does: 'waits', closesAfter_s: 8 }).verdict).toBe('pass')
    expect(judged(undefined, 8, { does: 'waits', closesAfter_s: 9 }).verdict).toBe('pass')
    expect(judged('clear', 0, { does: 'moves' }).verdict).toBe('pass')
  })

  it('asks for what nobody said, and for no more than settles it', () => {
    const needs = (...given: Parameters<typeof doorOf>) => {
      const finding = judged(...given)
      return finding.verdict === 'undetermined' && finding.reason === 'missing-input' ? finding.needs : finding.verdict
    }
    const says = 'sensors/0/outputs/1/whileWarmingUp'
    expect(needs(undefined, undefined, undefined)).toEqual([says, 'sensors/0/warmUp_s', 'survey/control/powerReturn'])
    expect(needs('clear', 8, undefined)).toEqual(['survey/control/powerReturn'])
    expect(needs('clear', 8, { does: 'waits' })).toEqual(['survey/control/powerReturn/closesAfter_s'])
    expect(needs(undefined, 8, { does: 'moves' })).toEqual([says])
    expect(needs('clear', undefined, { does: 'waits', closesAfter_s: 2 })).toEqual(['sensors/0/warmUp_s'])
    expect(findingOf('warm-up', plainDoor({ concept, sensors: [lightGrid([300], 0)] }))).toMatchObject({
      needs: ['sensors/0/outputs', 'sensors/0/warmUp_s', 'survey/control/powerReturn'],
    })
  })

  it('asks of every presence output and of no other, of drawn devices too', () => {
    const radar = zoneOnly({
      id: 'radar',
      function: 'presence',
      output: 'R',
      warmUp_s: 3,
      outputs: [{ name: 'R', function: 'presence', whileWarmingUp: 'clear' }],
    })
    const both = doorOf('detecting', 8, { does: 'moves' })
    const found = findingsOf('warm-up', { ...both, sensors: [...both.sensors, radar] })
    expect(found.map(({ id, verdict }) => `${id} ${verdict}`).sort()).toEqual(['warm-up:grid/field pass', 'warm-up:radar fail'])
    expect(findingOf('warm-up', plainDoor({ concept, sensors: [] }))).toMatchObject({ verdict: 'not-applicable', reason: 'no-subject' })
  })

  it('does not ask where the door is held to run', () => {
    const held = { concept: { ...concept, drive: 'hold-to-run' } } as const
    expect(judged('clear', 8, { does: 'moves' }, held)).toMatchObject({ verdict: 'not-applicable', reason: 'not-required-by-concept' })
  })

  it('takes no word from memory about the control for a pass', () => {
    const door = doorOf('clear', 8, { does: 'moves-guarded' })
    const remembered = { ...nothing, powerReturn: { does: 'moves-guarded', source: fromMemory } } as const
    expect(findingOf('warm-up', { ...door, control: remembered })).toMatchObject({
      verdict: 'undetermined',
      needs: ['confirmations/survey/control/powerReturn'],
    })
  })

  it('agrees with the clock: stepped from the return of power on, some instant has a closing allowed and nobody guarded (400 cases, seed 11)', () => {
    const random = randomNumbers(11)
    for (let i = 0; i < 400; i++) {
      const says = random.pick<'detecting' | 'clear' | 'undefined'>(['detecting', 'clear', 'undefined'])
      const does = random.pick<'waits' | 'moves-guarded' | 'moves'>(['waits', 'moves-guarded', 'moves'])
      const [warmUp_s, closesAfter_s] = [random.whole(0, 19) / 2, random.whole(0, 19) / 2]
      let unguarded = 0
      for (let t_s = 0; t_s < 12; t_s += 0.5) {
        const isAwake = t_s >= warmUp_s
        const mayClose = does === 'moves-guarded' ? isAwake : t_s >= closesAfter_s
        if (mayClose && !isAwake && says !== 'detecting') unguarded += 0.5
      }
      const finding = judged(says, warmUp_s, { does, closesAfter_s })
      expect(finding, JSON.stringify({ says, does, warmUp_s, closesAfter_s })).toMatchObject({
        verdict: unguarded > 0 ? 'fail' : 'pass',
        measured: { value: unguarded },
      })
    }
  })
})
