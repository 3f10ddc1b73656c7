import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { downward, plainDoor } from '../../cases/plain-door.ts'
import type { Door, Leaf } from '../model/door.ts'
import type { Field } from '../model/sensor.ts'

/** Leans 45 degrees through the slab of a leaf of 50 to either side, and enters it 1750 above the floor (as worked in coverage/leaf-in-field.test.ts). */
const through = (field: Partial<Field> = {}) => downward([{ x_mm: 500, y_mm: 300, z_mm: 2000 }], {}, field, -45)
const leaf: Leaf = { travel: 'down', thickness_mm: 40, bulge_mm: 30 }
const judged = (field: Partial<Field> = {}, changes: Partial<Door> = {}) =>
  findingOf('leaf-in-field', plainDoor({ leaf, sensors: [through(field)], ...changes }))

describe('leaf-in-field', () => {
  it('fails by the way over which the leaf meets a beam in the field', () => {
    const finding = judged()
    expect(finding).toMatchObject({
      id: 'leaf-in-field:sensor/field',
      verdict: 'fail',
      limit: { value: 0, unit: 'mm' },
      facts: { travel: 'down', travel_mm: 2500, stretches: 1, from_mm: 0, blanked_mm: 0 },
    })
    expect(finding.facts['to_mm']).toBeCloseTo(1750, 9)
  })

  it('passes where blanking windows take all of it, and says how much; what is left fails', () => {
    const blanked = judged({
      blanking: [
        { from_mm: 0, to_mm: 1000 },
        { from_mm: 1000, to_mm: 1800 },
      ],
    })
    expect(blanked).toMatchObject({ verdict: 'pass', measured: { value: 0 } })
    expect(blanked.facts['blanked_mm']).toBeCloseTo(1750, 9)
    expect(judged({ blanking: [{ from_mm: 0, to_mm: 1750 }] }).verdict).toBe('pass') // to the place of entry itself
    const left = judged({ blanking: [{ from_mm: 100, to_mm: 1700 }] })
    expect(left).toMatchObject({ verdict: 'fail', facts: { stretches: 2, from_mm: 0, to_mm: 100 } })
    expect(left.verdict === 'fail' && left.measured.value).toBeCloseTo(150, 9)
  })

  it('passes where the field keeps clear of the leaf', () => {
    expect(judged({ yMin_mm: 60 }).verdict).toBe('pass')
  })

  it('takes back a pass that rests on a bulge that nobody gave', () => {
    expect(judged({ yMin_mm: 60 }, { assumed: ['survey/leaf/bulge_mm'] })).toMatchObject({
      reason: 'rests-on-assumption',
      needs: ['survey/leaf/bulge_mm'],
    })
  })

  // Hand calculation: beams straight down at (500, 100) lie in a leaf 40 thick from 11.31 - 2.25 to 11.31 + 2.25 degrees; at 2000 mm from the hinge that is an arc from 316 to 474 mm
  it('knows a leaf that swings: the arc of its edge over which a panel meets a beam', () => {
    const hinged = { hinge: 'at-zero', opensTo: 'a', length_mm: 2000, secondPanel_mm: undefined, openAngle_rad: 1.5 } as const
    const hung = { leaf: { travel: 'turning', thickness_mm: 40, bulge_mm: 0, hinged } as const }
    const beam = (y_mm: number) => ({ ...hung, sensors: [downward([{ x_mm: 500, y_mm, z_mm: 2700 }])] })
    const found = judged({}, beam(100))
    expect(found).toMatchObject({ verdict: 'fail', facts: { travel: 'turning', travel_mm: 3000, stretches: 1 } })
    expect(Math.abs(Number(found.facts['from_mm']) - 316)).toBeLessThan(5)
    expect(Math.abs(Number(found.facts['to_mm']) - 474)).toBeLessThan(5)
    expect(judged({}, beam(-100)).verdict).toBe('pass')
    // it rests at 1.5 rad: farther out on that side than half its thickness
    expect(judged({}, { ...hung, sensors: [downward([{ x_mm: -40, y_mm: 500, z_mm: 2700 }])] }).verdict).toBe('pass')
  })

  it('asks how a leaf that turns is hung, asks for one that nobody described, and does not apply without fields', () => {
    expect(judged({}, { leaf: { ...leaf, travel: 'turning' } })).toMatchObject({ verdict: 'undetermined', needs: ['survey/leaf/hinged'] })
    expect(judged({}, { leaf: undefined })).toMatchObject({ verdict: 'undetermined', reason: 'missing-input', needs: ['survey/leaf'] })
    expect(judged({}, { sensors: [] }).verdict).toBe('not-applicable')
  })
})
