import { german } from '@sillsight/report'
import { de } from './de.ts'
import { deFacts } from './de-facts.ts'
import { deSearching } from './de-searching.ts'
import { deTerms } from './de-terms.ts'
import type { Spoken } from './words.ts'

export const spoken: Spoken = { words: de, terms: deTerms, facts: deFacts, searching: deSearching, language: german }
