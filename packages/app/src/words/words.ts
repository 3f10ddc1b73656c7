import type { Language } from '@sillsight/report'
import { createContext, use } from 'react'
import type { Terms } from '../help/terms.ts'
import { preferences, usePreferences } from '../preferences.ts'
import { en, type Words } from './en.ts'
import type { Facts } from './en-facts.ts'
import type { Searching } from './en-searching.ts'

/** One language: the words of the app, and those of findings and drawings. */
export interface Spoken {
  readonly words: Words
  /** Undefined for English, whose come after the first sentences. */
  readonly terms: Terms | undefined
  /** Undefined for English, whose come with the screens that say them. */
  readonly facts: Facts | undefined
  /** Undefined for English, whose come with what is opened for them. */
  readonly searching: Searching | undefined
  /** Undefined for English, which comes with the report: the list of doors needs none of it. */
  readonly language: Language | undefined
}

const ENGLISH: Spoken = { words: en, terms: undefined, facts: undefined, searching: undefined, language: undefined }
let german: Promise<Spoken> | undefined
let germanHere: Spoken | undefined

export const SpokenContext = createContext<Spoken>(ENGLISH)

/** Asks for the language that this device is set to before anything is shown in it. */
export async function spokenAhead(): Promise<void> {
  if (preferences().language === 'de') await germanAhead()
}

/** Where it cannot be loaded, English is better than nothing. */
function germanAhead(): Promise<Spoken> {
  german ??= import('./german.ts').then(
    ({ spoken }) => {
      germanHere = spoken
      return spoken
    },
    () => ENGLISH,
  )
  return german
}

/** The language that this device is set to; waits for a language that has to be loaded first. */
export function useSpoken(): Spoken {
  const { language } = usePreferences()
  if (language === 'en') return ENGLISH
  return germanHere ?? use(germanAhead())
}

/** How the chosen language says what a door file was expected to hold. */
export function useIssueWords(): (issue: { readonly path: string; readonly expected: string; readonly got: string }) => string {
  const { words, language } = use(SpokenContext)
  return ({ path, expected, got }) => words.issue(path, language?.expected(expected) ?? expected, language?.got(got) ?? got)
}

/** The words of the chosen language. */
export function useWords(): Words {
  return use(SpokenContext).words
}
