import type { Wiring } from '@sillsight/engine'
import type { Reader } from '../wording/language.ts'
import { lettering, paragraph, shortened, textWidth_mm } from './lettering.ts'
import { corners, type Mark } from './model.ts'
import { type Link, type PlacedCore, type Side, type WiringLayout, wiringLayout } from './wiring-layout.ts'
import {
  cableWords,
  coreMarks,
  coreWords,
  type DrawnWiring,
  deviceWords,
  drawnOn,
  edgeOf,
  type Frame,
  faultMarks,
  jointMarks,
  linkMarks,
  outward,
  type PlayedFault,
  spot,
  volts,
} from './wiring-marks.ts'
import { believable, shortName, wordsOf } from './wiring-sides.ts'

/** Legible at arm's length: 14 px on a screen. */
const SIZE_MM = 3.75
const LINE_MM = 4.4
const LANE_MM = 3.6
const EDGE_MM = 0.3
/** From a device to what is lettered beside it. */
const AIR_MM = 1.6
/** From a core up to the names of its terminals, and down to what a meter reads there: the sign of a lead has room between them. */
const CLEAR_MM = 2.3
const TITLE_MM = 6
const GAP_MM = 1.6
const VOLTS_MM = 13.2
/** Beside the words at a core that turns back, for its name. */
const TURN_MM = 14
const SIDES = ['left', 'right'] as const

interface Row {
  readonly y_mm: number
  readonly bottom_mm: number
  readonly lines: Readonly<Record<Side, readonly string[]>>
}

/**
 * The wiring for a narrow screen, so that it is read without pushing it sideways: devices are strips at both edges that hold ties and switches
 * alone, names of terminals stand above the ends of their cores, and below them what a meter reads and what they are for.
 *
 * @param width_mm at least `leastNarrowWidth_mm`
 */
export function drawNarrow(
  layout: WiringLayout,
  wiring: Wiring,
  width_mm: number,
  reader: Reader,
  playing: PlayedFault | undefined,
): DrawnWiring {
  const [left_mm, right_mm] = [strip_mm(layout, 'left'), width_mm - strip_mm(layout, 'right')]
  const rows = rowsOf(layout, wiring, right_mm - left_mm, reader, playing)
  const at = (row: number) => rows[row]?.y_mm ?? 0
  const yOf = (row: number) => at(Math.floor(row)) + (at(Math.ceil(row)) - at(Math.floor(row))) * (row - Math.floor(row))
  // clear of all that stands between both ends of a core that turns back
  const turnOf_mm = ({ core, row, uTurn }: PlacedCore) => {
    if (!uTurn) return 0
    const names = layout[uTurn.side].filter((each) => each.row === uTurn.row).map(({ terminal }) => shortName(terminal))
    const lines = rows[row]?.lines[uTurn.side] ?? []
    const half_mm = textWidth_mm(coreWords(core), SIZE_MM) / 2
    return AIR_MM + 1 + half_mm + Math.max(VOLTS_MM, ...lines.map((text) => textWidth_mm(text, SIZE_MM)), ...names.map(nameWidth_mm))
  }
  const frame: Frame = {
    layout,
    reader,
    playing,
    left_mm,
    right_mm,
    width_mm,
    yOf,
    lanesAt_mm: { left: left_mm, right: right_mm },
    lane_mm: LANE_MM,
    middleOf_mm: ({ rows }) => yOf(Math.max(...rows) - 0.5), // clear of the terminals that lie between
    core_mm: SIZE_MM,
    turnOf_mm,
    faultAt: 0.33,
  }
  const marks = [
    ...deviceMarks(frame, wiring, rows),
    ...layout.cores.flatMap((core) => coreMarks(frame, core)),
    ...jointMarks(frame),
    ...layout.cables.flatMap(({ cable, row }) =>
      cableLines(cableWords(cable, reader), right_mm - left_mm).map((text, i) =>
        lettering(text, spot((left_mm + right_mm) / 2, yOf(row) + i * LINE_MM), SIZE_MM, { anchor: 'middle' }),
      ),
    ),
    ...SIDES.flatMap((side) => [
      ...layout.links.filter((link) => link.side === side).flatMap((link) => linkMarks(frame, link)),
      ...terminalMarks(frame, side),
      ...rows.flatMap(({ y_mm, lines }) =>
        lines[side].map((text, i) => beside(frame, side, text, y_mm + baseline_mm((playing ? 1 : 0) + i))),
      ),
    ]),
    ...faultMarks(frame),
  ]
  return drawnOn(frame, marks, (rows[rows.length - 1]?.bottom_mm ?? 0) + EDGE_MM, { x_mm: AIR_MM + VOLTS_MM + 2.2, y_mm: 0 })
}

/** The least width at which no name and no reading lies on another. */
export function leastNarrowWidth_mm(wiring: Wiring, reader: Reader): number {
  const layout = wiringLayout(wiring)
  const widest_mm = (texts: readonly string[]) => Math.max(0, ...texts.map((text) => textWidth_mm(text, SIZE_MM)))
  const [left_mm = 0, right_mm = 0] = SIDES.map((side) =>
    Math.max(0, ...layout[side].map(({ terminal }) => nameWidth_mm(shortName(terminal)))),
  )
  const cores_mm = widest_mm(layout.cores.map(({ core }) => coreWords(core)))
  const words_mm = SIDES.map((side) => widest_mm(wordsOf(layout, side, wiring, reader, undefined).flatMap(({ text }) => text.split(' '))))
  const joints = layout.joints.length
  const middle_mm =
    joints === 0
      ? Math.max(left_mm + right_mm + 3 * AIR_MM, 2 * (VOLTS_MM + AIR_MM) + cores_mm)
      : (joints + 1) * (Math.max(left_mm, right_mm, ...words_mm, VOLTS_MM, cores_mm) + 2 * AIR_MM)
  return strip_mm(layout, 'left') + middle_mm + strip_mm(layout, 'right')
}

function nameWidth_mm(name: string): number {
  return textWidth_mm(name, SIZE_MM, true)
}

function strip_mm({ lanes }: WiringLayout, side: Side): number {
  return EDGE_MM + AIR_MM + lanes[side] * LANE_MM
}

/** Below a core: the line on which something is lettered, counted from its readings. */
function baseline_mm(line: number): number {
  return CLEAR_MM + 0.8 * SIZE_MM + line * LINE_MM
}

function cableLines(text: string, width_mm: number): readonly string[] {
  return paragraph(text, SIZE_MM, width_mm - 2)
}

/** As high as what stands in each: words take as many lines as they need, in half of the width where both sides have some. */
function rowsOf(layout: WiringLayout, wiring: Wiring, middle_mm: number, reader: Reader, playing: PlayedFault | undefined): readonly Row[] {
  const words = { left: wordsOf(layout, 'left', wiring, reader, playing), right: wordsOf(layout, 'right', wiring, reader, playing) }
  // a switch is named where the lower of its terminals is, the control's own at the terminal that it feeds
  const named = ({ rows, what }: Link) =>
    (what.kind === 'test' && layout.left.find(({ terminal, row }) => terminal === wiring.control.test?.to && rows.includes(row))?.row) ||
    Math.max(...rows)
  const textsAt = (side: Side, row: number) =>
    words[side].filter((each) => (each.link ? named(each.link) : each.row) === row).map(({ text }) => text)
  const first = Math.min(...layout.left.map(({ row }) => row))
  const begins = new Set([first, ...layout.devices.filter(({ side }) => side === 'right').map(({ from }) => from)])
  const cables = new Map(layout.cables.map(({ cable, row }) => [row, cable]))
  const turns = new Set(layout.cores.flatMap(({ row, uTurn }) => (uTurn ? [row, uTurn.row] : [])))
  const terminals = new Set([...layout.left, ...layout.right].map(({ row }) => row))
  const all: Row[] = []
  let y_mm = EDGE_MM
  for (let row = 0; row < layout.rows; row++) {
    const cable = cables.get(row)
    if (cable) {
      const lines = cableLines(cableWords(cable, reader), middle_mm).length
      const bottom_mm = y_mm + GAP_MM + lines * LINE_MM
      all.push({ y_mm: y_mm + GAP_MM + 0.8 * SIZE_MM, bottom_mm, lines: { left: [], right: [] } })
      y_mm = bottom_mm
      continue
    }
    if (begins.has(row)) y_mm += TITLE_MM
    const joints = layout.joints.length
    const isShared = SIDES.every((side) => textsAt(side, row).length > 0)
    const share_mm = joints > 0 ? middle_mm / (joints + 1) - 1 : turns.has(row) ? middle_mm - TURN_MM : isShared ? middle_mm / 2 : middle_mm
    const set = (texts: readonly string[]) => texts.flatMap((text) => paragraph(text, SIZE_MM, share_mm - AIR_MM - 1))
    const lines = { left: set(textsAt('left', row)), right: set(textsAt('right', row)) }
    // room for whatever may be believed, so that nothing moves while faults are played
    const input = wiring.control.inputs.find(({ plus }) => layout.left.some((each) => each.row === row && each.terminal === plus))
    const believed = input && playing ? believable(input, reader).map((text) => set([text]).length) : []
    const isTerminal = terminals.has(row)
    const core_mm = y_mm + (isTerminal ? 1 + SIZE_MM + CLEAR_MM : 1)
    const deep = (playing ? 1 : 0) + Math.max(lines.left.length, lines.right.length, ...(lines.left.length > 0 ? believed : []))
    const bottom_mm = core_mm + (isTerminal ? CLEAR_MM + deep * LINE_MM + GAP_MM : GAP_MM)
    all.push({ y_mm: core_mm, bottom_mm, lines })
    y_mm = bottom_mm
  }
  return all
}

function deviceMarks(frame: Frame, wiring: Wiring, rows: readonly Row[]): readonly Mark[] {
  const { layout, width_mm, left_mm, right_mm } = frame
  const first = Math.min(...layout.left.map(({ row }) => row))
  return layout.devices.flatMap(({ name, side, from, to }): Mark[] => {
    const [near, far] = side === 'left' ? [EDGE_MM, left_mm] : [right_mm, width_mm - EDGE_MM]
    const top_mm = (rows[side === 'left' ? first : from]?.y_mm ?? 0) - CLEAR_MM - SIZE_MM - 0.6
    const box = { left_mm: near, right_mm: far, top_mm, bottom_mm: (rows[to]?.bottom_mm ?? 0) - 0.8 }
    const words = deviceWords(frame, wiring, name, side)
    const at = { x_mm: side === 'left' ? near : far, y_mm: box.top_mm - 1.6 }
    return [
      { kind: 'area', layer: 'structure', fill: 'wall', rings: [corners(box)] },
      lettering(shortened(words, SIZE_MM, width_mm / 2 - 1, true), at, SIZE_MM, { bold: true, anchor: side === 'left' ? 'start' : 'end' }),
    ]
  })
}

function terminalMarks(frame: Frame, side: Side): readonly Mark[] {
  const x_mm = edgeOf(frame, side)
  return frame.layout[side].flatMap(({ terminal, row }): Mark[] => {
    const y_mm = frame.yOf(row)
    const volt = frame.playing?.played.volts.get(terminal)
    const reading = volt === undefined ? '\u2013' : `${volts(volt, frame.reader)} V`
    return [
      { kind: 'circle', layer: 'thing', centre: { x_mm, y_mm }, radius_mm: 0.8, fill: 'paper' },
      { ...beside(frame, side, shortName(terminal), y_mm - CLEAR_MM - 0.24 * SIZE_MM), bold: true },
      ...(frame.playing ? [beside(frame, side, reading, y_mm + baseline_mm(0))] : []),
    ]
  })
}

function beside(frame: Frame, side: Side, text: string, y_mm: number) {
  const at = spot(edgeOf(frame, side) - outward(side) * AIR_MM, y_mm)
  return lettering(text, at, SIZE_MM, { anchor: side === 'left' ? 'start' : 'end' })
}
