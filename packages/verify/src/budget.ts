import { refuse } from './json.ts'

/** How much work may still be done: about half a millionth of a second each. Evidence that needs more is refused. */
export interface Budget {
  left: number
}

export function spend(budget: Budget, amount: number, path: string): void {
  budget.left -= amount
  if (budget.left < 0) refuse('too-much', path, 'evidence that can be checked in time', 'more work')
}
