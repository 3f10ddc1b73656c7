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

/** What a change leaves of a finding's shortfall, as a share of what it was, and what it costs elsewhere: 0 and 0 where the grid has nothing against it. */
export interface Disorder {
  readonly left: number
  /** Above 0 as soon as any other finding gets worse. */
  readonly price: number
}

/** @param before of the door as it is, by the grid like `after` */
export function disorder(finding: Finding, before: Judgement, after: Judgement): Disorder {
  const was = shortfall(finding, before)
  const left = shortfall(finding, after) / (was > 0 && was < Infinity ? was : 1)
  return { left, price: worsened(before, after, finding.id).reduce((sum, id) => sum + priceOf(id, before, after), 0) }
}

/** More the farther a finding fell, so that the search is led back; never so much that another thing mended could not outweigh it. */
function priceOf(id: string, before: Judgement, after: Judgement): number {
  const now = after.findings.find((finding) => finding.id === id)
  if (now === undefined) return 1 // a crash, or a finding that is gone
  const earlier = before.findings.some((finding) => finding.id === id) ? shortfall(now, before) : 0
  const fell = Math.max(0, shortfall(now, after) - earlier)
  const share = now.rule === 'zone-covered' ? fell / 10 : fell // cells against a share of the limit
  return 0.1 + (0.4 * share) / (1 + share)
}

const RANK = { pass: 0, undetermined: 1, fail: 2 } as const

/**
 * Ids of findings that a change makes worse: a verdict that fell, a fail that grew, a question that is no longer asked. Findings on pockets come and
 * go, so that they are those of their zone. What an added sensor brings counts where it fails.
 *
 * @param apart the finding that is being mended
 */
export function worsened(before: Judgement, after: Judgement, apart: string): readonly string[] {
  if (after.crashes.length > before.crashes.length) return ['crash']
  const counts = ({ id, rule }: Finding) => id !== apart && rule !== 'blind-pocket'
  const known = new Set(before.findings.map(({ id }) => id))
  const brought = after.findings.filter((now) => counts(now) && !known.has(now.id) && now.verdict === 'fail')
  const fallen = before.findings.filter((was) => counts(was) && isWorse(was, before, after))
  return [...fallen, ...brought].map(({ id }) => id)
}

function isWorse(was: Finding, before: Judgement, after: Judgement): boolean {
  const now = counterpart(was, after)
  if (now === undefined) return true
  if (was.verdict === 'not-applicable' || now.verdict === 'not-applicable') return now.verdict !== was.verdict && now.verdict !== 'pass'
  if (RANK[now.verdict] !== RANK[was.verdict]) return RANK[now.verdict] > RANK[was.verdict]
  if (isMended(was) !== isMended(now)) return isMended(was)
  if (now.verdict === 'pass') return false
  return shortfall(was, after) > shortfall(was, before) * (1 + 1e-9) || largestOpen(now) > largestOpen(was) * (1 + 1e-9)
}

/** The diameter that a zone is held against: a pocket may grow between the cells of the grid. */
function largestOpen(finding: Finding): number {
  return finding.rule === 'zone-covered' && finding.verdict !== 'not-applicable' ? (finding.measured?.value ?? 0) : 0
}
