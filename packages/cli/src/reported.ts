import { type ExitCode, exitCodes } from './exit-codes.ts'
import { tell } from './output.ts'
import { problemText, Refusal } from './problem.ts'

/** Tells what ended a command: a problem that the user can mend, or else a fault of ours. */
export function reported(problem: unknown): ExitCode {
  if (problem instanceof Refusal) {
    tell(problemText(problem.problems))
    return exitCodes.badInput
  }
  tell(crashText('', problem instanceof Error ? (problem.stack ?? problem.message) : String(problem)))
  return exitCodes.crash
}

/** A crash is ours to mend, never the user's, and says so. */
export function crashText(place: string, message: string): string {
  const report = 'This is a fault in sillsight, not in your file. Please report it with these lines, and the file if it may be shown.'
  return `sillsight: ${place}crashed: ${message}\n  ${report}\n`
}
