import { CAUTION, titleWords } from '../wording/sheet-words.ts'
import { lettering, paragraph, shortened, textWidth_mm } from './lettering.ts'
import { type Box, corners, LETTERING_MM, type Mark, type Spot } from './model.ts'

export const TITLE_BLOCK_MM = 30
const LABEL_MM = 15

/** The strip along the lower edge: name, verdict, what the drawing shows, a scale bar. */
export function titleBlock(words: ReturnType<typeof titleWords>, strip: Box, scale: number): readonly Mark[] {
  const width_mm = strip.right_mm - strip.left_mm
  const middle_mm = strip.left_mm + width_mm * 0.36
  const right_mm = strip.right_mm - Math.max(58, width_mm * 0.26)
  return [
    { kind: 'area', layer: 'frame', fill: 'none', rings: [corners(strip)] },
    ...[middle_mm, right_mm].map((x_mm): Mark => ({ kind: 'line', layer: 'frame', points: [{ x_mm, y_mm: strip.top_mm }, { x_mm, y_mm: strip.bottom_mm }] })),
    ...nameMarks(words, { x_mm: strip.left_mm + 3, y_mm: strip.top_mm }, middle_mm - strip.left_mm - 6),
    ...tableMarks(words.lines, { x_mm: middle_mm + 3, y_mm: strip.top_mm }, right_mm - middle_mm - 6),
    ...scaleBar({ x_mm: right_mm + 3, y_mm: strip.top_mm + 8 }, strip.right_mm - right_mm - 6, scale),
    ...paragraph(CAUTION, 2.5, strip.right_mm - right_mm - 6).map((line, i) => lettering(line, { x_mm: right_mm + 3, y_mm: strip.top_mm + 17 + i * 3.2 }, 2.5)),
  ]
}

function nameMarks({ name, note, verdict }: ReturnType<typeof titleWords>, { x_mm, y_mm }: Spot, width_mm: number): readonly Mark[] {
  const large = textWidth_mm(name, LETTERING_MM.title, true) <= width_mm
  const names = large ? [name] : paragraph(name, LETTERING_MM.heading, width_mm, true).slice(0, 2)
  const under = [...paragraph(verdict, LETTERING_MM.note, width_mm).slice(0, 2), ...(note ? [shortened(note, LETTERING_MM.note, width_mm)] : [])]
  const nameEnd_mm = y_mm + (large ? 9 : 6.5 + (names.length - 1) * 5.2)
  return [
    ...names.map((line, i) => lettering(line, { x_mm, y_mm: (large ? y_mm + 9 : y_mm + 6.5) + i * 5.2 }, large ? LETTERING_MM.title : LETTERING_MM.heading, { bold: true })),
    ...under.map((line, i) => lettering(line, { x_mm, y_mm: nameEnd_mm + 6 + i * 4.7 }, LETTERING_MM.note)),
  ]
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
function scaleBar({ x_mm, y_mm }: Spot, width_mm: number, scale: number): readonly Mark[] {
  const part_mm = partOfBar(width_mm - 8, scale)
  const parts = [0, 1, 2, 3].filter((i) => (i + 1) * part_mm / scale <= width_mm - 8)
  const at = (i: number): number => x_mm + i * part_mm / scale
  return [
    ...parts.map((i): Mark => ({
      kind: 'area', layer: 'dimension', fill: i % 2 === 0 ? 'ink' : 'paper',
      rings: [corners({ left_mm: at(i), right_mm: at(i + 1), top_mm: y_mm, bottom_mm: y_mm + 1.6 })],
    })),
    lettering('0', { x_mm: at(0), y_mm: y_mm - 1.4 }, 3.1),
    lettering('scale bar of the plan', { x_mm: at(0), y_mm: y_mm + 5 }, 2.5),
    lettering(`${parts.length * part_mm / 1000} m`, { x_mm: at(parts.length), y_mm: y_mm - 1.4 }, 3.1, { anchor: 'middle' }),
  ]
}

function partOfBar(width_mm: number, scale: number): number {
  const rounds_mm = [50_000, 20_000, 10_000, 5000, 2000, 1000, 500, 250, 100]
  return rounds_mm.find((part_mm) => 2 * part_mm / scale <= width_mm) ?? 100
}
