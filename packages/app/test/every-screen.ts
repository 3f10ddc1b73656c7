import type { Browser, Page } from 'playwright-core'
import { addPhoto, appPage, openDemo, typed } from './app-page.ts'

export const THEMES = ['paper', 'sun', 'dark'] as const
export type Theme = (typeof THEMES)[number]

/** The least that a thumb needs, by theme. */
export const TOUCH_PX: Readonly<Record<Theme, number>> = { paper: 48, sun: 64, dark: 48 }

export interface Size {
  readonly width: number
  readonly height: number
  /** Size of the text that somebody asked the browser for. */
  readonly text_percent: number
}
export const SIZES: readonly Size[] = [
  { width: 360, height: 740, text_percent: 100 },
  { width: 820, height: 1180, text_percent: 100 },
  { width: 1440, height: 900, text_percent: 100 },
  { width: 320, height: 640, text_percent: 300 },
]

/** Takes a size on and waits until drawings have followed. */
export async function become(page: Page, { width, height, text_percent }: Size): Promise<void> {
  await page.evaluate((percent) => {
    document.documentElement.style.fontSize = percent === 100 ? '' : `${percent}%`
  }, text_percent)
  await page.setViewportSize({ width, height })
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))))
  await page.waitForTimeout(150) // a drawing asks for its room, and is drawn anew
}

/** Times nothing: only ends what hangs, on a machine that has other things to do. */
const PATIENCE_MS = 120_000

/** A door in which two people wrote two values for one place, as a file: each on a device of his own. */
async function disputedDoor(browser: Browser, url: string): Promise<Buffer> {
  const [mine, theirs] = [await appPage(browser, url), await appPage(browser, url)]
  for (const { page } of [mine, theirs]) page.setDefaultTimeout(PATIENCE_MS)
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

/** Called on each screen while it stands there; `page` may be resized in it. */
export type OnScreen = (name: string, page: Page) => Promise<void>

/**
 * Goes through every screen of the app in one theme, everything that opens included.
 *
 * @param searched whether repairs are searched for too: that takes half a minute
 */
export async function everyScreen(
  browser: Browser,
  url: string,
  theme: Theme,
  on: OnScreen,
  { searched = true }: { readonly searched?: boolean } = {},
): Promise<void> {
  const disputed = await disputedDoor(browser, url)
  const { page, context } = await appPage(browser, url, { width: 1440, height: 900 }, { theme })
  page.setDefaultTimeout(PATIENCE_MS)
  const desk = () => become(page, { width: 1440, height: 900, text_percent: 100 })
  const shown = async (name: string) => {
    await on(name, page)
    await desk()
  }
  const closed = async () => {
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'detached' })
  }
  const pad = async () => page.locator('.pad-figure input').waitFor()

  await page.getByRole('link', { name: 'New door' }).waitFor()
  await shown('doors, none yet')
  await page.getByRole('button', { name: 'How this device shows things' }).click()
  await page.getByRole('dialog').waitFor()
  await shown('settings')
  await closed()
  await page.getByRole('link', { name: 'New door' }).click()
  await page.locator('.first-figure').first().waitFor()
  await shown('new door')
  await page.locator('.first-figure').first().click()
  await pad()
  await shown('new door, number pad')
  await typed(page, '3460')
  await shown('new door, one value')

  await page.goto(url)
  await openDemo(page)
  const address = page.url()
  const part = async (name: string) => {
    await page.goto(address.replace('judge', name))
    await page.locator('main').waitFor()
  }
  await page.waitForFunction(
    () => !document.querySelector('.findings[aria-busy=true]') && document.querySelector('.findings-head p')?.textContent === '',
  )
  await shown('judge')
  await page.getByRole('button', { name: 'show on the drawing' }).first().click()
  await shown('judge, shown on the drawing')
  await page
    .getByRole('button', { name: /^why: / })
    .first()
    .click()
  await page.locator('.why-text').waitFor()
  await shown('judge, why')
  await closed()
  await page.getByRole('button', { name: 'I hold the standard in hand' }).first().click()
  await page.getByRole('dialog').waitFor()
  await shown('judge, held against the page')
  await closed()
  for (const view of ['Elevation', 'Section', '3D']) {
    await page.getByRole('radio', { name: view, exact: true }).click()
    await page.locator(view === '3D' ? '.solid-canvas' : '.drawing').waitFor()
    await shown(`judge, ${view.toLowerCase()}`)
  }
  await page.locator('.solid-row').getByRole('radio').nth(1).click()
  await shown('judge, 3d cut open')
  for (const name of ['measure', 'place', 'fit', 'test', 'hand-over', 'keep']) {
    await part(name)
    if (name === 'measure' || name === 'place') await page.locator('.drawing').waitFor()
    await shown(name)
  }
  await part('measure')
  await page.getByRole('button', { name: /^Clear width:/ }).click()
  await pad()
  await page.locator('.pad-figure input').fill('34600')
  await shown('measure, number pad')
  await closed()
  await page.getByRole('button', { name: 'Say how far it may be off' }).click()
  await addPhoto(page)
  await page.locator('.photos').scrollIntoViewIfNeeded()
  await shown('measure, photo and tolerances')
  await part('place')
  await page.getByRole('button', { name: 'Test body' }).click()
  await shown('place, test body')
  await page.getByRole('button', { name: 'What was done' }).click()
  await page.locator('.history li').first().waitFor()
  await shown('history')
  await page.getByRole('button', { name: 'look at it then' }).last().click()
  await shown('an earlier moment')
  await page.getByRole('button', { name: 'Back to now' }).click()

  if (searched) {
    await page.goto(url)
    await openDemo(page, /Freezer door/)
    const failing = page.locator('.finding[data-verdict="fail"]').filter({ hasText: 'sets off field' })
    await failing.getByRole('button', { name: /^search for repairs/ }).click({ timeout: 120_000 })
    await shown('repairs, searching')
    await failing
      .getByRole('button', { name: /^Write it into the door/ })
      .first()
      .waitFor({ timeout: 240_000 })
    await failing.locator('.repairs').scrollIntoViewIfNeeded()
    await shown('repairs, found')
  }

  await page.goto(url)
  const bring = (name: string, buffer: Buffer) =>
    page.locator('input[type=file]').setInputFiles({ name, mimeType: 'application/json', buffer })
  await bring('a-file-that-is-no-door-at-all-with-a-long-name.json', Buffer.from('{"sillsight":1}'))
  await page.getByRole('status').filter({ hasText: 'could not be brought in' }).waitFor()
  await shown('doors, a file refused')
  await bring('door.sillsight', disputed)
  await page.getByRole('status').filter({ hasText: 'brought in' }).waitFor()
  await page
    .getByRole('button', { name: /^More about/ })
    .first()
    .click()
  await page.getByRole('menu').waitFor()
  await shown('doors, menu')
  await page.keyboard.press('Escape')
  await page.getByRole('menu').waitFor({ state: 'detached' })
  await page
    .getByRole('link', { name: /Loading door/ })
    .first()
    .click()
  await page.getByRole('group', { name: /^Two people entered/ }).waitFor()
  await page.locator('.finding').first().waitFor()
  await shown('two values for one place')
  await page.evaluate(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('no room', 'QuotaExceededError')
    }
  })
  await page.goto(page.url().replace('judge', 'measure'))
  await page.getByLabel('Name of side A').fill('the yard behind the cold store')
  await page.getByLabel('Name of side A').press('Enter')
  await page.getByRole('alert').filter({ hasText: 'No room is left' }).waitFor()
  await shown('not saved')
  await page.evaluate(() => new BroadcastChannel('sillsight').postMessage({ kind: 'format', format: 99 }))
  await page.getByRole('alert').filter({ hasText: 'newer version' }).waitFor()
  await shown('a newer program')
  await context.close()
}
