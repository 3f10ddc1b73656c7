import type { Judgement } from '../model/finding.ts'

/**
 * A judgement as one text that is the same wherever it was computed, for hashing: JSON with sorted keys and no spaces, numbers as JavaScript
 * prints them (the shortest digits that lead back to the same double), -0 as 0, keys without a value left out. JSON has no infinity and
 * no NaN; here they are `{"number":"Infinity"}` and the like, so that nothing is lost.
 */
export function canonicalText(judgement: Judgement): string {
  return text(judgement)
}

function text(value: unknown): string {
  if (typeof value === 'number') return numberText(value)
  if (Array.isArray(value)) return `[${value.map((item) => text(item ?? null)).join(',')}]`
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  const entries = Object.entries(value).filter(([, held]) => held !== undefined)
  return `{${entries
    .sort(byKey)
    .map(([key, held]) => `${JSON.stringify(key)}:${text(held)}`)
    .join(',')}}`
}

function numberText(value: number): string {
  if (!Number.isFinite(value)) return `{"number":"${value}"}`
  return String(value === 0 ? 0 : value)
}

function byKey([a]: readonly [string, unknown], [b]: readonly [string, unknown]): number {
  return a < b ? -1 : a > b ? 1 : 0
}
