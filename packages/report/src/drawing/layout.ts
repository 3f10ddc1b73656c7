import { type Dimension, ranked, type RankedDimension, roomAround } from './dimensions.ts'
import { textWidth_mm } from './lettering.ts'
import { type Box, LETTERING_MM, type Spot } from './model.ts'
import type { Projection } from './scene.ts'
import { TITLE_BLOCK_MM } from './title-block.ts'
import { heightOnPaper_mm, type View, viewAt, widthOnPaper_mm } from './view.ts'

export interface Paper {
  readonly name: string
  readonly width_mm: number
  readonly height_mm: number
}

/** Sheets by ISO 216. */
const PAPERS: readonly Paper[] = [
  { name: 'A4', width_mm: 210, height_mm: 297 }, { name: 'A4', width_mm: 297, height_mm: 210 }, { name: 'A3', width_mm: 420, height_mm: 297 }, { name: 'A3', width_mm: 297, height_mm: 420 },
]
/** Scales of the trade; beyond 1:100 only what is too large for them. */
const SCALES = [20, 25, 50, 100, 200, 500, 1000, 2000, 5000, 10_000]
const EDGE_MM = 10 // of paper around the frame
const BETWEEN_MM = 6
const HEADING_MM = 8
const KEY_MM = 62 // least width of the key's column
const KEY_HEIGHT_MM = 50

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
  readonly scale: number
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
 * Chooses scale and sheet: the largest scale that fits on A4 or A3, and A4 where both carry it. A scale that was asked for is kept; if
 * nothing carries it the sheet is made as large as it needs to be.
 */
export function arrange(projections: Projections, scale?: number): Arrangement {
  for (const candidate of scale === undefined ? SCALES : [scale]) {
    const blocks = blocksOf(projections, candidate)
    for (const paper of PAPERS) {
      const found = fitted(blocks, paper, candidate)
      if (found) return found
    }
  }
  const last = scale ?? SCALES[SCALES.length - 1] ?? 1
  return made(blocksOf(projections, last), last)
}

/** A projection at a scale with the room around it for dimensions. Offsets are from the block's upper left corner. */
interface Block {
  readonly projection: Projection
  readonly dimensions: readonly RankedDimension[]
  readonly scale: number
  readonly left_mm: number // before the view
  readonly above_mm: number // heading included
  readonly width_mm: number
  readonly height_mm: number
}

interface Blocks {
  readonly plan: Block
  readonly elevation: Block
  readonly section: Block | undefined
}

/** Views that stand above or beside each other share their margins, so that they stay in line. */
function blocksOf({ plan, elevation, section }: Projections, scale: number): Blocks {
  const rooms = [plan, elevation].map((projection) => roomOf(projection, scale))
  const left_mm = Math.max(...rooms.map((room) => room.left))
  const start_mm = Math.min(plan.window.uMin_mm, elevation.window.uMin_mm)
  const above_mm = Math.max(roomOf(elevation, scale).top, section ? roomOf(section, scale).top : 0)
  const lined = (projection: Projection): number => left_mm + (projection.window.uMin_mm - start_mm) / scale
  return {
    plan: block(plan, scale, lined(plan), roomOf(plan, scale).top),
    elevation: block(elevation, scale, lined(elevation), above_mm),
    section: section && block(section, scale, roomOf(section, scale).left, above_mm),
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
    projection, dimensions, scale, left_mm, above_mm,
    width_mm: Math.max(drawn_mm, textWidth_mm(projection.heading, LETTERING_MM.heading, true)),
    height_mm: above_mm + heightOnPaper_mm(projection.window, scale) + room.bottom,
  }
}

/** Elevation above the plan, section beside the elevation, key beside the plan. Undefined if the paper is too small. */
function fitted(blocks: Blocks, paper: Paper, scale: number): Arrangement | undefined {
  const left_mm = Math.max(blocks.plan.width_mm, blocks.elevation.width_mm)
  const upper_mm = Math.max(blocks.elevation.height_mm, blocks.section?.height_mm ?? 0)
  const column_mm = Math.max(KEY_MM, blocks.section?.width_mm ?? 0)
  const lower_mm = Math.max(blocks.plan.height_mm, KEY_HEIGHT_MM)
  const free = { width_mm: paper.width_mm - 2 * EDGE_MM, height_mm: paper.height_mm - 2 * EDGE_MM - TITLE_BLOCK_MM - BETWEEN_MM }
  const spare_mm = free.height_mm - upper_mm - BETWEEN_MM - lower_mm
  if (left_mm + BETWEEN_MM + column_mm > free.width_mm || spare_mm < 0) return undefined
  return placed(blocks, paper, scale, { left_mm, upper_mm, spareWidth_mm: free.width_mm - left_mm - BETWEEN_MM - column_mm, spareHeight_mm: spare_mm })
}

function placed(blocks: Blocks, paper: Paper, scale: number, size: {
  readonly left_mm: number
  readonly upper_mm: number
  readonly spareWidth_mm: number
  readonly spareHeight_mm: number
}): Arrangement {
  const x_mm = EDGE_MM + size.spareWidth_mm / 4
  const y_mm = EDGE_MM + size.spareHeight_mm / 4
  const right_mm = x_mm + size.left_mm + BETWEEN_MM + size.spareWidth_mm / 4
  const lower_mm = y_mm + size.upper_mm + BETWEEN_MM + size.spareHeight_mm / 4
  const bottom_mm = paper.height_mm - EDGE_MM - TITLE_BLOCK_MM
  const keyTop_mm = blocks.section ? lower_mm + HEADING_MM : y_mm + HEADING_MM
  return {
    paper, scale,
    slots: [
      slot(blocks.elevation, { x_mm, y_mm }, size.left_mm),
      ...(blocks.section ? [slot(blocks.section, { x_mm: right_mm, y_mm }, blocks.section.width_mm)] : []),
      slot(blocks.plan, { x_mm, y_mm: lower_mm }, size.left_mm),
    ],
    key: { left_mm: right_mm, right_mm: paper.width_mm - EDGE_MM, top_mm: keyTop_mm, bottom_mm: bottom_mm - BETWEEN_MM },
    title: { left_mm: EDGE_MM, right_mm: paper.width_mm - EDGE_MM, top_mm: bottom_mm, bottom_mm: paper.height_mm - EDGE_MM },
  }
}

function slot(block: Block, { x_mm, y_mm }: Spot, width_mm: number): Slot {
  const { projection, scale, dimensions, left_mm, above_mm, height_mm } = block
  return {
    projection, dimensions, headingAt: { x_mm, y_mm: y_mm + LETTERING_MM.heading },
    view: viewAt(projection.window, scale, { x_mm: x_mm + left_mm, y_mm: y_mm + above_mm }),
    bounds: { left_mm: x_mm, right_mm: x_mm + width_mm, top_mm: y_mm + HEADING_MM - 2, bottom_mm: y_mm + height_mm },
  }
}

function made(blocks: Blocks, scale: number): Arrangement {
  const width_mm = 2 * EDGE_MM + Math.max(blocks.plan.width_mm, blocks.elevation.width_mm) + BETWEEN_MM + Math.max(KEY_MM, blocks.section?.width_mm ?? 0)
  const upper_mm = Math.max(blocks.elevation.height_mm, blocks.section?.height_mm ?? 0)
  const height_mm = 2 * EDGE_MM + TITLE_BLOCK_MM + upper_mm + 2 * BETWEEN_MM + Math.max(blocks.plan.height_mm, KEY_HEIGHT_MM)
  const paper = { name: 'its own sheet', width_mm: Math.max(297, Math.ceil(width_mm)), height_mm: Math.max(210, Math.ceil(height_mm)) }
  const found = fitted(blocks, paper, scale)
  if (!found) throw new Error(`paper must carry the drawing, got ${paper.width_mm} x ${paper.height_mm} mm`)
  return found
}

export type { Dimension }
