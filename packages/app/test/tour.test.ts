import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { appPage, DESK, openDemo, typed } from './app-page.ts'
import { objectionsInThemes, wear } from './axe.ts'
import { builtApp } from './built.ts'
import { TOUCH_PX } from './every-screen.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(builtApp)
/** Parts and what stands on them are loaded when they are opened. */
const PATIENT = { timeout: 20_000 }
const PHONE = { width: 360, height: 740 }

const stop = (on: Page) => on.locator('.tour-number').textContent()
const isAt = (on: Page, number: string) => expect.poll(() => stop(on), { timeout: 120_000 }).toBe(number)
/** Records of a browser's database of doors. */
const kept = (on: Page) =>
  on.evaluate(
    () =>
      new Promise<{ cards: number; changes: number }>((resolve, reject) => {
        const opening = indexedDB.open('sillsight')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const transaction = opening.result.transaction(['cards', 'changes'])
          const [cards, changes] = (['cards', 'changes'] as const).map((name) => transaction.objectStore(name).count())
          transaction.oncomplete = () => {
            opening.result.close()
            resolve({ cards: cards?.result ?? -1, changes: changes?.result ?? -1 })
          }
        }
      }),
  )

describe('the tour', () => {
  it('is offered on the first start, can be turned down for good, and taken from the list all the same', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url)
    await on.getByRole('button', { name: 'Not now' }).click()
    await on.reload()
    await on.getByRole('link', { name: 'New door' }).waitFor()
    expect(await on.locator('.tour-offer').count()).toBe(0)
    await on.getByRole('button', { name: /^Take the tour/ }).click()
    await isAt(on, '1')
    await context.close()
  })
  it.each([PHONE, DESK])(
    'goes on when each thing was done, by touch or mouse at $width px, and leaves nothing behind',
    async (size) => {
      const { page: on, context, complaints } = await appPage(at.browser, at.served.url, size)
      await on.getByRole('button', { name: 'Take the tour' }).click()
      await on.locator('.finding').first().waitFor()
      await isAt(on, '1')
      const ring = on.locator('.ring')
      await ring.waitFor()
      await on.locator('.tape').getByRole('link', { name: 'Measure' }).click()
      await isAt(on, '2')
      await on.locator('[data-figure="opening/width"]').click()
      expect(await stop(on)).toBe('2')
      await typed(on, '3600')
      await isAt(on, '3')
      await on.locator('.tape').getByRole('link', { name: 'Place' }).click()
      await isAt(on, '4')
      await on.getByRole('button', { name: 'Test body', exact: true }).click()
      const body = on.getByRole('button', { name: /^Test body .*Arrow keys/ })
      await body.waitFor()
      await on.waitForTimeout(200) // the drawing makes room for what it says
      const box = await body.boundingBox()
      if (!box) throw new Error('the test body must be on the screen')
      await on.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
      await on.mouse.down()
      await on.mouse.move(box.x + box.width / 2 + 30, box.y + box.height / 2 + 5, { steps: 4 })
      await on.mouse.up()
      await isAt(on, '5')
      await on.locator('.finding [data-stop=why]').first().click()
      await on.locator('.why-text').waitFor()
      expect(await stop(on)).toBe('5') // until it is closed again
      await on.getByRole('button', { name: 'Close', exact: true }).click()
      await isAt(on, '6')
      await on.locator('[data-stop=repairs]').first().click({ timeout: 90_000 })
      await isAt(on, '7')
      await on.getByRole('button', { name: 'Undo' }).click()
      await isAt(on, '8')
      await on.locator('.tape').getByRole('link', { name: 'Fit' }).click()
      await isAt(on, '\u2713')
      expect((await kept(on)).cards).toBe(1)
      await on.getByRole('button', { name: 'Throw it away' }).click()
      await on.getByRole('link', { name: 'New door' }).waitFor()
      await expect.poll(() => kept(on), { timeout: 30_000 }).toEqual({ cards: 0, changes: 0 })
      expect(await on.locator('section[aria-labelledby="mine"] .door-link').count()).toBe(0)
      expect(complaints).toEqual([])
      await context.close()
    },
    180_000,
  )
  it('is walked by keyboard alone, said aloud at each stop, and left by Escape', async () => {
    const { page: on, context, complaints } = await appPage(at.browser, at.served.url)
    const active = () => on.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '')
    const tabTo = async (name: RegExp) => {
      await on.getByRole('button', { name }).first().waitFor()
      for (let i = 0; i < 200; i++) {
        if (name.test(await active())) return
        await on.keyboard.press('Tab')
      }
      throw new Error(`Tab must come to ${name}`)
    }
    const show = async () => {
      await on.locator('.tour').focus()
      await tabTo(/^Show me$/)
      await on.keyboard.press('Enter')
    }
    await tabTo(/^Take the tour$/)
    await on.keyboard.press('Enter')
    await isAt(on, '1')
    await expect.poll(active, PATIENT).toBe('Tour') // the focus is where the way goes on
    const heard = on.locator('.tour [role=status]')
    expect(await heard.textContent()).toMatch(/^Stop 1 of 8\. /)
    await show()
    await expect.poll(active, PATIENT).toBe('Measure')
    await on.keyboard.press('Enter')
    await isAt(on, '2')
    expect(await heard.textContent()).toMatch(/^Stop 2 of 8\. /)
    await on.locator('[data-figure="opening/width"]').waitFor()
    await show()
    await expect.poll(active, PATIENT).toBe('Change clear width')
    await on.keyboard.press('Enter')
    await typed(on, '3600')
    await isAt(on, '3')
    await tabTo(/^Next$/)
    await on.keyboard.press('Enter') // goes on without the thing, and takes along to the part
    await isAt(on, '4')
    expect(on.url()).toMatch(/place$/)
    await expect.poll(active, PATIENT).toBe('Next') // the focus stays where the hand is
    await show()
    await expect.poll(active, PATIENT).toBe('Test body')
    await on.keyboard.press('Enter')
    await on.locator('.test-body').waitFor()
    await show()
    await expect.poll(active, PATIENT).toMatch(/^Test body .*Arrow keys/)
    await on.keyboard.press('ArrowDown')
    await isAt(on, '5')
    await show()
    await expect.poll(active, PATIENT).toMatch(/^why/)
    await on.keyboard.press('Enter')
    await on.locator('.why-text').waitFor()
    await on.keyboard.press('Escape') // closes the arithmetic, not the tour
    await isAt(on, '6')
    await on.keyboard.press('Escape')
    await on.getByRole('link', { name: 'New door' }).waitFor()
    await expect.poll(() => kept(on), { timeout: 30_000 }).toEqual({ cards: 0, changes: 0 })
    expect(complaints).toEqual([])
    await context.close()
  }, 240_000)
  it('takes to a thing as soon as it is there, where its part is still being loaded', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url)
    let letIn = () => {}
    const held = new Promise<void>((resolve) => {
      letIn = resolve
    })
    await context.route(/\/place-[^/]*\.js$/, async (route) => {
      await held
      await route.continue()
    })
    const active = () => on.evaluate(() => document.activeElement?.textContent)
    await on.getByRole('button', { name: 'Take the tour' }).click()
    for (const stop of ['1', '2', '3']) {
      await isAt(on, stop)
      await on.getByRole('button', { name: 'Next' }).click()
    }
    await isAt(on, '4')
    await on.getByRole('button', { name: 'Show me' }).click()
    await on.evaluate(
      () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => requestAnimationFrame(resolve)))),
    )
    expect(await on.getByRole('button', { name: 'Test body', exact: true }).count()).toBe(0)
    expect(await active()).toBe('Show me')
    letIn()
    await expect.poll(active, PATIENT).toBe('Test body')
    await context.close()
  }, 120_000)
  it('keeps its copy on wish, as a door like any other', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url)
    await on.getByRole('button', { name: 'Take the tour' }).click()
    for (let i = 1; i <= 8; i++) {
      await isAt(on, String(i))
      await on.getByRole('button', { name: 'Next' }).click()
    }
    await on.getByRole('button', { name: 'Keep it' }).click()
    await on.locator('.tour').waitFor({ state: 'detached' })
    await on.goto(at.served.url)
    await on.locator('section[aria-labelledby="mine"] .door-link').waitFor()
    expect((await kept(on)).cards).toBe(1)
    await context.close()
  }, 240_000)
  it('waits where it was left by closing the page, and is gone on with or thrown away from the list', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url)
    await on.getByRole('button', { name: 'Take the tour' }).click()
    await isAt(on, '1')
    await on.getByRole('button', { name: 'Next' }).click()
    await isAt(on, '2')
    await on.goto('about:blank')
    await on.goto(at.served.url)
    expect(await on.locator('section[aria-labelledby="mine"] .door-link').count()).toBe(0)
    await on.getByRole('button', { name: 'Go on with it' }).click()
    await isAt(on, '2')
    await on.getByRole('link', { name: 'All doors' }).click()
    await on.getByRole('button', { name: 'Throw it away' }).click()
    await expect.poll(() => kept(on), { timeout: 30_000 }).toEqual({ cards: 0, changes: 0 })
    await context.close()
  }, 240_000)
  it('leaves its door to another tab that has it open: nothing that somebody works on is lost', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url)
    await on.getByRole('button', { name: 'Take the tour' }).click()
    await isAt(on, '1')
    const other = await context.newPage()
    await other.goto(on.url())
    await other.locator('.finding').first().waitFor()
    await on.getByRole('button', { name: 'Leave' }).click()
    await on.getByRole('link', { name: 'New door' }).waitFor()
    await on.waitForTimeout(1000) // it goes, and comes back from the other tab
    await expect.poll(() => kept(on), { timeout: 30_000 }).toMatchObject({ cards: 1, changes: 1 })
    await other.reload()
    await other.locator('.finding').first().waitFor()
    await context.close()
  }, 240_000)
  it('is loaded when it is taken: an opened door asks for nothing of it', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url)
    const files = readdirSync(join(at.served.folder, 'assets')).filter((name) => /^(tour|word-list)-.*\.(js|css)$/.test(name))
    expect(files.length).toBeGreaterThanOrEqual(3)
    const asked: string[] = []
    on.on('request', (request) => asked.push(request.url().split('/').at(-1) ?? ''))
    await on.reload()
    await openDemo(on)
    expect(asked.filter((name) => files.includes(name))).toEqual([])
    await context.close()
  })
  it('has nothing that axe objects to and no target too small for a thumb, in any theme', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url, PHONE)
    await on.getByRole('button', { name: 'Take the tour' }).click()
    const found: string[] = []
    for (let i = 1; i <= 8; i++) {
      await isAt(on, String(i))
      await on.waitForTimeout(200)
      found.push(...(await objectionsInThemes(on)))
      for (const theme of ['sun', 'dark', 'paper'] as const) {
        await wear(on, theme)
        const heights = await on
          .locator('.tour button')
          .evaluateAll((all) => all.map((each) => Math.round(each.getBoundingClientRect().height)))
        expect(Math.min(...heights)).toBeGreaterThanOrEqual(TOUCH_PX[theme])
        expect(await on.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
      }
      await on.getByRole('button', { name: 'Next' }).click()
    }
    expect(found).toEqual([])
    await context.close()
  }, 240_000)
})
