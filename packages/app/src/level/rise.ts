/**
 * What a device that is held by an edge says of the surface that the edge is held against. Pure; the screen only shows it.
 *
 * Device frame as browsers have it (W3C, Device Orientation and Motion): x to the right of the screen, y to its top, z out of it toward
 * whoever looks; as the device is built, whichever way the page is turned.
 */

/** Straight up, as a unit vector in the device frame. */
export interface Up {
  readonly x: number
  readonly y: number
  readonly z: number
}

/** The edge that is down: it says which way the device is held. */
export type Edge = 'bottom' | 'left' | 'top' | 'right'

export interface Stand {
  readonly edge: Edge
  /** How much the way to the right, as one looks at the screen, goes up; below zero where it goes down. */
  readonly rise_deg: number
}

/**
 * Up out of two of the three angles of a reading; the third, the turn about the vertical, does not change it. The device is turned from flat by
 * Rz(alpha) Rx(beta) Ry(gamma); the last row of that matrix is the vertical of the earth in the device frame.
 */
export function upOf({ beta_deg, gamma_deg }: { readonly beta_deg: number; readonly gamma_deg: number }): Up {
  const [beta, gamma] = [radians(beta_deg), radians(gamma_deg)]
  return { x: -Math.cos(beta) * Math.sin(gamma), y: Math.sin(beta), z: Math.cos(beta) * Math.cos(gamma) }
}

/** Leaning back farther than this it does not stand on an edge any more: the share of up that lies in the screen. */
const LEAST_UPRIGHT = 0.7

/** @returns undefined where the device lies rather than stands */
export function standOf({ x, y }: Up): Stand | undefined {
  if (Math.sqrt(x * x + y * y) < LEAST_UPRIGHT) return undefined
  // what points to the right depends on the edge: held on its left edge, the top of the device does not point up but to the left
  if (Math.abs(y) >= Math.abs(x)) return y > 0 ? { edge: 'bottom', rise_deg: risen(x) } : { edge: 'top', rise_deg: risen(-x) }
  return x > 0 ? { edge: 'left', rise_deg: risen(-y) } : { edge: 'right', rise_deg: risen(y) }
}

/**
 * The device's own error out of two readings at one place, the device turned round between them so that its ends change places. The
 * surface counts once up and once down, the error twice the same way: half the difference is the surface, half the sum the error.
 */
export function turnedRound({ first_deg, second_deg }: { readonly first_deg: number; readonly second_deg: number }): {
  readonly surface_deg: number
  readonly error_deg: number
} {
  return { surface_deg: (first_deg - second_deg) / 2, error_deg: (first_deg + second_deg) / 2 }
}

/** Rise per length along the floor. */
export function slope_percent(rise_deg: number): number {
  return 100 * Math.tan(radians(rise_deg))
}

/**
 * The roll of a housing that also leans: its long axis goes up by less than it was rolled, because it is rolled in a plane that leans.
 * sin(rise) = sin(roll) cos(tilt), from the beam's direction in the method, section 1.
 *
 * @returns undefined where no roll gives this rise
 */
export function rollOf({ rise_deg, tilt_deg }: { readonly rise_deg: number; readonly tilt_deg: number }): number | undefined {
  const sine = Math.sin(radians(rise_deg)) / Math.cos(radians(tilt_deg))
  return Math.abs(sine) <= 1 ? degrees(Math.asin(sine)) : undefined
}

/** Many readings of one hold. */
export interface Hold {
  readonly edge: Edge
  readonly rise_deg: number
  /** From the lowest to the highest. */
  readonly spread_deg: number
}

/** @returns undefined where the device lies in the last of them; readings on another edge than that one do not count */
export function holdOf(ups: readonly Up[]): Hold | undefined {
  const stands = ups.map(standOf)
  const edge = stands.at(-1)?.edge
  if (edge === undefined) return undefined
  const rises_deg = stands.flatMap((stand) => (stand?.edge === edge ? [stand.rise_deg] : []))
  const rise_deg = rises_deg.reduce((sum, each) => sum + each, 0) / rises_deg.length
  return { edge, rise_deg, spread_deg: Math.max(...rises_deg) - Math.min(...rises_deg) }
}

function risen(share: number): number {
  return degrees(Math.asin(Math.min(1, Math.max(-1, share)))) + 0 // no minus zero
}

function radians(angle_deg: number): number {
  return (angle_deg * Math.PI) / 180
}

function degrees(angle_rad: number): number {
  return (angle_rad * 180) / Math.PI
}
