import { offers, parseDocument, toDoor } from '@sillsight/document'
import { judge, repairs } from '@sillsight/engine'
import type { FromMending, ToMending } from './messages.ts'

const PROGRESS_EVERY_MS = 100

/** One worker for one search: it is ended when nobody waits for the answer any more. */
self.onmessage = ({ data }: MessageEvent<ToMending>) => {
  try {
    search(data)
  } catch (problem) {
    reply({ kind: 'crashed', message: problem instanceof Error ? problem.message : String(problem) })
  }
}

function search({ file, disputed, finding }: ToMending): void {
  const parsed = parseDocument(JSON.stringify(file))
  if (!parsed.ok) throw new Error('a door that cannot be judged cannot be mended')
  const door = { ...toDoor(parsed.document, parsed.catalogue), disputed }
  const tried = { grid: 0, exact: 0 }
  const work = repairs(door, judge(door), finding, tried)
  let told_ms = performance.now()
  let step = work.next()
  while (!step.done) {
    if (performance.now() - told_ms >= PROGRESS_EVERY_MS) {
      told_ms = performance.now()
      reply({ kind: 'trying', doors: tried.grid + tried.exact })
    }
    step = work.next()
  }
  reply({ kind: 'mended', door, offers: offers(parsed.document, door, step.value.offered, parsed.catalogue), repairs: step.value })
}

function reply(message: FromMending): void {
  self.postMessage(message)
}
