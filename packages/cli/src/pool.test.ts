import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import type { Written } from './formats.ts'
import { Pool } from './pool.ts'

const folder = mkdtempSync(join(tmpdir(), 'sillsight-pool-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** A thread that answers with the name of the file, sooner for later files, and comes to grief where the name says so. */
const thread = join(folder, 'thread.mjs')
writeFileSync(
  thread,
  `import { parentPort } from 'node:worker_threads'
parentPort.on('message', ({ index, file }) => {
  if (file === 'throws') throw new Error('as asked')
  if (file === 'ends') process.exit(3)
  if (file === 'crashes') return parentPort.postMessage({ kind: 'crashed', index, message: 'as said' })
  setTimeout(() => parentPort.postMessage({ kind: 'judged', index, written: { outcome: 'pass', result: file, remarks: '' } }), index % 2 ? 0 : 3)
})`,
)

async function takenFrom(names: readonly string[], workers: number): Promise<readonly string[]> {
  const taken: string[] = []
  const pool = new Pool({
    thread,
    files: names.map((file) => ({ file, text: undefined })),
    orders: { format: 'brief', look: { width: 80, colored: false, ascii: true, units: 'metric', language: 'en' } },
    workers,
    take: ({ result, remarks }) => taken.push(result || remarks),
    crashed: (file, message): Written => ({ outcome: 'crash', result: '', remarks: `${file}: ${message}` }),
  })
  await pool.done
  return taken
}

const many = Array.from({ length: 200 }, (_, i) => `door-${i}`)

describe('the pool of threads', () => {
  it.each([1, 2, 5])('gives results in the order of the files, with %d threads', async (workers) => {
    expect(await takenFrom(many, workers)).toEqual(many)
  })

  it('reports a file on which a thread died or crashed, and judges all others', async () => {
    const names = ['a', 'throws', 'b', 'ends', 'c', 'crashes', 'd']
    const taken = await takenFrom(names, 2)
    expect(taken).toEqual(['a', 'throws: as asked', 'b', 'ends: the thread ended with 3', 'c', 'crashes: as said', 'd'])
  })

  it('ends when every thread dies on every file', async () => {
    expect(await takenFrom(['throws', 'throws', 'throws', 'throws'], 2)).toHaveLength(4)
  })

  it('ends at once without files', async () => {
    expect(await takenFrom([], 2)).toEqual([])
  })
})
