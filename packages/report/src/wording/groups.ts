import type { Finding, UndeterminedReason } from '@sillsight/engine'
import { VERDICTS_WORST_FIRST } from './verdicts.ts'

/** Findings that are told together: passes that wait for the same grounds are one matter, whatever their number. */
export interface FindingGroup {
  /** Why none of them is in order yet; undefined for a finding that stands alone. */
  readonly waitsFor: UndeterminedReason | undefined
  /** Never empty. */
  readonly findings: readonly [Finding, ...Finding[]]
}

/** Fails first, then what is not settled, then the rest; findings of one verdict keep their order. */
export function worstFirst(findings: readonly Finding[]): readonly Finding[] {
  return VERDICTS_WORST_FIRST.flatMap((verdict) => findings.filter((finding) => finding.verdict === verdict))
}

/** The findings worst first; passes that were taken back for the same reason and the same needs come as one group. */
export function grouped(findings: readonly Finding[]): readonly FindingGroup[] {
  const groups = new Map<string, FindingGroup>()
  for (const finding of worstFirst(findings)) {
    const waitsFor = waits(finding)
    const key = waitsFor === undefined ? finding.id : `${waitsFor} ${finding.verdict === 'undetermined' ? finding.needs.join(' ') : ''}`
    const group = groups.get(key)
    groups.set(key, { waitsFor, findings: group ? [...group.findings, finding] : [finding] })
  }
  return [...groups.values()]
}

/** A finding that would be in order but for what it rests on. */
function waits(finding: Finding): UndeterminedReason | undefined {
  if (finding.verdict !== 'undetermined') return undefined
  return finding.reason === 'limit-from-memory' || finding.reason === 'rests-on-assumption' ? finding.reason : undefined
}
