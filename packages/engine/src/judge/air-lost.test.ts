import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { bodyOf, box, downward, plainDoor } from '../../cases/plain-door.ts'
import { driven } from '../../cases/plain-traffic.ts'
import type { Door } from '../model/door.ts'

const aisle = {
  id: 'aisle',
  name: 'aisle',
  yMin_mm: 1000,
  yMax_mm: 2000,
  slowest_mm_per_s: 500,
  fastest_mm_per_s: 1500,
  bodies: ['body'],
  perDay: 200,
  mostPerDay: undefined,
}
const places = Array.from({ length: 9 }, (_, i) => ({ x_mm: 600 + 100 * i, y_mm: 1000, z_mm: 2400 }))
const sensors = [downward(places, {}, { function: 'opening', response_s: 0.5, xMin_mm: -1000, xMax_mm: 3000 })]
const air = { sideA_degC: 0, sideB_degC: 20, mostPerDay_m3: 200 }
const moves = { openSpeed_mm_per_s: 1000, openAccel_mm_per_s2: 1000, closeSpeed_mm_per_s: 1000, closeAccel_mm_per_s2: 1000, holdOpen_s: 4 }
const leaf = { travel: 'toward-zero', thickness_mm: 40, bulge_mm: 0 } as const
const judged = (changes: Partial<Door> = {}) =>
  findingOf(
    'air-lost',
    plainDoor({ bodies: [bodyOf([box(300, 200, 1500)])], sensors, crossings: [aisle], leaf, drive: driven(moves), air, ...changes }),
  )

describe('air-lost', () => {
  // Hand calculation (motion/air-exchange.test.ts): 1.074687 m3/s through 2 x 2.5 m at 20 K; a sliding leaf 3 s each way and 4 s open lets through as much
  // as 7 s: 7.52281 m3; 20 needless openings in a day (judge/needless-openings.test.ts): 150.456 m3
  it('is the exchange of one opening times the needless openings in a day', () => {
    const found = judged()
    expect(found).toMatchObject({ verdict: 'pass', limit: { value: 200, unit: 'm3' }, facts: { openings: 20, difference: 20 } })
    expect(found.facts['lost_m3']).toBeCloseTo(150.456, 2)
    expect(judged({ air: { ...air, mostPerDay_m3: 150 } }).verdict).toBe('fail')
  })

  it('tells the figure where nobody said what is bearable, and asks for temperatures and motion that nobody entered', () => {
    const open = judged({ air: { ...air, mostPerDay_m3: undefined } })
    expect(open).toMatchObject({ verdict: 'undetermined', needs: ['survey/air/mostPerDay_m3'], measured: { unit: 'm3' } })
    expect(judged({ air: undefined })).toMatchObject({ needs: ['survey/air'] })
    expect(judged({ drive: driven({ ...moves, holdOpen_s: undefined, closeSpeed_mm_per_s: undefined }) })).toMatchObject({
      needs: ['survey/drive/closeSpeed_m_per_s', 'survey/drive/holdOpen_s'],
    })
    expect(judged({ crossings: [{ ...aisle, perDay: undefined }] })).toMatchObject({ needs: ['survey/crossings/0/perDay'] })
  })

  // Hand calculation: 3141.6 mm of arc take 4.14 s each way; the edge is 2000 from where it shuts from 60 degrees on, 1.547 s before the end: between 7.09 s and 12.28 s as if open
  it('lets more air through while a leaf swings', () => {
    const hinged = { hinge: 'at-zero', opensTo: 'a', length_mm: 2000, secondPanel_mm: undefined, openAngle_rad: Math.PI / 2 } as const
    const once = Number(judged({ leaf: { travel: 'turning', thickness_mm: 40, bulge_mm: 0, hinged } }).facts['opening_m3'])
    expect(once / 1.074687).toBeGreaterThan(7.09)
    expect(once / 1.074687).toBeLessThan(12.28)
  })

  it('has no subject without a crossing, and asks how a leaf that turns is hung', () => {
    expect(judged({ crossings: [] })).toMatchObject({ reason: 'no-subject' })
    expect(judged({ leaf: { ...leaf, travel: 'turning' } })).toMatchObject({ needs: ['survey/leaf/hinged'] })
  })
})
