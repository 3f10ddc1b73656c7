import type { Verdict } from '@sillsight/engine'

/** Worst first, as findings are shown. */
export const VERDICTS_WORST_FIRST: readonly Verdict[] = ['fail', 'undetermined', 'pass', 'not-applicable']

/** Marks that tell the verdicts apart without colour: filled square with a cross, half circle, open circle, dash. */
export function verdictMark(verdict: Verdict, ascii: boolean): string {
  const marks: Readonly<Record<Verdict, readonly [unicode: string, ascii: string]>> = {
    fail: ['\u22a0', '[x]'],
    undetermined: ['\u25d0', '(-)'],
    pass: ['\u25cb', '( )'],
    'not-applicable': ['\u2013', ' - '],
  }
  return marks[verdict][ascii ? 1 : 0]
}
