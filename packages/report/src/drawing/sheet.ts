import type { Door, Judgement } from '@sillsight/engine'
import type { SheetOptions } from '../options.ts'
import { countedSensors, shownOf } from '../shown.ts'
import { titleWords } from '../wording/sheet-words.ts'
import { drawDimensions } from './dimensions.ts'
import { elevation } from './elevation.ts'
import { drawKey, leastKeyHeight_mm } from './key.ts'
import { type Labelling, labelMarks, placeLabels } from './labels.ts'
import { type Arrangement, arrange, headingOf, type Scales, type Slot } from './layout.ts'
import { lettering, letteringBox } from './lettering.ts'
import { type Box, LETTERING_MM, type Mark, type Sheet } from './model.ts'
import { plan } from './plan.ts'
import { thingsInPlan } from './plan-window.ts'
import { bodiesToDraw, isFlat, type Scene } from './scene.ts'
import { section } from './section.ts'
import { svg } from './svg.ts'
import { titleBlock } from './title-block.ts'
import { tracesOf } from './traces.ts'

/** Plan and elevation of one door on one sheet, as an SVG that prints to scale. Names are escaped; the same door gives the same bytes. */
export function sheetSvg(door: Door, judgement: Judgement, options: SheetOptions): string {
  return svg(drawSheet(door, judgement, options).sheet)
}

/** The drawing before it is written, with what a check needs to see that labels lie clear. */
export interface DrawnSheet {
  readonly sheet: Sheet
  readonly scales: Scales
  readonly labellings: readonly Labelling[]
  readonly hatched: readonly Box[]
  readonly texts: readonly Box[]
  /** Pockets that the key explains. */
  readonly told: readonly string[]
}

export function drawSheet(door: Door, judgement: Judgement, options: SheetOptions): DrawnSheet {
  const scene = sceneOf(door, judgement, options)
  const projections = { plan: plan(scene), elevation: elevation(scene), section: isSectionWorthIt(scene) ? section(scene) : undefined }
  const arrangement = arrange(projections, (width_mm) => leastKeyHeight_mm(scene, judgement, width_mm), options.scale)
  const slots = arrangement.slots.map((slot) => drawSlot(slot))
  const key = drawKey(scene, judgement, arrangement.key)
  const drawn = {
    state: scene.state.name,
    zone: scene.zone?.name,
    coverage: scene.coverage,
    scales: arrangement.scales,
    sheet: arrangement.paper.name,
  }
  const words = titleWords(door, judgement, drawn, scene)
  const marks = [...slots.flatMap((slot) => slot.marks), ...key.marks, ...titleBlock(words, arrangement.title, arrangement.scales.plan)]
  return {
    scales: arrangement.scales,
    told: key.told,
    labellings: slots.map(({ labelling }) => labelling),
    hatched: slots.flatMap(({ hatched }) => hatched),
    texts: marks.flatMap((mark) => (mark.kind === 'text' ? [letteringBox(mark)] : [])),
    sheet: {
      width_mm: arrangement.paper.width_mm,
      height_mm: arrangement.paper.height_mm,
      title: door.name,
      description: describe(words, arrangement),
      marks,
    },
  }
}

/** What a drawing of this door shows, before it is projected. */
export function sceneOf(door: Door, judgement: Judgement, options: Pick<SheetOptions, 'units' | 'language' | 'state' | 'zone'>): Scene {
  const shown = shownOf(door, judgement, options)
  const scene = {
    door,
    ...shown,
    counted: countedSensors(door, shown.coverage),
    units: options.units,
    language: options.language,
    traces: tracesOf(door, shown.state, shown.coverage),
    gaps: computedGaps(judgement, shown.state.id),
    bodies: shown.coverage ? bodiesToDraw(door, shown.coverage.pockets) : [],
  }
  return { ...scene, things: thingsInPlan(scene) }
}

/** The gaps that findings about danger points computed in this state, and judged as gaps. */
function computedGaps({ findings }: Judgement, state: string): Scene['gaps'] {
  return findings.flatMap(({ rule, facts, ...finding }) => {
    const { gapX_mm, gapY_mm, height_mm, gap_mm, by } = facts
    if (rule !== 'danger-point' || finding.state !== state || by === 'height') return []
    const numbers = [gapX_mm, gapY_mm, height_mm, gap_mm]
    const [x, y, from, gap] = numbers.filter((each) => typeof each === 'number')
    return x === undefined || y === undefined || from === undefined || gap === undefined
      ? []
      : [{ x_mm: x, y_mm: y, from_mm: from, gap_mm: gap }]
  })
}

/** A section shows what plan and elevation do not: a floor that is not flat, planes that lean, sensors off the leaf line. */
function isSectionWorthIt({ door, state, counted }: Scene): boolean {
  if (!isFlat(state.floor)) return true
  return door.sensors.some(
    (sensor) =>
      counted.has(sensor.id) &&
      sensor.kind === 'ranging' &&
      (sensor.pose.tilt_rad !== 0 || sensor.pose.y_mm !== 0 || sensor.planes.length > 1),
  )
}

function describe({ name, verdict, lines }: ReturnType<typeof titleWords>, { slots }: Arrangement): string {
  return [
    name,
    verdict,
    ...slots.map(({ projection }) => `${projection.heading}, ${projection.seen}`),
    ...lines.map(([label, value]) => `${label}: ${value}`),
  ].join('. ')
}

interface DrawnInPlace {
  readonly marks: readonly Mark[]
  /** Where the lettering of each dimension lies that says what it measures. */
  readonly figures: readonly { readonly of: string; readonly box: Box }[]
  readonly labelling: Labelling
  readonly hatched: readonly Box[]
}

function drawSlot(slot: Slot): DrawnInPlace {
  const { projection, view, headingAt } = slot
  return drawInPlace(slot, [
    lettering(headingOf(projection, view.scale), headingAt, LETTERING_MM.heading, { bold: true }),
    lettering(projection.seen, { x_mm: headingAt.x_mm, y_mm: headingAt.y_mm + 4.8 }, LETTERING_MM.note),
  ])
}

/** One projection where it lies, with its dimensions, labels and heading. */
export function drawInPlace(
  { projection, view, dimensions, bounds }: Omit<Slot, 'headingAt'>,
  heading: readonly Extract<Mark, { kind: 'text' }>[] = [],
  kept: readonly Box[] = [],
): DrawnInPlace {
  const drawn = projection.draw(view)
  const byDimension = drawDimensions(view, dimensions, { bounds, kept })
  const figures = byDimension.filter((each) => each !== undefined)
  const ground = {
    bounds,
    kept: [...kept, ...drawn.hatched, ...drawn.kept, ...figures.map(({ text }) => text), ...heading.map(letteringBox)],
    lines: [...drawn.lines, ...figures.flatMap(({ lines }) => lines)],
  }
  const labelling = placeLabels(drawn.labels, ground)
  return {
    labelling,
    hatched: drawn.hatched,
    figures: dimensions.flatMap(({ of }, i) => (of !== undefined && byDimension[i] ? [{ of, box: byDimension[i].text }] : [])),
    marks: [
      ...drawn.marks,
      ...figures.flatMap(({ marks }) => marks),
      ...figures.flatMap(({ figure }) => figure),
      ...labelMarks(labelling),
      ...heading,
    ],
  }
}
