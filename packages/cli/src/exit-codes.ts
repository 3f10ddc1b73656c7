/** How the program ends. The numbers are a promise to scripts: docs/command-line.md. */
export const exitCodes = {
  pass: 0,
  fail: 1,
  undetermined: 2,
  badInput: 3,
  crash: 70,
  interrupted: 130,
  brokenPipe: 141,
} as const

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes]

export const exitMeanings: readonly (readonly [code: ExitCode, means: string])[] = [
  [exitCodes.pass, 'every door judged is in order; for other commands: done'],
  [exitCodes.fail, 'a door fails'],
  [exitCodes.undetermined, 'nothing fails, but a door is not settled'],
  [exitCodes.badInput, 'a file, an option or a place to write cannot be used; nothing was overwritten'],
  [exitCodes.crash, 'a fault in this program: please report it'],
  [exitCodes.interrupted, 'stopped by Ctrl-C'],
  [exitCodes.brokenPipe, 'the reader of the output went away'],
]

/** Outcome of one file, and of many: the first in this order that any of them has. */
export const outcomes = ['crash', 'bad-input', 'fail', 'undetermined', 'pass'] as const
export type Outcome = (typeof outcomes)[number]

/** The outcome that decides for many files. Without any file nothing was judged, and that is never a pass. */
export function worstOutcome(all: Iterable<Outcome>): Outcome {
  const present = new Set(all)
  return outcomes.find((outcome) => present.has(outcome)) ?? 'undetermined'
}

export function exitCodeOf(outcome: Outcome): ExitCode {
  return outcome === 'bad-input' ? exitCodes.badInput : exitCodes[outcome]
}
