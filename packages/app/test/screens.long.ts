import { describe, expect, it } from 'vitest'
import { builtApp } from './built.ts'
import { LOOKS } from './every-screen.ts'
import { inBrowser } from './in-browser.ts'
import { walked } from './screens.ts'
import { SIZES } from './sizes.ts'

const at = inBrowser(builtApp)

// one of them alone: npm run test:long -- packages/app/test/screens.long.ts -t 'theme sun, language de'
describe('every screen, with every demo door, at 360, 820, 1440 px and at 320 px with text three times as large', () => {
  it.each(LOOKS)(
    'cuts nothing, overlaps nothing, gives a thumb its room and passes axe: theme $theme, language $language',
    { timeout: 3_600_000 },
    async (look) => {
      const { screens, found } = await walked(at, look, SIZES, true)
      expect(found).toEqual([])
      expect(screens).toBeGreaterThan(50)
    },
  )
})
