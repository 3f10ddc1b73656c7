import { safe } from './plain-text.ts'

/** Something that the user can mend: always with the place, what was expected there, what was found, and what to do. */
export interface Problem {
  readonly code: string
  /** A file, a path inside one, an option, a command. */
  readonly place: string
  readonly expected: string
  readonly got: string
  readonly repair: string
}

/** Thrown where the work cannot go on, caught once where the command was started. */
export class Refusal extends Error {
  readonly problems: readonly Problem[]

  constructor(...problems: readonly Problem[]) {
    super(problems.map(({ place, expected, got }) => `${place}: expected ${expected}, got ${got}`).join('\n'))
    this.problems = problems
  }
}

const most = 20

/** Problems as lines for standard error; beyond 20 only their number. */
export function problemText(problems: readonly Problem[]): string {
  const shown = problems.slice(0, most).map(({ code, place, expected, got, repair }) => {
    return `sillsight: ${place}: expected ${expected}, got ${got} [${code}]\n  repair: ${repair}\n`
  })
  const rest = problems.length - shown.length
  return safe(shown.join('')) + (rest > 0 ? `sillsight: and ${rest} more; mend these first\n` : '')
}

/** A value as an error message shows it: on one line, and not too long. */
export function shown(value: string): string {
  return JSON.stringify(value.length > 60 ? `${value.slice(0, 57)}...` : value)
}
