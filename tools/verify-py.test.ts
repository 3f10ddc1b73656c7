import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseDocument, toDoor } from '@sillsight/document'
import { type Evidence, evidenceOf, judge } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'

const folder = mkdtempSync(join(tmpdir(), 'sillsight-py-'))

/** A demo door, its evidence, and what the Python verifier says of it after `change`. */
function checked(name: string, change: (evidence: Evidence) => unknown = (evidence) => evidence): { code: number | null; said: string } {
  const file = join(import.meta.dirname, '..', 'packages/cli/demo', `${name}.json`)
  const text = readFileSync(file, 'utf8')
  const parsed = parseDocument(text)
  if (!parsed.ok) throw new Error(`${name} must be a door file`)
  const door = toDoor(parsed.document, parsed.catalogue)
  const { coverages } = judge(door)
  const sha256 = createHash('sha256').update(text).digest('hex')
  const pocketsOf = (zone: string, state: string) =>
    coverages.filter((c) => c.zone === zone && c.state === state).flatMap(({ pockets }) => pockets)
  const evidence = evidenceOf(door, sha256, parsed.document.tolerances ?? null, (zone, state) => pocketsOf(zone.id, state.id))
  const written = join(folder, `${name}.json`)
  writeFileSync(written, JSON.stringify(change(evidence)))
  const { status, stdout, stderr } = spawnSync('python3', [join(import.meta.dirname, 'verify.py'), file, written], { encoding: 'utf8' })
  return { code: status, said: stdout + stderr }
}

describe('the Python verifier', () => {
  it('accepts the true evidence of demo doors, as written and over their tolerances', () => {
    for (const name of ['freezer-door', 'parcel-hatch', 'loading-door', 'sloping-gate', 'traffic-passage'])
      expect(checked(name), name).toMatchObject({ code: 0 })
  })
  it('refuses evidence of another door, a tree cut short, and open tiles claimed to be seen', () => {
    const trees = (change: (tree: number[]) => number[]) => (evidence: Evidence) => ({
      ...evidence,
      coverages: evidence.coverages.map((c) => ({
        ...c,
        slices: c.slices.map((s) => ({ ...s, trees: s.trees.map((t) => change([...t])) })),
      })),
    })
    expect(checked('freezer-door', (evidence) => ({ ...evidence, doorSha256: '0'.repeat(64) })).code).toBe(1)
    expect(
      checked(
        'freezer-door',
        trees((tree) => tree.slice(0, -1)),
      ).code,
    ).toBe(1)
    expect(
      checked(
        'freezer-door',
        trees((tree) => tree.map((token) => (token === -2 ? 0 : token))),
      ).code,
    ).toBe(1)
  })
})
