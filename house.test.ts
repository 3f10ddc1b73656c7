import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { describe, expect, it } from 'vitest'
import { RULES } from './packages/engine/src/judge/rules.ts'
import { english } from './packages/report/src/wording/english.ts'

/** Which package may import which; entered through index.ts, tests included. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  verify: [],
  engine: [],
  document: ['engine'],
  server: ['document'],
  report: ['document', 'engine'],
  app: ['report', 'document', 'engine'],
  cli: ['server', 'verify', 'report', 'document', 'engine'],
}

/** The verifier ships nothing of the others, but its tests hold it against what they write. */
const TESTS_MAY_IMPORT: Record<string, readonly string[]> = { verify: ['document', 'engine'] }

/** Which room of the engine may import which, besides itself; index.ts in the hall may import all. */
const ROOM_MAY_IMPORT: Record<string, readonly string[]> = {
  model: [],
  values: ['model'],
  space: ['model'],
  seeing: ['model', 'space'],
  coverage: ['model', 'space', 'seeing'],
  motion: ['model', 'space'],
  passing: ['model', 'space', 'seeing', 'coverage', 'motion'],
  judge: ['model', 'space', 'seeing', 'coverage', 'motion', 'passing', 'wiring', 'values'],
  wiring: ['model', 'space', 'values'],
  mending: ['model', 'space', 'judge'],
}

/** What gives the same bits on every platform; sine and its kin live in space/trigonometry.ts. */
const SAME_BITS = 'sqrt|abs|min|max|floor|ceil|round|trunc|sign|fround|imul|clz32|PI|SQRT2'
const FOREIGN = new RegExp(
  String.raw`\bMath\b(?!\.(?:${SAME_BITS})\b)|\*\*|\b(?:Date|console|process|performance|crypto|globalThis|Intl|localeCompare|toLocale\w*)\b`,
  'g',
)
const MOST_LINES = 400

const NOT_OURS = new Set(['node_modules', '.runtime', '.git', 'out', 'dist'])
const files = filesBelow('.')
const sources = files.filter((path) => path.startsWith('packages/') && /\.tsx?$/.test(path)).map((path) => ({ path, text: read(path) }))
const isTest = (path: string) => path.endsWith('.test.ts')
const shipped = sources.filter(({ path }) => path.split('/')[2] === 'src' && !isTest(path))
const engine = shipped.filter(({ path }) => path.startsWith('packages/engine/src/'))

describe('packages', () => {
  it('import only what the table allows, and enter each other through index.ts', () => {
    const allowed = (path: string, target: string) => {
      const [from, inTests] = [packageOf(path), path.split('/')[2] === 'test']
      const others = [...(MAY_IMPORT[from] ?? []), ...((inTests && TESTS_MAY_IMPORT[from]) || [])]
      return [from, ...others].some((to) => target === `@sillsight/${to}`)
    }
    const wrong = imports(sources).filter(({ path, target }) =>
      target.startsWith('.')
        ? packageOf(join(dirname(path), target)) !== packageOf(path)
        : /^(@sillsight\/|sillsight)/.test(target) && !allowed(path, target),
    )
    expect(wrong).toEqual([])
  })
  it('ship no import that their manifest does not name, and none of Node outside the command line', () => {
    const wrong = imports(shipped).filter(({ path, target }) => {
      if (target.startsWith('node:')) return packageOf(path) !== 'cli'
      const { dependencies, devDependencies } = JSON.parse(read(`packages/${packageOf(path)}/package.json`))
      const named = packageOf(path) === 'cli' ? devDependencies : dependencies // the command line ships as a bundle that needs nothing else
      const of = target.split('/', target.startsWith('@') ? 2 : 1).join('/') // of a package, whichever of its doors is used
      return !target.startsWith('.') && !(of in (named ?? {}))
    })
    expect(wrong).toEqual([])
  })
  it('leave the verifier alone: it imports nothing but its own files', () => {
    const wrong = imports(shipped).filter(({ path, target }) => packageOf(path) === 'verify' && !target.startsWith('./'))
    expect(wrong).toEqual([])
  })
  it('name what they export', () => {
    expect(sources.filter(({ text }) => /^export \*/m.test(text)).map(({ path }) => path)).toEqual([])
  })
})

describe('the engine', () => {
  it('has rooms that import only what the table allows', () => {
    const room = (path: string) => (path.split('/').length > 4 ? path.split('/')[3] : undefined)
    const wrong = imports(engine).filter(({ path, target }) => {
      const [from, to] = [room(path), room(normalize(join(dirname(path), target)))]
      return from !== undefined && from !== to && !(to !== undefined && ROOM_MAY_IMPORT[from]?.includes(to))
    })
    expect(wrong).toEqual([])
  })
  it('computes without clock, chance, output, locale and whatever differs between platforms in the last bit', () => {
    const wrong = engine
      .filter(({ path }) => path !== 'packages/engine/src/space/trigonometry.ts')
      .flatMap(({ path, text }) => [...withoutComments(text).matchAll(FOREIGN)].map(([found]) => `${path}: ${found}`))
    expect(wrong).toEqual([])
  })
  it('uses no unit that the linter does not know as the end of a name', () => {
    const [, units = ''] = /export type Unit =([\s\S]*?)\n\n/.exec(read('packages/engine/src/model/source.ts')) ?? []
    const names = [...units.matchAll(/'(\w+)'/g)].map(([, unit]) => unit).filter((unit) => unit !== '1')
    const { conventions } = JSON.parse(read('biome.json')).linter.rules.style.useNamingConvention.options
    const known = new RegExp(`^${conventions.find((each: { match?: string }) => each.match).match}$`)
    expect(names.length).toBeGreaterThan(5)
    expect(names.filter((unit) => !known.test(`length_${unit}`))).toEqual([])
    expect(known.test('length_furlong')).toBe(false)
  })
})

describe('each rule', () => {
  const rules = RULES.map(({ id }) => id)
  const without = (has: (rule: string) => boolean) => rules.filter((rule) => !has(rule))

  it('has a file and a test of its name', () => {
    expect(without((rule) => files.includes(`packages/engine/src/judge/${rule}.ts`))).toEqual([])
    expect(without((rule) => files.includes(`packages/engine/src/judge/${rule}.test.ts`))).toEqual([])
  })
  it('has its sentences, and there are none for a rule that does not exist', () => {
    expect(Object.keys(english.rules).sort()).toEqual([...rules].sort())
  })
  it('stands in the glossary under its name', () => {
    const glossary = read('docs/GLOSSARY.md')
    expect(without((rule) => new RegExp(String.raw`^\| [^|]+ \|[^|]*\|[^|]*\| \`${rule}\` \| [^|]+ \|$`, 'm').test(glossary))).toEqual([])
  })
})

describe('every file', () => {
  it(`has at most ${MOST_LINES} lines, kernels excepted`, () => {
    const long = sources.filter(({ path, text }) => !path.endsWith('.kernel.ts') && text.split('\n').length > MOST_LINES + 1)
    expect(long.map(({ path }) => path)).toEqual([])
  })
  it('is free of folders and registries of one machine', () => {
    const ofOneMachine = /(?<![\w./])\/(?:work|tmp|root|home)\/|\bregistry\.|localhost:\d|"resolved": "http/
    const wrong = files.filter((path) => !/\.(png|woff2|pdf)$/.test(path) && path !== 'house.test.ts' && ofOneMachine.test(read(path)))
    expect(wrong).toEqual([])
  })
})

function imports(of: readonly { path: string; text: string }[]) {
  const statement = /^(?:import|export)\b[^'"`;]*?from\s*'([^']+)'|^import\s*'([^']+)'|\bimport\(\s*'([^']+)'/gm
  return of.flatMap(({ path, text }) => [...text.matchAll(statement)].map(([, a, b, c]) => ({ path, target: a ?? b ?? c ?? '' })))
}

function withoutComments(text: string) {
  return text.replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, '')
}

function packageOf(path: string) {
  return normalize(path).split('/')[1] ?? ''
}

function read(path: string) {
  return readFileSync(path, 'utf8')
}

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (NOT_OURS.has(entry.name)) return []
    const path = join(folder, entry.name)
    return entry.isDirectory() ? filesBelow(path) : entry.isFile() ? [path] : []
  })
}
