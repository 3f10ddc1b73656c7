import { describe, expect, it } from 'vitest'
import { changed, exampleFile, PLAIN_DRIVE } from '../../test/example-files.ts'
import { parseDocument, toDoor } from '../index.ts'

const drive = { ...PLAIN_DRIVE, holdOpen_s: 4 }
const parsed = (changes: object) => parseDocument(JSON.stringify(changed(exampleFile(), 'survey/drive', { ...drive, ...changes })))
function read(changes: object) {
  const result = parsed(changes)
  if (!result.ok) throw new Error(JSON.stringify(result.issues))
  return toDoor(result.document, result.catalogue).drive
}
function issues(changes: object) {
  const result = parsed(changes)
  return result.ok ? [] : result.issues.map(({ path, expected, got }) => ({ path: path.replace('survey/drive/', ''), expected, got }))
}
const refused = (cycle: object, more: object = {}) => issues({ ...more, cycle }).map(({ path }) => path)

describe('what the control does around a closing', () => {
  it('is read as it stands, and what nobody said stays unknown', () => {
    expect(read({})).not.toHaveProperty('cycle')
    expect(read({ cycle: { holdOpenFrom: 'clear', closesOnlyByTimer: 'yes', preWarning_s: 1.5 } })?.cycle).toEqual({
      holdOpenFrom: 'clear',
      closesOnlyByTimer: true,
      preWarning_s: 1.5,
      outputInWarning: undefined,
      attempts: undefined,
      attemptPause_s: undefined,
      attemptWhileHeld: undefined,
      afterAttempts: undefined,
    })
    expect(read({ cycle: { closesOnlyByTimer: 'no' } })?.cycle?.closesOnlyByTimer).toBe(false)
  })

  it('refuses negative times, a warning longer than a minute, more attempts than the bound, and words that are none', () => {
    expect(issues({ cycle: { preWarning_s: -1 } })).toEqual([
      { path: 'cycle/preWarning_s', expected: 'a number from 0 up to 60', got: '-1' },
    ])
    expect(issues({ cycle: { preWarning_s: 61 } })).toEqual([
      { path: 'cycle/preWarning_s', expected: 'a number from 0 up to 60', got: '61' },
    ])
    expect(issues({ cycle: { attempts: 21 } })).toEqual([{ path: 'cycle/attempts', expected: 'a whole number from 0 up to 20', got: '21' }])
    expect(refused({ attempts: 1.5 })).toEqual(['cycle/attempts'])
    expect(refused({ attempts: 2, attemptPause_s: -0.1 })).toEqual(['cycle/attemptPause_s'])
    expect(refused({ outputInWarning: 'ignored' })).toEqual(['cycle/outputInWarning'])
    expect(refused({}, { holdOpen_s: -4 })).toEqual(['holdOpen_s'])
  })

  it('refuses a hold-open time or a pause that starts anew and is shorter than the slowest presence output answers', () => {
    const file = changed(exampleFile(), 'sensors/0/fields/0/response_s', 0.6)
    const issuesOf = (changes: object) => {
      const result = parseDocument(JSON.stringify(changed(file, 'survey/drive', { ...drive, ...changes })))
      return result.ok ? [] : result.issues.map(({ path, expected, got }) => ({ path, expected, got }))
    }
    const expected = 'at least the response of the slowest presence output (0.6 s)'
    const cycle = { holdOpenFrom: 'clear' }
    expect(issuesOf({ holdOpen_s: 0.5, cycle })).toEqual([{ path: 'survey/drive/holdOpen_s', expected, got: '0.5' }])
    expect(issuesOf({ cycle: { ...cycle, attempts: 2, attemptPause_s: 0.1 } })).toMatchObject([
      { path: 'survey/drive/cycle/attemptPause_s', expected, got: '0.1' },
    ])
    expect(issuesOf({ holdOpen_s: 0.6, cycle })).toEqual([])
    expect(issuesOf({ holdOpen_s: 0.5, cycle: { holdOpenFrom: 'opened' } })).toEqual([])
  })

  it('refuses facts that contradict each other', () => {
    expect(refused({ attempts: 2 }, { afterStop: 'stay' })).toEqual(['cycle/attempts'])
    expect(refused({ attemptPause_s: 3 })).toEqual(['cycle/attemptPause_s'])
    expect(refused({ attempts: 0, attemptWhileHeld: 'starts' })).toEqual(['cycle/attemptWhileHeld'])
    expect(refused({ attempts: 2, attemptWhileHeld: 'starts', preWarning_s: 1, outputInWarning: 'cancels' })).toEqual([
      'cycle/attemptWhileHeld',
    ])
    expect(refused({ attempts: 2, afterAttempts: 'partial' })).toEqual(['cycle/afterAttempts'])
    expect(refused({ attempts: 2, afterAttempts: 'partial' }, { partialOpenings_mm: [900] })).toEqual([])
    expect(refused({ closesOnlyByTimer: 'yes' }, { holdOpen_s: undefined })).toEqual(['cycle/closesOnlyByTimer'])
  })
})

describe('a drive without a brake', () => {
  const { stopDecel_m_per_s2: _, ...unbraked } = drive
  const readOf = (changes: object) => read({ ...unbraked, stopDecel_m_per_s2: undefined, brake: 'none', ...changes })

  it('coasts as it was measured, by a rate or by a way at full speed, or as nobody knows', () => {
    expect(readOf({ coastDecel_m_per_s2: 0.4 })).toMatchObject({ brake: 'none', coastDecel_mm_per_s2: 400, stopDecel_mm_per_s2: undefined })
    expect(readOf({ coastWay_mm: 250 })?.coastDecel_mm_per_s2).toBe(500) // 500^2 / (2 * 250), on paper
    expect(readOf({})).toMatchObject({ brake: 'none', coastDecel_mm_per_s2: undefined })
  })

  it('is refused beside a figure of braking, and coasting beside a brake or said twice', () => {
    expect(issues({ brake: 'none' })).toEqual([
      { path: 'stopDecel_m_per_s2', expected: 'nothing, as brake is "none" (coastDecel_m_per_s2 or coastWay_mm instead)', got: '1' },
    ])
    expect(issues({ coastDecel_m_per_s2: 1 }).map(({ path }) => path)).toEqual(['coastDecel_m_per_s2'])
    expect(issues({ brake: 'brakes', coastWay_mm: 90 }).map(({ path }) => path)).toEqual(['coastWay_mm'])
    const twice = { stopDecel_m_per_s2: undefined, brake: 'none', coastDecel_m_per_s2: 1, coastWay_mm: 90 }
    expect(issues(twice).map(({ path }) => path)).toEqual(['coastWay_mm'])
    expect(issues({ ...twice, coastWay_mm: -90 }).map(({ path }) => path)).toContain('coastWay_mm')
  })
})
