import type { Browser, Page } from 'playwright-core'
import { appPage, bringIn, handedOut, openDemo, typed } from './app-page.ts'

const made = new WeakMap<Browser, Promise<Buffer>>()

/** A door in which two people wrote two values for one place, as a file: each on a device of his own. Made once for each browser. */
export function disputedDoor(browser: Browser, url: string): Promise<Buffer> {
  const found = made.get(browser) ?? makeDisputedDoor(browser, url)
  made.set(browser, found)
  return found
}

async function makeDisputedDoor(browser: Browser, url: string): Promise<Buffer> {
  const [mine, theirs] = [await appPage(browser, url), await appPage(browser, url)]
  const write = async (page: Page, width: string) => {
    await page.goto(url)
    await page.getByRole('link', { name: /Loading door/ }).click()
    await page.locator('.finding').first().waitFor()
    await page.goto(page.url().replace('judge', 'measure'))
    await page.getByRole('button', { name: /^Clear width:/ }).click()
    await typed(page, width)
    await page.waitForFunction(() => document.querySelector('.head-saved')?.textContent?.startsWith('saved'))
  }
  await openDemo(mine.page)
  await bringIn(theirs.page, url, await handedOut(mine.page, url))
  await write(mine.page, '3455')
  await write(theirs.page, '3470')
  await bringIn(mine.page, url, await handedOut(theirs.page, url))
  const file = await handedOut(mine.page, url)
  await mine.context.close()
  await theirs.context.close()
  return file
}
