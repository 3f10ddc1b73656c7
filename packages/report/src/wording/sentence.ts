import type { Door, Finding } from '@sillsight/engine'
import type { FindingGroup } from './groups.ts'
import type { Reader } from './language.ts'
import { plain } from './plain.ts'
import { needsWords, type Told } from './told.ts'

/** One finding as plain sentences: what is the matter, where, and by how much. */
export function sentence(door: Door, finding: Finding, reader: Reader): string {
  const rule = reader.language.rules[finding.rule]
  if (!rule) return reader.language.noWords(plain(finding.rule))
  const told = toldOf(door, finding, reader)
  if (finding.verdict === 'undetermined') return rule.undetermined[finding.reason](told)
  if (finding.verdict === 'not-applicable') return rule.notApplicable[finding.reason](told)
  return rule[finding.verdict](told)
}

/** What a finding would say if it did not wait for its grounds. */
export function sentenceOfPass(door: Door, finding: Finding, reader: Reader): string {
  return reader.language.rules[finding.rule]?.pass(toldOf(door, finding, reader)) ?? sentence(door, finding, reader)
}

/** Why the findings of a group wait, said once for all of them. */
export function waitingWords(door: Door, { waitsFor, findings }: FindingGroup, reader: Reader): string {
  const { waiting } = reader.language
  const needed = needsWords(toldOf(door, findings[0], reader)) || waiting.figure
  return waiting[waitsFor === 'limit-from-memory' ? waitsFor : 'rests-on-assumption'](findings.length, needed)
}

/** What would mend or settle a finding; empty where nothing is to do. Not judged against the other findings. */
export function mend(door: Door, finding: Finding, reader: Reader): string {
  return reader.language.rules[finding.rule]?.mend(toldOf(door, finding, reader)) ?? ''
}

/** Short name of a rule, as headings and pipelines have it. */
export function ruleName(rule: string, { language }: Reader): string {
  return language.rules[rule]?.name ?? plain(rule)
}

function toldOf(door: Door, finding: Finding, { units, language }: Reader): Told {
  return { door, finding, units, language }
}
