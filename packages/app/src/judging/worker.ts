import { parseDocument, toDoor } from '@sillsight/document'
import { judge } from '@sillsight/engine'
import type { FromWorker, ToWorker } from './messages.ts'

const PROGRESS_EVERY_MS = 100

/** The one catch of the worker: whatever breaks is an answer too. */
self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  const { revision } = data
  try {
    answer(data)
  } catch (problem) {
    reply({ kind: 'crashed', revision, message: problem instanceof Error ? problem.message : String(problem) })
  }
}

function answer({ revision, file, disputed, depth }: ToWorker): void {
  const parsed = parseDocument(JSON.stringify(file))
  if (!parsed.ok) {
    reply({ kind: 'refused', revision, issues: parsed.issues })
    return
  }
  const door = { ...toDoor(parsed.document, parsed.catalogue), disputed }
  let told_ms = performance.now()
  const judgement = judge(door, {
    depth,
    onProgress: (done, of) => {
      if (depth === 'grid' || performance.now() - told_ms < PROGRESS_EVERY_MS) return
      told_ms = performance.now()
      reply({ kind: 'progress', revision, done, of })
    },
  })
  reply({ kind: 'judged', revision, depth, answer: { door, judgement, notes: parsed.notes } })
}

function reply(message: FromWorker): void {
  self.postMessage(message)
}
