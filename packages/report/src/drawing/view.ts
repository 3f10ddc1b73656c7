import type { Box, Spot } from './model.ts'

/**
 * A rectangle of one projection of the door in mm of the real thing: u to the right, v up the sheet. In the plan u = x and v = y, in the
 * elevation u = x and v = z, in the section u = -y and v = z.
 */
export interface Window {
  readonly uMin_mm: number
  readonly uMax_mm: number
  readonly vMin_mm: number
  readonly vMax_mm: number
}

export interface Place {
  readonly u_mm: number
  readonly v_mm: number
}

/** A window that lies on the sheet at a scale. */
export interface View {
  readonly window: Window
  /** 25 for 1:25. */
  readonly scale: number
  /** Where the window lies on the sheet. */
  readonly box: Box
}

export function viewAt(window: Window, scale: number, upperLeft: Spot): View {
  const { x_mm: left_mm, y_mm: top_mm } = upperLeft
  return {
    window,
    scale,
    box: { left_mm, top_mm, right_mm: left_mm + widthOnPaper_mm(window, scale), bottom_mm: top_mm + heightOnPaper_mm(window, scale) },
  }
}

export function widthOnPaper_mm({ uMin_mm, uMax_mm }: Window, scale: number): number {
  return (uMax_mm - uMin_mm) / scale
}

export function heightOnPaper_mm({ vMin_mm, vMax_mm }: Window, scale: number): number {
  return (vMax_mm - vMin_mm) / scale
}

export function onSheet({ window, scale, box }: View, { u_mm, v_mm }: Place): Spot {
  return { x_mm: box.left_mm + (u_mm - window.uMin_mm) / scale, y_mm: box.bottom_mm - (v_mm - window.vMin_mm) / scale }
}

export function windowAround(places: readonly Place[]): Window {
  const us = places.map(({ u_mm }) => u_mm)
  const vs = places.map(({ v_mm }) => v_mm)
  return { uMin_mm: least(us), uMax_mm: most(us), vMin_mm: least(vs), vMax_mm: most(vs) }
}

function least(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY)
}

function most(values: readonly number[]): number {
  return values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY)
}

export function isInside({ uMin_mm, uMax_mm, vMin_mm, vMax_mm }: Window, { u_mm, v_mm }: Place): boolean {
  return u_mm >= uMin_mm && u_mm <= uMax_mm && v_mm >= vMin_mm && v_mm <= vMax_mm
}

/** The part of a convex area inside of the window; empty if there is none. Sutherland and Hodgman, one side after the other. */
export function clippedArea(window: Window, places: readonly Place[]): readonly Place[] {
  const sides: readonly ((place: Place) => number)[] = [
    ({ u_mm }) => u_mm - window.uMin_mm,
    ({ u_mm }) => window.uMax_mm - u_mm,
    ({ v_mm }) => v_mm - window.vMin_mm,
    ({ v_mm }) => window.vMax_mm - v_mm,
  ]
  return sides.reduce<readonly Place[]>(
    (ring, inside) =>
      ring.flatMap((place, i) => {
        const next = ring[(i + 1) % ring.length] ?? place
        const a = inside(place)
        const b = inside(next)
        const kept = a >= 0 ? [place] : []
        return a >= 0 === b >= 0 ? kept : [...kept, between(place, next, a / (a - b))]
      }),
    places,
  )
}

/** The part of a stretch inside of the window, or undefined. Liang and Barsky. */
export function clippedStretch(window: Window, from: Place, to: Place): readonly [Place, Place] | undefined {
  const along_mm = to.u_mm - from.u_mm
  const up_mm = to.v_mm - from.v_mm
  const sides = [
    [-along_mm, from.u_mm - window.uMin_mm],
    [along_mm, window.uMax_mm - from.u_mm],
    [-up_mm, from.v_mm - window.vMin_mm],
    [up_mm, window.vMax_mm - from.v_mm],
  ] as const
  let start = 0
  let end = 1
  for (const [toward, room] of sides) {
    if (toward === 0 && room < 0) return undefined
    if (toward < 0) start = Math.max(start, room / toward)
    if (toward > 0) end = Math.min(end, room / toward)
  }
  return start < end ? [between(from, to, start), between(from, to, end)] : undefined
}

function between(a: Place, b: Place, share: number): Place {
  return { u_mm: a.u_mm + (b.u_mm - a.u_mm) * share, v_mm: a.v_mm + (b.v_mm - a.v_mm) * share }
}
