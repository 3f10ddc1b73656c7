import { closingFrom } from '../src/motion/leaf-run.ts'
import { type Contact, newTally, type Tally, worstOfPassage } from '../src/passing/worst-passage.ts'
import { randomNumbers } from './random-numbers.ts'
import { mayBegin, STEP_S, type SteppedCase, type SteppedPass, type SteppedPhase, stepPass, stepPhase } from './stepped-leaf.ts'
import type { SteppedCurve } from './stepped-motion.ts'

/** Random doors and bodies, small and quick enough to be stepped. Times are whole steps, so that both programs mean the same instant. */
export function steppedCase(seed: number): { readonly given: SteppedCase; readonly speed: number } {
  const random = randomNumbers(seed)
  const time_s = (most: number) => Math.round(random.between(0, most) / STEP_S) * STEP_S
  const way = random.between(300, 1500)
  const closeAccel = random.between(500, 3000)
  const half = random.between(30, 250)
  // in half of the cases the body comes slowly and is seen early, so that many are clear
  const early = random.chance(0.5)
  let at = -random.between(early ? 600 : 100, early ? 1500 : 900)
  const visible: [number, number][] = []
  for (let n = random.whole(early ? 1 : 0, 3); n > 0; n--) {
    const to = at + (early ? 1200 : 0) + random.between(20, random.chance(0.3) ? 200 : 2500)
    visible.push([at, to])
    at = to + random.between(5, 400)
  }
  const given: SteppedCase = {
    way,
    from: random.chance(0.3) ? way * random.between(0.6, 1) : way,
    closeSpeed: random.between(200, 1200),
    closeAccel,
    openSpeed: random.between(200, 1200),
    openAccel: random.between(500, 3000),
    delay_s: random.chance(0.2) ? 0 : time_s(0.2),
    decel: random.chance(0.3) ? random.between(300, closeAccel) : random.between(closeAccel, 8000),
    dwell_s: random.chance(0.15) ? undefined : time_s(0.4),
    clear: way * (random.chance(0.15) ? random.between(0.58, 1.05) : random.between(0.1, 0.58)), // some reach higher than a partial opening
    enter_mm: -half,
    leave_mm: half,
    visible,
    response_s: random.chance(0.15) ? 0 : time_s(0.25),
    hold_s: random.chance(0.4) ? 0 : time_s(0.5),
  }
  const speed = early ? random.between(300, 900) : random.between(300, 2500)
  // drawn last, so that the other cases stay what they were
  const closeJerk = random.chance(0.35) ? closeAccel * random.between(1, 20) : undefined
  const stoppingCurve = random.chance(0.35) ? randomCurve(random, given.closeSpeed) : undefined
  return { given: { ...given, closeJerk, stoppingCurve }, speed }
}

/** Two to six readings, whole steps apart, that rise ever more slowly from at most a little over the full speed. */
export function randomCurve(random: ReturnType<typeof randomNumbers>, speed: number): SteppedCurve {
  let [at_s, way, pace] = [0, 0, speed * random.between(0.7, 1.1)]
  return Array.from({ length: random.whole(2, 6) }, () => {
    const lasts_s = Math.round(random.between(0.02, 0.2) / STEP_S) * STEP_S
    at_s += lasts_s
    way += pace * lasts_s
    pace *= random.between(0.3, 1)
    return [at_s, way] as const
  })
}

function engineAnswer(given: SteppedCase, speed: number): Tally {
  const stretches = given.visible.map(([from_mm, to_mm]) => ({ from_mm, to_mm }))
  const drive = {
    way: given.way,
    close: { speed: given.closeSpeed, accel: given.closeAccel, jerk: given.closeJerk },
    open: { speed: given.openSpeed, accel: given.openAccel },
    stopDelay_s: given.delay_s,
    stopDecel: given.decel,
    reverseDelay_s: given.dwell_s,
    stoppingCurve: given.stoppingCurve?.map(([at_s, stopWay]) => ({ at_s, way: stopWay })),
  }
  const { enter_mm, leave_mm, clear, response_s, hold_s } = given
  const views = [{ visible: stretches, response_s, hold_s }]
  const tally = newTally()
  worstOfPassage(closingFrom(drive, given.from), { enter_mm, leave_mm, clear, views, standing: stretches }, [speed, speed], tally)
  return tally
}

interface Stepped {
  struck: number
  walked: number
  gap: number
}

/** Phases 10 ms apart, and around the worst of each kind ever finer ones, for a body that goes through and bodies that stop. */
function steppedAnswer(given: SteppedCase, speed: number): Stepped {
  const found: Stepped = { struck: 0, walked: 0, gap: given.from - given.clear }
  const { enter_mm, leave_mm } = given
  for (const stopsAt_mm of [undefined, enter_mm + 0.5, (enter_mm + leave_mm) / 2, leave_mm - 0.5]) {
    const pass = stepPass(given, { speed, stopsAt_mm })
    const arrives = Math.floor((enter_mm - pass.start_mm) / speed / STEP_S)
    const lasts = Math.ceil(
      (given.way / given.closeSpeed +
        given.closeSpeed / given.closeAccel +
        (given.closeJerk ? given.closeAccel / given.closeJerk : 0) +
        0.1) /
        STEP_S,
    )
    const until = stopsAt_mm === undefined ? pass.steps : arrives + 2 * lasts
    const from = -lasts // before anybody is seen
    refine(given, pass, from, Math.min(until, pass.steps), 200, found)
  }
  return found
}

function refine(given: SteppedCase, pass: SteppedPass, from: number, to: number, every: number, found: Stepped): void {
  const best = { struck: 0, walked: 0, gap: Infinity }
  const at = { struck: from, walked: from, gap: from }
  const keep = (name: keyof Stepped, value: number, k: number) => {
    if (name === 'gap' ? value >= best.gap : value <= best[name]) return
    best[name] = value
    at[name] = k
    found[name] = name === 'gap' ? Math.min(found.gap, value) : Math.max(found[name], value)
  }
  let before = true
  const edges: number[] = []
  const look = (k: number) => {
    const phase = stepPhase(given, pass, k)
    // between a leaf that is shut in time and one that just is not lie the phases that open last
    if (before !== phase.isShut) edges.push(k)
    before = phase.isShut
    if (phase.kind === 'struck') keep('struck', phase.relativeSpeed, k)
    if (phase.kind === 'walked into') keep('walked', phase.relativeSpeed, k)
    keep('gap', phase.gap, k)
  }
  for (let k = from; k <= to; k += every) if (mayBegin(pass, k)) look(k)
  if (every === 200) for (let k = Math.max(1, from); k <= to; k++) if (pass.forbids[k] !== pass.forbids[k - 1]) look(k) // the instants of change themselves
  if (every === 1) return
  for (const k of new Set([...Object.values(at), ...(every === 200 ? edges : edges.slice(0, 1))]))
    refine(given, pass, k - every, Math.min(pass.steps, k + every), every === 200 ? 14 : 1, found)
}

/** The engine's worst contact, stepped again at its own phase and place. */
function replayed(given: SteppedCase, speed: number, { enters_s, stands, place_mm, at_s }: Contact): readonly SteppedPhase[] {
  const places = stands ? [given.leave_mm - 0.5, place_mm] : [undefined]
  return places.flatMap((stopsAt_mm) => {
    const pass = stepPass(given, { speed, stopsAt_mm })
    const arrives = (given.enter_mm - pass.start_mm) / speed / STEP_S
    // a body that stands before the closing begins has no instant of entry
    const first = Number.isFinite(enters_s) ? arrives - enters_s / STEP_S : arrives + 20_000 - at_s
    const near = [0, -1, 1, -2, 2, -3, 3].map((off) => Math.round(first) + off).filter((k) => mayBegin(pass, k))
    return near.map((k) => stepPhase(given, pass, k))
  })
}

/** What is wrong with the engine's answer to one case, by the stepper; empty if nothing. `tight` where a step decides, `loose` where the bound on the gap is not within 1 mm. */
export function againstStepper(seed: number): {
  readonly faults: readonly string[]
  readonly tight: boolean
  readonly loose: boolean
  readonly kinds: string
} {
  const { given, speed } = steppedCase(seed)
  const engine = engineAnswer(given, speed)
  const stepped = steppedAnswer(given, speed)
  const faults: string[] = []
  let loose = false
  let tight = engine.unproved.struck + engine.unproved.walked > 0
  const accel = Math.max(given.closeAccel, given.decel, given.openAccel)
  const off = 4 + 6 * STEP_S * accel + 0.002 * speed // of speeds, mm/s: the search's own step and what a few steps change
  for (const kind of ['struck', 'walked'] as const) {
    const contact = engine[kind]
    const name = kind === 'struck' ? 'struck' : 'walked into'
    if (stepped[kind] > (contact?.relativeSpeed ?? 0) + off && stepped[kind] > engine[`${kind}AtMost`] + off) {
      // what a step decides: the engine is just clear of everything
      if (engine.struck === undefined && engine.walked === undefined && engine.gap < 2) tight = true
      else faults.push(`${seed}: stepped ${kind} ${stepped[kind]} over ${contact?.relativeSpeed}`)
    }
    if (contact === undefined) continue
    // found by the stepper on its own, as fast; else stepped again at the very phase
    if (Math.abs(stepped[kind] - contact.relativeSpeed) <= off) continue
    const again = replayed(given, speed, contact)
    if (again.some((phase) => phase.kind === name && Math.abs(phase.relativeSpeed - contact.relativeSpeed) <= off)) continue
    if (contact.way > given.clear - 2 || contact.way < 2 || contact.run.restWay < 2 || again.some((phase) => phase.gap < 2)) tight = true
    else
      faults.push(`${seed}: ${kind} at ${contact.relativeSpeed} (way ${contact.way}) is not so when stepped: ${JSON.stringify(again[0])}`)
  }
  if (engine.struck === undefined && engine.walked === undefined && stepped.struck + stepped.walked === 0) {
    if (Math.abs(engine.gap - stepped.gap) > 1.5) faults.push(`${seed}: gap ${engine.gap}, stepped ${stepped.gap}`)
    if (engine.gapAtLeast > engine.gap + 1e-9) faults.push(`${seed}: gap ${engine.gap} below its bound ${engine.gapAtLeast}`)
    loose = engine.gapAtLeast < engine.gap - 1
  }
  const kinds = `${engine.struck ? 'struck' : ''}${engine.walked ? 'walked' : ''}`
  return { faults, tight, loose, kinds: kinds || 'clear' }
}
