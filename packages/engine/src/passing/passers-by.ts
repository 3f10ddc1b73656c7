import { hasCell } from '../coverage/grid.ts'
import { coverageMaps } from '../coverage/maps.ts'
import type { CountedField } from '../coverage/scene.ts'
import type { Body } from '../model/body.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { Crossing } from '../model/traffic.ts'
import type { Zone } from '../model/zone.ts'

/** Tracks and places along them are asked so far apart. */
const PITCH_MM = 25
/** Farther along x nobody is asked about: passers-by there stand before another door. */
const FARTHEST_MM = 15_000

/** Along one track of a crossing: how long the longest unbroken sight of a field is. */
export interface TrackSight {
  readonly y_mm: number
  /** One for each field, in their order. */
  readonly longest_mm: readonly number[]
}

/**
 * What fields see of one posture that goes by along x, track by track of the crossing. On a grid, place by place, by the predicate: neither proved seen
 * nor proved unseen between the places. A place where the body has no room ends a sight.
 */
export function trackSights(
  door: Door,
  state: DoorState,
  crossing: Crossing,
  body: Body,
  fields: readonly CountedField[],
): readonly TrackSight[] {
  const longest = fields.map((counted) => longestRuns_mm(door, state, crossing, body, counted))
  const tracks = longest[0]?.length ?? 0
  return Array.from({ length: tracks }, (_, row) => ({
    y_mm: crossing.yMin_mm + (row + 0.5) * PITCH_MM,
    longest_mm: longest.map((ofField) => ofField[row] ?? 0),
  }))
}

function longestRuns_mm(door: Door, state: DoorState, crossing: Crossing, body: Body, { sensor, field }: CountedField): readonly number[] {
  const { width_mm } = door.opening
  const zone: Zone = {
    id: crossing.id,
    name: crossing.name,
    purpose: field.function === 'call' ? 'call' : 'opening',
    function: field.function,
    xMin_mm: Math.max(-FARTHEST_MM, field.xMin_mm - 2000),
    xMax_mm: Math.min(width_mm + FARTHEST_MM, field.xMax_mm + 2000),
    yMin_mm: crossing.yMin_mm,
    yMax_mm: crossing.yMax_mm,
    bodies: [body.id],
    allowedPocket_mm: 0,
    pitch_mm: PITCH_MM,
    longestStay_s: undefined,
    family: undefined,
  }
  const alone = { ...door, bodies: [body], zones: [zone], sensors: [{ ...sensor, fields: [field] }] }
  const { grid, blind, notFree } = coverageMaps(alone, zone, state)
  return Array.from({ length: grid.rows }, (_, row) => {
    let longest = 0
    let run = 0
    for (let column = 0; column < grid.columns; column++) {
      run = hasCell(blind, grid, row, column) || hasCell(notFree, grid, row, column) ? 0 : run + 1
      longest = Math.max(longest, run)
    }
    return longest * PITCH_MM
  })
}

/**
 * The part of passers-by, spread evenly over tracks and paces, who stay in a sight for the response of its output: on a track whose longest sight is L
 * those no faster than L / response.
 */
export function shareThatOpens(
  tracks: readonly TrackSight[],
  responses_s: readonly number[],
  { slowest_mm_per_s, fastest_mm_per_s }: { readonly slowest_mm_per_s: number; readonly fastest_mm_per_s: number },
): number {
  const shares = tracks.map(({ longest_mm }) => {
    const paces = longest_mm.map((length_mm, i) => (length_mm === 0 ? 0 : length_mm / (responses_s[i] ?? 0))) // Infinity without a response
    const quickest = Math.max(0, ...paces)
    if (fastest_mm_per_s === slowest_mm_per_s) return quickest > 0 && quickest >= fastest_mm_per_s ? 1 : 0
    return Math.min(1, Math.max(0, (quickest - slowest_mm_per_s) / (fastest_mm_per_s - slowest_mm_per_s)))
  })
  return shares.length === 0 ? 0 : shares.reduce((sum, share) => sum + share, 0) / shares.length
}
