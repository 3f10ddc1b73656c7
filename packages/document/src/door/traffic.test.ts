import { describe, expect, it } from 'vitest'
import { changed, PLAIN_DRIVE as drive, exampleFile } from '../../test/example-files.ts'
import { parseDocument, toDoor } from '../index.ts'

const parsed = (changes: object) => parseDocument(JSON.stringify(changed(exampleFile(), 'survey/drive', { ...drive, ...changes })))
function issues(changes: object) {
  const result = parsed(changes)
  return result.ok ? [] : result.issues.map(({ path, expected, got }) => ({ path: path.replace('survey/drive/', ''), expected, got }))
}

describe('the lanes of a door file', () => {
  it('say who falls and who follows, and a posture that it comes about by a fall', () => {
    const lane = { id: 'walk', who: 'people', xMin_mm: 100, xMax_mm: 900, falls: 'anywhere', followGap_mm: 600 }
    const lying = { shape: 'box', size_mm: [500, 1700, 250], how: 'fallen' }
    const file = changed(changed(exampleFile(), 'survey/lanes', [lane]), 'bodies/1/postures/0', lying)
    const result = parseDocument(JSON.stringify(file))
    if (!result.ok) throw new Error(JSON.stringify(result.issues))
    const door = toDoor(result.document, result.catalogue)
    expect(door.lanes).toMatchObject([{ id: 'walk', falls: true, followGap_mm: 600 }])
    expect(door.bodies[1]?.postures.map(({ lies }) => lies)).toEqual([true, undefined])
  })
})

describe('the drive of a door file', () => {
  it('becomes millimetres and keeps what nobody said as unknown', () => {
    const result = parsed({ stoppingCurve: [[0.1, 50]], partialOpenings_mm: [900] })
    if (!result.ok) throw new Error(JSON.stringify(result.issues))
    const door = toDoor(result.document, result.catalogue)
    expect(door.drive).toMatchObject({
      closeSpeed_mm_per_s: 500,
      closeJerk_mm_per_s3: undefined,
      stoppingCurve: [{ at_s: 0.1, way_mm: 50 }],
      partialOpenings_mm: [900],
      movingMass_kg: undefined,
    })
    expect(door.lanes?.[0]).toMatchObject({
      id: 'lane',
      from: ['a', 'b'],
      slowest_mm_per_s: 500,
      fastest_mm_per_s: 2000,
      longestStay_s: undefined,
    })
  })

  it('refuses negative speeds, a leaf that never closes, and millimetres where metres are meant', () => {
    const expected = 'a number from 0.001 up to 20'
    for (const wrong of [-0.5, 0, 500])
      expect(issues({ closeSpeed_m_per_s: wrong })).toEqual([{ path: 'closeSpeed_m_per_s', expected, got: `${wrong}` }])
  })

  it('refuses a delay longer than the closing', () => {
    const [issue, ...more] = issues({ stopDelay_s: 50 })
    expect(more).toEqual([])
    expect(issue).toMatchObject({ path: 'stopDelay_s', got: '50' })
    expect(issue?.expected).toMatch(/^less than the whole closing takes \(\d+\.\d\d s\)$/)
  })

  it('refuses stopping curves with gaps, times twice or backward, and ways that fall', () => {
    const at = (curve: readonly (readonly [number, number])[]) => issues({ stoppingCurve: curve }).map(({ path }) => path)
    expect(at([[0.1, 40], [0.2, 60], [0.4, 70]])).toEqual([]) // biome-ignore format: a curve
    expect(at([[0.1, 40], [0.1, 60]])).toEqual(['stoppingCurve/1']) // biome-ignore format: a curve
    expect(at([[0.2, 40], [0.1, 60]])).toEqual(['stoppingCurve/1']) // biome-ignore format: a curve
    expect(at([[0.1, 40], [0.9, 60]])).toEqual(['stoppingCurve/1']) // biome-ignore format: a curve
    expect(at([[0.1, 40], [0.2, 30]])).toEqual(['stoppingCurve/1']) // biome-ignore format: a curve
  })

  it('takes measured stopping times, begun ones too, and how vehicles brake, and refuses a fall that outdoes the brake', () => {
    const stopTimes = { readings_s: [0.5, 0.52, 0.51], share_percent: 95, confidence_percent: 90 }
    const result = parsed({ stopTimes, openDelay_s: 0.4 })
    if (!result.ok) throw new Error(JSON.stringify(result.issues))
    expect(toDoor(result.document, result.catalogue).drive).toMatchObject({
      openDelay_s: 0.4,
      stopTimes: { readings_s: [0.5, 0.52, 0.51], share: 0.95, confidence: 0.9 },
    })
    const begun = parsed({ stopTimes: { readings_s: [0.5] } })
    expect(begun.ok && toDoor(begun.document, begun.catalogue).drive?.stopTimes).toEqual({
      readings_s: [0.5],
      share: undefined,
      confidence: undefined,
    })
    const bound = parsed({ stopTimes: { readings_s: [], share_percent: 95 } })
    expect(bound.ok && toDoor(bound.document, bound.catalogue).drive).not.toHaveProperty('stopTimes')
    const braked = (gradient_percent: number) =>
      parseDocument(
        JSON.stringify(changed(exampleFile(), 'survey/lanes/0/braking', { reaction_s: 1, decel_m_per_s2: 2, gradient_percent })),
      )
    const level = braked(10)
    if (!level.ok) throw new Error(JSON.stringify(level.issues))
    expect(toDoor(level.document, level.catalogue).lanes?.[0]?.braking).toMatchObject({
      decel_mm_per_s2: 2000,
      fall: 0.1,
      source: { basis: 'from memory' },
    })
    const steep = braked(21)
    expect(steep.ok || steep.issues).toMatchObject([
      { path: 'survey/lanes/0/braking/decel_m_per_s2', expected: 'a number above what the fall takes (2.06)' },
    ])
  })

  it('takes what the separation-distance standard asks about a field, and the edition that the job names', () => {
    const approach = { way: 'parallel', capability_mm: 60, height_mm: 200 }
    const file = changed(changed(exampleFile(), 'sensors/0/fields/0/approach', approach), 'concept/separation', '2010')
    const result = parseDocument(JSON.stringify(file))
    if (!result.ok) throw new Error(JSON.stringify(result.issues))
    const door = toDoor(result.document, result.catalogue)
    expect(door.separation).toBe('2010')
    expect(door.concept).not.toHaveProperty('separation')
    const [sensor] = door.sensors
    expect(sensor?.kind !== 'zone-only' && sensor?.fields[0]?.approach).toEqual({
      ...approach,
      addend_mm: undefined,
      supplement_mm: undefined,
      source: { basis: 'from memory', note: 'the door file gives no source' },
    })
  })

  it('refuses a partial opening larger than the leaf goes, and a body in a lane that is none', () => {
    expect(issues({ partialOpenings_mm: [99_000] }).map(({ path }) => path)).toEqual(['partialOpenings_mm/0'])
    const result = parseDocument(JSON.stringify(changed(exampleFile(), 'survey/lanes/0/bodies', ['nobody'])))
    expect(result.ok || result.issues.map(({ path, code }) => `${path} ${code}`)).toEqual(['survey/lanes/0/bodies/0 unknown-id'])
  })
})
