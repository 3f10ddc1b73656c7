import { spawnSync } from 'node:child_process'
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Serving, serveBuild } from '../serve.ts'

/** Builds the app as it ships, in a folder of its own, and serves it. */
export async function builtApp(): Promise<Serving & { readonly folder: string }> {
  const folder = mkdtempSync(join(tmpdir(), 'app-'))
  // a process of its own: the test runner's NODE_ENV would make it a build for development
  const vite = join(import.meta.dirname, '../../../node_modules/vite/bin/vite.js')
  const { status, stderr } = spawnSync(
    process.execPath,
    [vite, 'build', join(import.meta.dirname, '..'), '--logLevel', 'error', '--outDir', folder, '--emptyOutDir'],
    {
      env: { ...process.env, ['NODE_ENV']: 'production' },
      encoding: 'utf8',
    },
  )
  if (status !== 0) throw new Error(`the app must build, got ${stderr}`)
  return { ...(await serveBuild(0, folder)), folder }
}
