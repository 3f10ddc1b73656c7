import type { Door, Judgement } from '@sillsight/engine'
import type { TextOptions } from './options.ts'
import { sentence } from './wording/sentence.ts'

/** The findings of one door as text for a terminal, worst first. */
export function findingsText(door: Door, judgement: Judgement, { units }: TextOptions): string {
  return judgement.findings.map((finding) => `${finding.verdict} ${sentence(door, finding, { units })} (${finding.id})`).join('\n')
}
