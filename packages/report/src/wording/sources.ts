import type { Basis, Confirmation, Source } from '@sillsight/engine'
import type { Reader } from './language.ts'
import { plain } from './plain.ts'

/** The basis of a value in words. What was once from memory and is confirmed says by whom. */
export function basisWords(basis: Basis, confirmed: Confirmation | undefined, { language: { sources } }: Reader): string {
  return confirmed ? sources.confirmed(plain(confirmed.by), plain(confirmed.on)) : sources.basis[basis]
}

/** Document, edition and clause as far as they are known, then the basis: "EXAMPLE 1, edition 2024, clause 4.6.2 (published)". */
export function sourceWords(source: Source, confirmed: Confirmation | undefined, reader: Reader): string {
  const { sources } = reader.language
  const { document, edition, clause } = confirmed ?? source
  const cited = [document, edition && sources.edition(edition), clause && sources.clause(clause)]
    .filter((part): part is string => Boolean(part))
    .map(plain)
  const basis = basisWords(source.basis, confirmed, reader)
  return cited.length > 0 ? `${cited.join(', ')} (${basis})` : basis
}

/** Whether a value of this basis still needs somebody to hold it against its page. */
export function isUnconfirmed(basis: Basis, confirmed?: Confirmation): boolean {
  return basis === 'from memory' && confirmed === undefined
}
