import { type Course, courseEnds, type Door, readingAt, type TimeSpan, turningLeaf } from '@sillsight/engine'
import { edgeFigure, fieldAndOutput, type Instant, instantsOf, outputChanges_s } from '../wording/instants.ts'
import type { Reader } from '../wording/language.ts'
import { called } from '../wording/plain.ts'
import { hatchLines } from './hatch.ts'
import { blank, crosses, letterInCircle } from './labels.ts'
import { baselineAround, lettering, letteringBox, shortened, textWidth_mm } from './lettering.ts'
import { type Box, corners, grown, LETTERING_MM, type Mark, overlap, type Spot } from './model.ts'
import { spread } from './spread.ts'

/** One course over one axis of time: the way of the edge as a curve, the body as a block that it must not meet, below it what is seen and switched. */
export interface DrawnTimeline {
  readonly marks: readonly Mark[]
  /** Those with a number stand on the drawing; the others lie before or after it. */
  readonly instants: readonly (Instant & { readonly number: number | undefined })[]
  /** Stretches of the axis, for whoever lays a slider over it. */
  readonly axis: TimeSpan & Pick<Box, 'left_mm' | 'right_mm'>
  /** The curve and the rows: from its top to the axis. */
  readonly chart: Box
  readonly texts: readonly Box[]
  readonly hatched: readonly Box[]
}

const SIZE_MM = LETTERING_MM.label
const CIRCLE_MM = 7 // of width and height that a number takes
const LEADERS_MM = 3.5
const PHASES_MM = 5
const LINE_MM = 5 // a line of lettering with its air
const BAR_MM = 3
const SWITCH_MM = 2
const ROW_MM = LINE_MM + BAR_MM + 0.6 + SWITCH_MM + 1.6
const AXIS_MM = 2 * LINE_MM + 1
const MOST_ROWS = 4
const LEAST_CURVE_MM = 34
const AIR_MM = 0.8

/** The height that a timeline takes at the least. */
export function timelineHeight_mm(course: Course): number {
  return CIRCLE_MM + LEADERS_MM + PHASES_MM + LINE_MM + LEAST_CURVE_MM + rowsHeight_mm(course) + AXIS_MM
}

function rowsHeight_mm({ fields }: Course): number {
  const more = fields.length > MOST_ROWS ? LINE_MM : 0
  return Math.min(fields.length, MOST_ROWS) * ROW_MM + more + 1.5
}

/** Draws one course into a box. Hatched is the time in which the body is unseen, and nothing else. */
export function drawTimeline(door: Door, course: Course, box: Box, reader: Reader): DrawnTimeline {
  const instants = instantsOf(door, course, reader)
  const span = shownSpan(course, instants)
  const top_mm = highest_mm(course, span)
  const labels = wayLabels(door, course, top_mm, reader)
  const left_mm = box.left_mm + Math.max(...labels.map(({ text }) => textWidth_mm(text, SIZE_MM))) + 2
  const right_mm = box.right_mm - 1
  const phases_mm = box.top_mm + CIRCLE_MM + LEADERS_MM
  const axis_mm = box.bottom_mm - AXIS_MM
  const curve: Box = {
    left_mm,
    right_mm,
    top_mm: phases_mm + PHASES_MM + LINE_MM,
    bottom_mm: axis_mm - rowsHeight_mm(course),
  }
  const frame: Frame = {
    door,
    course,
    reader,
    span,
    curve,
    xOf: (at_s) => left_mm + ((at_s - span.from_s) / (span.to_s - span.from_s)) * (right_mm - left_mm),
    yOf: (way_mm) => curve.bottom_mm - (way_mm / top_mm) * (curve.bottom_mm - curve.top_mm),
  }
  const numbered = withNumbers(instants, span)
  const verticals = numbered.flatMap(({ at_s, number }): Mark[] =>
    number === undefined
      ? []
      : [line('help', [spot(frame.xOf(at_s), phases_mm), spot(frame.xOf(at_s), axis_mm)], at_s === course.at_s ? 'solid' : 'hidden')],
  )
  const rows = rowsOf(frame, curve.bottom_mm + 1.5, box.left_mm)
  const marks = [
    ...verticals,
    ...circles(frame, numbered, box.top_mm, phases_mm),
    ...phaseMarks(frame, phases_mm),
    ...blanked(
      lettering(shortened(wayTitle(door, reader), SIZE_MM, box.right_mm - box.left_mm), spot(box.left_mm, curve.top_mm - 1.4), SIZE_MM),
    ),
    ...curveMarks(frame),
    ...wayLabelMarks(labels, frame, box.left_mm),
    ...rows.marks,
    ...axisMarks(frame, axis_mm, box.left_mm),
  ]
  return {
    marks,
    instants: numbered,
    axis: { ...span, left_mm, right_mm },
    chart: { ...curve, bottom_mm: axis_mm },
    texts: marks.flatMap((mark) => (mark.kind === 'text' ? [letteringBox(mark)] : [])),
    hatched: rows.hatched,
  }
}

interface Frame {
  readonly door: Door
  readonly course: Course
  readonly reader: Reader
  readonly span: TimeSpan
  readonly curve: Box
  readonly xOf: (at_s: number) => number
  readonly yOf: (way_mm: number) => number
}

/** A closing of five seconds is decided in two tenths: what is shown begins and ends a little around what happens, or is all where that is no more. */
function shownSpan(course: Course, instants: readonly Instant[]): TimeSpan {
  const ends = courseEnds(course)
  const telling = instants.map(({ at_s }) => at_s).filter((at_s) => at_s !== 0 && at_s !== course.warns_s && at_s !== course.leaves_s)
  const from_s = Math.min(course.at_s, ...telling)
  const to_s = Math.max(course.at_s, ...telling)
  const around_s = Math.max(0.05, 0.18 * (to_s - from_s))
  const near = { from_s: Math.max(ends.from_s, from_s - around_s), to_s: Math.min(ends.to_s, to_s + around_s) }
  const all = ends.to_s - ends.from_s < 1.6 * (near.to_s - near.from_s)
  const shown = all ? ends : near
  return shown.to_s - shown.from_s >= 0.02 ? shown : { from_s: shown.from_s - 0.01, to_s: shown.from_s + 0.01 }
}

function highest_mm({ leaf, clear_mm, opening_mm }: Course, { from_s, to_s }: TimeSpan): number {
  const ways = [from_s, to_s, ...leaf.map(([at_s]) => at_s).filter((at_s) => at_s > from_s && at_s < to_s)].map((at_s) =>
    readingAt(leaf, at_s),
  )
  return Math.max(1, 1.06 * Math.max(...ways, Math.min(clear_mm, opening_mm)))
}

function withNumbers(instants: readonly Instant[], { from_s, to_s }: TimeSpan): DrawnTimeline['instants'] {
  const shown = instants.filter(({ at_s }) => at_s >= from_s && at_s <= to_s)
  return instants.map((instant) => ({ ...instant, number: shown.includes(instant) ? shown.indexOf(instant) + 1 : undefined }))
}

/** Numbers above the drawing, moved apart, each with a leader to its instant. */
function circles({ xOf, curve }: Frame, instants: DrawnTimeline['instants'], top_mm: number, phases_mm: number): readonly Mark[] {
  const shown = instants.filter(({ number }) => number !== undefined)
  const places = spread(
    shown.map(({ at_s }) => xOf(at_s)),
    CIRCLE_MM,
    curve.left_mm,
    curve.right_mm - CIRCLE_MM / 2,
  )
  const y_mm = top_mm + CIRCLE_MM / 2
  const leaders = shown.map(({ at_s }, i) => line('dimension', [spot(places[i] ?? 0, y_mm), spot(xOf(at_s), phases_mm)]))
  return [...leaders, ...shown.flatMap(({ number }, i) => letterInCircle(String(number), spot(places[i] ?? 0, y_mm)))]
}

/** What the leaf does, named where the stretch is wide enough. */
function phaseMarks({ course, reader, span, xOf, curve }: Frame, top_mm: number): readonly Mark[] {
  const { phases } = reader.language.timeline
  const stop_s = outputChanges_s(course)
  const brake_s = course.brake_s ?? course.rest_s ?? Number.POSITIVE_INFINITY
  const rest_s = course.rest_s ?? Number.POSITIVE_INFINITY
  const told = stop_s !== undefined && stop_s > 0 && stop_s < brake_s ? stop_s : brake_s
  const parts: readonly (readonly [from_s: number, to_s: number, words: string])[] = [
    [course.warns_s ?? 0, 0, phases.warns],
    [0, told, phases.closes],
    [told, brake_s, phases.delay],
    [brake_s, rest_s, phases.brakes],
    [rest_s, course.opens_s ?? Number.POSITIVE_INFINITY, phases.rests],
    [course.opens_s ?? Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, phases.opens],
  ]
  const band = { ...curve, top_mm, bottom_mm: top_mm + PHASES_MM }
  return [
    { kind: 'area', layer: 'help', fill: 'none', rings: [corners(band)] },
    ...parts.flatMap(([from_s, to_s, words]): readonly Mark[] => {
      const from_mm = xOf(Math.max(span.from_s, from_s))
      const to_mm = xOf(Math.min(span.to_s, to_s))
      if (!(from_mm < to_mm)) return []
      const edge = from_s > span.from_s ? [line('thing', [spot(from_mm, top_mm), spot(from_mm, band.bottom_mm)])] : []
      if (textWidth_mm(words, SIZE_MM) + 2 * AIR_MM > to_mm - from_mm) return edge
      const at = spot((from_mm + to_mm) / 2, baselineAround((top_mm + band.bottom_mm) / 2, SIZE_MM))
      return [...edge, ...blanked(lettering(words, at, SIZE_MM, { anchor: 'middle' }))]
    }),
  ]
}

function wayTitle(door: Door, { language, units }: Reader): string {
  if (turningLeaf(door)) return language.timeline.angle
  return language.timeline.way(language.sheet.lengths[units])
}

function curveMarks({ door, course, span, curve, xOf, yOf, reader }: Frame): readonly Mark[] {
  const { clear_mm, enters_s, leaves_s, leaf, at_s, isContact } = course
  const from_mm = xOf(Math.max(span.from_s, enters_s ?? span.from_s))
  const to_mm = xOf(Math.min(span.to_s, leaves_s ?? span.to_s))
  const block: Box = {
    left_mm: from_mm,
    right_mm: Math.max(from_mm, to_mm),
    top_mm: Math.max(curve.top_mm, yOf(clear_mm)),
    bottom_mm: curve.bottom_mm,
  }
  const times = [span.from_s, ...leaf.map(([t_s]) => t_s).filter((t_s) => t_s > span.from_s && t_s < span.to_s), span.to_s]
  const path = (from_s: number, to_s: number) =>
    from_s >= to_s
      ? []
      : [from_s, ...times.filter((t_s) => t_s > from_s && t_s < to_s), to_s].map((t_s) => spot(xOf(t_s), yOf(readingAt(leaf, t_s))))
  const end_s = isContact ? Math.min(span.to_s, at_s) : span.to_s
  const meets = spot(xOf(at_s), yOf(readingAt(leaf, at_s)))
  const curves = [path(span.from_s, end_s), path(end_s, span.to_s)]
  return [
    { kind: 'area', layer: 'body', fill: 'wall', rings: [corners(block)] },
    line('help', [spot(curve.left_mm, block.top_mm), spot(curve.right_mm, block.top_mm)], 'centre'),
    line('thing', [spot(curve.left_mm, curve.top_mm), spot(curve.left_mm, curve.bottom_mm), spot(curve.right_mm, curve.bottom_mm)]),
    ...curves.filter((points) => points.length > 0).map((points, i) => line('structure', points, i === 0 ? 'solid' : 'hidden')),
    ...nameInBlock(door, block, curves, reader),
    { kind: 'circle', layer: 'thing', centre: meets, radius_mm: 1.1, fill: isContact ? 'ink' : 'paper' },
  ]
}

/** What the block is, where its lettering meets neither its outline nor the curve. */
function nameInBlock(door: Door, block: Box, curves: readonly (readonly Spot[])[], reader: Reader): readonly Mark[] {
  const { inPlane, inSweep, body } = reader.language.timeline
  const stretches = curves.flatMap((points) => points.slice(1).map((to, i) => [points[i] ?? to, to] as const))
  for (const words of [turningLeaf(door) ? inSweep : inPlane, body])
    for (const y_mm of [block.top_mm + 4.2, (block.top_mm + block.bottom_mm) / 2 + 1.3, block.bottom_mm - 1.8]) {
      const label = lettering(words, spot((block.left_mm + block.right_mm) / 2, y_mm), SIZE_MM, { anchor: 'middle' })
      const taken = grown(letteringBox(label), AIR_MM)
      const isInside =
        taken.left_mm > block.left_mm && taken.right_mm < block.right_mm && taken.top_mm > block.top_mm && taken.bottom_mm < block.bottom_mm
      if (isInside && !stretches.some((stretch) => crosses(stretch, taken))) return [label]
    }
  return []
}

interface WayLabel {
  readonly way_mm: number
  readonly text: string
}

/** The floor, the top of the body and the way at contact, as far as they have room; most telling first. */
function wayLabels(door: Door, { clear_mm, leaf, at_s }: Course, top_mm: number, reader: Reader): readonly WayLabel[] {
  const ways = [0, Math.min(clear_mm, top_mm), Math.max(0, readingAt(leaf, at_s))]
  return ways.map((way_mm) => ({ way_mm, text: edgeFigure(door, way_mm, reader) }))
}

function wayLabelMarks(labels: readonly WayLabel[], { curve, yOf }: Frame, left_mm: number): readonly Mark[] {
  const set: Box[] = []
  return labels.flatMap(({ way_mm, text }) => {
    const y_mm = Math.max(curve.top_mm, yOf(way_mm))
    const at = spot(curve.left_mm - 1.2, Math.min(Math.max(baselineAround(y_mm, SIZE_MM), curve.top_mm + 2.5), curve.bottom_mm))
    const label = lettering(text, at, SIZE_MM, { anchor: 'end' })
    const taken = letteringBox(label)
    if (taken.left_mm < left_mm - 1e-6 || set.some((other) => overlap(grown(taken, 0.3), other))) return []
    set.push(taken)
    return [label, line('dimension', [spot(curve.left_mm - 1, y_mm), spot(curve.left_mm, y_mm)])]
  })
}

/** Each field that sees the body: when it is unseen (hatched) or seen, and below it, inked, when its output forbids the closing. */
function rowsOf(frame: Frame, top_mm: number, left_mm: number): { readonly marks: readonly Mark[]; readonly hatched: readonly Box[] } {
  const { door, course, reader, curve } = frame
  const { timeline } = reader.language
  const width_mm = curve.right_mm - left_mm
  const title = (text: string, y_mm: number) => blanked(lettering(shortened(text, SIZE_MM, width_mm), spot(left_mm, y_mm + 3.4), SIZE_MM))
  const shown = course.fields.slice(0, MOST_ROWS)
  const rows = shown.map(({ field, visible, output }, i) => {
    const y_mm = top_mm + i * ROW_MM
    const { sensor, output: name } = fieldAndOutput(door, field)
    const bar = { ...curve, top_mm: y_mm + LINE_MM, bottom_mm: y_mm + LINE_MM + BAR_MM }
    const below = { ...curve, top_mm: bar.bottom_mm + 0.6, bottom_mm: bar.bottom_mm + 0.6 + SWITCH_MM }
    const seen = stretchesIn(frame, visible, bar)
    const unseen = gapsIn(seen, bar)
    const whole = timeline.field(called(sensor, reader), called(name, reader))
    // where it would be cut, the name says more than half a sentence: what hatched and inked mean stands in the keys
    const said = textWidth_mm(whole, SIZE_MM) <= width_mm ? whole : called(sensor, reader)
    return {
      hatched: unseen,
      marks: [
        ...title(said, y_mm),
        area('thing', bar, 'paper'),
        ...unseen.flatMap((gap) => [area('unseen', gap, 'unseen'), ...hatchLines([corners(gap)]).map((points) => line('hatch', points))]),
        area('thing', below, 'paper'),
        ...stretchesIn(frame, output, below).map((on) => area('thing', on, 'ink')),
      ],
    }
  })
  const more = course.fields.length - shown.length
  return {
    marks: [...rows.flatMap(({ marks }) => marks), ...(more > 0 ? title(timeline.moreFields(more), top_mm + shown.length * ROW_MM) : [])],
    hatched: rows.flatMap(({ hatched }) => hatched),
  }
}

function stretchesIn({ span, xOf }: Frame, spans: readonly TimeSpan[], bar: Box): readonly Box[] {
  return spans.flatMap(({ from_s, to_s }) => {
    const left_mm = xOf(Math.max(span.from_s, from_s))
    const right_mm = xOf(Math.min(span.to_s, to_s))
    return left_mm < right_mm ? [{ ...bar, left_mm, right_mm }] : []
  })
}

function gapsIn(seen: readonly Box[], bar: Box): readonly Box[] {
  const edges = [...seen].sort((a, b) => a.left_mm - b.left_mm)
  const gaps = [...edges, { ...bar, left_mm: bar.right_mm }].map(
    ({ left_mm }, i): Box => ({ ...bar, left_mm: edges[i - 1]?.right_mm ?? bar.left_mm, right_mm: left_mm }),
  )
  return gaps.filter(({ left_mm, right_mm }) => right_mm - left_mm > 0.05)
}

function axisMarks({ span, xOf, curve, reader }: Frame, axis_mm: number, left_mm: number): readonly Mark[] {
  const width_mm = curve.right_mm - curve.left_mm
  const step_s = tickStep_s(span.to_s - span.from_s, width_mm, reader)
  const first = Math.ceil(span.from_s / step_s - 1e-9)
  const last = Math.floor(span.to_s / step_s + 1e-9)
  const ticks = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i)
  const title = shortened(reader.language.timeline.axis, SIZE_MM, curve.right_mm - left_mm)
  return [
    line('thing', [spot(curve.left_mm, axis_mm), spot(curve.right_mm, axis_mm)]),
    ...ticks.flatMap((tick): readonly Mark[] => {
      const x_mm = xOf(tick * step_s)
      const label = lettering(seconds(tick * step_s, step_s, reader), spot(x_mm, axis_mm + LINE_MM), SIZE_MM, { anchor: 'middle' })
      const { left_mm: from_mm, right_mm: to_mm } = letteringBox(label)
      const fits = from_mm >= left_mm && to_mm <= curve.right_mm + 1
      return [line('thing', [spot(x_mm, axis_mm), spot(x_mm, axis_mm + 1.2)]), ...(fits ? [label] : [])]
    }),
    lettering(title, spot(curve.right_mm, axis_mm + 2 * LINE_MM), SIZE_MM, { anchor: 'end' }),
  ]
}

/** The finest round step whose labels keep apart. */
function tickStep_s(length_s: number, width_mm: number, reader: Reader): number {
  const steps = [0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 60, 120, 300, 600]
  const widest = (step_s: number) => textWidth_mm(seconds(-length_s - 100, step_s, reader), SIZE_MM)
  return steps.find((step_s) => (step_s / length_s) * width_mm > widest(step_s) + 1) ?? length_s
}

function seconds(value_s: number, step_s: number, { language }: Reader): string {
  const places = step_s >= 1 ? 0 : step_s >= 0.1 ? 1 : step_s >= 0.01 ? 2 : 3
  const text = value_s.toFixed(places).replace('.', language.decimal)
  return /^-[0.,]*$/.test(text) ? text.slice(1) : text
}

function spot(x_mm: number, y_mm: number): Spot {
  return { x_mm, y_mm }
}

function line(
  layer: Extract<Mark, { kind: 'line' }>['layer'],
  points: readonly Spot[],
  dash: 'solid' | 'hidden' | 'centre' = 'solid',
): Mark {
  return { kind: 'line', layer, points, dash }
}

function area(layer: 'thing' | 'unseen', box: Box, fill: 'paper' | 'unseen' | 'ink'): Mark {
  return { kind: 'area', layer, fill, rings: [corners(box)] }
}

function blanked(label: Extract<Mark, { kind: 'text' }>): readonly Mark[] {
  return [blank(letteringBox(label)), label]
}
