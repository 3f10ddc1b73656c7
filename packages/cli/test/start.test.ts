import { spawnSync } from 'node:child_process'
import { readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { builtProgram } from './program.ts'

const { main, work, demo } = await builtProgram()
const [door = ''] = readdirSync(demo)

/** Parts of Node that take 2 ms and more to load, in a start that has 45 ms in all (packages/cli/bench/start.ts measures it). */
const heavy = ['crypto', 'zlib', 'net', 'tty', 'readline', 'worker_threads', 'child_process', 'url']

function loadedBy(...typed: readonly string[]): readonly string[] {
  const witness = join(work, 'witness.cjs')
  writeFileSync(
    witness,
    `const before = new Set(process.moduleLoadList)
process.on('exit', () => require('node:fs').writeSync(2, JSON.stringify(process.moduleLoadList.filter((name) => !before.has(name)))))`,
  )
  const { stderr } = spawnSync(process.execPath, ['--require', witness, main, ...typed], { cwd: work })
  return JSON.parse(stderr.toString()).map((name: string) => name.replace('NativeModule ', ''))
}

describe('a quick start', () => {
  it('loads for the help nothing but what the help needs', () => {
    const loaded = loadedBy('--help')
    expect(loaded.filter((name) => heavy.includes(name))).toEqual([])
  })

  it('loads for a verdict no part of Node that only other commands need', () => {
    const loaded = loadedBy('judge', join(demo, door))
    expect(loaded.filter((name) => heavy.includes(name))).toEqual([])
  })

  it('sees such parts when they are loaded', () => {
    expect(loadedBy('judge', '--workers', '2', join(demo, door), join(demo, door))).toContain('worker_threads')
  })
})
