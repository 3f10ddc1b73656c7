import { describe, expect, it } from 'vitest'
import { appPage, openDemo, PARTS, typed } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(() => builtApp())

const page = () => appPage(at.browser, at.served.url)

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
    await on.goto(at.served.url)
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
})

describe('text that is no length', () => {
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

describe('what nobody chose or measured', () => {
  it('does not get into the door: the concept waits for all three answers, the leaf for its thickness, a floor point for its height', async () => {
    const { page: on, context, complaints } = await page()
    await on.locator('input[type=file]').setInputFiles({
      name: 'bare.json',
      mimeType: 'application/json',
      buffer: Buffer.from('{"sillsight":1,"name":"bare","survey":{"opening":{"width_mm":3000,"height_mm":2500}}}'),
    })
    const address = (await on.getByRole('link', { name: /bare/ }).getAttribute('href')) ?? ''
    /** The door file as it is handed out, once all is saved. */
    const handedOut = async () => {
      await on.waitForFunction(() => document.querySelector('.head-saved')?.getAttribute('data-state') === 'saved')
      await on.goto(at.served.url)
      await on.getByRole('button', { name: /^More about/ }).click()
      const file = on.waitForEvent('download')
      await on.getByRole('menuitem', { name: /^Door file for others/ }).click()
      const chunks: Buffer[] = []
      for await (const chunk of await (await file).createReadStream()) chunks.push(chunk as Buffer)
      return JSON.parse(Buffer.concat(chunks).toString('utf8'))
    }
    const open = (part: string) => on.goto(`${at.served.url}${address.replace(/[a-z-]+$/, part)}`)
    await open('judge')
    await on.getByLabel('Who passes', { exact: true }).selectOption('public')
    await on.getByLabel('How it is driven', { exact: true }).selectOption('automatic')
    expect(await handedOut()).not.toHaveProperty('concept')
    await open('judge')
    await on.getByLabel('What guards the closing edge', { exact: true }).selectOption('contact-free')
    expect(await handedOut()).toMatchObject({ concept: { people: 'public', drive: 'automatic', closingEdge: 'contact-free' } })
    await open('measure')
    await on.getByLabel('How the leaf travels', { exact: true }).selectOption('down')
    await on.getByRole('button', { name: 'Another point of the floor' }).click()
    await on.getByRole('button', { name: /^Distance from the leaf:/ }).click()
    await typed(on, '-800')
    await expect.poll(() => on.getByRole('button', { name: /^Distance from the leaf:/ }).textContent()).toContain('-800 mm')
    const { survey } = await handedOut()
    expect([survey.leaf, survey.floor]).toEqual([undefined, undefined])
    await open('measure')
    await on.getByRole('button', { name: /^Height of the floor there:/ }).click()
    await typed(on, '12')
    await on.getByRole('button', { name: /^Thickness of the leaf:/ }).click()
    await typed(on, '42')
    await on.getByRole('button', { name: /^How far the leaf stands out:/ }).waitFor()
    expect((await handedOut()).survey).toMatchObject({ leaf: { thickness_mm: 42 }, floor: { profile_mm: [[-800, 12]] } })
    expect(complaints).toEqual([])
    await context.close()
  })
})

describe('an earlier moment', () => {
  it('is shown as it was, and neither buttons nor keys change anything from there', async () => {
    const { page: on, context } = await page()
    await openDemo(on)
    await on.goto(on.url().replace('judge', 'measure'))
    const thickness = on.getByRole('button', { name: /^Thickness of the leaf:/ })
    await thickness.click()
    await typed(on, '60')
    await expect.poll(() => thickness.textContent()).toBe('60 mm')
    await on.getByRole('button', { name: 'What was done' }).click()
    await on.getByRole('button', { name: 'look at it then' }).last().click()
    await expect.poll(() => thickness.textContent()).toBe('45 mm')
    expect(await thickness.isEnabled()).toBe(false)
    await on.keyboard.press('Control+z')
    await on.getByRole('button', { name: 'Back to now' }).click()
    await expect.poll(() => thickness.textContent()).toBe('60 mm')
    await context.close()
  })
})

describe('the browser', () => {
  it('is asked to keep the doors, and its answer is said', async () => {
    const { page: on, context } = await page()
    await openDemo(on)
    await on.goto(at.served.url)
    await on.getByRole('button', { name: 'Ask it to keep them' }).click()
    await on.getByText(/has promised to keep|Hand them out as files/).waitFor()
    await context.close()
  })
})
