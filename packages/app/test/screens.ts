import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Browser, Page } from 'playwright-core'
import { drawingFaults } from './drawing-faults.ts'
import { everyScreen, type Look, TOUCH_PX } from './every-screen.ts'
import { pageFaults } from './page-faults.ts'
import { become, type Size } from './sizes.ts'

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** What was found on a walk through the screens, one sentence each, and how many screens there were. */
export interface Walked {
  readonly screens: number
  readonly found: readonly string[]
}

/**
 * Walks through the screens in one theme and language, and measures each in each size. axe looks at the first size.
 *
 * @param isWhole with all demo doors and a search for repairs. Else axe, which takes most of the time, looks at the theme paper alone, and there at
 * the colours of the other two in passing: what it looks at besides is the same in all.
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
      for (const size of sizes) {
        await become(page, size)
        const faults = [
          ...(await pageFaults(page, TOUCH_PX[look.theme])),
          ...(await drawingFaults(page)),
          ...(size === sizes[0] && (isWhole || look.theme === 'paper') ? await axeFaults(page) : []),
          ...(size === sizes[0] && !isWhole && look.theme === 'paper' ? await inOtherColours(page) : []),
        ]
        found.push(...faults.map((fault) => `${name}, ${size.width} px: ${fault}`))
      }
    },
    { isWhole },
  )
  return { screens, found }
}

async function inOtherColours(page: Page): Promise<readonly string[]> {
  const wear = (theme: string) => page.evaluate((name) => document.documentElement.setAttribute('data-theme', name), theme)
  const found: string[] = []
  for (const theme of ['sun', 'dark']) {
    await wear(theme)
    found.push(...(await axeFaults(page, ['color-contrast'])).map((fault) => `${theme}: ${fault}`))
  }
  await wear('paper')
  return found
}

async function axeFaults(page: Page, rules?: readonly string[]): Promise<readonly string[]> {
  // the page's own policy lets no foreign script in: axe comes by the debugger, and stays until the page is loaded anew
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe)
  return page.evaluate(async (only) => {
    interface Axe {
      run: (where: object, what: object) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>
    }
    const { run } = (globalThis as unknown as { axe: Axe }).axe
    const { violations } = await run(document, { resultTypes: ['violations'], ...(only && { runOnly: only }) })
    return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`))
  }, rules)
}
