import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { appPage, DESK, openFile, unfold } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'
import { exifBlock, withExif } from './with-exif.ts'

const at = inBrowser(builtApp)

const PHONE = { width: 360, height: 740 }
/** 48 degrees 8 minutes 13.56 seconds north, 11 degrees 34 minutes 31.44 seconds east. */
const PLACE = exifBlock(
  'little',
  {
    sign: 'N',
    parts: [
      [48, 1],
      [8, 1],
      [1356, 100],
    ],
  },
  {
    sign: 'E',
    parts: [
      [11, 1],
      [34, 1],
      [3144, 100],
    ],
  },
)

async function atMeasure(size = DESK) {
  const opened = await appPage(at.browser, at.served.url, size)
  await openFile(opened.page, { name: 'bare', survey: { opening: { width_mm: 3000, height_mm: 2500 } } }, 'measure')
  // what comes after the first sentences is there: nothing moves under a key or a finger
  await opened.page.waitForFunction(() => document.querySelector('.entries') && !document.querySelector('[data-coming]'))
  return { ...opened, on: opened.page }
}

/** A JPEG that this browser made, with a place put into it. */
async function add(on: Page, hue = 0): Promise<void> {
  const jpeg = await on.evaluate(async (hue) => {
    const canvas = new OffscreenCanvas(800, 600)
    const pen = canvas.getContext('2d')
    if (pen) pen.fillStyle = `hsl(${hue} 40% 60%)`
    pen?.fillRect(0, 0, 800, 600)
    return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg' })).arrayBuffer())]
  }, hue)
  const buffer = Buffer.from(withExif(Uint8Array.from(jpeg), PLACE))
  await on.locator('.group input[type=file]').setInputFiles({ name: 'taken.jpg', mimeType: 'image/jpeg', buffer })
}

/** All that the browser's database holds of pictures, as text. */
function keptPictures(on: Page): Promise<readonly string[]> {
  return on.evaluate(async () => {
    const found = await new Promise<{ bytes: Uint8Array }[]>((done) => {
      const asked = indexedDB.open('sillsight')
      asked.onsuccess = () => {
        const all = asked.result.transaction('photos').objectStore('photos').getAll()
        all.onsuccess = () => done(all.result)
      }
    })
    return found.map(({ bytes }) => new TextDecoder('latin1').decode(bytes))
  })
}

const saved = (on: Page) => on.waitForFunction(() => document.querySelector('.head-saved')?.textContent?.startsWith('saved'))

describe('where a photo was taken', () => {
  it('is kept only on wish, as words beside it and never in its bytes, and is taken away again', async () => {
    const { on, context, complaints } = await atMeasure()
    const wish = on.getByLabel('Keep where it was taken')
    expect(await wish.isChecked()).toBe(false)
    await add(on)
    await on.locator('.photos img').first().waitFor()
    expect(await on.locator('.photo-where').count()).toBe(0)
    await wish.check()
    await add(on, 200)
    await on.getByText('Taken at 48.13710° N, 11.57540° E').waitFor()
    expect(await on.locator('.photos li').count()).toBe(2)
    await saved(on)
    const pictures = await keptPictures(on)
    expect(pictures.length).toBe(2)
    for (const text of pictures) expect([text.includes('JFIF'), text.includes('Exif')]).toEqual([true, false])
    await on.reload()
    await on.getByText('Taken at 48.13710').waitFor()
    expect(await wish.isChecked()).toBe(false)
    await on.getByRole('button', { name: 'Do not show where it was taken' }).click()
    await expect.poll(() => on.locator('.photo-where').count()).toBe(0)
    await on.getByRole('button', { name: 'Undo' }).click()
    await on.getByText('Taken at 48.13710').waitFor()
    expect(complaints).toEqual([])
    await context.close()
  })
  it('is said to be unknown where the picture does not tell, and the picture is added all the same', async () => {
    const { on, context } = await atMeasure()
    await on.getByLabel('Keep where it was taken').check()
    const png = Buffer.from(
      await on.evaluate(async () => {
        const canvas = new OffscreenCanvas(40, 30)
        canvas.getContext('2d')?.fillRect(0, 0, 9, 9)
        return [...new Uint8Array(await (await canvas.convertToBlob()).arrayBuffer())]
      }),
    )
    await on.locator('.group input[type=file]').setInputFiles({ name: 'drawn.png', mimeType: 'image/png', buffer: png })
    await on.getByText('does not say where it was taken').waitFor()
    await on.locator('.photos img').waitFor()
    await context.close()
  })
})

describe('pins on a photo', () => {
  const places = (on: Page) =>
    on.locator('.photo-plate button.pin').evaluateAll((pins) => pins.map(({ style }) => [style.left, style.top].map(Number.parseFloat)))

  it('are set by a touch, said, dragged as one edit, taken away and brought back, and are there after a restart', async () => {
    const { on, context, complaints } = await atMeasure(PHONE)
    await unfold(on, 'Photos')
    await add(on)
    await on.getByRole('button', { name: /: set pins$/ }).tap()
    const plate = on.getByRole('button', { name: /^Touch a place to set a pin/ })
    await plate.waitFor()
    const box = (await plate.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 }
    await plate.tap({ position: { x: box.width * 0.25, y: box.height * 0.5 } })
    await on.getByLabel('What is at pin 1').fill('terminal 5')
    await on.getByLabel('What is at pin 1').press('Enter')
    await plate.tap({ position: { x: box.width * 0.75, y: box.height * 0.25 } })
    await on.getByLabel('What is at pin 2').fill('bracket here')
    await on.getByLabel('What is at pin 2').press('Enter')
    const rounded = async () => (await places(on)).map((pair) => pair.map((each) => Math.round((each ?? 0) / 5) * 5))
    await expect.poll(async () => JSON.stringify(await rounded())).toBe('[[25,50],[75,25]]')
    expect(await plate.boundingBox()).toEqual(box) // it has not moved while words were added below it
    await on.mouse.move(box.x + box.width * 0.25, box.y + box.height * 0.5)
    await on.mouse.down()
    for (const share of [0.3, 0.4, 0.5]) await on.mouse.move(box.x + box.width * share, box.y + box.height * 0.7)
    await on.mouse.up()
    await expect.poll(async () => JSON.stringify(await rounded())).toBe('[[50,70],[75,25]]')
    await on.getByRole('dialog').getByRole('button', { name: 'Undo' }).tap()
    await expect.poll(async () => JSON.stringify((await rounded())[0])).toBe('[25,50]')
    await on.getByRole('button', { name: 'Remove pin 1' }).tap()
    await expect.poll(() => on.getByLabel('What is at pin 1').inputValue()).toBe('bracket here')
    await on.getByRole('dialog').getByRole('button', { name: 'Undo' }).tap()
    await expect.poll(() => on.getByLabel('What is at pin 1').inputValue()).toBe('terminal 5')
    await on.getByRole('button', { name: 'Close', exact: true }).tap()
    await saved(on)
    await on.reload()
    await on.getByRole('button', { name: /: 2 pins$/ }).waitFor()
    expect(await on.locator('.photo-open .pin-number').allTextContents()).toEqual(['1', '2'])
    await on.getByRole('button', { name: 'What was done' }).click()
    await on.getByText('a pin on a photo: terminal 5').first().waitFor()
    expect(complaints).toEqual([])
    await context.close()
  })
  it('are set, said, moved and removed by keyboard alone', async () => {
    const { on, context, complaints } = await atMeasure()
    await add(on)
    await on.getByRole('button', { name: /: set pins$/ }).focus()
    await on.keyboard.press('Enter')
    await on.getByRole('dialog').waitFor()
    const tabTo = async (name: RegExp) => {
      for (let i = 0; i < 20; i++) {
        if (name.test(await on.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? ''))) return
        await on.keyboard.press('Tab')
      }
      throw new Error(`Tab must come to ${name}`)
    }
    await tabTo(/^Touch a place to set a pin/)
    await on.keyboard.press('Enter')
    await on.getByLabel('What is at pin 1').waitFor()
    await on.keyboard.type('terminal 5')
    await on.keyboard.press('Enter')
    await tabTo(/^Pin 1: terminal 5\./)
    await on.keyboard.press('ArrowLeft')
    await on.keyboard.press('Shift+ArrowDown')
    await expect.poll(async () => JSON.stringify(await places(on))).toBe('[[49,50.1]]')
    await on.keyboard.press('Control+z')
    await expect.poll(async () => JSON.stringify(await places(on))).toBe('[[49,50]]')
    await on.keyboard.press('Delete')
    await expect.poll(() => places(on)).toEqual([])
    await on.keyboard.press('Escape')
    await on.getByRole('dialog').waitFor({ state: 'detached' })
    expect(complaints).toEqual([])
    await context.close()
  })
})

describe('the place of a photo on the drawing', () => {
  const mark = (on: Page) => on.getByRole('button', { name: /^Photo 1: / })
  const where = (on: Page) => on.getByRole('combobox', { name: /where it was taken$/ })
  const centre = async (on: Page) => {
    const box = (await mark(on).locator('.photo-plate-mark').boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 }
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
  }

  it('is set, dragged as one edit, opens the photo by a touch, and is there after a restart and on the other parts', async () => {
    const { on, context, complaints } = await atMeasure()
    await add(on)
    await on.getByLabel('What it shows').fill('terminal strip')
    await on.getByLabel('What it shows').press('Enter')
    expect(await mark(on).count()).toBe(0)
    await where(on).selectOption('on the elevation')
    await mark(on).waitFor()
    const from = await centre(on)
    await on.mouse.move(from.x, from.y)
    await on.mouse.down()
    for (const share of [0.4, 0.7, 1]) await on.mouse.move(from.x + 90 * share, from.y + 40 * share)
    await on.mouse.up()
    const far = async () => {
      const now = await centre(on)
      return [Math.round(now.x - from.x), Math.round(now.y - from.y)]
    }
    await expect.poll(async () => JSON.stringify(await far())).toBe('[90,40]')
    expect(await on.getByRole('dialog').count()).toBe(0)
    await on.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(async () => JSON.stringify(await far())).toBe('[0,0]')
    await on.getByRole('button', { name: 'Redo' }).click()
    await expect.poll(async () => JSON.stringify(await far())).toBe('[90,40]')
    await saved(on)
    await on.reload()
    await mark(on).click()
    await on.getByRole('dialog').getByRole('img', { name: 'terminal strip' }).waitFor()
    await on.getByRole('button', { name: 'Close', exact: true }).click()
    await on.getByRole('radio', { name: 'Plan' }).click()
    await expect.poll(() => mark(on).count()).toBe(0)
    await on.goto(on.url().replace('measure', 'judge'))
    await on.getByRole('radio', { name: 'Elevation' }).click()
    await on.getByRole('button', { name: 'Photo 1: terminal strip. Enter opens it.' }).click()
    await on.getByRole('dialog').getByRole('img', { name: 'terminal strip' }).waitFor()
    expect(complaints).toEqual([])
    await context.close()
  })
  it('is set, gone to, moved, opened and taken off by keyboard alone', async () => {
    const { on, context, complaints } = await atMeasure()
    await add(on)
    await where(on).focus()
    await on.keyboard.press('ArrowDown') // on the plan
    await on.getByRole('button', { name: 'Show 1 on the drawing' }).focus()
    await on.keyboard.press('Enter')
    await mark(on).waitFor()
    await expect.poll(() => on.evaluate(() => document.activeElement?.getAttribute('class'))).toBe('photo-mark')
    const from = await centre(on)
    for (let i = 0; i < 20; i++) await on.keyboard.press('ArrowRight')
    await expect.poll(async () => (await centre(on)).x).toBeGreaterThan(from.x + 5)
    expect(Math.abs((await centre(on)).y - from.y)).toBeLessThan(0.5)
    await on.keyboard.press('Enter')
    await on.getByRole('dialog').waitFor()
    await on.keyboard.press('Escape')
    await on.getByRole('dialog').waitFor({ state: 'detached' })
    await where(on).focus()
    await on.keyboard.press('ArrowUp')
    await expect.poll(() => mark(on).count()).toBe(0)
    await on.getByRole('button', { name: 'What was done' }).click()
    await on.getByText('removed the place of a photo on the drawing').first().waitFor()
    expect(complaints).toEqual([])
    await context.close()
  })
})
