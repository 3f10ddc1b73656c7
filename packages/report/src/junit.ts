import type { FileResult } from './options.ts'

/** The findings of many files as JUnit XML, ready to be written. */
export function junit(results: readonly FileResult[]): string {
  return `<testsuites tests="${results.length}"/>`
}
