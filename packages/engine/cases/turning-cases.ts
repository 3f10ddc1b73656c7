import type { Stance } from '../src/coverage/scene.ts'
import { type Closing, closingFrom } from '../src/motion/leaf-run.ts'
import { type TurningLeaf, turningLeaf } from '../src/motion/turning-leaf.ts'
import { worstOfTurning } from '../src/passing/turning-passage.ts'
import { turningPassages } from '../src/passing/turning-ways.ts'
import { type Contact, newTally, type Tally } from '../src/passing/worst-passage.ts'
import { randomNumbers } from './random-numbers.ts'
import { randomCurve } from './stepped-cases.ts'
import { mayBegin, phase, STEP_S, type TurningCase, type TurningPhase, type TurningWalk, walk } from './stepped-turning.ts'

/** Random leaves that swing or fold, and bodies on their way past them. Times are whole steps. */
export function turningCase(seed: number): TurningCase {
  const random = randomNumbers(seed)
  const time_s = (most: number) => Math.round(random.between(0, most) / STEP_S) * STEP_S
  const folds = random.chance(0.3)
  const first = random.between(350, 1200)
  const second = folds ? first * (random.chance(0.5) ? 1 : random.between(1, 1.4)) : undefined
  const length = first + (second ?? 0)
  const openAngle = folds ? random.between(1, 1.55) : random.between(1, random.chance(0.2) ? 3 : 1.9)
  const closeAccel = random.between(0.8, 4)
  const half = random.between(10, 60)
  const heading = random.chance(0.5) ? 1 : -1
  const body = random.chance(0.4)
    ? { x: random.between(150, length), radius: random.between(50, 250) }
    : {
        x: random.between(150, length),
        a: random.between(80, 500),
        b: random.between(80, 700),
        yaw: random.chance(0.5) ? 0 : random.between(0, Math.PI),
      }
  const size = 'radius' in body ? body.radius : Math.hypot(body.a, body.b) / 2
  const [low, high] = [-half - size, first + half + size]
  const [begins, ends] = heading > 0 ? [low, high] : [-high, -low]
  const early = random.chance(0.6)
  let at = begins - random.between(early ? 300 : -600, early ? 1500 : 500)
  const visible: [number, number][] = []
  for (let n = random.whole(early ? 1 : 0, 3); n > 0; n--) {
    const to = at + (early ? 1500 : 0) + random.between(20, random.chance(0.3) ? 200 : 3000)
    visible.push([at, to])
    at = to + random.between(5, 400)
  }
  const given = {
    first,
    second,
    half,
    openAngle,
    fromAngle: random.chance(0.3) ? openAngle * random.between(0.5, 1) : openAngle,
    closeSpeed: random.between(0.2, 1.4),
    closeAccel,
    openSpeed: random.between(0.2, 1.4),
    openAccel: random.between(0.8, 4),
    delay_s: random.chance(0.2) ? 0 : time_s(0.2),
    decel: random.chance(0.3) ? random.between(0.5, closeAccel) : random.between(closeAccel, 15),
    dwell_s: random.chance(0.15) ? undefined : time_s(0.4),
    body,
    heading,
    speed: early ? random.between(200, 900) : random.between(200, 2500),
    visible,
    response_s: random.chance(0.15) ? 0 : time_s(0.25),
    hold_s: random.chance(0.4) ? 0 : time_s(0.5),
    begins,
    ends,
  } as const
  // drawn last, so that the other figures stay what they were
  const slowest = random.chance(0.4) ? given.speed * random.between(0.3, 0.9) : given.speed
  const closeJerk = random.chance(0.35) ? closeAccel * random.between(1, 20) : undefined
  const stoppingCurve = random.chance(0.35) ? randomCurve(random, given.closeSpeed) : undefined
  const both = random.chance(0.25)
  const otherHinge = both ? 2 * length + random.between(0, 60) : undefined
  const x = otherHinge === undefined ? body.x : random.between(150, otherHinge - 150)
  return { ...given, body: { ...body, x }, slowest, closeJerk, stoppingCurve, otherHinge }
}

/** The same leaf, closing and body for the engine. */
export function forEngine(given: TurningCase): { readonly leaf: TurningLeaf; readonly closing: Closing; readonly stance: Stance } {
  const { first, second, half, openAngle, fromAngle, body, otherHinge } = given
  const hinge = otherHinge === undefined ? 'at-zero' : 'both'
  const hinged = { hinge, opensTo: 'a', length_mm: first, secondPanel_mm: second, openAngle_rad: openAngle } as const
  const leaf = turningLeaf({
    leaf: { travel: 'turning', thickness_mm: 2 * half, bulge_mm: 0, hinged },
    opening: { width_mm: otherHinge ?? 3000, height_mm: 2000 },
  }) as TurningLeaf
  const drive = {
    way: leaf.way_mm,
    close: { speed: given.closeSpeed * first, accel: given.closeAccel * first, jerk: given.closeJerk && given.closeJerk * first },
    open: { speed: given.openSpeed * first, accel: given.openAccel * first },
    stopDelay_s: given.delay_s,
    stopDecel: given.decel * first,
    reverseDelay_s: given.dwell_s,
    stoppingCurve: given.stoppingCurve?.map(([at_s, angle]) => ({ at_s, way: angle * first })),
  }
  const posture =
    'radius' in body
      ? ({ shape: 'cylinder', name: 'p', radius_mm: body.radius, height_mm: 1700 } as const)
      : ({ shape: 'box', name: 'p', a_mm: body.a, b_mm: body.b, c_mm: 1700, yawFrom_rad: body.yaw, yawTo_rad: body.yaw } as const)
  const stance = {
    body: { id: 'body', name: 'body', reflectance: 0.1, postures: [posture], source: { basis: 'our decision' } },
    posture,
    index: 0,
    yaw_rad: 'radius' in body ? 0 : body.yaw,
  } as const
  return { leaf, closing: closingFrom(drive, fromAngle === openAngle ? leaf.way_mm : fromAngle * first), stance }
}

function engineAnswer(given: TurningCase): { readonly tally: Tally; readonly leaf: TurningLeaf } {
  const { leaf, closing, stance } = forEngine(given)
  const { body, heading, speed } = given
  const stretches = given.visible.map(([from_mm, to_mm]) => ({ from_mm, to_mm }))
  const views = [{ visible: stretches, response_s: given.response_s, hold_s: given.hold_s }]
  const tally = newTally()
  for (const passage of turningPassages(leaf, stance, body.x, heading > 0 ? 'b' : 'a', { views, standing: stretches }))
    worstOfTurning(closing, passage, [given.slowest, speed], tally)
  return { tally, leaf }
}

interface Stepped {
  struck: number
  walked: number
  at: string
}

/** Phases 40 ms apart, and around the worst of each kind finer ones, for a body that goes through and bodies that stop. */
function steppedAnswer(given: TurningCase, every: number): Stepped {
  const found: Stepped = { struck: 0, walked: 0, at: '' }
  const { begins, ends } = given
  const places = (every > 400 ? [0.5] : [0.15, 0.3, 0.5, 0.7, 0.9]).map((share) => begins + share * (ends - begins))
  const lasts = Math.ceil(
    (given.fromAngle / given.closeSpeed +
      given.closeSpeed / given.closeAccel +
      (given.closeJerk ? given.closeAccel / given.closeJerk : 0) +
      0.1) /
      STEP_S,
  )
  for (const stopsAt of [undefined, ...places]) {
    const pass = walk(given, stopsAt)
    const arrives = Math.floor((begins - pass.start) / given.speed / STEP_S)
    const until = stopsAt === undefined ? pass.steps : Math.min(pass.steps, arrives + lasts)
    refine(given, pass, Math.max(-lasts, arrives - 2 * lasts), until, every, every > 400 ? 700 : 12, found)
  }
  return found
}

/** Ever finer around the worst of each kind, and between two kinds, where lie the phases that only just come to something. */
function refine(given: TurningCase, pass: TurningWalk, from: number, to: number, every: number, finest: number, found: Stepped): void {
  const best = { struck: 0, walked: 0 }
  const at = { struck: from, walked: from }
  const kinds: { readonly k: number; readonly kind: string }[] = []
  const look = (k: number) => {
    const { kind, relativeSpeed } = phase(given, pass, k)
    kinds.push({ k, kind })
    if (kind === 'clear') return
    const name = kind === 'struck' ? 'struck' : 'walked'
    if (relativeSpeed <= best[name]) return
    best[name] = relativeSpeed
    at[name] = k
    if (name === 'struck' && relativeSpeed > found.struck) found.at = `begins ${k}, stops ${pass.stopsAt}`
    found[name] = Math.max(found[name], relativeSpeed)
  }
  for (let k = from; k <= to; k += every) if (mayBegin(pass, k)) look(k)
  for (let k = Math.max(1, from); k <= to; k++) if (pass.forbids[k] !== pass.forbids[k - 1]) look(k) // the instants of change themselves
  if (every <= finest) return
  const sorted = [...kinds].sort((a, b) => a.k - b.k)
  const edges = sorted.filter(({ kind }, i) => i > 0 && sorted[i - 1]?.kind !== kind).map(({ k }) => k)
  for (const k of new Set([at.struck, at.walked, ...edges.slice(0, 2)]))
    refine(given, pass, k - every, k, Math.ceil(every / 12), finest, found)
}

/** The engine's worst contact, stepped again at its own phase and place. */
function replayed(given: TurningCase, { enters_s, entersAt_mm, stands, place_mm, at_s }: Contact): readonly TurningPhase[] {
  const places = stands ? [place_mm, place_mm - 0.2, place_mm + 0.2] : [undefined]
  return places.flatMap((place) => {
    const pass = walk(given, place)
    // it walks into the leaf that rests, whether that closes later or not
    if (at_s <= 0) return [phase(given, pass, pass.steps)]
    const arrives = (entersAt_mm - pass.start) / given.speed / STEP_S
    // a body that stands before the closing begins has no instant of entry
    const stood = !Number.isFinite(enters_s)
    const first = stood ? (place_mm - pass.start) / given.speed / STEP_S + given.hold_s / STEP_S + 2000 : arrives - enters_s / STEP_S
    const near = [0, -1, 1, -2, 2, -4, 4, -8, 8].map((off) => Math.round(first) + off)
    return near.filter((k) => mayBegin(pass, k)).map((k) => phase(given, pass, k, stood))
  })
}

/** What is wrong with the engine's answer to one case, by the stepper; empty if nothing. `tight` where it is not settled, or a step decides. */
export function againstTurningStepper(seed: number, every = 400) {
  const given = turningCase(seed)
  const { tally } = engineAnswer(given)
  const stepped = steppedAnswer(given, every)
  if (given.slowest < given.speed && every <= 400) {
    const slower = steppedAnswer({ ...given, speed: (given.slowest + given.speed) / 2 }, every)
    stepped.struck = Math.max(stepped.struck, slower.struck)
    stepped.walked = Math.max(stepped.walked, slower.walked)
  }
  const faults: string[] = []
  let tight = false
  const accel = Math.max(given.closeAccel, given.decel, given.openAccel) * (given.first + (given.second ?? 0))
  for (const kind of ['struck', 'walked'] as const) {
    const contact = tally[kind]
    const name = kind === 'struck' ? 'struck' : 'walked into'
    if (stepped[kind] > 0 && contact === undefined && tally.unproved[kind] === 0)
      faults.push(`${seed}: stepped ${kind} ${stepped[kind]} (${stepped.at}) where the engine has none`)
    if (contact === undefined) {
      tight ||= tally.unproved[kind] > 0
      continue
    }
    const off = 10 + 0.05 * contact.relativeSpeed + 20 * STEP_S * accel
    if (stepped[kind] > tally[`${kind}AtMost`] + off)
      faults.push(`${seed}: stepped ${kind} ${stepped[kind]} over ${tally[`${kind}AtMost`]} at most`)
    const again = replayed({ ...given, speed: contact.pace > 0 ? contact.pace : given.speed }, contact)
    if (again.some((each) => each.kind === name && Math.abs(each.relativeSpeed - contact.relativeSpeed) <= off)) continue
    // just before it is shut, just not shut, seen for just as long as the response takes, or where a step decides between struck and walked into
    const lastsJustSo = given.visible.some(([from, to]) => Math.abs((to - from) / contact.pace - given.response_s) < 2 * STEP_S)
    if (again.some((each) => each.kind === name) || contact.way < 2 || contact.run.restWay < 2 || lastsJustSo) tight = true
    else
      faults.push(
        `${seed}: ${kind} at ${contact.relativeSpeed} is not so when stepped: ${JSON.stringify(again[0])} ${JSON.stringify({ ...contact, run: 0 })}`,
      )
  }
  const kinds = `${tally.struck ? 'struck' : ''}${tally.walked ? 'walked' : ''}`
  return { faults, tight, unproved: tally.unproved, kinds: kinds || 'clear' }
}
