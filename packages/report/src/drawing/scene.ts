import {
  type Door,
  type DoorState,
  type Floor,
  floorHeight,
  floorPieces,
  type Obstacle,
  type Pocket,
  type Posture,
  type WorstCase,
  type Zone,
  type ZoneCoverage,
} from '@sillsight/engine'
import { postureOf } from '../wording/bodies.ts'
import type { Reader } from '../wording/language.ts'
import type { Dimension } from './dimensions.ts'
import type { LabelRequest } from './labels.ts'
import type { Box, Mark, Spot } from './model.ts'
import { turnedCorners } from './pen.ts'
import type { Place, View, Window } from './view.ts'

/** Everything that one sheet shows of a door. */
export interface Scene extends Reader {
  readonly door: Door
  readonly state: DoorState
  readonly zone: Zone | undefined
  readonly coverage: ZoneCoverage | undefined
  /** Ids of the sensors that counted for the answer. */
  readonly counted: ReadonlySet<string>
  /** Worst cases that are drawn as bodies, largest pocket first. */
  readonly bodies: readonly ShownBody[]
  /** What the survey lists and the plan shows. */
  readonly things: readonly Obstacle[]
  /** Gaps between the moving leaf and what stands around that were computed, where they are smallest. */
  readonly gaps: readonly ComputedGap[]
  readonly traces: readonly PlaneTrace[]
  /** How far a leaf that turns still has to go where it is drawn; shut if absent. */
  readonly leafWay_mm?: number
}

export interface ComputedGap {
  readonly x_mm: number
  readonly y_mm: number
  /** Above the floor. */
  readonly from_mm: number
  readonly gap_mm: number
}

export interface ShownBody {
  readonly letter: string
  readonly worstCase: WorstCase
  readonly posture: Posture
}

/** Where the beams of one plane of one sensor end, in the order of the beams. Doorway frame. */
export interface PlaneTrace {
  readonly sensor: string
  readonly spots: readonly {
    readonly from_mm: readonly [number, number, number]
    readonly to_mm: readonly [number, number, number]
    /** The beam ends on the floor, and not on an obstacle or nowhere. */
    readonly onFloor: boolean
  }[]
}

/** One projection before it has a place on the sheet. */
export interface Projection {
  readonly heading: string
  /** From where it is seen, in words. */
  readonly seen: string
  readonly window: Window
  /** Those named first lie nearest to the view. */
  readonly dimensions: readonly Dimension[]
  readonly draw: (view: View) => Drawn
}

/** One projection in its place. */
export interface Drawn {
  readonly marks: readonly Mark[]
  /** Hatching: no label lies here. */
  readonly hatched: readonly Box[]
  /** Symbols and small things that labels keep off too. */
  readonly kept: readonly Box[]
  /** Lines that labels had better not cross. */
  readonly lines: readonly (readonly [Spot, Spot])[]
  /** Most important first. */
  readonly labels: readonly LabelRequest[]
}

const MOST_BODIES = 3

/** The worst cases to draw as bodies: the largest pocket's, then those that lie clear of the bodies drawn before. */
export function bodiesToDraw(door: Door, pockets: readonly Pocket[]): readonly ShownBody[] {
  const shown: ShownBody[] = []
  for (const { letter, worstCase } of pockets.slice(0, 12)) {
    const posture = postureOf(door, worstCase)
    if (!posture) continue
    const body = { letter, worstCase, posture }
    if (shown.length < MOST_BODIES && shown.every((other) => !isNear(other, body))) shown.push(body)
  }
  return shown
}

function isNear(a: ShownBody, b: ShownBody): boolean {
  const across_mm = Math.abs(a.worstCase.x_mm - b.worstCase.x_mm)
  const out_mm = Math.abs(a.worstCase.y_mm - b.worstCase.y_mm)
  const reach_mm = reachOf(a.posture) + reachOf(b.posture)
  return Math.sqrt(across_mm * across_mm + out_mm * out_mm) < reach_mm
}

/** Half of the longest stretch of a body's footprint. */
export function reachOf(posture: Posture): number {
  if (posture.shape === 'cylinder') return posture.radius_mm
  return Math.sqrt(posture.a_mm * posture.a_mm + posture.b_mm * posture.b_mm) / 2
}

/** The corners of a box body's footprint in the plan, or undefined for a cylinder. */
function footprint({ posture, worstCase }: ShownBody): readonly Place[] | undefined {
  if (posture.shape === 'cylinder') return undefined
  return turnedCorners({ u_mm: worstCase.x_mm, v_mm: worstCase.y_mm }, [posture.a_mm, posture.b_mm], worstCase.yaw_rad)
}

/** How far a body reaches along x and along y from its middle. */
export function halfExtents(body: ShownBody): { readonly x_mm: number; readonly y_mm: number } {
  const ring = footprint(body)
  if (!ring) return { x_mm: reachOf(body.posture), y_mm: reachOf(body.posture) }
  return {
    x_mm: Math.max(...ring.map(({ u_mm }) => Math.abs(u_mm - body.worstCase.x_mm))),
    y_mm: Math.max(...ring.map(({ v_mm }) => Math.abs(v_mm - body.worstCase.y_mm))),
  }
}

export function heightOf(posture: Posture): number {
  return posture.shape === 'box' ? posture.c_mm : posture.height_mm
}

/** Height of the floor under a place. */
export function floorAt(floor: Floor, x_mm: number, y_mm: number): number {
  return floorHeight(floorPieces(floor), x_mm, y_mm)
}

export function isFlat({ profile, slopeX }: Floor): boolean {
  return slopeX === 0 && profile.every(({ z_mm }) => z_mm === profile[0]?.z_mm)
}

/** Guides, hood and the parked leaf hang on the building: they are outlined where walls are filled. */
export function isFitting({ id, implied }: Obstacle): boolean {
  return implied && /^(guide|hood|parked-leaf)/.test(id)
}

/** Where a sensor is: its origin, the middle of a row of beams, or the first end of a segment. */
export function sensorSpots(
  door: Door,
): readonly { readonly id: string; readonly name: string; readonly x_mm: number; readonly y_mm: number; readonly z_mm: number }[] {
  return door.sensors.flatMap((sensor) => {
    const { id, name } = sensor
    if (sensor.kind === 'zone-only') return []
    if (sensor.kind === 'segment') {
      const [x_mm, y_mm, z_mm] = sensor.planes[0]?.segments[0]?.from_mm ?? [0, 0, 0]
      return [{ id, name, x_mm, y_mm, z_mm }]
    }
    const row = sensor.planes.find((plane) => plane.kind === 'row')
    if (row?.kind !== 'row' || row.places.length === 0)
      return [{ id, name, x_mm: sensor.pose.x_mm, y_mm: sensor.pose.y_mm, z_mm: sensor.pose.z_mm }]
    const middle = row.places[Math.floor(row.places.length / 2)]
    return middle ? [{ id, name, ...middle }] : []
  })
}
