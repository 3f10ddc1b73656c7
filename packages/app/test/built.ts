import { spawnSync } from 'node:child_process'
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Serving, serveBuild } from '../serve.ts'

/** Where this process has built it, by configuration: the files of one worker share a build. */
const folders = new Map<string, string>()

/**
 * Serves the app, built in a folder of its own.
 *
 * @param config another configuration than that of the app as it ships
 */
export async function builtApp(config = 'vite.config.ts'): Promise<Serving & { readonly folder: string }> {
  const folder = folders.get(config) ?? build(config)
  folders.set(config, folder)
  return { ...(await serveBuild(0, folder)), folder }
}

function build(config: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'app-'))
  // a process of its own: the test runner's NODE_ENV would make it a build for development
  const vite = join(import.meta.dirname, '../../../node_modules/vite/bin/vite.js')
  const app = join(import.meta.dirname, '..')
  const { status, stderr } = spawnSync(
    process.execPath,
    [vite, 'build', app, '--config', join(app, config), '--logLevel', 'error', '--outDir', folder, '--emptyOutDir'],
    {
      env: { ...process.env, ['NODE_ENV']: 'production' },
      encoding: 'utf8',
    },
  )
  if (status !== 0) throw new Error(`the app must build, got ${stderr}`)
  return folder
}
