import { describe, expect, it } from 'vitest'
import { findingOf, findingsOf } from '../../cases/judged.ts'
import { downward, level, lightGrid, plainDoor, plainState } from '../../cases/plain-door.ts'

/** A beam at 60 degrees whose margin of 50 leaves 25 above the floor (hand calculation: 50 cos 60). */
const slanted = downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], { backgroundMargin_mm: 50 }, {}, 60)
const onFloor = (tolerance_mm: number | undefined) => [plainState({ floor: { ...level(), tolerance_mm } })]
const judged = (tolerance_mm: number | undefined, sensor = slanted) =>
  findingOf('floor-clearance', plainDoor({ sensors: [sensor], states: onFloor(tolerance_mm) }))

describe('floor-clearance', () => {
  it('passes where the floor may rise by less than the lowest entry', () => {
    const finding = judged(24)
    expect(finding).toMatchObject({
      id: 'floor-clearance:sensor/field',
      verdict: 'pass',
      limit: { value: 24, unit: 'mm' },
      facts: { tolerance_mm: 24, plane: 'p0', beam: 1 },
    })
    expect(finding.facts['height_mm']).toBeCloseTo(25, 9)
  })

  it('fails where it may rise as far or farther: the limits of a field belong to it', () => {
    expect(judged(26).verdict).toBe('fail')
    expect(judged(25).verdict).toBe('fail')
    const cleared = downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], {}, { clearance_mm: 30 })
    expect(judged(30, cleared)).toMatchObject({ verdict: 'fail', measured: { value: 30 } })
    expect(judged(29, cleared).verdict).toBe('pass')
  })

  it('gives its figure and asks for the tolerance where nobody gave it; a field that takes the surveyed floor fails anyway', () => {
    expect(judged(undefined)).toMatchObject({ verdict: 'undetermined', reason: 'missing-input', needs: ['survey/floor/tolerance_mm'] })
    expect(judged(undefined, downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }]))).toMatchObject({ verdict: 'fail', measured: { value: 0 } })
  })

  it('judges every field, and in each state its own floor', () => {
    const floor = level()
    const states = [
      plainState({ floor }),
      plainState({ id: 'same', floor }),
      plainState({ id: 'up', floor: { ...level(), tolerance_mm: undefined } }),
    ]
    const found = findingsOf('floor-clearance', plainDoor({ sensors: [lightGrid([300])], states }))
    expect(found.map(({ id, verdict }) => [id, verdict])).toEqual([
      ['floor-clearance:grid/field@up', 'undetermined'],
      ['floor-clearance:grid/field@as surveyed', 'pass'],
      ['floor-clearance:grid/field@same', 'pass'],
    ])
    expect(found[0]).toMatchObject({ needs: ['survey/states/2/floor/tolerance_mm'], measured: { value: 300 } })
  })

  it('does not apply to fields that take nothing', () => {
    expect(judged(10, downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], {}, { clearance_mm: 3000 })).verdict).toBe('not-applicable')
  })
})
