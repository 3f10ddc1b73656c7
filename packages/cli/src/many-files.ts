import { join } from 'node:path'
import type { Collector } from './collector.ts'
import { type Format, written } from './formats.ts'
import { tell } from './output.ts'
import { Pool, type PoolJob } from './pool.ts'
import { Progress } from './progress.ts'
import { readText } from './reading.ts'
import { isTerminal, type Look } from './terminal.ts'

interface ThreadJob {
  readonly files: readonly string[]
  readonly format: Format
  readonly look: Look
  /** One per core if left out. */
  readonly workers: number | undefined
  readonly collector: Collector
}

const thread = join(import.meta.dirname, import.meta.filename.endsWith('.ts') ? 'worker.ts' : 'worker.cjs')

/**
 * Judges many files on threads, with progress.
 * @returns whether all were judged; Ctrl-C ends it after the results that are already printed
 */
export async function judgeOnThreads({
  files,
  format,
  look,
  workers = process.getBuiltinModule('node:os').availableParallelism(),
  collector,
}: ThreadJob): Promise<boolean> {
  const tasks = files.map((file) => ({ file, text: file === '-' ? readText(file) : undefined }))
  const progress = new Progress(files.length)
  const isSeen = isTerminal(1) // results and progress then share a terminal
  const take: PoolJob['take'] = (one) => {
    if (isSeen || one.remarks !== '') progress.clear()
    collector.take(one)
    progress.count()
  }
  const crashed: PoolJob['crashed'] = (file, message) => written({ kind: 'crashed', file, outcome: 'crash', message }, format, look)
  const pool = new Pool({ thread, files: tasks, orders: { format, look }, workers, take, crashed })
  const interrupted = new Promise<'interrupted'>((resolve) => process.once('SIGINT', () => resolve('interrupted')))
  const ended = await Promise.race([pool.done, interrupted])
  progress.clear()
  if (ended !== 'interrupted') return true
  pool.stop()
  tell(`sillsight: stopped after ${pool.taken} of ${files.length} files\n`)
  return false
}
