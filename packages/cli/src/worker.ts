// One judging thread: files come in one at a time, what they add to the output goes back.
import { parentPort, workerData } from 'node:worker_threads'
import type { Ask, Orders, Reply } from './pool.ts'

const port = parentPort
if (!port) throw new Error('worker.ts runs in a worker thread only')
const { format, look } = workerData as Orders
const ready = import('./work.ts') // also in the bundle: one copy of the engine for the main thread and these

port.on('message', ({ index, file, text }: Ask) => {
  ready
    .then(({ judgeFile, written }) =>
      port.postMessage({ kind: 'judged', index, written: written(judgeFile(file, text), format, look) } satisfies Reply),
    )
    .catch((problem: unknown) => port.postMessage({ kind: 'crashed', index, message: String(problem) } satisfies Reply))
})
