import { asXmlText } from '../xml.ts'
import { DASHES_MM, type Fill, type Mark, PENS_MM, type Sheet, type Spot } from './model.ts'

const INK = '#14202b'
const FILLS: Readonly<Record<Fill, string>> = { none: 'none', paper: '#faf8f2', wall: '#efe8d8', unseen: '#f3ecd9', ink: INK }
const FAMILY = "'Atkinson Hyperlegible Next', 'Atkinson Hyperlegible', Arial, 'Liberation Sans', Helvetica, sans-serif"

/** A sheet as an SVG that prints to scale: one unit is one millimetre of paper. Every text is escaped. The same sheet gives the same bytes. */
export function svg(sheet: Sheet): string {
  const { width_mm, height_mm } = sheet
  const size = `width="${n(width_mm)}mm" height="${n(height_mm)}mm" viewBox="0 0 ${n(width_mm)} ${n(height_mm)}"`
  return `${[
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} role="img" font-family="${FAMILY}" fill="${INK}" stroke-linejoin="round" stroke-linecap="butt">`,
    `<title>${asXmlText(sheet.title)}</title>`,
    `<desc>${asXmlText(sheet.description)}</desc>`,
    `<style>@page { size: ${n(width_mm)}mm ${n(height_mm)}mm; margin: 0 }</style>`,
    `<rect width="${n(width_mm)}" height="${n(height_mm)}" fill="${FILLS.paper}"/>`,
    ...sheet.marks.map(written),
    '</svg>',
  ].join('\n')}\n`
}

function written(mark: Mark): string {
  if (mark.kind === 'text') return text(mark)
  const pen = `stroke="${mark.layer === 'halo' ? FILLS.paper : INK}" stroke-width="${PENS_MM[mark.layer]}"`
  const kind = `class="${mark.layer}"`
  if (mark.kind === 'circle')
    return `<circle ${kind} cx="${n(mark.centre.x_mm)}" cy="${n(mark.centre.y_mm)}" r="${n(mark.radius_mm)}" fill="${FILLS[mark.fill]}" ${pen}/>`
  const dash = mark.dash && DASHES_MM[mark.dash]
  const dashed = dash ? ` stroke-dasharray="${dash}"` : ''
  if (mark.kind === 'line') return `<path ${kind} d="${path(mark.points)}" fill="none" ${pen}${dashed}/>`
  const d = mark.rings.map((ring) => `${path(ring)}Z`).join('')
  return `<path ${kind} d="${d}" fill="${FILLS[mark.fill]}" fill-rule="evenodd" ${mark.outline === false ? 'stroke="none"' : pen + dashed}/>`
}

function text({ at, text: words, size_mm, anchor, bold, upward, layer }: Extract<Mark, { kind: 'text' }>): string {
  const turn = upward ? ` transform="rotate(-90 ${n(at.x_mm)} ${n(at.y_mm)})"` : ''
  const weight = bold ? ' font-weight="700"' : ''
  const where = `x="${n(at.x_mm)}" y="${n(at.y_mm)}" font-size="${n(size_mm)}" text-anchor="${anchor}"`
  return `<text class="${layer}" ${where}${weight}${turn} style="font-variant-numeric:tabular-nums">${asXmlText(words)}</text>`
}

function path(points: readonly Spot[]): string {
  return points.map(({ x_mm, y_mm }, i) => `${i === 0 ? 'M' : 'L'}${n(x_mm)} ${n(y_mm)}`).join('')
}

/** Hundredths of a millimetre of paper are finer than any printer; the same number is always written alike. */
function n(value: number): string {
  const text = (Math.round(value * 100) / 100).toString()
  return text === '-0' ? '0' : text
}
