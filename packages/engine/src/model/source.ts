/** Where a figure came from. Only `published`, `datasheet`, `measured` and confirmed values can carry a pass on their own. */
export type Basis = 'published' | 'datasheet' | 'measured' | 'common practice' | 'from memory' | 'our decision' | 'invented' // demonstration data: no such product, place or person exists

export interface Source {
  readonly basis: Basis
  readonly document?: string
  readonly edition?: string
  readonly clause?: string
  /** Who held the number against the page or took the measurement, and anything a reader needs to find it again. */
  readonly note?: string
}

/** A limit or size that did not come from this door. See `values/`. */
export interface OutsideValue {
  readonly id: string
  readonly value: number | readonly number[]
  readonly unit: Unit
  readonly means: string
  readonly source: Source
  readonly checked?: { readonly on: string; readonly by: string }
}

/** The user's word that a value from memory stands in the standard in hand; then it counts, and every finding says so. */
export interface Confirmation {
  readonly value: string // id of the OutsideValue, or of the body or sensor whose source it confirms
  readonly document: string
  readonly edition: string
  readonly clause: string
  readonly by: string
  readonly on: string // ISO date
}

export type Unit =
  | 'mm'
  | 'm'
  | 'mm2'
  | 'm2'
  | 'm3'
  | 'rad'
  | 'deg'
  | 's'
  | '1'
  | 'percent'
  | 'per_mm'
  | 'mm_per_s'
  | 'N'
  | 'J'
  | 'V'
  | 'A'
  | 'VA'
  | 'ohm_per_km'
  | 'y'
  | 'd'

export interface Quantity {
  readonly value: number
  readonly unit: Unit
}

/** A place in the door file, as `survey/opening/width_mm`. */
export type InputPath = string
