import type { Judgement } from '@sillsight/engine'
import type { Reader } from './language.ts'
import { VERDICTS_WORST_FIRST } from './verdicts.ts'

/** How many findings have which verdict, worst first: "2 fail · 1 not settled · 7 in order". A short one leaves out what does not apply. */
export function tally({ findings, crashes }: Judgement, { language }: Reader, { short = false } = {}): string {
  const told = short ? VERDICTS_WORST_FIRST.filter((verdict) => verdict !== 'not-applicable') : VERDICTS_WORST_FIRST
  const counted = told.flatMap((verdict) => {
    const count = findings.filter((finding) => finding.verdict === verdict).length
    return count > 0 ? [`${count} ${language.counted[verdict](count)}`] : []
  })
  const crashed = crashes.length > 0 ? [language.notJudged(crashes.length)] : []
  return [...counted, ...crashed].join(' \u00b7 ') || language.nothingJudged
}
