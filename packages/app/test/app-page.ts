import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core'

export const DESK = { width: 1440, height: 900 }
/** The parts of the job that tests walk through. */
export const PARTS = ['measure', 'place', 'judge', 'fit'] as const

/** For tests of starting without a network. Else every fresh profile would first fetch and keep the whole program, which takes longer than most tests. */
export const KEPT_OFFLINE = { serviceWorkers: 'allow' } as const

/** A page in a browser profile of its own; what it complains of is collected. */
export async function appPage(
  browser: Browser,
  url: string,
  size = DESK,
  preferences: object = {},
  options: BrowserContextOptions = {},
): Promise<{ page: Page; context: BrowserContext; complaints: string[] }> {
  const context = await browser.newContext({ viewport: size, hasTouch: size.width < 500, serviceWorkers: 'block', ...options })
  await context.addInitScript(
    (kept) => {
      if (!localStorage.getItem('sillsight.preferences')) localStorage.setItem('sillsight.preferences', kept)
    },
    JSON.stringify({ theme: 'paper', language: 'en', ...preferences }),
  )
  context.setDefaultTimeout(120_000) // of no account but where something hangs, however busy the machine is
  const opened = await context.newPage()
  const complaints: string[] = []
  opened.on('console', (message) => message.type() === 'error' && complaints.push(message.text()))
  opened.on('pageerror', (error) => complaints.push(error.message))
  await opened.goto(url)
  return { page: opened, context, complaints }
}

export async function openDemo(on: Page, name = /Loading door/): Promise<void> {
  await on.getByRole('button', { name }).click()
  await on.locator('.finding').first().waitFor()
}

export async function typed(on: Page, text: string): Promise<void> {
  await on.getByRole('dialog').getByRole('textbox').fill(text)
  await on.getByRole('dialog').getByRole('textbox').press('Enter')
}

/** Opens a section of the sheet by its heading, where a small screen shows another one. */
export async function unfold(on: Page, title: string): Promise<void> {
  const head = on.locator('main summary').filter({ has: on.getByRole('heading', { name: title, exact: true }) })
  if (!(await head.evaluate((each) => (each.parentElement as HTMLDetailsElement).open))) await head.click()
}

/** The door that the list of doors holds alone, with its history, as a file for another device. */
export async function handedOut(on: Page, url: string): Promise<Buffer> {
  await on.goto(url)
  await on.getByRole('button', { name: /^More about/ }).click()
  const file = on.waitForEvent('download')
  await on.getByRole('menuitem', { name: /^With its history/ }).click()
  const chunks: Buffer[] = []
  for await (const chunk of await (await file).createReadStream()) chunks.push(chunk as Buffer)
  return Buffer.concat(chunks)
}

export async function bringIn(on: Page, url: string, buffer: Buffer): Promise<void> {
  await on.goto(url)
  await on.locator('input[type=file]').setInputFiles({ name: 'door.sillsight', mimeType: 'application/octet-stream', buffer })
  await on.getByRole('status').filter({ hasText: 'brought in' }).waitFor()
}

/** A small picture, drawn here, among the photos of the part Measure. */
export async function addPhoto(on: Page): Promise<void> {
  const bytes = await on.evaluate(async () => {
    const canvas = new OffscreenCanvas(400, 300)
    canvas.getContext('2d')?.fillRect(0, 0, 200, 200)
    return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg' })).arrayBuffer())]
  })
  await on.locator('.group input[type=file]').setInputFiles({ name: 'plate.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(bytes) })
  await on.locator('.photos img').waitFor()
}

/** Brings a door file in from the list of doors and opens one part of it; what it is judged to be is not waited for. */
export async function openFile(on: Page, file: { readonly name: string; readonly survey: object }, part: string): Promise<void> {
  const buffer = Buffer.from(JSON.stringify({ sillsight: 1, ...file }))
  await on.locator('input[type=file]').setInputFiles({ name: 'door.json', mimeType: 'application/json', buffer })
  const address = await on.getByRole('link', { name: file.name }).getAttribute('href')
  await on.goto(`${new URL(on.url()).origin}/${(address ?? '').replace(/[a-z-]+$/, part)}`)
}
