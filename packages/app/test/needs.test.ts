import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { partOf } from '../src/screens/lead.ts'
import { appPage } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'
import { answers, LACKING, needsOf, patternOf } from './lacking-doors.ts'
import { EVERY_NEED } from './needs.ts'

const at = inBrowser(() => builtApp())
/** Stated by the grid alone, while the exact answer is on its way: `src/screens/needs.test.ts` looks for its control without a browser. */
const BY_THE_GRID = ['zones/*/allowedPocket_mm']
const PARTS = ['measure', 'place', 'fit', 'test'] as const

/** Brings a door in and opens a part of it. */
async function brought(on: Page, file: object & { name?: unknown }): Promise<string> {
  const buffer = Buffer.from(JSON.stringify({ sillsight: 1, ...file }))
  await on.goto(at.served.url)
  await on.locator('input[type=file]').setInputFiles({ name: 'door.json', mimeType: 'application/json', buffer })
  return (
    (await on
      .getByRole('link', { name: String(file.name) })
      .first()
      .getAttribute('href')) ?? ''
  )
}

/** What is missing on the sheet, by whichever answer is there. */
async function listed(on: Page): Promise<readonly string[]> {
  await on.locator('.missing :is(li, p)').first().waitFor()
  return on.locator('.missing [data-need]').evaluateAll((all) => all.map((each) => each.getAttribute('data-need') ?? ''))
}

/** The place of the control that has the focus, once it is in `main`: the app itself seeks for ten seconds. What it was before is not waited for. */
async function focused(on: Page): Promise<string> {
  const place = () => on.evaluate(() => document.querySelector<HTMLElement>('main [data-led]:focus')?.dataset['at'] ?? '')
  for (let i = 0; i < 200; i++) {
    const found = await place()
    if (found !== '') return found
    await on.waitForTimeout(50)
  }
  return ''
}

describe('every need that a finding can state', () => {
  it('is stated by one of the doors that lack something', () => {
    const stated = new Set(LACKING.flatMap(needsOf).map(patternOf))
    expect(EVERY_NEED.filter((need) => !stated.has(need))).toEqual([])
    expect([...stated].filter((need) => !EVERY_NEED.includes(need))).toEqual([])
  })

  it('is led to from what is missing: the focus is where its value is entered', async () => {
    const { page: on, context, complaints } = await appPage(at.browser, at.served.url)
    const nowhere: string[] = []
    const met = new Set<string>()
    for (const file of LACKING) {
      const address = await brought(on, file)
      for (const part of PARTS) {
        await on.goto(`${at.served.url}${address.replace(/[a-z-]+$/, part)}`)
        for (const need of await listed(on)) {
          if (met.has(patternOf(need)) || BY_THE_GRID.includes(patternOf(need))) continue // the exact answer may come between
          await on.evaluate(() => (document.activeElement as HTMLElement | null)?.blur())
          await on.locator(`.missing [data-need="${need}"]`).click()
          const place = await focused(on)
          if (!answers(place, need, file)) nowhere.push(`${String(file['name'])}: ${need} led to ${place || 'nothing'}`)
          met.add(patternOf(need))
        }
      }
    }
    expect(nowhere).toEqual([])
    const elsewhere = EVERY_NEED.filter((need) => partOf(need) === 'judge')
    expect(EVERY_NEED.filter((need) => !met.has(need) && !elsewhere.includes(need) && !BY_THE_GRID.includes(need))).toEqual([])
    expect(complaints).toEqual([])
    await context.close()
  }, 300_000)

  it('is led to from its finding too, whatever part it is entered in', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url)
    const address = await brought(on, LACKING[0] ?? {})
    const judge = `${at.served.url}${address.replace(/[a-z-]+$/, 'judge')}`
    for (const need of ['concept', 'survey/leaf', 'survey/control/fire']) {
      await on.goto(judge)
      await on.locator(`.finding [data-need="${need}"]`).first().click()
      const place = await focused(on)
      expect({ need, place, led: answers(place, need, LACKING[0] ?? {}) }).toEqual({ need, place, led: true })
    }
    await context.close()
  }, 120_000)
})
