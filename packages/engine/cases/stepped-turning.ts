import { goneOn, type SteppedCurve, type SteppedMotion, steppedMotion } from './stepped-motion.ts'

/**
 * The slow way to what `src/passing` answers for a leaf that turns: angle, body and output are stepped through time by 0.1 ms, straight from docs/method.md,
 * "Time", each phase a run of its own; whether leaf and body overlap is asked at each step at which
 * they could have come to touch since the last look, by separating lines. Shares no code with the engine.
 */
export interface TurningCase {
  /** The leaf hangs at x = 0, lies along +x when shut, and opens toward +y. Of two panels the second is as long as the first or longer. */
  readonly first: number
  readonly second: number | undefined
  readonly half: number
  readonly openAngle: number // rad
  readonly fromAngle: number
  /** rad per s, s2 */
  readonly closeSpeed: number
  readonly closeAccel: number
  readonly openSpeed: number
  readonly openAccel: number
  readonly delay_s: number
  readonly decel: number
  readonly dwell_s: number | undefined
  readonly body:
    | { readonly x: number; readonly a: number; readonly b: number; readonly yaw: number }
    | { readonly x: number; readonly radius: number }
  /** Along y: +1 from side B, -1 from side A. */
  readonly heading: 1 | -1
  readonly speed: number
  /** The engine is asked about all speeds from this one up. */
  readonly slowest: number
  readonly visible: readonly (readonly [from: number, to: number])[] // along the way
  readonly response_s: number
  readonly hold_s: number
  /** Along the way: outside nothing can be met. */
  readonly begins: number
  readonly ends: number
  /** A second leaf hangs there, the mirror image of the first, and turns with it. */
  readonly otherHinge?: number | undefined
  /** How fast the acceleration of closing sets in, rad per s3; at once if undefined. */
  readonly closeJerk?: number | undefined
  /** In rad. */
  readonly stoppingCurve?: SteppedCurve | undefined
}

export interface TurningPhase {
  readonly kind: 'clear' | 'struck' | 'walked into'
  readonly relativeSpeed: number
}

export const STEP_S = 1e-4
const STANDS_S = 5

export interface TurningWalk {
  readonly start: number
  readonly steps: number
  readonly stopsAt: number
  readonly forbids: Uint8Array
  /** Where the jerk is limited: how far the leaf has come, and how fast it is, so many steps after it began to close. */
  readonly closing: SteppedMotion | undefined
  /** The first step at which the body overlaps the leaf that rests where the closing begins. */
  readonly restMetAt: number
}

export function walk(given: TurningCase, stopsAt = Infinity): TurningWalk {
  const start = Math.min(given.begins, ...given.visible.map(([from]) => from)) - 5
  const through_s = (given.ends + 1 - start) / given.speed
  const steps = Math.ceil((stopsAt === Infinity ? through_s : through_s + STANDS_S) / STEP_S)
  const forbids = new Uint8Array(steps + 1)
  const [response, hold] = [Math.round(given.response_s / STEP_S), Math.round(given.hold_s / STEP_S)]
  let [seenFor, heldUntil, isOn, stretch] = [-1, -1, false, 0]
  for (let k = 0; k <= steps; k++) {
    const place = Math.min(stopsAt, start + given.speed * k * STEP_S)
    while (stretch < given.visible.length && place > (given.visible[stretch] as readonly [number, number])[1]) stretch++
    const isSeen = stretch < given.visible.length && place >= (given.visible[stretch] as readonly [number, number])[0]
    seenFor = isSeen ? seenFor + 1 : -1
    if (isSeen && (isOn || seenFor >= response)) {
      isOn = true
      heldUntil = k + hold
    } else if (k > heldUntil) isOn = false
    forbids[k] = isOn ? 1 : 0
  }
  let restMetAt = 0
  const placeAt = (k: number) => Math.min(stopsAt, start + given.speed * k * STEP_S)
  while (restMetAt <= steps) {
    const wait = waitsFor(given, given.fromAngle, placeAt(restMetAt))
    if (wait === 0) break
    restMetAt += wait
  }
  const closing = given.closeJerk === undefined ? undefined : steppedMotion({ ...given, from: given.fromAngle }, given.closeJerk, STEP_S)
  return { start, steps, stopsAt, forbids, closing, restMetAt: restMetAt <= steps ? restMetAt : Infinity }
}

/** So many steps pass before both can touch, however fast both are; 0 where they overlap by more than a thousandth of a millimetre. */
function waitsFor(given: TurningCase, angle: number, place: number): number {
  const { begins, ends, speed, first, half, closeSpeed, openSpeed, stoppingCurve = [] } = given
  const steepest = stoppingCurve.map(
    ([at_s, way], i) => (way - (stoppingCurve[i - 1]?.[1] ?? 0)) / (at_s - (stoppingCurve[i - 1]?.[0] ?? 0)),
  )
  const most = (speed + (2 * first + 2 * half) * Math.max(closeSpeed, openSpeed, ...steepest)) * STEP_S // of both, in a step
  if (place <= begins) return Math.max(1, Math.floor((begins - place) / most))
  if (place >= ends) return 1e6
  const { deep } = depth(given, angle, given.heading * place)
  return deep > 1e-3 ? 0 : Math.max(1, Math.floor(-deep / most))
}

export function mayBegin({ forbids }: TurningWalk, k: number): boolean {
  return k < 0 || k >= forbids.length || forbids[k] === 0 || k === 0 || forbids[k - 1] === 0
}

type Point = readonly [number, number]

/** Corners of each panel at an angle; those of the second leaf come last. */
function panels(given: TurningCase, angle: number): readonly (readonly Point[])[] {
  const { otherHinge } = given
  const own = panelsOfOne(given, angle)
  return otherHinge === undefined ? own : [...own, ...own.map((corners) => corners.map(([x, y]): Point => [otherHinge - x, y]))]
}

function panelsOfOne({ first, second, half }: TurningCase, angle: number): readonly (readonly Point[])[] {
  const joint: Point = [first * Math.cos(angle), first * Math.sin(angle)]
  const one = bar([0, 0], joint, [Math.cos(angle), Math.sin(angle)], half)
  if (second === undefined) return [one]
  const dip = Math.asin(Math.min(1, (first * Math.sin(angle)) / second))
  const free: Point = [joint[0] + second * Math.cos(dip), joint[1] - second * Math.sin(dip)]
  return [one, bar(joint, free, [Math.cos(dip), -Math.sin(dip)], half)]
}

function bar(a: Point, b: Point, [ux, uy]: Point, half: number): readonly Point[] {
  return [
    [a[0] - uy * half, a[1] + ux * half],
    [b[0] - uy * half, b[1] + ux * half],
    [b[0] + uy * half, b[1] - ux * half],
    [a[0] + uy * half, a[1] - ux * half],
  ]
}

/** How deep both overlap, negative where a line separates them; on a round body its middle against the panel's own axes and corners. */
export function depth(given: TurningCase, angle: number, y: number): { readonly deep: number; readonly panel: number } {
  let best = { deep: -Infinity, panel: 0 }
  for (const [panel, corners] of panels(given, angle).entries()) {
    const deep =
      'radius' in given.body ? roundDepth(corners, [given.body.x, y], given.body.radius) : boxDepth(corners, bodyCorners(given, y))
    if (deep > best.deep) best = { deep, panel }
  }
  return best
}

function bodyCorners({ body }: TurningCase, y: number): readonly Point[] {
  if ('radius' in body) return []
  const [c, s] = [Math.cos(body.yaw), Math.sin(body.yaw)]
  return (
    [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ] as const
  ).map(([u, v]): Point => [body.x + (u * body.a * c - v * body.b * s) / 2, y + (u * body.a * s + v * body.b * c) / 2])
}

function boxDepth(one: readonly Point[], other: readonly Point[]): number {
  let deep = Infinity
  for (const corners of [one, other])
    for (const k of [0, 1] as const) {
      const [p, q] = [corners[k] as Point, corners[k + 1] as Point]
      const length = Math.hypot(q[0] - p[0], q[1] - p[1])
      const axis: Point = [(q[0] - p[0]) / length, (q[1] - p[1]) / length]
      const [a0, a1] = shadow(one, axis)
      const [b0, b1] = shadow(other, axis)
      deep = Math.min(deep, a1 - b0, b1 - a0)
    }
  return deep
}

function shadow(corners: readonly Point[], [ax, ay]: Point): readonly [number, number] {
  const along = corners.map(([x, y]) => x * ax + y * ay)
  return [Math.min(...along), Math.max(...along)]
}

function roundDepth(corners: readonly Point[], [x, y]: Point, radius: number): number {
  const [p, q, , s] = corners as readonly [Point, Point, Point, Point]
  const length = Math.hypot(q[0] - p[0], q[1] - p[1])
  const width = Math.hypot(s[0] - p[0], s[1] - p[1])
  const along = ((x - p[0]) * (q[0] - p[0]) + (y - p[1]) * (q[1] - p[1])) / length
  const across = ((x - p[0]) * (s[0] - p[0]) + (y - p[1]) * (s[1] - p[1])) / width
  const [outAlong, outAcross] = [Math.max(0, -along, along - length), Math.max(0, -across, across - width)]
  if (outAlong === 0 && outAcross === 0) return radius + Math.min(along, length - along, across, width - across)
  return radius - Math.hypot(outAlong, outAcross)
}

/** One closing that begins at step `first`. @param stood somebody stands there since before the leaf opened, and has not met it where it rests */
export function phase(given: TurningCase, pass: TurningWalk, first: number, stood = false): TurningPhase {
  const { closeSpeed, closeAccel, openSpeed, openAccel, decel, speed: pace, stoppingCurve } = given
  const delay = stoppingCurve ? 0 : Math.round(given.delay_s / STEP_S)
  const dwell = given.dwell_s === undefined ? Infinity : Math.round(given.dwell_s / STEP_S)
  let angle = given.fromAngle
  let speed = 0
  let mode: 'closing' | 'braking' | 'rest' | 'opening' = 'closing'
  let [brakesAt, opensAt, brakeAngle] = [Infinity, Infinity, Infinity]
  const waits = (k: number) => waitsFor(given, angle, Math.min(pass.stopsAt, pass.start + pace * k * STEP_S))
  // it rests before: who overlaps it then has walked into it, whenever that was
  if (!stood && (pass.restMetAt <= first || (first >= 0 && waits(Math.min(first, pass.steps)) === 0)))
    return { kind: 'walked into', relativeSpeed: pace }
  let looksAt = Math.max(0, first)
  for (let k = first; k <= pass.steps; k++) {
    if (k >= looksAt) {
      const wait = waits(k)
      looksAt = k + wait
      if (wait === 0) {
        const place = Math.min(pass.stopsAt, pass.start + pace * k * STEP_S)
        const bodySpeed = place === pass.stopsAt ? 0 : pace
        const isClosing = (mode === 'closing' || mode === 'braking') && speed > 0
        const closing = isClosing ? speed : mode === 'opening' ? -speed : 0
        return { kind: isClosing ? 'struck' : 'walked into', relativeSpeed: relative(given, angle, closing, place, bodySpeed) }
      }
    }
    if (mode === 'closing' && brakesAt === Infinity && k >= 0 && pass.forbids[k] === 1) brakesAt = k + delay
    if (mode === 'closing' && k >= brakesAt) {
      mode = 'braking'
      brakeAngle = angle
    }
    if (mode === 'closing' && pass.closing) {
      const n = k + 1 - first
      angle = given.fromAngle - (pass.closing.moved[n] ?? given.fromAngle)
      speed = pass.closing.speeds[n] ?? 0
      if (n >= pass.closing.moved.length - 1 || angle <= 0) break
    } else if (mode === 'closing') {
      const slows = (speed * speed) / (2 * closeAccel) >= angle
      const next = slows ? Math.max(0, speed - closeAccel * STEP_S) : Math.min(closeSpeed, speed + closeAccel * STEP_S)
      angle -= ((speed + next) / 2) * STEP_S
      speed = next
      if (angle <= 0 || (slows && speed <= 0)) break
    } else if (mode === 'braking') {
      const before = angle
      const next = Math.max(0, speed - decel * STEP_S)
      angle = stoppingCurve ? brakeAngle - goneOn(stoppingCurve, (k + 1 - brakesAt) * STEP_S) : angle - ((speed + next) / 2) * STEP_S
      speed = stoppingCurve ? (before - angle) / STEP_S : next
      const [rests_s = 0] = stoppingCurve?.[stoppingCurve.length - 1] ?? []
      if (stoppingCurve && (k + 1 - brakesAt) * STEP_S >= rests_s - STEP_S / 2) speed = 0
      if (angle <= 1e-9) break
      if (speed === 0) {
        mode = 'rest'
        opensAt = k + 1 + dwell
      }
    } else if (mode === 'rest') {
      if (k >= opensAt) mode = 'opening'
    } else {
      const left = given.openAngle - angle
      const slows = (speed * speed) / (2 * openAccel) >= left
      const next = slows ? Math.max(0, speed - openAccel * STEP_S) : Math.min(openSpeed, speed + openAccel * STEP_S)
      angle += ((speed + next) / 2) * STEP_S
      speed = next
      if (angle >= given.openAngle || (slows && speed <= 0)) break
    }
  }
  return { kind: 'clear', relativeSpeed: 0 }
}

/** Of the leaf and the body at the point of the body that lies deepest: by how far that point of the panel moves in a hundredth of a millisecond. */
function relative(given: TurningCase, angle: number, closing: number, place: number, bodySpeed: number): number {
  const y = given.heading * place
  const { panel } = depth(given, angle, y)
  const at = touching(panels(given, angle)[panel] as readonly Point[], given, y)
  const dt = 1e-5
  const [before, after] = [angle + (closing * dt) / 2, angle - (closing * dt) / 2].map(
    (each) => panels(given, each)[panel] as readonly Point[],
  )
  const there = carried(panels(given, angle)[panel] as readonly Point[], at)
  const [p, q] = [placed(before as readonly Point[], there), placed(after as readonly Point[], there)]
  return Math.hypot((q[0] - p[0]) / dt, (q[1] - p[1]) / dt - given.heading * bodySpeed)
}

/** A point of contact: the body's corner in the panel, or the panel's corner in the body, or the middle of both where sides cross. */
function touching(panel: readonly Point[], given: TurningCase, y: number): Point {
  if ('radius' in given.body) {
    const [u, v] = carried(panel, [given.body.x, y])
    return placed(panel, [Math.min(1, Math.max(0, u)), Math.min(1, Math.max(0, v))])
  }
  const body = bodyCorners(given, y)
  const within = (corners: readonly Point[], at: Point) => carried(corners, at).every((u) => u >= -1e-6 && u <= 1 + 1e-6)
  const inside = [...body.filter((at) => within(panel, at)), ...panel.filter((at) => within(body, at))]
  const all = inside.length > 0 ? inside : body
  return [all.reduce((sum, [x]) => sum + x, 0) / all.length, all.reduce((sum, [, at]) => sum + at, 0) / all.length]
}

/** A point as shares of a rectangle's two sides, and back. */
function carried([p, q, , s]: readonly Point[], [x, y]: Point): Point {
  const [a, b, d] = [p as Point, q as Point, s as Point]
  const share = ([ux, uy]: Point) => ((x - a[0]) * ux + (y - a[1]) * uy) / (ux * ux + uy * uy)
  return [share([b[0] - a[0], b[1] - a[1]]), share([d[0] - a[0], d[1] - a[1]])]
}
function placed([p, q, , s]: readonly Point[], [u, v]: Point): Point {
  const [a, b, d] = [p as Point, q as Point, s as Point]
  return [a[0] + u * (b[0] - a[0]) + v * (d[0] - a[0]), a[1] + u * (b[1] - a[1]) + v * (d[1] - a[1])]
}
