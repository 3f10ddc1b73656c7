import type { BrowserContext, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { appPage, typed } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'
import { PHONE } from './sizes.ts'

const at = inBrowser(builtApp)

const KILLS = 200
/** What is edited after the first verdict, one after another. */
const WIDTHS_MM = [3470, 3480]

/**
 * A page of its own for each kill. Without the service worker, which would fetch the whole app for each of them: working offline is another
 * test's matter. And without motion, which only passes time.
 */
const newcomer = () => appPage(at.browser, at.served.url, PHONE, {}, { serviceWorkers: 'block', reducedMotion: 'reduce' })

/** How far somebody had come, by what the screen said: lengths that it showed, then a width that was "saved". */
interface Promised {
  lengths: number
  width_mm: number
}

describe('a newcomer whose page is killed', () => {
  it(`finds what was shown of his first values, and every edit that was called saved, at ${KILLS} points of his way`, {
    timeout: 7_200_000,
  }, async () => {
    const whole_ms = await (async () => {
      const { page, context } = await newcomer()
      const from = performance.now()
      await way(page, { lengths: 0, width_mm: 0 })
      await context.close()
      return performance.now() - from
    })()
    const begun = performance.now()
    const points = { entering: 0, editing: 0, done: 0 }
    for (let i = 0; i < KILLS; i++) {
      const { page, context } = await newcomer()
      const promised: Promised = { lengths: 0, width_mm: 0 }
      const crash = page.waitForEvent('crash')
      const walk = way(page, promised).then(
        () => true,
        () => false, // the page was killed under it
      )
      // every 200th part of the way, in an order that is not the way's own
      await Promise.race([walk, new Promise((done) => setTimeout(done, (((i * 79) % KILLS) / KILLS) * whole_ms))])
      page.goto('chrome://crash').catch(() => undefined)
      await crash
      points[(await walk) ? 'done' : promised.width_mm > 0 ? 'editing' : 'entering']++
      const found = await foundAgain(context, promised.width_mm > 0)
      expect({ i, promised, found, kept: isKept(promised, found) }).toEqual({ i, promised, found, kept: true })
      await context.close()
      if (i % 20 === 19) process.stdout.write(`${i + 1} of ${KILLS} killed, ${Math.round((performance.now() - begun) / 1000)} s\n`)
    }
    process.stdout.write(`killed ${points.entering} times before the door was made, ${points.editing} after, ${points.done} at the end\n`)
    expect(points.entering).toBeGreaterThan(20)
    expect(points.editing).toBeGreaterThan(20)
  })
})

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

async function foundAgain(context: BrowserContext, isMade: boolean): Promise<Promised> {
  const page = await context.newPage()
  await page.goto(at.served.url)
  await page.getByRole('link', { name: 'New door', exact: true }).waitFor()
  const door = page.locator('a.door-link').first()
  if (isMade) await door.waitFor()
  if ((await door.count()) > 0) {
    const address = (await door.getAttribute('href')) ?? ''
    await page.goto(`${at.served.url}${address.replace(/[a-z-]+$/, 'measure')}`)
    const said = await page.getByRole('button', { name: /^Clear width:/ }).getAttribute('aria-label')
    return { lengths: 4, width_mm: Number(/: (\d+)/.exec(said ?? '')?.[1]) }
  }
  await page.getByRole('link', { name: 'New door', exact: true }).tap()
  await page.locator('.first-figure').first().waitFor()
  return { lengths: 4 - (await page.locator('.first-figure[data-missing]').count()), width_mm: 0 }
}
