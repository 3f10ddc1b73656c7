import type { DoorFile } from '@sillsight/document'
import { ownScript } from '../trusted.ts'
import { compiledAutomerge } from './automerge.ts'
import address from './foreign-worker.ts?worker&url'

/** What a throw-away worker found in changes that come from elsewhere. */
export type Inspected =
  | { readonly ok: true; readonly file: DoorFile; readonly heads: string }
  | { readonly ok: false; readonly message: string }

/** What is asked of the worker, with what it needs to answer. */
export interface Foreign {
  readonly changes: readonly Uint8Array[]
  readonly library: WebAssembly.Module
}

const LONGEST_MS = 30_000

/**
 * Loads changes that this device did not write in a worker of their own, which is thrown away afterwards: spoiled bytes can make the
 * library panic, and what panicked must not go on to hold somebody's doors.
 */
export async function inspected(changes: readonly Uint8Array[]): Promise<Inspected> {
  const library = await compiledAutomerge()
  const worker = new Worker(ownScript(address), { type: 'module', name: 'foreign' })
  return new Promise<Inspected>((done) => {
    const timer = setTimeout(() => done({ ok: false, message: 'took too long' }), LONGEST_MS)
    worker.onmessage = ({ data }: MessageEvent<Inspected>) => {
      clearTimeout(timer)
      done(data)
    }
    worker.onerror = (event) => {
      event.preventDefault()
      clearTimeout(timer)
      done({ ok: false, message: event.message || 'broke down' })
    }
    worker.postMessage({ changes, library } satisfies Foreign)
  }).finally(() => worker.terminate())
}
