import type { LengthUnits } from './read-length.ts'

const SIXTEENTHS_PER_MM = 16 / 25.4
const SIXTEENTHS_PER_FOOT = 12 * 16

/**
 * A length for people, in words that `readLength` reads back: `2400 mm`, `7' 10 1/2"`.
 *
 * Metric keeps tenths of a millimetre, feet and inches sixteenths of an inch, as on a tape. `round` says to which side; a figure that
 * is held against a limit is rounded to the unfavourable one.
 */
export function showLength(
  length_mm: number,
  units: LengthUnits,
  { round = 'nearest' }: { readonly round?: 'nearest' | 'up' | 'down' } = {},
): string {
  if (!Number.isFinite(length_mm)) throw new Error(`length_mm must be finite, got ${length_mm}`)
  return units === 'metric' ? `${rounded(length_mm * 10, round) / 10} mm` : feetAndInches(rounded(length_mm * SIXTEENTHS_PER_MM, round))
}

function feetAndInches(sixteenths: number): string {
  const size = Math.abs(sixteenths)
  const feet = Math.floor(size / SIXTEENTHS_PER_FOOT)
  const inches = inchText(size - feet * SIXTEENTHS_PER_FOOT)
  return `${sixteenths < 0 ? '-' : ''}${feet > 0 ? `${feet}' ` : ''}${inches}"`
}

function inchText(sixteenths: number): string {
  const whole = Math.floor(sixteenths / 16)
  let over = sixteenths % 16
  let under = 16
  for (; over > 0 && over % 2 === 0; over /= 2) under /= 2
  if (over === 0) return `${whole}`
  return whole === 0 ? `${over}/${under}` : `${whole} ${over}/${under}`
}

/** Within a millionth of a whole number the whole number is meant: 2400.3 mm is 1512 sixteenths, though binary leaves 1512.0000000000002. */
function rounded(value: number, round: 'nearest' | 'up' | 'down'): number {
  const near = Math.round(value)
  if (round === 'nearest' || Math.abs(value - near) < 1e-6) return near + 0
  return (round === 'up' ? Math.ceil(value) : Math.floor(value)) + 0
}
