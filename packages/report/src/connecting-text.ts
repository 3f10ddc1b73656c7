import {
  type ByHand,
  comparedScores,
  type Diagnosis,
  type Fault,
  faultFacts,
  type Proposal,
  type SecondFaults,
  type Standing,
  type Synthesis,
  type Wiring,
  type WiringScore,
} from '@sillsight/engine'
import { figure } from './wording/figures.ts'
import type { Language, Reader } from './wording/language.ts'

type Scored = { readonly score: WiringScore; readonly hidden: readonly Fault[] }

/** So many faults of a list are named. */
const MOST_NAMED = 12

/** Connections that were found, best first, and the wiring that there is. @param given undefined where it is not in order without a fault */
export function connectionsText(
  { proposals, tried, judged, left }: Synthesis,
  given: Given | undefined,
  byHand: (wiring: Wiring, hidden: readonly Fault[]) => ByHand,
  reader: Reader,
): readonly string[] {
  const { language } = reader
  const { connecting } = language
  const test = (wiring: Wiring, hidden: readonly Fault[]) => (hidden.length > 0 ? [byHandWords(byHand(wiring, hidden), reader)] : [])
  const [best] = proposals
  const isBetter = best !== undefined && (given === undefined || comparedScores(best.score, given.score) < 0)
  return [
    ...proposals.flatMap((proposal, i) => [
      connecting.proposal(i + 1),
      ...proposalLines(proposal, test(proposal.wiring, proposal.hidden), language),
      '',
    ]),
    ...(best ? [] : [connecting.none, '']),
    connecting.asWired,
    ...(given ? scoredLines(given, test(given.wiring, given.hidden), language) : [connecting.notInOrder]),
    isBetter ? connecting.better : connecting.asGood,
    '',
    connecting.searched(tried, judged),
    ...(left > 0 ? [connecting.left(left)] : []),
  ]
}

interface Given extends Scored {
  readonly wiring: Wiring
}

/** How often to test by hand for what stays hidden, or what is missing to say so. */
function byHandWords({ longest_d, mostHidden_percent, missing, isRemembered }: ByHand, reader: Reader): string {
  const { connecting } = reader.language
  if (longest_d === undefined || mostHidden_percent === undefined) return connecting.byHandMissing(connecting.missingByHand(missing))
  const [days, percent] = [
    figure({ value: longest_d, unit: 'd' }, reader, 'smaller-is-worse'),
    figure({ value: mostHidden_percent, unit: 'percent' }, reader),
  ]
  return connecting.byHand(connecting.oftenByHand(days, percent, isRemembered))
}

function proposalLines(proposal: Proposal, byHand: readonly string[], language: Language): readonly string[] {
  const { connecting, listed } = language
  const { wiring, turned } = proposal
  // behind a resistor in a sensor's housing there is one too, which the resistor names
  const joints = wiring.joints.filter((joint) => joint.startsWith('joint.'))
  return [
    ...scoredLines(proposal, byHand, language),
    ...(turned.length > 0 ? [connecting.set(listed(turned))] : []),
    ...wiring.cables.flatMap(({ length_mm, cores }) =>
      cores.map(({ id, from, to }) => (length_mm > 0 ? connecting.core(id, from, to) : connecting.link(from, to))),
    ),
    ...wiring.resistors.map(({ id, ohm, from, to }) => connecting.resistor(id, String(ohm), from, to)),
    ...(joints.length > 0 ? [connecting.joint(listed(joints))] : []),
    wiring.control.test ? connecting.tested : connecting.untested,
  ]
}

function scoredLines({ score, hidden }: Scored, byHand: readonly string[], language: Language): readonly string[] {
  const { connecting } = language
  const { hiddenAndDangerous, foundByTest, nuisance, opensUnasked, cores } = score
  return [
    connecting.counts(hiddenAndDangerous, foundByTest, nuisance, opensUnasked, cores),
    ...(hidden.length > 0 ? [connecting.hidden, ...named(hidden, language), ...byHand] : []),
  ]
}

function named(faults: readonly (Fault | undefined)[], language: Language): readonly string[] {
  const { connecting } = language
  const rest = faults.length - MOST_NAMED
  return [
    ...faults.slice(0, MOST_NAMED).map((fault) => connecting.hiddenFault(faultName(fault, language))),
    ...(rest > 0 ? [connecting.more(rest)] : []),
  ]
}

function faultName(fault: Fault | undefined, { connecting, wiring }: Language): string {
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

function standingWords({ seenBy, asking }: Standing, { connecting, listed }: Language): string {
  if (asking) return connecting.asking
  return seenBy.length > 0 ? connecting.before(listed(seenBy)) : connecting.nobody
}
