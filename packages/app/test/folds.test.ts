import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { appPage, openDemo } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'
import { become, DESK, LARGE_TEXT, PHONE, type Size } from './sizes.ts'

const at = inBrowser(() => builtApp())

/** A part of the loading door, in a size; `size` is that of the window from the start. */
async function opened(part: string, size: Size): Promise<Page> {
  const { page } = await appPage(at.browser, at.served.url, size)
  await openDemo(page)
  await page.goto(page.url().replace('judge', part))
  await page.locator(`main[data-part="${part}"]`).waitFor()
  await page.waitForFunction(() => !document.querySelector('[data-coming]'))
  return page
}

const head = (on: Page, title: string) => on.locator('main summary').filter({ has: on.getByRole('heading', { name: title, exact: true }) })
/** Headings of what is open, of the sheet's own folds. */
const unfolded = (on: Page) => on.locator('details.group[open] > summary h2').allTextContents()

describe('what folds on a phone', () => {
  it('is open one at a time, by touch and by key, and is found open again after a reload', async () => {
    const on = await opened('measure', PHONE)
    expect(await unfolded(on)).toEqual(['Opening'])
    await head(on, 'Floor').tap()
    await expect.poll(() => unfolded(on)).toEqual(['Floor'])
    await head(on, 'Leaf').focus()
    await on.keyboard.press('Enter')
    await expect.poll(() => unfolded(on)).toEqual(['Leaf'])
    await on.reload()
    await on.waitForFunction(() => document.querySelector('details.group') && !document.querySelector('[data-coming]'))
    expect(await unfolded(on)).toEqual(['Leaf'])
    await head(on, 'Leaf').tap()
    await expect.poll(() => unfolded(on)).toEqual([])
    await on.context().close()
  })

  it('says folded what is known of it and how much is missing, and stands at the top of the sheet when it is opened', async () => {
    const on = await opened('measure', PHONE)
    await head(on, 'Floor').tap()
    await expect.poll(() => unfolded(on)).toEqual(['Floor'])
    expect(await head(on, 'Opening').textContent()).toContain('3460 mm × 4180 mm')
    expect(await head(on, 'What stands around').textContent()).toContain('bollard')
    const fromTop = async (title: string) =>
      Math.abs(((await head(on, title).boundingBox())?.y ?? 0) - ((await on.locator('.entries').boundingBox())?.y ?? 1e6))
    await expect.poll(() => fromTop('Floor')).toBeLessThan(8)
    await head(on, 'Read at more places than one').tap() // a short one, that would be in sight lower down as well
    await expect.poll(() => fromTop('Read at more places than one')).toBeLessThan(8)
    await on.context().close()
  })

  it('opens for a value that is missing in it', async () => {
    const on = await opened('measure', PHONE)
    const [need = ''] = await on
      .locator('.missing [data-need]')
      .evaluateAll((all) => all.map((each) => each.getAttribute('data-need') ?? ''))
    await head(on, 'Photos').tap()
    expect(await on.locator('.missing [data-need]').nth(3).isVisible()).toBe(false) // the first few, and how many more
    await on.locator('.missing-more > summary').tap()
    expect(await on.locator('.missing [data-need]').nth(3).isVisible()).toBe(true)
    await on.locator(`.missing [data-need="${need}"]`).tap()
    await on.locator('main [data-led]:focus').waitFor()
    expect(await on.locator('details[open] [data-led]:focus').isVisible()).toBe(true)
    expect(await unfolded(on)).toHaveLength(1)
    await on.context().close()
  })

  it('shows the worst findings, and the others by their number', async () => {
    const on = await opened('judge', PHONE)
    await on.locator('.finding').first().waitFor()
    expect(await on.locator('.finding[data-verdict="fail"]').first().isVisible()).toBe(true)
    expect(await on.locator('.finding[data-verdict="pass"]').first().isVisible()).toBe(false)
    await head(on, 'in order').tap()
    await expect.poll(() => on.locator('.finding[data-verdict="pass"]').first().isVisible()).toBe(true)
    expect(await on.locator('.finding[data-verdict="fail"]').first().isVisible()).toBe(false)
    await on.context().close()
  })

  it('stands open on a desk', async () => {
    const on = await opened('measure', DESK)
    expect(await on.locator('details.group:not(.chapter):not([open])').count()).toBe(0)
    await on.context().close()
  })
})

describe('the tape', () => {
  it('shows the part that one is in, also when text is made large afterwards', async () => {
    const on = await opened('fit', { ...LARGE_TEXT, text_percent: 100 })
    const inSight = () =>
      on.locator('.tape').evaluate((tape) => {
        const [blade, here] = [tape, tape.querySelector('[aria-current]')].map((each) => each?.getBoundingClientRect())
        return blade && here
          ? Math.min(here.right, blade.right) - Math.max(here.left, blade.left) >= Math.min(here.width, blade.width) - 1
          : false
      })
    expect(await inSight()).toBe(true)
    await become(on, LARGE_TEXT)
    expect(await inSight()).toBe(true)
    await become(on, { ...LARGE_TEXT, width: 300 })
    expect(await inSight()).toBe(true)
    await on.context().close()
  })
})
