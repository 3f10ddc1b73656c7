import { describe, expect, it } from 'vitest'
import { builtApp } from './built.ts'
import type { Look } from './every-screen.ts'
import { inBrowser } from './in-browser.ts'
import { walked } from './screens.ts'
import { PHONE } from './sizes.ts'

const at = inBrowser(builtApp)

/** Both languages once; dark is paper in other colours, which axe looks at in passing. The long run has each theme in each language and size. */
const LOOKS: readonly Look[] = [
  { theme: 'paper', language: 'en' },
  { theme: 'sun', language: 'de' },
]

describe('every screen on a phone', () => {
  it.each(LOOKS)(
    'cuts nothing, overlaps nothing, gives a thumb its room and passes axe: theme $theme, language $language',
    async (look) => {
      const { screens, found } = await walked(at, look, [PHONE], false)
      expect(found).toEqual([])
      expect(screens).toBeGreaterThan(30)
    },
    600_000, // only ends what hangs, however busy the machine is
  )
})
