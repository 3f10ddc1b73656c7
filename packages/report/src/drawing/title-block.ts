import type { titleWords } from '../wording/sheet-words.ts'
import { lettering, paragraph, shortened } from './lettering.ts'
import { type Box, corners, LETTERING_MM, type Mark, type Spot } from './model.ts'

export const TITLE_BLOCK_MM = 30
const LABEL_MM = 15

/** The strip along the lower edge: name, verdict, what the drawing shows, and a scale bar where it is drawn to scale. */
export function titleBlock(words: ReturnType<typeof titleWords>, strip: Box, scale: number | undefined): readonly Mark[] {
  const width_mm = strip.right_mm - strip.left_mm
  const middle_mm = strip.left_mm + width_mm * 0.38
  const right_mm = strip.right_mm - Math.max(54, width_mm * 0.26)
  return [
    { kind: 'area', layer: 'frame', fill: 'none', rings: [corners(strip)] },
    ...[middle_mm, right_mm].map(
      (x_mm): Mark => ({
        kind: 'line',
        layer: 'frame',
        points: [
          { x_mm, y_mm: strip.top_mm },
          { x_mm, y_mm: strip.bottom_mm },
        ],
      }),
    ),
    ...nameMarks(words, { x_mm: strip.left_mm + 3, y_mm: strip.top_mm }, middle_mm - strip.left_mm - 6),
    ...tableMarks(words.lines, { x_mm: middle_mm + 3, y_mm: strip.top_mm }, right_mm - middle_mm - 6),
    ...(scale === undefined ? [] : scaleBar({ x_mm: right_mm + 3, y_mm: strip.top_mm + 7 }, strip.right_mm - right_mm - 6, scale, words)),
    ...paragraph(words.caution, 2.5, strip.right_mm - right_mm - 6).map((line, i) =>
      lettering(line, { x_mm: right_mm + 3, y_mm: strip.top_mm + (scale === undefined ? 6 : 15.6) + i * 3.1 }, 2.5),
    ),
  ]
}

/** The name as large as it fits on two lines, then the verdicts and the note as far as there is room. */
function nameMarks({ name, note, verdict }: ReturnType<typeof titleWords>, { x_mm, y_mm }: Spot, width_mm: number): readonly Mark[] {
  const { size_mm, lines } = nameLines(name, width_mm)
  const first_mm = y_mm + 2 + size_mm
  const after_mm = first_mm + (lines.length - 1) * size_mm * 1.2 + 6
  // smaller before anything is left out
  const sizes_mm = [LETTERING_MM.note, 3.1, 2.7]
  const fitting = sizes_mm.map((note_mm) => ({
    note_mm,
    line_mm: note_mm * 1.3,
    under: [verdict, ...(note ? [note] : [])].flatMap((text) => paragraph(text, note_mm, width_mm)),
  }))
  const roomFor = (line_mm: number) => Math.floor((y_mm + TITLE_BLOCK_MM - 1.5 - after_mm) / line_mm) + 1
  const { note_mm, line_mm, under } = fitting.find((each) => each.under.length <= roomFor(each.line_mm)) ??
    fitting[fitting.length - 1] ?? { note_mm: LETTERING_MM.note, line_mm: 4.6, under: [] }
  return [
    ...lines.map((line, i) => lettering(line, { x_mm, y_mm: first_mm + i * size_mm * 1.2 }, size_mm, { bold: true })),
    ...under.slice(0, roomFor(line_mm)).map((line, i) => lettering(line, { x_mm, y_mm: after_mm + i * line_mm }, note_mm)),
  ]
}

function nameLines(name: string, width_mm: number): { readonly size_mm: number; readonly lines: readonly string[] } {
  const sizes_mm = [LETTERING_MM.title, LETTERING_MM.heading, LETTERING_MM.note]
  for (const size_mm of sizes_mm) {
    const lines = paragraph(name, size_mm, width_mm, true)
    if (lines.length <= (size_mm === LETTERING_MM.title ? 1 : 2)) return { size_mm, lines }
  }
  const [first = '', ...rest] = paragraph(name, LETTERING_MM.note, width_mm, true)
  return { size_mm: LETTERING_MM.note, lines: [first, shortened(rest.join(' '), LETTERING_MM.note, width_mm, true)] }
}

function tableMarks(lines: readonly (readonly [string, string])[], { x_mm, y_mm }: Spot, width_mm: number): readonly Mark[] {
  return lines.flatMap(([label, value], i) => {
    const baseline_mm = y_mm + 5.2 + i * 4.5
    return [
      lettering(label, { x_mm, y_mm: baseline_mm }, 3.1),
      lettering(shortened(value, 3.1, width_mm - LABEL_MM), { x_mm: x_mm + LABEL_MM, y_mm: baseline_mm }, 3.1),
    ]
  })
}

/** Alternating stretches of a round length, so that a copy that was shrunk still measures. */
function scaleBar({ x_mm, y_mm }: Spot, width_mm: number, scale: number, words: ReturnType<typeof titleWords>): readonly Mark[] {
  const part_mm = partOfBar(words.barParts_mm, width_mm - 8, scale)
  const parts = [0, 1, 2, 3].filter((i) => ((i + 1) * part_mm) / scale <= width_mm - 8)
  const at = (i: number): number => x_mm + (i * part_mm) / scale
  return [
    ...parts.map(
      (i): Mark => ({
        kind: 'area',
        layer: 'dimension',
        fill: i % 2 === 0 ? 'ink' : 'paper',
        rings: [corners({ left_mm: at(i), right_mm: at(i + 1), top_mm: y_mm, bottom_mm: y_mm + 1.6 })],
      }),
    ),
    lettering('0', { x_mm: at(0), y_mm: y_mm - 1.4 }, 3.1),
    lettering(words.scaleBar, { x_mm: at(0), y_mm: y_mm + 4.6 }, 2.5),
    lettering(words.barLength(parts.length * part_mm), { x_mm: at(parts.length), y_mm: y_mm - 1.4 }, 3.1, { anchor: 'middle' }),
  ]
}

function partOfBar(parts_mm: readonly number[], width_mm: number, scale: number): number {
  return parts_mm.find((part_mm) => (2 * part_mm) / scale <= width_mm) ?? parts_mm[parts_mm.length - 1] ?? 100
}
