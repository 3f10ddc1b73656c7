import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { bodyOf, box, plainDoor, zoneOnly } from '../../cases/plain-door.ts'
import { driven, laneOf, wideGrid } from '../../cases/plain-traffic.ts'
import type { Door } from '../model/door.ts'

const truck = bodyOf([box(300, 200, 1500)])
const hung = {
  travel: 'turning',
  thickness_mm: 40,
  bulge_mm: 0,
  hinged: { hinge: 'at-zero', opensTo: 'a', length_mm: 2000, secondPanel_mm: undefined, openAngle_rad: Math.PI / 2 },
} as const
const calling = () => wideGrid({ function: 'opening' })
const drive = (changes = {}) => driven({ openDelay_s: 0.3, ...changes })
const judged = (changes: Partial<Door> = {}) =>
  findingOf('opening-in-time', plainDoor({ bodies: [truck], sensors: calling(), drive: drive(), lanes: [laneOf()], ...changes }))

// The grid calls 2380 mm before the leaf, at most 1 mm less (passing/way-sights.test.ts), with a response of 0.1 s. The leaf opens at 500 mm/s and
// 1000 mm/s2: for 1500 mm of a body it takes 0.5 s for the first 125 mm and 1375 / 500 = 2.75 s for the rest: 3.25 s.
describe('opening-in-time', () => {
  // Hand calculation: a leaf about to shut stops in 0.1 + 0.5 s, rests 0.2 s: 0.8 s instead of the delay of 0.3 s; 0.1 + 0.8 + 3.25 = 4.15 s
  it('passes where the vehicle goes less far than it is called before, a leaf about to shut included', () => {
    const found = judged()
    expect(found).toMatchObject({ verdict: 'pass', facts: { wasClosing: true, clear_mm: 1500, lane_mm_per_s: 400 } })
    expect(found.verdict === 'pass' && found.limit.value).toBeCloseTo(400 * 4.15, 6)
  })

  // 0.1 + 0.3 + 3.25 = 3.65 s
  it('takes a shut leaf where the drive does not turn round, or where its delay is longer', () => {
    const stays = judged({ drive: drive({ afterStop: 'stay' }) })
    expect(stays).toMatchObject({ facts: { wasClosing: false } })
    expect(stays.verdict === 'pass' && stays.limit.value).toBeCloseTo(400 * 3.65, 6)
    const late = judged({ drive: drive({ openDelay_s: 1 }) })
    expect(late.verdict === 'pass' && late.limit.value).toBeCloseTo(400 * 4.35, 6)
  })

  // 600 * 4.15 = 2490 against 2380; 2380 / 4.15 = 573.5
  it('fails where the vehicle is faster, and says the pace at which it would do', () => {
    const lane = (fastest_mm_per_s: number) => [laneOf({ fastest_mm_per_s })]
    const late = judged({ lanes: lane(600) })
    expect(late.verdict).toBe('fail')
    const slower = Number(late.facts['slower_mm_per_s'])
    expect(slower).toBeCloseTo(573.4, 0)
    expect(judged({ lanes: lane(slower - 0.01) }).verdict).toBe('pass')
    expect(judged({ lanes: lane(slower + 1) }).verdict).toBe('fail')
  })

  it('fails where the body is higher than the opening, by how much', () => {
    const high = judged({ bodies: [bodyOf([box(300, 200, 2600)])] })
    expect(high).toMatchObject({ verdict: 'fail', measured: { value: 2500 }, limit: { value: 2600 }, facts: { higher_mm: 100 } })
  })

  // Hand calculation: a leaf 2000 long has passed x = 850 at cos(angle) = 850 / 2000 and a little more for its thickness: 64.8 degrees, 2263 mm of arc
  it('waits for a leaf that swings until it is past the whole way of the body, and settles nothing where it never is', () => {
    const lanes = [laneOf({ xMin_mm: 850, xMax_mm: 1150, from: ['b'], fastest_mm_per_s: 300 })]
    const found = judged({ leaf: hung, lanes })
    const clear_mm = Number(found.facts['clear_mm'])
    expect(clear_mm).toBeGreaterThan(2263)
    expect(clear_mm).toBeLessThan(2320)
    // 0.1 of response, 0.8 of a leaf about to shut, 0.5 for the first 125 mm and the rest at 500 mm/s
    expect(found.verdict === 'pass' && found.limit.value).toBeCloseTo(300 * (0.9 + 0.5 + (clear_mm - 125) / 500), 3)
    const narrow = { ...hung, hinged: { ...hung.hinged, openAngle_rad: Math.PI / 4 } }
    expect(judged({ leaf: narrow, lanes })).toMatchObject({ verdict: 'undetermined', reason: 'not-computable' })
  })

  it('asks for what nobody entered, and has no subject without lanes of vehicles and a field that opens', () => {
    expect(judged({ drive: drive({ openDelay_s: undefined }) })).toMatchObject({ needs: ['survey/drive/openDelay_s'] })
    expect(judged({ drive: drive({ openSpeed_mm_per_s: undefined }) })).toMatchObject({ needs: ['survey/drive/openSpeed_m_per_s'] })
    expect(judged({ sensors: wideGrid({ function: 'call', response_s: undefined }) })).toMatchObject({
      needs: ['sensors/0/fields/0/response_s'],
    })
    expect(judged({ lanes: [laneOf({ who: 'people' })] })).toMatchObject({ reason: 'no-subject' })
    expect(judged({ sensors: [zoneOnly(), ...wideGrid()] })).toMatchObject({ reason: 'no-subject' })
    expect(judged({ leaf: { travel: 'turning', thickness_mm: 40, bulge_mm: 0 } })).toMatchObject({ needs: ['survey/leaf/hinged'] })
  })
})
