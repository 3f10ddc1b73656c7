import { describe, expect, it } from 'vitest'
import { findingOf, findingsOf } from '../../cases/judged.ts'
import { block, bodyOf, box, downward, plainDoor, plainState, plainZone } from '../../cases/plain-door.ts'
import type { Door } from '../model/door.ts'
import { judge } from './judge.ts'

/** No less than what is blind, and more by no more than a rim. */
function within(value: unknown, blind: number, rim: number): void {
  expect(value).toBeGreaterThanOrEqual(blind - 1e-6)
  expect(value).toBeLessThanOrEqual(blind + rim)
}

/** Method case H11: 5 x 4 cells of 100, the beam sees the 2 x 2 about (500, 0); of all placements those up to 51 mm from it each way. */
const zone = plainZone({ xMin_mm: 300, xMax_mm: 750, yMin_mm: -200, yMax_mm: 200, pitch_mm: 100 })
const bodies = [bodyOf([box(102, 102, 500)])]
const RIM_MM = 3.125 // of unproved tiles around what is blind

describe('blind-pocket', () => {
  it('is about one pocket: area, extent, diameter and largest circle of all its placements, cells of the grid (hand calculation)', () => {
    const finding = findingOf('blind-pocket', plainDoor({ zones: [zone], bodies }))
    expect(finding).toMatchObject({
      id: 'blind-pocket:zone/A',
      subject: { kind: 'pocket', id: 'zone/A' },
      verdict: 'fail',
      facts: {
        letter: 'A',
        cells: 16,
        xMin_mm: 300,
        xMax_mm: 750,
        yMin_mm: -200,
        yMax_mm: 200,
        bodyName: 'test body',
        postureName: '102 x 102 x 500',
      },
      worstCase: { body: 'body', posture: 0, state: 'as surveyed' },
    })
    expect(finding).not.toHaveProperty('provisional')
    expect(finding.facts['diameter_mm']).toBeCloseTo(Math.sqrt(450 * 450 + 400 * 400), 9)
    within(finding.facts['area_mm2'], 450 * 400 - 102 * 102, 8 * 51 * RIM_MM)
    // it touches two sides of the zone, 199 and 149 mm from the corner of what is seen at (551, 51)
    const radius_mm = 348 - Math.sqrt(348 * 348 - 199 * 199 - 149 * 149)
    expect(finding.facts['circleRadius_mm']).toBeLessThanOrEqual(radius_mm + 2 * RIM_MM)
    expect(finding.facts['circleAtMost_mm']).toBeGreaterThanOrEqual(radius_mm)
  })

  it('is measured on the grid, and provisional, where only the grid was asked (method case H11)', () => {
    const [finding] = judge(plainDoor({ zones: [zone], bodies }), { depth: 'grid' }).findings.filter(({ rule }) => rule === 'blind-pocket')
    expect(finding).toMatchObject({
      provisional: 'grid',
      facts: { cells: 16, area_mm2: 160_000, xMin_mm: 300, xMax_mm: 800, yMin_mm: -200, yMax_mm: 200 },
    })
    expect(finding?.facts['diameter_mm']).toBeCloseTo(Math.sqrt(500 * 500 + 400 * 400), 9)
    expect(finding?.facts).not.toHaveProperty('circleRadius_mm')
  })

  /** Two beams 200 mm apart over a strip of 500 x 80: seen are x 305 to 395 and 505 to 595. */
  const row = (allowedPocket_mm: number, changes: Partial<Door> = {}) => {
    const sensors = [downward([350, 550].map((x_mm) => ({ x_mm, y_mm: 0, z_mm: 2000 })))]
    const zones = [plainZone({ xMin_mm: 300, xMax_mm: 800, yMin_mm: -40, yMax_mm: 40, pitch_mm: 100, allowedPocket_mm })]
    return findingsOf('blind-pocket', plainDoor({ sensors, zones, bodies: [bodyOf([box(90, 90, 500)])], ...changes }))
  }

  it('gives each pocket its own finding: too large for sure, small enough, or between the two (hand calculation)', () => {
    // blind are 595 to 800, 220 mm across, and 395 to 505, 136 mm across; the strip from 300 to 305 holds no placement of the grid.
    // Cells of 100 at 650 and 750 are blind: their middles lie 100 mm apart, and their outer edges 224 mm, less 141 mm is sure.
    const told = (allowed_mm: number) => row(allowed_mm).map(({ id, verdict, facts }) => [id, verdict, facts['cells']])
    expect(told(70)).toEqual([
      ['blind-pocket:zone/A', 'fail', 2],
      ['blind-pocket:zone/B', 'undetermined', 1],
    ])
    expect(told(150)).toEqual([
      ['blind-pocket:zone/A', 'undetermined', 2],
      ['blind-pocket:zone/B', 'pass', 1],
    ])
    const [large, small] = row(150)
    expect(large).toMatchObject({ reason: 'not-proved', needs: ['zones/0/allowedPocket_mm'] })
    expect(large?.facts['sure_mm']).toBeCloseTo(Math.sqrt(200 * 200 + 100 * 100) - Math.sqrt(2) * 100, 9)
    within(large?.facts['diameter_mm'], Math.sqrt(205 * 205 + 80 * 80), RIM_MM)
    within(small?.facts['diameter_mm'], Math.sqrt(110 * 110 + 80 * 80), 2 * RIM_MM)
    within(small?.facts['area_mm2'], 110 * 80, 2 * 80 * RIM_MM)
  })

  it('does not pass where the open region over all tolerances is too large', () => {
    const tolerances = { length_mm: 0, position_mm: 30, tilt_rad: 0, roll_rad: 0, yaw_rad: 0, floor_mm: 0, range: 0 }
    const found = row(240, { tolerances })
    expect(row(240).map(({ verdict }) => verdict)).toEqual(['pass', 'pass'])
    expect(found.map((finding) => [finding.verdict, finding.verdict === 'undetermined' && finding.reason])).toEqual([
      ['undetermined', 'within-tolerance'],
      ['undetermined', 'within-tolerance'],
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
