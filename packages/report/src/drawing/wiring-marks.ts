import type { Cable, Core, Fault, Played, Wiring } from '@sillsight/engine'
import { tape } from '../wording/figures.ts'
import type { Reader } from '../wording/language.ts'
import { blank } from './labels.ts'
import { baselineAround, lettering, letteringBox } from './lettering.ts'
import { type Box, corners, grown, type Mark, type Spot } from './model.ts'
import type { Link, PlacedCore, Side, WiringLayout } from './wiring-layout.ts'
import { shortName } from './wiring-sides.ts'

/** A wiring drawn with contacts as they are with nobody there, and where a fault is played what it does and what a meter would read. */
export interface DrawnWiring {
  readonly marks: readonly Mark[]
  readonly height_mm: number
  /** Where each core ends, to be touched and dragged. */
  readonly cores: readonly { readonly core: string; readonly from: Spot; readonly to: Spot }[]
  /** Where a core may end; a terminal that several cores share is there several times. */
  readonly terminals: readonly { readonly terminal: string; readonly at: Spot }[]
  /** How far from its terminal the sign of a meter's lead lies: inward along the core, and below it. */
  readonly leadAside: Spot
  readonly texts: readonly Box[]
}

export interface PlayedFault {
  readonly fault: Fault | undefined
  readonly played: Played
}

/** Where things lie on one drawing, whatever its arrangement. */
export interface Frame {
  readonly layout: WiringLayout
  readonly reader: Reader
  readonly playing: PlayedFault | undefined
  /** Inner edges of both sides. */
  readonly left_mm: number
  readonly right_mm: number
  readonly width_mm: number
  readonly yOf: (row: number) => number
  /** Where the lanes of ties and switches begin, and how wide each is. */
  readonly lanesAt_mm: Readonly<Record<Side, number>>
  readonly lane_mm: number
  /** How low in its lane the sign of a switch or resistor lies. */
  readonly middleOf_mm: (link: Link) => number
  /** Size of a core's name. */
  readonly core_mm: number
  /** How far a core reaches that turns back to its own side. */
  readonly turnOf_mm: (core: PlacedCore) => number
  /** Where on the way of a core its fault is drawn: clear of its name and of what stands at its ends. */
  readonly faultAt: number
}

/** What can be taken hold of, and what a test compares. */
export function drawnOn(frame: Frame, marks: readonly Mark[], height_mm: number, leadAside: Spot): DrawnWiring {
  const { layout, yOf } = frame
  return {
    marks,
    height_mm,
    leadAside,
    cores: layout.cores.map((placed) => ({
      core: placed.core.id,
      from: spot(endOf(frame, placed.from), yOf(placed.row)),
      to: spot(endOf(frame, placed.to), yOf(placed.uTurn?.row ?? placed.row)),
    })),
    terminals: [
      ...(['left', 'right'] as const).flatMap((side) =>
        layout[side].map(({ terminal, row }) => ({ terminal, at: spot(edgeOf(frame, side), yOf(row)) })),
      ),
      ...layout.joints.flatMap(({ terminal, lane, rows }) => rows.map((row) => ({ terminal, at: spot(jointX_mm(frame, lane), yOf(row)) }))),
    ],
    texts: marks.flatMap((mark) => (mark.kind === 'text' ? [letteringBox(mark)] : [])),
  }
}

export const edgeOf = ({ left_mm, right_mm }: Frame, side: Side) => (side === 'left' ? left_mm : right_mm)
/** Away from the cores. */
export const outward = (side: Side) => (side === 'left' ? -1 : 1)

export function coreWords({ id, colour }: Core): string {
  return colour ? `${shortName(id)} ${colour}` : shortName(id)
}

export function cableWords({ id, length_mm, conductor }: Cable, reader: Reader): string {
  const { decimal, wiring } = reader.language
  const size = 'area_mm2' in conductor ? `${`${conductor.area_mm2}`.replace('.', decimal)} mm\u00b2` : `AWG ${conductor.awg}`
  return wiring.cable(id, tape(length_mm, reader), size)
}

/** What stands above a device: its name, of a sensor its state too; what belongs to the control stands under one name. */
export function deviceWords({ layout, reader, playing }: Frame, wiring: Wiring, name: string, side: Side): string {
  const { control, states } = reader.language.wiring
  if (side === 'left') return [...new Set(layout.left.map(({ device }) => device))].join(', ') || control
  const sensor = wiring.sensors.find(({ id }) => id === name)
  const state = sensor && playing?.played.states.get(sensor.id)
  return state ? `${name}: ${states[state]}` : name
}

export function volts(volt: number, { language }: Reader): string {
  const text = (Math.abs(volt) < 0.05 ? 0 : volt).toFixed(1)
  return text.replace('.', language.decimal).replace('-', '\u2212')
}

/** Across the lanes of a side, counted from the terminals outward. */
export function laneX_mm(frame: Frame, { side, lane }: Link): number {
  return frame.lanesAt_mm[side] + outward(side) * (lane + 0.5) * frame.lane_mm
}

export function linkMarks(frame: Frame, link: Link): readonly Mark[] {
  const { rows, what } = link
  const [x_mm, lanes_mm] = [laneX_mm(frame, link), frame.lanesAt_mm[link.side]]
  const [top_mm, bottom_mm] = [frame.yOf(Math.min(...rows)), frame.yOf(Math.max(...rows))]
  const stubs = rows.map((row) => line('thing', [spot(lanes_mm, frame.yOf(row)), spot(x_mm, frame.yOf(row))]))
  if (what.kind === 'tie')
    return [
      ...stubs,
      line('thing', [spot(x_mm, top_mm), spot(x_mm, bottom_mm)]),
      ...rows.slice(1, -1).map((row) => dot(spot(x_mm, frame.yOf(row)))),
    ]
  const middle_mm = frame.middleOf_mm(link)
  if (what.kind === 'resistor') {
    const box = { left_mm: x_mm - 0.9, right_mm: x_mm + 0.9, top_mm: middle_mm - 1.9, bottom_mm: middle_mm + 1.9 }
    return [
      ...stubs,
      line('thing', [spot(x_mm, top_mm), spot(x_mm, box.top_mm)]),
      line('thing', [spot(x_mm, box.bottom_mm), spot(x_mm, bottom_mm)]),
      { kind: 'area', layer: 'structure', fill: 'paper', rings: [corners(box)] },
    ]
  }
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

export function coreMarks(frame: Frame, placed: PlacedCore): readonly Mark[] {
  const { core, row, uTurn } = placed
  const y_mm = frame.yOf(row)
  const words = coreWords(core)
  if (uTurn) {
    const x_mm = edgeOf(frame, uTurn.side)
    const turn_mm = x_mm - outward(uTurn.side) * frame.turnOf_mm(placed)
    const low_mm = frame.yOf(uTurn.row)
    return [
      line('structure', [spot(x_mm, y_mm), spot(turn_mm, y_mm), spot(turn_mm, low_mm), spot(x_mm, low_mm)]),
      ...blanked(lettering(words, spot(turn_mm, baselineAround((y_mm + low_mm) / 2, frame.core_mm)), frame.core_mm, { anchor: 'middle' })),
    ]
  }
  const [a_mm, b_mm] = [endOf(frame, placed.from), endOf(frame, placed.to)]
  const label = lettering(words, spot((a_mm + b_mm) / 2, baselineAround(y_mm, frame.core_mm)), frame.core_mm, { anchor: 'middle' })
  return [line('structure', [spot(a_mm, y_mm), spot(b_mm, y_mm)]), ...blanked(label)]
}

export function jointMarks(frame: Frame): readonly Mark[] {
  return frame.layout.joints.flatMap(({ lane, rows }): Mark[] => {
    const x_mm = jointX_mm(frame, lane)
    const ys = rows.map(frame.yOf)
    return [line('structure', [spot(x_mm, Math.min(...ys)), spot(x_mm, Math.max(...ys))]), ...ys.map((y_mm) => dot(spot(x_mm, y_mm)))]
  })
}

/** What is wrong, where it is: a gap, a bridge, or a word. */
export function faultMarks(frame: Frame): readonly Mark[] {
  const fault = frame.playing?.fault
  if (!fault) return []
  const { layout, yOf, left_mm, right_mm } = frame
  const at_mm = left_mm + (right_mm - left_mm) * frame.faultAt
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
      const text = lettering(rail, spot(at_mm + 1.6, y_mm - 1.4), frame.core_mm, { bold: true })
      return [...blanked(text), line('body', [spot(at_mm, y_mm), spot(at_mm, y_mm - 3.2)]), dot(spot(at_mm, y_mm))]
    }
    default: {
      // what is wrong inside of a device is told above the drawing, and shown by what the terminals read
      const link = layout.links.find(
        ({ what }) =>
          (fault.kind === 'switch-stuck' && what.kind === 'switch' && what.sensor === fault.sensor && what.each.name === fault.switch) ||
          (fault.kind === 'output-stuck' && what.kind === 'switch' && what.sensor === fault.sensor && what.each.output === fault.output) ||
          ((fault.kind === 'resistor-open' || fault.kind === 'resistor-shorted') &&
            what.kind === 'resistor' &&
            what.each.id === fault.resistor) ||
          (fault.kind === 'test-stuck' && what.kind === 'test'),
      )
      if (!link) return []
      const centre = spot(laneX_mm(frame, link), frame.middleOf_mm(link))
      return [{ kind: 'circle', layer: 'body', centre, radius_mm: 2.9, fill: 'none' }]
    }
  }
}

export const spot = (x_mm: number, y_mm: number): Spot => ({ x_mm, y_mm })
const dot = (centre: Spot): Mark => ({ kind: 'circle', layer: 'thing', centre, radius_mm: 0.7, fill: 'ink' })
export const line = (layer: 'structure' | 'thing' | 'help' | 'body' | 'halo', points: readonly Spot[]): Mark => ({
  kind: 'line',
  layer,
  points,
})

function blanked(text: ReturnType<typeof lettering>): readonly Mark[] {
  return [blank(grown(letteringBox(text), 0.5)), text]
}
