import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { exampleFile, SIX_VALUES } from '../test/example-files.ts'
import { parseDocument } from './parse.ts'
import type { DoorFile } from './schema/door-file.ts'
import { serialise } from './serialise.ts'

const reread = (text: string) => {
  const result = parseDocument(text)
  if (!result.ok) throw new Error(JSON.stringify(result.issues))
  return result.document
}

describe('serialise', () => {
  it('writes known fields in the order of the schema, unknown ones behind them by name, and points on one line', () => {
    const document = {
      zz: 1,
      aa: [1, 2],
      sensors: [],
      survey: {
        opening: { height_mm: 2, width_mm: 1 },
        floor: {
          profile_mm: [
            [0, 0],
            [1, 2],
          ],
        },
      },
      sillsight: 1,
    }
    expect(serialise(document as unknown as DoorFile)).toBe(`{
  "sillsight": 1,
  "survey": {
    "opening": {
      "width_mm": 1,
      "height_mm": 2
    },
    "floor": {
      "profile_mm": [[0, 0], [1, 2]]
    }
  },
  "sensors": [],
  "aa": [1, 2],
  "zz": 1
}
`)
  })

  it('gives back what was parsed, whatever else stands in the file (seed 6)', () => {
    const value = fc.jsonValue({ maxDepth: 4 }).filter((each) => !JSON.stringify(each).includes('__proto__'))
    const names = fc.oneof(
      fc.string({ maxLength: 20 }).map((rest) => `~${rest}`),
      fc.constantFrom('constructor', 'toString', 'valueOf', '7', '-1'),
    )
    const anything = fc.dictionary(names, value, { maxKeys: 4 })
    const places = fc.constantFrom('drive', 'surroundings', 'records', 'mine')
    fc.assert(
      fc.property(anything, places, value, (unknown, place, held) => {
        const file = { ...unknown, ...exampleFile(), [place]: held }
        file.survey = { ...unknown, ...file.survey }
        file.zones = file.zones.map((zone) => ({ ...unknown, ...zone })) as typeof file.zones
        const text = JSON.stringify(file)
        const document = reread(text)
        expect(document).toEqual(JSON.parse(text))
        expect(reread(serialise(document))).toEqual(document)
      }),
      { seed: 6, numRuns: 300 },
    )
  })

  it('is canonical: the same content in another order gives the same text (seed 7)', () => {
    const text = serialise(reread(JSON.stringify(exampleFile())))
    expect(serialise(reread(text))).toBe(text)
    fc.assert(
      fc.property(fc.integer(), (turn) => {
        expect(serialise(reread(JSON.stringify(shuffled(exampleFile(), turn))))).toBe(text)
      }),
      { seed: 7, numRuns: 50 },
    )
  })

  it('throws on what JSON cannot hold', () => {
    expect(() => serialise({ ...SIX_VALUES, records: [Number.NaN] } as unknown as DoorFile)).toThrow('holds JSON only')
  })
})

/** The same content with the fields of every object turned round by some places. */
function shuffled(value: unknown, turn: number): unknown {
  if (Array.isArray(value)) return value.map((item) => shuffled(item, turn))
  if (typeof value !== 'object' || value === null) return value
  const entries = Object.entries(value)
  const by = Math.abs(turn) % Math.max(1, entries.length)
  return Object.fromEntries([...entries.slice(by), ...entries.slice(0, by)].map(([key, inner]) => [key, shuffled(inner, turn)]))
}
