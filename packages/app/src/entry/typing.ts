/** What the keys of the number pad do to the text. Pure, so that a thumb and a test meet the same pad. */

export type Key = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | 'point' | 'half' | 'quarter' | 'eighth' | 'sixteenth' | Unit
export type Unit = 'ft' | 'in' | 'm' | 'mm'

const FRACTIONS = { half: '1/2', quarter: '1/4', eighth: '1/8', sixteenth: '1/16' } as const
const LARGEST = 40

/** @param decimal the sign before decimals that the language writes */
export function pressed(text: string, key: Key, decimal: string): string {
  const next = after(text, key, decimal)
  return next.length > LARGEST ? text : next
}

function after(text: string, key: Key, decimal: string): string {
  if (key === 'ft') return text === '' ? text : `${withoutUnit(text)}' `
  if (key === 'in') return text === '' ? text : `${withoutUnit(text)}"`
  if (key === 'm' || key === 'mm') return text === '' ? text : `${withoutUnit(text)} ${key}`
  if (key === 'point') return text === '' ? `0${decimal}` : text + decimal
  if (key in FRACTIONS) return withFraction(text, FRACTIONS[key as keyof typeof FRACTIONS])
  return text + key
}

/** A unit that is pressed after another takes its place; feet stay where inches follow. */
function withoutUnit(text: string): string {
  return text.replace(/(?:\s*(?:mm|m|")|')\s*$/, '').trimEnd()
}

/** The same fraction pressed again counts on: 1/16, 2/16, 3/16. A whole number before it keeps its space. */
function withFraction(text: string, fraction: string): string {
  const [, under] = fraction.split('/')
  const again = new RegExp(`(\\d+)/${under}$`).exec(text)
  if (again) {
    const over = Number(again[1]) + 1
    return over < Number(under) ? `${text.slice(0, again.index)}${over}/${under}` : text
  }
  const before = text.replace(/\s*\d+\/\d+$/, '').trimEnd()
  return before === '' ? fraction : `${before} ${fraction}`
}

/** One step back: a whole unit or fraction goes at once. */
export function erased(text: string): string {
  return text.replace(/(?:\s*\d+\/\d+|\s*(?:mm|m)|["']\s*|\s*.)$/, '').trimEnd()
}
