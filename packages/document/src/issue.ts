/** What is wrong with a file, in words that lead to its repair. All issues of a file come at once. */
export interface Issue {
  /** Stable short name for scripts, as `not-a-number-in-range` or `duplicate-id`. */
  readonly code: string
  /** Place in the door file, as `survey/opening/width_mm`; `file` for the file as a whole. */
  readonly path: string
  readonly expected: string
  readonly got: string
  readonly repair?: string
}

/** Something to know about a file that stays readable: an unknown field, a migration, readings that disagree. */
export interface Note {
  readonly code: string
  readonly path: string
  readonly text: string
}

/** One issue as one line: `survey/opening/width_mm: expected a number above 0, got -3`. */
export function issueLine({ path, expected, got, repair }: Issue): string {
  const line = `${path}: expected ${expected}, got ${got}`
  return repair === undefined ? line : `${line} (${repair})`
}
