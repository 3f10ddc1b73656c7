import { fieldName } from '../coverage/scene.ts'
import type { Course, Reading, TimeSpan } from '../model/course.ts'
import { endOf, type LeafRun, wayAt } from '../motion/leaf-run.ts'
import type { LaneContact } from './lane-verdict.ts'
import { spansOf, timeAt } from './output.ts'

/** A leaf that stays where it stopped, and a body that stays in the doorway, are shown so much longer. */
const STAYS_S = 1
/** Between two readings the edge is nowhere farther off than this from where the straight line says. */
const NEAR_MM = 1
/** Odd: the middle of an even motion lies on the line between its ends. */
const FIRST_PARTS = 5
const MOST_HALVINGS = 6

/** One contact, or the nearest passage, over time, with the warning before its closing: for a drawing, not for a verdict. */
export function courseOf(contact: LaneContact, isContact: boolean, warning_s = 0): Course {
  const { stance, x_mm, from, opening_mm, run, at_s, enters_s, passage } = contact
  const ends = endsOf(contact, warning_s)
  const leaves_s = contact.stands ? Infinity : timeOfPlace(contact, passage.leave_mm)
  const side = from === 'b' ? 1 : -1
  return {
    body: stance.body.id,
    posture: stance.index,
    yaw_rad: stance.yaw_rad,
    x_mm,
    from,
    opening_mm,
    clear_mm: passage.clear,
    leaf: leafReadings(run, at_s, ends),
    place: placeReadings(contact, ends).map(([t_s, mm]): Reading => [t_s, side * mm + 0]),
    ...(Number.isFinite(enters_s) ? { enters_s } : {}),
    ...(Number.isFinite(leaves_s) ? { leaves_s } : {}),
    fields: fieldsOf(contact, ends),
    ...(warning_s > 0 ? { warns_s: -warning_s } : {}),
    ...(Number.isFinite(run.stop_s) && run.brake_s < run.rest_s ? { brake_s: run.brake_s } : {}),
    ...(run.isShut ? {} : { rest_s: run.rest_s }),
    ...(Number.isFinite(run.opens_s) ? { opens_s: run.opens_s } : {}),
    at_s,
    isContact,
  }
}

/** From the command to close, or before it where the body comes into sight or into the plane, to where leaf and body are done with each other. */
function endsOf(contact: LaneContact, warning_s: number): TimeSpan {
  const { run, at_s, enters_s, seen_s, passage, stands } = contact
  const leaves_s = stands ? -Infinity : timeOfPlace(contact, passage.leave_mm)
  const end_s = endOf(run)
  const last_s = Number.isFinite(end_s) ? end_s : run.rest_s + STAYS_S
  const begins_s = [0 - warning_s, enters_s, seen_s ?? 0].filter(Number.isFinite)
  return { from_s: Math.min(...begins_s), to_s: Math.max(last_s, at_s, ...[leaves_s].filter(Number.isFinite)) }
}

/** When the middle of the body is at a place of its way; a body that stands is nowhere else. */
function timeOfPlace({ enters_s, entersAt_mm, pace, place_mm, stands }: LaneContact, wanted_mm: number): number {
  if (pace === 0) return wanted_mm <= place_mm ? -Infinity : Infinity
  if (stands && wanted_mm > place_mm) return Infinity
  return enters_s + (wanted_mm - entersAt_mm) / pace
}

function placeReadings(contact: LaneContact, { from_s, to_s }: TimeSpan): readonly Reading[] {
  const { pace, place_mm, enters_s, entersAt_mm, stands } = contact
  if (pace === 0) return [[from_s, place_mm]]
  const at = (t_s: number): Reading => [t_s, entersAt_mm + (t_s - enters_s) * pace]
  const stops_s = stands ? timeOfPlace(contact, place_mm) : to_s
  if (stops_s <= from_s) return [[from_s, place_mm]]
  return stands ? [at(from_s), [stops_s, place_mm]] : [at(from_s), at(to_s)]
}

/** Exact at each reading, close enough between: halved until the middle lies on the line. */
function leafReadings(run: LeafRun, met_s: number, { from_s, to_s }: TimeSpan): readonly Reading[] {
  const cuts = [from_s, 0, met_s, run.brake_s, run.rest_s, run.opens_s, endOf(run), to_s].filter((t_s) => t_s >= from_s && t_s <= to_s)
  const knots = [...new Set(cuts)].sort((a, b) => a - b)
  const at = (t_s: number): Reading => [t_s, wayAt(run, t_s)]
  const readings: Reading[] = [at(from_s)]
  const fill = (a: Reading, b: Reading, depth: number): void => {
    const [middle_s, middle] = at((a[0] + b[0]) / 2)
    if (depth < MOST_HALVINGS && Math.abs(middle - (a[1] + b[1]) / 2) > NEAR_MM) {
      fill(a, [middle_s, middle], depth + 1)
      fill([middle_s, middle], b, depth + 1)
    } else readings.push(b)
  }
  for (const [i, to] of knots.entries()) {
    const start_s = knots[i - 1]
    if (start_s === undefined) continue
    const moves = Math.abs(wayAt(run, start_s) - wayAt(run, to)) > NEAR_MM
    const parts = moves ? FIRST_PARTS : 1
    for (let k = 0; k < parts; k++)
      fill(at(start_s + ((to - start_s) * k) / parts), at(k === parts - 1 ? to : start_s + ((to - start_s) * (k + 1)) / parts), 0)
  }
  return readings
}

/** With places turned into times the stretches are those of a body that passes at one second for each second. */
function fieldsOf(contact: LaneContact, ends: TimeSpan): Course['fields'] {
  return contact.sights.flatMap(({ timed: { counted, response_s, hold_s }, visible }) => {
    const seen = visible.flatMap(({ from_mm, to_mm }) => {
      const span = { from_s: timeOfPlace(contact, from_mm), to_s: timeOfPlace(contact, to_mm) }
      return span.from_s < span.to_s ? [span] : []
    })
    const spans = spansOf({ visible: seen.map(({ from_s, to_s }) => ({ from_mm: from_s, to_mm: to_s })), response_s, hold_s }, 1)
    const shown = seen.flatMap((span) => clipped(span, ends) ?? [])
    const output = spans.flatMap(({ on, off }) => clipped({ from_s: timeAt(on, 1), to_s: timeAt(off, 1) }, ends) ?? [])
    return shown.length + output.length > 0 ? [{ field: fieldName(counted), visible: shown, output }] : []
  })
}

function clipped({ from_s, to_s }: TimeSpan, ends: TimeSpan): TimeSpan | undefined {
  const span = { from_s: Math.max(from_s, ends.from_s), to_s: Math.min(to_s, ends.to_s) }
  return span.from_s <= span.to_s ? span : undefined
}
