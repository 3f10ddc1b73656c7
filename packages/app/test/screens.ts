import type { Browser, Page } from 'playwright-core'
import { objections, wear } from './axe.ts'
import { drawingFaults } from './drawing-faults.ts'
import { everyScreen, type Look, TOUCH_PX } from './every-screen.ts'
import { pageFaults } from './page-faults.ts'
import { become, type Size } from './sizes.ts'

/** What was found on a walk through the screens, one sentence each, and how many screens there were. */
export interface Walked {
  readonly screens: number
  readonly found: readonly string[]
}

/**
 * Walks through the screens in one theme and language, and measures each in each size. axe looks at the first size; in the theme paper it looks
 * at the colours of the theme dark as well, which is paper in other colours.
 *
 * @param isWhole with all demo doors and a search for repairs, which takes half a minute more
 */
export async function walked(
  { browser, served }: { readonly browser: Browser; readonly served: { readonly url: string } },
  look: Look,
  sizes: readonly Size[],
  isWhole: boolean,
): Promise<Walked> {
  const found: string[] = []
  let screens = 0
  await everyScreen(
    browser,
    served.url,
    look,
    async (name, page) => {
      screens++
      if (isWhole) process.stdout.write(`${screens}: ${name}${found.length > 0 ? `, ${found.length} found so far` : ''}\n`)
      for (const size of sizes) {
        await become(page, size)
        const faults = [
          ...(await pageFaults(page, TOUCH_PX[look.theme])),
          ...(await drawingFaults(page)),
          ...(size === sizes[0] ? await objections(page) : []),
          ...(size === sizes[0] && look.theme === 'paper' ? await inDark(page) : []),
        ]
        faults.push(...(await inTurn(page, () => pageFaults(page, TOUCH_PX[look.theme]))))
        found.push(...faults.map((fault) => `${name}, ${size.width} px: ${fault}`))
      }
    },
    { isWhole },
  )
  return { screens, found }
}

async function inDark(page: Page): Promise<readonly string[]> {
  await wear(page, 'dark')
  const found = await objections(page, 'html', ['color-contrast'])
  await wear(page, 'paper')
  return found.map((fault) => `dark: ${fault}`)
}

/** A small screen shows one section of a sheet at a time: what is found in each of the others, opened one after the other. Nothing where all stand open. */
async function inTurn(page: Page, look: () => Promise<readonly string[]>): Promise<readonly string[]> {
  if ((await page.getByRole('dialog').count()) > 0 || (await page.locator('main details[name]').count()) === 0) return []
  const sections = page.locator('main details[name][data-holds]:not(details details)')
  const found: string[] = []
  for (let i = 0; i < (await sections.count()); i++) {
    const section = sections.nth(i)
    if (!(await section.isVisible()) || (await section.evaluate((each: HTMLDetailsElement) => each.open))) continue
    await section
      .locator('summary')
      .first()
      .evaluate((each: HTMLElement) => each.click())
    await page.waitForFunction(() => !document.querySelector('[data-coming]'))
    // a drawing in it takes its width when it is opened, a frame later
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))))
    const title = await section.locator('h2').first().textContent()
    found.push(...(await look()).map((fault) => `section “${title}”: ${fault}`))
  }
  return found
}
