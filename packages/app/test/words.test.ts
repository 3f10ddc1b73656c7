import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { PARTS } from '../src/parts.ts'
import { appPage, openDemo } from './app-page.ts'
import { objectionsInThemes } from './axe.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(builtApp)

/** Parts with a drawing; the later ones say what they will hold. */
const WORKED_ON: readonly string[] = ['measure', 'place', 'judge']

/** Glossary words that the screens use as everybody does: a door is free, a tour is begun, a step is taken, a terminal strip is photographed. */
const COMMON_SPEECH = [
  'begun',
  'cause',
  'crash',
  'free',
  'function',
  'need',
  'off',
  'open',
  'row',
  'rule',
  'seen',
  'step',
  'strip',
  'tile',
  'window',
]

/** First column of every table of the glossary, the longest first, so that a word inside of a longer one is not looked for there. */
const GLOSSARY = [...readFileSync(join(import.meta.dirname, '../../../docs/GLOSSARY.md'), 'utf8').matchAll(/^\| ([^|]+?) \|/gm)]
  .map(([, term = '']) => term.replace(/ \(.*\)/, ''))
  .filter((term) => term !== 'Term' && !term.startsWith('---'))
  .sort((a, b) => b.length - a.length)

/** The glossary words that stand on a sheet, without what its user named and without what has no reader: the names of files and modules. */
function glossaryOn(text: string): readonly string[] {
  const pattern = new RegExp(`“[^”]*”|(?<![\\p{L}\\p{N}/-])(${GLOSSARY.join('|')})s?(?![\\p{L}\\p{N}/-])`, 'giu')
  const found = [...text.matchAll(pattern)].flatMap(([, term]) => (term === undefined ? [] : [term.toLowerCase()]))
  return [...new Set(found)].filter((term) => !COMMON_SPEECH.includes(term)).sort()
}

/** All that is said on the sheet; what is said in different elements stays apart. */
function textOn(on: Page): Promise<string> {
  return on.evaluate(() => {
    const walk = document.createTreeWalker(document.querySelector('[role=dialog]') ?? document.body, NodeFilter.SHOW_TEXT)
    const said: string[] = []
    for (let node = walk.nextNode(); node; node = walk.nextNode())
      if (!node.parentElement?.closest('script, style')) said.push(node.textContent ?? '')
    return said.join(' | ')
  })
}

/** What the words explain that can be opened on the sheet: those in its sentences, each opened, and the list of all. */
async function explainedOn(on: Page): Promise<string> {
  const explained: string[] = []
  await on.mouse.move(0, 0) // what is under it would be named in place of the drawing's key
  for (
    let closed = 1;
    closed > 0; // what stands in one that opens may have to be opened itself
  )
    closed = await on.evaluate(() => {
      const all = [...document.querySelectorAll<HTMLElement>('details:not([open]) > summary')]
      for (const each of all) each.click()
      return all.length
    })
  const sheet = (await on.getByRole('dialog').count()) > 0 ? on.getByRole('dialog') : on.locator('body')
  for (const id of await sheet.locator('.term').evaluateAll((all) => [...new Set(all.map((each) => each.getAttribute('data-term')))])) {
    const word = sheet.locator(`.term[data-term="${id}"]`).first()
    await word.evaluate((each) => each.scrollIntoView({ block: 'center' }))
    await word.focus()
    await on.keyboard.press('Enter')
    const slip = on.locator('.explanation')
    const says = (await slip.textContent()) ?? ''
    expect(says.length).toBeGreaterThan(20)
    explained.push(`${await word.textContent()} ${await slip.getAttribute('aria-label')}`)
    await on.keyboard.press('Escape')
    await slip.waitFor({ state: 'detached' })
  }
  if ((await sheet.locator('.words-here').count()) > 0) {
    await sheet.locator('.words-here').first().click()
    await on.locator('.word-list').first().waitFor()
    explained.push(...(await on.locator('.word-list dt').allTextContents()))
    expect((await on.locator('.word-list dd').allTextContents()).filter((says) => says.length < 20)).toEqual([])
    await on.keyboard.press('Escape')
    await on.locator('.word-list').first().waitFor({ state: 'detached' })
  }
  return explained.join(' | ').toLowerCase()
}

/** While it is being judged, sentences come and go. */
async function exactAnswer(on: Page): Promise<void> {
  await on.waitForFunction(
    () => document.querySelector('.finding') && !document.querySelector('.findings-head p')?.textContent,
    undefined,
    {
      timeout: 200_000,
    },
  )
}

describe('every word of the glossary that stands on a screen', () => {
  it.each(['Freezer door', 'Loading door', 'Parcel hatch', 'Sloping gate', 'Traffic passage'])(
    'opens its explanation there, on every part of the demonstration door %s, by keyboard',
    async (name) => {
      const { page: on, context, complaints } = await appPage(at.browser, at.served.url)
      await openDemo(on, new RegExp(name))
      const address = on.url()
      let met = 0
      for (const part of PARTS) {
        await on.goto(address.replace('judge', part))
        await on.locator('main h2').first().waitFor()
        if (WORKED_ON.includes(part))
          await on.waitForFunction(
            () => document.querySelector('.term') && document.querySelector('.words-here') && document.querySelector('.drawing'),
          )
        if (part === 'judge') await exactAnswer(on)
        const explained = await explainedOn(on)
        const words = glossaryOn(await textOn(on))
        met += words.length
        expect({ part, unexplained: words.filter((word) => !explained.includes(word)) }).toEqual({ part, unexplained: [] })
      }
      expect(met).toBeGreaterThan(20)
      expect(complaints).toEqual([])
      await context.close()
    },
    400_000,
  )
  it('opens it on the list of doors, on a new door, in the number pad and in the arithmetic', async () => {
    const { page: on, context, complaints } = await appPage(at.browser, at.served.url)
    const look = async (sheet: string) => {
      const explained = await explainedOn(on)
      const words = glossaryOn(await textOn(on))
      expect({ sheet, unexplained: words.filter((word) => !explained.includes(word)) }).toEqual({ sheet, unexplained: [] })
      return words.length
    }
    await on.getByRole('link', { name: 'New door' }).waitFor()
    await look('list of doors')
    await on.getByRole('link', { name: 'New door' }).click()
    await on.locator('.first-figure').first().waitFor()
    expect(await look('new door')).toBeGreaterThan(2)
    await on.goto(at.served.url)
    await openDemo(on)
    await exactAnswer(on)
    await on.locator('.finding [data-stop=why]').first().click()
    await on.locator('.why-text').waitFor()
    expect(await look('arithmetic')).toBeGreaterThan(5)
    await on.goto(on.url().replace('judge', 'place'))
    await on.getByRole('button', { name: /^Clearance above the floor:/ }).click()
    await on.getByRole('dialog').waitFor()
    expect(await look('number pad')).toBeGreaterThan(0)
    expect(await on.getByRole('dialog').isVisible()).toBe(true) // Escape closed the explanations alone
    expect(complaints).toEqual([])
    await context.close()
  }, 240_000)
})

function isCovered(each: Element): boolean {
  const { x, y, width, height } = each.getBoundingClientRect()
  return !each.contains(document.elementFromPoint(x + width / 2, y + height / 2))
}

describe('an explanation', () => {
  it('opens by touch, lies on the screen, closes by a touch elsewhere, and axe objects to nothing, in any theme', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url, { width: 360, height: 740 })
    await openDemo(on)
    await on.goto(on.url().replace('judge', 'place'))
    const words = on.locator('.entries .term:visible')
    await words.first().waitFor()
    await on.waitForFunction(() => !document.querySelector('[data-coming]'))
    const objections: string[] = []
    const folds = on.locator('.entries > details')
    for (let fold = 0; fold < (await folds.count()); fold++) {
      await folds.nth(fold).evaluate((each: HTMLDetailsElement) => {
        each.open = true // a phone closes the one before
      })
      for (let i = 0; i < (await words.count()); i++) {
        await words.nth(i).evaluate((each) => each.scrollIntoView({ block: 'center' }))
        // what lies over the next word is closed by a touch elsewhere first, as a hand would
        if (await words.nth(i).evaluate(isCovered)) await on.locator('.stage-head').tap({ position: { x: 2, y: 2 } })
        await words.nth(i).tap()
        const box = await on.locator('.explanation').boundingBox()
        expect(box && box.x >= 0 && box.y >= 0 && box.x + box.width <= 360 && box.y + box.height <= 740).toBe(true)
        if (fold === 0 && i === 0) objections.push(...(await objectionsInThemes(on)))
        await on.keyboard.press('Escape') // it may lie over the next word
      }
    }
    await words.first().evaluate((each) => each.scrollIntoView({ block: 'center' }))
    await words.first().tap()
    expect(await on.locator('.explanation').count()).toBe(1)
    await on.locator('.stage-head').tap({ position: { x: 2, y: 2 } })
    expect(await on.locator('.explanation').count()).toBe(0)
    expect(objections).toEqual([])
    await context.close()
  })
  it('is one stop of the Tab key for a sentence; the arrow keys go on to its other words', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url)
    await openDemo(on)
    const sentence = on.locator('.finding .finding-words > p').first()
    const words = sentence.locator('.term')
    expect(await words.count()).toBeGreaterThan(1)
    expect(await sentence.locator('.term[tabindex="0"]').count()).toBe(1)
    await words.first().focus()
    await on.keyboard.press('ArrowRight')
    expect(await words.nth(1).evaluate((each) => document.activeElement === each)).toBe(true)
    await on.keyboard.press('Space')
    expect(await on.locator('.explanation').count()).toBe(1)
    await on.keyboard.press('Escape')
    await expect.poll(() => words.nth(1).evaluate((each) => document.activeElement === each)).toBe(true)
    await on.keyboard.press('Space')
    await expect.poll(() => on.locator('.explanation').count()).toBe(1)
    await on.keyboard.press('Tab')
    await expect.poll(() => on.locator('.explanation').count()).toBe(0)
    await context.close()
  })
})
