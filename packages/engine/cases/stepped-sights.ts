import { closingFrom } from '../src/motion/leaf-run.ts'
import { newTally, type Tally, worstOfPassage } from '../src/passing/worst-passage.ts'
import { randomNumbers } from './random-numbers.ts'
import { steppedCase } from './stepped-cases.ts'
import { mayBegin, type SteppedCase, type SteppedPass, stepPass, stepPhase } from './stepped-leaf.ts'

/*
 * Outputs that see less the lower the leaf is, stepped through time: while the edge has at least `actsFrom` to go, an output sees the body in these
 * stretches. Docs/method.md, "The leaf in the field".
 */
type Sight = { readonly actsFrom: number; readonly visible: SteppedCase['visible'] }

const STEP_S = 1e-3

/** A case with a drive that brakes at least as hard as it speeds up, and sights that shrink as the leaf comes down; the last acts to the end or ends in a window. */
export function sightCase(seed: number): { readonly given: SteppedCase; readonly sights: readonly Sight[]; readonly speed: number } {
  const { given, speed } = steppedCase(seed)
  const random = randomNumbers(seed + 5000)
  const rounded = (time_s: number) => Math.round(time_s / STEP_S) * STEP_S
  const decel = Math.max(given.decel, given.closeAccel)
  const delay_s = rounded(given.delay_s)
  const times = { response_s: rounded(given.response_s), hold_s: rounded(given.hold_s), dwell_s: given.dwell_s && rounded(given.dwell_s) }
  const eased = {
    ...given,
    ...times,
    decel,
    delay_s,
    closeJerk: undefined,
    stoppingCurve: undefined,
    clear: Math.min(given.clear, given.from * 0.9),
  }
  const lowest = random.chance(0.6) ? 0 : random.between(20, given.from / 2)
  // seen from far away while the leaf is open, and from near alone, or not in its plane, once it is low
  const most = given.visible.map(([from, to]) => [from - random.between(0, 800), to] as const)
  const [least, largest] = random.chance(0.5) ? [0, 150] : [300, 1500]
  const atEnd = random.chance(0.3) ? 300 : 40
  let visible: SteppedCase['visible'] = random.chance(0.5) ? [[most[0]?.[0] ?? -1500, given.leave_mm + 50]] : most
  const open = visible
  const sights = [0, 1, 2, 3].map((k): Sight => {
    const narrower = visible.map(([from, to]) => [from + random.between(least, largest), to - random.between(0, atEnd)] as const)
    if (k > 0 && random.chance(0.6)) visible = narrower.filter(([from, to]) => to > from)
    return { actsFrom: lowest + ((given.from - lowest) * (3 - k)) / 3, visible }
  })
  return { given: { ...eased, visible: open }, sights, speed }
}

function engineAnswer(given: SteppedCase, sights: readonly Sight[], speed: number): Tally {
  const drive = {
    way: given.way,
    close: { speed: given.closeSpeed, accel: given.closeAccel },
    open: { speed: given.openSpeed, accel: given.openAccel },
    stopDelay_s: given.delay_s,
    stopDecel: given.decel,
    reverseDelay_s: given.dwell_s,
  }
  const stretches = (visible: SteppedCase['visible']) => visible.map(([from_mm, to_mm]) => ({ from_mm, to_mm }))
  const { enter_mm, leave_mm, clear, response_s, hold_s } = given
  const views = sights.map(({ actsFrom, visible }) => ({
    visible: stretches(visible),
    response_s,
    hold_s,
    actsFrom_mm: actsFrom > 0 ? actsFrom : undefined,
  }))
  const tally = newTally()
  const standing = stretches(given.visible)
  worstOfPassage(closingFrom(drive, given.from), { enter_mm, leave_mm, clear, views, standing }, [speed, speed], tally)
  return tally
}

function passOf(given: SteppedCase, sights: readonly Sight[], speed: number, stopsAt_mm: number | undefined): SteppedPass {
  const passes = sights.map(({ visible }) => stepPass(given, { speed, stopsAt_mm }, STEP_S, visible))
  const [first] = passes
  if (first === undefined) throw new Error('a case must have a sight')
  const forbids = first.forbids.map((_, k) => (passes.some((pass) => pass.forbids[k] === 1) ? 1 : 0))
  return { ...first, forbids, stops: (k, way) => passes.some((pass, i) => pass.forbids[k] === 1 && way >= (sights[i]?.actsFrom ?? 0)) }
}

/** Every phase of the stepper's, for a body that goes through and bodies that stop; and what the engine says. */
export function againstSights(seed: number): { readonly fault: string | undefined; readonly engine: boolean; readonly stepped: boolean } {
  const { given, sights, speed } = sightCase(seed)
  const engine = engineAnswer(given, sights, speed)
  const { enter_mm, leave_mm } = given
  const inside = sights.flatMap(({ visible }) => visible.flat()).filter((place) => place > enter_mm + 2 && place < leave_mm - 2)
  const places = [enter_mm + 1, (enter_mm + leave_mm) / 2, leave_mm - 1, ...inside.flatMap((place) => [place - 1, place + 1])]
  let struck = 0
  for (const stopsAt_mm of [undefined, ...places]) {
    const pass = passOf(given, sights, speed, stopsAt_mm)
    const lasts = Math.ceil((given.way / given.closeSpeed + given.closeSpeed / given.closeAccel + 0.1) / STEP_S)
    for (let k = -lasts; k < pass.steps; k += 8) {
      if (!mayBegin(pass, k)) continue
      const phase = stepPhase(given, pass, k)
      if (phase.kind === 'struck') struck = Math.max(struck, phase.relativeSpeed)
    }
  }
  // what a step decides: an edge that misses by less than a step or two
  const isClose = engine.gapAtLeast < 2 * given.closeSpeed * STEP_S
  const isFound = engine.struck !== undefined || engine.unproved.struck > 0
  const off = 10 + 6 * STEP_S * Math.max(given.closeAccel, given.decel)
  const fault =
    struck > 0 && !isFound && !isClose
      ? `${seed}: stepped struck at ${struck}, the engine says never (gap ${engine.gapAtLeast})`
      : struck > engine.struckAtMost + off && isFound && engine.struck !== undefined && !isClose
        ? `${seed}: stepped ${struck} over ${engine.struckAtMost}`
        : undefined
  return { fault, engine: isFound, stepped: struck > 0 }
}
