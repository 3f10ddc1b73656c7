import { spawn } from 'node:child_process'
import { build } from 'vite'
import { type Serving, serveBuild } from './serve.ts'

/** `npm start`: builds the app, serves it to this machine and opens it where there is a screen to open it on. Ctrl-C ends it. */
const PORTS = [4180, 4181, 4182, 0]

await build({ configFile: `${import.meta.dirname}/vite.config.ts`, logLevel: 'warn' })
const serving = await firstFree(PORTS)
process.stderr.write(
  `\nSillsight runs at ${serving.url}\nNothing leaves this machine. Ctrl-C ends it; what you entered stays in the browser.\n`,
)
if (process.argv.includes('--once')) await serving.close()
else open(serving.url)

async function firstFree([port = 0, ...others]: readonly number[]): Promise<Serving> {
  try {
    return await serveBuild(port)
  } catch (problem) {
    if (others.length === 0) throw problem
    return firstFree(others)
  }
}

/** Best effort: without a desktop there is the address above. */
function open(url: string): void {
  if (process.platform === 'linux' && !process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY']) return
  const [command, ...words] = { darwin: ['open'], win32: ['cmd', '/c', 'start', ''] }[process.platform as 'darwin' | 'win32'] ?? [
    'xdg-open',
  ]
  if (command === undefined) return
  spawn(command, [...words, url], { stdio: 'ignore', detached: true })
    .on('error', () => {})
    .unref()
}
