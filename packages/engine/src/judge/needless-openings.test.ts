import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { bodyOf, box, downward, plainDoor } from '../../cases/plain-door.ts'
import type { Door } from '../model/door.ts'
import type { Field } from '../model/sensor.ts'
import type { Crossing } from '../model/traffic.ts'

const crossing = (changes: Partial<Crossing> = {}): Crossing => ({
  id: 'aisle',
  name: 'aisle',
  yMin_mm: 1000,
  yMax_mm: 2000,
  slowest_mm_per_s: 500,
  fastest_mm_per_s: 1500,
  bodies: ['body'],
  perDay: 200,
  mostPerDay: 25,
  ...changes,
})
const row = (field: Partial<Field> = {}) => {
  const places = Array.from({ length: 9 }, (_, i) => ({ x_mm: 600 + 100 * i, y_mm: 1000, z_mm: 2400 }))
  return [downward(places, {}, { function: 'opening', response_s: 0.5, xMin_mm: -1000, xMax_mm: 3000, ...field })]
}
const judged = (changes: Partial<Door> = {}) =>
  findingOf(
    'needless-openings',
    plainDoor({ bodies: [bodyOf([box(300, 200, 1500)])], sensors: row(), crossings: [crossing()], ...changes }),
  )

describe('needless-openings', () => {
  // Hand calculation: seen for 1100 mm (within 50) on 4 of 40 tracks; in 0.5 s that is 2200 mm/s, all paces: a tenth of 200 passers-by
  it('counts the passers-by who stay in sight for the response, against what somebody said is bearable', () => {
    expect(judged()).toMatchObject({ id: 'needless-openings:aisle', verdict: 'pass', measured: { value: 20 }, limit: { value: 25 } })
    expect(judged({ crossings: [crossing({ mostPerDay: 19 })] })).toMatchObject({
      verdict: 'fail',
      facts: { share: 0.1, openings: 20, seenTracks: 4, tracks: 40 },
    })
  })

  it('counts fewer where the output answers later, and none where nobody stays so long', () => {
    expect(judged({ sensors: row({ response_s: 1 }) }).facts['openings']).toBeLessThan(14) // about 1100 of 500 to 1500 mm/s
    expect(judged({ sensors: row({ response_s: 3 }) })).toMatchObject({ verdict: 'pass', measured: { value: 0 } })
  })

  it('tells the figure and asks what is bearable where nobody said', () => {
    expect(judged({ crossings: [crossing({ mostPerDay: undefined })] })).toMatchObject({
      verdict: 'undetermined',
      measured: { value: 20 },
      needs: ['survey/crossings/0/mostPerDay'],
    })
    expect(judged({ crossings: [crossing({ perDay: undefined })], sensors: row({ response_s: undefined }) })).toMatchObject({
      needs: ['survey/crossings/0/perDay', 'sensors/0/fields/0/response_s'],
    })
  })

  it('has no subject without a crossing or a field that opens', () => {
    expect(judged({ crossings: [] })).toMatchObject({ reason: 'no-subject' })
    expect(judged({ sensors: row({ function: 'presence' }) })).toMatchObject({ reason: 'no-subject' })
  })
})
