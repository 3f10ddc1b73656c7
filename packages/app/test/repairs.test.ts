import { describe, expect, it } from 'vitest'
import { appPage, openDemo } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(() => builtApp())

describe('repairs of a failing finding', () => {
  it('are searched for on demand, offered as buttons, and written into the door by one edit that can be undone', async () => {
    const { page: on, context, complaints } = await appPage(at.browser, at.served.url)
    await openDemo(on, /Freezer door/)
    const failing = on.locator('.finding[data-verdict="fail"]').filter({ hasText: 'sets off field' })
    await failing.getByRole('button', { name: /^search for repairs/ }).click()
    const offer = failing.getByRole('button', { name: /^Write it into the door/ }).first()
    await offer.waitFor({ timeout: 60_000 })
    const said = (await offer.getAttribute('aria-label')) ?? ''
    expect(said).toMatch(/farther from the leaf|lean|lower|higher/i)
    await offer.click()
    await on.locator('.repairs').waitFor({ state: 'detached' })
    await failing.waitFor({ state: 'detached', timeout: 30_000 })
    await on.getByRole('button', { name: /^undo/i }).first().click()
    await failing.waitFor({ timeout: 30_000 })
    expect(complaints).toEqual([])
    await context.close()
  }, 120_000)

  it('can be stopped, and the worker ends', async () => {
    const { page: on, context, complaints } = await appPage(at.browser, at.served.url)
    await openDemo(on, /Freezer door/)
    const failing = on.locator('.finding[data-verdict="fail"]').filter({ hasText: 'go unseen in zone' }).first()
    const search = failing.getByRole('button', { name: /^search for repairs/ })
    await search.waitFor()
    const before = on.workers().length
    await search.click()
    await failing.getByRole('button', { name: 'stop' }).click()
    await failing.locator('.repairs-trying').waitFor({ state: 'detached' })
    await expect.poll(() => on.workers().length, { timeout: 10_000 }).toBe(before)
    expect(complaints).toEqual([])
    await context.close()
  }, 120_000)
})
