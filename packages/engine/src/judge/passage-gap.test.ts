import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { bodyOf, box, ofParts, partBox, plainDoor } from '../../cases/plain-door.ts'
import { driven, laneOf, wideGrid } from '../../cases/plain-traffic.ts'
import type { Door } from '../model/door.ts'
import type { Field } from '../model/sensor.ts'

// a tractor and a trailer 1000 apart on a drawbar below the beams, which hang at 300
const trailer = bodyOf([
  ofParts([
    partBox([1000, 800, 900], { y_mm: 900, name: 'tractor' }),
    partBox([90, 1000, 120], { name: 'drawbar', from_mm: 100 }),
    partBox([1000, 800, 900], { y_mm: -900, name: 'trailer' }),
  ]),
])
/** Three beams about the mid-plane of the leaf, at -150, 0 and 150. */
const fewBeams = (field: Partial<Field> = {}) =>
  wideGrid(field).map((grid) => {
    const planes = grid.planes.slice(15, 18)
    return { ...grid, planes, fields: grid.fields.map((each) => ({ ...each, planes: planes.map(({ id }) => id) })) }
  })
const judged = (field: Partial<Field> = {}, changes: Partial<Door> = {}) =>
  findingOf(
    'passage-gap',
    plainDoor({ bodies: [trailer], zones: [], sensors: fewBeams(field), drive: driven(), lanes: [laneOf()], ...changes }),
  )

describe('passage-gap', () => {
  // Hand calculation: the trailer comes to the first beam 1000 - 300 mm after the tractor has left the last one; at 250 mm/s for 2.8 s. To either side a millimetre may be unproved
  it('fails by the seconds for which a drawbar passes unseen at the slowest pace, where the output lets go before', () => {
    const finding = judged({ hold_s: 2 })
    expect(finding).toMatchObject({
      id: 'passage-gap:lane',
      verdict: 'fail',
      limit: { value: 2, unit: 's' },
      facts: { part: 'drawbar', slowest_mm_per_s: 250 },
      worstCase: { body: 'body' },
    })
    if (finding.verdict !== 'fail') throw new Error('must fail')
    expect(finding.measured.value).toBeGreaterThanOrEqual(2.8)
    expect(finding.measured.value).toBeLessThan(2.81)
    expect(Math.abs(finding.worstCase?.y_mm ?? 99)).toBeLessThan(1)
  })

  it('passes where the output holds for longer than the gap, or the drawbar is seen', () => {
    expect(judged({ hold_s: 5 })).toMatchObject({ verdict: 'pass', limit: { value: 5 } })
    expect(judged({ hold_s: 0 }, { sensors: wideGrid(), bodies: [bodyOf([box(1000, 2600, 900)])] })).toMatchObject({
      verdict: 'pass',
      measured: { value: 0 },
    })
  })

  it('fails over the whole way through the plane where nothing sees anybody', () => {
    // Hand calculation: 2600 and the leaf's 40 at 250 mm/s
    expect(judged({}, { sensors: [] })).toMatchObject({ verdict: 'fail', measured: { value: 10.56 }, limit: { value: 0 } })
  })

  it('asks for what is missing, and is not about people', () => {
    expect(judged({ hold_s: undefined })).toMatchObject({ reason: 'missing-input', needs: ['sensors/0/fields/0/hold_s'] })
    expect(judged({}, { lanes: [laneOf({ who: 'people' })] })).toMatchObject({
      verdict: 'not-applicable',
      reason: 'not-required-by-concept',
    })
    expect(judged({}, { lanes: [] })).toMatchObject({ verdict: 'not-applicable', reason: 'no-subject' })
  })
})
