import { readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Serving } from '../serve.ts'
import { launch } from './browser.ts'
import { builtApp } from './built.ts'

let served: Serving
let browser: Browser
beforeAll(async () => {
  served = await builtApp()
  browser = await launch()
})
afterAll(async () => {
  await browser?.close()
  await served?.close()
})

const DIST = join(import.meta.dirname, '../dist')
const PHONE = { width: 360, height: 740 }
const DESK = { width: 1440, height: 900 }
const PARTS = ['measure', 'place', 'judge', 'fit'] as const

/** A page in a browser profile of its own; what it complains of is collected. */
async function page(size = DESK, preferences: object = {}): Promise<{ page: Page; context: BrowserContext; complaints: string[] }> {
  const context = await browser.newContext({ viewport: size, hasTouch: size.width < 500 })
  await context.addInitScript(
    (kept) => {
      if (!localStorage.getItem('sillsight.preferences')) localStorage.setItem('sillsight.preferences', kept)
    },
    JSON.stringify({ theme: 'paper', language: 'en', ...preferences }),
  )
  const opened = await context.newPage()
  const complaints: string[] = []
  opened.on('console', (message) => message.type() === 'error' && complaints.push(message.text()))
  opened.on('pageerror', (error) => complaints.push(error.message))
  await opened.goto(served.url)
  return { page: opened, context, complaints }
}

async function openDemo(on: Page, name = /Loading door/): Promise<void> {
  await on.getByRole('button', { name }).click()
  await on.locator('.finding').first().waitFor()
}

async function typed(on: Page, text: string): Promise<void> {
  await on.getByRole('dialog').getByRole('textbox').fill(text)
  await on.getByRole('dialog').getByRole('textbox').press('Enter')
}

describe('a newcomer', () => {
  it('comes by touch from an empty app to a judged door of his own, without a network, on the number pad alone', async () => {
    const { page: on, context, complaints } = await page(PHONE)
    await on.evaluate(() => navigator.serviceWorker.ready)
    await on.reload()
    await context.setOffline(true)
    await on.getByRole('link', { name: 'New door' }).tap()
    for (const keys of ['3 4 6 0', '2 . 8 m', '2 8 0 0', '1 5 0']) {
      await on.locator('.first-go button').tap()
      for (const key of keys.split(' '))
        await on
          .locator('.pad-keys')
          .getByRole('button', { name: key === '.' ? 'Point' : key, exact: true })
          .tap()
      await on.getByRole('button', { name: 'Enter', exact: true }).tap()
    }
    await on.getByRole('button', { name: 'Judge it' }).tap()
    await on.locator('.finding').first().waitFor()
    expect(await on.locator('.findings-head h2').textContent()).toMatch(/fail|not settled|in order/)
    await on.waitForFunction(() => document.querySelector('.head-saved')?.textContent?.startsWith('saved'))
    await on.reload()
    await on.locator('.finding').first().waitFor()
    expect(complaints).toEqual([])
    await context.close()
  })
  it('comes there by keyboard alone', async () => {
    const { page: on, context, complaints } = await page()
    const tabTo = async (name: RegExp) => {
      for (let i = 0; i < 60; i++) {
        await on.keyboard.press('Tab')
        const label = await on.evaluate(
          () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '',
        )
        if (name.test(label)) return
      }
      throw new Error(`Tab must come to ${name}`)
    }
    await tabTo(/^New door$/)
    await on.keyboard.press('Enter')
    for (const [label, text] of [
      [/^Clear width/, '3460'],
      [/^Clear height/, '9\' 2 1/4"'],
      [/^Height of the sensor/, '2800'],
      [/^Out from the leaf/, '0.15 m'],
    ] as const) {
      await tabTo(label)
      await on.keyboard.press('Enter')
      await on.getByRole('dialog').waitFor()
      await on.keyboard.type(text)
      await on.keyboard.press('Enter')
      await on.getByRole('dialog').waitFor({ state: 'detached' })
    }
    await tabTo(/^Judge it$/)
    await on.keyboard.press('Enter')
    await on.locator('.finding').first().waitFor()
    expect(complaints).toEqual([])
    await context.close()
  })
})

describe('an open door', () => {
  it('is changed in a sentence, on the drawing and by the arrow keys, and undone across a restart', async () => {
    const { page: on, context, complaints } = await page()
    await openDemo(on)
    const address = on.url()
    await on.goto(address.replace('judge', 'measure'))
    const width = on.getByRole('button', { name: /^Clear width:/ })
    await width.click()
    await typed(on, '3.5 m')
    await expect.poll(() => width.textContent()).toContain('3500 mm')
    await on.getByRole('button', { name: 'Change clear height' }).click()
    await typed(on, '13\' 1 1/2"')
    const height = on.getByRole('button', { name: /^Clear height:/ })
    await expect.poll(() => height.textContent()).toContain('4000.5 mm')
    await on.goto(address.replace('judge', 'place'))
    const along = on.getByRole('button', { name: /^along the leaf from the left jamb:/ })
    await on.getByRole('button', { name: /^scanner in the top corner .*Arrow keys/ }).focus()
    await on.keyboard.press('ArrowLeft')
    await expect.poll(() => along.textContent()).toContain('3320 mm')
    await on.keyboard.press('Shift+ArrowLeft')
    await expect.poll(() => along.textContent()).toContain('3319 mm')
    await on.waitForFunction(() => document.querySelector('.head-saved')?.textContent?.startsWith('saved'))
    await on.reload()
    await along.waitFor()
    for (let i = 0; i < 4; i++) await on.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(() => along.textContent()).toContain('3330 mm')
    expect(await on.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(false)
    await on.goto(address.replace('judge', 'measure'))
    await expect.poll(() => width.textContent()).toContain('3460 mm')
    expect(complaints).toEqual([])
    await context.close()
  })
  it('answers while something is dragged, says that it is provisional, and keeps one edit of the whole drag', async () => {
    const { page: on, context } = await page()
    await openDemo(on)
    await on.goto(on.url().replace('judge', 'place'))
    const grip = on.getByRole('button', { name: /^bollard at the left guide\. Arrow/ })
    const box = await grip.locator('.grip-mark').boundingBox()
    if (!box) throw new Error('the grip must be on the screen')
    await on.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await on.mouse.down()
    for (let i = 1; i <= 12; i++) await on.mouse.move(box.x + box.width / 2 + 8 * i, box.y + box.height / 2)
    await on.mouse.up()
    await on.goto(on.url().replace('place', 'measure'))
    const sentence = on.locator('.thing').first()
    await expect.poll(() => sentence.textContent()).not.toContain('420 mm')
    await on.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(() => sentence.textContent()).toContain('420 mm')
    expect(await on.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(false)
    await context.close()
  })
  it('shows what sees a test body, or why nothing does', async () => {
    const { page: on, context } = await page()
    await openDemo(on)
    await on.goto(on.url().replace('judge', 'place'))
    await on.getByRole('button', { name: 'Test body' }).click()
    await expect.poll(() => on.locator('.key-note').textContent()).toMatch(/^seen by scanner/)
    await on.getByRole('button', { name: /^Test body .*Arrow keys/ }).focus()
    for (let i = 0; i < 75; i++) await on.keyboard.press('ArrowDown')
    await expect.poll(() => on.locator('.key-note').textContent()).toMatch(/^seen by nothing: /)
    await context.close()
  })
  it('is seen and written by two tabs at once', async () => {
    const { page: one, context } = await page()
    await openDemo(one)
    await one.goto(one.url().replace('judge', 'measure'))
    const two = await context.newPage()
    await two.goto(one.url())
    await two.getByRole('button', { name: /^Thickness of the leaf:/ }).click()
    await typed(two, '60')
    await expect.poll(() => one.getByRole('button', { name: /^Thickness of the leaf:/ }).textContent()).toBe('60 mm')
    await one.getByRole('button', { name: /^How far the leaf stands out:/ }).click()
    await typed(one, '35')
    await expect.poll(() => two.getByRole('button', { name: /^How far the leaf stands out:/ }).textContent()).toBe('35 mm')
    await context.close()
  })
})

describe('a photo', () => {
  it('is kept without place and camera, comes back after a restart, and a huge one is refused before it is opened', async () => {
    const { page: on, context, complaints } = await page()
    await openDemo(on)
    await on.goto(on.url().replace('judge', 'measure'))
    const jpeg = Buffer.from(
      await on.evaluate(async () => {
        const canvas = new OffscreenCanvas(2400, 1200)
        canvas.getContext('2d')?.fillRect(0, 0, 900, 900)
        return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg' })).arrayBuffer())]
      }),
    )
    const told = Buffer.from('Exif\0\0 taken at 48.1 N 11.5 E')
    const segment = Buffer.concat([Buffer.from([0xff, 0xe1, 0, told.length + 2]), told])
    const withPlace = Buffer.concat([jpeg.subarray(0, 2), segment, jpeg.subarray(2)])
    const huge = Buffer.from('89504e470d0a1a0a0000000d49484452000036b00000393000080200', 'hex')
    const input = on.locator('.group input[type=file]')
    await input.setInputFiles({ name: 'huge.png', mimeType: 'image/png', buffer: huge })
    await on.getByText('too large to be opened').waitFor()
    await input.setInputFiles({ name: 'plate.jpg', mimeType: 'image/jpeg', buffer: withPlace })
    const picture = on.locator('.photos img')
    await picture.waitFor()
    await on.getByLabel('What it shows').fill('type plate')
    await on.getByLabel('What it shows').blur()
    await on.waitForFunction(() => document.querySelector('.head-saved')?.textContent?.startsWith('saved'))
    await on.reload()
    await picture.waitFor()
    const kept = await picture.evaluate(async (image: HTMLImageElement) => {
      const found = await new Promise<{ bytes: Uint8Array }[]>((done) => {
        const asked = indexedDB.open('sillsight')
        asked.onsuccess = () => {
          const all = asked.result.transaction('photos').objectStore('photos').getAll()
          all.onsuccess = () => done(all.result)
        }
      })
      return {
        alt: image.alt,
        width_px: image.naturalWidth,
        text: found.map(({ bytes }) => new TextDecoder('latin1').decode(bytes)).join(''),
      }
    })
    expect({ alt: kept.alt, width_px: kept.width_px, jpeg: kept.text.includes('JFIF'), place: kept.text.includes('taken at') }).toEqual({
      alt: 'type plate',
      width_px: 1600,
      jpeg: true,
      place: false,
    })
    expect(complaints).toEqual([])
    await context.close()
  })
})

describe('every screen', () => {
  const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

  it.each(['paper', 'sun', 'dark'])('has nothing that axe objects to, in the theme %s', async (theme) => {
    const { page: on, context } = await page(PHONE, { theme })
    const objections = async (within = 'html'): Promise<string[]> => {
      // the page's own policy lets no foreign script in: axe comes by the debugger
      await on.evaluate(axe)
      return on.evaluate(async (root) => {
        const { violations } = await (
          globalThis as unknown as { axe: { run: (root: string) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }
        ).axe.run(root)
        return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`))
      }, within)
    }
    const found: string[] = [...(await objections())]
    await on.getByRole('link', { name: 'New door' }).click()
    await on.locator('.first-figure').first().waitFor()
    found.push(...(await objections()))
    await on.goto(served.url)
    await openDemo(on)
    const address = on.url()
    for (const part of PARTS) {
      await on.goto(address.replace('judge', part))
      await on.locator('main').waitFor()
      await on.waitForTimeout(300)
      found.push(...(await objections()).map((each) => `${part}: ${each}`))
    }
    await on.goto(address.replace('judge', 'measure'))
    await on.getByRole('button', { name: /^Clear width:/ }).click()
    await on.getByRole('dialog').waitFor()
    found.push(...(await objections('[role=dialog]')).map((each) => `pad: ${each}`))
    expect(found).toEqual([])
    await context.close()
  })
  it.each([PHONE, { width: 820, height: 1180 }, DESK, { width: 320, height: 640 }])(
    'fits $width px: nothing is wider than the screen',
    async (size) => {
      const { page: on, context } = await page(size)
      const wide = () => on.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
      expect(await wide()).toBe(0)
      await openDemo(on)
      const address = on.url()
      for (const part of PARTS) {
        await on.goto(address.replace('judge', part))
        await on.locator('main').waitFor()
        expect({ part, wider_px: await wide() }).toEqual({ part, wider_px: 0 })
      }
      await context.close()
    },
  )
  it('gives a thumb 48 px, and 64 in the theme for the field', async () => {
    for (const [theme, least] of [
      ['paper', 48],
      ['sun', 64],
    ] as const) {
      const { page: on, context } = await page(PHONE, { theme })
      await openDemo(on)
      const small = await on.evaluate(
        (px) =>
          [...document.querySelectorAll<HTMLElement>('main button, main select, .tape a, .head button')]
            .map((each) => ({
              label: each.getAttribute('aria-label') ?? each.textContent,
              height: Math.round(each.getBoundingClientRect().height),
            }))
            .filter(({ height }) => height > 0 && height < px),
        least,
      )
      expect({ theme, small }).toEqual({ theme, small: [] })
      await context.close()
    }
  })
})

describe('the build', () => {
  it('loads at most 200 kB of compressed script until a door is on the screen; the judging worker comes beside it', () => {
    const index = readFileSync(join(DIST, 'index.html'), 'utf8')
    const entry = /src="\.\/(assets\/[^"]+\.js)"/.exec(index)?.[1] ?? ''
    const loaded = new Set<string>()
    const follow = (file: string) => {
      if (loaded.has(file)) return
      loaded.add(file)
      for (const [, next] of readFileSync(join(DIST, file), 'utf8').matchAll(
        /from\s*["']\.\/([^"']+\.js)["']|import\s*["']\.\/([^"']+\.js)["']/g,
      ))
        if (next) follow(`assets/${next}`)
    }
    follow(entry)
    const files = readdirSync(join(DIST, 'assets'))
    for (const name of files.filter((file) => /^door-(?!menu)/.test(file))) follow(`assets/${name}`)
    const bytes = [...loaded].reduce((sum, file) => sum + gzipSync(readFileSync(join(DIST, file))).length, 0)
    expect(loaded.size).toBeGreaterThan(3)
    expect(bytes).toBeLessThanOrEqual(200_000)
  })
  it('asks nobody else for anything', async () => {
    const { page: on, context } = await page()
    const foreign: string[] = []
    on.on('request', (request) => {
      if (!request.url().startsWith(served.url) && !/^(blob|data):/.test(request.url())) foreign.push(request.url())
    })
    await openDemo(on)
    await on.waitForTimeout(1500)
    expect(foreign).toEqual([])
    await context.close()
  })
  it('starts again without a network', async () => {
    const { page: on, context } = await page()
    await openDemo(on)
    const address = on.url()
    await on.evaluate(() => navigator.serviceWorker.ready)
    await on.reload()
    await context.setOffline(true)
    await on.goto('about:blank')
    await on.goto(address)
    await on.locator('.finding').first().waitFor()
    await context.close()
  })
})

describe('text from anywhere', () => {
  const Hostile = [
    '<img src=x onerror="globalThis.hit=1">',
    '"><script>globalThis.hit=1</script>',
    "javascript:globalThis.hit=1//'",
    '{{constructor.constructor("globalThis.hit=1")()}}',
    '<svg/onload=globalThis.hit=1>',
    '</textarea><iframe srcdoc="<script>parent.hit=1</script>">',
    '\u202egpj.exe',
    '\u0000\u0007',
    '🚪'.repeat(60),
    'x'.repeat(5000),
  ]
  it('runs nowhere: names, searches and imported files are only ever text', async () => {
    const { page: on, context, complaints } = await page()
    await openDemo(on)
    const address = on.url()
    await on.goto(address.replace('judge', 'measure'))
    for (const text of Hostile) {
      for (const label of ['Name of the door', 'Name of side A']) {
        await on.getByLabel(label).fill(text)
        await on.getByLabel(label).press('Enter')
      }
    }
    for (const part of PARTS) {
      await on.goto(address.replace('judge', part))
      await on.locator('main').waitFor()
      await on.waitForTimeout(200)
    }
    await on.goto(served.url)
    const files = Hostile.map((text, i) => ({
      name: `${text.slice(0, 60).replace(/[/\u0000]/g, '')}${i}.json`,
      mimeType: 'application/json',
      buffer: Buffer.from(`{"sillsight":1,"name":${JSON.stringify(text)},"survey":${i % 2}}`),
    }))
    await on.locator('input[type=file]').setInputFiles(files)
    await on.getByRole('status').filter({ hasText: 'could not be brought in' }).waitFor()
    expect(await on.evaluate(() => (globalThis as { hit?: number }).hit)).toBe(undefined)
    expect(complaints).toEqual([])
    await context.close()
  })
  it('is refused in the number pad where it is no length, and nothing is entered', async () => {
    const { page: on, context } = await page()
    await openDemo(on)
    await on.goto(on.url().replace('judge', 'measure'))
    await on.getByRole('button', { name: /^Clear width:/ }).click()
    const field = on.getByRole('dialog').getByRole('textbox')
    for (const text of ['abc', '-5', '1e9', '🚪', '2,400', '<b>3</b>', '9'.repeat(40)]) {
      await field.fill(text)
      await field.press('Enter')
      expect(
        await on
          .getByRole('dialog')
          .getByRole('button', { name: /^Enter/ })
          .isEnabled(),
      ).toBe(false)
    }
    await field.fill('34600')
    expect(await on.locator('.pad-doubt').textContent()).toContain('Is the unit right?')
    await on.keyboard.press('Escape')
    expect(await on.getByRole('button', { name: /^Clear width:/ }).textContent()).toContain('3460 mm')
    await context.close()
  })
})
