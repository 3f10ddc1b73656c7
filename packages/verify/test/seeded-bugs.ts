import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Dice } from './random-numbers.ts'

/**
 * Bugs are put into a copy of the engine, one at a time, and what it then gives out as evidence goes to the verifiers, which know nothing of
 * it. Whether a bug did harm is told by single placements alone, worked out by a program that shares nothing with either.
 */

/** Files of the engine that decide what is claimed; `space/trigonometry.ts` is left alone, for the doors themselves are made with it. */
const FILES = [
  'coverage/tile-rule.kernel.ts',
  'coverage/tile-scene.ts',
  'coverage/tile-tree.ts',
  'coverage/exact-trees.ts',
  'coverage/off.ts',
  'coverage/worst-case.ts',
  'coverage/evidence.ts',
  'coverage/scene.ts',
  'seeing/beams.ts',
  'seeing/background.kernel.ts',
  'seeing/reach.ts',
  'seeing/windows.ts',
  'seeing/windows.kernel.ts',
  'seeing/entry.kernel.ts',
  'seeing/shape.ts',
  'seeing/sees.ts',
  'space/floor.ts',
] as const

/** Slips of a hand: a sign, a side, an axis, a limit, a forgotten term. */
const SLIPS: readonly (readonly [find: RegExp, replace: string])[] = [
  [/ \+ /g, ' - '],
  [/ - /g, ' + '],
  [/ \* /g, ' / '],
  [/ < /g, ' > '],
  [/ > /g, ' < '],
  [/ <= /g, ' >= '],
  [/ >= /g, ' <= '],
  [/Math\.min\(/g, 'Math.max('],
  [/Math\.max\(/g, 'Math.min('],
  [/ && /g, ' || '],
  [/ \|\| /g, ' && '],
  [/ - SPARE_MM/g, ' + 3'],
  [/ \+ SPARE_MM/g, ' - 3'],
  [/cosYaw/g, 'sinYaw'],
  [/halfA\b/g, 'halfB'],
  [/halfX\b/g, 'halfY'],
  [/\bdx\b/g, 'dy'],
  [/xMin_mm/g, 'xMax_mm'],
  [/clearance_mm/g, 'top_mm'],
  [/\[base \+ 1\]/g, '[base]'],
  [/\[k \+ 1\]/g, '[k]'],
  [/: 0\b/g, ': 1'],
  [/ \/ 2/g, ''],
  [/=== 1/g, '=== 0'],
  [/\? /g, '? -'],
]

export interface Slip {
  readonly file: string
  readonly line: number
  readonly before: string
  readonly after: string
}

/** A slip at a place of the code that any of the patterns fits; comments, imports and types are left out. */
export function someSlip(engine: string, dice: Dice): Slip {
  for (;;) {
    const file = dice.pick([...FILES])
    const lines = readFileSync(join(engine, 'src', file), 'utf8').split('\n')
    const line = dice.whole(0, lines.length - 1)
    const before = lines[line] ?? ''
    if (/^\s*(\/\/|\/?\*|import|export (type|interface|const)|readonly|interface|type )|^\s*$/.test(before)) continue
    const code = before.replace(/\/\/.*/, '')
    const [find, replace] = dice.pick([...SLIPS])
    const places = [...code.matchAll(find)]
    if (places.length === 0) continue
    const { index } = dice.pick(places)
    const after = before.slice(0, index) + before.slice(index).replace(new RegExp(find.source), replace)
    return { file, line: line + 1, before: before.trim(), after: after.trim() }
  }
}

/** `caught`: a verifier refuses. `missed`: all accept, though a claim is false. `harmless`: nothing false was found. `broken`: the engine itself fails or does not end. */
export type Outcome = 'caught' | 'missed' | 'harmless' | 'broken'

export interface Workbench {
  readonly engine: string
  readonly tryOut: (slip: Slip | undefined, seeds: readonly number[]) => Outcome
  readonly clear: () => void
}

const LONGEST_MS = 90_000

/** A copy of what evidence is made and checked with, in a folder of its own. */
export function workbench(): Workbench {
  const folder = mkdtempSync(join(tmpdir(), 'seeded-bugs-'))
  const packages = join(import.meta.dirname, '../..')
  for (const name of ['engine', 'document', 'verify'])
    for (const part of ['package.json', 'src', ...(name === 'verify' ? ['test'] : [])])
      cpSync(join(packages, name, part), join(folder, 'packages', name, part), { recursive: true })
  mkdirSync(join(folder, 'node_modules/@sillsight'), { recursive: true })
  for (const name of ['engine', 'document']) symlinkSync(join(folder, 'packages', name), join(folder, 'node_modules/@sillsight', name))
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
  writeFileSync(
    join(folder, 'packages/verify/test/try.ts'),
    `import { holdEvidence } from './evidence-holds.ts'
const { refused, wrong } = holdEvidence(JSON.parse(process.argv[2] ?? '[]'), 40)
process.stdout.write(refused.length > 0 ? 'caught' : wrong.length > 0 ? 'missed' : 'harmless')
`,
  )
  const engine = join(folder, 'packages/engine')
  return {
    engine,
    tryOut(slip, seeds) {
      const path = slip && join(engine, 'src', slip.file)
      const whole = path ? readFileSync(path, 'utf8') : ''
      if (slip && path) {
        const lines = whole.split('\n')
        lines[slip.line - 1] = slip.after
        writeFileSync(path, lines.join('\n'))
      }
      const { status, stdout } = spawnSync(
        process.execPath,
        ['--no-warnings', join(folder, 'packages/verify/test/try.ts'), JSON.stringify(seeds)],
        {
          encoding: 'utf8',
          timeout: LONGEST_MS,
        },
      )
      if (path) writeFileSync(path, whole)
      return status === 0 && (stdout === 'caught' || stdout === 'missed' || stdout === 'harmless') ? stdout : 'broken'
    },
    clear: () => rmSync(folder, { recursive: true, force: true }),
  }
}
