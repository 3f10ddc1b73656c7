import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { bodyOf, box, plainDoor } from '../../cases/plain-door.ts'
import { driven, laneOf, wideGrid } from '../../cases/plain-traffic.ts'
import type { Door } from '../model/door.ts'

const judged = (changes: Partial<Door> = {}) =>
  findingOf(
    'walked-into',
    plainDoor({ bodies: [bodyOf([box(300, 200, 1500)])], sensors: wideGrid(), drive: driven(), lanes: [laneOf()], ...changes }),
  )

describe('walked-into', () => {
  it('passes where the leaf is up again at arrival', () => {
    expect(judged()).toMatchObject({ id: 'walked-into:lane', verdict: 'pass', measured: { value: 0, unit: 'mm_per_s' } })
  })

  // Hand calculation: a leaf opened 1200 mm stands in the way of a body 1500 mm high, at whatever pace it comes
  it('fails where a partial opening is lower than what passes, at the fastest pace', () => {
    expect(judged({ drive: driven({ partialOpenings_mm: [1200] }) })).toMatchObject({
      verdict: 'fail',
      measured: { value: 400, unit: 'mm_per_s' },
      facts: { way_mm: 1200, opening_mm: 1200, leaf_mm_per_s: 0 },
    })
  })

  // Hand calculation: stopped for good below 1500 mm it stands in the way of whoever made it stop
  it('fails where the leaf stays after a stop, although nobody is struck', () => {
    const drive = driven({ afterStop: 'stay' })
    expect(judged({ drive })).toMatchObject({ verdict: 'fail', facts: { leaf_mm_per_s: 0 } })
  })

  it('is not judged where only people pass', () => {
    expect(judged({ lanes: [laneOf({ who: 'people' })] })).toMatchObject({ verdict: 'not-applicable', reason: 'not-required-by-concept' })
  })

  it('asks for what nobody entered, and has no subject without lanes', () => {
    expect(judged({ drive: undefined })).toMatchObject({ reason: 'missing-input', needs: ['survey/drive'] })
    expect(judged({ lanes: undefined })).toMatchObject({ verdict: 'not-applicable', reason: 'no-subject' })
  })
})
