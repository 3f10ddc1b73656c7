/**
 * Lengths that differ by less are equal: chains of a few roundings of metres leave less than 1e-8 mm. Where equal is not enough (a gap as wide as
 * the body, a floor as high as the field) it errs toward "fails"; a leaf that stays in a field for less of its way does not count, for no drive
 * stops so exactly. In mm.
 */
export const ROUNDING_MM = 1e-6
