import { judge } from '../judge/judge.ts'
import type { Door } from '../model/door.ts'
import type { Finding, Judgement } from '../model/finding.ts'
import { type Disorder, disorder } from './compare.ts'
import { type Knob, knobsOf, wholeSteps } from './knobs.ts'
import { type RepairStep, repaired } from './repair.ts'

/** Settings that the grid has nothing against: the smallest, and a little more of the last knob, for what the grid did not see. */
export interface Hope {
  readonly variants: readonly (readonly RepairStep[])[]
  /** How much is turned, as a share of what a hand would turn; 1 for a step that is no knob. */
  readonly effort: number
}

export interface Hopes {
  readonly found: readonly Hope[]
  /** Of what makes nothing else worse, what leaves least, and how much of the shortfall, 0 to 1. */
  readonly nearest: { readonly steps: readonly RepairStep[]; readonly left: number } | undefined
}

/** Counts the doors that were judged. */
export interface Tried {
  grid: number
  exact: number
}

interface Setting {
  readonly steps: readonly RepairStep[]
  readonly effort: number
  readonly disorder: Disorder
}

/** What the search makes small. */
const scoreOf = ({ left, price }: Disorder) => left + price

interface Search {
  readonly door: Door
  /** By the grid. */
  readonly before: Judgement
  /** Exact, with the causes of its pockets. */
  readonly asIs: Judgement
  readonly finding: Finding
  readonly tried: Tried
}

const MOST_STEPS = 3
const STARTS = 3 // settings that a further step goes on from
const GROWTH = 2 // each try of a knob turns it so much farther
const UNMOVED = 5 // tries, each twice as far as the one before
const FARTHER = [0, 1, 2, 3, 5, 8] // grains beyond the smallest setting that the exact judge is asked about
const ENOUGH = 8 // hopes: the exact judge will not be asked about more

/**
 * Turns each knob both ways until the grid has nothing against the change; where one is not enough, goes on from the settings that leave least,
 * up to three steps. Yields after each door that was judged.
 */
export function* hopesFor(door: Door, asIs: Judgement, finding: Finding, tried: Tried): Generator<undefined, Hopes> {
  const search: Search = { door, before: judge(door, { depth: 'grid' }), asIs, finding, tried }
  let starts: readonly Setting[] = [{ steps: [], effort: 0, disorder: disorderOf(search, []) }]
  let nearest = starts[0] as Setting
  for (let count = 1; count <= MOST_STEPS; count++) {
    const found: Hope[] = []
    const better: Setting[] = []
    for (const start of starts) yield* oneStepFurther(search, start, found, better)
    better.sort((a, b) => scoreOf(a.disorder) - scoreOf(b.disorder) || a.effort - b.effort)
    for (const setting of better) if (setting.disorder.price === 0 && setting.disorder.left < nearest.disorder.left) nearest = setting
    if (found.length > 0) return { found: found.sort((a, b) => a.effort - b.effort).slice(0, ENOUGH), nearest: undefined }
    starts = better.slice(0, STARTS)
  }
  return { found: [], nearest: nearest.steps.length > 0 ? { steps: nearest.steps, left: nearest.disorder.left } : undefined }
}

function disorderOf({ door, before, finding, tried }: Search, steps: readonly RepairStep[]): Disorder {
  tried.grid++
  return disorder(finding, before, judge(repaired(door, steps), { depth: 'grid' }))
}

/** Adds to `found` what mends by the grid, and to `better` the best of each knob that only helps. */
function* oneStepFurther(search: Search, start: Setting, found: Hope[], better: Setting[]): Generator<undefined, void> {
  const now = repaired(search.door, start.steps)
  const judgement: Judgement = judge(now, { depth: 'grid' })
  for (const knob of knobsOf(now, judgement, search.finding)) {
    if (start.steps.some((step) => sameKnob(step, knob.step(knob.from)))) continue
    const best = yield* turned(search, start, knob, found)
    if (best !== undefined) better.push(best)
  }
  if (start.steps.length > 0) return
  for (const step of wholeSteps(search.door, search.asIs, search.finding)) {
    const setting: Setting = { steps: [step], effort: 1, disorder: disorderOf(search, [step]) }
    yield
    if (scoreOf(setting.disorder) === 0) found.push({ variants: [setting.steps], effort: 1 })
    else if (scoreOf(setting.disorder) < scoreOf(start.disorder)) better.push(setting)
  }
}

function sameKnob(a: RepairStep, b: RepairStep): boolean {
  if (a.kind === 'move-sensor') return b.kind === 'move-sensor' && a.sensor === b.sensor && a.part === b.part
  if (a.kind === 'set-drive' || a.kind === 'set-outputs') return b.kind === a.kind && a.part === b.part
  return a.kind === 'set-field' && b.kind === 'set-field' && a.sensor === b.sensor && a.field === b.field && a.part === b.part
}

/** One knob, both ways. What is found goes to `found`; returned is the setting that helps most without mending. */
function* turned(search: Search, start: Setting, knob: Knob, found: Hope[]): Generator<undefined, Setting | undefined> {
  let best: Setting | undefined
  for (const way of [1, -1]) {
    const at = (grains: number) => [...start.steps, knob.step(setTo(knob, way * grains))]
    const { good, least } = yield* bracketed(knob, way, scoreOf(start.disorder), (grains) => disorderOf(search, at(grains)))
    if (good !== undefined) found.push(hopeOf(knob, start, way, good))
    else if (least !== undefined && (best === undefined || scoreOf(least.disorder) < scoreOf(best.disorder)))
      best = { steps: at(least.grains), effort: start.effort + effortOf(knob, least.grains), disorder: least.disorder }
  }
  return best
}

interface Bracketed {
  /** The fewest grains, between one that is not enough and one that is, with nothing left. */
  readonly good?: number
  /** Else what leaves least, if that is less than before. */
  readonly least?: Tryout | undefined
}

interface Tryout {
  readonly grains: number
  readonly disorder: Disorder
}

type Try = (grains: number) => Disorder

/** One knob, one way: farther and farther, then in smaller steps about what left least; from where nothing is left back as far as it goes. */
function* bracketed(knob: Knob, way: number, asIs: number, judged: Try): Generator<undefined, Bracketed> {
  let bad = 0
  let unmoved = 0
  let least: Tryout | undefined
  const leastScore = () => (least ? scoreOf(least.disorder) : asIs)
  for (let grains = 1; isWithin(knob, way * grains); grains = nextOf(knob, grains)) {
    const disorder = judged(grains)
    yield
    if (scoreOf(disorder) === 0) return { good: yield* smallestGood(bad, grains, judged) }
    bad = grains
    if (scoreOf(disorder) < leastScore()) least = { grains, disorder }
    // a knob that does nothing over 80 mm or 8 degrees is not worth more tries
    unmoved = scoreOf(disorder) === asIs ? unmoved + 1 : 0
    if (unmoved >= UNMOVED) break
  }
  if (least === undefined) return {}
  for (let by = Math.ceil(least.grains / 2); by >= 1; by = by === 1 ? 0 : Math.ceil(by / 2)) {
    const middle: number = least.grains
    for (const grains of [middle - by, middle + by]) {
      if (grains < 1 || !isWithin(knob, way * grains)) continue
      const disorder = judged(grains)
      yield
      if (scoreOf(disorder) === 0) return { good: yield* smallestGood(grains < least.grains ? 0 : least.grains, grains, judged) }
      if (scoreOf(disorder) < leastScore()) least = { grains, disorder }
    }
  }
  return { least }
}

function* smallestGood(bad: number, good: number, judged: Try): Generator<undefined, number> {
  while (good - bad > 1) {
    const middle = Math.floor((good + bad) / 2)
    if (scoreOf(judged(middle)) === 0) good = middle
    else bad = middle
    yield
  }
  return good
}

function hopeOf(knob: Knob, start: Setting, way: number, good: number): Hope {
  const variants = FARTHER.map((more) => way * (good + more))
    .filter((grains) => isWithin(knob, grains))
    .map((grains) => [...start.steps, knob.step(setTo(knob, grains))])
  return { variants, effort: start.effort + effortOf(knob, good) }
}

/** A whole number of grains away from the whole grain that is nearest to how it is set now. */
function setTo({ from, grain }: Knob, grains: number): number {
  return (Math.round(from / grain) + grains) * grain
}

function isWithin(knob: Knob, grains: number): boolean {
  const to = setTo(knob, grains)
  return to >= knob.low && to <= knob.high && Math.abs(to - knob.from) <= knob.most
}

/** Twice as far, and at last as far as it goes. */
function nextOf(knob: Knob, grains: number): number {
  const most = Math.floor(knob.most / knob.grain)
  return grains < most && grains * GROWTH > most ? most : grains * GROWTH
}

function effortOf(knob: Knob, grains: number): number {
  return (grains * knob.grain) / knob.most
}
