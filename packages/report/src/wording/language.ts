import type { Units } from '../options.ts'
import type { Phrases } from './en/phrases.ts'
import type { RuleWording } from './rule-wording.ts'

/** Everything that the report says, in one language. */
export interface Language extends Phrases {
  /** BCP 47. */
  readonly tag: string
  /** How each rule speaks, by rule id. */
  readonly rules: Readonly<Record<string, RuleWording>>
}

/** Whom the report speaks to. Whatever says how it looks holds this, so that it can be passed on as it is. */
export interface Reader {
  readonly units: Units
  readonly language: Language
}
