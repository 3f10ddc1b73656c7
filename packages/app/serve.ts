import { readFile } from 'node:fs/promises'
import { createServer } from 'node:http'
import { extname, join, normalize } from 'node:path'

/** What a static web server says of each kind of file. */
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
}

export interface Serving {
  readonly url: string
  readonly close: () => Promise<void>
}

/**
 * Serves the built app to this machine only, as any web server would.
 *
 * @param port 0 for one that is free
 * @param folder the build
 * @throws if the port is taken
 */
export async function serveBuild(port = 0, folder = join(import.meta.dirname, 'dist')): Promise<Serving> {
  const server = createServer(async ({ url, method }, response) => {
    const file = method === 'GET' || method === 'HEAD' ? inFolder(folder, url ?? '/') : undefined
    try {
      if (file === undefined) throw new Error('not a file of the build')
      const bytes = await readFile(file)
      response.writeHead(200, {
        'content-type': TYPES[extname(file)] ?? 'application/octet-stream',
        'x-content-type-options': 'nosniff',
        'cache-control': file.includes('assets') ? 'max-age=31536000, immutable' : 'no-cache', // the names of assets hold their hash
      })
      response.end(method === 'HEAD' ? undefined : bytes)
    } catch {
      response.writeHead(404).end()
    }
  })
  await new Promise<void>((done, failed) => {
    server.once('error', failed)
    server.listen(port, '127.0.0.1', done)
  })
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error(`server must have a port, got ${address}`)
  return {
    url: `http://localhost:${address.port}/`,
    close: () =>
      new Promise((done) => {
        server.close(() => done())
        server.closeAllConnections()
      }),
  }
}

/** The file that an address means, or undefined where it would lead out of the build. */
function inFolder(folder: string, url: string): string | undefined {
  try {
    const path = normalize(decodeURIComponent(new URL(url, 'http://localhost').pathname))
    if (path.includes('..') || path.includes('\0')) return undefined
    return join(folder, path.endsWith('/') ? `${path}index.html` : path)
  } catch {
    return undefined
  }
}
