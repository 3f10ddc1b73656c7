import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { builtProgram } from './program.ts'

const { run, work, demo, start } = await builtProgram()
const door = join(demo, 'freezer-door.json')
const FIELD = 'leaf-in-field:over-leaf/leaf'

const verdictOf = (file: string, id: string) => {
  const { findings } = JSON.parse(run(['judge', '--json', file]).out).doors[0]
  return findings.find((finding: { readonly id: string }) => finding.id === id)?.verdict
}

describe('sillsight mend', () => {
  it('prints repairs of one finding in steps that hands can make, each with what it brings about', () => {
    const { code, out, told } = run(['mend', door, 'leaf-in-field'])
    expect({ code, told }).toEqual({ code: 0, told: '' })
    expect(out).toMatch(/^1 {2}\S[\s\S]*That puts it in order\.[\s\S]*doors judged by the grid, \d+ exactly\./m)
  })

  it('writes a door file with the repair that was taken, in which the finding is in order; the file itself stays as it was', () => {
    const before = readFileSync(door, 'utf8')
    expect(verdictOf(door, FIELD)).toBe('fail')
    expect(run(['mend', door, FIELD, '--take', '1', '--out', 'mended.json'])).toMatchObject({ code: 0, out: '' })
    expect(verdictOf('mended.json', FIELD)).toBe('pass')
    expect(readFileSync(door, 'utf8')).toBe(before)
    expect(run(['mend', door, FIELD, '--take', '1', '--out', 'mended.json']).told).toContain('[already-there]')
  })

  it('gives steps and edits as JSON', () => {
    const [answer] = JSON.parse(run(['mend', '--json', door, FIELD]).out)
    expect(answer.finding).toBe(FIELD)
    expect(answer.offered.length).toBe(answer.edits.length)
    expect(answer.offered[0].steps[0]).toMatchObject({ sensor: 'over-leaf' })
    expect(answer.edits[0][0]).toMatchObject({ kind: 'put' })
  })

  it('mends a pocket with its zone', () => {
    const [answer] = JSON.parse(run(['mend', '--json', door, 'A']).out)
    expect(answer.finding).toBe('zone-covered:freezer-leaf')
    expect(answer.offered.length).toBeGreaterThan(0)
  })

  it('refuses a repair that there is none of, a finding that does not fail, and --take without a finding', () => {
    expect(run(['mend', door, FIELD, '--take', '99']).told).toContain('[no-such-repair]')
    expect(run(['mend', door, FIELD, '--take', 'x']).told).toContain('[bad-option-value]')
    expect(run(['mend', door, '--take', '1']).told).toContain('[missing-word]')
    expect(run(['mend', door, 'concept-stated']).told).toContain('[nothing-to-mend]')
    expect(run(['mend', door, 'nothing-like-it'])).toMatchObject({ code: 3, out: '' })
  })

  it('ends with exit 2 where nothing is found', () => {
    expect(run(['mend', join(demo, 'parcel-hatch.json')]).code).toBe(2)
  })

  it('writes nothing when it is stopped', async () => {
    const stopped = start(['mend', door, '--take', '1', 'zone-covered', '--out', 'half.json'])
    await new Promise((done) => setTimeout(done, 1500))
    stopped.kill('SIGINT')
    await new Promise((done) => stopped.once('exit', done))
    expect(existsSync(join(work, 'half.json'))).toBe(false)
  })
})
