// Where along y a beam ought to see a body whose middle keeps one x: guesses that the tile rule has to prove. Doorway frame, mm.

import type { TileBeams, TileBody } from './tile-rule.kernel.ts'

/** Size of the buffer: stretches of one beam as pairs, and behind them its distances to the faces. */
export const GUESS_ROOM = 80
const PAIRS = 64 // numbers
const ENTER = 64 // per axis, distance to the face that is entered, for y = 0
const LEAVE = 67
const MOVE = 70 // what both change by per mm of y

/**
 * KERNEL. Stretches of beam i against the body at x, within yMin to yMax, as pairs from 0 on. The first pair is where the beam meets the body, which
 * no sight exceeds (for a cylinder, where it meets the box around it); the others where it may see it, one for each window and face.
 *
 * @returns how many numbers were written; 0 where the beam meets it nowhere
 */
export function guessSights(out: Float64Array, beams: TileBeams, i: number, body: TileBody, x: number, yMin: number, yMax: number): number {
  if (beams.first[i]! === beams.first[i + 1]!) return 0
  out[0] = yMin
  out[1] = yMax
  const base = 3 * i
  const last = beams.to[beams.first[i + 1]! - 1]!
  // between the faces of each axis
  for (let k = 0; k < 3; k++) {
    const slope = beams.slope[base + k]!
    const middle = body.a[k]! * x + body.c[k]! - beams.at[base + k]!
    if (!isSteep(beams, base, k)) {
      clip(out, 0, body.low[k]! + middle, body.b[k]!)
      clip(out, 0, -middle - body.high[k]!, -body.b[k]!)
      continue
    }
    const near = (middle + body.low[k]!) / slope
    const far = (middle + body.high[k]!) / slope
    out[ENTER + k] = near < far ? near : far
    out[LEAVE + k] = near < far ? far : near
    out[MOVE + k] = body.b[k]! / slope
    // the last window's end, and for a segment its start, bound every sight
    clip(out, 0, out[ENTER + k]! - last, out[MOVE + k]!)
    clip(out, 0, -out[LEAVE + k]!, -out[MOVE + k]!)
    if (out[0]! >= out[1]!) return 0
    for (let j = 0; j < k; j++) {
      if (!isSteep(beams, base, j)) continue
      clip(out, 0, out[ENTER + k]! - out[LEAVE + j]!, out[MOVE + k]! - out[MOVE + j]!)
      clip(out, 0, out[ENTER + j]! - out[LEAVE + k]!, out[MOVE + j]! - out[MOVE + k]!)
      if (out[0]! >= out[1]!) return 0
    }
  }
  if (!(out[0]! < out[1]!)) return 0
  if (beams.segments) {
    out[2] = out[0]!
    out[3] = out[1]!
    return 4
  }
  return body.round ? guessCylinder(out, beams, i, body, x) : guessBox(out, beams, i)
}

/** KERNEL. For each window, the stretches in which each face is the last to be entered, within the window and in reach. */
function guessBox(out: Float64Array, beams: TileBeams, i: number): number {
  const base = 3 * i
  let end = 2
  for (let w = beams.first[i]!; w < beams.first[i + 1]!; w++)
    for (let m = 0; m < 3 && end < PAIRS; m++) {
      if (!isSteep(beams, base, m)) continue
      const enter = out[ENTER + m]!
      const move = out[MOVE + m]!
      const far = beams.to[w]! < beams.reach[base + m]! ? beams.to[w]! : beams.reach[base + m]!
      out[end] = out[0]!
      out[end + 1] = out[1]!
      clip(out, end, enter - far, move)
      clip(out, end, beams.from[w]! - enter, -move)
      for (let k = 0; k < 3; k++) if (k !== m && isSteep(beams, base, k)) clip(out, end, out[ENTER + k]! - enter, out[MOVE + k]! - move)
      if (out[end]! < out[end + 1]!) end += 2
    }
  return end
}

/**
 * KERNEL. For each window, the places of a disc that the beam crosses while it is at the height of the body there: a disc swept along the beam, cut
 * along x. Reach is left to the proof.
 */
function guessCylinder(out: Float64Array, beams: TileBeams, i: number, body: TileBody, x: number): number {
  const base = 3 * i
  const radius = body.high[0]!
  const dx = beams.slope[base]!
  const dy = beams.slope[base + 1]!
  const level = Math.sqrt(dx * dx + dy * dy)
  const aside = beams.at[base]! - x
  const middle = (out[0]! + out[1]!) / 2 // on a slope the height is taken here
  let end = 2
  for (let w = beams.first[i]!; w < beams.first[i + 1]! && end < PAIRS; w++) {
    let near = beams.from[w]! > 0 ? beams.from[w]! : 0
    let far = beams.to[w]!
    if (isSteep(beams, base, 2)) {
      const enter = out[ENTER + 2]! + out[MOVE + 2]! * middle
      const leave = out[LEAVE + 2]! + out[MOVE + 2]! * middle
      if (enter > near) near = enter
      if (leave < far) far = leave
    }
    if (dx !== 0) {
      const a = (-radius - aside) / dx
      const b = (radius - aside) / dx
      near = Math.max(near, Math.min(a, b))
      far = Math.min(far, Math.max(a, b))
    } else if (Math.abs(aside) >= radius) continue
    if (!(near < far) || far === Infinity) continue
    // half the chord is widest against the beam's drift where the tangent runs along it
    const tangent = level > 0 ? (radius * dy * (dx < 0 ? -1 : 1)) / level : 0
    const highest = dx === 0 ? (dy > 0 ? far : near) : (tangent - aside) / dx
    const lowest = dx === 0 ? (dy > 0 ? near : far) : (-tangent - aside) / dx
    const high = edge(beams, base, radius, aside, Math.min(far, Math.max(near, highest)), 1)
    const low = edge(beams, base, radius, aside, Math.min(far, Math.max(near, lowest)), -1)
    out[end] = low > out[0]! ? low : out[0]!
    out[end + 1] = high < out[1]! ? high : out[1]!
    if (out[end]! < out[end + 1]!) end += 2
  }
  return end
}

function edge(beams: TileBeams, base: number, radius: number, aside: number, t: number, side: number): number {
  const u = aside + beams.slope[base]! * t
  return beams.at[base + 1]! + beams.slope[base + 1]! * t + side * Math.sqrt(Math.max(0, radius * radius - u * u))
}

function isSteep(beams: TileBeams, base: number, axis: number): boolean {
  const slope = beams.slope[base + axis]!
  return slope > 1e-9 || slope < -1e-9
}

/** Keeps of the pair at `at` where constant + slope y < 0. */
function clip(out: Float64Array, at: number, constant: number, slope: number): void {
  if (slope > 0) {
    const below = -constant / slope
    if (below < out[at + 1]!) out[at + 1] = below
  } else if (slope < 0) {
    const above = -constant / slope
    if (above > out[at]!) out[at] = above
  } else if (constant >= 0) out[at + 1] = -Infinity
}
