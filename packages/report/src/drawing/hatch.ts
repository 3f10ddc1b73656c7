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
  const first = Math.floor(from_mm / step_mm)
  const sumOf = (line: number) => (first + line + 0.137) * step_mm
  const crossings = crossingsOf(rings, Math.max(0, Math.ceil(to_mm / step_mm) - first), sumOf)
  const lines = crossings.flatMap((found, line) => piecesOf(found, sumOf(line)))
  if (lines.length > 0) return lines
  const middle_mm = (from_mm + to_mm) / 2
  return crossingsOf(rings, 1, () => middle_mm).flatMap((found) => piecesOf(found, middle_mm))
}

/** For each line x + y = sum where it crosses the edges of the rings: x in mm, in any order. An end on a line counts to one side only, so that crossings come in pairs. */
function crossingsOf(rings: readonly (readonly Spot[])[], count: number, sumOf: (line: number) => number): readonly number[][] {
  const found = Array.from({ length: count }, (): number[] => [])
  const spacing_mm = sumOf(1) - sumOf(0)
  for (const ring of rings) {
    let a = ring[ring.length - 1]
    for (const b of ring) {
      if (a) {
        const [sumA_mm, sumB_mm] = [a.x_mm + a.y_mm, b.x_mm + b.y_mm]
        // one line more on either side than arithmetic says: which of them is crossed is asked below
        const near = spacing_mm > 0 ? Math.floor((Math.min(sumA_mm, sumB_mm) - sumOf(0)) / spacing_mm) - 1 : 0
        const far = spacing_mm > 0 ? Math.ceil((Math.max(sumA_mm, sumB_mm) - sumOf(0)) / spacing_mm) + 1 : count
        for (let line = Math.max(0, near); line < Math.min(count, far); line++) {
          const before = a.x_mm + a.y_mm - sumOf(line)
          const after = b.x_mm + b.y_mm - sumOf(line)
          if (before < 0 !== after < 0) found[line]?.push(a.x_mm + ((b.x_mm - a.x_mm) * before) / (before - after))
        }
      }
      a = b
    }
  }
  return found
}

/** The pieces of the line x + y = sum between each crossing and the next that belongs to it. */
function piecesOf(crossings: readonly number[], sum_mm: number): readonly (readonly [Spot, Spot])[] {
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
