import Ajv2020 from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { changed, exampleFile, SIX_VALUES } from '../test/example-files.ts'
import { doorFileJsonSchema, libraryJsonSchema } from './json-schema.ts'
import { parseDocument } from './parse.ts'

// Second method: another program reads the schema and has to agree with ours
const ajv = new Ajv2020.default({ strict: true, allErrors: true })
const validates = ajv.compile(doorFileJsonSchema())

describe('doorFileJsonSchema', () => {
  it('is JSON Schema 2020-12 that says what it is about', () => {
    const schema = doorFileJsonSchema()
    expect(schema['$schema']).toBe('https://json-schema.org/draft/2020-12/schema')
    expect(schema['title']).toBe('Sillsight door file, version 1')
    expect(ajv.validateSchema(schema)).toBe(true)
    expect(ajv.validateSchema(libraryJsonSchema())).toBe(true)
  })

  it('lets through what the parser reads, unknown fields among it', () => {
    expect(validates(exampleFile())).toBe(true)
    expect(validates(SIX_VALUES)).toBe(true)
    expect(validates({ ...SIX_VALUES, colour: 'blue', survey: { ...SIX_VALUES.survey, mine: 1 } })).toBe(true)
  })

  it.each<[string, unknown]>([
    ['sillsight', 2],
    ['survey/opening/width_mm', -3],
    ['survey/opening/width_mm', undefined],
    ['survey/opening/height_mm', '2 m'],
    ['survey/walls', 'brick'],
    ['survey/walls/yMax_mm', 'x'],
    ['survey/obstacles/0/shape', 'ball'],
    ['survey/obstacles/0/radius_mm', 0],
    ['survey/floor/profile_mm', [[1, 2, 3]]],
    ['survey/leaf/travel', 'up'],
    ['survey/visibility_m', 'foggy'],
    ['sensors/0/planes/0/beamCount', 1e9],
    ['sensors/0/planes/0/beamCount', 2.5],
    ['sensors/0/fields/0/function', 'guard'],
    ['sensors/0/source/basis', 'hearsay'],
    ['bodies/1/postures/0/yaw_deg', [0, 1, 2]],
    ['bodies/1/reflectance', 1.01],
    ['zones/0/pitch_mm', 0],
    ['confirmations/0/on', 'today'],
    ['name', 'a\u001b[2J'],
    ['edition', '2026-13'],
  ])('refuses, as the parser does, %s = %j', (path, value) => {
    const file = changed(exampleFile(), path, value)
    expect(validates(file)).toBe(false)
    expect(parseDocument(JSON.stringify(file)).ok).toBe(false)
  })
})
