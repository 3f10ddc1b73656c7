import type { Cable, Wiring } from '@sillsight/engine'
import type { Reader } from '../wording/language.ts'
import { baselineAround, lettering, shortened, textWidth_mm } from './lettering.ts'
import { corners, type Mark } from './model.ts'
import { spread } from './spread.ts'
import { type PlacedTerminal, type Side, type WiringLayout, wiringLayout } from './wiring-layout.ts'
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
  laneX_mm,
  line,
  linkMarks,
  outward,
  type PlayedFault,
  spot,
  volts,
} from './wiring-marks.ts'
import { drawNarrow } from './wiring-narrow.ts'
import { SIZE_MM, type SideWords, SMALL_MM, shortName, sidesOf } from './wiring-sides.ts'

const ROW_MM = 8.4
/** From line to line of small words. */
const LINE_MM = 3.1
const LANE_MM = 4.2
const PAD_MM = 2
/** What a meter reads, with its air. */
const VOLTS_MM = 13.5
/** How far a core reaches that turns back to its own side. */
const TURN_MM = 22
const TOP_MM = 7 // the names of the devices
/** Below the core, clear of what is lettered above it. */
const LEAD_ASIDE = { x_mm: 4.6, y_mm: 2.5 }

/** Names and words inside of the devices where there is room for that, else above and below the cores. @param width_mm at least `leastNarrowWidth_mm` */
export function drawWiring(wiring: Wiring, width_mm: number, reader: Reader, playing?: PlayedFault): DrawnWiring {
  const layout = wiringLayout(wiring)
  if (width_mm < leastWiringWidth_mm(wiring, reader, playing)) return drawNarrow(layout, wiring, width_mm, reader, playing)
  const wide = sidesOf(layout, wiring, reader, playing, false)
  const sides = leastWidth_mm(layout, wide, reader) <= width_mm ? wide : sidesOf(layout, wiring, reader, playing, true)
  const spare_mm = Math.max(0, width_mm - leastWidth_mm(layout, sides, reader))
  const give = (side: Side) => widthOf_mm(layout, sides[side], side) + Math.min(14, spare_mm / 4)
  const [left_mm, right_mm] = [give('left'), width_mm - give('right')]
  const yOf = (row: number) => TOP_MM + (row + 0.5) * ROW_MM
  const frame: Frame = {
    layout,
    reader,
    playing,
    left_mm,
    right_mm,
    width_mm,
    yOf,
    lanesAt_mm: { left: left_mm - sides.left.names_mm - 2 * PAD_MM, right: right_mm + sides.right.names_mm + 2 * PAD_MM },
    lane_mm: LANE_MM,
    middleOf_mm: ({ rows }) => (yOf(Math.min(...rows)) + yOf(Math.max(...rows))) / 2,
    core_mm: SMALL_MM,
    turnOf_mm: () => TURN_MM,
    faultAt: 0.72,
  }
  const marks = [
    ...deviceMarks(frame, wiring),
    ...layout.cores.flatMap((core) => coreMarks(frame, core)),
    ...jointMarks(frame),
    ...layout.cables.flatMap(({ cable, row }) => cableMarks(frame, cable, row)),
    ...(['left', 'right'] as const).flatMap((side) => [
      ...terminalMarks(frame, layout[side], side),
      ...insideMarks(frame, sides[side], side),
    ]),
    ...faultMarks(frame),
  ]
  return drawnOn(frame, marks, TOP_MM + layout.rows * ROW_MM + PAD_MM, LEAD_ASIDE)
}

/** The least width that shows all names whole, long words at the rows in two lines. */
export function leastWiringWidth_mm(wiring: Wiring, reader: Reader, playing?: PlayedFault): number {
  const layout = wiringLayout(wiring)
  return leastWidth_mm(layout, sidesOf(layout, wiring, reader, playing, true), reader)
}

function widthOf_mm({ lanes }: WiringLayout, { names_mm, words_mm }: SideWords, side: Side): number {
  return PAD_MM + names_mm + PAD_MM + lanes[side] * LANE_MM + PAD_MM + words_mm + PAD_MM
}

function leastWidth_mm(layout: WiringLayout, sides: Readonly<Record<Side, SideWords>>, reader: Reader): number {
  const cables_mm = layout.cables.map(({ cable }) => textWidth_mm(cableWords(cable, reader), SIZE_MM) + 4)
  const names_mm = layout.cores.map(({ core }) => textWidth_mm(coreWords(core), SMALL_MM))
  // a name in the middle, and on either side of it what a meter reads
  const piece_mm = Math.max(0, ...names_mm) + 2 * VOLTS_MM
  const middle_mm = Math.max(piece_mm * (layout.joints.length + 1), ...cables_mm)
  return widthOf_mm(layout, sides.left, 'left') + middle_mm + widthOf_mm(layout, sides.right, 'right')
}

function deviceMarks(frame: Frame, wiring: Wiring): readonly Mark[] {
  const { layout, yOf, width_mm, left_mm, right_mm } = frame
  return layout.devices.flatMap(({ name, side, from, to }): Mark[] => {
    const [near, far] = side === 'left' ? [0.3, left_mm] : [right_mm, width_mm - 0.3]
    const box = { left_mm: near, right_mm: far, top_mm: yOf(from) - ROW_MM / 2 + 0.6, bottom_mm: yOf(to) + ROW_MM / 2 - 0.6 }
    const words = deviceWords(frame, wiring, name, side)
    const at = { x_mm: side === 'left' ? near : far, y_mm: box.top_mm - 1.6 }
    return [
      { kind: 'area', layer: 'structure', fill: 'wall', rings: [corners(box)] },
      lettering(shortened(words, SIZE_MM, far - near, true), at, SIZE_MM, { bold: true, anchor: side === 'left' ? 'start' : 'end' }),
    ]
  })
}

function terminalMarks(frame: Frame, placed: readonly PlacedTerminal[], side: Side): readonly Mark[] {
  const x_mm = edgeOf(frame, side)
  return placed.flatMap(({ terminal, row }): Mark[] => {
    const y_mm = frame.yOf(row)
    const volt = frame.playing?.played.volts.get(terminal)
    const at = { x_mm: x_mm + outward(side) * PAD_MM, y_mm: baselineAround(y_mm, SIZE_MM) }
    return [
      { kind: 'circle', layer: 'thing', centre: { x_mm, y_mm }, radius_mm: 0.8, fill: 'paper' },
      lettering(shortName(terminal), at, SIZE_MM, { anchor: side === 'left' ? 'end' : 'start' }),
      ...(frame.playing
        ? [
            lettering(
              volt === undefined ? '\u2013' : `${volts(volt, frame.reader)} V`,
              { x_mm: x_mm - outward(side) * 1.6, y_mm: y_mm - 1 },
              SMALL_MM,
              { anchor: side === 'left' ? 'start' : 'end' },
            ),
          ]
        : []),
    ]
  })
}

/** Ties and switches in their lanes, and words at the outer edge. */
function insideMarks(frame: Frame, { words, words_mm }: SideWords, side: Side): readonly Mark[] {
  const sign = outward(side)
  const links = frame.layout.links.filter((link) => link.side === side)
  const textAt_mm = frame.lanesAt_mm[side] + sign * (frame.layout.lanes[side] * LANE_MM + PAD_MM)
  const most = Math.max(1, ...words.map(({ lines }) => lines.length))
  const places = spread(
    words.map(({ row }) => frame.yOf(row)),
    0.9 + LINE_MM * most,
    TOP_MM,
    TOP_MM + frame.layout.rows * ROW_MM,
  )
  return [
    ...links.flatMap((link) => linkMarks(frame, link)),
    ...words.flatMap(({ lines, link, row }, i): Mark[] => {
      const y_mm = places[i] ?? frame.yOf(row)
      const set = lines.map((text, at) => {
        const base_mm = baselineAround(y_mm + LINE_MM * (at - (lines.length - 1) / 2), SMALL_MM)
        return lettering(shortened(text, SMALL_MM, words_mm + 20), spot(textAt_mm, base_mm), SMALL_MM, {
          anchor: side === 'left' ? 'end' : 'start',
        })
      })
      if (!link) return set
      const from = { x_mm: laneX_mm(frame, link) + sign * 1.4, y_mm: frame.yOf(row) }
      return [line('help', [from, { x_mm: textAt_mm - sign * 0.6, y_mm }]), ...set]
    }),
  ]
}

function cableMarks({ left_mm, right_mm, reader, yOf }: Frame, cable: Cable, row: number): readonly Mark[] {
  const text = shortened(cableWords(cable, reader), SIZE_MM, right_mm - left_mm - 2)
  return [lettering(text, spot((left_mm + right_mm) / 2, yOf(row) + ROW_MM / 2 - 2), SIZE_MM, { anchor: 'middle' })]
}
