import { type Budget, spend } from './budget.ts'
import { refuse } from './json.ts'
import { type Conductance, groupsOf, unbalanced } from './kirchhoff.ts'
import { type Input, STATES, type State, type Switch, type Wired, type WiredSensor } from './wired.ts'
import type { WiringFault } from './wiring-faults.ts'

/** Voltages that the evidence states for one setting. */
export interface Stated {
  readonly closed: string
  readonly drawing: string
  readonly unit: readonly number[]
  readonly drawn: readonly number[]
  /** Under which joins Kirchhoff's law has been found to hold. */
  readonly checked: Set<string>
}

export type Belief = 'c' | 's' | 'f' | 'e'
export interface Outcome {
  /** As evidence writes them: of each sensor its state, or after `~` all those that it goes through again and again. */
  readonly states: string
  readonly beliefs: readonly Belief[]
}

export interface Situation {
  /** Which sensor somebody stands before; -1 where nobody stands. */
  readonly before: number
  readonly asking: boolean
}

const MOST_ROUNDS = 64
const MOST_TOGETHER = 256

/** A wiring with one fault, and the voltages that are stated for it. */
export interface FaultyWiring {
  readonly wired: Wired
  readonly fault: WiringFault
  readonly numberOf: ReadonlyMap<string, number>
  readonly stated: readonly Stated[]
  readonly groups: { readonly of: (a: number) => number }
  readonly budget: Budget
  readonly path: string
}

export function faultyWiring(
  wired: Wired,
  fault: WiringFault,
  given: Pick<FaultyWiring, 'numberOf' | 'stated' | 'budget' | 'path'>,
): FaultyWiring {
  const groups = groupsOf(given.numberOf.size)
  const { numberOf } = given
  for (const { a, b } of [...fault.joins.filter(({ siemens }) => siemens > 0), ...wired.switches])
    groups.join(at(numberOf, a), at(numberOf, b))
  return { wired, fault, groups, ...given }
}

/** What the wiring settles to in a situation, or all that it goes through where the states chase each other. */
export function settled(faulty: FaultyWiring, situation: Situation, supply: number): Outcome {
  const { inputs, sensors } = faulty.wired
  const beliefsIn = (states: readonly State[]) => {
    const volt = voltages(faulty, states, situation.asking, supply)
    return inputs.map((input) => beliefOf(input, volt))
  }
  const nothingSure: Outcome = { states: '~', beliefs: inputs.map(() => 'e') }
  const rounds = [sensors.map((_, i): State => (i === situation.before ? 'seen' : 'clear'))]
  for (;;) {
    const states = rounds[rounds.length - 1] as readonly State[]
    const next = nextStates(faulty, states, situation, supply)
    const again = rounds.findIndex((round) => round.every((state, i) => state === next[i]))
    if (again >= 0 && again === rounds.length - 1) return { states: initials(states), beliefs: beliefsIn(states) }
    if (again >= 0) {
      const mayBe = closedUnder((each) => nextStates(faulty, each, situation, supply), rounds.slice(again))
      if (mayBe === undefined) return nothingSure
      const [first = [], ...others] = together(mayBe).map(beliefsIn)
      const beliefs = first.map((belief, k): Belief => (others.every((other) => other[k] === belief) ? belief : 'e'))
      return { states: `~${mayBe.map(initials).join()}`, beliefs }
    }
    if (rounds.length === MOST_ROUNDS) return nothingSure
    rounds.push([...next])
  }
}

function initials(states: readonly State[]): string {
  return states.map((state) => state.charAt(0)).join('')
}

/** Of each sensor the states that it may be in; undefined where those of all sensors together are too many. */
function closedUnder(
  follow: (states: readonly State[]) => readonly State[],
  cycle: readonly (readonly State[])[],
): readonly (readonly State[])[] | undefined {
  const count = (cycle[0] ?? []).length
  let mayBe = Array.from({ length: count }, (_, i) => among((state) => cycle.some((round) => round[i] === state)))
  for (;;) {
    mayBe = mayBe.map((states) => among((state) => states.includes(state) || (state === 'warming-up' && states.includes('unpowered'))))
    if (mayBe.reduce((product, states) => product * states.length, 1) > MOST_TOGETHER) return undefined
    const followed = together(mayBe).map(follow)
    const wider = mayBe.map((states, i) => among((state) => states.includes(state) || followed.some((each) => each[i] === state)))
    if (wider.every((states, i) => states.length === mayBe[i]?.length)) return mayBe
    mayBe = wider
  }
}

const among = (is: (state: State) => boolean) => STATES.filter(is)

/** Every choice of one state for each sensor. */
function together(mayBe: readonly (readonly State[])[]): readonly (readonly State[])[] {
  const [first, ...rest] = mayBe
  return first === undefined ? [[]] : first.flatMap((state) => together(rest).map((others) => [state, ...others]))
}

function nextStates(faulty: FaultyWiring, states: readonly State[], { before, asking }: Situation, supply: number): readonly State[] {
  const { wired, fault } = faulty
  const volt = voltages(faulty, states, asking, supply)
  return wired.sensors.map((sensor, i): State => {
    const power = volt(sensor.plus, sensor.minus)
    if (power === undefined || power < sensor.least || power > sensor.largest) return 'unpowered'
    const free = states[i] === 'fault' ? 'fault' : i === before || isAsked(sensor, volt) ? 'seen' : 'clear'
    const state = fault.sensorStuck?.id === sensor.id ? fault.sensorStuck.state : free
    const isWatched = state === 'clear' || state === 'seen'
    return isWatched && failsPulses(faulty, i, states, asking, supply) ? 'fault' : state
  })
}

type Between = (plus: string, minus: string) => number | undefined

function isAsked({ test }: WiredSensor, volt: Between): boolean {
  if (test === undefined) return false
  const at = volt(test.plus, test.minus) ?? 0
  return test.above ? at >= test.limit : at <= test.limit
}

function failsPulses(faulty: FaultyWiring, i: number, states: readonly State[], asking: boolean, supply: number): boolean {
  return faulty.wired.switches.some((each) => {
    if (each.sensor !== i || each.pulsed === undefined) return false
    const { at: terminal, against, off } = each.pulsed
    return Math.abs(voltages(faulty, states, asking, supply, each)(terminal, against) ?? 0) > off
  })
}

function beliefOf({ plus, minus, bands }: Input, volt: Between): Belief {
  const at = volt(plus, minus)
  const band = at === undefined ? undefined : bands.find(({ from, to }) => from <= at && at <= to)
  return band === undefined ? 'e' : ({ clear: 'c', seen: 's', fault: 'f' } as const)[band.means]
}

/** @param interrupted a switch that a test pulse opens, unless it is stuck */
function voltages(faulty: FaultyWiring, states: readonly State[], asking: boolean, supply: number, interrupted?: Switch): Between {
  const { wired, fault, numberOf, groups, stated, path } = faulty
  const isClosed = wired.switches.map((each) => {
    if (each.sensor < 0) return fault.stuck(each) ?? wired.test?.closedWhileAsking === asking
    return fault.stuck(each) ?? (each !== interrupted && each.closedIn.includes(states[each.sensor] as State))
  })
  const closed = bits(isClosed)
  const drawing = bits(states.map((state) => state !== 'unpowered'))
  const found = stated.find((each) => each.closed === closed && each.drawing === drawing)
  if (found === undefined) return refuse('missing', `${path}/solutions`, `voltages with switches ${closed}, drawing ${drawing}`, 'none')
  spend(faulty.budget, 10, path)
  balanced(faulty, found, isClosed)
  return (plus, minus) => {
    const [p, m] = [at(numberOf, plus), at(numberOf, minus)]
    if (groups.of(p) !== groups.of(m)) return undefined
    const { unit, drawn } = found
    return supply * ((unit[p] as number) - (unit[m] as number)) + ((drawn[p] as number) - (drawn[m] as number))
  }
}

/** Refuses voltages that are not those of the setting. */
function balanced({ wired, fault, numberOf, groups, budget, path }: FaultyWiring, stated: Stated, isClosed: readonly boolean[]): void {
  if (stated.checked.has(fault.joinsAs)) return
  const siemensOf = (each: Switch, i: number) => (isClosed[i] ? each.closed : each.open)
  const joins: Conductance[] = [
    ...fault.joins.filter(({ siemens }) => siemens > 0),
    ...wired.switches.map((each, i) => ({ a: each.a, b: each.b, siemens: siemensOf(each, i) })),
  ].map(({ a, b, siemens }) => ({ a: at(numberOf, a), b: at(numberOf, b), siemens }))
  spend(budget, 2 * joins.length, path)
  const source = fault.joins.filter(({ part }) => part === 'supply').map(({ a, b, siemens }) => ({ from: a, into: b, ampere: siemens }))
  const draws = wired.sensors
    .filter(({ plus, minus }, i) => stated.drawing[i] === '1' && groups.of(at(numberOf, plus)) === groups.of(at(numberOf, minus)))
    .map((sensor) => ({ from: sensor.plus, into: sensor.minus, ampere: sensor.draws }))
  for (const [name, currents] of [
    ['unit', source],
    ['drawn', draws],
  ] as const) {
    const driven = new Array<number>(numberOf.size).fill(0)
    const amounts = new Array<number>(numberOf.size).fill(0)
    for (const { from, into, ampere } of currents)
      for (const [terminal, sign] of [
        [at(numberOf, from), -1],
        [at(numberOf, into), 1],
      ] as const) {
        driven[terminal] = (driven[terminal] as number) + sign * ampere
        amounts[terminal] = (amounts[terminal] as number) + ampere
      }
    const wrong = unbalanced(joins, stated[name], driven, amounts)
    if (wrong < 0) continue
    const terminal = [...numberOf.keys()][wrong]
    refuse('kirchhoff', `${path}/solutions`, `currents that balance at and about ${terminal} (${name})`, 'voltages at which they do not')
  }
  stated.checked.add(fault.joinsAs)
}

function bits(is: readonly boolean[]): string {
  return is.map((each) => (each ? '1' : '0')).join('')
}

function at(numberOf: ReadonlyMap<string, number>, terminal: string): number {
  return numberOf.get(terminal) as number
}
