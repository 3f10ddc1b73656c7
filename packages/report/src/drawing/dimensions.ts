import { blank } from './labels.ts'
import { baselineAround, lettering, letteringBox, textWidth_mm } from './lettering.ts'
import { type Box, LETTERING_MM, type Mark, overlap, type Spot } from './model.ts'
import { onSheet, type View, type Window } from './view.ts'

export type DimensionSide = 'top' | 'bottom' | 'left' | 'right'

/** A dimension outside of a view, in mm of the real thing: along u at the top or bottom, along v at the left or right. */
export interface Dimension {
  readonly side: DimensionSide
  readonly from_mm: number
  readonly to_mm: number
  /** Where the things it measures lie in the other direction: the extension lines start there. */
  readonly startsAt_mm: number
  readonly text: string
  /** What it measures, for whoever changes it there: `opening/width`, `opening/height`, `sensor/<id>/z`, `zone/<id>/yMin`. */
  readonly of?: string | undefined
}

/** Its rank counts outward from the view, 0 nearest. */
export interface RankedDimension extends Dimension {
  readonly rank: number
}

export const FIRST_RANK_MM = 8
export const NEXT_RANK_MM = 7
const TICK_MM = 1.3 // half an oblique tick, along and across
const BEYOND_MM = 1.6 // dimension and extension lines run so far past each other
const GAP_MM = 1.2 // between a thing and its extension line
const AIR_MM = 1

/** Gives each dimension the nearest rank where it meets no other. Keeps their order: the first named lie nearest. */
export function ranked(dimensions: readonly Dimension[], scale: number): readonly RankedDimension[] {
  const placed: RankedDimension[] = []
  for (const dimension of dimensions) {
    let rank = 0
    while (placed.some((other) => other.side === dimension.side && other.rank === rank && meet(other, dimension, scale))) rank++
    placed.push({ ...dimension, rank })
  }
  return placed
}

function meet(a: Dimension, b: Dimension, scale: number): boolean {
  const [aFrom, aTo] = stretchOnPaper(a, scale)
  const [bFrom, bTo] = stretchOnPaper(b, scale)
  return aFrom < bTo + AIR_MM && bFrom < aTo + AIR_MM
}

/** What a dimension takes up along itself, in mm of paper from the origin of the real thing, its lettering included. */
function stretchOnPaper(dimension: Dimension, scale: number): readonly [number, number] {
  const from = Math.min(dimension.from_mm, dimension.to_mm) / scale - BEYOND_MM
  const to = Math.max(dimension.from_mm, dimension.to_mm) / scale + BEYOND_MM
  return isTextOutside(dimension, scale) ? [from, to + textLength_mm(dimension) + AIR_MM] : [from, to]
}

function isTextOutside(dimension: Dimension, scale: number): boolean {
  return Math.abs(dimension.to_mm - dimension.from_mm) / scale < textLength_mm(dimension) + 2 * TICK_MM + AIR_MM
}

function textLength_mm({ text }: Dimension): number {
  return textWidth_mm(text, LETTERING_MM.label)
}

/** The room that dimensions need outside of a view, side by side. Lettering that stands beyond an end is counted too. */
export function roomAround(dimensions: readonly RankedDimension[], window: Window, scale: number): Readonly<Record<DimensionSide, number>> {
  const room = { top: 3, bottom: 3, left: 3, right: 3 }
  for (const dimension of dimensions) {
    const { side, rank } = dimension
    room[side] = Math.max(room[side], FIRST_RANK_MM + rank * NEXT_RANK_MM + LETTERING_MM.label)
    const [from, to] = stretchOnPaper(dimension, scale)
    if (side === 'top' || side === 'bottom') {
      room.left = Math.max(room.left, window.uMin_mm / scale - from)
      room.right = Math.max(room.right, to - window.uMax_mm / scale)
    } else {
      room.bottom = Math.max(room.bottom, window.vMin_mm / scale - from)
      room.top = Math.max(room.top, to - window.vMax_mm / scale)
    }
  }
  return room
}

export interface DrawnDimension {
  readonly marks: readonly Mark[]
  /** Paper and lettering, to be painted when the lines of all dimensions are drawn. */
  readonly figure: readonly Mark[]
  readonly text: Box
  readonly lines: readonly (readonly [Spot, Spot])[]
}

/**
 * All dimensions of a view; undefined for one whose figure would lie on another's, as happens in the corners of small drawings. Those that
 * somebody can change there go first.
 *
 * @param kept what is drawn over it: a figure keeps off where it can stand beyond the other end
 */
export function drawDimensions(
  view: View,
  dimensions: readonly RankedDimension[],
  { bounds, kept }: { readonly bounds: Box; readonly kept: readonly Box[] },
): readonly (DrawnDimension | undefined)[] {
  const drawn = new Map<RankedDimension, DrawnDimension>()
  for (const dimension of [...dimensions].sort((a, b) => Number(b.of !== undefined) - Number(a.of !== undefined))) {
    const clear = (['to', 'from'] as const)
      .map((end) => drawDimension(view, dimension, end))
      .filter(({ text }, i) => (i === 0 || isWithin(text, bounds)) && [...drawn.values()].every((other) => !overlap(other.text, text)))
    const best = clear.find(({ text }) => kept.every((other) => !overlap(other, text))) ?? clear[0]
    if (best) drawn.set(dimension, best)
  }
  return dimensions.map((dimension) => drawn.get(dimension))
}

function isWithin(box: Box, bounds: Box): boolean {
  return (
    box.left_mm >= bounds.left_mm && box.right_mm <= bounds.right_mm && box.top_mm >= bounds.top_mm && box.bottom_mm <= bounds.bottom_mm
  )
}

/** One dimension as lines, oblique ticks and its figure; where that has no room between the ticks it stands beyond one end. */
function drawDimension(view: View, dimension: RankedDimension, beyondEnd: 'from' | 'to'): DrawnDimension {
  const lengthwise = dimension.side === 'top' || dimension.side === 'bottom'
  const out_mm = FIRST_RANK_MM + dimension.rank * NEXT_RANK_MM
  const from = Math.min(dimension.from_mm, dimension.to_mm)
  const to = Math.max(dimension.from_mm, dimension.to_mm)
  const ends = [from, to].map((value_mm) => onLine(view, dimension.side, value_mm, out_mm)) as [Spot, Spot]
  const beyond = lengthwise ? { x_mm: BEYOND_MM, y_mm: 0 } : { x_mm: 0, y_mm: -BEYOND_MM }
  const line: readonly [Spot, Spot] = [minus(ends[0], beyond), plus(ends[1], beyond)]
  const extensions = ends.map((end, i) => extension(view, dimension, i === 0 ? from : to, end))
  const ticks = ends.map((end): readonly [Spot, Spot] => [
    { x_mm: end.x_mm - TICK_MM, y_mm: end.y_mm + TICK_MM },
    { x_mm: end.x_mm + TICK_MM, y_mm: end.y_mm - TICK_MM },
  ])
  const text = figureAt(dimension, ends, { scale: view.scale, lengthwise, beyondEnd })
  const box = letteringBox(text)
  const marks: readonly Mark[] = [
    ...[line, ...extensions].map((points): Mark => ({ kind: 'line', layer: 'dimension', points })),
    ...ticks.map((points): Mark => ({ kind: 'line', layer: 'frame', points })),
  ]
  return { marks, figure: [blank(box), text], text: box, lines: [line, ...extensions] }
}

function figureAt(
  dimension: Dimension,
  [from, to]: readonly [Spot, Spot],
  { scale, lengthwise, beyondEnd }: { readonly scale: number; readonly lengthwise: boolean; readonly beyondEnd: 'from' | 'to' },
): Extract<Mark, { kind: 'text' }> {
  const half_mm = textLength_mm(dimension) / 2
  const outside = isTextOutside(dimension, scale)
  const middle = { x_mm: (from.x_mm + to.x_mm) / 2, y_mm: (from.y_mm + to.y_mm) / 2 }
  const away_mm = BEYOND_MM + AIR_MM + half_mm
  const size_mm = LETTERING_MM.label
  if (lengthwise) {
    const x_mm = !outside ? middle.x_mm : beyondEnd === 'to' ? to.x_mm + away_mm : from.x_mm - away_mm
    return lettering(dimension.text, { x_mm, y_mm: baselineAround(middle.y_mm, size_mm) }, size_mm, { anchor: 'middle' })
  }
  const y_mm = !outside ? middle.y_mm : beyondEnd === 'to' ? to.y_mm - away_mm : from.y_mm + away_mm
  return lettering(dimension.text, { x_mm: baselineAround(middle.x_mm, size_mm), y_mm }, size_mm, { anchor: 'middle', upward: true })
}

/** A place on the dimension line, `out_mm` of paper away from the view. */
function onLine(view: View, side: DimensionSide, value_mm: number, out_mm: number): Spot {
  const { box } = view
  const along = onSheet(view, { u_mm: value_mm, v_mm: value_mm })
  if (side === 'top') return { x_mm: along.x_mm, y_mm: box.top_mm - out_mm }
  if (side === 'bottom') return { x_mm: along.x_mm, y_mm: box.bottom_mm + out_mm }
  return { x_mm: side === 'left' ? box.left_mm - out_mm : box.right_mm + out_mm, y_mm: along.y_mm }
}

function extension(view: View, { side, startsAt_mm }: Dimension, value_mm: number, end: Spot): readonly [Spot, Spot] {
  const start = onSheet(
    view,
    side === 'top' || side === 'bottom' ? { u_mm: value_mm, v_mm: startsAt_mm } : { u_mm: startsAt_mm, v_mm: value_mm },
  )
  const away: Spot = {
    top: { x_mm: 0, y_mm: -1 },
    bottom: { x_mm: 0, y_mm: 1 },
    left: { x_mm: -1, y_mm: 0 },
    right: { x_mm: 1, y_mm: 0 },
  }[side]
  return [plus(start, times(away, GAP_MM)), plus(end, times(away, BEYOND_MM))]
}

function plus(a: Spot, b: Spot): Spot {
  return { x_mm: a.x_mm + b.x_mm, y_mm: a.y_mm + b.y_mm }
}

function minus(a: Spot, b: Spot): Spot {
  return { x_mm: a.x_mm - b.x_mm, y_mm: a.y_mm - b.y_mm }
}

function times(a: Spot, factor: number): Spot {
  return { x_mm: a.x_mm * factor, y_mm: a.y_mm * factor }
}
