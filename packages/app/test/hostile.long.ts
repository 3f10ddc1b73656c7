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
    expect(await traces()).toEqual([])
    await page.evaluate(() => {
      const base = document.createElement('base')
      document.body.append(base)
      const image = document.createElement('img')
      image.src = '//hostile.invalid/a.png'
      document.body.append(image)
    })
    await expect(page.evaluate(() => document.body.setAttribute('onload', 'globalThis.hit=1'))).rejects.toThrow(/TrustedScript/)
    await expect.poll(async () => (await traces()).join('\n')).toMatch(/policy: img-src/)
    await expect.poll(async () => (await traces()).join('\n')).toMatch(/policy: require-trusted-types-for/)
    expect(await traces()).toContain('an element')
    expect(await traces()).not.toContain('a script') // the policy held it up
    await page.evaluate(() => Object.assign(globalThis, { hit: 1 }))
    expect(await traces()).toContain('a script')
    await page.evaluate(() => alert('let in'))
    expect(await traces()).toContain('dialog: let in')
    await context.close()
  })
})
