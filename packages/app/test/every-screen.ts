import { english, german, ruleName } from '@sillsight/report'
import type { Browser, Page } from 'playwright-core'
import type { Preferences } from '../src/preferences.ts'
import { de } from '../src/words/de.ts'
import { deFacts } from '../src/words/de-facts.ts'
import { en } from '../src/words/en.ts'
import { enFacts, type Facts } from '../src/words/en-facts.ts'
import { addPhoto, appPage, openDemo, typed } from './app-page.ts'
import { disputedDoor } from './disputed-door.ts'
import { damaged, explanation, forces, spiritLevel, withoutSpace } from './rarer-screens.ts'
import { become, DESK, PHONE } from './sizes.ts'

export const THEMES = ['paper', 'sun', 'dark'] as const
export const LANGUAGES = ['en', 'de'] as const

/** How a device shows things: what a walk through all screens is made in. */
export type Look = Pick<Preferences, 'theme' | 'language'>
export const LOOKS: readonly Look[] = LANGUAGES.flatMap((language) => THEMES.map((theme) => ({ theme, language })))

/** The least that a thumb needs, by theme. */
export const TOUCH_PX: Readonly<Record<Look['theme'], number>> = { paper: 48, sun: 64, dark: 48 }

/** Times nothing: only ends what hangs, on a machine that has other things to do. */
const PATIENCE_MS = 120_000

/** Called on each screen while it stands there; `page` may be resized in it. Names are the same in every language. */
export type OnScreen = (name: string, page: Page) => Promise<void>

interface Walk {
  readonly page: Page
  readonly url: string
  readonly words: typeof en
  readonly facts: Facts
  readonly button: (name: string | RegExp) => ReturnType<Page['getByRole']>
  /** Calls back, and goes back to the size of a desk. */
  readonly shown: (name: string) => Promise<void>
  readonly closed: () => Promise<void>
}

/**
 * Goes through every screen of the app in one theme and language, everything that opens included.
 *
 * @param isWhole whether all demo doors are looked at and repairs are searched for too: that takes half a minute
 */
export async function everyScreen(
  browser: Browser,
  url: string,
  look: Look,
  on: OnScreen,
  { isWhole = true }: { readonly isWhole?: boolean } = {},
): Promise<void> {
  const disputed = await disputedDoor(browser, url)
  const { page, context } = await appPage(browser, url, DESK, look)
  page.setDefaultTimeout(PATIENCE_MS)
  const walk: Walk = {
    page,
    url,
    words: look.language === 'de' ? de : en,
    facts: look.language === 'de' ? deFacts : enFacts,
    button: (name) => page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name }),
    shown: async (name) => {
      await on(name, page)
      await become(page, DESK)
    },
    closed: async () => {
      await page.keyboard.press('Escape')
      await page.getByRole('dialog').waitFor({ state: 'detached' })
    },
  }
  await emptyApp(walk)
  await newDoor(walk)
  const address = await judged(walk)
  await otherParts(walk, address)
  await entering(walk, address)
  await looking(walk, address)
  await overTime(walk)
  await explanation(rare(walk))
  await forces(rare(walk))
  if (isWhole) {
    await otherDemos(walk)
    await repairs(walk, look)
  }
  await files(walk, disputed)
  await troubles(walk)
  await withoutSpace(rare(walk))
  await damaged(rare(walk), url)
  await context.close()
  await touring(browser, url, look, on)
  await onAnEdge(browser, url, look, on)
}

async function emptyApp({ page, words, button, shown, closed }: Walk): Promise<void> {
  await page.getByRole('link', { name: words.doors.newDoor }).waitFor()
  await shown('doors, none yet')
  await button(words.settings.title).click()
  await page.getByRole('dialog').waitFor()
  await shown('settings')
  await closed()
}

async function newDoor({ page, words, shown }: Walk): Promise<void> {
  await page.getByRole('link', { name: words.doors.newDoor }).click()
  await page.locator('.first-figure').first().waitFor()
  await shown('new door')
  await page.locator('.first-figure').first().click()
  await padOf(page)
  await shown('new door, number pad')
  await typed(page, '3460')
  await shown('new door, one value')
}

/** The demo door whose bollard hides a corner, judged; the address of its part Judge is returned. */
async function judged({ page, url, words, button, shown, closed }: Walk): Promise<string> {
  await page.goto(url)
  await openDemo(page, startOf(words.demoDoors['loading-door']))
  await settled(page)
  await shown('judge')
  await button(words.findings.show).first().click()
  await shown('judge, shown on the drawing')
  await button(startOf(words.findings.whyFor('')))
    .first()
    .click()
  await page.locator('.why-text').waitFor()
  await shown('judge, why')
  await closed()
  await button(words.findings.confirm).first().click()
  await page.getByRole('dialog').waitFor()
  await shown('judge, held against the page')
  await closed()
  await page.locator('.findings-head').getByRole('button', { name: words.help.words.label }).click()
  await page.getByRole('dialog').waitFor()
  await shown('judge, words')
  await closed()
  for (const view of ['elevation', 'section', 'solid'] as const) {
    await page.getByRole('radio', { name: words.views[view], exact: true }).click()
    await page.locator(view === 'solid' ? '.solid-canvas' : '.drawing').waitFor()
    await shown(`judge, ${view}`)
  }
  await page.locator('.solid-row').getByRole('radio').nth(1).click()
  await shown('judge, solid cut open')
  return page.url()
}

async function otherParts({ page, shown }: Walk, address: string): Promise<void> {
  for (const part of ['measure', 'place', 'fit', 'test', 'hand-over', 'keep']) {
    await goTo(page, address, part)
    if (part === 'measure' || part === 'place') await page.locator('.drawing').waitFor()
    await shown(part)
  }
}

async function entering({ page, words, button, shown, closed }: Walk, address: string): Promise<void> {
  await goTo(page, address, 'measure')
  await button(startOf(`${words.first.width}:`)).click()
  await padOf(page)
  await page.locator('.pad-figure input').fill('34600')
  await shown('measure, number pad')
  await closed()
  await button(words.measure.tolerancesAdd).click()
  await addPhoto(page)
  await page.locator('.photos').scrollIntoViewIfNeeded()
  await shown('measure, photo and tolerances')
  await page.locator('.photo-open').click()
  await page.locator('.photo-touch').click({ position: { x: 60, y: 40 } })
  await page.locator('.pin-row').waitFor()
  await shown('a photo and a pin')
  await page.keyboard.press('Escape')
  await closed()
}

async function looking({ page, words, button, shown }: Walk, address: string): Promise<void> {
  await goTo(page, address, 'place')
  await button(words.drawing.body).click()
  await shown('place, test body')
  await button(words.history.open).click()
  await page.locator('.history li').first().waitFor()
  await shown('history')
  await button(words.history.look).last().click()
  await shown('an earlier moment')
  await button(words.notices.now).click()
}

/** A contact over time: its timeline and slider beside the sentence, leaf and body on the drawing. */
async function overTime({ page, url, words, shown }: Walk): Promise<void> {
  await page.goto(url)
  await openDemo(page, startOf(words.demoDoors['box-hatch']))
  await settled(page)
  await page
    .getByRole('button', { name: startOf(words.inTime.showFor('')) })
    .first()
    .click()
  await page.getByRole('slider').waitFor()
  await page.locator('.in-time .drawing').waitFor()
  await shown('judge, over time')
}

/** What only other doors show: other sensors, other leaves, lanes, other findings. */
async function otherDemos({ page, url, words, facts, shown }: Walk): Promise<void> {
  for (const [name, title] of Object.entries(words.demoDoors)) {
    if (name === 'loading-door') continue
    await page.goto(url)
    await openDemo(page, startOf(title))
    await settled(page)
    await shown(`judge ${name}`)
    const address = page.url()
    for (const part of ['measure', 'place']) {
      await goTo(page, address, part)
      await page.locator('.drawing').waitFor()
      await shown(`${part} ${name}`)
    }
    if (name !== 'freezer-door') continue // a door whose wiring is described
    await goTo(page, address, 'fit')
    await page.locator('.wiring-drawing .drawing').waitFor()
    for (const title of [facts.wiring.faults, facts.wiring.data]) await page.locator('summary').filter({ hasText: title }).click()
    await page.locator('.wiring-faults').first().waitFor()
    await shown(`fit ${name}, all of it`)
  }
}

async function repairs({ page, url, words, shown }: Walk, { language }: Look): Promise<void> {
  await page.goto(url)
  await openDemo(page, startOf(words.demoDoors['freezer-door']))
  const rule = ruleName('leaf-in-field', { units: 'metric', language: language === 'de' ? german : english })
  const search = page.getByRole('button', { name: words.repairs.searchFor(rule), exact: true }).first()
  const failing = page.locator('.finding[data-verdict="fail"]').filter({ has: search })
  await failing.waitFor()
  const at = await failing.evaluate((element) => [...(element.parentElement?.children ?? [])].indexOf(element))
  const finding = page.locator('.finding-list > li').nth(at)
  await search.click()
  await shown('repairs, searching')
  await finding
    .getByRole('button', { name: startOf(words.repairs.apply) })
    .first()
    .waitFor({ timeout: 2 * PATIENCE_MS })
  await finding.locator('.repairs').scrollIntoViewIfNeeded()
  await shown('repairs, found')
}

async function files({ page, url, words, button, shown }: Walk, disputed: Buffer): Promise<void> {
  await page.goto(url)
  const bring = (name: string, buffer: Buffer) =>
    page.locator('input[type=file]').setInputFiles({ name, mimeType: 'application/json', buffer })
  await bring('a-file-that-is-no-door-at-all-with-a-long-name.json', Buffer.from('{"sillsight":1}'))
  await page.getByRole('status').filter({ hasText: words.doors.refused }).waitFor()
  await shown('doors, a file refused')
  await bring('door.sillsight', disputed)
  await page
    .getByRole('status')
    .filter({ hasText: words.doors.brought(1) })
    .waitFor()
  await button(startOf(words.doors.more('')))
    .first()
    .click()
  await page.getByRole('menu').waitFor()
  await shown('doors, menu')
  await page.keyboard.press('Escape')
  await page.getByRole('menu').waitFor({ state: 'detached' })
  await page.locator('.door-list a.door-link').filter({ hasText: 'Loading door' }).first().click()
  await page.getByRole('group', { name: startOf(words.notices.twoValues('\0').split('\0')[0] ?? '') }).waitFor()
  await page.locator('.finding').first().waitFor()
  await shown('two values for one place')
}

async function troubles({ page, words, shown }: Walk): Promise<void> {
  await page.evaluate(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('no room', 'QuotaExceededError')
    }
  })
  await page.goto(page.url().replace('judge', 'measure'))
  await page.getByLabel(words.measure.sideA, { exact: true }).fill('the yard behind the cold store')
  await page.getByLabel(words.measure.sideA, { exact: true }).press('Enter')
  await page.getByRole('alert').filter({ hasText: words.notices.notSaved.full }).waitFor()
  await shown('not saved')
  await page.evaluate(() => new BroadcastChannel('sillsight').postMessage({ kind: 'format', format: 99 }))
  await page.getByRole('alert').filter({ hasText: words.notices.newer }).waitFor()
  await shown('a newer program')
}

/** Where the tour stands on a device of its own: its first stop, and one that rings something on the drawing. */
async function touring(browser: Browser, url: string, look: Look, on: OnScreen): Promise<void> {
  const { page, context } = await appPage(browser, url, DESK, look)
  page.setDefaultTimeout(PATIENCE_MS)
  const words = look.language === 'de' ? de : en
  await page.getByRole('button', { name: words.help.tour.take, exact: true }).click()
  await page.locator('.finding').first().waitFor()
  await page.locator('.ring').waitFor()
  await on('the tour', page)
  await become(page, DESK)
  await page.getByRole('link', { name: words.parts.measure, exact: true }).click()
  await page.locator('[data-figure="opening/width"]').waitFor()
  await on('the tour, on the drawing', page)
  await context.close()
}

/** A device of its own that can be touched and feels how it lies. */
async function onAnEdge(browser: Browser, url: string, look: Look, on: OnScreen): Promise<void> {
  const { page, context } = await appPage(browser, url, PHONE, look)
  page.setDefaultTimeout(PATIENCE_MS)
  await spiritLevel(rare({ page, url, words: look.language === 'de' ? de : en, shown: (name) => on(name, page) }))
  await context.close()
}

function rare({ page, url, words, shown }: Pick<Walk, 'page' | 'url' | 'words' | 'shown'>) {
  const openDoor = async (name: keyof typeof words.demoDoors, part: string) => {
    await page.goto(url)
    await openDemo(page, startOf(words.demoDoors[name]))
    if (part !== 'judge') await goTo(page, page.url(), part)
  }
  return { page, words, shown, openDoor }
}

/** Until the exact answer is there. */
async function settled(page: Page): Promise<void> {
  await page.waitForFunction(
    () => !document.querySelector('.findings[aria-busy=true]') && document.querySelector('.findings-head p')?.textContent === '',
  )
}

async function goTo(page: Page, address: string, part: string): Promise<void> {
  await page.goto(address.replace('judge', part))
  await page.locator('main').waitFor()
}

function padOf(page: Page): Promise<void> {
  return page.locator('.pad-figure input').waitFor()
}

function startOf(text: string): RegExp {
  return new RegExp(`^${RegExp.escape(text.trimEnd())}`)
}
