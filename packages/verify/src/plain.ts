/** The door as plain numbers. Doorway frame (docs/method.md, section 1): lengths in mm, angles in degrees, directions of length 1. */

export type Vector = readonly [x: number, y: number, z: number]

export interface Block {
  readonly shape: 'box'
  readonly id: string
  readonly x: number
  readonly y: number
  readonly half: readonly [along: number, across: number]
  readonly yaw_deg: number
  readonly from: number
  readonly to: number
}
export interface Post {
  readonly shape: 'post'
  readonly id: string
  readonly x: number
  readonly y: number
  readonly radius: number
  readonly from: number
  readonly to: number
}
export type Obstacle = Block | Post

/** z = the profile at y + slope * x; the profile stays level beyond its ends. At least one point, y rising. */
export interface Floor {
  readonly profile: readonly (readonly [y: number, z: number])[]
  readonly slope: number
}

export interface State {
  readonly id: string
  readonly floor: Floor
  readonly obstacles: readonly Obstacle[]
}

/** A beam starts at `from` and runs along `along`; a segment ends at `length`. */
export interface Beam {
  readonly from: Vector
  readonly along: Vector
  readonly length: number // Infinity for a ranging beam
}

export interface Plane {
  readonly id: string
  readonly beams: readonly Beam[]
  /** How the plane would turn if the pose were off: about `middle`, with these angles. */
  readonly middle: Vector
  readonly yaw_deg: number
  readonly lean_deg: number
}

export type SensingFunction = 'presence' | 'opening' | 'call'

export interface Field {
  readonly name: string // <sensor>/<field>
  readonly sensor: Sensor
  readonly planes: readonly string[]
  readonly x: readonly [number, number]
  readonly y: readonly [number, number]
  readonly clearance: number
  readonly top: number
  readonly cluster: number
  readonly acts: SensingFunction
  readonly presence_s: number | undefined
  /** Of the output; undefined where one is not known. */
  readonly times: { readonly response: number; readonly hold: number } | undefined
  /** It does not act while the leaf is in some window. */
  readonly blanks: boolean
  /** What it sees depends on where the leaf is: that hides what is behind it, and what is entered near to it may be ignored. */
  readonly byLeaf: { readonly ignores: { readonly beside: number; readonly before: number } | undefined } | undefined
}

export interface Sensor {
  readonly id: string
  readonly segments: boolean
  readonly planes: readonly Plane[]
  readonly maxRange: number
  readonly rangeRef: number
  readonly reflectanceRef: number
  readonly margin: number
  readonly spot: number
  readonly learnedIn: string
}

export interface BoxPosture {
  readonly shape: 'box'
  readonly size: Vector
  readonly yaw_deg: readonly [from: number, to: number]
}
export interface CylinderPosture {
  readonly shape: 'cylinder'
  readonly radius: number
  readonly height: number
}
export type Posture = BoxPosture | CylinderPosture

export interface Body {
  readonly id: string
  readonly reflectance: number
  /** It has a posture of several parts, of which no coverage speaks: its postures are left out. */
  readonly ofParts: boolean
  readonly postures: readonly Posture[]
  /** All its postures, for lanes. */
  readonly passers: readonly Passer[]
}

/** One upright solid of what passes: from the middle of the box around all at yaw 0, its bottom at `from` above the floor under that middle. */
export type Solid = SolidPlace & (SolidBox | SolidCylinder)
interface SolidPlace {
  readonly x: number
  readonly y: number
  readonly from: number
  readonly reflectance: number
}
interface SolidBox {
  readonly shape: 'box'
  readonly size: Vector
  readonly turn_deg: number
}
interface SolidCylinder {
  readonly shape: 'cylinder'
  readonly radius: number
  readonly height: number
}

/** A posture as lanes ask for it: one solid, or several that are rigid to each other. */
export interface Passer {
  readonly solids: readonly Solid[]
  readonly ofParts: boolean
  /** Half of the box around all at yaw 0; a single cylinder is alike at every yaw. */
  readonly half: readonly [x: number, y: number]
  readonly round: boolean
  readonly yaw_deg: readonly [from: number, to: number]
  /** It comes about by a fall. */
  readonly lies: boolean
}

/** A rectangle of placements, closed. */
export interface Tile {
  readonly xMin: number
  readonly xMax: number
  readonly yMin: number
  readonly yMax: number
}

export interface Zone extends Tile {
  readonly id: string
  readonly acts: SensingFunction
  readonly mustNotSee: boolean
  readonly bodies: readonly string[]
  readonly longestStay_s: number | undefined
}

/** The amounts by which what is built may be off, either way, all at once; `range` in percent, angles in degrees. */
export interface Tolerances {
  readonly length: number
  readonly position: number
  readonly tilt: number
  readonly roll: number
  readonly yaw: number
  readonly floor: number
  readonly range: number
}

export interface Door {
  readonly states: readonly State[]
  readonly fields: readonly Field[]
  readonly bodies: readonly Body[]
  readonly zones: readonly Zone[]
  /** Koschmieder's extinction per mm; 0 in clear air. */
  readonly extinction: number
  readonly tolerances: Tolerances | undefined
}
