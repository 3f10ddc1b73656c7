/**
 * What a drawing is made of, whatever it is written as. Sheet frame: mm of paper, x to the right, y down, origin in the upper left
 * corner. Marks are painted in their order.
 */
export interface Sheet {
  readonly width_mm: number
  readonly height_mm: number
  readonly title: string
  readonly description: string
  readonly marks: readonly Mark[]
}

/** A place on the sheet. */
export interface Spot {
  readonly x_mm: number
  readonly y_mm: number
}

/** An upright rectangle on the sheet. */
export interface Box {
  readonly left_mm: number
  readonly top_mm: number
  readonly right_mm: number
  readonly bottom_mm: number
}

/**
 * What a mark is, which decides its weight of line: `structure` for the building, `thing` for what stands in it, `help` for zones,
 * scan planes and centre lines, `unseen` and `hatch` for blind pockets and for nothing else, `body` for a worst case,
 * `halo` for paper left around a line that crosses hatching.
 */
export type Layer = 'structure' | 'thing' | 'help' | 'unseen' | 'hatch' | 'body' | 'dimension' | 'text' | 'frame' | 'halo'

export type Fill = 'none' | 'paper' | 'wall' | 'unseen' | 'ink'
export type Dash = 'solid' | 'zone' | 'centre' | 'hidden'

export type Mark =
  | { readonly kind: 'line'; readonly layer: Layer; readonly points: readonly Spot[]; readonly dash?: Dash }
  /** One area with even-odd holes. `outline: false` leaves the fill alone. */
  | {
      readonly kind: 'area'
      readonly layer: Layer
      readonly rings: readonly (readonly Spot[])[]
      readonly fill: Fill
      readonly outline?: boolean
      readonly dash?: Dash
    }
  | { readonly kind: 'circle'; readonly layer: Layer; readonly centre: Spot; readonly radius_mm: number; readonly fill: Fill }
  | Lettering

export interface Lettering {
  readonly kind: 'text'
  readonly layer: Layer
  /** On the baseline, at the end that `anchor` names. */
  readonly at: Spot
  readonly text: string
  readonly size_mm: number
  readonly anchor: 'start' | 'middle' | 'end'
  readonly bold?: boolean
  /** Read from the right-hand edge of the sheet. */
  readonly upward?: boolean
}

/** Weights of line in mm on paper: one for structure, one for things, one thin for help. */
export const PENS_MM: Readonly<Record<Layer, number>> = {
  structure: 0.5,
  thing: 0.3,
  help: 0.18,
  unseen: 0.3,
  hatch: 0.25,
  body: 0.5,
  dimension: 0.18,
  text: 0,
  frame: 0.3,
  halo: 1.5,
}

/** Dashes and gaps in mm on paper, as SVG has them. */
export const DASHES_MM: Readonly<Record<Dash, string | undefined>> = {
  solid: undefined,
  zone: '2.4 1.2',
  centre: '6 1 1 1',
  hidden: '1.2 0.8',
}

/** Lettering on paper, size of the type in mm. 3.5 mm is 13 px at the 96 px per inch of screens. */
export const LETTERING_MM = { label: 3.5, note: 3.5, heading: 4.4, title: 6 } as const

export function boxAround(spots: readonly Spot[]): Box {
  return {
    left_mm: Math.min(...spots.map((spot) => spot.x_mm)),
    right_mm: Math.max(...spots.map((spot) => spot.x_mm)),
    top_mm: Math.min(...spots.map((spot) => spot.y_mm)),
    bottom_mm: Math.max(...spots.map((spot) => spot.y_mm)),
  }
}

/** Whether two boxes share more than an edge. */
export function overlap(a: Box, b: Box): boolean {
  return a.left_mm < b.right_mm && b.left_mm < a.right_mm && a.top_mm < b.bottom_mm && b.top_mm < a.bottom_mm
}

export function grown(box: Box, by_mm: number): Box {
  return { left_mm: box.left_mm - by_mm, top_mm: box.top_mm - by_mm, right_mm: box.right_mm + by_mm, bottom_mm: box.bottom_mm + by_mm }
}

export function corners(box: Box): readonly Spot[] {
  const { left_mm, top_mm, right_mm, bottom_mm } = box
  return [
    { x_mm: left_mm, y_mm: top_mm },
    { x_mm: right_mm, y_mm: top_mm },
    { x_mm: right_mm, y_mm: bottom_mm },
    { x_mm: left_mm, y_mm: bottom_mm },
  ]
}
