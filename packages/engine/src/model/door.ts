import type { Body } from './body.ts'
import type { Control } from './control.ts'
import type { Dangers } from './danger.ts'
import type { Sensor } from './sensor.ts'
import type { Confirmation, InputPath } from './source.ts'
import type { ForceRecord } from './test-record.ts'
import type { Air, Crossing, Drive, Lane } from './traffic.ts'
import type { Wiring } from './wiring.ts'
import type { Zone } from './zone.ts'

/**
 * Everything the engine knows about one door. Doorway frame (docs/method.md, section 1): x along the leaf from 0 to the
 * clear width, y = 0 in the mid-plane of the leaf and positive toward side A, z up from the finished floor.
 * Lengths in mm, angles in radians. Plain data: it goes to a worker as it is.
 */
export interface Door {
  readonly name: string
  readonly sides: { readonly a: string; readonly b: string }
  readonly opening: { readonly width_mm: number; readonly height_mm: number }
  readonly leaf: Leaf | undefined
  /** How the leaf is driven, as far as somebody said. */
  readonly drive?: Drive | undefined
  readonly lanes?: readonly Lane[] | undefined
  readonly crossings?: readonly Crossing[] | undefined
  readonly air?: Air | undefined
  /** Danger points besides the closing edge, as far as somebody looked; undefined if nobody did. */
  readonly dangers?: Dangers | undefined
  /** Forces as they were measured on the closing edge. */
  readonly forceRecords?: readonly ForceRecord[] | undefined
  /** What the control does, as far as somebody stated it. */
  readonly control?: Control | undefined
  /** What is connected to what; undefined where nobody said. */
  readonly wiring?: Wiring | undefined
  /** Never empty. A door without states has one, called `as surveyed`. The first is the one the sensors learned in unless they say otherwise. */
  readonly states: readonly DoorState[]
  readonly sensors: readonly Sensor[]
  readonly bodies: readonly Body[]
  readonly zones: readonly Zone[]
  readonly concept: ProtectionConcept | undefined
  /** Edition of the separation-distance standard that the job names; both are judged where it names none. */
  readonly separation?: '2010' | '2024' | undefined
  /** Koschmieder extinction, 3.912 / visibility; 0 in clear air. */
  readonly extinction_per_mm: number
  /** How far what is built may be off from what is written; undefined where nobody said. */
  readonly tolerances?: Tolerances | undefined
  readonly edition: string
  readonly confirmations: readonly Confirmation[]
  /** Values that nobody entered and a default stands in for: nothing that rests on one passes. */
  readonly assumed: readonly InputPath[]
  /** Places that hold two values of people who did not see each other's: nothing that rests on one is settled until someone chooses. */
  readonly disputed?: readonly InputPath[] | undefined
}

export interface DoorState {
  readonly id: string
  readonly name: string
  readonly floor: Floor
  readonly obstacles: readonly Obstacle[]
}

/** z = profile(y) + slopeX * x; the profile runs straight between its points and stays constant beyond its ends. */
export interface Floor {
  /** At least one point, y strictly rising. */
  readonly profile: readonly { readonly y_mm: number; readonly z_mm: number }[]
  readonly slopeX: number // rise per run
  /** How far the real floor may stand above the survey; undefined if nobody said. */
  readonly tolerance_mm: number | undefined
}

interface ObstacleBase {
  readonly id: string
  readonly name: string
  readonly x_mm: number // of the centre
  readonly y_mm: number
  readonly from_mm: number // absolute heights in the doorway frame
  readonly to_mm: number
  /** Made from the survey's measures (wall, lintel, jamb, guide, hood, parked leaf) instead of listed. */
  readonly implied: boolean
}
export interface BoxObstacle extends ObstacleBase {
  readonly shape: 'box'
  readonly size_mm: readonly [along: number, across: number] // along x and y at yaw 0
  readonly yaw_rad: number
}
export interface PostObstacle extends ObstacleBase {
  readonly shape: 'post' // upright cylinder
  readonly radius_mm: number
}
export type Obstacle = BoxObstacle | PostObstacle

export interface Leaf {
  /** How the closing edge travels: down from the opening height, or along x (toward 0, toward the width, or two leaves that meet). */
  readonly travel: 'down' | 'toward-zero' | 'toward-width' | 'both-inward' | 'turning'
  readonly thickness_mm: number
  /** How far the leaf may stand out of its plane on either side while it moves (wind, sway, slats). */
  readonly bulge_mm: number
  /** How a leaf that turns is hung; undefined for others, and where nobody said. */
  readonly hinged?: HingedLeaf | undefined
}

/** Swings about a hinge line at y = 0, or folds: then a second panel hangs on the first, and its free end is guided along y = 0. */
export interface HingedLeaf {
  /** At x = 0, at the width, or one leaf at each. */
  readonly hinge: 'at-zero' | 'at-width' | 'both'
  readonly opensTo: 'a' | 'b'
  /** Of one leaf, from the hinge line to its edge; of one that folds, of the panel on the hinge. */
  readonly length_mm: number
  /** At least as long as the first; undefined for a leaf that does not fold. */
  readonly secondPanel_mm: number | undefined
  /** Of the panel on the hinge, from shut to fully open: above 0, at most half a turn, at most a quarter where it folds. */
  readonly openAngle_rad: number
}

export interface ProtectionConcept {
  readonly people: 'trained' | 'public'
  readonly drive: 'hold-to-run' | 'impulse-in-view' | 'impulse-out-of-view' | 'automatic'
  readonly closingEdge: 'force-limited-edge' | 'presence-aid' | 'contact-free' | 'none'
  /** The door rests on touching with little energy, as pedestrian doors may. */
  readonly lowEnergy?: 'yes' | 'no'
  /** Whether the law at the place lets only devices protect that are listed for use with the drive. */
  readonly listing?: 'needed' | 'not-needed'
}

/** Each value may be off by as much either way, all at once and independently (docs/method.md, "Tolerances"). */
export interface Tolerances {
  /** Every face of every obstacle. */
  readonly length_mm: number
  /** The sensor's origin along x, y and z; the ends of a segment. */
  readonly position_mm: number
  readonly tilt_rad: number
  readonly roll_rad: number
  readonly yaw_rad: number
  /** The floor, anywhere. */
  readonly floor_mm: number
  /** The range of a sensor, as a share: 0.05 for 5 % less than its values say. */
  readonly range: number
}
