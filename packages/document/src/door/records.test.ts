import { describe, expect, it } from 'vitest'
import { changed, exampleFile } from '../../test/example-files.ts'
import { parseDocument, toDoor } from '../index.ts'

const record = {
  id: 'r',
  place: 'middle',
  gap_mm: 50,
  peak_N: 380,
  time_s: 0.4,
  mean_N: 120,
  instrument: 'gauge 7',
  on: '2026-11-25',
  by: 'A. Reader',
}
const parsed = (place: string, value: unknown) => parseDocument(JSON.stringify(changed(exampleFile(), place, value)))
function issues(place: string, value: unknown) {
  const result = parsed(place, value)
  return result.ok ? [] : result.issues.map(({ path, expected, got }) => `${path}: ${expected}, got ${got}`)
}
function door(place: string, value: unknown) {
  const result = parsed(place, value)
  if (!result.ok) throw new Error(JSON.stringify(result.issues))
  return toDoor(result.document, result.catalogue)
}

describe('measured forces of a door file', () => {
  it('keep what nobody read as unknown', () => {
    expect(door('forceRecords', [record]).forceRecords).toEqual([{ ...record, after5s_N: undefined, calibratedUntil: undefined }])
  })
  it('are refused where they contradict themselves or miss their instrument, day or place', () => {
    expect(issues('forceRecords', [record, record])).toEqual(['forceRecords/1/id: an id that stands only once, got "r"'])
    expect(issues('forceRecords', [{ ...record, mean_N: 381 }])).toEqual(['forceRecords/0/mean_N: at most peak_N (380), got 381'])
    expect(issues('forceRecords', [{ ...record, on: '25.11.2026' }])[0]).toContain('a day as 2026-11-25')
    expect(issues('forceRecords', [{ ...record, peak_N: -1 }])[0]).toContain('a number from 0')
    for (const key of ['instrument', 'on', 'place', 'gap_mm', 'by'])
      expect(issues('forceRecords', [{ ...record, [key]: undefined }])[0]).toContain(`forceRecords/0/${key}`)
  })
})

describe('control facts of a door file', () => {
  it('keep what nobody stated as unknown, and need a source', () => {
    const source = { basis: 'measured' }
    expect(door('survey/control', { fire: { does: 'none', source } }).control).toEqual({
      sensorFault: undefined,
      powerReturn: undefined,
      fire: { does: 'none', source },
      escape: undefined,
      interlock: undefined,
    })
    expect(issues('survey/control', { fire: { does: 'none' } })[0]).toContain('survey/control/fire/source')
    expect(issues('survey/control', { fire: { does: 'wins', source } })[0]).toContain('survey/control/fire/does')
  })
})
