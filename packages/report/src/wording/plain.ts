import type { Reader } from './language.ts'

/** Control characters, and those that turn the reading direction: a door file must not steer a terminal or swap the letters of a name. */
const UNPRINTABLE = /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufffe\uffff]/g
const LONE_SURROGATE = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g

/** A text from a door file as it may be shown: on one line, without characters that do something instead of standing for something. */
export function plain(text: string): string {
  return text.replace(UNPRINTABLE, ' ').replace(LONE_SURROGATE, '\ufffd').replace(/ {2,}/g, ' ').trim()
}

/** A name as it may be shown: one that the program itself gave is said in the reader's language. */
export function called(name: string, { language }: Reader): string {
  return plain(language.given(name))
}

const IN_ASCII: Readonly<Record<string, string>> = {
  '\u00d7': 'x',
  '\u00b2': '2',
  '\u00b0': ' deg',
  '\u00b7': '-',
  '\u2013': '-',
  '\u2014': '-',
  '\u2026': '...',
  '\u00a0': ' ',
  '\u2018': "'",
  '\u2019': "'",
  '\u201c': '"',
  '\u201d': '"',
  '\u00df': 'ss',
  '\u00e6': 'ae',
  '\u00c6': 'AE',
  '\u00f8': 'o',
  '\u00d8': 'O',
  '\u00b1': '+/-',
  '\u2265': '>=',
  '\u2264': '<=',
  '\u221a': 'sqrt',
  '\u03c3': 'sigma',
  '\u03c1': 'rho',
  '\u0142': 'l',
  '\u0141': 'L',
  '\u2192': '->',
}

/** The nearest text of ASCII characters: accents go, signs become words, the rest becomes a question mark. */
export function asAscii(text: string): string {
  const unaccented = text.normalize('NFD').replace(/[\u0300-\u036f]/g, '')
  return unaccented.replace(/[^\n\u0020-\u007e]/gu, (sign) => IN_ASCII[sign] ?? '?')
}

/** How many columns a terminal gives a text: two for wide characters of East Asia and pictures, none for combining marks. */
export function columns(text: string): number {
  let sum = 0
  for (const sign of text) sum += isNarrow(sign.codePointAt(0) ?? 0) ? 1 : columnsOf(sign)
  return sum
}

/** Latin letters, and the quotes, arrows and lines that our own texts are made of. The large classes below take 10 ms to load: only others need them. */
function isNarrow(code: number): boolean {
  return code < 0x300 || (code >= 0x2010 && code < 0x20d0) || (code >= 0x2190 && code < 0x231a) || (code >= 0x2500 && code < 0x25fd)
}

function columnsOf(sign: string): number {
  if (/\p{Mn}/u.test(sign)) return 0
  const wide =
    /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}|[\u{20000}-\u{3fffd}]/u
  return wide.test(sign) ? 2 : 1
}

const HOLDS = '\u00a0'

/** The words of a text at which a line may break: a figure keeps its unit and its thousands, a multiplication sign both its sides. */
export function unbrokenWords(text: string): readonly string[] {
  return text
    .replace(
      /(\d) (?=(?:mm|cm\u00b2|m|m\u00b2|s|%|sq ft|ft\u00b2|per m|pro m|out of|von)(?![\w\u00b2])|\d{3}(?!\d)|\d+\/\d)/g,
      `$1${HOLDS}`,
    )
    .replace(/ \u00d7 /g, `${HOLDS}\u00d7${HOLDS}`)
    .replace(/(\d') (?=\d)/g, `$1${HOLDS}`)
    .split(/[ \n]+/)
    .map((word) => word.replaceAll(HOLDS, ' '))
}

/**
 * Breaks a text into lines of at most `width` columns, at spaces but not within a figure; a word that is longer than a line is cut.
 * @returns at least one line
 */
export function wrapped(text: string, width: number): readonly string[] {
  const most = Math.max(8, Math.floor(width))
  const lines: string[] = []
  let line = ''
  for (const word of unbrokenWords(text).flatMap((each) => pieces(each, most))) {
    const longer = line === '' ? word : `${line} ${word}`
    if (columns(longer) > most && line !== '') {
      lines.push(line)
      line = word
    } else line = longer
  }
  return [...lines, line]
}

function pieces(word: string, most: number): readonly string[] {
  if (columns(word) <= most) return [word]
  const found: string[] = []
  let piece = ''
  for (const sign of word) {
    if (columns(piece + sign) > most) {
      found.push(piece)
      piece = ''
    }
    piece += sign
  }
  return [...found, piece]
}

/** Sentences begin with a capital letter. */
export function capital(text: string): string {
  return text === '' ? text : text.charAt(0).toUpperCase() + text.slice(1)
}
