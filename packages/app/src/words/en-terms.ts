import { dangerTerms } from './en-terms-dangers.ts'
import { doorTerms } from './en-terms-door.ts'
import { judgingTerms } from './en-terms-judging.ts'
import { trafficTerms } from './en-terms-traffic.ts'
import type { Term } from './term.ts'

/** The words of the trade, explained. They come after the first sentences: these are read before anybody asks what a word means. */
export const enTerms: Readonly<
  Record<keyof typeof doorTerms | keyof typeof judgingTerms | keyof typeof trafficTerms | keyof typeof dangerTerms, Term>
> = { ...doorTerms, ...judgingTerms, ...trafficTerms, ...dangerTerms }
