import { type Budget, spend } from './budget.ts'
import { type Json, listAt, numberAt, objectAt, own, refuse, textAt, wholeAt } from './json.ts'
import { closingOf } from './leaf-motion.ts'
import { checkParts, type View, type Way } from './never-struck.ts'
import type { Body, Door, Field, Floor, Posture, State } from './plain.ts'
import { countsFor } from './sensors.ts'
import { readingsOf, type Setting, type Sight, sightsOf, watchOf } from './sights.ts'
import { cosineOf, sineOf } from './sine.ts'
import { type Slice, targetOf } from './slices.ts'
import { OPEN, rootsOf, walkTree } from './tile-tree.ts'
import { AS_WRITTEN } from './tolerances.ts'
import type { Lane, Traffic } from './traffic.ts'

/** In this lane and state nobody is struck by the closing leaf, as docs/evidence.md says it. */
export interface ProvedPassage {
  readonly lane: string
  readonly state: string
  readonly ways: number
}

const FARTHEST = 100_000

/** Checks one entry of `passages`; refuses with the first piece that does not hold. */
export function passageOf(given: Json, door: Door, traffic: Traffic, budget: Budget, path: string): ProvedPassage {
  const laneId = textAt(own(given, 'lane'), `${path}/lane`)
  const stateId = textAt(own(given, 'state'), `${path}/state`)
  const lane = traffic.lanes.find(({ id }) => id === laneId) ?? refuse('unknown-id', `${path}/lane`, 'a lane of the door', laneId)
  const state = door.states.find(({ id }) => id === stateId) ?? refuse('unknown-id', `${path}/state`, 'a state of the door', stateId)
  const fields = fieldsAt(own(given, 'fields'), door, lane, `${path}/fields`)
  const lists = listAt(own(given, 'sights'), `${path}/sights`, { least: fields.length, most: fields.length })
  const sights = fields.map((field, f) => sightsOf(lists[f], [field], `${path}/sights/${f}`))
  const far = numberAt(own(given, 'far_mm'), `${path}/far_mm`, 0, FARTHEST)
  const setting: Setting = { door, state, tolerances: AS_WRITTEN, fields }
  const readingAt = readingsOf(setting, (amount) => spend(budget, amount, path))
  const expected = standsOf(lane, door)
  const stands = listAt(own(given, 'stands'), `${path}/stands`, { least: expected.length, most: expected.length })
  let ways = 0
  for (const [i, { body, posture, shape, x }] of expected.entries()) {
    const at = `${path}/stands/${i}`
    const stand = objectAt(stands[i], at)
    if (own(stand, 'body') !== body.id) refuse('wrong-order', `${at}/body`, body.id, own(stand, 'body'))
    if (wholeAt(own(stand, 'posture'), `${at}/posture`, 0, 1000) !== posture)
      refuse('wrong-order', `${at}/posture`, `${posture}`, own(stand, 'posture'))
    const seen = listAt(own(stand, 'seen'), `${at}/seen`, { least: fields.length, most: fields.length })
    const slice: Slice = { body, posture, shape, from_deg: yawOf(shape), to_deg: yawOf(shape), trees: [] }
    const visible = fields.map((_, f) =>
      stretchesOf(seen[f], { slice, x, far, setting, sights: sights[f] ?? [], readingAt, budget, path: `${at}/seen/${f}` }),
    )
    ways += closingsOf(own(stand, 'closings'), { lane, traffic, state, shape, x, fields, visible, budget, path: `${at}/closings` })
  }
  return { lane: laneId, state: stateId, ways }
}

/** Only fields that hold a body for as long as it may stand, whose times are known and which act at every height of the leaf. */
function fieldsAt(listed: unknown, door: Door, lane: Lane, path: string): readonly Field[] {
  const names = new Set<string>()
  return listAt(listed, path, { most: 1024 }).map((each, i) => {
    const name = textAt(each, `${path}/${i}`)
    const field = door.fields.find((one) => one.name === name) ?? refuse('unknown-id', `${path}/${i}`, 'a field of the door', name)
    if (names.has(name)) refuse('duplicate-id', `${path}/${i}`, 'a field that stands once', name)
    names.add(name)
    const counts = countsFor(field, { acts: 'presence', longestStay_s: lane.longestStay_s })
    if (!counts || field.times === undefined) return refuse('wrong-field', `${path}/${i}`, 'a presence field that can be counted on', name)
    return field
  })
}

interface Stand {
  readonly body: Body
  readonly posture: number
  readonly shape: Posture
  readonly x: number
}

/** Every posture of every body of the lane, at both edges of the lane and in its middle. */
function standsOf(lane: Lane, door: Door): readonly Stand[] {
  return lane.bodies.flatMap((id) => {
    const body = door.bodies.find((each) => each.id === id)
    if (body === undefined) throw new Error(`lane ${lane.id} must name a body of the door, got ${id}`)
    if (body.ofParts) refuse('several-parts', `bodies/${id}`, 'a body of one part', 'several')
    return body.postures.flatMap((shape, posture) => {
      if (shape.shape === 'box' && shape.yaw_deg[0] !== shape.yaw_deg[1])
        refuse('cannot-show', `bodies/${id}/postures/${posture}`, 'one yaw', 'a range')
      const middle = (lane.xMin + lane.xMax) / 2
      const [left, right] = [lane.xMin + halfOf(shape)[0], lane.xMax - halfOf(shape)[0]]
      return (left < right ? [left, middle, right] : [middle]).map((x) => ({ body, posture, shape, x }))
    })
  })
}

function yawOf(shape: Posture): number {
  return shape.shape === 'box' ? shape.yaw_deg[0] : 0
}

/** Half of its extent along x and y. */
export function halfOf(shape: Posture): readonly [x: number, y: number] {
  if (shape.shape === 'cylinder') return [shape.radius, shape.radius]
  const [c, s] = [Math.abs(cosineOf(yawOf(shape))) / 2, Math.abs(sineOf(yawOf(shape))) / 2]
  const [a, b] = shape.size
  return [c * a + s * b, s * a + c * b]
}

interface Along {
  readonly slice: Slice
  readonly x: number
  readonly far: number
  readonly setting: Setting
  readonly sights: readonly Sight[]
  readonly readingAt: ReturnType<typeof readingsOf>
  readonly budget: Budget
  readonly path: string
}

/** Where along y the body is seen, by trees over a tile without width. */
function stretchesOf(
  given: unknown,
  { slice, x, far, setting, sights, readingAt, budget, path }: Along,
): readonly (readonly [number, number])[] {
  const roots = rootsOf({ xMin: x, xMax: x, yMin: -far, yMax: far }, setting.state.floor)
  const trees = listAt(given, path, { least: roots.length, most: roots.length })
  const stretches: [number, number][] = []
  for (const [k, root] of roots.entries()) {
    const at = `${path}/${k}`
    const target = targetOf(slice, root.floor)
    const watches = new Map<number, ReturnType<typeof watchOf>>()
    walkTree(listAt(trees[k], at, { least: 1, most: 1_000_000 }), root.tile, at, (leaf, tile, index) => {
      spend(budget, 1, at)
      if (leaf === OPEN) return
      const sight = sights[leaf] ?? refuse('out-of-range', `${at}/${index}`, `one of ${sights.length} sights`, leaf)
      const known = watches.get(leaf)
      spend(budget, sight.faces.length * (known === undefined ? 20 : 1), at)
      const watch = known ?? watchOf(sight, target, setting, readingAt)
      watches.set(leaf, watch)
      const failed = watch(tile)
      if (failed !== undefined)
        refuse(
          'not-shown',
          `${at}/${index}`,
          `${failed.fails} (beam ${failed.beam} of plane ${sight.plane.id})`,
          `y ${tile.yMin} to ${tile.yMax}`,
        )
      const last = stretches.at(-1)
      if (last !== undefined && tile.yMin <= last[1]) last[1] = tile.yMax
      else stretches.push([tile.yMin, tile.yMax])
    })
  }
  return stretches
}

interface Closings {
  readonly lane: Lane
  readonly traffic: Traffic
  readonly state: State
  readonly shape: Posture
  readonly x: number
  readonly fields: readonly Field[]
  readonly visible: readonly (readonly (readonly [number, number])[])[]
  readonly budget: Budget
  readonly path: string
}

/** Every direction of the lane, and every opening from which the leaf may close. */
function closingsOf(given: unknown, { lane, traffic, state, shape, x, fields, visible, budget, path }: Closings): number {
  const { whole, clear } = wayOf(traffic, state.floor, shape, x)
  const openings = [whole, ...traffic.partial.filter((each) => each < whole)]
  const expected = lane.from.flatMap((from) => openings.map((opening) => ({ from, opening })))
  const closings = listAt(given, path, { least: expected.length, most: expected.length })
  const reach = traffic.leaf.half + halfOf(shape)[1]
  for (const [i, { from, opening }] of expected.entries()) {
    const closing = objectAt(closings[i], `${path}/${i}`)
    if (own(closing, 'from') !== from) refuse('wrong-order', `${path}/${i}/from`, from, own(closing, 'from'))
    const written = numberAt(own(closing, 'opening_mm'), `${path}/${i}/opening_mm`)
    if (Math.abs(written - opening) > 1e-6) refuse('wrong-order', `${path}/${i}/opening_mm`, `${opening}`, written)
    const views: readonly View[] = fields.map(({ times }, f) => ({
      visible: from === 'b' ? (visible[f] ?? []) : (visible[f] ?? []).map(([y0, y1]) => [-y1, -y0] as const).reverse(),
      response: times?.response ?? Infinity,
      hold: times?.hold ?? 0,
    }))
    const way: Way = { closing: closingOf(opening, traffic.drive), enter: -reach, leave: reach, clear, views, cycle: traffic.cycle }
    checkParts(way, [1 / lane.fastest, 1 / lane.slowest], own(closing, 'parts'), budget, `${path}/${i}/parts`)
  }
  return expected.length
}

/** The whole way of the leaf, and how much of it a body at x needs. */
export function wayOf(
  { leaf, width, height }: Traffic,
  floor: Floor,
  shape: Posture,
  x: number,
): { readonly whole: number; readonly clear: number } {
  const [halfX, halfY] = halfOf(shape)
  if (leaf.travel === 'down') {
    const shut = highest(floor, [0, width], leaf.half)
    const top = shape.shape === 'box' ? shape.size[2] : shape.height
    return { whole: height - shut, clear: highest(floor, [x], leaf.half + halfY) + top - shut }
  }
  if (leaf.travel === 'toward-zero') return { whole: width, clear: x + halfX }
  if (leaf.travel === 'toward-width') return { whole: width, clear: width - x + halfX }
  return { whole: width / 2, clear: Math.abs(x - width / 2) + halfX }
}

/** The highest point of the floor at these x, up to so far to both sides of y = 0. */
function highest({ profile, slope }: Floor, xs: readonly number[], far: number): number {
  const at = (y: number): number => {
    const after = profile.findIndex(([each]) => each >= y)
    const [last, next] = [profile[after === -1 ? profile.length - 1 : after - 1], profile[after === -1 ? profile.length - 1 : after]]
    if (next === undefined) return 0
    if (last === undefined || next[0] === last[0]) return next[1]
    return last[1] + ((y - last[0]) * (next[1] - last[1])) / (next[0] - last[0])
  }
  const ys = [-far, ...profile.map(([y]) => y).filter((y) => -far < y && y < far), far]
  return Math.max(...ys.flatMap((y) => xs.map((x) => at(y) + slope * x)))
}
