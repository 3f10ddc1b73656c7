import { readLength, showLength } from '@sillsight/document'
import { figure, type Reader, type Units } from '@sillsight/report'

/** What a figure counts, which decides its keys, its unit and how it is read. */
export type Kind =
  | 'length'
  | 'angle'
  | 'percent'
  | 'seconds'
  | 'metres'
  | 'speed'
  | 'acceleration'
  | 'jerk'
  | 'mass'
  | 'share'
  | 'count'
  | 'temperature'
  | 'volume'
  | 'force'
  | 'volt'
  | 'ohm'
  | 'ampere'
  | 'area'

export type Read = { readonly ok: true; readonly value: number; readonly text: string } | { readonly ok: false; readonly expected: string }

const SUFFIX: Readonly<Record<Exclude<Kind, 'length'>, string>> = {
  angle: '\u00b0',
  percent: ' %',
  seconds: ' s',
  metres: ' m',
  speed: ' m/s',
  acceleration: ' m/s\u00b2',
  jerk: ' m/s\u00b3',
  mass: ' kg',
  share: '',
  count: '',
  temperature: ' \u00b0C',
  volume: ' m\u00b3',
  force: ' N',
  volt: ' V',
  ohm: ' \u03a9',
  ampere: ' A',
  area: ' mm\u00b2',
}

/** A value of the door file as it is shown in a sentence. */
export function shownFigure(value: number, kind: Kind, reader: Reader): string {
  if (kind === 'length') return reader.units === 'metric' ? figure({ value, unit: 'mm' }, reader) : showLength(value, reader.units)
  return `${String(Math.round(value * 1000) / 1000).replace('.', reader.language.decimal)}${SUFFIX[kind]}`
}

/** Whether a length was typed in millimetres, so that nothing of how it was said is lost. */
export function isPlainMm(typed: string): boolean {
  return /^[-\u2212]?\d+(?:\.\d+)?(?: ?mm)?$/.test(typed)
}

/** Whether a length that was typed, in either units, is this one. */
export function says(typed: string, value_mm: number): boolean {
  return (['metric', 'feet-inches'] as const).some((units) => {
    const read = readLength(typed, { units })
    return read.ok && Math.abs(read.mm - value_mm) < 1e-6
  })
}

/** What was typed, as a value of the door file. */
export function readFigure(text: string, kind: Kind, units: Units): Read {
  if (kind === 'length') {
    const read = readLength(text, { units })
    return read.ok ? { ok: true, value: read.mm, text: text.trim() } : { ok: false, expected: read.issue.expected }
  }
  const tidy = text.trim().replace(/\s*(\u00b0C?|%|s|m|m\/s|m\/s\u00b2|m\/s\u00b3|m\u00b3|mm\u00b2|kg|N|V|A|\u03a9|\u2126)$/, '')
  if (!/^[-\u2212]?\d{1,9}([.,]\d{1,6})?$/.test(tidy)) return { ok: false, expected: 'number' }
  const value = Number(tidy.replace('\u2212', '-').replace(',', '.'))
  return kind === 'count' && !Number.isInteger(value) ? { ok: false, expected: 'whole' } : { ok: true, value, text: text.trim() }
}
