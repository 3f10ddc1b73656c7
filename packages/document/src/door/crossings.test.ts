import { describe, expect, it } from 'vitest'
import { changed, exampleFile } from '../../test/example-files.ts'
import { parseDocument, toDoor } from '../index.ts'

const crossing = { id: 'aisle', yMin_mm: 2000, yMax_mm: 4000, slowest_m_per_s: 0.8, fastest_m_per_s: 1.5, perDay: 300 }
const parsed = (changes: object) => parseDocument(JSON.stringify(changed(exampleFile(), 'survey/crossings', [{ ...crossing, ...changes }])))
const issues = (changes: object) => {
  const result = parsed(changes)
  return result.ok ? [] : result.issues.map(({ path, code }) => `${path.replace('survey/crossings/0/', '')} ${code}`)
}

describe('ways past the door in a door file', () => {
  it('become millimetres, with the bodies of the door where they name none', () => {
    const result = parsed({})
    if (!result.ok) throw new Error(JSON.stringify(result.issues))
    const door = toDoor(result.document, result.catalogue)
    expect(door.crossings).toMatchObject([
      { id: 'aisle', name: 'aisle', slowest_mm_per_s: 800, fastest_mm_per_s: 1500, perDay: 300, mostPerDay: undefined },
    ])
    expect(door.crossings?.[0]?.bodies).toEqual(door.bodies.map(({ id }) => id))
  })

  it('are refused turned round, too wide, too fast for themselves, and with a body that is none', () => {
    expect(issues({ yMax_mm: 2000 })).toEqual(['yMax_mm contradiction'])
    expect(issues({ yMax_mm: 30_000 })).toEqual(['yMax_mm contradiction'])
    expect(issues({ slowest_m_per_s: 2 })).toEqual(['fastest_m_per_s contradiction'])
    expect(issues({ bodies: ['nobody'] })).toEqual(['bodies/0 unknown-id'])
  })
})
