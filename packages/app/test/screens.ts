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
      for (const size of sizes) {
        await become(page, size)
        const faults = [
          ...(await pageFaults(page, TOUCH_PX[look.theme])),
          ...(await drawingFaults(page)),
          ...(size === sizes[0] ? await axeFaults(page) : []),
          ...(size === sizes[0] && look.theme === 'paper' ? await inDark(page) : []),
        ]
        found.push(...faults.map((fault) => `${name}, ${size.width} px: ${fault}`))
      }
    },
    { isWhole },
  )
  return { screens, found }
}

async function inDark(page: Page): Promise<readonly string[]> {
  const wear = (theme: string) => page.evaluate((name) => document.documentElement.setAttribute('data-theme', name), theme)
  await wear('dark')
  const found = await axeFaults(page, ['color-contrast'])
  await wear('paper')
  return found.map((fault) => `dark: ${fault}`)
}

async function axeFaults(page: Page, rules?: readonly string[]): Promise<readonly string[]> {
  await page.evaluate(axe) // the page's own policy lets no foreign script in: axe comes by the debugger
  return page.evaluate(async (only) => {
    interface Axe {
      run: (where: object, what: object) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>
    }
    const { run } = (globalThis as unknown as { axe: Axe }).axe
    const { violations } = await run(document, { resultTypes: ['violations'], ...(only && { runOnly: only }) })
    return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`))
  }, rules)
}
