import { baselineAround, lettering, paragraph, textWidth_mm } from './lettering.ts'
import { type Box, grown, LETTERING_MM, type Lettering, type Mark, overlap, type Spot } from './model.ts'

/** A name or a letter that wants to stand near what it names. */
export interface LabelRequest {
  readonly text: string
  /** What it names; the leader ends here. */
  readonly at: Spot
  /** A letter in a circle, whose leader is always drawn; other labels get one where they stand away. */
  readonly circled: boolean
  /** How far the thing reaches around its spot; the label starts beyond. */
  readonly clear_mm: number
  /** Farther away it would say nothing, and is left out. */
  readonly within_mm?: number
}

/** What lies on the sheet already. */
export interface Ground {
  /** Where labels may lie. */
  readonly bounds: Box
  /** Hatching, lettering, things: no label lies here. */
  readonly kept: readonly Box[]
  /** Lines that labels cross only if there is no better place. */
  readonly lines: readonly (readonly [Spot, Spot])[]
}

export interface PlacedLabel {
  readonly request: LabelRequest
  readonly box: Box
  readonly leader: readonly [Spot, Spot] | undefined
}

export interface Labelling {
  readonly placed: readonly PlacedLabel[]
  /** What found no place; the key beside the drawing names it. */
  readonly unplaced: readonly LabelRequest[]
}

const LETTER_RADIUS_MM = 3.1
const WIDEST_MM = 40 // of a label on one line
const LINE_MM = 4.3 // from line to line
const AIR_MM = 0.6 // between a label and whatever it must not touch
const DISTANCES_MM = [0.8, 2.5, 5, 8, 12, 17, 23, 30, 38, 48, 60]
const DIRECTIONS = 24
const LEADER_FROM_MM = 4 // a label farther away from its thing gets a leader
const LINE_COST_MM = 9 // crossing a line is as bad as standing so much farther away

/**
 * Finds a place for each label, one after the other: the nearest that keeps off hatching, other labels and their leaders, and crosses few
 * lines. A label without such a place is left out; none ever lies on another.
 */
export function placeLabels(requests: readonly LabelRequest[], ground: Ground): Labelling {
  const placed: PlacedLabel[] = []
  const unplaced: LabelRequest[] = []
  for (const request of requests) {
    const best = bestPlace(request, ground, placed)
    if (best) placed.push(best)
    else unplaced.push(request)
  }
  return { placed, unplaced }
}

function bestPlace(request: LabelRequest, ground: Ground, placed: readonly PlacedLabel[]): PlacedLabel | undefined {
  const size = sizeOf(request)
  let best: PlacedLabel | undefined
  let bestCost = Number.POSITIVE_INFINITY
  for (const distance_mm of DISTANCES_MM) {
    if (distance_mm >= bestCost || distance_mm > (request.within_mm ?? Number.POSITIVE_INFINITY)) break
    for (const way of WAYS) {
      const candidate = candidateAt(request, size, distance_mm, way)
      if (!isAllowed(candidate, ground, placed)) continue
      const cost = distance_mm + LINE_COST_MM * linesCrossed(candidate, ground.lines)
      if (cost < bestCost - 1e-9) {
        best = candidate
        bestCost = cost
      }
    }
  }
  return best
}

interface Size {
  readonly width_mm: number
  readonly height_mm: number
}
interface Way {
  readonly cos: number
  readonly sin: number
}

const WAYS = Array.from({ length: DIRECTIONS }, (_, i): Way => {
  const angle_rad = (i * 2 * Math.PI) / DIRECTIONS
  return { cos: Math.cos(angle_rad), sin: -Math.sin(angle_rad) }
})

function candidateAt(request: LabelRequest, { width_mm, height_mm }: Size, distance_mm: number, { cos, sin }: Way): PlacedLabel {
  const away_mm = distance_mm + request.clear_mm + (request.circled ? LETTER_RADIUS_MM : 0)
  const middle = {
    x_mm: request.at.x_mm + cos * (away_mm + (request.circled ? 0 : width_mm / 2)),
    y_mm: request.at.y_mm + sin * (away_mm + (request.circled ? 0 : height_mm / 2)),
  }
  const box = {
    left_mm: middle.x_mm - width_mm / 2,
    right_mm: middle.x_mm + width_mm / 2,
    top_mm: middle.y_mm - height_mm / 2,
    bottom_mm: middle.y_mm + height_mm / 2,
  }
  return { request, box, leader: leaderOf(request, box, middle, distance_mm) }
}

function sizeOf({ text, circled }: LabelRequest): Size {
  if (!circled) {
    const lines = labelLines(text)
    return {
      width_mm: Math.max(...lines.map((line) => textWidth_mm(line, LETTERING_MM.label))),
      height_mm: LETTERING_MM.label * 1.1 + (lines.length - 1) * LINE_MM,
    }
  }
  const width_mm = Math.max(2 * LETTER_RADIUS_MM, textWidth_mm(text, LETTERING_MM.label, true) + 1.6)
  return { width_mm, height_mm: 2 * LETTER_RADIUS_MM }
}

/** A long name stands on two lines of about the same length. */
function labelLines(text: string): readonly string[] {
  const whole_mm = textWidth_mm(text, LETTERING_MM.label)
  if (whole_mm <= WIDEST_MM) return [text]
  const lines = paragraph(text, LETTERING_MM.label, whole_mm * 0.58)
  return lines.length === 2 ? lines : paragraph(text, LETTERING_MM.label, whole_mm * 0.75).slice(0, 2)
}

function leaderOf(request: LabelRequest, box: Box, middle: Spot, distance_mm: number): readonly [Spot, Spot] | undefined {
  if (!request.circled && distance_mm < LEADER_FROM_MM) return undefined
  const from = request.circled ? towards(middle, request.at, LETTER_RADIUS_MM) : nearestOn(box, request.at)
  const end = request.circled ? request.at : towards(request.at, from, request.clear_mm)
  return [from, end]
}

function towards(from: Spot, to: Spot, by_mm: number): Spot {
  const length_mm = Math.sqrt((to.x_mm - from.x_mm) ** 2 + (to.y_mm - from.y_mm) ** 2)
  if (length_mm === 0) return from
  return { x_mm: from.x_mm + ((to.x_mm - from.x_mm) * by_mm) / length_mm, y_mm: from.y_mm + ((to.y_mm - from.y_mm) * by_mm) / length_mm }
}

function nearestOn(box: Box, spot: Spot): Spot {
  return { x_mm: Math.min(Math.max(spot.x_mm, box.left_mm), box.right_mm), y_mm: Math.min(Math.max(spot.y_mm, box.top_mm), box.bottom_mm) }
}

function isAllowed({ box, leader }: PlacedLabel, { bounds, kept }: Ground, placed: readonly PlacedLabel[]): boolean {
  if (box.left_mm < bounds.left_mm || box.right_mm > bounds.right_mm || box.top_mm < bounds.top_mm || box.bottom_mm > bounds.bottom_mm)
    return false
  const withAir = grown(box, AIR_MM)
  if (kept.some((other) => overlap(withAir, other))) return false
  return placed.every(
    (other) =>
      !overlap(withAir, other.box) &&
      !(other.leader && crosses(other.leader, withAir)) &&
      !(leader && crosses(leader, grown(other.box, AIR_MM))),
  )
}

function linesCrossed({ box, leader }: PlacedLabel, lines: readonly (readonly [Spot, Spot])[]): number {
  let sum = 0
  for (const line of lines) if (crosses(line, box)) sum++
  return sum + (leader ? 0.1 : 0)
}

/** Whether a stretch meets the inside of a box. Asked some hundred thousand times for one drawing, so nothing is allocated. */
export function crosses([from, to]: readonly [Spot, Spot], { left_mm, right_mm, top_mm, bottom_mm }: Box): boolean {
  if (from.x_mm <= left_mm && to.x_mm <= left_mm) return false
  if (from.x_mm >= right_mm && to.x_mm >= right_mm) return false
  if (from.y_mm <= top_mm && to.y_mm <= top_mm) return false
  if (from.y_mm >= bottom_mm && to.y_mm >= bottom_mm) return false
  // what is left passes a corner at most: the share of the stretch between both pairs of sides
  const across_mm = to.x_mm - from.x_mm
  const down_mm = to.y_mm - from.y_mm
  let start = 0
  let end = 1
  if (across_mm !== 0) {
    const [atLeft, atRight] = [(left_mm - from.x_mm) / across_mm, (right_mm - from.x_mm) / across_mm]
    start = Math.max(start, Math.min(atLeft, atRight))
    end = Math.min(end, Math.max(atLeft, atRight))
  }
  if (down_mm !== 0) {
    const [atTop, atBottom] = [(top_mm - from.y_mm) / down_mm, (bottom_mm - from.y_mm) / down_mm]
    start = Math.max(start, Math.min(atTop, atBottom))
    end = Math.min(end, Math.max(atTop, atBottom))
  }
  return start < end
}

/** The marks of placed labels: leader with a dot, paper under the lettering, circle, lettering. */
export function labelMarks({ placed }: Labelling): readonly Mark[] {
  return placed.flatMap(({ request, box, leader }) => {
    const middle = { x_mm: (box.left_mm + box.right_mm) / 2, y_mm: (box.top_mm + box.bottom_mm) / 2 }
    const line: readonly Mark[] = leader ? [{ kind: 'line', layer: 'dimension', points: leader }] : []
    if (!request.circled) return [...line, blank(box), ...linesAround(request.text, middle)]
    const dot: Mark = { kind: 'circle', layer: 'thing', centre: request.at, radius_mm: 0.45, fill: 'ink' }
    const paper: Mark = { kind: 'circle', layer: 'halo', centre: request.at, radius_mm: 0.3, fill: 'paper' } // under the dot, where it lies on hatching
    return [paper, ...line, dot, ...letterInCircle(request.text, middle)]
  })
}

function linesAround(text: string, middle: Spot): readonly Lettering[] {
  const lines = labelLines(text)
  return lines.map((line, i) => {
    const y_mm = baselineAround(middle.y_mm, LETTERING_MM.label) + (i - (lines.length - 1) / 2) * LINE_MM
    return lettering(line, { x_mm: middle.x_mm, y_mm }, LETTERING_MM.label, { anchor: 'middle' })
  })
}

/** A pocket's letter as it stands on the drawing and in the key. */
export function letterInCircle(letter: string, middle: Spot): readonly Mark[] {
  const at = { x_mm: middle.x_mm, y_mm: baselineAround(middle.y_mm, LETTERING_MM.label) }
  const extra_mm = Math.max(0, textWidth_mm(letter, LETTERING_MM.label, true) + 1.6 - 2 * LETTER_RADIUS_MM)
  const text = lettering(letter, at, LETTERING_MM.label, { anchor: 'middle', bold: true })
  if (extra_mm === 0) return [{ kind: 'circle', layer: 'thing', centre: middle, radius_mm: LETTER_RADIUS_MM, fill: 'paper' }, text]
  return [{ kind: 'area', layer: 'thing', fill: 'paper', rings: [capsule(middle, extra_mm / 2)] }, text]
}

function capsule(middle: Spot, half_mm: number): readonly Spot[] {
  return Array.from({ length: 32 }, (_, i) => {
    const angle_rad = ((i + 0.5) * Math.PI) / 16
    const side = Math.cos(angle_rad) > 0 ? half_mm : -half_mm
    return { x_mm: middle.x_mm + side + LETTER_RADIUS_MM * Math.cos(angle_rad), y_mm: middle.y_mm + LETTER_RADIUS_MM * Math.sin(angle_rad) }
  })
}

/** Paper under lettering, so that a thin line does not run through it. */
export function blank(box: Box): Mark {
  const { left_mm, top_mm, right_mm, bottom_mm } = box
  return {
    kind: 'area',
    layer: 'text',
    outline: false,
    fill: 'paper',
    rings: [
      [
        { x_mm: left_mm, y_mm: top_mm },
        { x_mm: right_mm, y_mm: top_mm },
        { x_mm: right_mm, y_mm: bottom_mm },
        { x_mm: left_mm, y_mm: bottom_mm },
      ],
    ],
  }
}
