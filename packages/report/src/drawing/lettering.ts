import { unbrokenWords } from '../wording/plain.ts'
import type { Box, Lettering, Spot } from './model.ts'

/**
 * Widths of signs in thousandths of the size of the type. They are those of a wide sans-serif, so that whatever family a reader has the
 * lettering stays inside the box that was kept free for it: too large a width errs toward more space.
 */
const WIDTHS: readonly (readonly [signs: string, width: number])[] = [
  ["iIjl.,:;'|!", 340],
  ['frt()[]/ -"\u00b7\u2013', 420],
  ['mMwW%@\u2014\u00a9', 1000],
  ['ABCDEFGHKLNOPQRSTUVXYZ&+=<>\u00d7\u00b1#_~', 800],
]
const OTHER = 640
const WIDEST = 1050
const BOLD = 1.1
/** Above the baseline and below it, in sizes of the type. */
const ASCENT = 0.8
const DESCENT = 0.24

const widthOf = new Map(WIDTHS.flatMap(([signs, width]) => [...signs].map((sign): [string, number] => [sign, width])))

/** The room that a line of lettering needs at most, in mm. */
export function textWidth_mm(text: string, size_mm: number, bold = false): number {
  let sum = 0
  for (const sign of text) sum += widthOf.get(sign) ?? (sign > '\u024f' ? WIDEST : OTHER)
  return (sum / 1000) * size_mm * (bold ? BOLD : 1)
}

/** The box that a line of lettering keeps free around itself. */
export function letteringBox({ at, text, size_mm, anchor, bold, upward }: Lettering): Box {
  const width_mm = textWidth_mm(text, size_mm, bold)
  const before_mm = anchor === 'start' ? 0 : anchor === 'middle' ? width_mm / 2 : width_mm
  const above_mm = ASCENT * size_mm
  const below_mm = DESCENT * size_mm
  if (upward)
    return {
      left_mm: at.x_mm - above_mm,
      right_mm: at.x_mm + below_mm,
      top_mm: at.y_mm + before_mm - width_mm,
      bottom_mm: at.y_mm + before_mm,
    }
  return {
    left_mm: at.x_mm - before_mm,
    right_mm: at.x_mm - before_mm + width_mm,
    top_mm: at.y_mm - above_mm,
    bottom_mm: at.y_mm + below_mm,
  }
}

/** The baseline on which lettering of this size stands in the middle of a height. */
export function baselineAround(middle_mm: number, size_mm: number): number {
  return middle_mm + 0.36 * size_mm
}

/** Lines of a paragraph, at most `width_mm` wide each; a single word may be wider and is then cut with an ellipsis. */
export function paragraph(text: string, size_mm: number, width_mm: number, bold = false): readonly string[] {
  const lines: string[] = []
  for (const word of unbrokenWords(text)) {
    const last = lines[lines.length - 1]
    const longer = last === undefined ? word : `${last} ${word}`
    if (last !== undefined && textWidth_mm(longer, size_mm, bold) <= width_mm) lines[lines.length - 1] = longer
    else lines.push(shortened(word, size_mm, width_mm, bold))
  }
  return lines
}

/** The text, or its beginning and an ellipsis where it is too wide. */
export function shortened(text: string, size_mm: number, width_mm: number, bold = false): string {
  if (textWidth_mm(text, size_mm, bold) <= width_mm) return text
  let kept = [...text]
  while (kept.length > 1 && textWidth_mm(`${kept.join('')}\u2026`, size_mm, bold) > width_mm) kept = kept.slice(0, -1)
  return `${kept.join('')}\u2026`
}

export function lettering(
  text: string,
  at: Spot,
  size_mm: number,
  more: Partial<Pick<Lettering, 'anchor' | 'bold' | 'upward' | 'layer'>> = {},
): Lettering {
  return { kind: 'text', layer: 'text', anchor: 'start', ...more, at, text, size_mm }
}
