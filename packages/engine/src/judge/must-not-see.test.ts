import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { block, bodyOf, box, downward, plainDoor, plainState, plainZone } from '../../cases/plain-door.ts'
import type { Door } from '../model/door.ts'
import type { Zone } from '../model/zone.ts'

const road = (changes: Partial<Zone> = {}) => plainZone({ id: 'road', purpose: 'must-not-see', pitch_mm: 100, ...changes })
const judged = (zone: Zone, changes: Partial<Door> = {}) => findingOf('must-not-see', plainDoor({ zones: [zone], ...changes }))
const beside = { xMin_mm: 800, xMax_mm: 1000 }

describe('must-not-see', () => {
  it('passes where nothing is seen', () => {
    expect(judged(road(beside))).toMatchObject({
      id: 'must-not-see:road',
      verdict: 'pass',
      measured: { value: 0, unit: 'mm2' },
      facts: { seen: 0, free: 4, fields: 1 },
    })
  })

  it('fails where a free placement is seen in any posture, though another one is unseen there', () => {
    const bodies = [bodyOf([box(10, 10, 500), box(102, 102, 500)])]
    expect(judged(road(), { bodies })).toMatchObject({
      verdict: 'fail',
      measured: { value: 40_000, unit: 'mm2' },
      facts: { seen: 4, seenArea_mm2: 40_000, xMin_mm: 400, xMax_mm: 600, yMin_mm: -100, yMax_mm: 100 },
      worstCase: { posture: 1 },
    })
  })

  it('counts a field that lets a standing body go: it has seen it all the same', () => {
    const shortly = downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], {}, { presenceTime_s: 1 })
    expect(judged(road({ longestStay_s: 60 }), { sensors: [shortly], bodies: [bodyOf([box(102, 102, 500)])] }).verdict).toBe('fail')
  })

  it('counts only fields of the function that must not see', () => {
    expect(judged(road({ function: 'opening' }), { bodies: [bodyOf([box(102, 102, 500)])] })).toMatchObject({
      verdict: 'pass',
      facts: { fields: 0 },
    })
  })

  it('cannot tell where nothing is free or only some yaws were tried', () => {
    const pillar = plainState({ obstacles: [block({ size_mm: [400, 400] })] })
    expect(judged(road(), { states: [pillar] })).toMatchObject({ verdict: 'undetermined', reason: 'nothing-free' })
    expect(judged(road(beside), { bodies: [bodyOf([box(50, 60, 500, [0, 45])])] })).toMatchObject({
      reason: 'yaw-range-sampled',
      needs: ['bodies/0/postures'],
    })
  })

  it('does not apply without such a zone', () => {
    expect(judged(plainZone())).toMatchObject({ verdict: 'not-applicable', reason: 'no-subject' })
  })
})
