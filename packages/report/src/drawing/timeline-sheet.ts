import { type Course, type Door, type Finding, type Judgement, readingAt } from '@sillsight/engine'
import type { SheetOptions } from '../options.ts'
import { postureOf } from '../wording/bodies.ts'
import { figure } from '../wording/figures.ts'
import { instantWords } from '../wording/instants.ts'
import { capital } from '../wording/plain.ts'
import { ruleName, sentence } from '../wording/sentence.ts'
import { titleWords } from '../wording/sheet-words.ts'
import { ranked, roomAround } from './dimensions.ts'
import { hatchLines } from './hatch.ts'
import type { Labelling } from './labels.ts'
import { letterInCircle } from './labels.ts'
import { lettering, letteringBox, paragraph } from './lettering.ts'
import { type Box, corners, LETTERING_MM, type Mark, type Sheet } from './model.ts'
import { plan } from './plan.ts'
import { floorAt, type Projection, type Scene, type ShownBody } from './scene.ts'
import { drawInPlace, sceneOf } from './sheet.ts'
import { svg } from './svg.ts'
import { drawTimeline, timelineHeight_mm } from './timeline.ts'
import { TITLE_BLOCK_MM, titleBlock } from './title-block.ts'
import { heightOnPaper_mm, viewAt, widthOnPaper_mm } from './view.ts'

export type TimedFinding = Finding & { readonly course: Course }

/** Findings that have a course, worst first. */
export function timedFindings({ findings }: Judgement): readonly TimedFinding[] {
  return findings.filter((finding): finding is TimedFinding => finding.course !== undefined)
}

/** The body of a course where it is at a time. */
export function bodyAt(door: Door, course: Course, state: string | undefined, at_s: number): ShownBody | undefined {
  const posture = postureOf(door, course)
  const shown = door.states.find(({ id }) => id === state) ?? door.states[0]
  if (posture === undefined || shown === undefined) return undefined
  const { x_mm, yaw_rad } = course
  const y_mm = readingAt(course.place, at_s)
  const worstCase = {
    body: course.body,
    posture: course.posture,
    x_mm,
    y_mm,
    z_mm: floorAt(shown.floor, x_mm, y_mm),
    yaw_rad,
    state: shown.id,
  }
  return { letter: '', worstCase, posture }
}

/** One finding in time on a sheet: its sentence, the timeline, what the numbers say, and the plan with the body where it is met. The same door gives the same bytes. */
export function timelineSvg(door: Door, judgement: Judgement, finding: TimedFinding, options: SheetOptions): string {
  return svg(drawTimelineSheet(door, judgement, finding, options).sheet)
}

export interface DrawnTimelineSheet {
  readonly sheet: Sheet
  readonly labelling: Labelling
  readonly texts: readonly Box[]
  readonly hatched: readonly Box[]
}

const PAPER = { name: 'A4', width_mm: 210, height_mm: 297 }
const EDGE_MM = 10
const LINE_MM = 4.7
const HEADING_MM = 11.5 // two lines
const SCALES = [10, 20, 25, 50, 100, 200, 500, 1000]
const GUTTER_MM = 6
const LEAST_PLAN_MM = 58 // with its heading; a sheet that has less left grows

export function drawTimelineSheet(door: Door, judgement: Judgement, finding: TimedFinding, options: SheetOptions): DrawnTimelineSheet {
  const { course } = finding
  const { timeline } = options.language
  const left_mm = EDGE_MM + 2
  const width_mm = PAPER.width_mm - 2 * left_mm
  let y_mm = EDGE_MM + LETTERING_MM.heading + 2
  const heading = lettering(timeline.title(ruleName(finding.rule, options)), { x_mm: left_mm, y_mm }, LETTERING_MM.heading, { bold: true })
  const said = paragraph(sentence(door, finding, options), LETTERING_MM.note, width_mm).map((line) => {
    y_mm += LINE_MM
    return lettering(line, { x_mm: left_mm, y_mm: y_mm + 1 }, LETTERING_MM.note)
  })
  y_mm += 4
  const drawn = drawTimeline(
    door,
    course,
    { left_mm, right_mm: left_mm + width_mm, top_mm: y_mm, bottom_mm: y_mm + timelineHeight_mm(course) + 8 },
    options,
  )
  y_mm += timelineHeight_mm(course) + 8 + 2
  const list = listMarks(drawn.instants, course, { left_mm, right_mm: left_mm + width_mm, top_mm: y_mm, bottom_mm: y_mm }, options)
  const foot_mm = Math.max(PAPER.height_mm - EDGE_MM - TITLE_BLOCK_MM, list.bottom_mm + 7 + LEAST_PLAN_MM)
  const strip: Box = { left_mm: EDGE_MM, right_mm: PAPER.width_mm - EDGE_MM, top_mm: foot_mm, bottom_mm: foot_mm + TITLE_BLOCK_MM }
  const height_mm = strip.bottom_mm + EDGE_MM
  const room: Box = { left_mm, right_mm: left_mm + width_mm, top_mm: list.bottom_mm + 3, bottom_mm: strip.top_mm - 4 }
  const body = bodyAt(door, course, finding.state, course.at_s)
  const scene: Scene = {
    ...sceneOf(door, judgement, { ...options, state: finding.state }),
    coverage: undefined,
    zone: undefined,
    bodies: body ? [body] : [],
    leafWay_mm: readingAt(course.leaf, course.at_s),
  }
  const placed = planIn(scene, room, options.scale, timeline.atContact(figure({ value: course.at_s, unit: 's' }, options)))
  const words = titleWords(
    door,
    judgement,
    {
      state: scene.state.name,
      zone: undefined,
      coverage: undefined,
      scales: { plan: placed.scale, upright: placed.scale },
      sheet: height_mm > PAPER.height_mm ? undefined : PAPER.name,
    },
    options,
  )
  const marks = [heading, ...said, ...drawn.marks, ...list.marks, ...placed.marks, ...titleBlock(words, strip, placed.scale)]
  return {
    labelling: placed.labelling,
    hatched: drawn.hatched,
    texts: marks.flatMap((mark) => (mark.kind === 'text' ? [letteringBox(mark)] : [])),
    sheet: {
      width_mm: PAPER.width_mm,
      height_mm,
      title: door.name,
      description: [door.name, sentence(door, finding, options), ...drawn.instants.map((instant) => instantWords(instant, options))].join(
        ' ',
      ),
      marks,
    },
  }
}

/** What the numbers say, and what hatching and ink mean. */
function listMarks(
  instants: ReturnType<typeof drawTimeline>['instants'],
  course: Course,
  { left_mm, right_mm, top_mm }: Box,
  options: SheetOptions,
): { readonly marks: readonly Mark[]; readonly bottom_mm: number } {
  const { keys } = options.language.timeline
  const signs: readonly (readonly [draw: (box: Box) => readonly Mark[], words: string])[] = [
    ...(course.fields.length > 0
      ? [[(box: Box) => signOf(box, 'unseen'), keys.unseen] as const, [(box: Box) => signOf(box, 'ink'), keys.output] as const]
      : []),
    ...(course.isContact ? [[dashed, keys.after] as const] : []),
  ]
  const entries: readonly (readonly [sign: (box: Box) => readonly Mark[], words: string])[] = [
    ...instants.map((instant) => [(box: Box) => numberIn(box, instant.number), capital(instantWords(instant, options))] as const),
    ...signs,
  ]
  const half = Math.ceil(entries.length / 2)
  const width_mm = (right_mm - left_mm - GUTTER_MM) / 2
  const columns = [entries.slice(0, half), entries.slice(half)].map((column, i) => {
    const from_mm = left_mm + i * (width_mm + GUTTER_MM)
    let y_mm = top_mm
    const marks = column.flatMap(([sign, words]) => {
      const lines = paragraph(words, LETTERING_MM.note, width_mm - 11)
      const box = { left_mm: from_mm, right_mm: from_mm + 8, top_mm: y_mm, bottom_mm: y_mm + 6.2 }
      const set = lines.map((text, n) => lettering(text, { x_mm: from_mm + 11, y_mm: y_mm + 4.4 + n * LINE_MM }, LETTERING_MM.note))
      y_mm += Math.max(6.6, lines.length * LINE_MM + 1.6)
      return [...sign(box), ...set]
    })
    return { marks, bottom_mm: y_mm }
  })
  return { marks: columns.flatMap(({ marks }) => marks), bottom_mm: Math.max(...columns.map(({ bottom_mm }) => bottom_mm)) }
}

function numberIn({ left_mm, right_mm, top_mm, bottom_mm }: Box, number: number | undefined): readonly Mark[] {
  return number === undefined ? [] : letterInCircle(String(number), { x_mm: (left_mm + right_mm) / 2, y_mm: (top_mm + bottom_mm) / 2 })
}

function signOf({ left_mm, right_mm, top_mm }: Box, fill: 'unseen' | 'ink'): readonly Mark[] {
  const ring = corners({ left_mm, right_mm, top_mm: top_mm + 1.6, bottom_mm: top_mm + 4.6 })
  const lines = fill === 'unseen' ? hatchLines([ring]).map((points): Mark => ({ kind: 'line', layer: 'hatch', points })) : []
  return [{ kind: 'area', layer: fill === 'unseen' ? 'unseen' : 'thing', fill, rings: [ring] }, ...lines]
}

function dashed({ left_mm, right_mm, top_mm }: Box): readonly Mark[] {
  const y_mm = top_mm + 3.1
  const points = [
    { x_mm: left_mm, y_mm },
    { x_mm: right_mm, y_mm },
  ]
  return [{ kind: 'line', layer: 'structure', dash: 'hidden', points }]
}

/** The plan at the largest scale that the room carries, in its middle. */
function planIn(scene: Scene, room: Box, asked: number | undefined, note: string) {
  const projection = plan(scene)
  const scales = asked === undefined ? SCALES : [asked]
  const scale = scales.find((each) => fits(projection, room, each)) ?? scales[scales.length - 1] ?? 1
  const dimensions = ranked(projection.dimensions, scale)
  const around = roomAround(dimensions, projection.window, scale)
  const width_mm = widthOnPaper_mm(projection.window, scale) + around.left + around.right
  const spare_mm = Math.max(0, (room.right_mm - room.left_mm - width_mm) / 2)
  const view = viewAt(projection.window, scale, {
    x_mm: room.left_mm + spare_mm + around.left,
    y_mm: room.top_mm + HEADING_MM + around.top,
  })
  const title = [
    lettering(`${projection.heading} 1:${scale}`, { x_mm: room.left_mm, y_mm: room.top_mm + LETTERING_MM.heading }, LETTERING_MM.heading, {
      bold: true,
    }),
    lettering(`${projection.seen}; ${note}`, { x_mm: room.left_mm, y_mm: room.top_mm + LETTERING_MM.heading + 4.8 }, LETTERING_MM.note),
  ]
  const bounds = { ...room, top_mm: room.top_mm + HEADING_MM - 1 }
  return { ...drawInPlace({ projection, view, dimensions, bounds }, title), scale }
}

function fits(projection: Projection, room: Box, scale: number): boolean {
  const around = roomAround(ranked(projection.dimensions, scale), projection.window, scale)
  return (
    widthOnPaper_mm(projection.window, scale) + around.left + around.right <= room.right_mm - room.left_mm &&
    heightOnPaper_mm(projection.window, scale) + around.top + around.bottom <= room.bottom_mm - room.top_mm - HEADING_MM
  )
}
