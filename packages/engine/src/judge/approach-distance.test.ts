import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../cases/judged.ts'
import { bodyOf, box, downward, fromMemory, measured, plainDoor } from '../../cases/plain-door.ts'
import { driven, laneOf, wideGrid } from '../../cases/plain-traffic.ts'
import type { Door } from '../model/door.ts'
import type { Approach } from '../model/sensor.ts'
import type { Drive } from '../model/traffic.ts'

const lying = (changes: Partial<Approach> = {}): Approach => ({
  way: 'parallel',
  capability_mm: 60,
  height_mm: 300,
  addend_mm: undefined,
  supplement_mm: 0,
  source: measured,
  ...changes,
})
const hung = {
  travel: 'turning',
  thickness_mm: 40,
  bulge_mm: 0,
  hinged: { hinge: 'at-zero', opensTo: 'a', length_mm: 2000, secondPanel_mm: undefined, openAngle_rad: Math.PI / 2 },
} as const
const walkway = laneOf({ who: 'people' })
const standing = bodyOf([box(300, 200, 1500)])
function judged(changes: Partial<Door> = {}, id = 'approach-distance:lane-2010') {
  const sensors = wideGrid({ approach: lying() })
  const door = plainDoor({ bodies: [standing], sensors, drive: driven(), lanes: [walkway], separation: '2010', ...changes })
  const found = findingsOf('approach-distance', door)
  const finding = found.find((each) => each.id === id)
  if (!finding) throw new Error(`approach-distance must give ${id}, got ${found.map((each) => each.id).join()}`)
  return finding
}

// The grid of beams finds a body 2380 mm before the leaf, at most 1 mm less (passing/way-sights.test.ts). Driven at 500 mm/s with 0.1 s of delay and
// 1000 mm/s2 of braking, seen within 0.1 s: T = 0.1 + 0.1 + 0.5 = 0.7 s.
describe('approach-distance', () => {
  // Hand calculation with the published addends (check values sep-03, sep-04): 1600 * 0.7 + 1200 - 0.4 * 300 = 2200; 1600 * 0.7 + 1200 = 2320
  it('passes where the body is found farther out than S, in the edition that the job names, and says what is left over', () => {
    const old = judged()
    expect(old).toMatchObject({
      verdict: 'pass',
      limit: { value: 2200 },
      facts: { way: 'parallel', total_s: 0.7, addend_mm: 1080, separation: '2010' },
    })
    expect(old.facts['left_mm']).toBeGreaterThan(179)
    expect(old.facts['left_mm']).toBeLessThanOrEqual(180)
    const recent = judged(
      { separation: '2024', sensors: wideGrid({ approach: lying({ supplement_mm: 20 }) }) },
      'approach-distance:lane-2024',
    )
    expect(recent).toMatchObject({ verdict: 'pass', limit: { value: 2340 }, facts: { addend_mm: 1200, supplement_mm: 20 } })
  })

  it('judges both editions where the job names none, and asks for the supplement of the later one', () => {
    const sensors = wideGrid({ approach: lying({ supplement_mm: undefined }) })
    const both = { separation: undefined, sensors }
    expect(judged(both).verdict).toBe('pass')
    expect(judged(both, 'approach-distance:lane-2024')).toMatchObject({
      verdict: 'undetermined',
      needs: ['sensors/0/fields/0/approach/supplement_mm'],
    })
  })

  // Hand calculation: an output of 0.4 s makes T = 1.0 s, S = 2680 (check value sep-16), and 2380 are there
  it('fails where it is found too late, and each of the changes that it solves for puts it in order', () => {
    const slow = (changes: Partial<Door> = {}) => judged({ sensors: wideGrid({ approach: lying(), response_s: 0.4 }), ...changes })
    const late = slow()
    expect(late).toMatchObject({ verdict: 'fail', limit: { value: 2680 }, facts: { way: 'parallel', stop_s: 0.6 } })
    const slower = Number(late.facts['slower_mm_per_s'])
    expect(slower).toBeGreaterThan(311) // (2380 - 1080) / 1600 - 0.4 - 0.1 = 0.3125 s of braking
    expect(slower).toBeLessThanOrEqual(312.5)
    expect(slow({ drive: driven({ closeSpeed_mm_per_s: slower }) }).verdict).toBe('pass')
    expect(slow({ drive: driven({ closeSpeed_mm_per_s: slower + 2 }) }).verdict).toBe('fail')
    const faster_s = Number(late.facts['faster_s'])
    expect(faster_s).toBeLessThanOrEqual(0.2125) // 0.8125 s less 0.6 s
    expect(judged({ sensors: wideGrid({ approach: lying(), response_s: faster_s }) }).verdict).toBe('pass')
    expect(judged({ sensors: wideGrid({ approach: lying(), response_s: faster_s + 0.001 }) }).verdict).toBe('fail')
    expect(late.facts).not.toHaveProperty('wider_mm') // no limit of a light grid holds it back
  })

  // Hand calculation: beams every 100 mm down over 3 m to either side; the field ends at 2000, so that the front is found there, 1980 before the leaf.
  // 2220 from the middle of the leaf would do, and the next beam stands at 2300
  it('says how far a field has to reach where its limit is what holds it back', () => {
    const places = [600, 1000, 1400].flatMap((x_mm) => Array.from({ length: 61 }, (_, i) => ({ x_mm, y_mm: 100 * i - 3000, z_mm: 2400 })))
    const field = { approach: lying(), response_s: 0.1, hold_s: 0 }
    const within = (limit_mm: number) => [downward(places, {}, { ...field, yMin_mm: -limit_mm, yMax_mm: limit_mm })]
    const narrow = judged({ sensors: within(2000), lanes: [laneOf({ who: 'people', from: ['a'] })] })
    expect(narrow).toMatchObject({ verdict: 'fail', limit: { value: 2200 } })
    const wider = Number(narrow.facts['wider_mm'])
    expect(wider).toBeGreaterThanOrEqual(2300)
    expect(wider).toBeLessThan(2310)
    expect(judged({ sensors: within(wider), lanes: [laneOf({ who: 'people', from: ['a'] })] }).verdict).toBe('pass')
  })

  // Hand calculation: 15 (d - 50) = 15 * 80 = 1200, at most 1000
  it('fails where a lying zone hangs lower than its detection capability allows (published)', () => {
    expect(judged({ sensors: wideGrid({ approach: lying({ capability_mm: 130 }) }) })).toMatchObject({
      verdict: 'fail',
      measured: { value: 300 },
      limit: { value: 1000 },
      facts: { lowest_mm: 1000 },
    })
    expect(judged({ sensors: wideGrid({ approach: lying({ capability_mm: 70 }) }) }).verdict).toBe('pass')
  })

  // Check values sep-08, sep-09: from memory; 2000 * 0.7 + 8 * (30 - 14) = 1528, above 500, so 1600 * 0.7 + 128 = 1248
  it('never passes by what is only remembered about arms until somebody confirms it', () => {
    const curtain = { sensors: wideGrid({ approach: lying({ way: 'perpendicular', capability_mm: 30 }) }) }
    const waiting = judged(curtain)
    expect(waiting).toMatchObject({ verdict: 'undetermined', reason: 'limit-from-memory', limit: { value: 1248 } })
    const confirm = (value: string) => ({ value, document: 'ISO 13855', edition: '2010', clause: '6.2', by: 'A. Reader', on: '2026-01-15' })
    const confirmations = ['approach-speed-arm', 'approach-arm-least', 'approach-arm-addend'].map(confirm)
    expect(judged({ ...curtain, confirmations }).verdict).toBe('pass')
  })

  it('takes an addend that somebody read off the page, with its source', () => {
    const given = (approach: Partial<Approach>) => ({
      separation: '2024' as const,
      sensors: wideGrid({ approach: lying({ way: 'single-beam', capability_mm: undefined, ...approach }) }),
    })
    const id = 'approach-distance:lane-2024'
    expect(judged(given({}), id)).toMatchObject({ needs: ['sensors/0/fields/0/approach/addend_mm'] })
    expect(judged(given({ addend_mm: 1200 }), id)).toMatchObject({ verdict: 'pass', limit: { value: 2320 } })
    expect(judged(given({ addend_mm: 1200, source: fromMemory }), id).verdict).toBe('undetermined')
  })

  // Hand calculation: 0.58, 0.60, 0.62 s: mean 0.6, deviation 0.02; scipy 1.17.1 gives the factor 4.258164936706422 for three readings, 90 % and 90 %
  it('takes the bound of measured stopping times, and then solves for no slower leaf', () => {
    const stopTimes = { readings_s: [0.58, 0.6, 0.62], share: 0.9, confidence: 0.9 }
    const stop_s = 0.6 + 4.258164936706422 * 0.02
    const read = judged({ drive: driven({ stopTimes }) })
    expect(read.facts['stop_s']).toBeCloseTo(stop_s, 6)
    expect(read.verdict === 'pass' && read.limit.value).toBeCloseTo(1600 * (0.1 + stop_s) + 1080, 3)
    const late = judged({ drive: driven({ stopTimes: { ...stopTimes, readings_s: [1.58, 1.6, 1.62] } }) })
    expect(late.verdict).toBe('fail')
    expect(late.facts).not.toHaveProperty('slower_mm_per_s')
  })

  it('asks for what begun stopping times lack, and passes by no delay and braking beside them', () => {
    const begun = (stopTimes: NonNullable<Drive['stopTimes']>) => judged({ drive: driven({ stopTimes }) })
    const [readings, share, confidence] = ['readings_s', 'share_percent', 'confidence_percent'].map(
      (name) => `survey/drive/stopTimes/${name}`,
    )
    expect(judged({ drive: driven({}) }).verdict).toBe('pass')
    expect(begun({ readings_s: [0.5], share: undefined, confidence: undefined })).toMatchObject({
      verdict: 'undetermined',
      needs: [readings, share, confidence],
    })
    expect(begun({ readings_s: [0.5, 0.5], share: 0.9, confidence: 0.9 })).toMatchObject({ needs: [readings] })
    expect(begun({ readings_s: [0.5, 0.5, 0.5], share: undefined, confidence: 0.9 })).toMatchObject({ needs: [share] })
  })

  it('takes the end of a measured stopping curve before the model', () => {
    const stoppingCurve = [{ at_s: 0.2, way_mm: 100 }, { at_s: 0.5, way_mm: 180 }] // biome-ignore format: a curve
    expect(judged({ drive: driven({ stoppingCurve }) }).facts['stop_s']).toBe(0.5)
  })

  it('does not apply where the concept does not promise that nobody is touched, and says so once', () => {
    for (const concept of [
      { people: 'public', drive: 'automatic', closingEdge: 'presence-aid' },
      { people: 'public', drive: 'automatic', closingEdge: 'force-limited-edge' },
      { people: 'trained', drive: 'hold-to-run', closingEdge: 'contact-free' },
    ] as const)
      expect(judged({ concept }, 'approach-distance:door')).toMatchObject({ verdict: 'not-applicable', reason: 'not-required-by-concept' })
    expect(judged({ lanes: [laneOf()] }, 'approach-distance:door')).toMatchObject({ reason: 'no-subject' })
  })

  // Hand calculation (passing/leaf-approach.test.ts): a leaf 2000 long comes 1810.4 toward side A at x = 850, and the body is found 2500 - 100 before y = 0
  it('measures to where a leaf that swings ever comes, on the side to which it opens', () => {
    const narrow = { xMin_mm: 850, xMax_mm: 1150, who: 'people' } as const
    const toward = judged({ leaf: hung, lanes: [laneOf({ ...narrow, from: ['a'] })] })
    expect(toward).toMatchObject({ verdict: 'fail', limit: { value: 2200 }, facts: { from: 'a' } })
    expect(toward.verdict === 'fail' && toward.measured.value).toBeGreaterThan(587)
    expect(toward.verdict === 'fail' && toward.measured.value).toBeLessThan(590)
    const behind = judged({ leaf: hung, lanes: [laneOf({ ...narrow, from: ['b'] })] })
    expect(behind).toMatchObject({ verdict: 'pass', limit: { value: 2200 } })
  })

  it('asks for what nobody entered', () => {
    expect(judged({ concept: undefined })).toMatchObject({ needs: ['concept'] })
    expect(judged({ drive: undefined, sensors: [] })).toMatchObject({ needs: ['survey/drive'] })
    expect(judged({ sensors: [] })).toMatchObject({ needs: ['sensors'] })
    expect(judged({ sensors: wideGrid({ approach: undefined, response_s: undefined }) })).toMatchObject({
      needs: ['sensors/0/fields/0/response_s', 'sensors/0/fields/0/approach'],
    })
    expect(judged({ drive: driven({ closeSpeed_mm_per_s: undefined, stopDecel_mm_per_s2: undefined }) })).toMatchObject({
      needs: ['survey/drive/closeSpeed_m_per_s', 'survey/drive/stopDecel_m_per_s2'],
    })
    expect(judged({ leaf: { travel: 'turning', thickness_mm: 40, bulge_mm: 0 } })).toMatchObject({ needs: ['survey/leaf/hinged'] })
  })
})
