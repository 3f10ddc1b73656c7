import { describe, expect, it } from 'vitest'
import { BOUNDS } from '../src/bounds.ts'
import { parseDocument } from '../src/index.ts'
import { changed, exampleFile, SIX_VALUES } from './example-files.ts'

const codes = (file: unknown) => {
  const result = parseDocument(typeof file === 'string' ? file : JSON.stringify(file))
  return result.ok ? result.notes.map(({ code }) => code) : result.issues.map(({ code }) => code)
}
const times = <T>(count: number, make: (i: number) => T): T[] => Array.from({ length: count }, (_, i) => make(i))

// None of these is timed; each would hang or exhaust memory if its bound were missing.
describe('hostile files', () => {
  it('are refused by size, nesting and number of values before anything is made of them', () => {
    expect(codes(' '.repeat(BOUNDS.textLength + 1))).toEqual(['too-large'])
    expect(codes(`{"sillsight":1,"records":${'['.repeat(3_000_000)}`)).toEqual(['too-deep'])
    expect(codes(`{"sillsight":1,"records":[${'0,'.repeat(3_000_000)}0]}`)).toEqual(['too-many-values'])
    expect(codes({ ...SIX_VALUES, records: 'x'.repeat(BOUNDS.textValue + 1) })).toEqual(['text-too-long'])
    expect(codes({ ...SIX_VALUES, ['x'.repeat(BOUNDS.key + 1)]: 1 })).toEqual(['name-too-long'])
  })

  it('that are wrong in very many places are answered with a hundred issues at most', () => {
    expect(codes({ ...SIX_VALUES, sensors: times(190_000, () => 0) })).toEqual(['wrong-length'])
    expect(codes(`{"sillsight":1,"survey":{${'"a":1,'.repeat(190_000)}"a":1}}`)).toEqual(['duplicate-key'])
    expect(
      codes(
        changed(
          exampleFile(),
          'survey/obstacles',
          times(BOUNDS.obstacles, () => 0),
        ),
      ),
    ).toHaveLength(BOUNDS.issues)
  })

  it('with 100,000 unknown names are read, with a hundred notes and one that counts the rest', () => {
    const unknown = Object.fromEntries(times(100_000, (i) => [`width_m${i}`, i]))
    const found = codes({ ...SIX_VALUES, survey: { ...SIX_VALUES.survey, ...unknown } })
    expect(found).toHaveLength(BOUNDS.notes + 1)
    expect(found.at(-1)).toBe('more-notes')
  })

  it('cannot ask for millions of beams by a number', () => {
    const planes = times(BOUNDS.planes, (i) => ({ id: `p${i}`, beamCount: BOUNDS.beamsOfPlane, spacing_mm: 1 }))
    const sensor = { use: 'demo-header-row', side: 'a', mountingHeight_mm: 3000, offset_mm: 100, source: { basis: 'measured' }, planes }
    expect(codes({ ...SIX_VALUES, sensors: times(BOUNDS.sensors, () => sensor) })).toEqual(['too-much'])
  })

  it('cannot keep the judge busy with parts that are each within bounds', () => {
    const zones = times(BOUNDS.zones, (i) => ({
      id: `z${i}`,
      purpose: 'presence-at-leaf',
      xMin_mm: 0,
      xMax_mm: 3000,
      yMin_mm: -800,
      yMax_mm: -50,
      pitch_mm: 5,
    }))
    expect(codes({ ...exampleFile(), zones })).toEqual(['too-much'])
    const postures = times(BOUNDS.postures, () => ({ shape: 'box', size_mm: [100, 200, 300], yaw_deg: [0, 360] }))
    expect(codes(changed(exampleFile(), 'bodies/1/postures', postures))).toEqual(['too-much'])
  })

  it('with a sensor beyond the number of beams blame neither its zones nor its place', () => {
    const planes = times(5, (i) => ({ id: `p${i}`, fovMin_deg: -10, fovMax_deg: 10, beamCount: BOUNDS.beamsOfPlane }))
    expect(codes(changed(exampleFile(), 'sensors/0/planes', planes))).toContain('too-much')
  })
})
