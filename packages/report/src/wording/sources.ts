import type { Basis, Confirmation, Source } from '@sillsight/engine'
import { plain } from './plain.ts'

const basisInWords: Readonly<Record<Basis, string>> = {
  published: 'published',
  datasheet: 'from the data sheet',
  measured: 'measured',
  'common practice': 'common practice, no source',
  'from memory': 'from memory, not confirmed',
  'our decision': 'our decision',
  invented: 'invented for the demonstration',
}

/** The basis of a value in words. What was once from memory and is confirmed says by whom. */
export function basisWords(basis: Basis, confirmed?: Confirmation): string {
  return confirmed ? `confirmed by ${plain(confirmed.by)} on ${plain(confirmed.on)}` : basisInWords[basis]
}

/** Document, edition and clause as far as they are known, then the basis: "EXAMPLE 1, edition 2024, clause 4.6.2 (published)". */
export function sourceWords(source: Source, confirmed?: Confirmation): string {
  const { document, edition, clause } = confirmed ?? source
  const cited = [document, edition && `edition ${edition}`, clause && `clause ${clause}`]
    .filter((part): part is string => Boolean(part))
    .map(plain)
  const basis = basisWords(source.basis, confirmed)
  return cited.length > 0 ? `${cited.join(', ')} (${basis})` : basis
}

/** Whether a value of this basis still needs somebody to hold it against its page. */
export function isUnconfirmed(basis: Basis, confirmed?: Confirmation): boolean {
  return basis === 'from memory' && confirmed === undefined
}
