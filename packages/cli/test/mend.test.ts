import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { beamDoor, text } from './doors.ts'
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

  // Hand calculation: the box is seen 33 mm before the leaf, 165 ms at 0.2 m/s; 40 ms of delay and 0.3 / 5 s of braking leave 65 ms
  it('mends the door that fails by timing alone with both outputs at 60 ms', () => {
    const hatch = join(demo, 'box-hatch.json')
    const [answer] = JSON.parse(run(['mend', '--json', hatch]).out)
    expect(answer.offered[0].steps).toMatchObject([{ kind: 'set-outputs', part: 'response_s', fields: [{}, {}], from: 0.15, to: 0.06 }])
    expect(run(['mend', hatch, '--take', '1', 'struck-by-leaf', '--out', 'hatch.json'])).toMatchObject({ code: 0 })
    expect(verdictOf('hatch.json', 'struck-by-leaf:boxes')).toBe('pass')
  })

  it('mends a pocket with its zone', () => {
    const [answer] = JSON.parse(run(['mend', '--json', door, 'A']).out)
    expect(answer.finding).toBe('zone-covered:freezer-leaf')
    expect(answer.offered.length).toBeGreaterThan(0)
  })

  it('writes into a door whose sensor comes from a library of its own', () => {
    const source = { basis: 'measured', note: 'invented, for tests' }
    const fan = { id: 'p', fovMin_deg: -45, fovMax_deg: 45, beamCount: 181 }
    const own = {
      name: 'own',
      device: 'scanner',
      source,
      maxRange_mm: 5000,
      rangeRef_mm: 4000,
      reflectanceRef: 0.1,
      backgroundMargin_mm: 40,
    }
    const library = text({ sillsightLibrary: 1, sensors: { own: { ...own, planes: [fan] } } })
    writeFileSync(join(work, 'own.json'), library)
    const limits = { xMin_mm: -500, xMax_mm: 1500, top_mm: 1500, clearance_mm: 20, clusterBeams: 1 }
    const fields = [{ id: 'f', output: 'OUT 1', function: 'opening', presenceTime_s: 'for-ever', ...limits }]
    const sensor = { id: 'one', use: 'own', side: 'a', mountingHeight_mm: 1950, offset_mm: 400, x_mm: 500, tilt_deg: 0, fields }
    const libraries = [{ file: 'own.json', sha256: createHash('sha256').update(library).digest('hex') }]
    writeFileSync(join(work, 'of-library.json'), text({ ...beamDoor({ beam_mm: 400 }), libraries, sensors: [sensor] }))
    expect(run(['mend', 'of-library.json', 'zone-covered', '--take', '1', '--out', 'of-library-mended.json'])).toMatchObject({ code: 0 })
    expect(verdictOf('of-library-mended.json', 'zone-covered:line')).toBe('pass')
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
