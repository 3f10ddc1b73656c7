import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseDocument } from '@sillsight/document'
import { describe, expect, it } from 'vitest'
import { german } from '../german.ts'

const PACKAGES = join(import.meta.dirname, '../../../..')
const demoDoors = globSync('cli/demo/*.json', { cwd: PACKAGES }).map((file) => readFileSync(join(PACKAGES, file), 'utf8'))

/** The same text with each value of it in turn replaced. */
function* spoiled(text: string, by: unknown): Generator<string> {
  const root: unknown = JSON.parse(text)
  const holders: (readonly [Record<string, unknown>, string])[] = []
  const walk = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return
    for (const key of Object.keys(value)) {
      holders.push([value as Record<string, unknown>, key])
      walk((value as Record<string, unknown>)[key])
    }
  }
  walk(root)
  for (const [holder, key] of holders) {
    const kept = holder[key]
    holder[key] = by
    yield JSON.stringify(root)
    holder[key] = kept
  }
}

describe('German', () => {
  it('says what was expected and what stood there wherever one value of a demonstration door is none, a list or an object', () => {
    const english = new Set<string>()
    let issues = 0
    for (const text of demoDoors)
      for (const by of [null, [1, 2, 3, 4], {}])
        for (const file of spoiled(text, by)) {
          const parsed = parseDocument(file)
          if (parsed.ok) continue
          for (const { expected, got } of parsed.issues) {
            issues++
            if (german.expected(expected) === expected) english.add(expected)
            if (/\p{L}{4}/u.test(got.replace(/"[^"]*"|null/g, '')) && german.got(got) === got) english.add(got)
          }
        }
    expect(issues).toBeGreaterThan(1000)
    expect([...english]).toEqual([])
  })
  it('has words for every expectation that a reader of door files, libraries or backups writes down', () => {
    const sources = globSync(['document/src/**/*.ts', 'app/src/store/*.ts'], { cwd: PACKAGES }).filter((file) => !file.includes('.test.'))
    const said = sources.flatMap((file) =>
      [
        ...readFileSync(join(PACKAGES, file), 'utf8').matchAll(
          /(?:expected: |missing\(`[^`]+`, |refuse\('[^']+', [^,]+, )(?:'([^']+)'|`([^`]+)`)/g,
        ),
      ].map(([, plain, filled = '']) => plain ?? filled.replace(/\$\{[^}]+\}/g, '7')),
    )
    expect(said.length).toBeGreaterThan(50)
    expect(said.filter((text) => german.expected(text) === text)).toEqual([])
  })
  it('leaves alone what a file says, even where it says it in the words of the program', () => {
    expect(german.got('"nothing"')).toBe('"nothing"')
    expect(german.got('a list of 5')).toBe('eine Liste von 5')
    expect(german.got('the end at line 3, column 7')).toBe('das Ende in Zeile 3, Spalte 7')
    expect(german.expected('two numbers above 0 [along, across]')).toBe('zwei Zahlen über 0 [entlang, quer]')
    expect(german.expected('an object { "sillsight": 1, ... }')).toBe('ein Objekt { "sillsight": 1, ... }')
  })
})
