import { mkdirSync, readdirSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { beamDoor, text } from './doors.ts'
import { builtProgram } from './program.ts'

const { run, work } = await builtProgram()
const door = beamDoor({ beam_mm: 900 })
const good = text(door)
const changed = (from: string, to: string): string => {
  if (!good.includes(from)) throw new Error(`the test door has no ${from}`)
  return good.replace(from, to)
}
const scanner = (values: object): string => {
  const plane = { id: 'p', fovMin_deg: -40, fovMax_deg: 40, beamCount: 41 }
  const field = { id: 'f', output: 'OUT', function: 'opening', xMin_mm: 'open', xMax_mm: 'open', clearance_mm: 50, top_mm: 'open' }
  const sensor = { id: 's', device: 'scanner', maxRange_mm: 9000, rangeRef_mm: 9000, reflectanceRef: 0.1, backgroundMargin_mm: 50 }
  const pose = { x_mm: 500, y_mm: 0, z_mm: 2000 }
  return text({ ...door, sensors: [{ ...sensor, pose, planes: [{ ...plane, ...values }], fields: [field] }] })
}
const post = { id: 'post', shape: 'post', x_mm: 500, y_mm: 0, radius_mm: 100, from_mm: 0, to_mm: 3000 }

/** What is wrong, the file, and words of the place that the problem has to name. */
const cases: readonly (readonly [what: string, file: string, place: RegExp])[] = [
  ['an empty file', '', /file/],
  ['no JSON', '{"sillsight": 1,', /end/],
  ['JSON with a trailing comma', changed('"sillsight": 1', '"sillsight": 1,'), /line 2/],
  ['a list', '[]', /file/],
  ['nothing but null', 'null', /file/],
  ['an older unknown version', changed('"sillsight": 1', '"sillsight": -1'), /sillsight/],
  ['a newer version', changed('"sillsight": 1', '"sillsight": 99'), /newer/],
  ['no version', changed('"sillsight": 1,', ''), /sillsight/],
  ['NaN', changed('"width_mm": 1000', '"width_mm": NaN'), /survey\/opening\/width_mm/],
  ['infinity', changed('"width_mm": 1000', '"width_mm": 1e999'), /survey\/opening\/width_mm/],
  ['a negative width', changed('"width_mm": 1000', '"width_mm": -3'), /survey\/opening\/width_mm: expected a number above 0, got -3/],
  ['a number in quotes', changed('"width_mm": 1000', '"width_mm": "1000"'), /survey\/opening\/width_mm/],
  ['a name twice', changed('"width_mm": 1000', '"width_mm": 1000, "width_mm": 900'), /survey\/opening\/width_mm/],
  [
    'a zone outside of everything',
    changed('"xMin_mm": 0', '"xMin_mm": 400000').replace('"xMax_mm": 1000', '"xMax_mm": 401000'),
    /zones\/0/,
  ],
  ['a zone turned inside out', changed('"xMin_mm": 0', '"xMin_mm": 2000'), /zones\/0/],
  ['a field of view of 0 with many beams', scanner({ fovMin_deg: 0, fovMax_deg: 0 }), /fovM/],
  ['a field of view of 360', scanner({ fovMin_deg: -180, fovMax_deg: 180 }), /fovM/],
  ['no beams', scanner({ beamCount: 0 }), /beamCount: expected a whole number from 1/],
  ['a thousand million beams', scanner({ beamCount: 1e9 }), /beamCount/],
  ['nesting without end', '{"a":'.repeat(100_000), /objects and lists/],
  ['NUL bytes', '\u0000'.repeat(100), /file/],
]

describe('bad input', () => {
  it('has a good file to start from', () => {
    expect(run(['judge', '-'], { input: good }).code).toBe(1)
    expect(run(['judge', '-'], { input: scanner({}) }).code).toBeLessThan(3)
  })

  it.each(cases)('%s: exit 3, nothing on standard output, and the place with expected, got and repair', (_, file, place) => {
    const { code, out, told } = run(['judge', '-'], { input: file })
    expect({ code, out }).toEqual({ code: 3, out: '' })
    expect(told).toMatch(place)
    for (const line of told.trimEnd().split('\n'))
      expect(line).toMatch(/^(sillsight: .*: expected .*, got .* \[[a-z0-9-]+\]| {2}repair: .+|sillsight: and \d+ more.*)$/)
  })

  it('a sensor inside of a post is bad input or a finding, never a pass', () => {
    const { sensors } = JSON.parse(scanner({}))
    const file = text({ ...door, sensors, survey: { ...door.survey, obstacles: [post] } })
    expect([1, 2, 3]).toContain(run(['judge', '-'], { input: file }).code)
  })

  it('files that are too large, folders and devices are refused', () => {
    writeFileSync(join(work, 'huge.json'), '')
    truncateSync(join(work, 'huge.json'), 1024 ** 4)
    mkdirSync(join(work, 'folder'))
    expect(run(['judge', 'huge.json']).told).toContain('[too-large]')
    expect(run(['judge', 'folder']).told).toContain('[is-a-folder]')
    expect(run(['judge', '/dev/zero']).told).toContain('[not-a-file]')
    expect(run(['judge', '-'], { input: ' '.repeat(9_000_000) }).told).toContain('[too-large]')
  })

  it('nothing is written for bad input, by any command', () => {
    writeFileSync(join(work, 'bad.json'), '{"sillsight": 1}')
    const before = readdirSync(work)
    for (const typed of [
      ['judge', 'bad.json'],
      ['draw', 'bad.json', '--out', 'a.svg'],
      ['migrate', 'bad.json', '--write'],
      ['why', 'bad.json', 'x'],
      ['new', 'a.json'],
      ['draw'],
      ['judge', 'bad.json', '--wrkers', '2'],
    ]) {
      expect(run(typed), typed.join(' ')).toMatchObject({ code: 3, out: '' })
    }
    expect(readdirSync(work)).toEqual(before)
  })
})
