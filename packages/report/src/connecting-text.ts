import {
  comparedScores,
  type Diagnosis,
  type Fault,
  faultFacts,
  type Proposal,
  type SecondFaults,
  type Standing,
  type Synthesis,
  type WiringScore,
} from '@sillsight/engine'
import type { Language } from './wording/language.ts'

type Scored = { readonly score: WiringScore; readonly hidden: readonly Fault[] }

/** So many faults of a list are named. */
const MOST_NAMED = 12

/** Connections that were found, best first, and the wiring that there is. @param given undefined where it is not in order without a fault */
export function connectionsText(
  { proposals, tried, judged, left }: Synthesis,
  given: Scored | undefined,
  language: Language,
): readonly string[] {
  const { connecting } = language
  const [best] = proposals
  const isBetter = best !== undefined && (given === undefined || comparedScores(best.score, given.score) < 0)
  return [
    ...proposals.flatMap((proposal, i) => [connecting.proposal(i + 1), ...proposalLines(proposal, language), '']),
    ...(best ? [] : [connecting.none, '']),
    connecting.asWired,
    ...(given ? scoredLines(given, language) : [connecting.notInOrder]),
    isBetter ? connecting.better : connecting.asGood,
    '',
    connecting.searched(tried, judged),
    ...(left > 0 ? [connecting.left(left)] : []),
  ]
}

function proposalLines(proposal: Proposal, language: Language): readonly string[] {
  const { laid, tested } = connectionWords(proposal, language)
  return [...scoredLines(proposal, language), ...laid, tested]
}

/** A connection that was found, in words: what its faults do, its cores, links and joints, and whether the control tests. */
export function connectionWords(
  { score, wiring }: Proposal,
  language: Language,
): { readonly counts: string; readonly laid: readonly string[]; readonly tested: string } {
  const { connecting, listed } = language
  return {
    counts: scoreWords(score, language),
    laid: [
      ...wiring.cables.flatMap(({ length_mm, cores }) =>
        cores.map(({ id, from, to }) => (length_mm > 0 ? connecting.core(id, from, to) : connecting.link(from, to))),
      ),
      ...(wiring.joints.length > 0 ? [connecting.joint(listed(wiring.joints))] : []),
    ],
    tested: wiring.control.test ? connecting.tested : connecting.untested,
  }
}

/** What the faults of a connection do, counted. */
export function scoreWords(
  { hiddenAndDangerous, foundByTest, nuisance, opensUnasked, cores }: WiringScore,
  { connecting }: Language,
): string {
  return connecting.counts(hiddenAndDangerous, foundByTest, nuisance, opensUnasked, cores)
}

function scoredLines({ score, hidden }: Scored, language: Language): readonly string[] {
  const { connecting } = language
  return [scoreWords(score, language), ...(hidden.length > 0 ? [connecting.hidden, ...named(hidden, language)] : [])]
}

function named(faults: readonly (Fault | undefined)[], language: Language): readonly string[] {
  const { connecting } = language
  const rest = faults.length - MOST_NAMED
  return [
    ...faults.slice(0, MOST_NAMED).map((fault) => connecting.hiddenFault(faultName(fault, language))),
    ...(rest > 0 ? [connecting.more(rest)] : []),
  ]
}

/** What is wrong, or that nothing is. */
export function faultName(fault: Fault | undefined, { connecting, wiring }: Language): string {
  return (fault && wiring.fault(faultFacts(fault))) ?? connecting.nothingWrong
}

/** Pairs of faults of which the first goes unnoticed and which hide a body together. */
export function secondFaultsText({ pairs, judged, left }: SecondFaults, language: Language): readonly string[] {
  const { connecting } = language
  const rest = pairs.length - MOST_NAMED
  return [
    connecting.second(pairs.length, judged),
    ...pairs.slice(0, MOST_NAMED).map(({ first, second }) => connecting.pair(faultName(first, language), faultName(second, language))),
    ...(rest > 0 ? [connecting.more(rest)] : []),
    ...(left > 0 ? [connecting.pairsLeft(left)] : []),
  ]
}

/** The faults that explain what was measured, and what to measure next. @param readings how many there are */
export function diagnosisText({ suspects, next }: Diagnosis, readings: number, language: Language): readonly string[] {
  const { connecting, decimal } = language
  const most = suspects[0]?.explains ?? 0
  const best = suspects.filter(({ explains }) => explains === most).map(({ fault }) => fault)
  const bits = next?.bits.toFixed(1).replace('.', decimal) ?? ''
  return [
    most === readings ? connecting.explainsAll(readings) : connecting.explainsMost(most, readings),
    ...named(best, language),
    next ? connecting.next(next.plus, next.minus, standingWords(next, language), bits) : connecting.noNext,
  ]
}

/** How a door stands while somebody measures. */
export function standingWords({ seenBy, asking }: Standing, { connecting, listed }: Language): string {
  if (asking) return connecting.asking
  return seenBy.length > 0 ? connecting.before(listed(seenBy)) : connecting.nobody
}
