import { spawn, spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll } from 'vitest'
import { buildCommandLine } from '../build.ts'

const here = join(import.meta.dirname, '..')

export interface Ended {
  readonly code: number | null
  readonly out: string
  readonly told: string
}

/** The command line as it ships, built into a folder of its own, and a folder to work in; both go when the tests of the file end. */
export async function builtProgram() {
  const folder = mkdtempSync(join(tmpdir(), 'sillsight-built-'))
  afterAll(() => rmSync(folder, { recursive: true, force: true }))
  await buildCommandLine(join(folder, 'dist'))
  for (const name of ['demo', 'package.json']) cpSync(join(here, name), join(folder, name), { recursive: true })
  const main = join(folder, 'dist', 'main.cjs')
  const work = mkdtempSync(join(folder, 'work-'))
  const environment = Object.fromEntries([
    ['PATH', process.env['PATH']],
    ['HOME', work],
    ['TMPDIR', folder],
  ])

  const run = (
    typed: readonly string[],
    { input = '', env = {} }: { readonly input?: string; readonly env?: NodeJS.ProcessEnv } = {},
  ): Ended => {
    const ended = spawnSync(process.execPath, [main, ...typed], { cwd: work, input, env: { ...environment, ...env }, maxBuffer: 1e9 })
    return { code: ended.status, out: ended.stdout.toString(), told: ended.stderr.toString() }
  }
  const start = (typed: readonly string[]) => spawn(process.execPath, [main, ...typed], { cwd: work, env: environment })
  return { folder, main, work, run, start, demo: join(folder, 'demo') }
}
