import type { Paint, Palette } from './options.ts'

/** What a character stands for; later kinds are drawn over earlier ones. */
export type Ink = 'blank' | 'zone' | 'unseen' | 'wall' | 'thing' | 'leaf' | 'body' | 'sensor' | 'letter'

/** A rectangle of characters that is drawn on, row 0 at the top. Places outside of it are ignored. */
export interface Canvas {
  readonly width: number
  readonly height: number
  readonly signs: string[][]
  readonly inks: Ink[][]
}

export function emptyCanvas(width: number, height: number): Canvas {
  return {
    width,
    height,
    signs: Array.from({ length: height }, () => Array.from({ length: width }, () => ' ')),
    inks: Array.from({ length: height }, () => Array.from({ length: width }, (): Ink => 'blank')),
  }
}

export function put({ signs, inks }: Canvas, column: number, row: number, sign: string, ink: Ink): void {
  const signRow = signs[row]
  const inkRow = inks[row]
  if (!signRow || !inkRow || column < 0 || column >= signRow.length) return
  signRow[column] = sign
  inkRow[column] = ink
}

export function inkAt({ inks }: Canvas, column: number, row: number): Ink | undefined {
  return inks[row]?.[column]
}

/** Corners and sides of a frame: upper left, upper right, lower left, lower right, level, upright, and both ends of a frame one row high. */
export interface FrameSigns {
  readonly corners: readonly [string, string, string, string]
  readonly level: string
  readonly upright: string
  readonly ends: readonly [string, string]
}

/** A frame; what lies inside of it stays. One that is less than three columns wide is a column of its upright sides. */
export function frame(
  canvas: Canvas,
  [left, top, right, bottom]: readonly [number, number, number, number],
  signs: FrameSigns,
  ink: Ink,
): void {
  for (let row = top; row <= bottom; row++) {
    for (let column = left; column <= right; column++) {
      const sign = frameSign([left, top, right, bottom], column, row, signs)
      if (sign !== undefined) put(canvas, column, row, sign, ink)
    }
  }
}

function frameSign(
  [left, top, right, bottom]: readonly [number, number, number, number],
  column: number,
  row: number,
  { corners, level, upright, ends }: FrameSigns,
): string | undefined {
  const atSide = column === left ? 0 : column === right ? 1 : undefined
  if (top === bottom) return atSide === undefined ? level : ends[atSide]
  if (row === top) return atSide === undefined ? level : corners[atSide]
  if (row === bottom) return atSide === undefined ? level : corners[atSide === 0 ? 2 : 3]
  return atSide === undefined ? undefined : upright
}

/** The rows as text, each without spaces at its end, painted in runs. */
export function written({ signs, inks }: Canvas, palette: Palette | undefined): readonly string[] {
  return signs.map((row, r) => {
    const end = row.join('').trimEnd().length // each sign is one character
    const runs: { text: string; ink: Ink }[] = []
    for (let column = 0; column < end; column++) {
      const ink = inks[r]?.[column] ?? 'blank'
      const last = runs[runs.length - 1]
      if (last?.ink === ink) last.text += row[column]
      else runs.push({ text: row[column] ?? ' ', ink })
    }
    return runs.map(({ text, ink }) => paintOf(ink, palette)(text)).join('')
  })
}

function paintOf(ink: Ink, palette: Palette | undefined): Paint {
  if (palette && ink === 'unseen') return palette.verdict.fail
  if (palette && (ink === 'letter' || ink === 'body' || ink === 'sensor')) return palette.strong
  if (palette && (ink === 'zone' || ink === 'wall')) return palette.quiet
  return (text) => text
}
