import type { Cable, Core, Fault, Played, Wiring } from '@sillsight/engine'
import { tape } from '../wording/figures.ts'
import type { Reader } from '../wording/language.ts'
import { blank } from './labels.ts'
import { baselineAround, lettering, letteringBox, shortened, textWidth_mm } from './lettering.ts'
import { type Box, corners, grown, type Mark, type Spot } from './model.ts'
import { spread } from './spread.ts'
import { type Link, type PlacedCore, type PlacedTerminal, type Side, type WiringLayout, wiringLayout } from './wiring-layout.ts'
import { SIZE_MM, type SideWords, SMALL_MM, shortName, sidesOf } from './wiring-sides.ts'

/** A wiring drawn with contacts as they are with nobody there, and where a fault is played what it does and what a meter would read. */
export interface DrawnWiring {
  readonly marks: readonly Mark[]
  readonly height_mm: number
  /** Where each core lies and ends, to be touched and dragged. */
  readonly cores: readonly { readonly core: string; readonly box: Box; readonly from: Spot; readonly to: Spot }[]
  /** Where a core may end; a terminal that several cores share is there several times. */
  readonly terminals: readonly { readonly terminal: string; readonly at: Spot }[]
  readonly texts: readonly Box[]
}

export interface PlayedFault {
  readonly fault: Fault | undefined
  readonly played: Played
}

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

/** @param width_mm at least `leastWiringWidth_mm` */
export function drawWiring(wiring: Wiring, width_mm: number, reader: Reader, playing?: PlayedFault): DrawnWiring {
  const layout = wiringLayout(wiring)
  const wide = sidesOf(layout, wiring, reader, playing, false)
  const sides = leastWidth_mm(layout, wide, reader) <= width_mm ? wide : sidesOf(layout, wiring, reader, playing, true)
  const spare_mm = Math.max(0, width_mm - leastWidth_mm(layout, sides, reader))
  const give = (side: Side) => widthOf_mm(layout, sides[side], side) + Math.min(14, spare_mm / 4)
  const frame: Frame = {
    layout,
    reader,
    playing,
    left_mm: give('left'),
    right_mm: width_mm - give('right'),
    width_mm,
    yOf: (row) => TOP_MM + (row + 0.5) * ROW_MM,
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
  return {
    marks,
    height_mm: TOP_MM + layout.rows * ROW_MM + PAD_MM,
    cores: layout.cores.map((placed) => ({
      core: placed.core.id,
      box: coreBox(frame, placed),
      from: spot(endOf(frame, placed.from), frame.yOf(placed.row)),
      to: spot(endOf(frame, placed.to), frame.yOf(placed.uTurn?.row ?? placed.row)),
    })),
    terminals: (['left', 'right'] as const).flatMap((side) =>
      layout[side].map(({ terminal, row }) => ({ terminal, at: spot(edgeOf(frame, side), frame.yOf(row)) })),
    ),
    texts: marks.flatMap((mark) => (mark.kind === 'text' ? [letteringBox(mark)] : [])),
  }
}

/** The least width that shows all names whole, long words at the rows in two lines. */
export function leastWiringWidth_mm(wiring: Wiring, reader: Reader, playing?: PlayedFault): number {
  const layout = wiringLayout(wiring)
  return leastWidth_mm(layout, sidesOf(layout, wiring, reader, playing, true), reader)
}

interface Frame {
  readonly layout: WiringLayout
  readonly reader: Reader
  readonly playing: PlayedFault | undefined
  /** Inner edges of both sides. */
  readonly left_mm: number
  readonly right_mm: number
  readonly width_mm: number
  readonly yOf: (row: number) => number
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

function coreWords({ id, colour }: Core): string {
  return colour ? `${shortName(id)} ${colour}` : shortName(id)
}

const edgeOf = ({ left_mm, right_mm }: Frame, side: Side) => (side === 'left' ? left_mm : right_mm)
/** Away from the cores. */
const outward = (side: Side) => (side === 'left' ? -1 : 1)

function deviceMarks(frame: Frame, wiring: Wiring): readonly Mark[] {
  const { layout, yOf, width_mm, left_mm, right_mm, reader } = frame
  const many = [...new Set(layout.left.map(({ device }) => device))]
  return layout.devices.flatMap(({ name, side, from, to }): Mark[] => {
    const [near, far] = side === 'left' ? [0.3, left_mm] : [right_mm, width_mm - 0.3]
    const box = { left_mm: near, right_mm: far, top_mm: yOf(from) - ROW_MM / 2 + 0.6, bottom_mm: yOf(to) + ROW_MM / 2 - 0.6 }
    const sensor = wiring.sensors.find(({ id }) => id === name)
    const title = side === 'left' ? many.join(', ') || reader.language.wiring.control : (sensor?.id ?? name)
    const state = sensor && frame.playing?.played.states.get(sensor.id)
    const words = state ? `${title}: ${reader.language.wiring.states[state]}` : title
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

function volts(volt: number, { language }: Reader): string {
  const text = (Math.abs(volt) < 0.05 ? 0 : volt).toFixed(1)
  return text.replace('.', language.decimal).replace('-', '\u2212')
}

/** Ties and switches in their lanes, and words at the outer edge. */
function insideMarks(frame: Frame, { names_mm, words, words_mm }: SideWords, side: Side): readonly Mark[] {
  const sign = outward(side)
  const lanes_mm = edgeOf(frame, side) + sign * (PAD_MM + names_mm + PAD_MM)
  const xOf = (link: Link) => lanes_mm + sign * (link.lane + 0.5) * LANE_MM
  const links = frame.layout.links.filter((link) => link.side === side)
  const textAt_mm = lanes_mm + sign * (frame.layout.lanes[side] * LANE_MM + PAD_MM)
  const most = Math.max(1, ...words.map(({ lines }) => lines.length))
  const places = spread(
    words.map(({ row }) => frame.yOf(row)),
    0.9 + LINE_MM * most,
    TOP_MM,
    TOP_MM + frame.layout.rows * ROW_MM,
  )
  return [
    ...links.flatMap((link) => linkMarks(frame, link, xOf(link), lanes_mm)),
    ...words.flatMap(({ lines, link, row }, i): Mark[] => {
      const y_mm = places[i] ?? frame.yOf(row)
      const set = lines.map((text, at) => {
        const base_mm = baselineAround(y_mm + LINE_MM * (at - (lines.length - 1) / 2), SMALL_MM)
        return lettering(shortened(text, SMALL_MM, words_mm + 20), spot(textAt_mm, base_mm), SMALL_MM, {
          anchor: side === 'left' ? 'end' : 'start',
        })
      })
      if (!link) return set
      const from = { x_mm: xOf(link) + sign * 1.4, y_mm: frame.yOf(row) }
      return [line('help', [from, { x_mm: textAt_mm - sign * 0.6, y_mm }]), ...set]
    }),
  ]
}

function linkMarks(frame: Frame, { rows, what }: Link, x_mm: number, lanes_mm: number): readonly Mark[] {
  const [top_mm, bottom_mm] = [frame.yOf(Math.min(...rows)), frame.yOf(Math.max(...rows))]
  const stubs = rows.map((row) => line('thing', [spot(lanes_mm, frame.yOf(row)), spot(x_mm, frame.yOf(row))]))
  if (what.kind === 'tie')
    return [
      ...stubs,
      line('thing', [spot(x_mm, top_mm), spot(x_mm, bottom_mm)]),
      ...rows.slice(1, -1).map((row) => dot(spot(x_mm, frame.yOf(row)))),
    ]
  const middle_mm = (top_mm + bottom_mm) / 2
  const isClosed = what.kind === 'switch' && what.each.closedIn.includes('clear')
  const [upper, lower] = [spot(x_mm, middle_mm - 1.7), spot(x_mm, middle_mm + 1.7)]
  return [
    ...stubs,
    line('thing', [spot(x_mm, top_mm), upper]),
    line('thing', [lower, spot(x_mm, bottom_mm)]),
    // a contact: its arm touches the other side where it is closed
    line('structure', [lower, spot(x_mm + (isClosed ? 0.35 : -1.6), upper.y_mm)]),
    ...(isClosed ? [line('structure', [spot(x_mm - 0.2, upper.y_mm), spot(x_mm + 1, upper.y_mm)])] : []),
  ]
}

function endOf(frame: Frame, end: PlacedCore['from']): number {
  return 'side' in end ? edgeOf(frame, end.side) : jointX_mm(frame, end.joint)
}

function jointX_mm({ left_mm, right_mm, layout }: Frame, lane: number): number {
  return left_mm + ((right_mm - left_mm) * (lane + 1)) / (layout.joints.length + 1)
}

function coreMarks(frame: Frame, placed: PlacedCore): readonly Mark[] {
  const { core, row, uTurn } = placed
  const y_mm = frame.yOf(row)
  const words = coreWords(core)
  if (uTurn) {
    const x_mm = edgeOf(frame, uTurn.side)
    const turn_mm = x_mm - outward(uTurn.side) * TURN_MM
    const low_mm = frame.yOf(uTurn.row)
    return [
      line('structure', [spot(x_mm, y_mm), spot(turn_mm, y_mm), spot(turn_mm, low_mm), spot(x_mm, low_mm)]),
      ...blanked(lettering(words, spot(turn_mm, baselineAround((y_mm + low_mm) / 2, SMALL_MM)), SMALL_MM, { anchor: 'middle' })),
    ]
  }
  const [a_mm, b_mm] = [endOf(frame, placed.from), endOf(frame, placed.to)]
  const label = lettering(words, spot((a_mm + b_mm) / 2, baselineAround(y_mm, SMALL_MM)), SMALL_MM, { anchor: 'middle' })
  return [line('structure', [spot(a_mm, y_mm), spot(b_mm, y_mm)]), ...blanked(label)]
}

function coreBox(frame: Frame, { row, from, to, uTurn }: PlacedCore): Box {
  const ends = [endOf(frame, from), uTurn ? endOf(frame, from) - outward(uTurn.side) * TURN_MM : endOf(frame, to)]
  return {
    left_mm: Math.min(...ends),
    right_mm: Math.max(...ends),
    top_mm: frame.yOf(row) - ROW_MM / 2,
    bottom_mm: frame.yOf(uTurn?.row ?? row) + ROW_MM / 2,
  }
}

function jointMarks(frame: Frame): readonly Mark[] {
  return frame.layout.joints.flatMap(({ lane, rows }): Mark[] => {
    const x_mm = jointX_mm(frame, lane)
    const ys = rows.map(frame.yOf)
    return [line('structure', [spot(x_mm, Math.min(...ys)), spot(x_mm, Math.max(...ys))]), ...ys.map((y_mm) => dot(spot(x_mm, y_mm)))]
  })
}

function cableMarks({ left_mm, right_mm, reader, yOf }: Frame, cable: Cable, row: number): readonly Mark[] {
  const text = shortened(cableWords(cable, reader), SIZE_MM, right_mm - left_mm - 2)
  return [lettering(text, spot((left_mm + right_mm) / 2, yOf(row) + ROW_MM / 2 - 2), SIZE_MM, { anchor: 'middle' })]
}

function cableWords({ id, length_mm, conductor }: Cable, reader: Reader): string {
  const { decimal, wiring } = reader.language
  const size = 'area_mm2' in conductor ? `${`${conductor.area_mm2}`.replace('.', decimal)} mm\u00b2` : `AWG ${conductor.awg}`
  return wiring.cable(id, tape(length_mm, reader), size)
}

/** What is wrong, where it is: a gap, a bridge, or a word. */
function faultMarks(frame: Frame): readonly Mark[] {
  const fault = frame.playing?.fault
  if (!fault) return []
  const { layout, yOf, left_mm, right_mm } = frame
  const at_mm = left_mm + (right_mm - left_mm) * 0.72
  const rowOf = (id: string) => layout.cores.find(({ core }) => core.id === id)?.row
  const gap = (row: number) => {
    const y_mm = yOf(row)
    return [
      blank({ left_mm: at_mm - 2.4, right_mm: at_mm + 2.4, top_mm: y_mm - 1.4, bottom_mm: y_mm + 1.4 }),
      ...[-1.7, 1.7].map((off) => line('body', [spot(at_mm + off - 0.8, y_mm + 1.6), spot(at_mm + off + 0.8, y_mm - 1.6)])),
    ]
  }
  switch (fault.kind) {
    case 'core-open': {
      const row = rowOf(fault.core)
      return row === undefined ? [] : gap(row)
    }
    case 'cable-off':
      return layout.cores.filter(({ cable }) => cable.id === fault.cable).flatMap(({ row }) => gap(row))
    case 'cores-shorted': {
      const rows = fault.cores.flatMap((core) => rowOf(core) ?? [])
      const points = rows.map((row) => spot(at_mm, yOf(row)))
      return [line('halo', points), line('body', points), ...points.map(dot)]
    }
    case 'core-to-rail': {
      const row = rowOf(fault.core)
      if (row === undefined) return []
      const y_mm = yOf(row)
      const rail = frame.reader.language.wiring.rails[fault.rail]
      const text = lettering(rail, spot(at_mm + 1.6, y_mm - 1.4), SMALL_MM, { bold: true })
      return [...blanked(text), line('body', [spot(at_mm, y_mm), spot(at_mm, y_mm - 3.2)]), dot(spot(at_mm, y_mm))]
    }
    default: {
      // what is wrong inside of a device is told above the drawing, and shown by what the terminals read
      const link = layout.links.find(
        ({ what }) =>
          (fault.kind === 'switch-stuck' && what.kind === 'switch' && what.sensor === fault.sensor && what.each.name === fault.switch) ||
          (fault.kind === 'output-stuck' && what.kind === 'switch' && what.sensor === fault.sensor && what.each.output === fault.output) ||
          (fault.kind === 'test-stuck' && what.kind === 'test'),
      )
      if (!link) return []
      const side = edgeOf(frame, link.side) + outward(link.side) * (2 * PAD_MM + namesWidth_mm(layout, link.side))
      const x_mm = side + outward(link.side) * (link.lane + 0.5) * LANE_MM
      const centre = spot(x_mm, (yOf(Math.min(...link.rows)) + yOf(Math.max(...link.rows))) / 2)
      return [{ kind: 'circle', layer: 'body', centre, radius_mm: 2.9, fill: 'none' }]
    }
  }
}

function namesWidth_mm(layout: WiringLayout, side: Side): number {
  return Math.max(0, ...layout[side].map(({ terminal }) => textWidth_mm(shortName(terminal), SIZE_MM)))
}

const spot = (x_mm: number, y_mm: number): Spot => ({ x_mm, y_mm })
const dot = (centre: Spot): Mark => ({ kind: 'circle', layer: 'thing', centre, radius_mm: 0.7, fill: 'ink' })
const line = (layer: 'structure' | 'thing' | 'help' | 'body' | 'halo', points: readonly Spot[]): Mark => ({ kind: 'line', layer, points })

function blanked(text: ReturnType<typeof lettering>): readonly Mark[] {
  return [blank(grown(letteringBox(text), 0.5)), text]
}
