import type { Source } from './source.ts'
import type { SensingFunction } from './zone.ts'

export type Sensor = RangingSensor | SegmentSensor | ZoneOnlySensor

interface SensorBase {
  readonly id: string
  readonly name: string
  readonly source: Source
  /** What was said of single outputs; response, hold and presence time stand in their fields. */
  readonly outputs?: readonly Output[]
  /** From the return of power until it sees, at the latest; undefined if nobody said. */
  readonly warmUp_s?: number | undefined
  /** As a part of a safety function; undefined if nobody said. */
  readonly declares?: Declared | undefined
}

/** What the maker of a device declares of it as a part of a safety function. What nobody said is undefined. */
export interface Declared {
  /** What it protects with: it detects without being touched, it gives way when touched, or it is no protective device at all. */
  readonly device: 'electro-sensitive' | 'pressure-sensitive' | 'not-protective' | undefined
  readonly performanceLevel: 'a' | 'b' | 'c' | 'd' | 'e' | undefined
  readonly category: 'B' | '1' | '2' | '3' | '4' | undefined
  /** Who finds its faults. */
  readonly testedBy: 'itself' | 'control' | 'nobody' | undefined
  /** Where the law wants devices listed for use with a drive: whether this one is. */
  readonly listedFor: 'this-drive' | 'other-drives' | 'nothing' | undefined
  /** Mean time to dangerous failure, years. */
  readonly mttfd_y: number | undefined
  /** Operations until a tenth of such devices have failed dangerously. */
  readonly b10d: number | undefined
  readonly operations_per_y: number | undefined
  readonly diagnosticCoverage_percent: number | undefined
  /** Score against failures of common cause, of 100 points. */
  readonly commonCause: number | undefined
  readonly source: Source
}

/** One output of a sensor. Fields name it. */
export interface Output {
  readonly name: string
  readonly function: SensingFunction
  /** As if somebody were seen, as if nobody were, or either; undefined if nobody said. */
  readonly whileWarmingUp: 'detecting' | 'clear' | 'undefined' | undefined
}

/** A scanner, or a door-mounted presence sensor as a row of downward ranging beams: docs/method.md, sections 1 and 2. */
export interface RangingSensor extends SensorBase {
  readonly kind: 'ranging'
  readonly planes: readonly BeamPlane[]
  readonly pose: Pose // of the scanner; rows carry their own places and ignore it
  readonly maxRange_mm: number
  readonly rangeRef_mm: number
  readonly reflectanceRef: number
  readonly backgroundMargin_mm: number
  readonly spotRadius_mm: number
  readonly fields: readonly Field[]
  /** Id of the door state in which the background was learned. */
  readonly learnedIn: string
}

export interface Pose {
  readonly x_mm: number
  readonly y_mm: number
  readonly z_mm: number
  readonly yaw_rad: number
  readonly tilt_rad: number
  readonly roll_rad: number
}

export type BeamPlane = FanPlane | RowPlane
/** Beam j of n looks along theta_j = fovMin + j (fovMax - fovMin) / (n - 1) from straight down toward +x, before the pose turns it. */
export interface FanPlane {
  readonly kind: 'fan'
  readonly id: string
  readonly offset_rad: number
  readonly fovMin_rad: number
  readonly fovMax_rad: number
  readonly beamCount: number
}
/** Beams that look down from given places, tilted alike (positive toward side A). Doorway frame. */
export interface RowPlane {
  readonly kind: 'row'
  readonly id: string
  readonly places: readonly { readonly x_mm: number; readonly y_mm: number; readonly z_mm: number }[]
  readonly tilt_rad: number
}

export interface Field {
  readonly id: string
  readonly name: string
  readonly planes: readonly string[] // ids, never empty
  /** Where the entry point may lie, limits included. Doorway frame; -Infinity and Infinity where open. */
  readonly xMin_mm: number
  readonly xMax_mm: number
  readonly yMin_mm: number
  readonly yMax_mm: number
  /** Heights of the entry point above the floor under it, limits included. */
  readonly clearance_mm: number
  readonly top_mm: number
  readonly clusterBeams: number // >= 1
  readonly output: string
  readonly function: SensingFunction
  /** A body that stands longer is let go; Infinity if it is held for ever, undefined if nobody said. */
  readonly presenceTime_s: number | undefined
  /** From becoming visible until the output has changed, at the latest; undefined if nobody said. */
  readonly response_s?: number | undefined
  /** The shortest response that the device can be set to; undefined where it has no such setting, or nobody said. */
  readonly fastestResponse_s?: number | undefined
  /** How long the output stays after the body was last visible; undefined if nobody said. */
  readonly hold_s?: number | undefined
  /** How people come to it, for the separation distance; undefined if nobody said. */
  readonly approach?: Approach | undefined
  /** While the leaf's edge is between these, the field does not act. Travel of the closing edge still to go, in mm from closed. */
  readonly blanking: readonly { readonly from_mm: number; readonly to_mm: number }[]
  /** A window that follows the closing leaf: what is entered so near to it is ignored. */
  readonly leafBlanking?: LeafBlanking | undefined
  /** The closing leaf comes between the sensor and bodies behind it; taken as so where there is any blanking. */
  readonly leafHides?: boolean | undefined
}

export interface LeafBlanking {
  /** From either face of the leaf, bulge included. */
  readonly beside_mm: number
  /** Before its closing edge, the way it goes. */
  readonly before_mm: number
}

/** What the separation-distance standard asks about a detection zone: docs/method.md, "Approach". What nobody said is undefined. */
export interface Approach {
  /** Along the floor into a zone that lies, square through one that stands, or through a single level beam. */
  readonly way: 'parallel' | 'perpendicular' | 'single-beam'
  /** Detection capability d: the smallest body that is surely seen. */
  readonly capability_mm: number | undefined
  /** Height H of a lying zone above the floor. */
  readonly height_mm: number | undefined
  /** The addend (C, or D_DS in the edition of 2024) as read off the page of the standard in hand, where this program does not have it. */
  readonly addend_mm: number | undefined
  /** Z of the edition of 2024: what measuring may be off by. */
  readonly supplement_mm: number | undefined
  /** Of addend and supplement. */
  readonly source: Source
}

/** A light grid or photo-eye: interrupted when a body's interior meets a segment. Fields have no reach, margin or limits here. */
export interface SegmentSensor extends SensorBase {
  readonly kind: 'segment'
  readonly planes: readonly SegmentPlane[]
  readonly spotRadius_mm: number
  readonly fields: readonly Field[]
}
export interface SegmentPlane {
  readonly id: string
  readonly segments: readonly { readonly from_mm: readonly [number, number, number]; readonly to_mm: readonly [number, number, number] }[]
}

/** Radar, loop, contact edge, cord, button: a drawn zone, no computation. */
export interface ZoneOnlySensor extends SensorBase {
  readonly kind: 'zone-only'
  readonly function: SensingFunction
  readonly output: string
  readonly xMin_mm: number
  readonly xMax_mm: number
  readonly yMin_mm: number
  readonly yMax_mm: number
  /** What sets it off, as its maker says: least speed or force, in words. */
  readonly needs: string
}
