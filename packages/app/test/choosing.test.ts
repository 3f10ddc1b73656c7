import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { appPage, bringIn, handedOut, openDemo } from './app-page.ts'
import { objections } from './axe.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(() => builtApp())
const PHONE = { width: 360, height: 740 }
const saved = (on: Page) => on.waitForFunction(() => document.querySelector('.head-saved')?.textContent?.startsWith('saved'))

/** To the sheet on which ways of standing are listed, open there. */
async function states(on: Page): Promise<void> {
  await on.goto(at.served.url)
  await on.getByRole('link', { name: /Parcel hatch/ }).click()
  await on.locator('.finding').first().waitFor()
  await on.goto(on.url().replace('judge', 'measure'))
  const sections = on.locator('details[data-holds~="survey/states"]')
  await sections.first().waitFor()
  for (const section of await sections.all())
    if (!(await section.evaluate((each) => (each as HTMLDetailsElement).open))) await section.locator('> summary').click()
}
const listed = (on: Page) => on.locator('[data-at^="survey/states/"][data-at$="/name"]').evaluateAll((all) => all.length)

describe('two devices that both began a list', () => {
  it.each([
    ['metric', PHONE],
    ['feet-inches', undefined],
  ] as const)('have all of it after one press (%s), after a reload too, and are asked again when it is taken back', async (units, size) => {
    const [mine, theirs] = [await appPage(at.browser, at.served.url, size, { units }), await appPage(at.browser, at.served.url)]
    await openDemo(mine.page, /Parcel hatch/)
    await bringIn(theirs.page, at.served.url, await handedOut(mine.page, at.served.url))
    for (const { page: on } of [mine, theirs]) {
      await states(on)
      await on.locator('button[data-at="survey/states"]').click()
      await expect.poll(() => listed(on)).toBe(2)
      await saved(on)
    }
    await bringIn(mine.page, at.served.url, await handedOut(theirs.page, at.served.url))
    const on = mine.page
    await states(on)
    const asked = on.getByRole('group', { name: /^Two people entered different values for/ })
    await asked.waitFor()
    const choices = await asked.getByRole('button').allTextContents()
    expect(choices.length).toBe(3)
    expect(new Set(choices).size).toBe(3)
    expect(choices.join()).not.toMatch(/[{}]|…/)
    await expect.poll(() => listed(on)).toBe(2)
    expect(await objections(on)).toEqual([])
    await asked.getByRole('button', { name: 'All of it', exact: true }).click()
    await asked.waitFor({ state: 'detached' })
    await expect.poll(() => listed(on)).toBe(3) // how it was surveyed, and what each made
    await saved(on)
    await on.reload()
    await states(on)
    await expect.poll(() => listed(on)).toBe(3) // how it was surveyed, and what each made
    expect(await asked.count()).toBe(0)
    await on.getByRole('button', { name: 'Undo', exact: true }).click()
    await expect.poll(() => listed(on)).toBe(2)
    await asked.waitFor() // who takes a choice back is asked again
    await on.getByRole('button', { name: 'Redo', exact: true }).click()
    await expect.poll(() => listed(on)).toBe(3) // how it was surveyed, and what each made
    await asked.waitFor({ state: 'detached' })
    expect([...mine.complaints, ...theirs.complaints]).toEqual([])
    await mine.context.close()
    await theirs.context.close()
  })
})
