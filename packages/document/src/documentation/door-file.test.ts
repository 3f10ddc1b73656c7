import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { doorFilePage } from './door-file.ts'

describe('docs/door-file.md', () => {
  it('says what the schema says (else: npm run docs -w packages/document)', () => {
    expect(readFileSync(join(import.meta.dirname, '../../../../docs/door-file.md'), 'utf8')).toBe(doorFilePage())
  })

  it('explains every field', () => {
    const rows = doorFilePage()
      .split('\n')
      .filter((line) => /^\| `/.test(line))
    expect(rows.length).toBeGreaterThan(150)
    // The last chapter lists bounds, whose rows have two cells; every other row ends in its meaning
    expect(rows.filter((row) => row.split('|').length === 6 && row.split('|')[4]?.trim() === '')).toEqual([])
  })
})
