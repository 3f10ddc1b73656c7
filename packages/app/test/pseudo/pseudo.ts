import { english } from '@sillsight/report'
import { en } from '../../src/words/en.ts'
import { enFacts } from '../../src/words/en-facts.ts'
import { enSearching } from '../../src/words/en-searching.ts'
import { enTerms } from '../../src/words/en-terms.ts'
import type { Spoken } from '../../src/words/words.ts'

/** Marks whatever a catalogue says, however deep; what a function is given is marked within what it says. */
function marked<T>(said: T): T {
  if (said === '') return said
  if (typeof said === 'string') return `\u27e6${said}\u27e7` as T
  if (typeof said === 'function') return ((...given: unknown[]) => marked((said as (...given: unknown[]) => unknown)(...given))) as T
  if (Array.isArray(said)) return said.map(marked) as T
  if (typeof said === 'object' && said !== null)
    return Object.fromEntries(Object.entries(said).map(([key, value]) => [key, marked(value)])) as T
  return said
}

/** Takes the place of German in the build for tests: every text is marked, and the page runs from right to left. */
export const spoken: Spoken = {
  words: { ...marked(en), tag: 'ar', direction: 'rtl', decimal: '.' },
  terms: marked(enTerms),
  facts: marked(enFacts),
  searching: marked(enSearching),
  language: { ...marked(english), tag: 'ar', decimal: '.' },
}
