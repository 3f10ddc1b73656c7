import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseDocument, toDoor } from '@sillsight/document'
import { type Door, evidenceOf, judge } from '@sillsight/engine'

export const DEMOS = ['freezer-door', 'parcel-hatch', 'loading-door', 'sloping-gate', 'traffic-passage'] as const
const SCRIPT = join(import.meta.dirname, 'verify.py')

/** A door file, the door that it describes, and the engine's evidence as text. */
export interface Proved {
  readonly text: string
  readonly door: Door
  readonly evidence: string
}

export function demoDoor(name: string): string {
  return readFileSync(join(import.meta.dirname, '..', 'packages/cli/demo', `${name}.json`), 'utf8')
}

/** Undefined if the text is no door file. */
export function proved(text: string): Proved | undefined {
  const parsed = parseDocument(text)
  if (!parsed.ok) return undefined
  const door = toDoor(parsed.document, parsed.catalogue)
  const { coverages } = judge(door)
  const evidence = evidenceOf(door, sha256(text), parsed.document.tolerances ?? null, (zone, state) =>
    coverages.filter((each) => each.zone === zone.id && each.state === state.id).flatMap(({ pockets }) => pockets),
  )
  return { text, door, evidence: JSON.stringify(evidence) }
}

export function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex')
}

/** One verdict of the Python verifier: 0 accepted, 1 refused, 3 unreadable. */
export interface Verdict {
  readonly exit: number
  readonly issues: readonly { readonly place: string; readonly expected: string; readonly got: string }[]
}
export interface Pair {
  readonly door: string
  readonly evidence: string | Uint8Array
}

/** What the Python verifier says of each pair, all in one process. Throws if Python is missing or the script breaks. */
export function verdicts(pairs: readonly Pair[]): readonly Verdict[] {
  const folder = mkdtempSync(join(tmpdir(), 'sillsight-py-'))
  try {
    const doors = [...new Set(pairs.map(({ door }) => door))]
    const doorFile = new Map(doors.map((door, i) => [door, written(folder, `door-${i}.json`, door)]))
    const lines = pairs.map(({ door, evidence }, i) => `${doorFile.get(door)}\t${written(folder, `evidence-${i}`, evidence)}`)
    const said = python(['--batch', written(folder, 'list', lines.join('\n'))])
    const found = said.stdout.trim().split('\n')
    if (found.length !== pairs.length) throw new Error(`verify.py must say something of each of ${pairs.length} pairs, got ${said.stderr}`)
    return found.map((line) => JSON.parse(line) as Verdict)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** One run of the script as somebody would start it, on files beside each other. */
export function ran({ door, evidence }: Pair, ...options: readonly string[]): { code: number | null; stdout: string; stderr: string } {
  const folder = mkdtempSync(join(tmpdir(), 'sillsight-py-'))
  try {
    const { status, stdout, stderr } = python([written(folder, 'door.json', door), written(folder, 'evidence', evidence), ...options])
    return { code: status, stdout, stderr }
  } finally {
    rmSync(folder, { recursive: true })
  }
}

function python(options: readonly string[]) {
  const run = spawnSync('python3', [SCRIPT, ...options], { encoding: 'utf8', maxBuffer: 1 << 28 })
  if (run.error) throw new Error(`python3 must be installed to check tools/verify.py (${run.error.message})`)
  return run
}

function written(folder: string, name: string, content: string | Uint8Array): string {
  const path = join(folder, name)
  writeFileSync(path, content)
  return path
}
