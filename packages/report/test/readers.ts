import { english } from '../src/wording/english.ts'
import type { Reader } from '../src/wording/language.ts'

export const METRIC: Reader = { units: 'metric', language: english }
export const FEET: Reader = { units: 'feet-inches', language: english }
