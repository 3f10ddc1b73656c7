import { type RankedDimension, ranked, roomAround } from './dimensions.ts'
import { textWidth_mm } from './lettering.ts'
import { type Box, LETTERING_MM, type Spot } from './model.ts'
import type { Projection } from './scene.ts'
import { TITLE_BLOCK_MM } from './title-block.ts'
import { heightOnPaper_mm, type View, viewAt, widthOnPaper_mm } from './view.ts'

export interface Paper {
  /** None where a sheet is made to measure. */
  readonly name: string | undefined
  readonly width_mm: number
  readonly height_mm: number
}

/** Sheets by ISO 216. */
const PAPERS: readonly Paper[] = [
  { name: 'A4', width_mm: 297, height_mm: 210 },
  { name: 'A4', width_mm: 210, height_mm: 297 },
  { name: 'A3', width_mm: 420, height_mm: 297 },
  { name: 'A3', width_mm: 297, height_mm: 420 },
]
/** Scales of the trade; beyond 1:100 only what is too large for them. */
const SCALES = [20, 25, 50, 100, 200, 500, 1000, 2000, 5000, 10_000]
const SMALLEST_SHARE = 4 // elevation and section are drawn at a quarter of the plan's scale at the least
const EDGE_MM = 10 // of paper around the frame
const BETWEEN_MM = 7
const HEADING_MM = 11.5 // two lines
const KEY_MM = 66 // least width of the key

/** The scales of a sheet: the plan carries the answer and may be drawn larger. */
export interface Scales {
  readonly plan: number
  readonly upright: number
}

/** One view in its place. */
export interface Slot {
  readonly projection: Projection
  readonly view: View
  readonly dimensions: readonly RankedDimension[]
  /** Where its labels may lie. */
  readonly bounds: Box
  readonly headingAt: Spot
}

export interface Arrangement {
  readonly paper: Paper
  readonly scales: Scales
  readonly slots: readonly Slot[]
  readonly key: Box
  readonly title: Box
}

export interface Projections {
  readonly plan: Projection
  readonly elevation: Projection
  readonly section: Projection | undefined
}

/**
 * Chooses scales and sheet: the largest scale of the plan that fits on A4 or A3, A4 where both carry it, then the largest scale for the
 * other views. A scale that was asked for holds for all views; if no paper carries it the sheet is made as large as it needs to be.
 */
export function arrange(projections: Projections, keyHeight_mm: KeyHeight, scale?: number): Arrangement {
  for (const plan of scale === undefined ? SCALES : [scale]) {
    for (const paper of PAPERS) {
      for (const upright of uprightScales(plan, scale)) {
        const found = arrangedOn(projections, keyHeight_mm, paper, { plan, upright })
        if (found) return found
      }
    }
  }
  const last = scale ?? SCALES[SCALES.length - 1] ?? 1
  return onItsOwnSheet(projections, keyHeight_mm, { plan: last, upright: last })
}

function uprightScales(plan: number, asked: number | undefined): readonly number[] {
  return asked === undefined ? SCALES.filter((scale) => scale >= plan && scale <= plan * SMALLEST_SHARE) : [asked]
}

/** How high the key is at the least when it is so many mm wide. */
type KeyHeight = (width_mm: number) => number

/** A projection at a scale with the room around it for dimensions. */
interface Block {
  readonly projection: Projection
  readonly dimensions: readonly RankedDimension[]
  readonly scale: number
  readonly left_mm: number // before the view
  readonly above_mm: number // heading included
  readonly width_mm: number
  readonly height_mm: number
}
type Cell = Block | 'key'
type Rows = readonly (readonly Cell[])[]

/** The arrangements in order of preference, each as rows from the top. */
function arrangementsOf(projections: Projections, scales: Scales): readonly Rows[] {
  const { plan, elevation, section } = blocksOf(projections, scales)
  const upright = section ? [elevation, section] : [elevation]
  const inLine: readonly Rows[] =
    scales.plan === scales.upright ? [section ? [upright, [plan, 'key']] : [[elevation, 'key'], [plan]], [upright, [plan], ['key']]] : []
  const stage: readonly Rows[] = [
    [[plan, 'key'], upright],
    [[plan], [...upright, 'key']],
    [[plan], upright, ['key']],
    [[plan, ...upright, 'key']],
    [[plan, ...upright], ['key']],
  ]
  return [...inLine, ...stage]
}

interface Blocks {
  readonly plan: Block
  readonly elevation: Block
  readonly section: Block | undefined
}

/** Elevation and section share their height; plan and elevation share their left and right where they have one scale. */
function blocksOf({ plan, elevation, section }: Projections, scales: Scales): Blocks {
  const planLeft_mm = roomOf(plan, scales.plan).left
  const elevationLeft_mm = roomOf(elevation, scales.upright).left
  const start_mm = Math.min(plan.window.uMin_mm, elevation.window.uMin_mm)
  const inLine = (projection: Projection, own_mm: number): number =>
    scales.plan === scales.upright ? Math.max(planLeft_mm, elevationLeft_mm) + (projection.window.uMin_mm - start_mm) / scales.plan : own_mm
  const above_mm = Math.max(roomOf(elevation, scales.upright).top, section ? roomOf(section, scales.upright).top : 0)
  return {
    plan: block(plan, scales.plan, inLine(plan, planLeft_mm), roomOf(plan, scales.plan).top),
    elevation: block(elevation, scales.upright, inLine(elevation, elevationLeft_mm), above_mm),
    section: section && block(section, scales.upright, roomOf(section, scales.upright).left, above_mm),
  }
}

function roomOf({ dimensions, window }: Projection, scale: number): ReturnType<typeof roomAround> {
  return roomAround(ranked(dimensions, scale), window, scale)
}

function block(projection: Projection, scale: number, left_mm: number, roomAbove_mm: number): Block {
  const dimensions = ranked(projection.dimensions, scale)
  const room = roomAround(dimensions, projection.window, scale)
  const above_mm = roomAbove_mm + HEADING_MM
  const drawn_mm = left_mm + widthOnPaper_mm(projection.window, scale) + room.right
  return {
    projection,
    dimensions,
    scale,
    left_mm,
    above_mm,
    width_mm: Math.max(
      drawn_mm,
      textWidth_mm(headingOf(projection, scale), LETTERING_MM.heading, true),
      textWidth_mm(projection.seen, LETTERING_MM.note),
    ),
    height_mm: above_mm + heightOnPaper_mm(projection.window, scale) + room.bottom,
  }
}

/** "Plan 1:25". */
export function headingOf({ heading }: Projection, scale: number): string {
  return `${heading} 1:${scale}`
}

function arrangedOn(projections: Projections, keyHeight_mm: KeyHeight, paper: Paper, scales: Scales): Arrangement | undefined {
  for (const rows of arrangementsOf(projections, scales)) {
    const heights_mm = rows.map((row) => rowHeight_mm(row, keyHeight_mm, freeWidth_mm(paper)))
    if (rows.every((row) => rowWidth_mm(row) <= freeWidth_mm(paper)) && stacked_mm(heights_mm) <= freeHeight_mm(paper)) {
      return placed(rows, heights_mm, paper, scales)
    }
  }
  return undefined
}

function freeWidth_mm({ width_mm }: Paper): number {
  return width_mm - 2 * EDGE_MM
}

function freeHeight_mm({ height_mm }: Paper): number {
  return height_mm - 2 * EDGE_MM - TITLE_BLOCK_MM - BETWEEN_MM
}

function widthOf(cell: Cell): number {
  return cell === 'key' ? KEY_MM : cell.width_mm
}

function rowWidth_mm(row: readonly Cell[]): number {
  return row.reduce((sum, cell) => sum + widthOf(cell), (row.length - 1) * BETWEEN_MM)
}

/** A key beside views is as narrow as it may be; a key alone has the whole width. */
function rowHeight_mm(row: readonly Cell[], keyHeight_mm: KeyHeight, free_mm: number): number {
  return Math.max(...row.map((cell) => (cell === 'key' ? keyHeight_mm(row.length === 1 ? free_mm : KEY_MM) : cell.height_mm)))
}

function stacked_mm(heights_mm: readonly number[]): number {
  return heights_mm.reduce((sum, height_mm) => sum + height_mm, (heights_mm.length - 1) * BETWEEN_MM)
}

/** Spare room goes between the rows and, within a row, before each view; the key takes what is left beside it and below it. */
function placed(rows: Rows, heights_mm: readonly number[], paper: Paper, scales: Scales): Arrangement {
  const apart_mm = (freeHeight_mm(paper) - stacked_mm(heights_mm)) / (rows.length + 1)
  const indent_mm = Math.min(...rows.map((row) => freeWidth_mm(paper) - rowWidth_mm(row))) / 4
  const slots: Slot[] = []
  let keyAt: Spot = { x_mm: 0, y_mm: 0 }
  let top_mm = EDGE_MM + apart_mm
  for (const [i, row] of rows.entries()) {
    const gap_mm = BETWEEN_MM + (freeWidth_mm(paper) - rowWidth_mm(row) - indent_mm) / (row.length + 1)
    let left_mm = EDGE_MM + indent_mm
    for (const cell of row) {
      if (cell === 'key') keyAt = { x_mm: left_mm, y_mm: top_mm }
      else slots.push(slot(cell, { x_mm: left_mm, y_mm: top_mm }))
      left_mm += widthOf(cell) + gap_mm
    }
    top_mm += (heights_mm[i] ?? 0) + BETWEEN_MM + apart_mm
  }
  const strip_mm = paper.height_mm - EDGE_MM
  const title = { left_mm: EDGE_MM, right_mm: paper.width_mm - EDGE_MM, top_mm: strip_mm - TITLE_BLOCK_MM, bottom_mm: strip_mm }
  return { paper, scales, slots, key: keyBox(keyAt, slots, title), title }
}

/** From its place to the right-hand edge, and down to the first view below it or to the title block. */
function keyBox({ x_mm, y_mm }: Spot, slots: readonly Slot[], { right_mm, top_mm }: Box): Box {
  const below = slots.map(({ bounds }) => bounds).filter((bounds) => bounds.right_mm > x_mm && bounds.top_mm > y_mm + HEADING_MM)
  return {
    left_mm: x_mm,
    right_mm,
    top_mm: y_mm + 2,
    bottom_mm: Math.min(top_mm, ...below.map((bounds) => bounds.top_mm - HEADING_MM)) - BETWEEN_MM,
  }
}

function slot({ projection, scale, dimensions, left_mm, above_mm, width_mm, height_mm }: Block, { x_mm, y_mm }: Spot): Slot {
  return {
    projection,
    dimensions,
    headingAt: { x_mm, y_mm: y_mm + LETTERING_MM.heading },
    view: viewAt(projection.window, scale, { x_mm: x_mm + left_mm, y_mm: y_mm + above_mm }),
    bounds: { left_mm: x_mm, right_mm: x_mm + width_mm, top_mm: y_mm + HEADING_MM - 1, bottom_mm: y_mm + height_mm },
  }
}

function onItsOwnSheet(projections: Projections, keyHeight_mm: KeyHeight, scales: Scales): Arrangement {
  const [rows] = arrangementsOf(projections, scales)
  if (!rows) throw new Error('arrangements must not be empty, got none')
  const width_mm = Math.max(297, ...rows.map((row) => Math.ceil(rowWidth_mm(row)) + 2 * EDGE_MM))
  const heights_mm = rows.map((row) => rowHeight_mm(row, keyHeight_mm, width_mm - 2 * EDGE_MM))
  const height_mm = Math.max(210, Math.ceil(stacked_mm(heights_mm)) + 2 * EDGE_MM + TITLE_BLOCK_MM + BETWEEN_MM)
  return placed(rows, heights_mm, { name: undefined, width_mm, height_mm }, scales)
}
