import type { Verdict } from '@sillsight/engine'

/** Worst first, as findings are shown. */
export const VERDICTS_WORST_FIRST: readonly Verdict[] = ['fail', 'undetermined', 'pass', 'not-applicable']

/** The verdict on screens and paper. Never "open" or "holds": a door does that. */
export const verdictWords: Readonly<Record<Verdict, string>> = {
  fail: 'fails',
  undetermined: 'not settled',
  pass: 'in order',
  'not-applicable': 'does not apply',
}

/** In a count: "2 fail, 1 not settled". */
export const verdictWordsCounted: Readonly<Record<Verdict, (count: number) => string>> = {
  fail: (count) => (count === 1 ? 'fails' : 'fail'),
  undetermined: () => 'not settled',
  pass: () => 'in order',
  'not-applicable': (count) => (count === 1 ? 'does not apply' : 'do not apply'),
}

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
