import { german } from '@sillsight/report'
import { de } from './de.ts'
import type { Spoken } from './words.ts'

export const spoken: Spoken = { words: de, language: german }
