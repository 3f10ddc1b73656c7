import type { Tile } from './plain.ts'

/** What every inequality of a leaf has to hold by, in the unit of its two sides: more than rounding, less than anybody measures. */
export const SPARE = 1e-6

/** c + x * (the placement's x) + y * (its y): its largest and smallest values on a tile are at corners. */
export type Affine = readonly [c: number, x: number, y: number]

export function mostOf([c, x, y]: Affine, { xMin, xMax, yMin, yMax }: Tile): number {
  return c + x * (x > 0 ? xMax : xMin) + y * (y > 0 ? yMax : yMin)
}

export function leastOf([c, x, y]: Affine, { xMin, xMax, yMin, yMax }: Tile): number {
  return c + x * (x > 0 ? xMin : xMax) + y * (y > 0 ? yMin : yMax)
}

export function valueAt([c, x, y]: Affine, atX: number, atY: number): number {
  return c + x * atX + y * atY
}

/** a + by * b. */
export function sumOf(a: Affine, b: Affine, by: number): Affine {
  return [a[0] + by * b[0], a[1] + by * b[1], a[2] + by * b[2]]
}

/** (a + c) * by. */
export function scaledOf(a: Affine, c: number, by: number): Affine {
  return [(a[0] + c) * by, a[1] * by, a[2] * by]
}

export function cornersOf({ xMin, xMax, yMin, yMax }: Tile): readonly (readonly [x: number, y: number])[] {
  return [
    [xMin, yMin],
    [xMax, yMin],
    [xMin, yMax],
    [xMax, yMax],
  ]
}
