import { availableParallelism } from 'node:os'
import { type FileResult, junit, sarif } from '@sillsight/report'
import { type Request, wholeNumber } from '../arguments.ts'
import { type ExitCode, exitCodeOf, exitCodes, type Outcome, worstOutcome } from '../exit-codes.ts'
import { type Format, formats, type Written, written } from '../formats.ts'
import { judgeFile } from '../judging.ts'
import { print, tell } from '../output.ts'
import { Pool, type PoolJob } from '../pool.ts'
import { Refusal } from '../problem.ts'
import { Progress } from '../progress.ts'
import { readText } from '../reading.ts'
import { type Look, lookOf } from '../terminal.ts'

/** Below this a thread takes longer to start than the files to judge. */
const fewFiles = 8

export async function judgeCommand(request: Request): Promise<ExitCode> {
  const files = request.words
  if (files.filter((file) => file === '-').length > 1) throw new Refusal(standardInputTwice)
  const format = formatOf(request)
  const look = lookOf(request)
  const workers = wholeNumber(request, 'workers', 1, 256) ?? (files.length < fewFiles ? 1 : availableParallelism())
  const collect = new Collector(format)
  if (workers === 1 || files.length === 1) for (const file of files) collect.take(written(judgeFile(file), format, look))
  else if (!(await withThreads({ files, format, look, workers, collect }))) return exitCodes.interrupted
  return collect.end()
}

function formatOf({ switches }: Request): Format {
  const asked = formats.filter((format) => switches.has(format))
  if (asked.length <= 1) return asked[0] ?? 'text'
  throw new Refusal({
    code: 'two-formats',
    place: 'judge',
    expected: 'one form of output',
    got: asked.map((format) => `--${format}`).join(' and '),
    repair: 'leave all but one out',
  })
}

interface ThreadJob {
  readonly files: readonly string[]
  readonly format: Format
  readonly look: Look
  readonly workers: number
  readonly collect: Collector
}

/** @returns whether all files were judged; Ctrl-C ends it after the results that are already printed */
async function withThreads({ files, format, look, workers, collect }: ThreadJob): Promise<boolean> {
  const progress = new Progress(files.length)
  const take: PoolJob['take'] = (one) => {
    progress.clear()
    collect.take(one)
    progress.count()
  }
  const crashed: PoolJob['crashed'] = (file, message) => written({ kind: 'crashed', file, outcome: 'crash', message }, format, look)
  const tasks = files.map((file) => ({ file, text: file === '-' ? readText(file) : undefined }))
  const pool = new Pool({ files: tasks, orders: { format, look }, workers, take, crashed })
  const interrupted = new Promise<'interrupted'>((resolve) => process.once('SIGINT', () => resolve('interrupted')))
  const ended = await Promise.race([pool.done, interrupted])
  progress.clear()
  if (ended !== 'interrupted') return true
  pool.stop()
  tell(`sillsight: stopped after ${pool.taken} of ${files.length} files\n`)
  return false
}

/** Prints what comes as it comes, or all together where the format is one document. */
class Collector {
  readonly #format: Format
  readonly #outcomes: Outcome[] = []
  readonly #parts: string[] = []
  readonly #whole: FileResult[] = []

  constructor(format: Format) {
    this.#format = format
  }

  take({ outcome, result, remarks, whole }: Written): void {
    this.#outcomes.push(outcome)
    if (remarks) tell(remarks)
    if (whole) this.#whole.push(whole)
    else if (this.#format === 'json') this.#parts.push(result)
    else print(this.#format === 'jsonl' ? `${result}\n` : result)
  }

  end(): ExitCode {
    const outcome = worstOutcome(this.#outcomes)
    if (this.#format === 'json') print(`{"outcome":"${outcome}","doors":[\n${this.#parts.join(',\n')}\n]}\n`)
    if (this.#format === 'sarif') print(sarif(this.#whole))
    if (this.#format === 'junit') print(junit(this.#whole))
    if (this.#outcomes.length > 1 && (this.#format === 'text' || this.#format === 'brief')) print(sumLine(this.#outcomes))
    return exitCodeOf(outcome)
  }
}

function sumLine(outcomes: readonly Outcome[]): string {
  const words: readonly (readonly [Outcome, string])[] = [
    ['crash', 'crashed'],
    ['bad-input', 'bad input'],
    ['fail', 'fail'],
    ['undetermined', 'not settled'],
    ['pass', 'in order'],
  ]
  const counted = words.map(([outcome, word]) => [outcomes.filter((each) => each === outcome).length, word] as const)
  const parts = counted.filter(([count]) => count > 0).map(([count, word]) => `${count} ${word}`)
  return `${outcomes.length} files: ${parts.join(', ')}\n`
}

const standardInputTwice = {
  code: 'standard-input-twice',
  place: 'judge',
  expected: 'standard input (-) once',
  got: 'it twice',
  repair: 'name it once',
}
