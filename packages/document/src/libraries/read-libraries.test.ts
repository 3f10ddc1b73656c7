import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { SIX_VALUES } from '../../test/example-files.ts'
import { toDoor } from '../door/resolve.ts'
import { issueLine } from '../issue.ts'
import { parseDocument } from '../parse.ts'
import { builtinSensors } from './catalogue.ts'

const sha256 = (text: string) => createHash('sha256').update(text).digest('hex')
const LIBRARY = JSON.stringify({
  sillsightLibrary: 1,
  sensors: {
    'own-scanner': {
      name: 'own scanner',
      device: 'scanner',
      source: { basis: 'datasheet', document: 'sheet 7', edition: 'B' },
      maxRange_mm: 5100,
      rangeRef_mm: 4900,
      reflectanceRef: 0.1,
      backgroundMargin_mm: 40,
      planes: [{ id: 'p', fovMin_deg: -40, fovMax_deg: 40, beamCount: 81 }],
    },
  },
  bodies: {
    'own-body': { reflectance: 0.3, source: { basis: 'measured' }, postures: [{ shape: 'cylinder', radius_mm: 100, height_mm: 500 }] },
  },
})

function withLibrary({ text = LIBRARY, file = 'libs/own.json', pin = sha256(text) } = {}) {
  const door = {
    ...SIX_VALUES,
    libraries: [{ file, sha256: pin }],
    sensors: [{ use: 'own-scanner', side: 'a', mountingHeight_mm: 4000, offset_mm: 100 }],
    bodies: [{ id: 'b', use: 'own-body' }],
  }
  return parseDocument(JSON.stringify(door), { sha256, readLibrary: (name) => (name === file ? text : undefined) })
}
const lines = (result: ReturnType<typeof parseDocument>) => (result.ok ? [] : result.issues.map(issueLine))

describe('libraries', () => {
  it('lend their sensors and bodies to `use`', () => {
    const result = withLibrary()
    const door = result.ok ? toDoor(result.document, result.catalogue) : undefined
    expect(door?.sensors[0]).toMatchObject({ name: 'own scanner', maxRange_mm: 5100, source: { basis: 'datasheet', document: 'sheet 7' } })
    expect(door?.bodies[0]).toMatchObject({ id: 'b', reflectance: 0.3 })
  })

  it('count only with the content that was pinned', () => {
    expect(lines(withLibrary({ text: LIBRARY.replace('5100', '9100'), pin: sha256(LIBRARY) }))[0]).toMatch(
      /^libraries\/0\/sha256: expected the content that was pinned/,
    )
  })

  it('must be there', () => {
    const text = JSON.stringify({ ...SIX_VALUES, libraries: [{ file: 'gone.json', sha256: '0'.repeat(64) }] })
    expect(lines(parseDocument(text, { sha256, readLibrary: () => undefined }))).toEqual([
      'libraries/0/file: expected a file that can be read, got "gone.json"',
    ])
    const throws = () => {
      throw new Error('no such file')
    }
    expect(lines(parseDocument(text, { sha256, readLibrary: throws }))).toEqual([
      'libraries/0/file: expected a file that can be read, got "gone.json"',
    ])
  })

  it.each([
    '../own.json',
    'libs/../../own.json',
    '/etc/own.json',
    '~/own.json',
    'C:/own.json',
    'c:own.json',
    'libs\\own.json',
    'file:///own.json',
    '',
  ])('are never looked for at %j', (file) => {
    const asked: string[] = []
    const readLibrary = (name: string) => {
      asked.push(name)
      return LIBRARY
    }
    const text = JSON.stringify({ ...SIX_VALUES, libraries: [{ file, sha256: '0'.repeat(64) }] })
    const result = parseDocument(text, { sha256, readLibrary })
    expect(lines(result)[0]).toContain("a relative path inside the door file's folder")
    expect(asked).toEqual([])
  })

  it('are checked like door files', () => {
    expect(lines(withLibrary({ text: '{"sillsightLibrary": 1,}' }))[0]).toMatch(
      /^libraries\/0\/sillsightLibrary: expected a name in double quotes/,
    )
    expect(lines(withLibrary({ text: LIBRARY.replace('5100', '-1') }))).toEqual([
      'libraries/0/content/sensors/own-scanner/maxRange_mm: expected a number above 0, got -1',
    ])
    expect(lines(withLibrary({ text: LIBRARY.replace('Library":1', 'Library":2') }))[0]).toContain('expected version 1, got 2')
    expect(lines(withLibrary({ text: '['.repeat(100) }))[0]).toContain('at most 32 objects and lists in each other')
  })

  it('may not give a name that something else has', () => {
    const text = LIBRARY.replace('own-body', 'presence-reference-body')
    expect(lines(withLibrary({ text }))).toEqual([
      'libraries/0/bodies/presence-reference-body: expected an id that no other library uses, got "presence-reference-body"',
    ])
  })

  it('that ship with the program hold sensors that hang by side, height and offset alone', () => {
    expect(builtinSensors().length).toBeGreaterThanOrEqual(3)
    for (const { id } of builtinSensors()) {
      const file = { ...SIX_VALUES, sensors: [{ use: id, side: 'b', mountingHeight_mm: 2800, offset_mm: 200 }] }
      expect(lines(parseDocument(JSON.stringify(file)))).toEqual([])
    }
  })
})
