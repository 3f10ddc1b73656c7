import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { BOUNDS } from '../bounds.ts'
import { issueLine } from '../issue.ts'
import { scanJson } from './scan.ts'

const lines = (text: string) => scanJson(text).issues.map(issueLine)

describe('scanJson', () => {
  it('says where a text stops to be JSON, and what it would have read there', () => {
    expect(lines('')).toEqual([
      'file: expected a value, not the end of the file, got the end at line 1, column 1 (the file was not read further)',
    ])
    expect(lines('{\n "a": 1,\n}')).toEqual([
      'a: expected a name in double quotes, got "}" at line 3, column 1 (the file was not read further)',
    ])
    expect(lines('{"a\n": 1}')[0]).toContain('file: expected no line end')
    expect(lines('{"a": {1}}')[0]).toContain('a: expected a name in double quotes')
    expect(lines('{"a": [1 2]}')[0]).toContain('a/0: expected "," or "]", got "2" at line 1, column 10')
    expect(lines('{} x')[0]).toContain('nothing after the end of the file')
    expect(lines('{"a": 1 // width\n}')[0]).toContain('JSON has no comments')
    expect(lines('{"a": NaN}')[0]).toContain('a: expected a value, got "N"')
  })

  it('finds a name that stands twice, also when one of the two is written with escapes', () => {
    expect(lines('{"a": {"b": 1, "\\u0062": 2}}')).toEqual(['a/b: expected every name once in its object, got "b" twice'])
  })

  it('finds numbers too large to hold, wherever they stand', () => {
    expect(lines('{"a": [0, 1e999]}')).toEqual(['a/1: expected a finite number, got 1e999'])
  })

  it('refuses the name that could change what all objects inherit', () => {
    expect(lines('{"__proto__": {}}')).toEqual(['__proto__: expected any other name, got "__proto__"'])
  })

  it('stops at the bounds, without recursion', () => {
    expect(scanJson('['.repeat(4_000_000)).issues[0]?.code).toBe('too-deep')
    expect(scanJson('{"a":'.repeat(1_000_000)).issues[0]?.code).toBe('too-deep')
    expect(scanJson(`[${'0,'.repeat(BOUNDS.values)}0]`).issues[0]?.code).toBe('too-many-values')
    expect(scanJson(`"${'x'.repeat(BOUNDS.textValue)}"`).issues[0]?.code).toBe('text-too-long')
    expect(scanJson(`${'['.repeat(BOUNDS.depth)}${']'.repeat(BOUNDS.depth)}`).issues).toEqual([])
  })

  it('spells out characters that a terminal would obey', () => {
    expect(lines('{"\\u001b[2J": 1, "\\u001b[2J": 2}')[0]).toBe(
      '\\u001b[2J: expected every name once in its object, got "\\u001b[2J" twice',
    )
  })

  it('accepts exactly what JSON.parse accepts (seed 1)', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 6 }), fc.nat(), fc.constantFrom(...'{}[]",:0e-.tn \\u\n'), fc.nat(2), (json, place, c, how) => {
        const at = place % (json.length + 1)
        const text = json.slice(0, at) + (how === 1 ? '' : c) + json.slice(at + (how === 2 ? 0 : 1))
        expect(scanJson(json).broken).toBe(false)
        expect(scanJson(text).broken).toBe(!parses(text))
      }),
      { seed: 1, numRuns: 20_000 },
    )
  })
})

function parses(text: string): boolean {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}
