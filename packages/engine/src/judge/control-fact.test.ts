import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../cases/judged.ts'
import { fromMemory, measured, plainDoor } from '../../cases/plain-door.ts'
import type { Control } from '../model/control.ts'
import type { Door, ProtectionConcept } from '../model/door.ts'

const concept: ProtectionConcept = { people: 'public', drive: 'automatic', closingEdge: 'contact-free' }
const nothing: Control = { sensorFault: undefined, powerReturn: undefined, fire: undefined, escape: undefined, interlock: undefined }
const judged = (fact: keyof Control, control: Partial<Control> | undefined, changes: Partial<Door> = {}) => {
  const door = plainDoor({ concept, control: control && { ...nothing, ...control }, ...changes })
  return findingsOf('control-fact', door).find(({ subject }) => subject.id === fact)
}

describe('control-fact', () => {
  it('asks for each of five facts that nobody stated', () => {
    const needs = findingsOf('control-fact', plainDoor({ concept })).map((each) => (each.verdict === 'undetermined' ? each.needs : []))
    expect(needs.flat().sort()).toEqual(
      ['escape', 'fire', 'interlock', 'powerReturn', 'sensorFault'].map((fact) => `survey/control/${fact}`),
    )
    expect(judged('fire', nothing)).toMatchObject({ id: 'control-fact:fire', verdict: 'undetermined', reason: 'missing-input' })
  })

  it.each([
    ['sensorFault', 'hold-to-run', 'pass'],
    ['sensorFault', 'stays', 'pass'],
    ['sensorFault', 'closes', 'fail'],
    ['powerReturn', 'waits', 'pass'],
    ['powerReturn', 'moves-guarded', 'pass'],
    ['powerReturn', 'moves', 'fail'],
    ['fire', 'none', 'pass'],
    ['fire', 'presence-first', 'pass'],
    ['fire', 'fire-first', 'fail'],
    ['escape', 'none', 'pass'],
    ['escape', 'escape-first', 'pass'],
    ['escape', 'other-first', 'fail'],
    ['interlock', 'none', 'pass'],
    ['interlock', 'reversal-first', 'pass'],
    ['interlock', 'interlock-first', 'fail'],
  ] as const)('%s "%s": %s', (fact, does, verdict) => {
    expect(judged(fact, { [fact]: { does, source: measured } })).toMatchObject({
      verdict,
      facts: { fact, does },
      measured: { value: verdict === 'pass' ? 1 : 0 },
    })
  })

  it('lets a door close in a fire whose edge is limited in force, and asks for the concept to know that', () => {
    const fire = { fire: { does: 'fire-first', source: measured } } as const
    expect(judged('fire', fire, { concept: { ...concept, closingEdge: 'force-limited-edge' } })?.verdict).toBe('pass')
    expect(judged('fire', fire, { concept: undefined })).toMatchObject({ verdict: 'undetermined', needs: ['concept'] })
  })

  it('does not ask about a faulted sensor where the door is held to run, but about all else', () => {
    const held = { concept: { ...concept, drive: 'hold-to-run' } } as const
    const closes = { sensorFault: { does: 'closes', source: measured }, powerReturn: { does: 'moves', source: measured } } as const
    expect(judged('sensorFault', closes, held)).toMatchObject({ verdict: 'not-applicable', reason: 'not-required-by-concept' })
    expect(judged('powerReturn', closes, held)?.verdict).toBe('fail')
  })

  it('takes no word from memory for a pass until somebody confirms it; a fail stands', () => {
    const remembered = (does: 'waits' | 'moves') => ({ powerReturn: { does, source: fromMemory } }) as const
    expect(judged('powerReturn', remembered('waits'))).toMatchObject({
      verdict: 'undetermined',
      reason: 'limit-from-memory',
      needs: ['confirmations/survey/control/powerReturn'],
    })
    const confirmed = {
      value: 'survey/control/powerReturn',
      document: 'manual',
      edition: '3',
      clause: '7.2',
      by: 'A. Reader',
      on: '2026-11-01',
    }
    expect(judged('powerReturn', remembered('waits'), { confirmations: [confirmed] })?.verdict).toBe('pass')
    expect(judged('powerReturn', remembered('moves'))?.verdict).toBe('fail')
  })
})
