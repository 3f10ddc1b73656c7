import type { Finding } from '../model/finding.ts'
import { SENSOR_STATES, type Wiring } from '../model/wiring.ts'
import { beliefsOf, effectsInTurn, type JudgedEffect } from './fault-effects.ts'
import { type Fault, shortedBy, singleFaults } from './faults.ts'
import { type FaultyNetwork, type Situation, settingOf, settle, type WiringNetwork, wiringNetwork, withFaults } from './network.ts'

/** Voltages of all terminals in one setting of switches and sensors: V for each volt of the supply, and V by the currents that are drawn. */
interface SolutionEvidence {
  readonly closed: string
  readonly drawing: string
  readonly unit: readonly number[]
  readonly drawn: readonly number[]
}

interface FaultEvidence extends JudgedEffect {
  readonly fault: Fault
  readonly solutions: readonly number[]
  readonly says: readonly (readonly string[])[]
}

interface CountEvidence {
  readonly sensor: string
  readonly faults: number
  readonly hidden: number
  readonly found: number
  readonly nuisance: number
}

/** The part `wiring` of the evidence: docs/evidence.md, Wiring. */
export interface WiringEvidence {
  readonly terminals: readonly string[]
  readonly solutions: readonly SolutionEvidence[]
  readonly faults: readonly FaultEvidence[]
  readonly findings: readonly CountEvidence[]
}

/** Numbers that voltages may be; a file of so many is within what a verifier reads. */
const MOST_VOLTAGES = 1_500_000

/**
 * Every single fault with all that its effect follows from.
 *
 * @param findings of the judgement: the counts of `single-fault` are handed on as they stand there
 * @returns nothing for a wiring whose voltages are too many
 */
export function wiringEvidence(wiring: Wiring, findings: readonly Finding[]): WiringEvidence | undefined {
  const network = wiringNetwork(wiring)
  const solutions: SolutionEvidence[] = []
  const known = new Map<string, number>()
  const faults: FaultEvidence[] = []
  for (const { fault, ...judged } of effectsInTurn(network, singleFaults(wiring))) {
    const faulty = withFaults(network, [fault])
    // what is said comes first: it solves for every setting that the effect rests on
    const says = saidIn(faulty, fault)
    const joins = joinsOf(network, fault)
    const used = faulty.solutions.map((solution) => {
      const setting = settingOf(faulty, solution)
      const key = `${joins} ${setting.closed} ${setting.drawing}`
      const at = known.get(key) ?? solutions.length
      known.set(key, at)
      if (at === solutions.length) solutions.push({ ...setting, unit: column(solution.volt, 0), drawn: column(solution.volt, 1) })
      return at
    })
    if (solutions.length * 2 * network.plan.nodes > MOST_VOLTAGES) return undefined
    faults.push({ fault, solutions: [...new Set(used)], says, ...judged })
  }
  return { terminals: [...network.nodes.keys()], solutions, faults, findings: findings.flatMap(countsOf) }
}

/** Which faults leave the same joins: shorts between the same terminals, and all that change only switches, states or the supply. */
function joinsOf({ wiring }: WiringNetwork, fault: Fault): string {
  const short = shortedBy(wiring, fault)
  if (short) return short[0] === short[1] ? 'all' : JSON.stringify([...short].sort())
  switch (fault.kind) {
    case 'supply-reversed':
    case 'supply-low':
    case 'switch-stuck':
    case 'output-stuck':
    case 'sensor-stuck':
    case 'test-stuck':
      return 'all'
    default:
      return JSON.stringify(fault)
  }
}

function saidIn(faulty: FaultyNetwork, fault: Fault): readonly (readonly string[])[] {
  const { supply, sensors, control } = faulty.wiring
  const { least_V, largest_V } = supply
  const supplies = fault.kind === 'supply-low' || least_V === largest_V ? [least_V] : [least_V, largest_V]
  const situations: Omit<Situation, 'supply_V'>[] = [
    { seenBy: new Set(), asking: false },
    ...sensors.map(({ id }) => ({ seenBy: new Set([id]), asking: false })),
    ...(control.test ? [{ seenBy: new Set<string>(), asking: true }] : []),
  ]
  return supplies.map((supply_V) => situations.map((situation) => said(faulty, { ...situation, supply_V })))
}

/** Initials of the sensors' states and of what the inputs say; after `~` all states of each sensor where they chase each other. */
function said(faulty: FaultyNetwork, situation: Situation): string {
  const settling = settle(faulty, situation)
  const says = initials(beliefsOf(faulty, settling))
  if (settling.isStable) return `${initials(settling.states)}:${says}`
  const together = settling.chased.map(({ states }) => states)
  const mayBe =
    together.length === 0 ? [] : faulty.sensors.map((_, i) => SENSOR_STATES.filter((state) => together.some((each) => each[i] === state)))
  return `~${mayBe.map(initials).join()}:${says}`
}

const initials = (words: readonly string[]) => words.map((word) => word[0]).join('')

function column(volt: Float64Array, at: 0 | 1): readonly number[] {
  return Array.from({ length: volt.length / 2 }, (_, node) => volt[2 * node + at] as number)
}

function countsOf({ rule, subject, facts }: Finding): readonly CountEvidence[] {
  const { faults, hidden, found, nuisance } = facts
  if (rule !== 'single-fault' || typeof faults !== 'number') return []
  return [{ sensor: subject.id, faults, hidden: Number(hidden), found: Number(found), nuisance: Number(nuisance) }]
}
