import type { Spot } from './model.ts'

/** Distance between hatch lines on paper, measured across them. */
export const HATCH_SPACING_MM = 1.15

/**
 * Lines at 45 degrees, rising to the right, clipped to an area with even-odd holes. Real lines, so that every printer and every program
 * shows them. All areas of a sheet share one phase; an area too small for it gets the one line through the middle of its box.
 */
export function hatchLines(rings: readonly (readonly Spot[])[]): readonly (readonly [Spot, Spot])[] {
  const spots = rings.flat()
  if (spots.length === 0) return []
  const sums = spots.map(({ x_mm, y_mm }) => x_mm + y_mm) // constant along a rising line, as y runs down the sheet
  const step_mm = HATCH_SPACING_MM * Math.SQRT2
  const from_mm = Math.min(...sums)
  const to_mm = Math.max(...sums)
  const lines: (readonly [Spot, Spot])[] = []
  for (let i = Math.floor(from_mm / step_mm); i * step_mm < to_mm; i++) lines.push(...clippedLine(rings, (i + 0.137) * step_mm))
  return lines.length > 0 ? lines : clippedLine(rings, (from_mm + to_mm) / 2)
}

/** The pieces of the line x + y = sum inside of the rings. */
function clippedLine(rings: readonly (readonly Spot[])[], sum_mm: number): readonly (readonly [Spot, Spot])[] {
  const crossings = rings.flatMap((ring) => ring.flatMap((spot, i) => crossing(spot, ring[(i + 1) % ring.length] ?? spot, sum_mm)))
  const sorted = [...crossings].sort((a, b) => a - b)
  const pieces: (readonly [Spot, Spot])[] = []
  for (let i = 0; i + 1 < sorted.length; i += 2) {
    const left_mm = sorted[i] ?? 0
    const right_mm = sorted[i + 1] ?? 0
    if (right_mm - left_mm > 1e-9)
      pieces.push([
        { x_mm: left_mm, y_mm: sum_mm - left_mm },
        { x_mm: right_mm, y_mm: sum_mm - right_mm },
      ])
  }
  return pieces
}

/** Where an edge crosses the line: x in mm, or nothing. An end on the line counts to one side only, so that crossings come in pairs. */
function crossing(a: Spot, b: Spot, sum_mm: number): readonly number[] {
  const before = a.x_mm + a.y_mm - sum_mm
  const after = b.x_mm + b.y_mm - sum_mm
  if (before < 0 === after < 0) return []
  return [a.x_mm + ((b.x_mm - a.x_mm) * before) / (before - after)]
}
