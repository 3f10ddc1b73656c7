import { blindByPosture, blindOutlines, blindRegions } from '../coverage/blind-outline.ts'
import { exactTrees, questionsOf } from '../coverage/exact-trees.ts'
import { gridCoverage } from '../coverage/grid-coverage.ts'
import { coverageMaps } from '../coverage/maps.ts'
import { openRegion } from '../coverage/open-region.ts'
import { sightsOnce } from '../coverage/scene.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { Crash, Finding, Judgement, Verdict, ZoneCoverage } from '../model/finding.ts'
import type { Zone } from '../model/zone.ts'
import { editionOf } from '../values/editions.ts'
import type { Context, Rule } from './rule.ts'
import { RULES } from './rules.ts'
import { settle } from './settle.ts'

export type Depth = 'grid' | 'exact'

export interface JudgeOptions {
  /** Called after each of `of` steps: the rules, and each zone in each state. */
  readonly onProgress?: (done: number, of: number) => void
  /**
   * `exact` if left out: every placement, over all tolerances. `grid`: only what the grid says, without causes of pockets, for an answer
   * within a frame; its findings on coverage are provisional, and none of them passes.
   */
  readonly depth?: Depth
}

/**
 * Judges a door by every rule. Always answers: what is missing is a finding, and a rule that throws is a crash beside the findings.
 * Findings come worst first, then in the order of the rules, then by id.
 */
export function judge(door: Door, { onProgress, depth = 'exact' }: JudgeOptions = {}): Judgement {
  const { edition, known } = editionOf(door.edition)
  const pairs = door.zones.flatMap((zone) => door.states.map((state) => ({ zone, state })))
  const of = RULES.length + pairs.length
  let done = 0
  const step = () => onProgress?.(++done, of)
  const sightOf = sightsOnce(door)
  const maps = once((zone, state) => coverageMaps(door, zone, state, undefined, sightOf))
  const coverage = once((zone, state) => {
    try {
      return coverageOf(door, zone, state, depth, maps)
    } finally {
      step()
    }
  })
  const context: Context = { door, values: edition.values, coverage, maps, sightOf }
  const crashes: Crash[] = []
  const findings = RULES.flatMap((rule) => {
    const found = guarded(rule.id, crashes, () => judgeBy(rule, context, { id: edition.id, known }))
    step()
    return found ?? []
  })
  const answers = pairs.flatMap(({ zone, state }) => guarded('coverage', crashes, () => coverage(zone, state)) ?? [])
  return { door: door.name, edition: edition.id, findings: sorted(findings), crashes, coverages: answers }
}

function judgeBy(rule: Rule, context: Context, edition: { readonly id: string; readonly known: boolean }): readonly Finding[] {
  return rule.judge(context).map((draft) => settle(draft, rule, context.door, edition))
}

/** The one catch around whatever a rule does. */
function guarded<T>(rule: string, crashes: Crash[], compute: () => T): T | undefined {
  try {
    return compute()
  } catch (problem) {
    crashes.push({ rule, message: problem instanceof Error ? problem.message : String(problem) })
    return undefined
  }
}

/** Computes what belongs to a zone in a state when it is first asked for, and throws again what the first try threw. */
function once<T>(compute: (zone: Zone, state: DoorState) => T): (zone: Zone, state: DoorState) => T {
  const outcomes = new Map<string, { readonly answer: T } | { readonly problem: unknown }>()
  const tried = (zone: Zone, state: DoorState) => {
    try {
      return { answer: compute(zone, state) }
    } catch (problem) {
      return { problem }
    }
  }
  return (zone, state) => {
    const key = `${zone.id}@${state.id}`
    const outcome = outcomes.get(key) ?? tried(zone, state)
    outcomes.set(key, outcome)
    if ('problem' in outcome) throw outcome.problem
    return outcome.answer
  }
}

function coverageOf(door: Door, zone: Zone, state: DoorState, depth: Depth, mapsOf: Context['maps']): ZoneCoverage {
  const maps = mapsOf(zone, state)
  if (depth === 'grid') return gridCoverage(door, zone, state, { causes: false, maps })
  const exact = exactly(door, zone, state)
  const regions = exact?.isComplete ? exact.regions : undefined
  return { ...gridCoverage(door, zone, state, { regions, maps }), ...(exact ? { exact } : {}) }
}

/** The exact answer beside that of the grid, for zones in which bodies have to be seen. */
function exactly(door: Door, zone: Zone, state: DoorState): ZoneCoverage['exact'] {
  if (zone.purpose === 'must-not-see') return undefined
  const budget = { left: questionsOf(door) }
  const trees = exactTrees(door, zone, state, undefined, undefined, budget)
  const regions = blindRegions(trees)
  const asWritten = openRegion(trees, regions)
  const found = { asWritten, isComplete: budget.left >= 0, regions, postures: blindByPosture(trees) }
  if (door.tolerances === undefined) return found
  const tolerant = exactTrees(door, zone, state, door.tolerances)
  return { ...found, overTolerances: openRegion(tolerant, blindOutlines(tolerant)) }
}

const VERDICTS: readonly Verdict[] = ['fail', 'undetermined', 'pass', 'not-applicable']

function sorted(findings: readonly Finding[]): readonly Finding[] {
  const ranks = new Map(RULES.map(({ id }, i) => [id, i]))
  const rank = (finding: Finding) => VERDICTS.indexOf(finding.verdict) * RULES.length + (ranks.get(finding.rule) ?? 0)
  return [...findings].sort((a, b) => rank(a) - rank(b) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0))
}
