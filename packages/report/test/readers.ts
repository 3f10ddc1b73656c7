import { english } from '../src/wording/english.ts'
import { german } from '../src/wording/german.ts'
import type { Reader } from '../src/wording/language.ts'

export const METRIC: Reader = { units: 'metric', language: english }
export const FEET: Reader = { units: 'feet-inches', language: english }
export const GERMAN: Reader = { units: 'metric', language: german }
