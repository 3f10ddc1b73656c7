import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Serving } from '../serve.ts'
import { appPage, openDemo, PARTS } from './app-page.ts'
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

const page = () => appPage(browser, served.url)

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
