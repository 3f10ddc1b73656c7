import { describe, expect, it } from 'vitest'
import { findingOf, findingsOf } from '../../cases/judged.ts'
import { block, bodyOf, box, downward, plainDoor, plainState, plainZone } from '../../cases/plain-door.ts'

/** Method case H11: 5 x 4 cells of 100, the beam sees the 2 x 2 about (500, 0). */
const zone = plainZone({ xMin_mm: 300, xMax_mm: 750, yMin_mm: -200, yMax_mm: 200, pitch_mm: 100 })
const bodies = [bodyOf([box(102, 102, 500)])]

describe('blind-pocket', () => {
  it('is about one pocket: its cells, area, extent and diameter (method case H11)', () => {
    const finding = findingOf('blind-pocket', plainDoor({ zones: [zone], bodies }))
    expect(finding).toMatchObject({
      id: 'blind-pocket:zone/A',
      subject: { kind: 'pocket', id: 'zone/A' },
      verdict: 'fail',
      provisional: 'grid',
      facts: {
        letter: 'A',
        cells: 16,
        area_mm2: 160_000,
        xMin_mm: 300,
        xMax_mm: 800,
        yMin_mm: -200,
        yMax_mm: 200,
        bodyName: 'test body',
        postureName: '102 x 102 x 500',
      },
      worstCase: { body: 'body', posture: 0, state: 'as surveyed' },
    })
    expect(finding.facts['diameter_mm']).toBeCloseTo(Math.sqrt(500 * 500 + 400 * 400), 9)
  })

  it('gives each pocket its own finding and verdict', () => {
    const row = downward([300, 400, 500].map((x_mm) => ({ x_mm: x_mm + 50, y_mm: 0, z_mm: 2000 })))
    const strip = plainZone({ xMin_mm: 300, xMax_mm: 800, yMin_mm: -50, yMax_mm: 50, pitch_mm: 100, allowedPocket_mm: 150 })
    const gapped = {
      ...row,
      planes: row.planes.map((plane) => (plane.kind === 'row' ? { ...plane, places: plane.places.filter((_, i) => i !== 1) } : plane)),
    }
    const found = findingsOf('blind-pocket', plainDoor({ sensors: [gapped], zones: [strip], bodies: [bodyOf([box(90, 90, 500)])] }))
    // seen are the cells at 350 and 550; unseen 450 (diameter 141), and 650 with 750 (diameter 224)
    expect(found.map(({ id, verdict, facts }) => [id, verdict, facts['cells']])).toEqual([
      ['blind-pocket:zone/A', 'fail', 2],
      ['blind-pocket:zone/B', 'pass', 1],
    ])
  })

  it('names the obstacle that hides the body', () => {
    const shelf = block({ id: 'shelf', name: 'high shelf', from_mm: 1000, to_mm: 1050 })
    const { facts } = findingOf('blind-pocket', plainDoor({ states: [plainState({ obstacles: [shelf] })] }))
    expect(facts).toMatchObject({ cause: 'hidden-behind', causeCells: 1, obstacle: 'shelf', obstacleName: 'high shelf' })
  })

  it('does not apply where there is no pocket', () => {
    expect(findingOf('blind-pocket', plainDoor())).toMatchObject({
      id: 'blind-pocket:door',
      verdict: 'not-applicable',
      reason: 'no-subject',
    })
  })
})
