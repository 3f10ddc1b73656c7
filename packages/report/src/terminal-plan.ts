import type { Door, Judgement, Obstacle } from '@sillsight/engine'
import { bodiesToDraw, halfExtents, type ShownBody, sensorSpots } from './drawing/scene.ts'
import type { PlanOptions } from './options.ts'
import { type Shown, shownOf } from './shown.ts'
import { type Canvas, emptyCanvas, type FrameSigns, frame, type Ink, inkAt, put, written } from './terminal-canvas.ts'
import { unseenGround } from './unseen-ground.ts'
import { tape } from './wording/figures.ts'
import type { Reader } from './wording/language.ts'
import { sideName } from './wording/places.ts'
import { asAscii, called, columns, wrapped } from './wording/plain.ts'
import { hatchWords } from './wording/sheet-words.ts'

const MOST_ROWS = 24
const STUB_MM = 300 // of wall and of ground around the opening
const LEAST_WIDTH = 30
const MOST_WIDTH = 100
const MOST_LETTERS = 26

interface Signs {
  readonly unseen: string
  readonly wall: string
  readonly thing: string
  readonly leaf: string
  readonly sensor: string
  readonly zone: FrameSigns
  readonly body: FrameSigns
  readonly tape: readonly [string, string, string]
}

const UNICODE: Signs = {
  unseen: '\u2571',
  wall: '\u2588',
  thing: '\u25a0',
  leaf: '\u2501',
  sensor: '\u25bc',
  tape: ['\u251c', '\u2500', '\u2524'],
  zone: { corners: ['\u250c', '\u2510', '\u2514', '\u2518'], level: '\u2504', upright: '\u2506', ends: ['\u251c', '\u2524'] },
  body: { corners: ['\u250f', '\u2513', '\u2517', '\u251b'], level: '\u2501', upright: '\u2503', ends: ['\u2523', '\u252b'] },
}
const ASCII: Signs = {
  unseen: '/',
  wall: '#',
  thing: '%',
  leaf: '=',
  sensor: 'V',
  tape: ['|', '-', '|'],
  zone: { corners: ['.', '.', '.', '.'], level: '.', upright: ':', ends: ['.', '.'] },
  body: { corners: ['+', '+', '+', '+'], level: '-', upright: '|', ends: ['[', ']'] },
}

/**
 * The rows and columns of a plan in characters. A character is twice as high as it is wide. The leaf has a row of its own, so that what lies
 * right at its face is seen beside it.
 */
interface Raster {
  readonly x0_mm: number
  readonly perColumn_mm: number
  readonly perRow_mm: number
  /** Rows on side A, above the leaf, and on side B, below. */
  readonly above: number
  readonly below: number
}

/** A small plan of the doorway in characters, side A at the top, with a legend. Ends in a line feed. */
export function terminalPlan(door: Door, judgement: Judgement, options: PlanOptions): string {
  const shown = shownOf(door, judgement, options)
  const bodies = shown.coverage ? bodiesToDraw(door, shown.coverage.pockets) : []
  const width = Math.min(MOST_WIDTH, Math.max(LEAST_WIDTH, Math.floor(options.width)))
  const raster = rasterOf(door, shown, bodies, width)
  const signs = options.ascii ? ASCII : UNICODE
  const canvas = emptyCanvas(width, raster.above + 1 + raster.below)
  drawZone(canvas, raster, shown, signs)
  drawUnseen(canvas, raster, shown, signs)
  const drawn = shown.state.obstacles.filter((obstacle) => drawObstacle(canvas, raster, obstacle, signs))
  drawLeaf(canvas, raster, door, signs)
  for (const body of bodies) drawBody(canvas, raster, body, signs)
  for (const { x_mm, y_mm } of sensorSpots(door)) {
    putClear(canvas, Math.min(width - 1, columnOf(raster, x_mm)), rowOf(raster, y_mm), signs.sensor, 'sensor')
  }
  drawLetters(canvas, raster, shown, bodies)
  const text = [
    heading(door, shown, options),
    ...withoutEmptyEnds(written(canvas, options.palette)),
    tapeLine(raster, door, width, options, signs),
    '',
    ...wrapped(legend(door, { ...shown, bodies, drawn }, options, signs), width),
  ].join('\n')
  return `${options.ascii ? asAscii(text) : text}\n`
}

function withoutEmptyEnds(lines: readonly string[]): readonly string[] {
  const first = lines.findIndex((line) => line !== '')
  const empty = [...lines].reverse().findIndex((line) => line !== '')
  return lines.slice(Math.max(0, first), lines.length - Math.max(0, empty))
}

function heading(door: Door, { zone, state }: Shown, reader: Reader): string {
  const { sheet, things } = reader.language
  const of = [zone && things.zone(called(zone.name, reader)), door.states.length > 1 && called(state.name, reader)]
    .filter(Boolean)
    .join(', ')
  return `${sheet.plan}, ${sheet.topAndBelow(sideName(door, 'a', reader), sideName(door, 'b', reader))}${of ? `: ${of}` : ''}`
}

function rasterOf(door: Door, { zone, coverage }: Shown, bodies: readonly ShownBody[], width: number): Raster {
  const xs = [-STUB_MM, door.opening.width_mm + STUB_MM]
  const ys = [-STUB_MM, STUB_MM]
  if (zone) xs.push(zone.xMin_mm, zone.xMax_mm)
  if (zone) ys.push(zone.yMin_mm, zone.yMax_mm)
  if (coverage) ys.push(coverage.grid.y0_mm + coverage.grid.rows * coverage.grid.pitch_mm)
  for (const body of bodies) {
    const half = halfExtents(body)
    xs.push(body.worstCase.x_mm - half.x_mm, body.worstCase.x_mm + half.x_mm)
    ys.push(body.worstCase.y_mm - half.y_mm, body.worstCase.y_mm + half.y_mm)
  }
  for (const { x_mm, y_mm } of sensorSpots(door)) {
    xs.push(x_mm)
    ys.push(y_mm)
  }
  const x0_mm = Math.min(...xs)
  const spanX_mm = Math.max(...xs) - x0_mm
  const reachA_mm = Math.max(0, ...ys)
  const reachB_mm = Math.max(0, ...ys.map((y_mm) => -y_mm))
  const perColumn_mm = Math.max(spanX_mm / width, (reachA_mm + reachB_mm) / (2 * MOST_ROWS), 1)
  const perRow_mm = 2 * perColumn_mm
  return { x0_mm, perColumn_mm, perRow_mm, above: Math.ceil(reachA_mm / perRow_mm) + 1, below: Math.ceil(reachB_mm / perRow_mm) + 1 }
}

function columnOf({ x0_mm, perColumn_mm }: Raster, x_mm: number): number {
  return Math.floor((x_mm - x0_mm) / perColumn_mm + 1e-9) // what division leaves behind must not shift a jamb by a column
}

/** The mid-plane of the leaf counts to side A, as everywhere. */
function rowOf({ above, perRow_mm }: Raster, y_mm: number): number {
  return y_mm >= 0 ? above - 1 - Math.floor(y_mm / perRow_mm) : above + Math.ceil(-y_mm / perRow_mm)
}

/** A place just short of `y`, seen from below: the upper edge of a thing belongs to the row under it. */
function rowBelow(raster: Raster, y_mm: number): number {
  return rowOf(raster, y_mm - 1e-6)
}

function drawZone(canvas: Canvas, raster: Raster, { zone }: Shown, signs: Signs): void {
  if (!zone) return
  const box = [
    columnOf(raster, zone.xMin_mm) - 1,
    rowBelow(raster, zone.yMax_mm) - 1,
    columnOf(raster, zone.xMax_mm - 1e-6) + 1,
    rowOf(raster, zone.yMin_mm) + 1,
  ] as const
  frame(canvas, box, signs.zone, 'zone')
}

/** A character that holds any unseen ground is hatched: a narrow strip looks wider than it is, and never vanishes. */
function drawUnseen(canvas: Canvas, raster: Raster, { coverage }: Shown, signs: Signs): void {
  if (!coverage) return
  for (const { xMin_mm, xMax_mm, yMin_mm, yMax_mm } of unseenGround(coverage)) {
    const from = columnOf(raster, xMin_mm)
    const to = columnOf(raster, xMax_mm - 1e-6)
    const lower = rowOf(raster, yMin_mm)
    const upper = rowBelow(raster, yMax_mm)
    for (let at = upper; at <= lower; at++) {
      if (at === raster.above) continue
      for (let column = from; column <= to; column++) put(canvas, column, at, signs.unseen, 'unseen')
    }
  }
}

/**
 * Characters whose middle lies in the obstacle, and the one that holds its middle. What hangs above the heads is left out.
 *
 * @returns whether any of it lies in the plan
 */
function drawObstacle(canvas: Canvas, raster: Raster, obstacle: Obstacle, signs: Signs): boolean {
  if (obstacle.from_mm > 1000 || obstacle.to_mm <= 0) return false
  const sign = obstacle.implied ? signs.wall : signs.thing
  const ink = obstacle.implied ? 'wall' : 'thing'
  let shown = false
  for (let row = 0; row < canvas.height; row++) {
    for (let column = 0; column < canvas.width; column++) {
      const x_mm = raster.x0_mm + (column + 0.5) * raster.perColumn_mm
      if (!contains(obstacle, x_mm, middleOfRow(raster, row))) continue
      put(canvas, column, row, sign, ink)
      shown = true
    }
  }
  const [column, row] = [columnOf(raster, obstacle.x_mm), rowOf(raster, obstacle.y_mm)]
  if (obstacle.implied || inkAt(canvas, column, row) === undefined) return shown
  put(canvas, column, row, sign, ink)
  return true
}

function middleOfRow({ above, perRow_mm }: Raster, row: number): number {
  if (row === above) return 0
  return row < above ? (above - row - 0.5) * perRow_mm : -(row - above - 0.5) * perRow_mm
}

function contains(obstacle: Obstacle, x_mm: number, y_mm: number): boolean {
  const along_mm = x_mm - obstacle.x_mm
  const across_mm = y_mm - obstacle.y_mm
  if (obstacle.shape === 'post') return along_mm * along_mm + across_mm * across_mm <= obstacle.radius_mm * obstacle.radius_mm
  const cos = Math.cos(obstacle.yaw_rad)
  const sin = Math.sin(obstacle.yaw_rad)
  const [length_mm, depth_mm] = obstacle.size_mm
  return Math.abs(along_mm * cos + across_mm * sin) <= length_mm / 2 && Math.abs(across_mm * cos - along_mm * sin) <= depth_mm / 2
}

function drawLeaf(canvas: Canvas, raster: Raster, door: Door, signs: Signs): void {
  const from = columnOf(raster, 0)
  const to = columnOf(raster, door.opening.width_mm - 1e-6)
  for (let column = from; column <= to; column++) put(canvas, column, raster.above, signs.leaf, 'leaf')
}

function drawBody(canvas: Canvas, raster: Raster, body: ShownBody, signs: Signs): void {
  const { x_mm, y_mm } = body.worstCase
  const half = halfExtents(body)
  const left = columnOf(raster, x_mm - half.x_mm)
  const right = Math.max(left + 2, columnOf(raster, x_mm + half.x_mm - 1e-6))
  frame(canvas, [left, rowBelow(raster, y_mm + half.y_mm), right, rowOf(raster, y_mm - half.y_mm)], signs.body, 'body')
  putClear(canvas, Math.round((left + right) / 2), rowOf(raster, y_mm), body.letter, 'letter')
}

/** A letter or a sensor never touches hatching. */
function putClear(canvas: Canvas, column: number, row: number, sign: string, ink: Ink): void {
  for (const beside of [column - 1, column + 1]) if (inkAt(canvas, beside, row) === 'unseen') put(canvas, beside, row, ' ', 'blank')
  put(canvas, column, row, sign, ink)
}

/** Letters of the pockets without a body, largest first, each with a free column on both sides; one that finds none is left out. */
function drawLetters(canvas: Canvas, raster: Raster, { coverage }: Shown, bodies: readonly ShownBody[]): void {
  const rest = (coverage?.pockets ?? [])
    .slice(0, MOST_LETTERS)
    .filter(({ letter }) => letter.length === 1 && !bodies.some((body) => body.letter === letter))
  for (const { letter, worstCase } of rest) {
    const column = columnOf(raster, worstCase.x_mm)
    const row = rowOf(raster, worstCase.y_mm)
    const around = [-1, 0, 1].map((step) => inkAt(canvas, column + step, row))
    if (around.some((ink) => ink === 'letter' || ink === 'body' || ink === 'wall' || ink === 'sensor')) continue
    putClear(canvas, column, row, letter, 'letter')
  }
}

/** The clear width under the plan: |---- 4.00 m ----|. */
function tapeLine(raster: Raster, door: Door, width: number, reader: Reader, { tape: [start, line, end] }: Signs): string {
  const from = columnOf(raster, 0)
  const to = Math.min(width - 1, columnOf(raster, door.opening.width_mm - 1e-6))
  const text = ` ${tape(door.opening.width_mm, reader)} `
  const room = to - from - 1 - columns(text)
  if (room < 2) return `${' '.repeat(Math.max(0, from))}${text.trim()} ${reader.language.plan.clearWidth}`
  const before = Math.floor(room / 2)
  return `${' '.repeat(Math.max(0, from))}${start}${line.repeat(before)}${text}${line.repeat(room - before)}${end}`
}

interface Explained extends Shown {
  readonly bodies: readonly ShownBody[]
  /** Obstacles that the plan shows. */
  readonly drawn: readonly Obstacle[]
}

function legend(door: Door, { drawn, coverage, zone, bodies }: Explained, reader: Reader, signs: Signs): string {
  const { plan, sheet, listed } = reader.language
  const things = [...new Set(drawn.filter(({ implied }) => !implied).map(({ name }) => called(name, reader)))]
  const frameOf = ({ corners: [left, right] }: FrameSigns): string => `${left}${right}`
  const hatched = coverage && hatchWords(coverage, reader)
  const parts = [
    hatched && `${signs.unseen} ${hatched}`,
    bodies.length > 0 && `${frameOf(signs.body)} ${plan.body}`,
    ...sensorSpots(door).map(({ name, z_mm }) => `${signs.sensor} ${sheet.up(called(name, reader), tape(z_mm, reader))}`),
    things.length > 0 && `${signs.thing} ${listed(things)}`,
    zone && `${signs.zone.level}${signs.zone.level} ${plan.edge}`,
  ]
  return parts.filter((part): part is string => Boolean(part)).join(' \u00b7 ')
}
