/**
 * What a word of the trade means, and how it is written in sentences. Where several fit, the longest form wins; names in quotation marks are
 * left alone.
 */
export interface Term {
  readonly word: string
  /** As it stands in sentences, in every inflection that occurs. */
  readonly forms: readonly string[]
  readonly says: string
  /** So common that underlining it would only litter: explained in the list of words alone. */
  readonly listed?: true
}
