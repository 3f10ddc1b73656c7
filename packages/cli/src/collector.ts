import { type FileResult, junit, sarif } from '@sillsight/report'
import { type ExitCode, exitCodeOf, type Outcome, worstOutcome } from './exit-codes.ts'
import type { Format, Written } from './formats.ts'
import { print, tell } from './output.ts'

/** Prints what comes as it comes, or all together where the format is one document: then nothing or the whole is printed. */
export class Collector {
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
    if (this.#format === 'sarif') print(`${sarif(this.#whole).trimEnd()}\n`)
    if (this.#format === 'junit') print(`${junit(this.#whole).trimEnd()}\n`)
    if (this.#outcomes.length > 1 && (this.#format === 'text' || this.#format === 'brief')) print(sumLine(this.#outcomes))
    return exitCodeOf(outcome)
  }
}

const words: readonly (readonly [Outcome, string])[] = [
  ['crash', 'crashed'],
  ['bad-input', 'bad input'],
  ['fail', 'fail'],
  ['undetermined', 'not settled'],
  ['pass', 'in order'],
]

function sumLine(outcomes: readonly Outcome[]): string {
  const counted = words.map(([outcome, word]) => [outcomes.filter((each) => each === outcome).length, word] as const)
  const parts = counted.filter(([count]) => count > 0).map(([count, word]) => `${count} ${word}`)
  return `${outcomes.length} files: ${parts.join(', ')}\n`
}
