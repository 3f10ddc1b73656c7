import type { OutsideValue } from '../model/source.ts'

/**
 * A length as printed, in mm, without what binary leaves (1.001 * 1000 is 1000.9999999999999): rounded to 1e-6 mm.
 * Throws for a value that is no length.
 */
export function in_mm({ id, unit, value }: OutsideValue & { readonly value: number }): number {
  if (unit === 'mm') return value
  if (unit === 'm') return Math.round(value * 1e9) / 1e6
  throw new Error(`${id} must be a length in m or mm, got ${unit}`)
}
