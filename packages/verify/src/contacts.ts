import { type Budget, spend } from './budget.ts'
import { type Cycle, forbids } from './cycle.ts'
import { type Json, numberAt, oneOf, own, refuse, textAt, wholeAt } from './json.ts'
import { type Closing, closingOf, isWeak, stoppedAt } from './leaf-motion.ts'
import type { Door, Field, Floor } from './plain.ts'
import { seesAlong } from './seen-at.ts'
import { countsFor } from './sensors.ts'
import { backgroundsOf, type Setting } from './sights.ts'
import { fallsOf, inPlane, metOf, type Stance, stanceAt, stanceBeside, wholeWay } from './stances.ts'
import { AS_WRITTEN } from './tolerances.ts'
import type { Lane, Side, Traffic } from './traffic.ts'
import { mustNotRestOn, type Past, touchAt } from './turning-contact.ts'
import { withinSweep } from './turning-leaf.ts'

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
  /** Where along the way it stands, or lies; Infinity if it goes through. */
  readonly stands: number
  readonly lies: boolean
  readonly begins: number
  readonly enter: number
  readonly leave: number
  /** The way below which a leaf that goes down or along meets the body; or how one that turns is hung. */
  readonly clear: number | Past
}

/** Of each presence field: whether it sees the body at a place of its way, and where it then stands or lies. */
interface Watching {
  readonly field: Field
  readonly isSeen: (place: number) => boolean
  readonly isSeenStanding: (place: number) => boolean
}

/** Checks one contact (docs/evidence.md, "Contacts"): sight is stepped along the way, outputs and leaf follow from it. */
export function contactOf(given: Json, door: Door, traffic: Traffic, budget: Budget, path: string): ProvedContact {
  const named = (name: string) => textAt(own(given, name), `${path}/${name}`)
  const lane = traffic.lanes.find(({ id }) => id === named('lane')) ?? refuse('unknown-id', `${path}/lane`, 'a lane', own(given, 'lane'))
  const state = door.states.find(({ id }) => id === named('state')) ?? refuse('unknown-id', `${path}/state`, 'a state', own(given, 'state'))
  const from = oneOf(own(given, 'from'), `${path}/from`, lane.from)
  const { coming, met: stance } = stancesAt(given, lane, door, from, path)
  const [left, middle, right] = [lane.xMin + coming.half[0], (lane.xMin + lane.xMax) / 2, lane.xMax - coming.half[0]]
  const x = numberAt(own(given, 'x_mm'), `${path}/x_mm`, Math.min(left, middle) - 1e-6, Math.max(right, middle) + 1e-6)
  const opening = numberAt(own(given, 'opening_mm'), `${path}/opening_mm`)
  if (![wholeWay(traffic, state.floor), ...traffic.partial].some((each) => Math.abs(each - opening) < 1e-6))
    refuse('out-of-range', `${path}/opening_mm`, 'an opening from which the leaf closes', opening)
  const { enter, leave, clear } = meetingOf(given, traffic, state.floor, { coming, met: stance, x, from }, path)
  const pace = numberAt(own(given, 'pace_mm_per_s'), `${path}/pace_mm_per_s`, 0, lane.fastest * (1 + 1e-9))
  const standsAt = own(given, 'standsAt_mm')
  const stands = standsAt === null ? Infinity : numberAt(standsAt, `${path}/standsAt_mm`, enter, leave)
  const lies = stance !== coming
  if (pace === 0 || lies ? stands === Infinity : pace < lane.slowest * (1 - 1e-9))
    refuse('out-of-range', `${path}/pace_mm_per_s`, `a pace from ${lane.slowest}, or a place to stand`, pace)
  if (lies && pace > 0 && pace < lane.slowest * (1 - 1e-9))
    refuse('out-of-range', `${path}/pace_mm_per_s`, `a pace from ${lane.slowest}`, pace)
  const begins = numberAt(own(given, 'begins_s'), `${path}/begins_s`)
  const contact = numberAt(own(given, 'contact_s'), `${path}/contact_s`, 0)
  const closing = closingOf(opening, traffic.drive)
  const one: Case = { lane, closing, cycle: traffic.cycle, pace, stands, lies, begins, enter, leave, clear }

  const setting: Setting = { door, state, tolerances: AS_WRITTEN, fields: [] }
  const around = { setting, backgrounds: backgroundsOf(setting, (amount) => spend(budget, amount, path)) }
  const fields = door.fields.filter(({ acts }) => acts === 'presence')
  const unknown = fields.find(({ times }) => times === undefined)
  if (unknown) refuse('cannot-show', path, 'presence fields with known times', unknown.name)
  const byLeaf = fields.find((field) => field.byLeaf)
  // with the leaf away they see more, and stop it sooner
  if (byLeaf && traffic.leaf.hung) refuse('cannot-show', path, 'fields that see alike wherever a leaf that turns is', byLeaf.name)
  if (byLeaf && isWeak(closing)) refuse('cannot-show', path, 'fields that see alike wherever a leaf with weak stops is', byLeaf.name)
  const sight = (field: Field, who: Stance) => {
    const at = seesAlong(field, who, x, around, (beams) => spend(budget, beams, path))
    return (place: number) => {
      spend(budget, 1, path)
      return at(from === 'b' ? place : -place)
    }
  }
  const watching = fields.map((field): Watching => {
    const isSeen = sight(field, coming)
    return { field, isSeen, isSeenStanding: lies ? sight(field, stance) : isSeen }
  })
  const [least, most] = struckAt(one, contact, watching, coming.half[1], path)
  const claimed = numberAt(own(given, 'relative_mm_per_s'), `${path}/relative_mm_per_s`, 0)
  if (claimed < least - SPEED_OFF || claimed > most + SPEED_OFF)
    refuse('not-shown', `${path}/relative_mm_per_s`, `${least.toFixed(1)} to ${most.toFixed(1)}`, claimed)
  return { lane: lane.id, state: state.id, body: coming.body.id, relative_mm_per_s: least }
}

/** Where along the way the leaf can meet the body, and at what. */
function meetingOf(
  given: Json,
  traffic: Traffic,
  floor: Floor,
  who: Omit<Past, 'hung'>,
  path: string,
): Pick<Case, 'enter' | 'leave' | 'clear'> {
  const { hung, half } = traffic.leaf
  const { met, x, from } = who
  if (hung) {
    if (own(given, 'met') !== undefined) refuse('unknown', `${path}/met`, 'nothing, as any part may be met', own(given, 'met'))
    return { ...withinSweep(hung, met, from), clear: { ...who, hung } }
  }
  const index = met.ofParts ? wholeAt(own(given, 'met'), `${path}/met`, 0, met.solids.length - 1) : 0
  const part = metOf(traffic, floor, met, x).find((each) => each.index === index)
  if (part === undefined) return refuse('out-of-range', `${path}/met`, 'a part that the leaf can meet', index)
  return { ...inPlane(part, from, half), clear: part.clear }
}

/** As whom it comes, and as whom it is met: another only where it has fallen. */
function stancesAt(given: Json, lane: Lane, door: Door, from: Side, path: string): { readonly coming: Stance; readonly met: Stance } {
  const id = textAt(own(given, 'body'), `${path}/body`)
  const body = door.bodies.find((each) => each.id === id && lane.bodies.includes(id))
  if (body === undefined) return refuse('unknown-id', `${path}/body`, 'a body of the lane', id)
  const yaw = numberAt(own(given, 'yaw_deg'), `${path}/yaw_deg`)
  const postureAt = (name: string) => {
    const posture = wholeAt(own(given, name), `${path}/${name}`, 0, body.passers.length - 1)
    const passer = body.passers[posture]
    return passer === undefined ? refuse('out-of-range', `${path}/${name}`, 'a posture', posture) : { body, posture, passer }
  }
  const self = postureAt('posture')
  const beside = own(given, 'beside')
  const lying = own(given, 'lying') === undefined ? undefined : postureAt('lying')
  if (beside !== undefined) {
    if (lying !== undefined) refuse('unknown', `${path}/lying`, 'one that falls alone', lying.posture)
    const stance =
      stanceBeside(lane, door, self, beside, from) ?? refuse('unknown-id', `${path}/beside`, 'a body that passes so close', beside)
    return { coming: stance, met: stance }
  }
  const turnedAt = ({ posture, passer }: typeof self, given_deg: number) => {
    const half = passer.ofParts && from === 'a' ? 180 : 0
    const [least, most] = passer.yaw_deg
    if (!(given_deg >= least + half - 1e-9 && given_deg <= most + half + 1e-9))
      refuse('out-of-range', `${path}/yaw_deg`, `${least + half} to ${most + half}`, given_deg)
    return stanceAt(body, posture, passer, given_deg, [from])
  }
  if (lying === undefined) {
    const passes = body.passers.some((each) => !each.lies)
    if (self.passer.lies && passes) refuse('out-of-range', `${path}/posture`, 'a posture that passes', self.posture)
    const stance = turnedAt(self, yaw)
    return { coming: stance, met: stance }
  }
  const fall = fallsOf(lane, door).find(
    (each) =>
      each.from === from && each.upright.body === body && each.upright.posture === self.posture && each.lying.posture === lying.posture,
  )
  if (fall === undefined) return refuse('out-of-range', `${path}/lying`, 'a fall of this lane', lying.posture)
  return { coming: fall.upright, met: fall.lying }
}

/** How far instants may be off that follow from sight. */
function slackOf(pace: number): number {
  return pace > 0 ? (2 * STEP) / pace : 1e-6
}

/** Between what the relative speed at the contact lies; refuses unless it is one while the leaf moves toward shut, in a closing that may begin when it does. */
function struckAt(one: Case, contact: number, watching: readonly Watching[], half: number, path: string): readonly [number, number] {
  const { pace, stands, lies, begins, enter, leave } = one
  if (pace === 0) {
    // it stands from the first: nothing that holds it may see it, and the closing runs to the contact
    const held = watching.find(
      ({ field, isSeenStanding }) =>
        countsFor(field, { acts: 'presence', longestStay_s: one.lane.longestStay_s }) && isSeenStanding(stands),
    )
    if (held !== undefined) refuse('not-shown', path, 'a body that no field sees where it stands', held.field.name)
    return contactOfLeaf(one, contact, Infinity, 0, path)
  }
  const going = (begins + contact) * pace
  const place = Math.min(stands, going)
  if (place < enter - STEP || place > leave + STEP || (lies && going < stands - 2 * STEP))
    refuse('not-shown', `${path}/contact_s`, "a body in the leaf's plane", `its middle ${place} mm along its way`)
  const far = Math.min(LARGEST_FAR, farOf(watching.map(({ field }) => field)) + 2000 + half)
  const slack = slackOf(pace)
  let stop = Infinity
  for (const { field, isSeen, isSeenStanding } of watching) {
    const seen = stretches(far, Math.min(stands, place + STEP), isSeen)
    const spans = spansOf(stands <= place + STEP && isSeenStanding(stands) ? held(seen, stands) : seen, pace, field.times)
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
  return contactOfLeaf(one, contact, stop - begins, stands <= going || lies ? 0 : pace, path)
}

/** Who is seen where it stands, or lies, is seen there for ever. */
function held(seen: readonly (readonly [number, number])[], stands: number): readonly (readonly [number, number])[] {
  const last = seen.at(-1)
  if (last !== undefined && last[1] >= stands - STEP) return [...seen.slice(0, -1), [last[0], Infinity]]
  return [...seen, [stands, Infinity]]
}

/** Of the leaf that is stopped after having run for `ran`, with what sight may be off taken in its favour of being met: both speeds that it may have. */
function contactOfLeaf(
  { closing, clear, pace, stands, lies, begins }: Case,
  contact: number,
  ran: number,
  bodySpeed: number,
  path: string,
): readonly [number, number] {
  const slack = slackOf(pace)
  const stopped = Math.max(0, ran)
  const leafAt = (time: number) => (stopped === Infinity ? stoppedAt(closing, time, 0) : stoppedAt(closing, stopped, time - stopped))
  const { left } = leafAt(contact)
  if (typeof clear !== 'number') {
    const placeAt = (time: number) => (pace === 0 ? stands : Math.min(stands, (begins + time) * pace))
    const off = ran === Infinity ? 0 : slack
    const speeds = [contact - off, contact, contact + off].map((time) => leafAt(Math.max(0, time)).speed)
    if (!speeds.some((speed) => speed > 0)) refuse('not-shown', `${path}/contact_s`, 'a leaf that still closes', 'at rest')
    mustNotRestOn(clear, closing.from, { place: placeAt(0), comes: pace > 0, lies: lies && begins * pace >= stands }, path)
    return touchAt(clear, { left, speeds, place: placeAt(contact), bodySpeed, off: off * restsBy(closing) }, path)
  }
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

/** How far a stop that comes so much later may move the edge, by any time: it has sped up until then, and goes on for longer. */
function restsBy(closing: Closing): number {
  const { accel, decel } = closing.drive
  return topSpeed(closing) * (1 + accel / decel)
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
  for (let place = -far; place <= last; place += STEP) {
    const now = isSeen(place)
    const open = found.at(-1)
    if (now && before && open !== undefined) open[1] = place
    else if (now) found.push([place, place])
    before = now
  }
  return found
}

/** When the output forbids closing. */
function spansOf(
  visible: readonly (readonly [number, number])[],
  pace: number,
  times: Field['times'],
): readonly { readonly on: number; readonly off: number }[] {
  const { response, hold } = times ?? { response: Infinity, hold: 0 }
  const spans: { on: number; off: number }[] = []
  for (const [from, to] of visible) {
    const [start, end] = [from / pace, to / pace]
    const last = spans.at(-1)
    if (last !== undefined && start <= last.off) last.off = end + hold
    else if (end - start >= response) spans.push({ on: start + response, off: end + hold })
  }
  return spans
}
