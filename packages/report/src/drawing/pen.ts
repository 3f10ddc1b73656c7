import type { Dash, Fill, Layer, Mark } from './model.ts'
import { clippedArea, clippedStretch, isInside, onSheet, type Place, type View } from './view.ts'

/** Draws places of a view on the sheet, clipped to the view's window. */

/** A run of straight stretches; it may come out in several pieces. */
export function stroke(view: View, layer: Layer, places: readonly Place[], dash: Dash = 'solid'): readonly Mark[] {
  const pieces: (readonly [Place, Place])[] = places.slice(1).flatMap((to, i) => {
    const piece = clippedStretch(view.window, places[i] ?? to, to)
    return piece ? [piece] : []
  })
  return joined(pieces).map((points): Mark => ({ kind: 'line', layer, dash, points: points.map((place) => onSheet(view, place)) }))
}

function joined(pieces: readonly (readonly [Place, Place])[]): readonly (readonly Place[])[] {
  const lines: Place[][] = []
  for (const [from, to] of pieces) {
    const line = lines[lines.length - 1]
    const end = line?.[line.length - 1]
    if (line && end && end.u_mm === from.u_mm && end.v_mm === from.v_mm) line.push(to)
    else lines.push([from, to])
  }
  return lines
}

/** A convex area. Its outline stops where the window cuts it, as a builder's drawing breaks a wall off. */
export function shape(view: View, layer: Layer, places: readonly Place[], fill: Fill, dash: Dash = 'solid'): readonly Mark[] {
  const ring = clippedArea(view.window, places)
  if (ring.length < 3) return []
  const filled: readonly Mark[] =
    fill === 'none' ? [] : [{ kind: 'area', layer, outline: false, fill, rings: [ring.map((place) => onSheet(view, place))] }]
  const [first] = places
  return [...filled, ...stroke(view, layer, first ? [...places, first] : places, dash)]
}

/** A circle, or its part in the window as an area of short stretches. */
export function round(view: View, layer: Layer, middle: Place, radius_mm: number, fill: Fill): readonly Mark[] {
  const box = [
    { u_mm: middle.u_mm - radius_mm, v_mm: middle.v_mm - radius_mm },
    { u_mm: middle.u_mm + radius_mm, v_mm: middle.v_mm + radius_mm },
  ]
  if (box.every((place) => isInside(view.window, place))) {
    return [{ kind: 'circle', layer, centre: onSheet(view, middle), radius_mm: radius_mm / view.scale, fill }]
  }
  const ring = Array.from(
    { length: 48 },
    (_, i): Place => ({
      u_mm: middle.u_mm + radius_mm * Math.cos((i * Math.PI) / 24),
      v_mm: middle.v_mm + radius_mm * Math.sin((i * Math.PI) / 24),
    }),
  )
  return shape(view, layer, ring, fill)
}

/** The four corners of a rectangle turned about its middle, counter-clockwise as drawn. */
export function turnedCorners(middle: Place, [along_mm, across_mm]: readonly [number, number], turn_rad: number): readonly Place[] {
  const cos = Math.cos(turn_rad)
  const sin = Math.sin(turn_rad)
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([a = 0, b = 0]) => {
    const along = (a * along_mm) / 2
    const across = (b * across_mm) / 2
    return { u_mm: middle.u_mm + along * cos - across * sin, v_mm: middle.v_mm + along * sin + across * cos }
  })
}

export function upright(uMin_mm: number, uMax_mm: number, vMin_mm: number, vMax_mm: number): readonly Place[] {
  return [
    { u_mm: uMin_mm, v_mm: vMin_mm },
    { u_mm: uMax_mm, v_mm: vMin_mm },
    { u_mm: uMax_mm, v_mm: vMax_mm },
    { u_mm: uMin_mm, v_mm: vMax_mm },
  ]
}
