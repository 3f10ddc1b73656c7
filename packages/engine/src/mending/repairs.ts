import { judge } from '../judge/judge.ts'
import type { Door } from '../model/door.ts'
import type { Finding, Judgement } from '../model/finding.ts'
import { counterpart, isMended, worsened } from './compare.ts'
import { type RepairStep, repaired } from './repair.ts'
import { hopesFor, type Tried } from './search.ts'

/** A change after which every rule was judged again, exactly. */
export interface Repair {
  readonly steps: readonly RepairStep[]
  /** The finding as it then stands: in order, or in order but for what nobody has confirmed. */
  readonly then: Finding
  /** Ids of other findings that were not in order and then are. */
  readonly alsoMends: readonly string[]
}

/** A change that would have mended the finding by the grid, and is not offered. */
export interface Rejected {
  readonly steps: readonly RepairStep[]
  /** Ids of findings that it makes worse; none where the exact answer denied what the grid hoped for. */
  readonly worsens: readonly string[]
}

export interface Repairs {
  readonly finding: string
  /** Fewest steps, then the smallest, first. */
  readonly offered: readonly Repair[]
  readonly rejected: readonly Rejected[]
  /** Where nothing mends it: of the settings that make nothing worse the one that leaves least on the grid, and how much of what is missing, 0 to 1. It was not judged further. */
  readonly nearest: { readonly steps: readonly RepairStep[]; readonly left: number } | undefined
  readonly tried: Tried
}

const MOST_OFFERED = 4
const MOST_EXACT = 16

/**
 * Searches for changes that put one failing finding in order and make no other finding worse. All settings are whole grains (5 mm, half a degree),
 * so that what was judged is what can be set. What the grid hopes for is offered only when `judge` has answered exactly.
 *
 * @param before the exact judgement of the door as it is
 * @returns a generator that yields after each door that was judged, so that a caller can show `tried` and stop; its last value is the answer
 * @throws where the judgement has no such finding, or it is of a pocket: that is mended with its zone
 */
export function* repairs(door: Door, before: Judgement, id: string, tried: Tried = { grid: 0, exact: 0 }): Generator<undefined, Repairs> {
  const finding = before.findings.find((each) => each.id === id)
  if (finding === undefined) throw new Error(`the judgement must have the finding, got ${id}`)
  if (finding.rule === 'blind-pocket') throw new Error(`a pocket is mended with its zone, got ${id}`)
  const { found, nearest } = yield* hopesFor(door, before, finding, tried)
  const offered: Repair[] = []
  const rejected: Rejected[] = []
  for (const { variants } of found) {
    if (variants.some((steps) => offered.some((repair) => addsTheSame(repair.steps, steps)))) continue
    let last: Rejected | undefined
    for (const steps of variants) {
      if (offered.length >= MOST_OFFERED || tried.exact >= MOST_EXACT) break
      tried.exact++
      const told = settled(door, before, finding, steps)
      yield
      last = 'then' in told ? undefined : told
      if ('then' in told) offered.push(told)
      // more of the same knob helps where the grid saw too little, not where something else suffers
      if ('then' in told || told.worsens.length > 0) break
    }
    if (last !== undefined) rejected.push(last)
  }
  return { finding: id, offered, rejected, nearest, tried }
}

/** One way of setting a further sensor is enough: the others are no other repair. */
function addsTheSame([a]: readonly RepairStep[], [b]: readonly RepairStep[]): boolean {
  return (
    a?.kind === 'add-sensor' && b?.kind === 'add-sensor' && a.like === b.like && a.pose.x_mm === b.pose.x_mm && a.pose.y_mm === b.pose.y_mm
  )
}

function settled(door: Door, before: Judgement, finding: Finding, steps: readonly RepairStep[]): Repair | Rejected {
  const after = judge(repaired(door, steps))
  const then = counterpart(finding, after)
  const worsens = worsened(before, after, finding.id)
  if (worsens.length > 0 || then === undefined || !isMended(then)) return { steps, worsens }
  const alsoMends = before.findings
    .filter((was) => was.id !== finding.id && was.verdict === 'fail')
    .filter((was) => {
      const now = counterpart(was, after)
      return now === undefined ? was.rule === 'blind-pocket' : isMended(now)
    })
    .map(({ id }) => id)
  return { steps, then, alsoMends }
}
