import type { BrowserContext, CDPSession, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { appPage, typed } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'
import { seedsOf } from './seeds.ts'
import { PHONE } from './sizes.ts'

const at = inBrowser(builtApp)

const KILLS = 200
/** Newcomers at a time, each with a browser profile of his own: one loads while the other is waited for. */
const AT_ONCE = 2
/** What is edited after the first verdict, one after another. */
const WIDTHS_MM = [3470, 3480]

/** How far somebody had come, by what the screen said: lengths that it showed, then a width that was "saved". */
interface Promised {
  lengths: number
  width_mm: number
}

describe('a newcomer whose page is killed', () => {
  it(`finds what was shown of his first values, and every edit that was called saved, at ${KILLS} points of his way`, {
    timeout: 7_200_000,
  }, async () => {
    const kills = seedsOf(1, KILLS)
    const profiles = await Promise.all(Array.from({ length: AT_ONCE }, profile))
    const ways_ms = await Promise.all(profiles.map(whole)) // side by side, as they will be
    const whole_ms = Math.max(...ways_ms)
    const begun = performance.now()
    const points = { entering: 0, editing: 0, done: 0 }
    const queue = [...kills]
    let killed = 0
    const hunt = async (mine: Profile) => {
      for (let i = queue.shift(); i !== undefined; i = queue.shift()) {
        const page = await newcomer(mine)
        const promised: Promised = { lengths: 0, width_mm: 0 }
        const crash = page.waitForEvent('crash')
        crash.catch(() => undefined) // where a kill before it failed the test, nobody waits for this one any more
        const walk = way(page, promised).then(
          () => true,
          () => false, // the page was killed under it
        )
        // every 200th part of the way, in an order that is not the way's own
        await Promise.race([walk, new Promise((done) => setTimeout(done, (((i * 79) % KILLS) / KILLS) * whole_ms))])
        page.goto('chrome://crash').catch(() => undefined)
        await crash
        points[(await walk) ? 'done' : promised.width_mm > 0 ? 'editing' : 'entering']++
        await page.close()
        const found = await foundAgain(mine.context, promised)
        expect({ i, promised, found, kept: isKept(promised, found) }).toEqual({ i, promised, found, kept: true })
        killed++
        if (killed % 10 === 0)
          process.stdout.write(`${killed} of ${kills.length} killed, ${Math.round((performance.now() - begun) / 1000)} s\n`)
      }
    }
    await Promise.all(profiles.map(hunt))
    process.stdout.write(
      `kills ${kills[0]} to ${kills.at(-1)}, a whole way ${Math.round(whole_ms)} ms: ${points.entering} before the door was made, ${points.editing} after, ${points.done} at the end\n`,
    )
    expect(points.entering).toBeGreaterThan(kills.length / 10)
    expect(points.editing).toBeGreaterThan(kills.length / 10)
  })
})

interface Profile {
  readonly context: BrowserContext
  readonly storage: CDPSession
}

/**
 * A browser profile whose storage is emptied for each newcomer: a new profile for each would fetch and compile the whole app each time, which
 * is most of the waiting and none of what is asked here. Without the service worker: working offline is another test's matter. And without
 * motion, which only passes time.
 */
async function profile(): Promise<Profile> {
  const { page, context } = await appPage(at.browser, at.served.url, PHONE, {}, { serviceWorkers: 'block', reducedMotion: 'reduce' })
  const blank = await context.newPage() // never killed, and not of the app: it only empties what the app keeps
  await page.close()
  return { context, storage: await context.newCDPSession(blank) }
}

/** The app as somebody finds it who has never opened it. */
async function newcomer({ context, storage }: Profile): Promise<Page> {
  await storage.send('Storage.clearDataForOrigin', { origin: new URL(at.served.url).origin, storageTypes: 'local_storage,indexeddb' })
  const page = await context.newPage()
  await page.goto(at.served.url)
  await page.getByRole('link', { name: 'New door', exact: true }).waitFor()
  const left = await page.evaluate(async () => [
    Object.keys(localStorage).includes('sillsight.begun'),
    document.querySelectorAll('a.door-link').length,
  ])
  if (left[0] || left[1] !== 0) throw new Error(`a newcomer must find nothing, got ${left}`)
  return page
}

async function whole(mine: Profile): Promise<number> {
  const page = await newcomer(mine)
  const from = performance.now()
  await way(page, { lengths: 0, width_mm: 0 })
  await page.close()
  return performance.now() - from
}

function isKept(promised: Promised, found: Promised): boolean {
  return found.width_mm > 0 ? found.width_mm >= promised.width_mm : promised.width_mm === 0 && found.lengths >= promised.lengths
}

async function way(page: Page, promised: Promised): Promise<void> {
  await page.getByRole('link', { name: 'New door', exact: true }).tap()
  for (const text of ['3460', '2.8 m', '2800', '150']) {
    await page.locator('.first-go button').tap()
    await typed(page, text)
    const left = 3 - promised.lengths
    await page.waitForFunction((count) => document.querySelectorAll('.first-figure[data-missing]').length === count, left)
    promised.lengths++
  }
  await page.getByRole('button', { name: 'Judge it' }).tap()
  await isSaved(page)
  promised.width_mm = 3460
  await page.getByRole('link', { name: 'Measure', exact: true }).tap() // the verdict is on its way meanwhile: nothing is stored of it
  for (const width_mm of WIDTHS_MM) {
    await page.getByRole('button', { name: /^Clear width:/ }).tap()
    await typed(page, String(width_mm))
    await page.getByRole('button', { name: new RegExp(`^Clear width: ${width_mm}`) }).waitFor()
    await isSaved(page)
    promised.width_mm = width_mm
  }
}

/** The screen says so, and has said it since the last edit: until then it says that it saves. */
async function isSaved(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector('.head-saved')?.getAttribute('data-state') === 'saved')
}

/** What a new page shows of it. A door that was made and not yet called saved may be there already: then the list is waited for. */
async function foundAgain(context: BrowserContext, promised: Promised): Promise<Promised> {
  const early = promised.width_mm > 0 ? undefined : await foundInList(context, false)
  return early && isKept(promised, early) ? early : foundInList(context, true)
}

async function foundInList(context: BrowserContext, isWaiting: boolean): Promise<Promised> {
  const page = await context.newPage()
  await page.goto(at.served.url)
  await page.getByRole('link', { name: 'New door', exact: true }).waitFor()
  const door = page.locator('a.door-link').first()
  if (isWaiting) await door.waitFor({ timeout: 30_000 }).catch(() => undefined) // none: then nothing is found, which is what is told
  if ((await door.count()) > 0) {
    const address = (await door.getAttribute('href')) ?? ''
    await page.goto(`${at.served.url}${address.replace(/[a-z-]+$/, 'measure')}`)
    const said = await page.getByRole('button', { name: /^Clear width:/ }).getAttribute('aria-label')
    await page.close()
    return { lengths: 4, width_mm: Number(/: (\d+)/.exec(said ?? '')?.[1]) }
  }
  await page.getByRole('link', { name: 'New door', exact: true }).tap()
  await page.locator('.first-figure').first().waitFor()
  const lengths = 4 - (await page.locator('.first-figure[data-missing]').count())
  await page.close()
  return { lengths, width_mm: 0 }
}
