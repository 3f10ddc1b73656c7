import { describe, expect, it } from 'vitest'
import { builtApp } from './built.ts'
import type { Look } from './every-screen.ts'
import { inBrowser } from './in-browser.ts'
import { walked } from './screens.ts'
import { PHONE } from './sizes.ts'

const at = inBrowser(builtApp)

/** Each theme once, in one language; the long run has both languages and every size. */
const LOOKS: readonly Look[] = [
  { theme: 'paper', language: 'en' },
  { theme: 'sun', language: 'de' },
  { theme: 'dark', language: 'en' },
]

describe('every screen on a phone', () => {
  it.each(LOOKS)(
    'cuts nothing, overlaps nothing, gives a thumb its room and passes axe: theme $theme, language $language',
    async (look) => {
      const { screens, found } = await walked(at, look, [PHONE], false)
      expect(found).toEqual([])
      expect(screens).toBeGreaterThan(35)
    },
  )
})
