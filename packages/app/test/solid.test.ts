import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { appPage, DESK, openDemo } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(() => builtApp())

const radio = (on: Page, name: string) => on.getByRole('radio', { name, exact: true })
/** The picture as the browser has it, once it rests. */
async function picture(on: Page): Promise<string> {
  await on.waitForTimeout(400)
  return on.locator('.solid-canvas').evaluate((canvas) => (canvas as HTMLCanvasElement).toDataURL())
}

describe('the view in space', () => {
  it('is turned by keys and buttons, cut open, and names what is touched', async () => {
    const { page: on, context, complaints } = await appPage(at.browser, at.served.url)
    await openDemo(on)
    await radio(on, '3D').click()
    await on.locator('.solid-canvas').waitFor()
    const first = await picture(on)
    expect(first.length).toBeGreaterThan(20_000)
    await on.locator('.solid-canvas').focus()
    await on.keyboard.press('ArrowLeft')
    const turned = await picture(on)
    expect(turned).not.toBe(first)
    await on.getByRole('button', { name: 'from above' }).click()
    const above = await picture(on)
    expect(above).not.toBe(turned)
    await radio(on, 'height').click()
    expect(await picture(on)).not.toBe(above)
    await radio(on, 'whole').click()
    await on.getByRole('button', { name: 'from hall' }).click()
    const { width, height } = (await on.locator('.solid-canvas').boundingBox()) ?? { width: 0, height: 0 }
    const named = new Set<string>()
    for (let i = 1; i < 8; i++)
      for (let j = 2; j < 8; j++) {
        await on.locator('.solid-canvas').click({ position: { x: (width * i) / 8, y: (height * j) / 8 } })
        named.add((await on.locator('.solid-named').textContent()) ?? '')
      }
    expect([...named].filter((name) => /wall|jamb|lintel|bollard|leaf|floor|beams|zone|body/.test(name)).length).toBeGreaterThan(2)
    await on.getByRole('button', { name: 'What is shown' }).click()
    expect(await on.locator('.solid-list li').allTextContents()).toEqual(expect.arrayContaining(['floor', 'bollard at the left guide']))
    expect(complaints).toEqual([])
    await context.close()
  }, 90_000)

  it('rests when nothing changes, and gives its drawing back each time it is left: 17 times without a context lost', async () => {
    const { page: on, context, complaints } = await appPage(at.browser, at.served.url)
    const warned: string[] = []
    on.on('console', (message) => /WebGL|context/i.test(message.text()) && warned.push(message.text()))
    await openDemo(on)
    // one more than Chromium lets a page hold
    for (let i = 0; i < 17; i++) {
      await radio(on, '3D').click()
      await on.locator('.solid-canvas').waitFor()
      await radio(on, 'Plan').click()
      await on.locator('.solid-canvas').waitFor({ state: 'detached' })
    }
    expect(warned.filter((text) => /too many/i.test(text))).toEqual([])
    await radio(on, '3D').click()
    await on.waitForTimeout(1000)
    const frames = await on.evaluate(
      () =>
        new Promise<number>((done) => {
          const asked = requestAnimationFrame
          let count = 0
          globalThis.requestAnimationFrame = (callback) => {
            count++
            return asked(callback)
          }
          setTimeout(() => done(count), 1000)
        }),
    )
    expect(frames).toBe(0)
    expect(complaints).toEqual([])
    await context.close()
  }, 120_000)

  it('says that the browser draws nothing in space where that is so, and loses nothing', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url, DESK)
    await on.addInitScript(() => {
      const get = HTMLCanvasElement.prototype.getContext
      HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...more: unknown[]) {
        return kind.startsWith('webgl') ? null : (get as (...all: unknown[]) => unknown).call(this, kind, ...more)
      } as never
    })
    await on.reload()
    await openDemo(on)
    await radio(on, '3D').click()
    expect(await on.locator('.solid-missing').textContent()).toContain('Plan, elevation and section show the same')
    await radio(on, 'Plan').click()
    await on.locator('svg.drawing').waitFor()
    await context.close()
  })
})
