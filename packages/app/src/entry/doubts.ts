import type { Words } from '../words/en.ts'

/** A question about a value outside of what such a thing usually measures (common practice, no source): asked in place, never refused. */
export function hardly(words: Words, [least, most]: readonly [number, number], show: (value: number) => string) {
  return (value: number): string | undefined =>
    value > most ? words.doubts.large(show(value)) : value < least ? words.doubts.small(show(value)) : undefined
}

/** Common practice, no source: only the question hangs on it. */
export const USUAL_MM = {
  openingWidth: [600, 12_000],
  openingHeight: [1800, 8000],
  leafThickness: [4, 120],
  leafBulge: [0, 300],
  mountingHeight: [1000, 8000],
  offset: [20, 1000],
} as const
