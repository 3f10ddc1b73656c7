import { dangerTerms } from './de-terms-dangers.ts'
import { doorTerms } from './de-terms-door.ts'
import { judgingTerms } from './de-terms-judging.ts'
import { trafficTerms } from './de-terms-traffic.ts'
import type { enTerms } from './en-terms.ts'

export const deTerms: typeof enTerms = { ...doorTerms, ...judgingTerms, ...trafficTerms, ...dangerTerms }
