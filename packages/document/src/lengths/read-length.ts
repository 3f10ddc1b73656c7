import type { Issue } from '../issue.ts'
import { shownText } from '../shown.ts'

export type LengthUnits = 'metric' | 'feet-inches'

export type LengthResult =
  | { readonly ok: true; readonly mm: number; readonly typed: { readonly text: string; readonly units: LengthUnits } }
  | { readonly ok: false; readonly issue: Issue }

/** A ratio of whole numbers, so that 94 1/2 in is 2400.3 mm and not 2400.2999999999997 mm. */
interface Ratio {
  readonly over: bigint
  readonly under: bigint
}
interface Quantity {
  readonly number: Ratio
  readonly fraction: boolean
  /** Digits after a comma or point; undefined without one. */
  readonly decimals: number | undefined
}

const LARGEST_MM = 1_000_000
const METRIC: Readonly<Record<string, Ratio>> = {
  mm: { over: 1n, under: 1n },
  cm: { over: 10n, under: 1n },
  m: { over: 1000n, under: 1n },
}
const INCH: Ratio = { over: 127n, under: 5n } // 25.4 mm: international yard and pound agreement, 1959
const FOOT: Ratio = { over: 1524n, under: 5n } // 12 in

const SIGNS = { '½': '1/2', '¼': '1/4', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' } as const
const NUMBER = String.raw`(?:\d{1,9}(?: \d{3})*(?:[.,]\d{1,6})?|[.,]\d{1,6})`
const FRACTION = String.raw`\d{1,6}/0{0,2}[1-9]\d{0,3}`
const AMOUNT = `(?:${FRACTION}|${NUMBER}(?:[ -]${FRACTION})?)`
const METRIC_FORM = new RegExp(`^(${AMOUNT}) ?(mm|cm|m)$`)
const INCH_FORM = new RegExp(`^(${AMOUNT}) ?(?:in|inch|inches|")$`)
const FEET_FORM = new RegExp(`^(${AMOUNT}) ?(?:ft|foot|feet|')(?:[ -]{0,3}(${AMOUNT}) ?(?:in|inch|inches|")?)?$`)
const BARE_FORM = new RegExp(`^(${AMOUNT})$`)

/**
 * A length as people type or read it off a tape: `2400`, `2.4 m`, `2,4 m`, `94 1/2 in`, `7' 10 1/2"`.
 *
 * A bare number is mm, or inches where `units` says feet and inches. Whatever could mean two lengths is asked back instead of guessed:
 * `2,400` (2.4 or 2400?), `94 1/2` in metric (a fraction of a millimetre?), inches of 12 and more behind feet.
 *
 * @returns mm, correctly rounded once from the exact ratio
 */
export function readLength(text: string, { units = 'metric' }: { readonly units?: LengthUnits } = {}): LengthResult {
  const refuse = (expected: string, repair: string): LengthResult => ({
    ok: false,
    issue: { code: 'not-a-length', path: 'length', expected, got: shownText(text), repair },
  })
  if (text.length > 60) return refuse('a length such as "2400", "2.4 m" or "94 1/2 in"', 'type the length alone')
  const tidy = tidied(text)
  const negative = tidy.startsWith('-')
  const found = parts(negative ? tidy.slice(1).trimStart() : tidy, units)
  if (found === undefined) return refuse('a length such as "2400", "2.4 m", "94 1/2 in" or 7\' 10 1/2"', 'type the number and its unit')
  if ('unclear' in found) return refuse(found.unclear, found.repair)
  const size_mm = Number(found.mm.over) / Number(found.mm.under)
  if (size_mm > LARGEST_MM) return refuse(`a length of at most ${LARGEST_MM / 1000} m`, 'check the unit')
  return { ok: true, mm: negative && size_mm > 0 ? -size_mm : size_mm, typed: { text: text.trim(), units: found.units } }
}

type Found = { readonly mm: Ratio; readonly units: LengthUnits } | { readonly unclear: string; readonly repair: string }

function parts(text: string, units: LengthUnits): Found | undefined {
  const metric = METRIC_FORM.exec(text)
  if (metric !== null) return inMetric(amount(metric[1]), metric[2] ?? 'mm')
  const feet = FEET_FORM.exec(text)
  if (feet !== null) return inFeet(amount(feet[1]), feet[2] === undefined ? undefined : amount(feet[2]))
  const inches = INCH_FORM.exec(text) ?? (units === 'feet-inches' ? BARE_FORM.exec(text) : null)
  if (inches !== null) return inInches(amount(inches[1]))
  const bare = BARE_FORM.exec(text)
  return bare === null ? undefined : inMetric(amount(bare[1]), 'mm')
}

function inMetric({ number, fraction, decimals }: Quantity, unit: string): Found {
  if (fraction) return { unclear: 'a unit that is divided by halves and quarters', repair: 'write "in" behind a length in inches' }
  if (decimals === 3 && unit !== 'm') return thousandsOrDecimals(unit)
  return sum('metric', times(number, METRIC[unit] ?? INCH))
}

function inInches({ number, decimals, fraction }: Quantity): Found {
  if (decimals !== undefined && fraction) return { unclear: 'decimals or a fraction, not both', repair: 'write 94.5 or 94 1/2' }
  return decimals === 3 ? thousandsOrDecimals('in') : sum('feet-inches', times(number, INCH))
}

function inFeet(feet: Quantity, inches: Quantity | undefined): Found {
  if (inches === undefined) return feet.decimals === 3 ? thousandsOrDecimals('ft') : sum('feet-inches', times(feet.number, FOOT))
  if (feet.fraction || feet.decimals !== undefined) return { unclear: 'whole feet before inches', repair: 'write 7\' 6" or 7.5 ft' }
  if (inches.number.over >= 12n * inches.number.under)
    return { unclear: 'fewer than 12 inches behind feet', repair: 'write 94 in or 7\' 10"' }
  const rest = inInches(inches)
  return 'unclear' in rest ? rest : sum('feet-inches', times(feet.number, FOOT), rest.mm)
}

function thousandsOrDecimals(unit: string): Found {
  return {
    unclear: 'one meaning: three digits behind a comma or point could be thousands or decimals',
    repair: `write 2400 ${unit} or 2.4 ${unit}`,
  }
}

/** The typed text with one kind of space, quote, dash and fraction. */
function tidied(text: string): string {
  return text
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${SIGNS[sign as keyof typeof SIGNS]}`)
    .replace(/⁄/g, '/')
    .replace(/[−–]/g, '-')
    .replace(/[′’]/g, "'")
    .replace(/[″”]|''/g, '"')
    .replace(/\s+/g, ' ')
    .replace(/ ?\/ ?/g, '/')
    .trim()
    .toLowerCase()
}

/** `94`, `94.5`, `1/2`, `94 1/2`, `2 400`. */
function amount(text = ''): Quantity {
  const fraction = /(\d+)\/(\d+)$/.exec(text)
  const whole = (fraction === null ? text : text.slice(0, fraction.index)).replace(/[ -]/g, '').replace(',', '.')
  const [before = '', after] = whole.split('.')
  const number = { over: BigInt(`${before}${after ?? ''}` || '0'), under: 10n ** BigInt(after?.length ?? 0) }
  const decimals = after === undefined ? undefined : after.length
  if (fraction === null) return { number, fraction: false, decimals }
  const part = { over: BigInt(fraction[1] ?? 0), under: BigInt(fraction[2] ?? 1) }
  return { number: plus(number, part), fraction: true, decimals }
}

function sum(units: LengthUnits, ...ratios: readonly Ratio[]): Found {
  return { units, mm: ratios.reduce(plus) }
}
function plus(a: Ratio, b: Ratio): Ratio {
  return reduced(a.over * b.under + b.over * a.under, a.under * b.under)
}
function times(a: Ratio, b: Ratio): Ratio {
  return reduced(a.over * b.over, a.under * b.under)
}
/** In lowest terms: both parts of every length within bounds then lie below 2^53, so that one division rounds once. */
function reduced(over: bigint, under: bigint): Ratio {
  let a = over
  let b = under
  while (b > 0n) [a, b] = [b, a % b]
  return { over: over / a, under: under / a }
}
