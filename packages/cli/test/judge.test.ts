import { spawnSync } from 'node:child_process'
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { beamDoor, text, unsettledDoor } from './doors.ts'
import { builtProgram } from './program.ts'

const { run, start, work, main } = await builtProgram()
const place = (name: string, content: string): string => {
  writeFileSync(join(work, name), content)
  return name
}
const good = place('good.json', text(beamDoor({ beam_mm: 400 })))
const bad = place('bad.json', text(beamDoor({ beam_mm: 900 })))
const unsettled = place('unsettled.json', text(unsettledDoor()))
const broken = place('broken.json', '{')
const hashesIn = (out: string): readonly string[] => out.match(/\b[0-9a-f]{64}\b/g) ?? []

describe('sillsight judge', () => {
  it('ends with 0 when all is in order, 1 on a fail, 2 when something is not settled, 3 on bad input', () => {
    expect(run(['judge', good]).code).toBe(0)
    expect(run(['judge', bad]).code).toBe(1)
    expect(run(['judge', unsettled]).code).toBe(2)
    expect(run(['judge', broken]).code).toBe(3)
    expect(run(['judge', good, unsettled]).code).toBe(2)
    expect(run(['judge', unsettled, bad, good]).code).toBe(1)
    expect(run(['judge', bad, broken]).code).toBe(3)
  })

  it('prints findings, a plan and the hash to standard output, and nothing else anywhere', () => {
    const { out, told } = run(['judge', bad])
    expect(told).toBe('')
    expect(out).toContain('bad.json')
    expect(out).toContain('blind-pocket:line/A')
    expect(hashesIn(out)).toHaveLength(1)
  })

  it('tells problems on standard error only, each with code, place, expected, got and repair', () => {
    const { out, told } = run(['judge', broken])
    expect(out).toBe('')
    expect(told).toMatch(/^sillsight: broken\.json.*: expected .*, got .* \[not-json\]\n {2}repair: .+\n$/)
  })

  it('reads standard input for a dash, and gives the same hash as for the file', () => {
    const { code, out } = run(['judge', '-'], { input: text(beamDoor({ beam_mm: 900 })) })
    expect(code).toBe(1)
    expect(out).toContain('(standard input)')
    expect(hashesIn(out)).toEqual(hashesIn(run(['judge', bad]).out))
  })

  it('prints one JSON document, with findings in words and numbers, or the issues of a file', () => {
    const { code, out, told } = run(['judge', '--json', bad, broken])
    expect(code).toBe(3)
    const { outcome, doors } = JSON.parse(out)
    expect(outcome).toBe('bad-input')
    expect(doors[0]).toMatchObject({ file: 'bad.json', ok: true, outcome: 'fail', counts: { fail: 2 }, crashes: [] })
    expect(doors[0].sha256).toMatch(/^[0-9a-f]{64}$/)
    for (const { id, sentence } of doors[0].findings) expect(`${id} ${sentence}`).toMatch(/\S+:\S+ .+/)
    expect(doors[1]).toMatchObject({ file: 'broken.json', ok: false, outcome: 'bad-input', issues: [{ code: 'not-json' }] })
    expect(told).toContain('broken.json')
  })

  it('prints JSON lines in the order of the files, the same with any number of threads', () => {
    const files = Array.from({ length: 12 }, (_, i) => [good, bad, unsettled, broken][(i * 7) % 4] ?? '')
    const [one, two, many] = ['1', '2', '5'].map((workers) => run(['judge', '--jsonl', '--workers', workers, ...files]))
    const records = (one?.out ?? '')
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line))
    expect(records.map(({ file }) => file)).toEqual(files)
    expect(two?.out).toBe(one?.out)
    expect(many?.out).toBe(one?.out)
    expect([one?.code, two?.code, many?.code]).toEqual([3, 3, 3])
  })

  it('reads standard input among many files', () => {
    const files = [...Array.from({ length: 9 }, () => good), '-']
    const { code, out } = run(['judge', '--brief', ...files], { input: text(beamDoor({ beam_mm: 900 })) })
    expect(code).toBe(1)
    expect(out).toMatch(/fails +\(standard input\)/)
    expect(out).toMatch(/10 files: 1 fail, 9 in order\n$/)
  })

  it('prints SARIF and JUnit for pipelines, files that cannot be read among them', () => {
    const log = JSON.parse(run(['judge', '--sarif', bad, broken]).out)
    expect(log.version).toBe('2.1.0')
    expect(JSON.stringify(log)).toContain('broken.json')
    const xml = run(['judge', '--junit', bad, broken]).out
    expect(xml).toMatch(/^<\?xml|^<testsuites/)
    expect(xml).toContain('broken.json')
  })

  it('refuses two formats at once, and standard input twice', () => {
    expect(run(['judge', '--json', '--junit', good])).toMatchObject({ code: 3, out: '' })
    expect(run(['judge', '-', '-'])).toMatchObject({ code: 3, out: '' })
  })

  it('ends without a word when the reader goes away', () => {
    const files = Array.from({ length: 40 }, () => bad).join(' ')
    for (const workers of [1, 2]) {
      const script = `${process.execPath} ${main} judge --jsonl --workers ${workers} ${files} 2>told.txt | head -c 100 >/dev/null; cat told.txt`
      expect(spawnSync('sh', ['-c', script], { cwd: work }).stdout.toString()).toBe('')
    }
  })

  it('ends on Ctrl-C with 130 and whole lines only', async () => {
    mkdirSync(join(work, 'fleet'))
    const door = { ...beamDoor({ beam_mm: 900 }) }
    const slow = text({ ...door, zones: door.zones.map((zone) => ({ ...zone, pitch_mm: 2 })) })
    const files = Array.from({ length: 400 }, (_, i) => place(`fleet/${i}.json`, slow))
    const child = start(['judge', '--jsonl', '--workers', '2', ...files])
    let out = ''
    let told = ''
    child.stderr.on('data', (chunk) => {
      told += chunk
    })
    child.stdout.on('data', (chunk) => {
      if (out === '') child.kill('SIGINT')
      out += chunk
    })
    const code = await new Promise((resolve) => child.on('close', resolve))
    expect(code).toBe(130)
    const lines = out.split('\n')
    expect(lines.pop()).toBe('')
    expect(lines.length).toBeLessThan(400)
    for (const line of lines) expect(JSON.parse(line).ok).toBe(true)
    expect(told).toMatch(/stopped after \d+ of 400 files/)
  })

  it('shows weight in pipes only when it is forced, and NO_COLOR and --no-color outweigh that', () => {
    const forced = Object.fromEntries([['FORCE_COLOR', '1']])
    const both = { ...forced, ...Object.fromEntries([['NO_COLOR', '1']]) }
    const esc = '\u001b'
    expect(run(['judge', bad]).out).not.toContain(esc)
    expect(run(['judge', bad], { env: forced }).out).toContain(`${esc}[1m`)
    expect(run(['judge', bad], { env: both }).out).not.toContain(esc)
    expect(run(['judge', bad, '--no-color'], { env: forced }).out).not.toContain(esc)
  })

  it('lets neither a door file nor a file name steer the terminal', () => {
    const evil = place('evil\u001b[2J\u202e.json', text(beamDoor({ beam_mm: 900, name: 'dock \u001b[31m\u0007 4' })))
    for (const typed of [['judge', evil], ['judge', '--brief', evil], ['why', evil, '\u001b[2J'], ['\u009b2J']]) {
      const { out, told } = run(typed)
      expect(out + told).not.toMatch(/[^\P{Cc}\n]|\p{Bidi_C}/u)
    }
  })

  it('keeps to the width, to ASCII and to feet and inches when asked', () => {
    const { out } = run(['judge', bad, '--width', '60', '--ascii', '--units', 'ft-in'])
    for (const line of out.split('\n').filter((each) => !/^result/.test(each))) expect(line.length, line).toBeLessThanOrEqual(60)
    expect(out).not.toMatch(/[^\x20-\x7e\n]/)
    expect(out).toMatch(/\d+(?:' \d| \d+\/\d+"|")/)
  })
})
