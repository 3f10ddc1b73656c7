import { type Request, wholeNumber } from '../arguments.ts'
import { Collector } from '../collector.ts'
import { type ExitCode, exitCodes } from '../exit-codes.ts'
import { type Format, formats, written } from '../formats.ts'
import { judgeFile } from '../judging.ts'
import { judgeOnThreads } from '../many-files.ts'
import { Refusal } from '../problem.ts'
import { lookOf } from '../terminal.ts'

/** Below this a thread takes longer to start than the files to judge. */
const fewFiles = 8

export async function judgeCommand(request: Request): Promise<ExitCode> {
  const files = request.words
  if (files.filter((file) => file === '-').length > 1) throw new Refusal(standardInputTwice)
  const format = formatOf(request)
  const look = lookOf(request)
  const workers = wholeNumber(request, 'workers', 1, 256) ?? (files.length < fewFiles ? 1 : undefined)
  const collector = new Collector(format)
  if (workers === 1 || files.length === 1) for (const file of files) collector.take(written(judgeFile(file), format, look))
  else {
    const all = await judgeOnThreads({ files, format, look, workers, collector })
    if (!all) return exitCodes.interrupted
  }
  return collector.end()
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

const standardInputTwice = {
  code: 'standard-input-twice',
  place: 'judge',
  expected: 'standard input (-) once',
  got: 'it twice',
  repair: 'name it once',
}
