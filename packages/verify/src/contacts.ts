import { type Budget, spend } from './budget.ts'
import { type Cycle, forbids } from './cycle.ts'
import { type Json, numberAt, oneOf, own, refuse, textAt, wholeAt } from './json.ts'
import { type Closing, closingOf, stoppedAt } from './leaf-motion.ts'
import { halfOf, wayOf } from './passages.ts'
import type { Door, Field, Posture } from './plain.ts'
import { countsFor } from './sensors.ts'
import { backgroundsOf, type Setting } from './sights.ts'
import { AS_WRITTEN } from './tolerances.ts'
import type { Lane, Traffic } from './traffic.ts'
import { seesAt, standingAt } from './worst-case.ts'

/** In this lane and state a body is struck, in one case that was stepped again. */
export interface ProvedContact {
  readonly lane: string
  readonly state: string
  readonly body: string
  readonly relative_mm_per_s: number
}

/** Sight is asked at places so far apart: what is claimed may be off by as much. */
const STEP = 2
const LARGEST_FAR = 70_000
/** What a claimed speed may be off beside that, mm per s. */
const SPEED_OFF = 2

interface Case {
  readonly lane: Lane
  readonly closing: Closing
  readonly cycle: Cycle
  readonly pace: number
  /** Where along the way it stands; Infinity if it goes through. */
  readonly stands: number
  readonly begins: number
  readonly enter: number
  readonly clear: number
}

/** Checks one contact (docs/evidence.md, "Contacts"): sight is stepped along the way, outputs and leaf follow from it. */
export function contactOf(given: Json, door: Door, traffic: Traffic, budget: Budget, path: string): ProvedContact {
  const named = (name: string) => textAt(own(given, name), `${path}/${name}`)
  const lane = traffic.lanes.find(({ id }) => id === named('lane')) ?? refuse('unknown-id', `${path}/lane`, 'a lane', own(given, 'lane'))
  const state = door.states.find(({ id }) => id === named('state')) ?? refuse('unknown-id', `${path}/state`, 'a state', own(given, 'state'))
  const body = door.bodies.find(({ id }) => id === named('body') && lane.bodies.includes(id))
  if (body === undefined || body.ofParts) return refuse('unknown-id', `${path}/body`, 'a body of the lane, of one part', own(given, 'body'))
  const shape = body.postures[wholeAt(own(given, 'posture'), `${path}/posture`, 0, body.postures.length - 1)]
  if (shape === undefined) return refuse('out-of-range', `${path}/posture`, 'a posture', 'none')
  const yaws = shape.shape === 'box' ? shape.yaw_deg : ([0, 0] as const)
  const yaw = numberAt(own(given, 'yaw_deg'), `${path}/yaw_deg`, yaws[0] - 1e-9, yaws[1] + 1e-9)
  const turned: Posture = shape.shape === 'box' ? { ...shape, yaw_deg: [yaw, yaw] } : shape
  const from = oneOf(own(given, 'from'), `${path}/from`, lane.from)
  const [halfX, halfY] = halfOf(turned)
  const middle = (lane.xMin + lane.xMax) / 2
  const [left, right] = [lane.xMin + halfX, lane.xMax - halfX]
  const x = numberAt(own(given, 'x_mm'), `${path}/x_mm`, Math.min(left, middle) - 1e-6, Math.max(right, middle) + 1e-6)
  const { whole, clear } = wayOf(traffic, state.floor, turned, x)
  const opening = numberAt(own(given, 'opening_mm'), `${path}/opening_mm`)
  if (![whole, ...traffic.partial].some((each) => Math.abs(each - opening) < 1e-6))
    refuse('out-of-range', `${path}/opening_mm`, 'an opening from which the leaf closes', opening)
  const pace = numberAt(own(given, 'pace_mm_per_s'), `${path}/pace_mm_per_s`, 0, lane.fastest * (1 + 1e-9))
  const standsAt = own(given, 'standsAt_mm')
  const reach = traffic.leaf.half + halfY
  const stands = standsAt === null ? Infinity : numberAt(standsAt, `${path}/standsAt_mm`, -reach, reach)
  if (pace === 0 ? stands === Infinity : pace < lane.slowest * (1 - 1e-9))
    refuse('out-of-range', `${path}/pace_mm_per_s`, `a pace from ${lane.slowest}, or a place to stand`, pace)
  const begins = numberAt(own(given, 'begins_s'), `${path}/begins_s`)
  const contact = numberAt(own(given, 'contact_s'), `${path}/contact_s`, 0)
  const one: Case = { lane, closing: closingOf(opening, traffic.drive), cycle: traffic.cycle, pace, stands, begins, enter: -reach, clear }

  const setting: Setting = { door, state, tolerances: AS_WRITTEN, fields: [] }
  const around = { setting, backgrounds: backgroundsOf(setting, (amount) => spend(budget, amount, path)) }
  const placed = { standing: standingAt(turned, yaw), reflectance: body.reflectance }
  const fields = door.fields.filter(({ acts }) => acts === 'presence')
  const unknown = fields.find(({ times }) => times === undefined)
  if (unknown) refuse('cannot-show', path, 'presence fields with known times that see alike wherever the leaf is', unknown.name)
  const isSeen = (field: Field, place: number) => {
    spend(budget, 2 * field.sensor.planes.reduce((sum, { beams }) => sum + beams.length, 0), path)
    return seesAt(field, placed, [x, from === 'b' ? place : -place], around)
  }
  const [least, most] = struckAt(one, contact, fields, isSeen, path)
  const claimed = numberAt(own(given, 'relative_mm_per_s'), `${path}/relative_mm_per_s`, 0)
  if (claimed < least - SPEED_OFF || claimed > most + SPEED_OFF)
    refuse('not-shown', `${path}/relative_mm_per_s`, `${least.toFixed(1)} to ${most.toFixed(1)}`, claimed)
  return { lane: lane.id, state: state.id, body: body.id, relative_mm_per_s: least }
}

/** How far instants may be off that follow from sight. */
function slackOf(pace: number): number {
  return pace > 0 ? (2 * STEP) / pace : 1e-6
}

/** Between what the relative speed at the contact lies; refuses unless it is one while the leaf moves toward shut, in a closing that may begin when it does. */
function struckAt(
  one: Case,
  contact: number,
  fields: readonly Field[],
  isSeen: (field: Field, place: number) => boolean,
  path: string,
): readonly [number, number] {
  const { pace, stands, begins, enter } = one
  if (pace === 0) {
    // it stands from the first: nothing that holds it may see it, and the closing runs to the contact
    const held = fields.find(
      (field) => countsFor(field, { acts: 'presence', longestStay_s: one.lane.longestStay_s }) && isSeen(field, stands),
    )
    if (held !== undefined) refuse('not-shown', path, 'a body that no field sees where it stands', held.name)
    return contactOfLeaf(one, contact, Infinity, 0, path)
  }
  const place = Math.min(stands, (begins + contact) * pace)
  if (place < enter - STEP || place > -enter + STEP)
    refuse('not-shown', `${path}/contact_s`, "a body in the leaf's plane", `its middle ${place} mm along its way`)
  const far = Math.min(LARGEST_FAR, farOf(fields) + 2000)
  const slack = slackOf(pace)
  let stop = Infinity
  for (const field of fields) {
    const spans = spansOf(
      stretches(far, place, (at) => isSeen(field, at)),
      stands,
      pace,
      field.times,
    )
    for (const { on, off } of spans) {
      if (forbids(one.cycle, { on, off }, begins, slack))
        refuse(
          'not-shown',
          `${path}/begins_s`,
          'an instant at which no output, and no time after it, forbids closing',
          `${field.name} does`,
        )
      if (on >= begins - slack) stop = Math.min(stop, on)
    }
  }
  return contactOfLeaf(one, contact, stop - begins, stands <= (begins + contact) * pace ? 0 : pace, path)
}

/** Of the leaf that is stopped after having run for `ran`, with what sight may be off taken in its favour of being met: both speeds that it may have. */
function contactOfLeaf(
  { closing, clear, pace }: Case,
  contact: number,
  ran: number,
  bodySpeed: number,
  path: string,
): readonly [number, number] {
  const slack = slackOf(pace)
  const stopped = Math.max(0, ran)
  const leafAt = (time: number) => (stopped === Infinity ? stoppedAt(closing, time, 0) : stoppedAt(closing, stopped, time - stopped))
  const { left } = leafAt(contact)
  if (left > clear + 1e-3 + slack * topSpeed(closing)) refuse('not-shown', path, `a leaf at most ${clear} mm from shut`, left)
  const speeds = [contact - slack, contact, contact + slack].map((time) => leafAt(Math.max(0, time)).speed)
  if (contact > slack && !speeds.some((speed) => speed > 0)) refuse('not-shown', `${path}/contact_s`, 'a leaf that still closes', 'at rest')
  const relative = (speed: number) => Math.sqrt(bodySpeed * bodySpeed + speed * speed)
  return [relative(Math.min(...speeds)), relative(Math.max(...speeds))]
}

/** A measured curve may begin faster than the closing. */
function topSpeed({ fastest, drive: { curve = [] } }: Closing): number {
  let [most, at, gone] = [fastest, 0, 0]
  for (const [time, way] of curve) {
    most = Math.max(most, (way - gone) / (time - at))
    ;[at, gone] = [time, way]
  }
  return most
}

function farOf(fields: readonly Field[]): number {
  return fields.reduce((most, { sensor, y }) => {
    const starts = sensor.planes.flatMap(({ beams }) =>
      beams.map(({ from, along, length }) => Math.max(Math.abs(from[1]), sensor.segments ? Math.abs(from[1] + along[1] * length) : 0)),
    )
    const reach = starts.reduce((far, start) => Math.max(far, start), 0) + (sensor.segments ? 0 : sensor.maxRange)
    return Math.max(most, Math.min(reach, Math.max(Math.abs(y[0]), Math.abs(y[1]))))
  }, 0)
}

function stretches(far: number, last: number, isSeen: (place: number) => boolean): readonly (readonly [number, number])[] {
  const found: [number, number][] = []
  let before = false
  for (let place = -far; place <= last + STEP; place += STEP) {
    const now = isSeen(place)
    const open = found.at(-1)
    if (now && before && open !== undefined) open[1] = place
    else if (now) found.push([place, place])
    before = now
  }
  return found
}

/** When the output forbids closing; a body that stands within a stretch is seen for ever. */
function spansOf(
  visible: readonly (readonly [number, number])[],
  stands: number,
  pace: number,
  times: Field['times'],
): readonly { readonly on: number; readonly off: number }[] {
  const { response, hold } = times ?? { response: Infinity, hold: 0 }
  const spans: { on: number; off: number }[] = []
  for (const [from, to] of visible) {
    if (from > stands) break
    const [start, end] = [from / pace, stands <= to ? Infinity : to / pace]
    const last = spans.at(-1)
    if (last !== undefined && start <= last.off) last.off = end + hold
    else if (end - start >= response) spans.push({ on: start + response, off: end + hold })
  }
  return spans
}
