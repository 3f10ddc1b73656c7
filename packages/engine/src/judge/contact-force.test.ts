import { describe, expect, it } from 'vitest'
import { findingOf, findingsOf } from '../../cases/judged.ts'
import { plainDoor } from '../../cases/plain-door.ts'
import type { Door } from '../model/door.ts'
import type { ForceRecord } from '../model/test-record.ts'

const gentle: ForceRecord = {
  id: 'r1',
  place: 'middle of the edge',
  gap_mm: 300,
  peak_N: 400,
  time_s: 0.75,
  mean_N: 150,
  after5s_N: 25,
  instrument: 'force gauge 7',
  calibratedUntil: '2026-11-25',
  on: '2026-11-25',
  by: 'A. Reader',
}
const concept = { people: 'public', drive: 'automatic', closingEdge: 'force-limited-edge' } as const
const confirmations = ['peak-force', 'peak-time', 'lasting-force', 'rest-force'].map((value) => ({
  value,
  document: 'EN 12453',
  edition: '2000',
  clause: 'annex A',
  by: 'A. Reader',
  on: '2026-11-01',
}))
const judged = (changes: Partial<ForceRecord> = {}, door: Partial<Door> = {}) =>
  findingOf('contact-force', plainDoor({ concept, confirmations, forceRecords: [{ ...gentle, ...changes }], ...door }))

// Limits from memory (EN 12453:2000, annex A): 400 N, 0.75 s, 150 N, 25 N; 1400 N along with more than 500 mm left
describe('contact-force', () => {
  it('passes with each figure at its limit, once somebody confirmed the limits, and not before', () => {
    expect(judged()).toMatchObject({ id: 'contact-force:r1', verdict: 'pass', measured: { value: 400, unit: 'N' }, limit: { value: 400 } })
    expect(judged({}, { confirmations: [] })).toMatchObject({
      verdict: 'undetermined',
      reason: 'limit-from-memory',
      needs: ['peak-force', 'peak-time', 'lasting-force', 'rest-force'].map((id) => `confirmations/${id}`),
    })
  })

  it.each([
    ['peak', { peak_N: 401 }, 401, 400],
    ['time', { time_s: 0.76 }, 0.76, 0.75],
    ['mean', { mean_N: 151 }, 151, 150],
    ['rest', { after5s_N: 26 }, 26, 25],
  ])('fails where the %s is too large, confirmed or not, calibrated or not', (exceeds, changes, value, limit) => {
    for (const door of [{}, { confirmations: [] }])
      expect(judged(changes, door)).toMatchObject({ verdict: 'fail', facts: { exceeds }, measured: { value }, limit: { value: limit } })
    expect(judged({ ...changes, calibratedUntil: undefined }).verdict).toBe('fail')
  })

  it('allows more where a leaf that goes along has more than 500 mm left, and knows no limit below 50', () => {
    const leaf = { travel: 'toward-zero', thickness_mm: 40, bulge_mm: 0 } as const
    const along = (gap_mm: number, peak_N: number) => judged({ gap_mm, peak_N }, { leaf })
    expect(along(500, 401).verdict).toBe('fail')
    expect(along(501, 1400)).toMatchObject({ verdict: 'pass', limit: { value: 1400 } })
    expect(along(501, 1401).verdict).toBe('fail')
    expect(judged({ gap_mm: 501, peak_N: 401 }).verdict).toBe('fail') // down: whatever is left
    expect(along(49, 10)).toMatchObject({ verdict: 'undetermined', needs: ['forceRecords/0/gap_mm'] })
  })

  it('asks for a calibration that had not run out, and for what is left after 5 s', () => {
    expect(judged({ on: '2026-11-26' })).toMatchObject({ verdict: 'undetermined', needs: ['forceRecords/0/calibratedUntil'] })
    expect(judged({ calibratedUntil: undefined, after5s_N: undefined })).toMatchObject({
      needs: ['forceRecords/0/calibratedUntil', 'forceRecords/0/after5s_N'],
    })
  })

  it('asks for records, concept and leaf where there are none, and gives each record its finding', () => {
    expect(judged({}, { forceRecords: [] })).toMatchObject({ verdict: 'undetermined', needs: ['forceRecords'] })
    expect(judged({}, { concept: undefined })).toMatchObject({ needs: ['concept'] })
    expect(judged({}, { leaf: undefined })).toMatchObject({ needs: ['survey/leaf'] })
    const two = plainDoor({ concept, confirmations, forceRecords: [gentle, { ...gentle, id: 'r2', peak_N: 500 }] })
    expect(findingsOf('contact-force', two).map(({ id, verdict }) => [id, verdict])).toEqual([
      ['contact-force:r2', 'fail'],
      ['contact-force:r1', 'pass'],
    ])
  })

  it('does not apply where the edge may touch nobody, or is held to run', () => {
    const other = { verdict: 'not-applicable', reason: 'not-required-by-concept' }
    expect(judged({}, { concept: { ...concept, closingEdge: 'contact-free' } })).toMatchObject(other)
    expect(judged({}, { concept: { ...concept, drive: 'hold-to-run' } })).toMatchObject(other)
  })
})
