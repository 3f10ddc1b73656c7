import type { Basis, Source } from '@sillsight/engine'
import type { FileSource } from '../schema/source.ts'

export const NO_SOURCE: Source = { basis: 'from memory', note: 'the door file gives no source' }

/** Weakest first: a sensor is known as well as the worst known of its values. */
const WEAKEST_FIRST: readonly Basis[] = ['from memory', 'invented', 'our decision', 'common practice', 'datasheet', 'published', 'measured']

/**
 * One source for all values of a sensor: the weakest, with a note of the single values whose source differs.
 *
 * @param general where values without a source of their own come from: the library, the door file
 * @param single by value name
 */
export function weakestSource(general: readonly (FileSource | undefined)[], single: Readonly<Record<string, FileSource>>): Source {
  const ofValues = Object.entries(single).sort(([a], [b]) => (a < b ? -1 : 1))
  const all = [...general.filter((source) => source !== undefined), ...ofValues.map(([, source]) => source)]
  const weakest = [...all].sort((a, b) => rank(a) - rank(b))[0]
  if (weakest === undefined) return NO_SOURCE
  const notes = [weakest.note, ...ofValues.map(([name, source]) => `${name}: ${source.basis}`)].filter((note) => note !== undefined)
  return notes.length === 0 ? weakest : { ...weakest, note: notes.join('; ') }
}

function rank({ basis }: FileSource): number {
  return WEAKEST_FIRST.indexOf(basis)
}
