import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { appPage, DESK, KEPT_OFFLINE, openDemo, typed } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'
import { become } from './sizes.ts'

const at = inBrowser(() => builtApp())
const marked = inBrowser(() => builtApp('test/pseudo/vite.config.ts'))

const PHONE = { width: 360, height: 740 }
const PARTS = ['measure', 'place', 'judge', 'fit', 'test', 'hand-over', 'keep'] as const

/** Whatever a person entered, and what is no word in any language. */
const demo = readFileSync(join(import.meta.dirname, '../../cli/demo/loading-door.json'), 'utf8')
const ENTERED = new Set(demo.match(/\p{L}+/gu))
const NO_WORD = /^(mm|cm|m|s|in|ft|x|y|z|A|B|C|D|OUT|Sillsight)$/

/** Texts of the page, block by block, and labels that are only heard; without what the catalogues said. */
async function unmarked(on: Page): Promise<string[]> {
  const texts = await on.evaluate(() => {
    const found = new Set<string>()
    const isBlock = (element: Element) => !/^(inline|contents)/.test(getComputedStyle(element).display)
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      if (!/\p{L}/u.test(node.nodeValue ?? '')) continue
      let block = node.parentElement
      while (block && !block.closest('svg') && !isBlock(block)) block = block.parentElement
      if (block && !/^(SCRIPT|STYLE)$/.test(block.tagName)) found.add(block.textContent ?? '')
    }
    for (const element of document.querySelectorAll('[aria-label],[placeholder],[title],[alt]'))
      for (const name of ['aria-label', 'placeholder', 'title', 'alt']) found.add(element.getAttribute(name) ?? '')
    return [...found]
  })
  return texts.filter((text) => {
    let depth = 0
    let outside = ''
    for (const sign of text) {
      if (sign === '\u27e6') depth++
      else if (sign === '\u27e7') depth--
      else if (depth <= 0) outside += sign
    }
    return (outside.match(/\p{L}+/gu) ?? []).some((word) => !ENTERED.has(word) && !NO_WORD.test(word))
  })
}

/** Nothing is wider than the screen of a phone or a desk. */
async function fits(on: Page, screen: string): Promise<void> {
  for (const size of [DESK, PHONE]) {
    await become(on, { ...size, text_percent: 100 })
    const wider_px = await on.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
    expect({ screen, ...size, wider_px }).toEqual({ screen, ...size, wider_px: 0 })
  }
}

describe('a language in which every text is marked and which runs from right to left', () => {
  it('finds no text of a screen outside of the catalogues', async () => {
    const { page: on, context, complaints } = await appPage(marked.browser, marked.served.url, DESK, { language: 'de' })
    await on.locator('text=\u27e6').first().waitFor()
    const found: Record<string, string[]> = { doors: await unmarked(on) }
    await on.locator('a[href="#/new"]').first().click()
    await on.locator('.first-figure').first().waitFor()
    found['new'] = await unmarked(on)
    await on.goto(marked.served.url)
    await openDemo(on)
    await on.waitForTimeout(1500) // until the exact answer is there
    const address = on.url()
    for (const part of PARTS) {
      await on.goto(address.replace('judge', part))
      await on.locator('main').waitFor()
      await on.waitForTimeout(400)
      found[part] = await unmarked(on)
    }
    expect(found).toEqual(Object.fromEntries(Object.keys(found).map((screen) => [screen, []])))
    expect(complaints).toEqual([])
    await context.close()
  })
  it('breaks no layout on phone or desk: nothing is wider than the screen, and the drawing is not mirrored', async () => {
    const { page: on, context } = await appPage(marked.browser, marked.served.url, PHONE, { language: 'de' })
    await on.locator('text=\u27e6').first().waitFor()
    expect(await on.evaluate(() => [document.documentElement.dir, getComputedStyle(document.body).direction])).toEqual(['rtl', 'rtl'])
    await fits(on, 'list')
    await openDemo(on)
    const address = on.url()
    for (const part of PARTS) {
      await on.goto(address.replace('judge', part))
      await on.locator('main').waitFor()
      await fits(on, part)
    }
    await on.goto(address)
    await on.locator('.drawing svg, .stage svg').first().waitFor()
    expect(await on.evaluate(() => getComputedStyle(document.querySelector('.stage svg text') as Element).direction)).toBe('ltr')
    await context.close()
  })
})

describe('German', () => {
  it('is chosen on the list of doors, kept over a restart without a network, and spoken by findings and drawing', async () => {
    const { page: on, context, complaints } = await appPage(at.browser, at.served.url, DESK, {}, KEPT_OFFLINE)
    await on.evaluate(() => navigator.serviceWorker.ready)
    await on.reload()
    await on.getByRole('button', { name: 'How this device shows things' }).click()
    await on.getByText('Deutsch').click()
    await on.keyboard.press('Escape')
    await on.getByRole('heading', { name: 'Tore' }).waitFor()
    expect(await on.evaluate(() => document.documentElement.lang)).toBe('de')
    await context.setOffline(true)
    await on.reload()
    await openDemo(on, /Ladetor/)
    expect(await on.locator('.findings-head h2').textContent()).toMatch(/Mängel|Mangel/)
    expect(await on.locator('.finding').first().textContent()).toMatch(/Prüfkörper/)
    expect(await on.locator('.stage svg').first().textContent()).toContain('hoch')
    expect(complaints).toEqual([])
    await context.close()
  })
  it('reads and shows decimals with a comma', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url, DESK, { language: 'de' })
    await openDemo(on, /Ladetor/)
    await on.goto(on.url().replace('judge', 'measure'))
    await on.getByRole('button', { name: /^lichte Breite:/i }).click()
    await typed(on, '3,4625 m')
    await on.getByRole('button', { name: /^lichte Breite: 3462,5 mm/i }).waitFor()
    await context.close()
  })
  it('breaks no layout on phone or desk', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url, PHONE, { language: 'de' })
    await openDemo(on, /Ladetor/)
    const address = on.url()
    for (const part of PARTS) {
      await on.goto(address.replace('judge', part))
      await on.locator('main').waitFor()
      await fits(on, part)
    }
    await context.close()
  })
})
