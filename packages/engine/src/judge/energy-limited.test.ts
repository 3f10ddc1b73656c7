import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { plainDoor } from '../../cases/plain-door.ts'
import { wiredDoor } from '../../cases/wired-door.ts'
import type { Supply } from '../model/wiring.ts'

const CONFIRMED = ['extra-low-voltage', 'class-2-voltage', 'class-2-power'].map((value) => ({
  value,
  document: 'EXAMPLE',
  edition: '1',
  clause: '2',
  by: 'A. Reader',
  on: '2026-11-01',
}))
const judged = (changes: Partial<Supply>, confirmations: typeof CONFIRMED = []) =>
  findingOf(
    'energy-limited',
    wiredDoor((wiring) => ({ ...wiring, supply: { ...wiring.supply, ...changes } }), { confirmations }),
  )

describe('energy-limited', () => {
  it('never passes on a limit that is only remembered', () => {
    expect(judged({ limited: 'extra-low' })).toMatchObject({
      verdict: 'undetermined',
      reason: 'limit-from-memory',
      needs: ['confirmations/extra-low-voltage'],
    })
    expect(judged({ limited: 'class-2' })).toMatchObject({
      reason: 'limit-from-memory',
      needs: ['confirmations/class-2-voltage', 'confirmations/class-2-power'],
    })
  })
  it('passes once somebody held the limits against their pages', () => {
    expect(judged({ limited: 'extra-low' }, CONFIRMED)).toMatchObject({ verdict: 'pass', limit: { value: 120, unit: 'V' } })
    expect(judged({ limited: 'class-2' }, CONFIRMED)).toMatchObject({ verdict: 'pass', limit: { value: 30, unit: 'V' } })
  })
  it('fails beyond 120 V, and of class 2 beyond 30 V or 100 VA', () => {
    expect(judged({ limited: 'extra-low', largest_V: 121 })).toMatchObject({ verdict: 'fail', facts: { exceeds: 'voltage' } })
    expect(judged({ limited: 'class-2', largest_V: 30.1 })).toMatchObject({ verdict: 'fail', facts: { exceeds: 'voltage' } })
    expect(judged({ limited: 'class-2', largest_V: 27, largest_A: 4 })).toMatchObject({
      verdict: 'fail',
      facts: { exceeds: 'power' },
      measured: { value: 108, unit: 'VA' },
    })
  })
  it('asks what the source is declared to be, and for its current in class 2', () => {
    expect(judged({ limited: undefined })).toMatchObject({ verdict: 'undetermined', needs: ['wiring/supply/limited'] })
    expect(judged({ limited: 'class-2', largest_A: undefined })).toMatchObject({ needs: ['wiring/supply/largest_A'] })
  })
  it('leaves a source without limit to whoever judges mains, and has no subject without wiring', () => {
    expect(judged({ limited: 'no' })).toMatchObject({ verdict: 'undetermined', reason: 'not-computable' })
    expect(findingOf('energy-limited', plainDoor()).verdict).toBe('not-applicable')
  })
})
