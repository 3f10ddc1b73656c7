import { describe, expect, it } from 'vitest'
import { builtApp } from './built.ts'
import { watched, writtenEverywhere } from './hostile.ts'
import { HOSTILE } from './hostile-strings.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(builtApp)

describe('hostile strings, at length', () => {
  it('run nowhere in any text field of the app: all 500', { timeout: 3_600_000 }, async () => {
    const { count, found } = await writtenEverywhere(at.browser, at.served.url, HOSTILE)
    expect(count).toBeGreaterThan(16 * 500)
    expect(found).toEqual([])
  })
  it('would be noticed: a page that lets one in is told', async () => {
    const { page, context, traces } = await watched(at.browser, at.served.url)
    await page.evaluate(() => {
      const image = document.createElement('img')
      const base = document.createElement('base')
      document.body.append(base)
      image.src = '//hostile.invalid/a.png'
      document.body.append(image)
    })
    await page.waitForTimeout(300)
    const told = (await traces()).join('\n')
    expect(told).toMatch(/policy: img-src/)
    expect(told).toContain('an element')
    await context.close()
  })
})
