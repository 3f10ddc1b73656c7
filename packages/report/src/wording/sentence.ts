import type { Door, Finding } from '@sillsight/engine'
import type { Units } from '../options.ts'
import { wording } from './en.ts'
import type { FindingGroup } from './groups.ts'
import { plain } from './plain.ts'
import { needsWords } from './told.ts'

interface In {
  readonly units: Units
}

/** One finding as plain sentences: what is the matter, where, and by how much. */
export function sentence(door: Door, finding: Finding, { units }: In): string {
  const rule = wording[finding.rule]
  if (!rule) return `Rule ${plain(finding.rule)} has an answer that has no words yet.`
  const told = { door, finding, units }
  if (finding.verdict === 'undetermined') return rule.undetermined[finding.reason](told)
  if (finding.verdict === 'not-applicable') return rule.notApplicable[finding.reason](told)
  return rule[finding.verdict](told)
}

/** What a finding would say if it did not wait for its grounds. */
export function sentenceOfPass(door: Door, finding: Finding, { units }: In): string {
  return wording[finding.rule]?.pass({ door, finding, units }) ?? sentence(door, finding, { units })
}

/** Why the findings of a group wait, said once for all of them. */
export function waitingWords(door: Door, { waitsFor, findings: [first, ...more] }: FindingGroup, { units }: In): string {
  const needed = needsWords({ door, finding: first, units }) || 'a figure'
  const they = more.length > 0 ? `These ${more.length + 1} are in order so far, but they rest on` : 'In order so far, but it rests on'
  return waitsFor === 'limit-from-memory'
    ? `${they} what is only remembered and was never held against its page: ${needed}.`
    : `${they} what nobody entered: ${needed}.`
}

/** What would mend or settle a finding; empty where nothing is to do. Not judged against the other findings. */
export function mend(door: Door, finding: Finding, { units }: In): string {
  return wording[finding.rule]?.mend({ door, finding, units }) ?? ''
}

/** Short name of a rule, as headings and pipelines have it. */
export function ruleName(rule: string): string {
  return wording[rule]?.name ?? plain(rule)
}
