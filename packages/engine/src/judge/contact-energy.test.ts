import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { plainDoor } from '../../cases/plain-door.ts'
import { driven } from '../../cases/plain-traffic.ts'
import type { Door } from '../model/door.ts'

const concept = { people: 'public', drive: 'automatic', closingEdge: 'force-limited-edge', lowEnergy: 'yes' } as const
const confirmations = [{ value: 'low-energy', document: 'EN 16005', edition: '2012', clause: '4', by: 'A. Reader', on: '2026-11-01' }]
const judged = (closeSpeed_mm_per_s: number | undefined, movingMass_kg: number | undefined, changes: Partial<Door> = {}) =>
  findingOf('contact-energy', plainDoor({ concept, confirmations, drive: driven({ closeSpeed_mm_per_s, movingMass_kg }), ...changes }))

describe('contact-energy', () => {
  // Check value mo-04 (kinetic energy, common practice): 1.69 J are reached by 100 kg at 0.18385 m/s. The limit is from memory (door-16)
  it('passes to either side of the speed at which 100 kg have 1.69 J as it should', () => {
    expect(judged(183.84, 100).verdict).toBe('pass')
    expect(judged(183.86, 100)).toMatchObject({ verdict: 'fail', limit: { value: 1.69, unit: 'J' } })
    expect(judged(183.84, 100, { confirmations: [] })).toMatchObject({ reason: 'limit-from-memory', needs: ['confirmations/low-energy'] })
  })

  // Hand calculation: 18 kg at 0.3 m/s: 18 * 0.09 / 2
  it('shows m v^2 / 2 as a step', () => {
    expect(judged(300, 18).steps[0]).toMatchObject({ quantity: { value: 0.81, unit: 'J' }, formula: 'm v^2 / 2' })
  })

  it('has only a bound for a leaf that turns: it may pass by it, and does not fail', () => {
    const leaf = { travel: 'turning', thickness_mm: 40, bulge_mm: 0 } as const
    expect(judged(100, 100, { leaf }).verdict).toBe('pass')
    expect(judged(300, 100, { leaf })).toMatchObject({ verdict: 'undetermined', reason: 'not-computable' })
  })

  // Hand calculation: I = 60 * 1.2^2 / 3 = 28.8 kg m2, w = 0.3 / 1.2 = 0.25 per s: 28.8 * 0.0625 / 2 = 0.9 J
  it('counts the moment of inertia of a leaf that swings, and may fail by it', () => {
    const hinged = { hinge: 'at-zero', opensTo: 'a', length_mm: 1200, secondPanel_mm: undefined, openAngle_rad: 1.5 } as const
    const leaf = { travel: 'turning', thickness_mm: 40, bulge_mm: 0, hinged } as const
    expect(judged(300, 60, { leaf }).steps[0]?.quantity.value).toBeCloseTo(0.9, 12)
    expect(judged(300, 60, { leaf }).verdict).toBe('pass')
    expect(judged(420, 60, { leaf }).verdict).toBe('fail')
  })

  // Hand calculation: two panels of 600 mm and 20 kg, folded to a right angle, the joint at 0.3 m/s: the first 20 * 0.09 / 6 = 0.3 J; the ends of the second
  // move at 0.3 and 0.6 m/s the same way: 20 / 6 * (0.09 + 0.18 + 0.36) = 2.1 J
  it('has a bound for a leaf that folds: that of its guided end where it is widest open', () => {
    const hinged = { hinge: 'at-zero', opensTo: 'a', length_mm: 600, secondPanel_mm: 600, openAngle_rad: Math.PI / 2 } as const
    const leaf = { travel: 'turning', thickness_mm: 40, bulge_mm: 0, hinged } as const
    const found = judged(300, 40, { leaf })
    expect(found.steps[0]?.quantity.value).toBeCloseTo(2.4, 9)
    expect(found).toMatchObject({ verdict: 'undetermined', reason: 'not-computable' })
  })

  it('asks for what is missing, and applies its limit to no other kind of door', () => {
    expect(judged(undefined, undefined)).toMatchObject({ needs: ['survey/drive/closeSpeed_m_per_s', 'survey/drive/movingMass_kg'] })
    expect(judged(300, 18, { concept: undefined })).toMatchObject({ needs: ['concept'] })
    for (const other of [{ lowEnergy: 'no' as const }, { closingEdge: 'presence-aid' as const }])
      expect(judged(900, 900, { concept: { ...concept, ...other } })).toMatchObject({ verdict: 'not-applicable' })
  })
})
