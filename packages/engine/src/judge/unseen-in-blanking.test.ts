import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { bodyOf, box, downward, plainDoor, plainZone } from '../../cases/plain-door.ts'
import { driven } from '../../cases/plain-traffic.ts'
import type { Door } from '../model/door.ts'
import type { Field } from '../model/sensor.ts'

const watching = (field: Partial<Field>, id = 'sensor') =>
  downward([{ x_mm: 500, y_mm: 300, z_mm: 2000 }], { id }, { response_s: 0.1, ...field })
const lying = bodyOf([box(700, 300, 200), box(300, 300, 700)])
const judged = (field: Partial<Field>, changes: Partial<Door> = {}) =>
  findingOf('unseen-in-blanking', plainDoor({ sensors: [watching(field)], bodies: [lying], drive: driven(), ...changes }))
const window = (from_mm: number, to_mm: number) => ({ blanking: [{ from_mm, to_mm }] })

describe('unseen-in-blanking', () => {
  it('passes where no body that has to be seen fits under the leaf while the field is blanked', () => {
    expect(judged(window(0, 200))).toMatchObject({
      id: 'unseen-in-blanking:sensor/field',
      verdict: 'pass',
      measured: { value: 0, unit: 'mm' },
      facts: { to_mm: 200 },
    })
  })

  it('fails by the largest body that fits', () => {
    expect(judged(window(0, 201))).toMatchObject({
      verdict: 'fail',
      measured: { value: 200 },
      facts: { body: 'body', from_mm: 0, to_mm: 201 },
    })
    expect(judged(window(0, 900))).toMatchObject({ verdict: 'fail', measured: { value: 700 } })
  })

  // Hand calculation: at 500 mm/s 50 mm through the response, 50 mm through the delay, 500^2 / 2000 = 125 mm to brake: from a window that ends at 930 whatever is
  // lower than 705 is seen in time
  it('knows what is seen again in time below a window', () => {
    expect(judged(window(930, 1200))).toMatchObject({ verdict: 'pass', facts: { least_mm: 705 } })
    expect(judged(window(900, 1200))).toMatchObject({ verdict: 'fail', measured: { value: 700 }, facts: { least_mm: 675 } })
    expect(judged(window(900, 1200), { drive: undefined })).toMatchObject({ verdict: 'undetermined', needs: ['survey/drive'] })
    expect(judged(window(900, 1200), { drive: driven({ stopDecel_mm_per_s2: undefined }) })).toMatchObject({
      needs: ['survey/drive/stopDecel_m_per_s2'],
    })
  })

  it('takes a window that follows the leaf for one that ends when it is shut', () => {
    expect(judged({ leafBlanking: { beside_mm: 0, before_mm: 250 } })).toMatchObject({ verdict: 'fail', measured: { value: 200 } })
    expect(judged({ leafBlanking: { beside_mm: 90, before_mm: 0 } })).toMatchObject({ verdict: 'not-applicable' })
  })

  it('measures along the way of a leaf that slides, from both sides where two leaves meet', () => {
    const leaf = (travel: 'toward-zero' | 'both-inward') => ({ leaf: { travel, thickness_mm: 40, bulge_mm: 0 } })
    expect(judged(window(0, 290), leaf('toward-zero')).verdict).toBe('pass')
    expect(judged(window(0, 310), leaf('toward-zero'))).toMatchObject({ verdict: 'fail', measured: { value: 300 } })
    expect(judged(window(0, 160), leaf('both-inward'))).toMatchObject({ verdict: 'fail', measured: { value: 300 } })
  })

  it('is not settled where another presence field acts meanwhile, and has no subject without windows', () => {
    const other = (field: Partial<Field>) => ({ sensors: [watching(window(0, 300)), watching(field, 'other')] })
    expect(judged({}, other({}))).toMatchObject({ verdict: 'undetermined', reason: 'not-proved', measured: { value: 200 } })
    expect(judged({}, other({ function: 'opening' })).verdict).toBe('fail')
    expect(judged({}).verdict).toBe('not-applicable')
    expect(judged(window(0, 300), { zones: [plainZone({ function: 'opening', purpose: 'opening' })] }).verdict).toBe('pass')
    expect(judged(window(0, 300), { leaf: undefined })).toMatchObject({ needs: ['survey/leaf'] })
    expect(judged(window(0, 300), { leaf: { travel: 'turning', thickness_mm: 40, bulge_mm: 0 } })).toMatchObject({
      reason: 'not-computable',
    })
  })
})
