import { english, type Reader } from '@sillsight/report'
import { use, useMemo } from 'react'
import { usePreferences } from '../preferences.ts'
import { SpokenContext } from './words.ts'

/** Whom findings and drawings speak to: the units and the language of this device. */
export function useReader(): Reader {
  const { units } = usePreferences()
  const { language } = use(SpokenContext)
  return useMemo(() => ({ units, language: language ?? english }), [units, language])
}
