import type { DoorState } from '../model/door.ts'
import type { InputPath } from '../model/source.ts'
import type { Drive, Lane } from '../model/traffic.ts'
import { calledBefore_mm } from '../passing/call-distance.ts'
import { isUnhung, type LeafApproach, leafApproach } from '../passing/leaf-approach.ts'
import { type WaySight, waySights } from '../passing/way-sights.ts'
import { fieldsOfFunction } from './fields.ts'
import { DRIVE, fieldPath, HINGED, LEAF, lanePath } from './paths.ts'
import type { Context } from './rule.ts'

/** A vehicle of a lane at its fastest pace, and how far before the leaf its call is on its way. */
export interface Call {
  readonly sight: WaySight
  readonly called_mm: number
  readonly response_s: number
}

/** What both questions about a call need: every body, place and side, before the field that calls earliest after its response. */
export type Calls =
  | { readonly kind: 'missing'; readonly needs: readonly InputPath[] }
  | { readonly kind: 'not-computable' }
  | {
      readonly kind: 'found'
      readonly calls: readonly Call[]
      readonly approach: LeafApproach
      readonly drive: Drive
      readonly openDelay_s: number
      readonly speed_mm_per_s: number
      readonly yawSampled: boolean
    }

const answers = new WeakMap<Context, Map<string, Calls>>()

/** The lanes that vehicles use, where some field opens the door or calls it. */
export function callingLanes({ door }: Context): readonly Lane[] {
  return callingFields(door).length === 0 ? [] : (door.lanes ?? []).filter(({ who }) => who !== 'people')
}

function callingFields(door: Context['door']) {
  return [...fieldsOfFunction(door, 'opening'), ...fieldsOfFunction(door, 'call')]
}

/** Computed at most once in a judgement: both rules about a call ask the same. */
export function callsOf(context: Context, lane: Lane, state: DoorState): Calls {
  const known = answers.get(context) ?? new Map<string, Calls>()
  answers.set(context, known)
  const key = `${lane.id}@${state.id}`
  const answer = known.get(key) ?? found(context, lane, state)
  known.set(key, answer)
  return answer
}

function found({ door }: Context, lane: Lane, state: DoorState): Calls {
  const { drive, leaf } = door
  const fields = callingFields(door)
  const needs: InputPath[] = leaf === undefined ? [LEAF] : isUnhung(leaf) ? [HINGED] : []
  if (drive === undefined) needs.push(DRIVE)
  else if (drive.openDelay_s === undefined) needs.push(`${DRIVE}/openDelay_s`)
  if (lane.fastest_mm_per_s === undefined) needs.push(`${lanePath(door, lane)}/fastest_m_per_s`)
  for (const { sensor, field } of fields) if (field.response_s === undefined) needs.push(`${fieldPath(door, sensor, field)}/response_s`)
  const speed_mm_per_s = lane.fastest_mm_per_s
  const openDelay_s = drive?.openDelay_s
  if (needs.length > 0 || drive === undefined || openDelay_s === undefined || speed_mm_per_s === undefined)
    return { kind: 'missing', needs }
  const approach = leafApproach(door, state)
  if (!approach) return { kind: 'not-computable' }
  const { sights, yawSampled } = waySights(door, state, lane, approach, fields)
  return { kind: 'found', calls: earliest(sights, speed_mm_per_s), approach, drive, openDelay_s, speed_mm_per_s, yawSampled }
}

/** At each place the field whose output changes first: called from farther out, its response taken off. */
function earliest(sights: readonly WaySight[], speed_mm_per_s: number): readonly Call[] {
  const best = new Map<string, Call>()
  const answered_mm = ({ called_mm, response_s }: Call) => called_mm - response_s * speed_mm_per_s
  for (const sight of sights) {
    const { response_s = 0 } = sight.counted.field
    const call = { sight, called_mm: calledBefore_mm(sight, response_s * speed_mm_per_s), response_s }
    const key = `${sight.stance.body.id} ${sight.stance.index} ${sight.stance.yaw_rad} ${sight.x_mm} ${sight.from}`
    const before = best.get(key)
    if (!before || answered_mm(call) > answered_mm(before)) best.set(key, call)
  }
  return [...best.values()]
}
