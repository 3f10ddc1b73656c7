import type { NotApplicableReason, UndeterminedReason } from '@sillsight/engine'
import { capital } from './plain.ts'
import type { Told } from './told.ts'

/** One sentence or two about a finding, beginning with a capital letter and ending in a full stop. */
export type Say = (told: Told) => string

/** How one rule speaks. Complete by its type: every verdict and every reason has its sentence. */
export interface RuleWording {
  /** Short name of the rule, as a heading has it. */
  readonly name: string
  readonly pass: Say
  readonly fail: Say
  readonly undetermined: Readonly<Record<UndeterminedReason, Say>>
  readonly notApplicable: Readonly<Record<NotApplicableReason, Say>>
  /** What would mend a fail, or settle what is not settled. Not judged against the other findings. */
  readonly mend: Say
}

/** "fails" as a sentence part: `a over b` only where both are known. */
export function sentenceOf(parts: readonly (string | undefined | false)[]): string {
  return `${capital(parts.filter(Boolean).join(''))}.`
}
