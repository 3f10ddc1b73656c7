import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { describe, expect, it } from 'vitest'
import { builtApp } from './built.ts'
import { become, everyScreen, SIZES, THEMES, TOUCH_PX } from './every-screen.ts'
import { inBrowser } from './in-browser.ts'
import { pageFaults } from './page-faults.ts'

const at = inBrowser(builtApp)
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

describe('every screen and everything that opens on it', () => {
  const [phone, , , large] = SIZES
  it('cuts nothing, overlaps nothing and gives a thumb its room, on a phone and at 320 px with text three times as large', async () => {
    const found: string[] = []
    let screens = 0
    await everyScreen(
      at.browser,
      at.served.url,
      'sun',
      async (name, page) => {
        screens++
        for (const size of [phone, large]) {
          if (!size) throw new Error('both sizes must be there')
          await become(page, size)
          found.push(...(await pageFaults(page, TOUCH_PX.sun)).map((fault) => `${name}, ${size.width} px: ${fault}`))
        }
      },
      { searched: false },
    )
    expect(screens).toBeGreaterThan(25)
    expect(found).toEqual([])
  })
  it.each(THEMES)('has nothing that axe objects to, in the theme %s', async (theme) => {
    const found: string[] = []
    await everyScreen(
      at.browser,
      at.served.url,
      theme,
      async (name, page) => {
        // the page's own policy lets no foreign script in: axe comes by the debugger
        await page.evaluate(axe)
        found.push(
          ...(await page.evaluate(async (called) => {
            const { run } = (
              globalThis as unknown as { axe: { run: () => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }
            ).axe
            const { violations } = await run()
            return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${called}: ${id}: ${html.slice(0, 160)}`))
          }, name)),
        )
      },
      { searched: false },
    )
    expect(found).toEqual([])
  })
})
