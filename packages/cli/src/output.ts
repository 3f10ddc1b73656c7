import { writeSync } from 'node:fs'
import { exitCodes } from './exit-codes.ts'

/** Writes a result to standard output, all of it, waiting while the reader is busy. */
export function print(text: string): void {
  writeAll(1, text)
}

/** Writes everything that is not a result: problems, progress, questions. */
export function tell(text: string): void {
  writeAll(2, text)
}

/**
 * Synchronous on purpose: nothing is lost when the process ends, and a slow reader slows the work instead of filling memory.
 * A reader that went away (`| head`) ends the program at once and without a word, as other programs end on a broken pipe.
 */
function writeAll(stream: 1 | 2, text: string): void {
  const bytes = Buffer.from(text)
  for (let from = 0; from < bytes.length; ) {
    try {
      from += writeSync(stream, bytes, from)
    } catch (problem) {
      const code = (problem as NodeJS.ErrnoException).code
      if (code === 'EAGAIN') pause_ms(5)
      else if (code === 'EPIPE') process.exit(exitCodes.brokenPipe)
      else throw problem
    }
  }
}

function pause_ms(time_ms: number): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, time_ms)
}
