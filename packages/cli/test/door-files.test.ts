import { existsSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { builtinSensors } from '@sillsight/document'
import { describe, expect, it } from 'vitest'
import { beamDoor, text } from './doors.ts'
import { builtProgram } from './program.ts'

const { run, work } = await builtProgram()
const read = (name: string): string => readFileSync(join(work, name), 'utf8')

describe('sillsight new', () => {
  it('makes a file from six piped answers that can be judged at once', () => {
    const { code, out, told } = run(['new', 'first.json'], { input: '2400\n2.6 m\nyard\n1\n2500\n120\n' })
    expect({ code, out }).toEqual({ code: 0, out: '' })
    expect(told).toContain('sillsight judge first.json')
    const { name, sides, survey, sensors } = JSON.parse(read('first.json'))
    expect({ name, sides, width: survey.opening.width_mm, height: survey.opening.height_mm }).toEqual({
      name: 'first',
      sides: { a: 'yard', b: 'other side' },
      width: 2400,
      height: 2600,
    })
    expect(sensors).toMatchObject([{ side: 'a', mountingHeight_mm: 2500, offset_mm: 120 }])
    expect([1, 2]).toContain(run(['judge', 'first.json']).code)
  })

  it('takes lengths in feet and inches, and keeps them as they were read off the tape', () => {
    const { out } = run(['new', '-', '--units', 'ft-in'], { input: '94 1/2\n7\' 10 1/2"\nyard\n1\n8 ft\n6\n' })
    const { survey, sensors } = JSON.parse(out)
    expect(survey.opening).toMatchObject({ width_mm: 2400.3, height_mm: 2400.3 }) // 94.5 x 25.4
    expect(survey.opening.readings).toEqual({ widths: [{ reading: '94 1/2 in' }], heights: [{ reading: '7\' 10 1/2"' }] })
    expect(sensors[0]).toMatchObject({ mountingHeight_mm: 2438.4, offset_mm: 152.4 })
  })

  it('names the defaults that Enter takes, and the file says that nobody measured them', () => {
    const { code, told, out } = run(['new', '-'], { input: '2400\n2600\n\n\n\n\n' })
    expect(code).toBe(0)
    expect(told).toContain('[Enter: 2600 mm]')
    expect(told).toContain('[Enter: 150 mm]')
    expect(JSON.parse(out).sensors[0]).toMatchObject({ mountingHeight_mm: 2600, offset_mm: 150 })
    expect(out).toContain('not measured')
  })

  it('writes nothing after an answer that is no length, too few answers, or values that contradict each other', () => {
    expect(run(['new', 'x.json'], { input: 'wide\n' }).told).toMatch(/question 1 \(Clear width.*expected a length.*\n {2}repair: /)
    expect(run(['new', 'x.json'], { input: '-5\n' }).told).toContain('expected a length above 0')
    expect(run(['new', 'x.json'], { input: '2400\n2600\n' }).told).toContain('question 3')
    expect(run(['new', 'x.json'], { input: '2400\n2600\nyard\n7\n' }).told).toContain('expected a number from 1 to')
    expect(run(['new', 'x.json'], { input: '900 m\n2600\nyard\n1\n2500\n100\n' })).toMatchObject({ code: 3, out: '' })
    expect(existsSync(join(work, 'x.json'))).toBe(false)
  })

  it('never replaces a file, and says so before it asks', () => {
    writeFileSync(join(work, 'mine.json'), 'mine')
    const { code, told } = run(['new', 'mine.json'], { input: '2400\n2600\nyard\n1\n2500\n120\n' })
    expect(code).toBe(3)
    expect(told).not.toContain('Clear width')
    expect(read('mine.json')).toBe('mine')
  })
})

describe('sillsight migrate', () => {
  const old = JSON.stringify({
    sillsight: 0,
    survey: { opening: { size_mm: [2400, 2600] } },
    sensors: [{ use: builtinSensors()[0]?.id, at_mm: [1200, 100, 2600], turn_deg: [0, 5, 0] }],
  })

  it('prints the current version and leaves the file as it is', () => {
    writeFileSync(join(work, 'old.json'), old)
    const { code, out } = run(['migrate', 'old.json'])
    expect(code).toBe(0)
    expect(JSON.parse(out)).toMatchObject({ sillsight: 1, survey: { opening: { width_mm: 2400, height_mm: 2600 } } })
    expect(read('old.json')).toBe(old)
    expect(run(['migrate', '-'], { input: old }).out).toBe(out)
  })

  it('replaces the file with --write and keeps the old one, however often', () => {
    writeFileSync(join(work, 'old.json'), old, { mode: 0o640 })
    const mode = statSync(join(work, 'old.json')).mode
    const migrated = run(['migrate', 'old.json']).out
    expect(run(['migrate', 'old.json', '--write'])).toMatchObject({ code: 0, out: '' })
    expect(read('old.json')).toBe(migrated)
    expect(read('old.json.before-migration')).toBe(old)
    expect(statSync(join(work, 'old.json')).mode).toBe(mode)
    expect(run(['migrate', 'old.json', '--write']).told).toContain('nothing to do')
    writeFileSync(join(work, 'old.json'), `${old} `)
    run(['migrate', 'old.json', '--write'])
    expect(read('old.json.before-migration')).toBe(old)
    expect(read('old.json.before-migration-2')).toBe(`${old} `)
  })

  it('changes the file behind a link and leaves the link', () => {
    writeFileSync(join(work, 'real.json'), old)
    symlinkSync('real.json', join(work, 'link.json'))
    run(['migrate', 'link.json', '--write'])
    expect(JSON.parse(read('real.json')).sillsight).toBe(1)
    expect(
      readdirSync(work, { withFileTypes: true })
        .find(({ name }) => name === 'link.json')
        ?.isSymbolicLink(),
    ).toBe(true)
  })

  it('changes nothing when the file is newer, broken, or standard input', () => {
    writeFileSync(join(work, 'newer.json'), '{"sillsight": 2}')
    expect(run(['migrate', 'newer.json', '--write']).told).toContain('newer-version')
    expect(read('newer.json')).toBe('{"sillsight": 2}')
    expect(run(['migrate', '-', '--write'], { input: old })).toMatchObject({ code: 3, out: '' })
  })
})

describe('sillsight schema', () => {
  it('prints the JSON Schema of the door file', () => {
    const { code, out, told } = run(['schema'])
    expect({ code, told }).toEqual({ code: 0, told: '' })
    expect(JSON.parse(out)['$schema']).toBe('https://json-schema.org/draft/2020-12/schema')
    expect(JSON.parse(out).type).toBe('object')
  })
})

describe('libraries', () => {
  it('are read beside the door file and never elsewhere', () => {
    const pinned = '0'.repeat(64)
    const door = (file: string) => text({ ...beamDoor({ beam_mm: 400 }), libraries: [{ file, sha256: pinned }] })
    writeFileSync(join(work, 'library.json'), '{"sillsightLibrary": 1}')
    writeFileSync(join(work, 'inside.json'), door('library.json'))
    writeFileSync(join(work, 'outside.json'), door('../dist/main.cjs'))
    symlinkSync('/etc/hostname', join(work, 'sly.json'))
    writeFileSync(join(work, 'through-link.json'), door('sly.json'))
    expect(run(['judge', 'inside.json']).told).toContain('libraries/0') // read, and its content is not what was pinned
    for (const file of ['outside.json', 'through-link.json']) {
      const { code, told } = run(['judge', file])
      expect({ code, read: /[0-9a-f]{64}/.test(told.replaceAll(pinned, '')) }).toEqual({ code: 3, read: false })
    }
  })
})
