import { type Budget, spend } from './budget.ts'
import { faultyWiring, type Outcome, type Situation, type Stated, settled } from './fault-course.ts'
import { EFFECTS, type Effect, effectOf, type Said } from './fault-effect.ts'
import { type Json, listAt, numberAt, objectAt, oneOf, own, refuse, textAt, wholeAt } from './json.ts'
import { type Wired, wiredOf } from './wired.ts'
import { faultsOf, textOfFault, type WiringFault } from './wiring-faults.ts'

/** What is shown of the wiring: that these are all single faults, and what each does. */
export interface ProvedWiring {
  readonly faults: number
  readonly effects: Readonly<Record<Effect['effect'], number>>
}

const MOST_FAULTS = 20_000
const MOST_SOLUTIONS = 100_000
const MOST_SETTINGS = 16_384
const SOLUTION_NAMES = ['closed', 'drawing', 'unit', 'drawn']
const FAULT_NAMES = ['fault', 'solutions', 'says', 'effect', 'sensors', 'within_s', 'isHidden']

/** Re-checks the part `wiring` of evidence: docs/evidence.md, Wiring. Throws `Refusal`. */
export function wiringOf(value: unknown, doorText: string, budget: Budget): ProvedWiring {
  const given = namedAt(value, 'wiring', ['terminals', 'solutions', 'faults', 'findings'])
  const wired = wiredOf(doorText)
  const numberOf = terminalsOf(own(given, 'terminals'), wired)
  const solutions = solutionsOf(own(given, 'solutions'), wired, numberOf.size, budget)
  const left = new Map(faultsOf(wired))
  const claims = listAt(own(given, 'faults'), 'wiring/faults', { most: MOST_FAULTS }).map((each, i) => {
    const path = `wiring/faults/${i}`
    const claim = namedAt(each, path, FAULT_NAMES)
    const named = objectAt(own(claim, 'fault'), `${path}/fault`)
    const text = textOfFault(named)
    const fault = left.get(text) ?? refuse('unknown-fault', `${path}/fault`, 'a single fault of this wiring, once', text)
    left.delete(text)
    const stated = listAt(own(claim, 'solutions'), `${path}/solutions`, { most: MOST_SETTINGS }).map(
      (index, k) => solutions[wholeAt(index, `${path}/solutions/${k}`, 0, solutions.length - 1)] as Stated,
    )
    const faulty = faultyWiring(wired, fault, { numberOf, stated: onceEach(stated, path), budget, path })
    spend(budget, 100 + wired.switches.length, path)
    const outcomes = fault.supplies.map((supply) => situationsOf(wired).map((situation) => settled(faulty, situation, supply)))
    const said = outcomes.map((all) => all.map(({ states, beliefs }) => `${states}:${beliefs.join('')}`))
    same(JSON.stringify(own(claim, 'says')), JSON.stringify(said), `${path}/says`)
    return effectAt(claim, path, wired, fault, outcomes)
  })
  const [missing] = left.keys()
  if (missing !== undefined) refuse('missing', 'wiring/faults', `every single fault, ${missing} too`, `${claims.length} faults`)
  countsAgree(own(given, 'findings'), wired, claims)
  const countOf = (effect: Effect['effect']) => claims.filter((claim) => claim.effect === effect).length
  return {
    faults: claims.length,
    effects: Object.fromEntries(EFFECTS.map((effect) => [effect, countOf(effect)])) as ProvedWiring['effects'],
  }
}

function namedAt(value: unknown, path: string, names: readonly string[]): Json {
  const object = objectAt(value, path)
  const odd = Object.keys(object).find((name) => !names.includes(name))
  return odd === undefined ? object : refuse('unknown', `${path}/${odd}`, names.join(', '), odd)
}

function terminalsOf(value: unknown, wired: Wired): ReadonlyMap<string, number> {
  const names = listAt(value, 'wiring/terminals', { least: wired.terminals.length, most: wired.terminals.length })
  const numberOf = new Map(names.map((name, i) => [textAt(name, `wiring/terminals/${i}`), i]))
  for (const terminal of wired.terminals)
    if (!numberOf.has(terminal)) refuse('missing', 'wiring/terminals', `every terminal, ${terminal} too`, 'others')
  return numberOf
}

function solutionsOf(value: unknown, wired: Wired, terminals: number, budget: Budget): readonly Stated[] {
  return listAt(value, 'wiring/solutions', { most: MOST_SOLUTIONS }).map((each, i) => {
    const path = `wiring/solutions/${i}`
    const solution = namedAt(each, path, SOLUTION_NAMES)
    spend(budget, terminals, path)
    const bits = (name: string, count: number) => {
      const text = textAt(own(solution, name), `${path}/${name}`, 1000)
      return text.length === count && /^[01]*$/.test(text) ? text : refuse('wrong-type', `${path}/${name}`, `${count} times 0 or 1`, text)
    }
    const volts = (name: string) =>
      listAt(own(solution, name), `${path}/${name}`, { least: terminals, most: terminals }).map((volt, k) =>
        numberAt(volt, `${path}/${name}/${k}`, -1e15, 1e15),
      )
    return {
      closed: bits('closed', wired.switches.length),
      drawing: bits('drawing', wired.sensors.length),
      unit: volts('unit'),
      drawn: volts('drawn'),
      checked: new Set<string>(),
    }
  })
}

function onceEach(stated: readonly Stated[], path: string): readonly Stated[] {
  const settings = stated.map(({ closed, drawing }) => `${closed} ${drawing}`)
  if (new Set(settings).size < settings.length) refuse('duplicate', `${path}/solutions`, 'each setting at most once', 'one of them twice')
  return stated
}

function situationsOf({ sensors, test }: Wired): readonly Situation[] {
  const present = [-1, ...sensors.keys()].map((before) => ({ before, asking: false }))
  return test ? [...present, { before: -1, asking: true }] : present
}

/** The effect that is claimed, which is the one that follows. */
function effectAt(claim: Json, path: string, wired: Wired, fault: WiringFault, outcomes: readonly (readonly Outcome[])[]): Effect {
  const found = effectOf(
    wired,
    fault,
    outcomes.map((all) => saidOf(wired, all)),
  )
  same(own(claim, 'effect'), found.effect, `${path}/effect`)
  same(JSON.stringify(own(claim, 'sensors')), JSON.stringify(found.sensors), `${path}/sensors`)
  same(own(claim, 'within_s'), found.within_s, `${path}/within_s`)
  same(own(claim, 'isHidden'), found.hidden, `${path}/isHidden`)
  return found
}

function saidOf({ sensors }: Wired, outcomes: readonly Outcome[]): Said {
  const [nobody, ...others] = outcomes
  return { nobody: nobody as Outcome, before: others.slice(0, sensors.length), asking: others[sensors.length] }
}

function same(got: unknown, expected: string | number | boolean | undefined, path: string): void {
  if (got !== expected) refuse('does-not-follow', path, String(expected), got)
}

function countsAgree(value: unknown, { sensors }: Wired, claims: readonly Effect[]): void {
  const there = new Set<string>()
  for (const [i, each] of listAt(value, 'wiring/findings', { most: 16 }).entries()) {
    const path = `wiring/findings/${i}`
    const given = namedAt(each, path, ['sensor', 'faults', 'hidden', 'found', 'nuisance'])
    const sensor = oneOf(
      own(given, 'sensor'),
      `${path}/sensor`,
      sensors.map(({ id }) => id),
    )
    if (there.has(sensor)) refuse('duplicate', path, 'one finding for each sensor', sensor)
    there.add(sensor)
    const ofSensor = (effect: Effect['effect']) =>
      claims.filter((claim) => claim.effect === effect && claim.sensors.includes(sensor)).length
    const counts = {
      faults: claims.length,
      hidden: ofSensor('hidden-and-dangerous'),
      found: ofSensor('found-by-test'),
      nuisance: claims.filter(({ effect }) => effect === 'keeps-from-closing' || effect === 'stops-the-door').length,
    }
    for (const [name, count] of Object.entries(counts)) same(own(given, name), count, `${path}/${name}`)
  }
}
