import { describe, expect, it } from 'vitest'
import { findingOf, findingsOf } from '../../cases/judged.ts'
import { block, bodyOf, box, downward, fromMemory, plainDoor, plainState, plainZone } from '../../cases/plain-door.ts'
import type { Door } from '../model/door.ts'

const judged = (changes: Partial<Door> = {}) => findingOf('zone-covered', plainDoor(changes))
/** Four cells of 100 about (500, 0); the one beam sees a body of 102 x 102 in all of them, one of 90 x 90 in none (hand calculation, as method case H2). */
const fourCells = plainZone({ pitch_mm: 100 })
const smallBody = bodyOf([box(90, 90, 500)])

describe('zone-covered', () => {
  it('passes where every free placement is seen, provisionally', () => {
    expect(judged({ zones: [fourCells], bodies: [bodyOf([box(102, 102, 500)])] })).toMatchObject({
      id: 'zone-covered:zone',
      verdict: 'pass',
      provisional: 'grid',
      measured: { value: 0, unit: 'mm' },
      limit: { value: 0, unit: 'mm' },
      facts: { share: 1, seen: 4, blind: 0, notFree: 0, blindArea_mm2: 0, pockets: 0, fields: 1, zoneName: 'at the leaf' },
    })
  })

  it('fails by the largest diameter of a pocket, with its case', () => {
    const finding = judged({ zones: [fourCells], bodies: [smallBody] })
    expect(finding).toMatchObject({
      verdict: 'fail',
      facts: { share: 0, blind: 4, blindArea_mm2: 40_000, pockets: 1, pocket: 'A' },
      worstCase: { body: 'body' },
    })
    expect(finding.verdict === 'fail' && finding.measured.value).toBeCloseTo(Math.sqrt(2) * 200, 9)
  })

  it('passes with pockets up to the allowed diameter, included', () => {
    const corner = downward([
      { x_mm: 450, y_mm: -50, z_mm: 2000 },
      { x_mm: 550, y_mm: -50, z_mm: 2000 },
      { x_mm: 450, y_mm: 50, z_mm: 2000 },
    ])
    const one = (allowedPocket_mm: number) =>
      judged({ sensors: [corner], bodies: [smallBody], zones: [{ ...fourCells, allowedPocket_mm }] })
    expect(one(141).verdict).toBe('fail') // 100 sqrt(2) = 141.42
    expect(one(142)).toMatchObject({ verdict: 'pass', facts: { blind: 1, pockets: 1 } })
    expect(one(100 * Math.sqrt(2)).verdict).toBe('pass')
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

  it('does not pass on samples of a yaw range, but fails on them', () => {
    const turning = (a: number) => bodyOf([box(a, a, 500, [0, 90])])
    expect(judged({ bodies: [turning(100)] })).toMatchObject({
      verdict: 'undetermined',
      reason: 'yaw-range-sampled',
      needs: ['bodies/0/postures'],
      measured: { value: 0 },
    })
    expect(judged({ bodies: [turning(90)], zones: [fourCells] }).verdict).toBe('fail')
  })

  it('rests on the survey, the zone, its bodies and the sensors that count', () => {
    const covered = { bodies: [bodyOf([box(100, 100, 500)])] }
    for (const path of ['survey/walls', 'survey/visibility_m', 'zones', 'bodies/0/source', 'sensors/0/x_mm'])
      expect(judged({ ...covered, assumed: [path] }), path).toMatchObject({ reason: 'rests-on-assumption', needs: [path] })
    expect(judged({ ...covered, assumed: ['survey/leaf/bulge_mm', 'sensors/1/x_mm', 'concept'] }).verdict).toBe('pass')
    expect(judged({ bodies: [bodyOf([box(100, 100, 500)], { source: fromMemory })] })).toMatchObject({
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
    expect(findingsOf('zone-covered', plainDoor({ states, zones })).map(({ id, verdict }) => [id, verdict])).toEqual([
      ['zone-covered:zone@up', 'fail'],
      ['zone-covered:zone@as surveyed', 'pass'],
    ])
  })
})
