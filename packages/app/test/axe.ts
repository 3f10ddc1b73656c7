import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'
import type { Preferences } from '../src/preferences.ts'

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

interface Axe {
  readonly run: (within: string, options?: object) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>
}

/**
 * What axe objects to on the page as it stands there once its part is loaded, one line each.
 *
 * @param rules by their ids; without them, all
 */
export async function objections(page: Page, within = 'html', rules?: readonly string[]): Promise<readonly string[]> {
  await page.locator('main:visible').first().waitFor() // while a part is being loaded there is none, or a hidden one of before
  await page.evaluate(axe) // the page's own policy lets no foreign script in: axe comes by the debugger
  return page.evaluate(
    async ([root, only]) => {
      const { run } = (globalThis as unknown as { axe: Axe }).axe
      const { violations } = await run(root, only && { runOnly: { type: 'rule', values: only } })
      return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`))
    },
    [within, rules] as const,
  )
}

/** Puts the page in another theme, as the app does it, until the app does it anew. */
export function wear(page: Page, theme: Preferences['theme']): Promise<void> {
  return page.evaluate((name) => document.documentElement.setAttribute('data-theme', name), theme)
}

/** The rules of axe whose answer can be another in another theme: themes are colours and sizes, and change nothing of what a page is made of. */
const OF_THEMES = ['color-contrast', 'link-in-text-block', 'scrollable-region-focusable']

/** What axe objects to in each of the three themes; the page is in `paper` before and after. */
export async function objectionsInThemes(page: Page, within?: string): Promise<readonly string[]> {
  const found = (await objections(page, within)).map((each) => `paper: ${each}`)
  for (const theme of ['sun', 'dark'] as const) {
    await wear(page, theme)
    found.push(...(await objections(page, within, OF_THEMES)).map((each) => `${theme}: ${each}`))
  }
  await wear(page, 'paper')
  return found
}
