import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { bodyOf, box, cylinder, plainDoor, plainZone } from '../../cases/plain-door.ts'
import type { Posture } from '../model/body.ts'
import type { Door } from '../model/door.ts'

const confirmed = {
  confirmations: [
    { value: 'presence-reference-body', document: 'EXAMPLE 1', edition: '2024', clause: '3', by: 'A. Reader', on: '2026-11-25' },
  ],
}
const judged = (postures: readonly Posture[], changes: Partial<Door> = confirmed) =>
  findingOf('reference-body', plainDoor({ bodies: [bodyOf(postures)], ...changes }))

// 700 x 300 x 200 is from memory (check value door-14).
describe('reference-body', () => {
  it('passes for a body that fits inside of the reference body, however it lies, once the size is confirmed', () => {
    const finding = judged([box(200, 700, 300), box(300, 200, 700)])
    expect(finding).toMatchObject({
      verdict: 'pass',
      measured: { value: 1 },
      facts: { fitting: 1, bodies: 1, a_mm: 700, b_mm: 300, c_mm: 200, body: 'body' },
    })
    expect(finding.basis).toContainEqual(expect.objectContaining({ id: 'presence-reference-body', confirmed: confirmed.confirmations[0] }))
    expect(judged([cylinder(100, 700)]).verdict).toBe('pass') // 200 across
  })

  it('is not settled until then', () => {
    expect(judged([box(700, 300, 200)], {})).toMatchObject({
      verdict: 'undetermined',
      reason: 'limit-from-memory',
      needs: ['confirmations/presence-reference-body'],
    })
  })

  it('fails where each body has a posture that sticks out', () => {
    expect(judged([box(700, 300, 200), box(700, 300, 201)])).toMatchObject({ verdict: 'fail', facts: { fitting: 0 } })
    expect(judged([cylinder(151, 200)]).verdict).toBe('fail') // 302 x 302 x 200
  })

  it('is only about presence at the leaf', () => {
    expect(judged([box(700, 300, 200)], { zones: [plainZone({ purpose: 'opening', function: 'opening' })] }).verdict).toBe('not-applicable')
  })
})
