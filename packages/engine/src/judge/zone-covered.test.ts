import { describe, expect, it } from 'vitest'
import { findingOf, findingsOf } from '../../cases/judged.ts'
import { block, bodyOf, box, downward, fromMemory, plainDoor, plainState, plainZone } from '../../cases/plain-door.ts'
import type { Door } from '../model/door.ts'

const judged = (changes: Partial<Door> = {}) => findingOf('zone-covered', plainDoor(changes))
/**
 * Four cells of 100 about (500, 0), a zone of 200 x 200. The one beam sees a body of 204 x 204 wherever its centre lies in the zone, one of
 * 102 x 102 at the four centres but not at the corners of the zone, one of 90 x 90 at none of the centres (hand calculation, as method case H2).
 */
const fourCells = plainZone({ pitch_mm: 100 })
const smallBody = bodyOf([box(90, 90, 500)])

describe('zone-covered', () => {
  it('passes where every free placement is seen, between the grid points too', () => {
    expect(judged({ zones: [fourCells], bodies: [bodyOf([box(204, 204, 500)])] })).toMatchObject({
      id: 'zone-covered:zone',
      verdict: 'pass',
      measured: { value: 0, unit: 'mm' },
      limit: { value: 0, unit: 'mm' },
      facts: { share: 1, seen: 4, blind: 0, notFree: 0, blindArea_mm2: 0, pockets: 0, fields: 1, zoneName: 'at the leaf' },
    })
  })

  it('is not settled where all grid points are seen but not all between: 102 x 102 of 200 x 200 (hand calculation: open 40000 - 10404)', () => {
    const finding = judged({ zones: [fourCells], bodies: [bodyOf([box(102, 102, 500)])] })
    expect(finding).toMatchObject({ verdict: 'undetermined', reason: 'not-proved', facts: { blind: 0 } })
    const open_mm2 = Number(finding.facts['openArea_mm2'])
    expect(open_mm2).toBeGreaterThanOrEqual(40_000 - 102 * 102)
    expect(open_mm2).toBeLessThan(40_000 - 98 * 98 + 1000) // within a tile of 3.125 mm of the rim
  })

  it('passes over tolerances, says how tight one must be, and fails where a body is unseen for all of them', () => {
    const exact = { length_mm: 0, position_mm: 0, tilt_rad: 0, roll_rad: 0, yaw_rad: 0, floor_mm: 0, range: 0 }
    // the beam may stand up to 10 mm off each way: the body must reach 110 mm from its centre
    const off = (half: number, position_mm: number) =>
      judged({ zones: [fourCells], bodies: [bodyOf([box(2 * half, 2 * half, 500)])], tolerances: { ...exact, position_mm } })
    expect(off(112, 10)).toMatchObject({ verdict: 'pass', facts: { tolerantArea_mm2: 0 } })
    const tight = off(105, 10)
    expect(tight).toMatchObject({
      verdict: 'undetermined',
      reason: 'within-tolerance',
      needs: ['tolerances/position_mm'],
      facts: { binding: 'position' },
    })
    expect(tight.facts['tightTo']).toBeGreaterThan(4) // 5 mm are left, found by halving 10 mm five times
    expect(tight.facts['tightTo']).toBeLessThan(5)
    expect(off(45, 3)).toMatchObject({ verdict: 'fail' }) // at the centres the beam passes 50 mm from the middle
    expect(off(45, 10)).toMatchObject({ verdict: 'undetermined', reason: 'within-tolerance' }) // 10 mm off, it may meet the body
  })

  it('fails by the largest diameter of a pocket, with its case', () => {
    const finding = judged({ zones: [fourCells], bodies: [smallBody] })
    expect(finding).toMatchObject({
      verdict: 'fail',
      facts: { share: 0, blind: 4, blindArea_mm2: 40_000, pockets: 1, pocket: 'A' },
      worstCase: { body: 'body' },
    })
    expect(finding.verdict === 'fail' && finding.measured.value).toBeCloseTo(Math.sqrt(2) * 200, 9) // the whole zone, corner to corner
  })

  it('passes with open parts up to the allowed diameter, and fails with a pocket that is larger for sure', () => {
    const one = (half: number, allowedPocket_mm: number) =>
      judged({ bodies: [bodyOf([box(2 * half, 2 * half, 500)])], zones: [{ ...fourCells, allowedPocket_mm }] })
    expect(one(45, 100).verdict).toBe('fail') // four blind centres: 141 mm across for sure
    expect(one(90, 290)).toMatchObject({ verdict: 'pass' }) // a frame of 10 mm stays open, 283 mm corner to corner (200 sqrt(2))
    expect(one(90, 250)).toMatchObject({ verdict: 'undetermined', reason: 'not-proved' })
  })

  it('fails where no field counts, however good its sight', () => {
    const opening = downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], {}, { function: 'opening' })
    expect(judged({ sensors: [opening] })).toMatchObject({ verdict: 'fail', facts: { fields: 0 } })
  })

  it('cannot tell where nothing is free', () => {
    const pillar = plainState({ obstacles: [block({ size_mm: [400, 400] })] })
    expect(judged({ states: [pillar] })).toMatchObject({
      verdict: 'undetermined',
      reason: 'nothing-free',
      needs: ['zones/0', 'survey/obstacles'],
    })
  })

  it('means every yaw of a range: a square of side a holds a disc of radius a / 2, whatever its yaw (hand geometry)', () => {
    const turning = (a: number) => bodyOf([box(a, a, 500, [0, 90])])
    // the corner of the zone lies 141.4 mm from the beam, so half a side of 145 mm is enough at any yaw, and 45 mm at none
    expect(judged({ bodies: [turning(310)], zones: [fourCells] }).verdict).toBe('pass')
    expect(judged({ bodies: [turning(90)], zones: [fourCells] }).verdict).toBe('fail')
  })

  it('rests on the survey, the zone, its bodies and the sensors that count', () => {
    const covered = { bodies: [bodyOf([box(404, 404, 500)])] }
    for (const path of ['survey/walls', 'survey/visibility_m', 'zones', 'bodies/0/source', 'sensors/0/x_mm'])
      expect(judged({ ...covered, assumed: [path] }), path).toMatchObject({ reason: 'rests-on-assumption', needs: [path] })
    expect(judged({ ...covered, assumed: ['survey/leaf/bulge_mm', 'sensors/1/x_mm', 'concept'] }).verdict).toBe('pass')
    expect(judged({ bodies: [bodyOf([box(404, 404, 500)], { source: fromMemory })] })).toMatchObject({
      reason: 'limit-from-memory',
      needs: ['confirmations/body'],
    })
  })

  it('says what visibility is told by where there is fog', () => {
    const ids = (extinction_per_mm: number) => judged({ extinction_per_mm }).basis.map(({ id }) => id)
    expect(ids(0)).toEqual(['zone-covered', 'body', 'sensor'])
    expect(ids(1e-5)).toEqual(['zone-covered', 'koschmieder-contrast', 'body', 'sensor'])
  })

  it('judges each state, and leaves out zones that must not be seen', () => {
    const states = [plainState(), plainState({ id: 'up', obstacles: [block({ from_mm: 1000, to_mm: 1100 })] })]
    const zones = [plainZone(), plainZone({ id: 'road', purpose: 'must-not-see' })]
    const bodies = [bodyOf([box(404, 404, 500)])]
    expect(findingsOf('zone-covered', plainDoor({ states, zones, bodies })).map(({ id, verdict }) => [id, verdict])).toEqual([
      ['zone-covered:zone@up', 'fail'],
      ['zone-covered:zone@as surveyed', 'pass'],
    ])
  })
})
