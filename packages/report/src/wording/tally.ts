import type { Judgement } from '@sillsight/engine'
import { VERDICTS_WORST_FIRST, verdictWordsCounted } from './verdicts.ts'

/** How many findings have which verdict, worst first: "2 fail · 1 not settled · 7 in order". */
export function tally({ findings, crashes }: Judgement): string {
  const counted = VERDICTS_WORST_FIRST.flatMap((verdict) => {
    const count = findings.filter((finding) => finding.verdict === verdict).length
    return count > 0 ? [`${count} ${verdictWordsCounted[verdict](count)}`] : []
  })
  const crashed = crashes.length > 0 ? [`${crashes.length} could not be judged`] : []
  return [...counted, ...crashed].join(' \u00b7 ') || 'nothing judged'
}
