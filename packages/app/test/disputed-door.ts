import type { Browser, Page } from 'playwright-core'
import { appPage, openDemo, typed } from './app-page.ts'

const made = new WeakMap<Browser, Promise<Buffer>>()

/** A door in which two people wrote two values for one place, as a file: each on a device of his own. Made once for each browser. */
export function disputedDoor(browser: Browser, url: string): Promise<Buffer> {
  const found = made.get(browser) ?? makeDisputedDoor(browser, url)
  made.set(browser, found)
  return found
}

async function makeDisputedDoor(browser: Browser, url: string): Promise<Buffer> {
  const [mine, theirs] = [await appPage(browser, url), await appPage(browser, url)]
  const handedOut = async (page: Page) => {
    await page.goto(url)
    await page.getByRole('button', { name: /^More about/ }).click()
    const file = page.waitForEvent('download')
    await page.getByRole('menuitem', { name: /^With its history/ }).click()
    const chunks: Buffer[] = []
    for await (const chunk of await (await file).createReadStream()) chunks.push(chunk as Buffer)
    return Buffer.concat(chunks)
  }
  const brought = async (page: Page, buffer: Buffer) => {
    await page.goto(url)
    await page.locator('input[type=file]').setInputFiles({ name: 'door.sillsight', mimeType: 'application/octet-stream', buffer })
    await page.getByRole('status').filter({ hasText: 'brought in' }).waitFor()
  }
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
  await brought(theirs.page, await handedOut(mine.page))
  await write(mine.page, '3455')
  await write(theirs.page, '3470')
  await brought(mine.page, await handedOut(theirs.page))
  const file = await handedOut(mine.page)
  await mine.context.close()
  await theirs.context.close()
  return file
}
