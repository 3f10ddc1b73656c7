import { mkdirSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { judgeFile } from '../src/judging.ts'
import { mutatedDoors } from './mutations.ts'
import { builtProgram } from './program.ts'

const seed = 20261125
const { run, work } = await builtProgram()
const doors = mutatedDoors(500, seed)
mkdirSync(join(work, 'mutated'))
const files = doors.map((door, i) => {
  const name = join('mutated', `${i}.json`)
  writeFileSync(join(work, name), door)
  return name
})

describe(`500 mutated door files (seed ${seed})`, () => {
  it('are each judged or refused by the real command, with whole lines and no crash', () => {
    const { code, out, told } = run(['judge', '--jsonl', '--workers', '2', ...files])
    const records = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line))
    expect(records.map(({ file }) => file)).toEqual(files)
    expect(records.filter(({ outcome }) => outcome === 'crash')).toEqual([])
    expect(code).toBe(3)
    expect(told).not.toContain('crashed')
    // both kinds are there in numbers, else the mutations would test nothing
    expect(records.filter(({ ok }) => ok).length).toBeGreaterThan(50)
    expect(records.filter(({ ok }) => !ok).length).toBeGreaterThan(50)
    const said = expect.stringMatching(/./)
    for (const { ok, issues } of records) {
      if (!ok) for (const issue of issues) expect(issue).toMatchObject({ code: said, path: said, expected: said, got: said })
    }
  }, 600_000)

  it('take less than 2 s of computing each (every 2nd; a slow one is timed again, for a busy machine slows computing too)', () => {
    const judged_ms = (file: string): number => computing_ms(() => judgeFile(join(work, file)))
    const slow = files.filter((file, i) => i % 2 === 0 && judged_ms(file) > 1500)
    expect(slow.filter((file) => Math.min(judged_ms(file), judged_ms(file)) > 2000)).toEqual([])
  }, 600_000)

  it('leave nothing half-written when they are drawn, and no file is changed (every 25th)', () => {
    const chosen = files.filter((_, i) => i % 25 === 0)
    for (const file of chosen) {
      const svg = file.replace('.json', '.svg')
      const { code, out } = run(['draw', file, '--out', svg])
      expect([0, 3]).toContain(code)
      expect(out).toBe('')
      expect(readdirSync(join(work, 'mutated')).includes(`${svg.slice('mutated/'.length)}`)).toBe(code === 0)
    }
    expect(readdirSync(join(work, 'mutated')).filter((name) => name.includes('.part'))).toEqual([])
  })
})

/** Time that the processor spent, which does not grow when others use the machine. */
function computing_ms(work: () => void): number {
  const before = process.cpuUsage()
  work()
  const { user, system } = process.cpuUsage(before)
  return (user + system) / 1000
}
