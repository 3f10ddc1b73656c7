// Where along y a beam ought to see a body whose middle keeps one x: guesses that the tile rule has to prove. Doorway frame, mm.

import type { TileBeams, TileBody } from './tile-rule.kernel.ts'

/** Room for one beam's stretches: as pairs, first where it meets the body at all, then where it may see it, a window and a face each. */
export const GUESS_ROOM = 64

/**
 * KERNEL. Stretches of beam i against the body at x, within yMin to yMax, as pairs from 0 on. The first pair is where the beam meets the body, which
 * no sight exceeds (for a cylinder, where it meets the box around it).
 *
 * @returns how many numbers were written; 0 where the beam meets it nowhere
 */
export function guessSights(out: Float64Array, beams: TileBeams, i: number, body: TileBody, x: number, yMin: number, yMax: number): number {
  if (beams.first[i]! === beams.first[i + 1]!) return 0
  out[0] = yMin
  out[1] = yMax
  const base = 3 * i
  for (let k = 0; k < 3; k++) {
    if (isSteep(beams, base, k)) continue
    const stands = beams.at[base + k]! - body.a[k]! * x - body.c[k]!
    clip(out, 0, body.low[k]! - stands, body.b[k]!)
    clip(out, 0, stands - body.high[k]!, -body.b[k]!)
  }
  for (let k = 0; k < 3; k++) {
    if (!isSteep(beams, base, k)) continue
    for (let j = 0; j < 3; j++)
      if (j !== k && isSteep(beams, base, j))
        clip(
          out,
          0,
          enters(beams, base, body, k, x) - leaves(beams, base, body, j, x),
          moves(beams, base, body, k) - moves(beams, base, body, j),
        )
    // the last window's end, and for a segment its start, bound every sight
    clip(out, 0, enters(beams, base, body, k, x) - beams.to[beams.first[i + 1]! - 1]!, moves(beams, base, body, k))
    if (beams.segments) clip(out, 0, -leaves(beams, base, body, k, x), -moves(beams, base, body, k))
  }
  if (!(out[0]! < out[1]!)) return 0
  if (beams.segments) {
    out[2] = out[0]!
    out[3] = out[1]!
    return 4
  }
  return body.round ? guessCylinder(out, beams, i, body, x) : guessBox(out, beams, i, body, x)
}

/** KERNEL. For each window, the stretches in which each face is the last to be entered, within the window and in reach. */
function guessBox(out: Float64Array, beams: TileBeams, i: number, body: TileBody, x: number): number {
  const base = 3 * i
  let end = 2
  for (let w = beams.first[i]!; w < beams.first[i + 1]!; w++)
    for (let m = 0; m < 3 && end < GUESS_ROOM; m++) {
      if (!isSteep(beams, base, m)) continue
      const enter = enters(beams, base, body, m, x)
      const move = moves(beams, base, body, m)
      const far = beams.to[w]! < beams.reach[base + m]! ? beams.to[w]! : beams.reach[base + m]!
      out[end] = out[0]!
      out[end + 1] = out[1]!
      clip(out, end, enter - far, move)
      clip(out, end, beams.from[w]! - enter, -move)
      for (let k = 0; k < 3; k++)
        if (k !== m && isSteep(beams, base, k)) clip(out, end, enters(beams, base, body, k, x) - enter, moves(beams, base, body, k) - move)
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
  for (let w = beams.first[i]!; w < beams.first[i + 1]! && end < GUESS_ROOM; w++) {
    let near = beams.from[w]! > 0 ? beams.from[w]! : 0
    let far = beams.to[w]!
    if (isSteep(beams, base, 2)) {
      const enter = enters(beams, base, body, 2, x) + moves(beams, base, body, 2) * middle
      const leave = leaves(beams, base, body, 2, x) + moves(beams, base, body, 2) * middle
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

/** Distance to the face entered across an axis at y = 0; it changes by `moves` per mm of y. */
function enters(beams: TileBeams, base: number, body: TileBody, k: number, x: number): number {
  const slope = beams.slope[base + k]!
  return (body.a[k]! * x + body.c[k]! + (slope > 0 ? body.low[k]! : body.high[k]!) - beams.at[base + k]!) / slope
}

function leaves(beams: TileBeams, base: number, body: TileBody, k: number, x: number): number {
  const slope = beams.slope[base + k]!
  return (body.a[k]! * x + body.c[k]! + (slope > 0 ? body.high[k]! : body.low[k]!) - beams.at[base + k]!) / slope
}

function moves(beams: TileBeams, base: number, body: TileBody, k: number): number {
  return body.b[k]! / beams.slope[base + k]!
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
