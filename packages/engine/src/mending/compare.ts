import type { Finding, Judgement, ZoneCoverage } from '../model/finding.ts'

/** In order as far as it was judged: nothing but a default or a limit that nobody confirmed keeps it from passing. */
export function isMended(finding: Finding): boolean {
  return finding.verdict === 'pass' || (finding.verdict === 'undetermined' && RESTS.includes(finding.reason))
}

const RESTS: readonly string[] = ['limit-from-memory', 'rests-on-assumption']

/** The same question asked of the changed door; pockets come and go, so that they are left to their zone. */
export function counterpart({ id }: Finding, judgement: Judgement): Finding | undefined {
  return judgement.findings.find((finding) => finding.id === id)
}

/**
 * How far a finding is from being in order: 0 where it may be, growing with what is unseen or out of its limit. Of the grid's answer this only
 * says where to look further.
 */
export function shortfall(finding: Finding, judgement: Judgement): number {
  const now = counterpart(finding, judgement)
  if (now === undefined) return Infinity
  if (now.rule === 'zone-covered') return unseenCells(now, judgement.coverages)
  if (isMended(now) || now.verdict === 'not-applicable') return 0
  if (now.verdict === 'undetermined' && now.provisional === 'grid' && now.reason === 'not-proved') return 0
  if (now.measured === undefined || now.limit === undefined) return 1
  return Math.abs(now.measured.value - now.limit.value) / Math.max(1, Math.abs(now.limit.value))
}

function unseenCells(finding: Finding, coverages: readonly ZoneCoverage[]): number {
  const states = coverages.filter(
    ({ zone, state }) => zone === finding.subject.id && (finding.state === undefined || finding.state === state),
  )
  if (finding.verdict === 'fail' && states.every(({ counts }) => counts.blind === 0)) return 1 // no field counts at all
  return states.reduce((sum, { counts }) => sum + counts.blind, 0)
}

/**
 * What a search makes small: the finding's shortfall as a share of what it was, and for each other finding that got worse something below a half. 0
 * where the grid has nothing against the change.
 *
 * @param before of the door as it is, by the grid like `after`
 */
export function disorder(finding: Finding, before: Judgement, after: Judgement): number {
  const was = shortfall(finding, before)
  const own = shortfall(finding, after) / (was > 0 && was < Infinity ? was : 1)
  return worsened(before, after, finding.id).reduce((sum, id) => sum + price(id, before, after), own)
}

/** More the farther a finding fell, so that the search is led back; never so much that another thing mended could not outweigh it. */
function price(id: string, before: Judgement, after: Judgement): number {
  const now = after.findings.find((finding) => finding.id === id)
  if (now === undefined) return 1 // a crash
  const earlier = before.findings.some((finding) => finding.id === id) ? shortfall(now, before) : 0
  const fell = Math.max(0, shortfall(now, after) - earlier)
  const share = now.rule === 'zone-covered' ? fell / 10 : fell // cells against a share of the limit
  return 0.1 + (0.4 * share) / (1 + share)
}

const RANK = { pass: 0, 'not-applicable': 0, undetermined: 1, fail: 2 } as const

/**
 * Ids of findings that a change makes worse: a verdict that fell, or a fail that grew. Findings on pockets are those of their zone again.
 *
 * @param apart the finding that is being mended
 */
export function worsened(before: Judgement, after: Judgement, apart: string): readonly string[] {
  if (after.crashes.length > before.crashes.length) return ['crash']
  const known = new Map(before.findings.map((finding) => [finding.id, finding]))
  return after.findings
    .filter(({ id, rule }) => id !== apart && rule !== 'blind-pocket')
    .filter((now) => {
      const was = known.get(now.id)
      // of a sensor that was added: nothing was there that could have got worse, unless it fails
      if (was === undefined) return now.verdict === 'fail'
      if (RANK[now.verdict] !== RANK[was.verdict]) return RANK[now.verdict] > RANK[was.verdict]
      if (isMended(was) && !isMended(now)) return true
      return now.verdict !== 'pass' && now.verdict !== 'not-applicable' && shortfall(was, after) > shortfall(was, before) * (1 + 1e-9)
    })
    .map(({ id }) => id)
}
