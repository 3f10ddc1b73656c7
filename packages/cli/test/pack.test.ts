import { execFileSync, spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'

const here = join(import.meta.dirname, '..')
const folder = mkdtempSync(join(tmpdir(), 'sillsight-packed-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const home = join(folder, 'home')
const place = join(folder, 'place')
for (const made of [home, place]) mkdirSync(made)
/** An empty home, and no network: whatever would be fetched fails. */
const offline = Object.fromEntries([
  ['PATH', `${dirname(process.execPath)}:${process.env['PATH']}`],
  ['HOME', home],
  ['npm_config_offline', 'true'],
  ['npm_config_registry', 'http://127.0.0.1:9/'],
  ['npm_config_update_notifier', 'false'],
])

execFileSync('npm', ['pack', '--pack-destination', folder], { cwd: here, env: offline, stdio: ['ignore', 'ignore', 'pipe'] })
const [tarball = ''] = readdirSync(folder).filter((name) => name.endsWith('.tgz'))
execFileSync('npm', ['install', '--no-audit', '--no-fund', join(folder, tarball)], {
  cwd: place,
  env: offline,
  stdio: ['ignore', 'ignore', 'pipe'],
})
const installed = join(place, 'node_modules', 'sillsight')

/** As somebody would type it in that folder. */
function sillsight(...typed: readonly string[]) {
  const ended = spawnSync(join('node_modules', '.bin', 'sillsight'), typed, { cwd: place, env: offline })
  return { code: ended.status, out: ended.stdout.toString(), told: ended.stderr.toString() }
}

describe('the package of the command line', () => {
  it('holds the program, the demonstration doors, README and licence, and no sources or tests', () => {
    expect(readdirSync(installed).sort()).toEqual(['LICENSE', 'README.md', 'demo', 'dist', 'package.json'])
    expect(readdirSync(join(installed, 'dist')).sort()).toEqual(['main.cjs', 'work.cjs', 'worker.cjs'])
  })

  it('needs no other package', () => {
    expect(readdirSync(join(place, 'node_modules')).filter((name) => !name.startsWith('.'))).toEqual(['sillsight'])
    expect(JSON.parse(readFileSync(join(installed, 'package.json'), 'utf8')).dependencies).toBeUndefined()
  })

  it('carries the licence of the repository', () => {
    expect(readFileSync(join(here, 'LICENSE'), 'utf8')).toBe(readFileSync(join(here, '..', '..', 'LICENSE'), 'utf8'))
  })

  it('works in an empty folder without a network: help, version, demo, judge, why, draw', () => {
    expect(sillsight('--help').out).toContain('sillsight judge node_modules/sillsight/demo/')
    expect(sillsight('--version').out).toBe(`${JSON.parse(readFileSync(join(here, 'package.json'), 'utf8')).version}\n`)
    expect(sillsight('demo')).toMatchObject({ code: 0, told: '' })
    const [door = ''] = readdirSync(join(installed, 'demo'))
    const { code, out } = sillsight('judge', '--json', join('sillsight-demo', door))
    expect([0, 1, 2]).toContain(code)
    const [{ findings }] = JSON.parse(out).doors
    expect(sillsight('why', join('sillsight-demo', door), findings[0].id).code).toBe(0)
    expect(sillsight('draw', join('sillsight-demo', door), '--out', 'door.svg').code).toBe(0)
    expect(existsSync(join(place, 'door.svg'))).toBe(true)
  })

  it('judges many files on threads', () => {
    const [door = ''] = readdirSync(join(installed, 'demo'))
    const files = Array.from({ length: 9 }, () => join('node_modules', 'sillsight', 'demo', door))
    expect(
      sillsight('judge', '--jsonl', ...files)
        .out.trimEnd()
        .split('\n'),
    ).toHaveLength(9)
  })
})
