import { readdirSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { exampleFile } from '../../test/example-files.ts'
import { parseDocument } from '../parse.ts'
import { VERSION } from '../schema/door-file.ts'
import { MIGRATIONS, migrateDocument } from './migrate.ts'

const DRAFT = {
  sillsight: 0,
  name: 'a draft',
  fog_m: 40,
  survey: { opening: { size_mm: [3000, 2500] }, walls: 'none' },
  sensors: [{ use: 'demo-header-scanner', at_mm: [1500, 120, 2450], turn_deg: [0, 4, 1], custom: 'kept' }],
}

describe('migrateDocument', () => {
  it('brings a draft to version 1 and keeps what it does not know', () => {
    expect(migrateDocument(DRAFT)).toEqual({
      ok: true,
      from: 0,
      applied: ['0001-named-places'],
      file: {
        sillsight: 1,
        name: 'a draft',
        survey: { opening: { width_mm: 3000, height_mm: 2500 }, walls: 'none', visibility_m: 40 },
        sensors: [
          { use: 'demo-header-scanner', custom: 'kept', pose: { x_mm: 1500, y_mm: 120, z_mm: 2450, yaw_deg: 0, tilt_deg: 4, roll_deg: 1 } },
        ],
      },
    })
  })

  it('is part of reading a file, which says from which version it came', () => {
    const result = parseDocument(JSON.stringify(DRAFT))
    expect(result).toMatchObject({ ok: true, migratedFrom: 0, document: { sillsight: 1 } })
    expect(result.ok && result.notes[0]?.text).toBe('read as version 1 (written as version 0: 0001-named-places)')
  })

  it('leaves a file of the newest version as it is', () => {
    const file = exampleFile()
    const result = migrateDocument(file)
    expect(result.ok && result.file).toBe(file)
    expect(result.ok && result.applied).toEqual([])
  })

  it('has one numbered migration for each version, without gaps', () => {
    const numbers = readdirSync(import.meta.dirname)
      .filter((file) => /^\d{4}-/.test(file))
      .map((file) => file.replace('.ts', ''))
    expect(MIGRATIONS.map(({ name }) => name)).toEqual(numbers)
    expect(numbers.map((name) => Number(name.slice(0, 4)))).toEqual(Array.from({ length: VERSION }, (_, i) => i + 1))
  })

  it('answers whatever the file holds, ends at the newest version, and changes nothing the second time (seed 5)', () => {
    const values = fc.jsonValue({ maxDepth: 3 })
    const oneOf = (shape: Record<string, fc.Arbitrary<unknown>>) => fc.oneof(fc.record(shape, { requiredKeys: [] }), values)
    const drafts = fc.record(
      {
        sillsight: fc.constantFrom(0, 1),
        fog_m: values,
        survey: oneOf({ opening: oneOf({ size_mm: values, width_mm: values }), visibility_m: values }),
        sensors: fc.oneof(fc.array(oneOf({ at_mm: values, turn_deg: values, pose: values })), values),
        note: values,
      },
      { requiredKeys: ['sillsight'] },
    )
    fc.assert(
      fc.property(drafts, (draft) => {
        const once = migrateDocument(draft)
        if (!once.ok) throw new Error('versions 0 and 1 are known')
        expect(once.file['sillsight']).toBe(VERSION)
        const twice = migrateDocument(once.file)
        expect(twice.ok && twice.file).toBe(once.file)
        expect(once.file['note']).toEqual(draft['note'])
      }),
      { seed: 5, numRuns: 2000 },
    )
  })

  it('refuses versions that it cannot know', () => {
    for (const sillsight of [-1, 0.5, '0', null, true, 1e308]) expect(migrateDocument({ sillsight }).ok).toBe(false)
  })
})
